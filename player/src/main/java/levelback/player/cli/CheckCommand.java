package levelback.player.cli;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import levelback.player.work.CannotBeDone;
import levelback.store.book.Book;
import levelback.store.book.BookCheck;
import levelback.store.book.Books;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code check}: looks a whole book through. */
@Command(name = "check")
final class CheckCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Option(names = "--book", required = true, paramLabel = "FILE", description = "the book")
    private Path book;

    @Option(names = "--json", description = "one JSON document")
    private boolean json;

    @SuppressWarnings("NullAway.Init") // picocli fills the fields in
    CheckCommand() {}

    @Override
    public Integer call() {
        BookCheck check;
        try (Book open = Books.open(book)) {
            check = open.check();
        }
        Map<String, Long> counts = counts(check.counts());
        PrintWriter out = spec.commandLine().getOut();
        if (json) {
            out.println(json(check, counts));
        } else {
            out.println(check.ok() ? book + " is sound." : book + " has problems:");
            check.problems().forEach(problem -> out.println("  " + problem));
            out.println("Schema " + check.schema() + ".");
            counts.forEach((what, n) -> out.println("  " + n + " " + what));
        }
        return check.ok() ? 0 : 1;
    }

    private static Map<String, Long> counts(BookCheck.Counts counts) {
        Map<String, Long> named = new LinkedHashMap<>();
        named.put("herds", counts.herds());
        named.put("cows", counts.cows());
        named.put("visits", counts.visits());
        named.put("recordings", counts.recordings());
        named.put("passes", counts.passes());
        named.put("scores", counts.scores());
        named.put("trims", counts.trims());
        return named;
    }

    private static String json(BookCheck check, Map<String, Long> counts) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            json.writeStartObject();
            json.writeBooleanField("ok", check.ok());
            json.writeArrayFieldStart("problems");
            for (String problem : List.copyOf(check.problems())) {
                json.writeString(problem);
            }
            json.writeEndArray();
            json.writeNumberField("schema", check.schema());
            json.writeObjectFieldStart("counts");
            for (Map.Entry<String, Long> count : counts.entrySet()) {
                json.writeNumberField(count.getKey(), count.getValue());
            }
            json.writeEndObject();
            json.writeEndObject();
        } catch (IOException impossible) {
            throw new CannotBeDone("The answer could not be written.", impossible);
        }
        return text.toString();
    }
}
