package levelback.player.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import levelback.clips.drawn.herd.HerdPlan;
import levelback.clips.drawn.herd.HerdTruth;
import levelback.clips.drawn.herd.HerdVisit;
import levelback.player.report.ReportFigures;
import levelback.player.report.ReportFigures.Trust;
import levelback.scoring.proof.Proof;
import levelback.scoring.proof.ProofResult;
import levelback.scoring.value.Interval;
import levelback.store.book.Book;
import levelback.store.book.Books;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The report's figures are the commands' figures, in the HTML and in the PDF; the truth lies in their intervals. */
class WriteReportTest {

    @TempDir
    static Path temp;

    private static final HerdPlan PLAN = HerdPlan.of(DrawDemo.SEED);
    private static Book book;
    private static WriteReport.Written written;
    private static String html;
    private static String pdf;

    @BeforeAll
    static void writeOnce() throws Exception {
        book = Books.create(temp.resolve("demo.levelback"));
        FillDemoBook fill = new FillDemoBook(book, PLAN);
        fill.people();
        for (HerdVisit visit : PLAN.visits()) {
            fill.visit(visit, List.of());
        }
        Clock clock = Clock.fixed(Instant.parse("2026-03-20T09:00:00Z"), ZoneOffset.UTC);
        written = new WriteReport(book, "levelback test", clock)
                .write(temp.resolve("out"), Optional.empty(), Optional.empty());
        html = flat(Files.readString(written.html())
                .replaceAll("(?s)<style>.*?</style>", "")
                .replaceAll("<[^>]+>", " "));
        try (PDDocument document = Loader.loadPDF(written.pdf().toFile())) {
            pdf = flat(new PDFTextStripper().getText(document));
        }
        Path keep = Files.createDirectories(Path.of("target", "report-look"));
        Files.copy(written.pdf(), keep.resolve("herd.pdf"), java.nio.file.StandardCopyOption.REPLACE_EXISTING);
        Files.copy(written.html(), keep.resolve("herd.html"), java.nio.file.StandardCopyOption.REPLACE_EXISTING);
    }

    @AfterAll
    static void close() {
        book.close();
    }

    @Test
    void theHeadlineIsCountedFromThePlan() {
        HerdVisit last = PLAN.visits().get(8);
        long lame = last.scores().stream()
                .filter(s -> s.scorer().equals("A") && s.level() >= 2)
                .count();
        assertBoth(lame + " of 60 cows scored lame:");
        assertBoth(String.format(Locale.ROOT, "%.1f %%", 100.0 * lame / 60));
    }

    @Test
    void figuresAreThoseOfProof() {
        ReportSource source = ReportSource.read(book, Optional.empty(), Optional.empty());
        ProofResult proof = Proof.of(
                BookRows.of(book, source.herd()).byScorer("Ada Fenn").scores(),
                BookRows.of(book, source.herd()).trims(),
                GatherReport.question(source));
        assertThat(proof.corrected()).isPresent();
        assertBoth(two(proof.observed().sensitivity().value().orElseThrow()));
        assertBoth(two(proof.corrected().get().sensitivity().value().orElseThrow()));
        assertBoth(two(proof.corrected().get().specificity().value().orElseThrow()));
        assertBoth(proof.scored() + " cow-visits scored, " + proof.counts().lifted() + " of them lifted");
        assertBoth(proof.corrected().get().assumption());
    }

    @Test
    void theTruthLiesWithinTheCorrectedIntervals() {
        HerdTruth truth = HerdTruth.of(PLAN, 150);
        Trust trust = written.figures().trust();
        Interval se = trust.rows().get(0).corrected().orElseThrow().interval().orElseThrow();
        Interval sp = trust.rows().get(1).corrected().orElseThrow().interval().orElseThrow();
        assertThat(truth.sensitivity().get("A")).isBetween(se.low(), se.high());
        assertThat(truth.specificity().get("A")).isBetween(sp.low(), sp.high());
        // Only the lifted: the sensitivity is far too high, which is why the correction stands beside it.
        assertThat(trust.rows().get(0).observed().value().orElseThrow())
                .isGreaterThan(truth.sensitivity().getOrDefault("A", 1.0) + 0.1);
    }

    @Test
    void everyVisitHasItsPointWithWilsonsInterval() {
        assertThat(written.figures().trend()).hasSize(9);
        for (ReportFigures.Point point : written.figures().trend()) {
            double p = (double) point.lame() / point.scored();
            double z = 1.959963984540054;
            double n = point.scored();
            // Wilson 1927, written out.
            double middle = (p + z * z / (2 * n)) / (1 + z * z / n);
            double half = z / (1 + z * z / n) * Math.sqrt(p * (1 - p) / n + z * z / (4 * n * n));
            assertThat(point.share().interval().orElseThrow().low()).isCloseTo(middle - half, within(1e-9));
            assertThat(point.share().interval().orElseThrow().high()).isCloseTo(middle + half, within(1e-9));
        }
    }

    @Test
    void anEarlierVisitIsReportedWithoutWhatCameAfter() throws Exception {
        WriteReport.Written earlier = new WriteReport(book, "levelback test")
                .write(
                        temp.resolve("earlier"),
                        Optional.of("Larkenmoss"),
                        Optional.of(PLAN.visits().get(3).date()));
        assertThat(earlier.figures().trend()).hasSize(4);
        assertThat(earlier.figures().ordinal()).isEqualTo(4);
    }

    @Test
    void sameBookSameFingerprint() {
        ReportSource source = ReportSource.read(book, Optional.empty(), Optional.empty());
        assertThat(source.fingerprint()).isEqualTo(written.figures().made().bookFingerprint());
        assertBoth(source.fingerprint());
    }

    private static void assertBoth(String text) {
        assertThat(html).as("html").contains(text);
        assertThat(pdf).as("pdf").contains(text);
    }

    private static String two(double value) {
        return String.format(Locale.ROOT, "%.2f", value).substring(1);
    }

    private static String flat(String text) {
        return text.replace("&#160;", " ")
                .replace("&amp;", "&")
                .replace('\u00a0', ' ')
                .replaceAll("\\s+", " ");
    }
}
