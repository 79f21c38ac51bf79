package levelback.player.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import levelback.player.report.ReportFigures.FootLine;
import levelback.player.report.ReportFigures.Level;
import levelback.player.report.ReportFigures.Lifted;
import levelback.player.report.ReportFigures.Made;
import levelback.player.report.ReportFigures.Pair;
import levelback.player.report.ReportFigures.Point;
import levelback.player.report.ReportFigures.Quick;
import levelback.player.report.ReportFigures.Shot;
import levelback.player.report.ReportFigures.SinceLast;
import levelback.player.report.ReportFigures.ThenAndNow;
import levelback.player.report.ReportFigures.Trust;
import levelback.scoring.scale.GaitScale;
import levelback.scoring.scale.ScaleLevel;
import levelback.scoring.value.Estimate;
import levelback.scoring.value.Leg;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

/** What the page says, in the browser's text and in the PDF. */
class ReportPageTest {

    private static final GaitScale SCALE = new GaitScale(
            "mobility-0-3",
            "mobility 0–3",
            "sheet of 2011",
            List.of(new ScaleLevel(0, ""), new ScaleLevel(1, ""), new ScaleLevel(2, ""), new ScaleLevel(3, "")),
            2,
            3,
            1);

    static ReportFigures figures(int lifted) {
        List<Point> trend = new ArrayList<>();
        for (int i = 0; i < 9; i++) {
            double p = 0.33 - 0.02 * i;
            trend.add(new Point(
                    LocalDate.of(2025, 11, 18).plusDays(14L * i),
                    60,
                    Math.round(60 * p),
                    Estimate.of(p, p - 0.1, p + 0.12, 60, "Wilson"),
                    i % 3));
        }
        List<Lifted> rows = new ArrayList<>();
        for (int i = 0; i < lifted; i++) {
            rows.add(new Lifted(
                    "%03d".formatted(i + 7),
                    "Plover",
                    OptionalDouble.of(3 - i % 4),
                    List.of(
                            OptionalDouble.of(0),
                            OptionalDouble.of(1),
                            OptionalDouble.empty(),
                            OptionalDouble.of(2),
                            OptionalDouble.of(3 - i % 4)),
                    i % 3 == 0
                            ? List.of(
                                    new FootLine(
                                            Optional.of(Leg.LH),
                                            "SU 3, outer zone 4; HHE 1, outer zone 6",
                                            "trimmed, dished, block on inner"),
                                    new FootLine(Optional.of(Leg.RF), "DD M2, zone 10", "dressed"))
                            : List.of(new FootLine(Optional.empty(), "no lesion, all four feet", "trimmed")),
                    Optional.of(LocalDate.of(2026, 4, 9)),
                    i % 4 == 3 ? "control" : ""));
        }
        Estimate se = Estimate.of(0.62, 0.501, 0.764, 91, "Begg and Greenes");
        Pair sensitivity = new Pair("sensitivity", Estimate.of(0.934, 0.81, 0.98, 40, "Wilson"), Optional.of(se));
        byte[] png = png();
        return new ReportFigures(
                "Brack & Fell <Farm>",
                LocalDate.of(2026, 3, 10),
                9,
                SCALE,
                "Ada",
                List.of("Oda"),
                trend.get(8),
                Optional.of(trend.get(0)),
                2,
                trend,
                Optional.of(new SinceLast(LocalDate.of(2026, 2, 24), 5, 3, 6, 4, 7)),
                Estimate.of(3, 2, 5, 40, "Kaplan-Meier"),
                new Quick(31, 94),
                List.of(new Level(0, 30), new Level(1, 18), new Level(2, 9), new Level(3, 1)),
                Optional.of(new ThenAndNow(
                        "112",
                        "Curlew",
                        Optional.of(Leg.RH),
                        List.of("SU, RH outer zone 4, lifted 26 February; block on inner."),
                        List.of(3.0, 1.0),
                        new Shot(LocalDate.of(2026, 2, 24), OptionalDouble.of(3), "exit-1.mp4", 88, png, ""),
                        new Shot(
                                LocalDate.of(2026, 3, 10),
                                OptionalDouble.of(1),
                                "exit-3.mp4",
                                61,
                                new byte[0],
                                "exit-3.mp4 is not where it was; find it again."))),
                rows,
                new Trust(
                        "Visits 1 to 9, alarm lesions within 0 to 14 days",
                        sensitivity,
                        List.of(sensitivity),
                        "lifting depended on the score alone",
                        "",
                        540,
                        160),
                new Made(
                        "levelback 0.1.0",
                        LocalDate.of(2025, 11, 18),
                        LocalDate.of(2026, 3, 10),
                        "all cows",
                        58,
                        "7f3ac21e",
                        ZoneId.of("Europe/London"),
                        Instant.parse("2026-03-11T10:31:00Z")));
    }

