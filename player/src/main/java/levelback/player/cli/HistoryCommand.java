package levelback.player.cli;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import levelback.player.work.BadInput;
import levelback.player.work.CannotBeDone;
import levelback.store.book.Book;
import levelback.store.book.Books;
import levelback.store.book.Change;
import levelback.store.herd.CowId;
import levelback.store.herd.Herd;
import levelback.store.herd.NumberSpan;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code history}: who changed what, when, from what, to what; newest first. */
@Command(name = "history")
final class HistoryCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Option(names = "--book", required = true, paramLabel = "FILE", description = "the book")
    private Path book;

    @Option(names = "--cow", paramLabel = "COW", description = "only what concerns the cow of this number")
    private @Nullable String cow;

    @Option(
            names = "--last",
            paramLabel = "N",
            defaultValue = "100000",
            description = "how many changes, newest first (${DEFAULT-VALUE})")
    private int last;

    @Option(names = "--json", description = "one JSON document")
    private boolean json;

    @SuppressWarnings("NullAway.Init") // picocli fills the fields in
    HistoryCommand() {}

    @Override
    public Integer call() {
        List<Change> changes;
        try (Book open = Books.open(book)) {
            Optional<CowId> her = Optional.ofNullable(cow).map(number -> cow(open, number));
            changes = open.changes(her, last);
        }
        PrintWriter out = spec.commandLine().getOut();
        if (json) {
            out.println(json(changes));
            return 0;
        }
        for (Change change : changes) {
            out.println(change.at() + "  " + (change.by().isEmpty() ? "-" : change.by()) + "  " + change.step() + "  ["
                    + change.kind() + "]");
            change.from().ifPresent(from -> out.println("    from " + from));
            out.println("    to   " + change.to());
        }
        return 0;
    }

    private static CowId cow(Book book, String number) {
        CowId found = null;
        for (Herd herd : book.herd().herds()) {
            for (NumberSpan span : book.herd().numbersOf(herd.id())) {
                if (span.number().equals(number)) {
                    found = span.cow();
                }
            }
        }
        if (found == null) {
            throw new BadInput(
                    "No cow in this book has the number " + Sentences.onOneLine(number) + "; zeros in front count.");
        }
        return found;
    }

    private static String json(List<Change> changes) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            json.writeStartObject();
            json.writeArrayFieldStart("changes");
            for (Change change : changes) {
                json.writeStartObject();
                json.writeStringField("at", change.at().toString());
                json.writeStringField("by", change.by());
                json.writeStringField("what", change.step());
                json.writeStringField("kind", change.kind());
                json.writeStringField("row", change.row().toString());
                json.writeFieldName("from");
                json.writeRawValue(change.from().orElse("null"));
                json.writeFieldName("to");
                json.writeRawValue(change.to());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeEndObject();
        } catch (IOException impossible) {
            throw new CannotBeDone("The answer could not be written.", impossible);
        }
        return text.toString();
    }
}
