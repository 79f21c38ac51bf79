package levelback.player.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import java.util.concurrent.Callable;
import levelback.player.report.ReportFigures;
import levelback.player.work.WriteReport;
import levelback.scoring.value.Estimate;
import levelback.store.book.Book;
import levelback.store.book.Books;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code report}: a visit's report as HTML and PDF. */
@Command(name = "report", description = "Writes report.html and report.pdf of a visit.")
final class ReportCommand implements Callable<Integer> {

    @Spec
    CommandSpec spec;

    @Option(names = "--book", required = true, paramLabel = "FILE", description = "the book")
    Path book;

    @Option(names = "--out", required = true, paramLabel = "DIR", description = "folder for the two files")
    Path out;

    @Option(names = "--herd", paramLabel = "NAME", description = "which herd, where the book has several")
    @Nullable
    String herd;

    @Option(
            names = "--visit",
            paramLabel = "DATE",
            description = "which visit (2026-03-14); the last one scored if left out")
    @Nullable
    LocalDate visit;

    @Override
    public Integer call() throws Exception {
        PrintWriter say = spec.commandLine().getOut();
        try (Book open = Books.open(book)) {
            WriteReport.Written written = new WriteReport(open, Version.line())
                    .write(out, Optional.ofNullable(herd), Optional.ofNullable(visit));
            say.println(written.html());
            say.println(written.pdf());
            say.println(headline(written.figures()));
        }
        return 0;
    }

    /** The report's first sentence. */
    static String headline(ReportFigures figures) {
        return "%s, visit of %s: %d of %d cows scored lame, %s."
                .formatted(
                        figures.herd(),
                        figures.visit(),
                        figures.today().lame(),
                        figures.today().scored(),
                        percent(figures.today().share()));
    }

    /** {@code 18.6 % (13.6 to 25.0)}. */
    static String percent(Estimate share) {
        if (share.value().isEmpty()) {
            return share.why().orElse("");
        }
        String value = String.format(
                java.util.Locale.ROOT, "%.1f %%", 100 * share.value().getAsDouble());
        return share.interval()
                .map(i ->
                        value + String.format(java.util.Locale.ROOT, " (%.1f to %.1f)", 100 * i.low(), 100 * i.high()))
                .orElse(value);
    }
}
