package levelback.player.work;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Locale;
import java.util.Optional;
import levelback.player.report.ReportFigures;
import levelback.player.report.ReportPage;
import levelback.player.report.ReportPdf;
import levelback.player.report.ReportWords;
import levelback.store.book.Book;

/** Writes the report of a visit: one self-contained HTML file and the same as PDF. Blocking; needs no screen. */
public final class WriteReport {

    private final Book book;
    private final String version;
    private final Clock clock;

    /** @param version Levelback's version and build, for the foot of the page */
    public WriteReport(Book book, String version) {
        this(book, version, Clock.systemUTC());
    }

    WriteReport(Book book, String version, Clock clock) {
        this.book = book;
        this.version = version;
        this.clock = clock;
    }

    /** The two files and what stands in them. */
    public record Written(Path html, Path pdf, ReportFigures figures) {}

    /**
     * Writes {@code report.html} and {@code report.pdf}; both are put in place only when both are whole.
     *
     * @param folder where to; made if it is not there
     * @param herd name of the herd; empty where the book has one herd only
     * @param visit day of the visit; empty for the last one scored
     * @throws BadInput with one sentence where the book holds nothing to report on
     */
    public Written write(Path folder, Optional<String> herd, Optional<LocalDate> visit) throws IOException {
        ReportWords words = new ReportWords(Locale.getDefault());
        ReportFigures figures = new GatherReport(book, words, version, clock.instant()).of(herd, visit);
        ReportPage page = new ReportPage(figures, words);
        if (Files.exists(folder) && !Files.isDirectory(folder)) {
            throw new BadInput(folder + " is a file; name a folder for the report with --out.");
        }
        Files.createDirectories(folder);
        Path html = folder.resolve("report.html");
        Path pdf = folder.resolve("report.pdf");
        Path halfHtml = Files.createTempFile(folder, "report", ".part");
        Path halfPdf = Files.createTempFile(folder, "report", ".part");
        try {
            Files.writeString(halfHtml, page.html(), StandardCharsets.UTF_8);
            try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(halfPdf))) {
                ReportPdf.write(page, out);
            }
            Files.move(halfHtml, html, StandardCopyOption.REPLACE_EXISTING);
            Files.move(halfPdf, pdf, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(halfHtml);
            Files.deleteIfExists(halfPdf);
        }
        return new Written(html, pdf, figures);
    }
}
