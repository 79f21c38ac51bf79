package levelback.player.report;

import com.openhtmltopdf.extend.FSSupplier;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FSFontUseCase;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.EnumSet;
import java.util.Objects;

/** Writes a report as PDF with the program's own fonts in it; reaches for nothing outside the text, needs no screen. */
public final class ReportPdf {

    private static final String[] FACES = {"Regular", "SemiBold", "Bold"};
    private static final int[] WEIGHTS = {400, 600, 700};

    private ReportPdf() {}

    /** Writes the pages to a stream. */
    public static void write(ReportPage page, OutputStream out) throws IOException {
        // Set before the first class of the toolkit loads; on a desk without a screen it would look for one.
        System.setProperty("java.awt.headless", "true");
        XRLog.setLoggingEnabled(false);
        PdfRendererBuilder builder = new PdfRendererBuilder();
        for (int i = 0; i < FACES.length; i++) {
            String file = "/levelback/player/theme/LevelbackSans-" + FACES[i] + ".ttf";
            FSSupplier<InputStream> font =
                    () -> Objects.requireNonNull(ReportPdf.class.getResourceAsStream(file), file);
            builder.useFont(
                    font,
                    "Levelback Sans",
                    WEIGHTS[i],
                    FontStyle.NORMAL,
                    true,
                    EnumSet.of(FSFontUseCase.DOCUMENT, FSFontUseCase.SVG));
        }
        builder.useUriResolver((base, uri) -> uri.startsWith("data:") ? uri : null);
        builder.useSVGDrawer(new BatikSVGDrawer());
        builder.withProducer("Levelback");
        builder.withHtmlContent(page.forPdf(), null);
        builder.toStream(out);
        builder.run();
    }
}
