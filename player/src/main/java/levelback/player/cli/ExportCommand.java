package levelback.player.cli;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import levelback.player.work.BadInput;
import levelback.player.work.export.ExportOrder;
import levelback.player.work.export.ExportReport;
import levelback.player.work.export.WriteExport;
import levelback.store.book.Book;
import levelback.store.book.Books;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code export}: a book's data as files of open forms. */
@Command(
        name = "export",
        footer = {
            "",
            "csv          scores.csv, trims.csv, cows.csv, ratings.csv: what import, proof and agreement read",
            "package      a Frictionless Data Package: the tables, a codebook, readers for R and Python",
            "ade          ICAR ADE JSON: animals, scores, diagnoses, treatments",
            "vtt          WebVTT named after each recording, for a player to show beside it",
            "annotations  W3C Web Annotations, JSON-LD",
            "coco         COCO keypoints",
            "chapters     Matroska chapters (XML) and FFmpeg metadata",
            "",
            "JSON: files, notCarried (what the files do not hold), personalData (what they say about people)."
        })
final class ExportCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Option(names = "--book", required = true, paramLabel = "FILE", description = "the book")
    private Path book;

    @Option(names = "--kind", required = true, paramLabel = "KIND", description = "one of the kinds of files below")
    private String kind;

    @Option(names = "--out", required = true, paramLabel = "DIR", description = "folder; made if it is not there")
    private Path out;

    @Option(
            names = "--herd",
            paramLabel = "NAME",
            description = "one herd only; without it every herd, each in a folder of its own where there are several")
    private @Nullable String herd;

    @Option(names = "--pseudonyms", description = "numbers of the export's own in place of people and cows")
    private boolean pseudonyms;

    @Option(
            names = "--for-spreadsheet",
            description = "an apostrophe before text that a spreadsheet would run as a formula")
    private boolean forSpreadsheet;

    @Option(names = "--replace", description = "write over an earlier export")
    private boolean replace;

    @Option(names = "--json", description = "one JSON document")
    private boolean json;

    @SuppressWarnings("NullAway.Init") // picocli fills the fields in
    ExportCommand() {}

    @Override
    public Integer call() {
        ExportOrder order =
                new ExportOrder(kind(), out, Optional.ofNullable(herd), pseudonyms, forSpreadsheet, replace);
        if (forSpreadsheet && order.kind() != ExportOrder.Kind.CSV) {
            throw new BadInput("--for-spreadsheet goes with --kind csv; leave it out for the others.");
        }
        if (!Files.exists(book)) {
            throw new BadInput("There is no book " + Sentences.onOneLine(book.toString()) + "; check the name.");
        }
        ExportReport report;
        try (Book open = Books.open(book)) {
            report = new WriteExport(open).write(order);
        }
        PrintWriter say = spec.commandLine().getOut();
        if (json) {
            JsonOut.object(say, o -> {
                o.texts("files", report.files().stream().map(Path::toString).toList());
                o.texts("notCarried", report.notCarried());
                o.text("personalData", report.personalData());
            });
            return 0;
        }
        report.files().forEach(say::println);
        if (!report.notCarried().isEmpty()) {
            say.println("Not in these files:");
            report.notCarried().forEach(left -> say.println("  " + left));
        }
        say.println(report.personalData());
        return 0;
    }

    private ExportOrder.Kind kind() {
        return Arrays.stream(ExportOrder.Kind.values())
                .filter(k -> k.name().equalsIgnoreCase(kind.strip()))
                .findFirst()
                .orElseThrow(() -> new BadInput("There is no kind \"" + Sentences.onOneLine(kind)
                        + "\" of export; choose one of "
                        + Arrays.stream(ExportOrder.Kind.values())
                                .map(k -> k.name().toLowerCase(Locale.ROOT))
                                .collect(Collectors.joining(", "))
                        + "."));
    }
}
