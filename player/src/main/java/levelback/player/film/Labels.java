package levelback.player.film;

import java.awt.Color;
import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import levelback.clips.write.Overlay;
import levelback.player.theme.Theme;

/**
 * Lines of text in the top left corner, and the time of each frame as minutes and seconds since frame 0: light on a dark
 * plate, so that they can be read on straw and on wet concrete. Used by one thread.
 */
public final class Labels implements Overlay {

    private static final String FONT = "LevelbackSans-SemiBold.ttf";
    private static final int LINES_IN_A_PICTURE = 22;
    private static final int SMALLEST = 11;
    private static final Color PLATE = new Color(14, 19, 18, 190);
    private static final Color INK = new Color(242, 244, 240);
    private static final double MICROS = 1e6;

    private final List<String> lines;
    private final boolean time;
    private final int most;
    private final Font font;
    private final int margin;

    /**
     * @param lines what they say
     * @param time whether the time of each frame stands below them
     * @param width of the pictures; what does not fit is cut off with an ellipsis
     * @param height of the pictures
     */
    public Labels(List<String> lines, boolean time, int width, int height) {
        System.setProperty("java.awt.headless", "true");
        this.lines = List.copyOf(lines);
        this.time = time;
        int size = Math.max(SMALLEST, Math.min(width, height) / LINES_IN_A_PICTURE);
        this.margin = size / 2;
        this.most = Math.max(1, width - 4 * margin);
        this.font = font(size);
    }

    private static Font font(int size) {
        try (InputStream in = Theme.class.getResourceAsStream(FONT)) {
            if (in != null) {
                return Font.createFont(Font.TRUETYPE_FONT, in).deriveFont((float) size);
            }
        } catch (IOException | FontFormatException unreadable) {
            // the system's own does as well
        }
        return new Font(Font.SANS_SERIF, Font.BOLD, size);
    }

    /** {@code 1:02.345}: minutes, seconds, milliseconds. */
    static String clock(long afterUs) {
        long millis = Math.round(afterUs * 1000 / MICROS);
        return String.format(Locale.ROOT, "%d:%02d.%03d", millis / 60_000, millis / 1000 % 60, millis % 1000);
    }

    @Override
    public List<Layer> over(int frame, long afterUs) {
        List<String> all = new ArrayList<>(lines);
        if (time) {
            all.add(clock(afterUs));
        }
        return all.isEmpty() ? List.of() : List.of(plate(all));
    }

    private Layer plate(List<String> all) {
        BufferedImage probe = new BufferedImage(1, 1, BufferedImage.TYPE_INT_ARGB);
        Graphics2D measure = probe.createGraphics();
        FontMetrics metrics = measure.getFontMetrics(font);
        List<String> fitting = all.stream().map(line -> fit(line, metrics)).toList();
        int width = fitting.stream().mapToInt(metrics::stringWidth).max().orElse(1) + 2 * margin;
        int height = metrics.getHeight() * fitting.size() + margin;
        measure.dispose();
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_ARGB);
        Graphics2D pen = image.createGraphics();
        pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        pen.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        pen.setColor(PLATE);
        pen.fillRoundRect(0, 0, width, height, margin, margin);
        pen.setColor(INK);
        pen.setFont(font);
        for (int i = 0; i < fitting.size(); i++) {
            pen.drawString(fitting.get(i), margin, margin / 2 + metrics.getAscent() + i * metrics.getHeight());
        }
        pen.dispose();
        return new Layer(margin, margin, width, height, bytes(image));
    }

    private String fit(String line, FontMetrics metrics) {
        String clean = line.replaceAll("\\p{Cntrl}+", " ");
        if (metrics.stringWidth(clean) <= most) {
            return clean;
        }
        int end = clean.length();
        while (end > 0 && metrics.stringWidth(clean.substring(0, end) + "…") > most) {
            end = clean.offsetByCodePoints(end, -1);
        }
        return clean.substring(0, end) + "…";
    }

    private static ByteBuffer bytes(BufferedImage image) {
        ByteBuffer bytes = ByteBuffer.allocate(4 * image.getWidth() * image.getHeight());
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                int argb = image.getRGB(x, y);
                bytes.put((byte) argb)
                        .put((byte) (argb >> 8))
                        .put((byte) (argb >> 16))
                        .put((byte) (argb >> 24));
            }
        }
        return bytes;
    }
}