    private static byte[] png() {
        return java.util.Base64.getDecoder()
                .decode(
                        "iVBORw0KGgoAAAANSUhEUgAAACAAAAASCAIAAAC1qksFAAAAWElEQVR4nLXCERaEAABF0b/OsPMpeBCG4eBgOBiGg4NhONhKWsW752Yo6oxFnamoMxd1lqLOWtR5FXXeRZ2tqPMp6uxFnaOo8y3q/Io6Z1HnKur8izp3UT8VETwuAIE05wAAAABJRU5ErkJggg==");
    }

    @Test
    void saysTheHeadlineWithItsIntervalInBothFiles() throws Exception {
        ReportPage page = new ReportPage(figures(14), new ReportWords(Locale.UK));
        String html = page.html();
        ByteArrayOutputStream pdf = new ByteArrayOutputStream();
        ReportPdf.write(page, pdf);
        // Kept for the eye: target/report-look.
        Path keep = Files.createDirectories(Path.of("target", "report-look"));
        Files.write(keep.resolve("report.pdf"), pdf.toByteArray());
        Files.writeString(keep.resolve("report.html"), html);
        String paper = textOf(pdf.toByteArray());
        String screen = html.replaceAll("(?s)<style>.*?</style>", "")
                .replaceAll("<[^>]+>", " ")
                .replace('\u00a0', ' ');
        for (String said : List.of(
                "10 of 60 cows scored lame:",
                "17.0 %",
                "7.0 to 29.0",
                "Down from 33.0 %",
                "Visit 9, Tuesday 10 March 2026.",
                "62 times in 100 (50 to 76)",
                "93 in 100 (81 to 98)",
                "lifting depended on the score alone",
                "540 cow-visits scored, 160 of them lifted",
                "7f3ac21e",
                "Europe/London",
                "frame 88 of exit-1.mp4",
                "exit-3.mp4 is not where it was",
                "does not diagnose")) {
            assertThat(flat(screen)).as("html").contains(said);
            assertThat(flat(paper)).as("pdf").contains(said);
        }
        // The stripper reads the two page numbers after the words around them.
        assertThat(flat(paper)).contains("page of 1 2").contains("page of 2 2").contains("Brack & Fell <Farm>");
    }

    /** Two pages, however many were lifted; how far to trust the scores stands on the first, with the worst cows. */
    @Test
    void theTrustBoxStaysOnTheFirstOfTwoPages() throws Exception {
        for (int lifted : new int[] {0, 1, 4, 9, 14, 20}) {
            ByteArrayOutputStream pdf = new ByteArrayOutputStream();
            ReportPdf.write(new ReportPage(figures(lifted), new ReportWords(Locale.UK)), pdf);
            try (PDDocument document = Loader.loadPDF(pdf.toByteArray())) {
                assertThat(document.getNumberOfPages()).as("%s lifted", lifted).isEqualTo(2);
                PDFTextStripper first = new PDFTextStripper();
                first.setEndPage(1);
                String page = flat(first.getText(document));
                assertThat(page).as("%s lifted", lifted).contains("540 cow-visits scored, 160 of them lifted");
                if (lifted > 4) {
                    assertThat(page).contains("first 5 of " + lifted);
                }
            }
        }
    }

    @Test
    void reachesForNothingOutside() {
        String html = new ReportPage(figures(3), new ReportWords(Locale.UK)).html();
        assertThat(html.replace("http://www.w3.org/1999/xhtml", "").replace("http://www.w3.org/2000/svg", ""))
                .doesNotContain("http:")
                .doesNotContain("https:")
                .doesNotContain("<script")
                .doesNotContain("<link")
                .doesNotContain("file:");
    }

    @Test
    void everyScoreHasItsDigitAndEveryLegItsLetters() {
        String html = new ReportPage(figures(6), new ReportWords(Locale.UK)).html();
        assertThat(html)
                .contains(">LH</text>")
                .contains(">RF</text>")
                .contains(">3</text>")
                .contains(">0</text>");
    }

    @Test
    void theRampDarkensInGreyStepByStep() {
        // The stops of the look's score ramp, and relative luminance by WCAG 2.
        double before = 2;
        for (int i = 0; i <= 4; i++) {
            String hex = Ramp.score(i / 4.0, 5);
            double grey = 0;
            double[] weight = {0.2126, 0.7152, 0.0722};
            for (int c = 0; c < 3; c++) {
                double v = Integer.parseInt(hex.substring(1 + 2 * c, 3 + 2 * c), 16) / 255.0;
                grey += weight[c] * (v <= 0.04045 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4));
            }
            assertThat(grey).isLessThan(before - 0.03);
            before = grey;
        }
        assertThat(Ramp.score(0, 4)).isEqualTo("#F4EEF5");
        assertThat(Ramp.score(2.0 / 3, 4)).isEqualTo("#92559B");
        assertThat(Ramp.score(0.5, 5)).isEqualTo("#B688BE");
        assertThat(Ramp.score(1, 5)).isEqualTo("#48134F");
    }

    static String textOf(byte[] pdf) throws Exception {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document);
        }
    }

    static String flat(String text) {
        return text.replace("&lt;", "<")
                .replace("&gt;", ">")
                .replace("&amp;", "&")
                .replace('\u00a0', ' ')
                .replaceAll("\\s+", " ");
    }
}
