package levelback.player.cli;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import levelback.player.work.BadInput;
import levelback.player.work.CannotBeDone;
import levelback.player.work.ImportOrder;
import levelback.player.work.ImportRecordings;
import levelback.player.work.ImportReport;
import levelback.player.work.ImportTables;
import levelback.player.work.RefusedRows;
import levelback.player.work.TableMapping;
import levelback.store.book.Book;
import levelback.store.book.Books;
import levelback.store.exchange.TableSource;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code import}: tables and recordings into a book. */
@Command(
        name = "import",
        footer = {
            "",
            "cows        cow[,official_id,tag,name,birth,calving,parity]",
            "scores      cow,date,score[,scorer][,leg][,scale]",
            "trims       cow,date,leg,lesion[,claw][,zone][,severity][,stage][,chance]",
            "reads       time,tag[,reader]",
            "recording   video files; they stay where they lie",
            "",
            "Gait scales: mobility-0-3, gait-1-5 and the others that an unknown one makes it list."
        })
final class ImportCommand implements Callable<Integer> {

    private static final int SHOWN = 20;

    @Spec
    private CommandSpec spec;

    @Option(names = "--book", required = true, paramLabel = "FILE", description = "the book; made if it is not there")
    private Path book;

    @Option(
            names = "--kind",
            required = true,
            paramLabel = "KIND",
            description = "what comes in: cows, scores, trims, reads or recording")
    private String kind;

    @Option(names = "--herd", paramLabel = "NAME", description = "which herd; made if it is not there")
    private @Nullable String herd;

    @Option(names = "--scale", paramLabel = "ID", description = "gait scale of the scores, such as mobility-0-3")
    private @Nullable String scale;

    @Option(
            names = "--scorer",
            paramLabel = "NAME",
            description = "who scored or trimmed, where the table does not say")
    private @Nullable String scorer;

    @Option(names = "--zone", paramLabel = "IANA", description = "the farm's time zone, such as Europe/Berlin")
    private @Nullable String zone;

    @Option(
            names = "--mapping",
            paramLabel = "FILE",
            description =
                    "JSON: {\"columns\":{\"their heading\":\"our column\"},\"date\":\"dd.MM.yyyy\",\"decimal\":\",\"}")
    private @Nullable Path mapping;

    @Option(
            names = "--skip-bad",
            description = "take the good rows; the others go to SOURCE.refused.csv with line and reason")
    private boolean skipBad;

    @Option(names = "--json", description = "one JSON document")
    private boolean json;

    @Parameters(arity = "1..*", paramLabel = "SOURCE", description = "files; - reads a table from standard input")
    private List<String> sources;

    /** Standard input, for tests. */
    private final InputStream in;

    ImportCommand() {
        this(System.in);
    }

    @SuppressWarnings("NullAway.Init") // picocli fills the fields in
    ImportCommand(InputStream in) {
        this.in = in;
    }

    @Override
    public Integer call() {
        Optional<ImportTables.Kind> table = tableKind();
        ImportOrder order = order();
        Supplier<List<TableSource>> tables =
                () -> sources.stream().map(s -> TableSource.of(s, in)).toList();
        List<TableSource> read = table.isPresent() ? tables.get() : List.of();
        boolean wasThere = Files.exists(book);
        boolean done = false;
        try {
            ImportReport report;
            try (Book open = Books.openOrCreate(book)) {
                report = table.isPresent()
                        ? new ImportTables(open).take(table.get(), read, order)
                        : new ImportRecordings(open)
                                .take(sources.stream().map(Path::of).toList(), order);
            }
            done = true;
            List<Path> refused = skipBad && table.isPresent() ? RefusedRows.write(read, report.refused()) : List.of();
            if (json) {
                spec.commandLine().getOut().println(json(report));
            } else {
                tell(report, refused);
            }
            return 0;
        } finally {
            if (!done && !wasThere) {
                forget(book);
            }
        }
    }

    private Optional<ImportTables.Kind> tableKind() {
        return switch (kind.toLowerCase(Locale.ROOT)) {
            case "cows" -> Optional.of(ImportTables.Kind.COWS);
            case "scores" -> Optional.of(ImportTables.Kind.SCORES);
            case "trims" -> Optional.of(ImportTables.Kind.TRIMS);
            case "reads" -> Optional.of(ImportTables.Kind.READS);
            case "recording" -> Optional.empty();
            default ->
                throw new BadInput("There is no kind \"" + Sentences.onOneLine(kind)
                        + "\" of import; choose cows, scores, trims, reads or recording.");
        };
    }

    private ImportOrder order() {
        Optional<ZoneId> farm;
        try {
            farm = Optional.ofNullable(zone).map(ZoneId::of);
        } catch (DateTimeException unknown) {
            throw new BadInput("There is no time zone \"" + Sentences.onOneLine(String.valueOf(zone))
                    + "\"; write it as Europe/Berlin.");
        }
        return new ImportOrder(
                Optional.ofNullable(herd),
                Optional.ofNullable(scale),
                Optional.ofNullable(scorer),
                farm,
                Optional.ofNullable(mapping).map(TableMapping::read).orElse(TableMapping.NONE),
                skipBad);
    }

    private void tell(ImportReport report, List<Path> refused) {
        PrintWriter out = spec.commandLine().getOut();
        out.printf(
                Locale.ROOT,
                "%s: %d taken, %d unchanged, %d refused.%n",
                report.herd(),
                report.taken(),
                report.unchanged(),
                report.refused().size());
        report.refused().stream()
                .limit(SHOWN)
                .forEach(r ->
                        out.println("  " + r.source() + (r.line() > 0 ? ", line " + r.line() : "") + ": " + r.why()));
        if (report.refused().size() > SHOWN) {
            out.println("  and " + (report.refused().size() - SHOWN) + " more.");
        }
        refused.forEach(file -> out.println("The refused rows are in " + file + "."));
        if (!report.newCows().isEmpty()) {
            out.println("New cows: " + String.join(", ", report.newCows()) + ".");
        }
        report.notes().forEach(out::println);
    }

    private static String json(ImportReport report) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            json.writeStartObject();
            json.writeStringField("herd", report.herd());
            json.writeNumberField("taken", report.taken());
            json.writeNumberField("unchanged", report.unchanged());
            json.writeArrayFieldStart("refused");
            for (ImportReport.Refused refused : report.refused()) {
                json.writeStartObject();
                json.writeStringField("source", refused.source());
                json.writeNumberField("line", refused.line());
                json.writeStringField("why", refused.why());
                json.writeEndObject();
            }
            json.writeEndArray();
            strings(json, "newCows", report.newCows());
            strings(json, "notes", report.notes());
            json.writeEndObject();
        } catch (IOException impossible) {
            throw new CannotBeDone("The answer could not be written.", impossible);
        }
        return text.toString();
    }

    private static void strings(JsonGenerator json, String name, List<String> values) throws IOException {
        json.writeArrayFieldStart(name);
        for (String value : values) {
            json.writeString(value);
        }
        json.writeEndArray();
    }

    /** A book that was made for an import that came to nothing is taken away again. */
    private static void forget(Path book) {
        List<Path> files = new ArrayList<>(List.of(book));
        files.add(book.resolveSibling(book.getFileName() + "-wal"));
        files.add(book.resolveSibling(book.getFileName() + "-shm"));
        for (Path file : files) {
            try {
                Files.deleteIfExists(file);
            } catch (IOException left) {
                // An empty book that stays behind does no harm; what went wrong before is what to tell.
            }
        }
    }
}
