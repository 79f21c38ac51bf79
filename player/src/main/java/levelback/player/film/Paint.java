package levelback.player.film;

import java.awt.Color;
import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import levelback.clips.write.Overlay;
import levelback.player.theme.Theme;

/** What the layers of a clip are drawn with: the desk's own letters, light on a dark plate. No screen is needed. */
final class Paint {

    static final Color PLATE = new Color(14, 19, 18, 190);
    static final Color INK = new Color(242, 244, 240);

    private static final String FONT = "LevelbackSans-SemiBold.ttf";
    private static final int LINES_IN_A_PICTURE = 22;
    private static final int SMALLEST = 11;

    static {
        System.setProperty("java.awt.headless", "true");
    }

    private Paint() {}

    /** Height of letters that can be read in a picture of this size, on a phone too. */
    static int letters(int width, int height) {
        return Math.max(SMALLEST, Math.min(width, height) / LINES_IN_A_PICTURE);
    }

    static Font font(int size) {
        try (InputStream in = Theme.class.getResourceAsStream(FONT)) {
            if (in != null) {
                return Font.createFont(Font.TRUETYPE_FONT, in).deriveFont((float) size);
            }
        } catch (IOException | FontFormatException unreadable) {
            // the system's own does as well
        }
        return new Font(Font.SANS_SERIF, Font.BOLD, size);
    }

    static BufferedImage image(int width, int height) {
        return new BufferedImage(width, height, BufferedImage.TYPE_INT_ARGB);
    }

    static Graphics2D pen(BufferedImage on) {
        Graphics2D pen = on.createGraphics();
        pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        pen.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        return pen;
    }

    static Overlay.Layer layer(int x, int y, BufferedImage image) {
        ByteBuffer bytes = ByteBuffer.allocate(4 * image.getWidth() * image.getHeight());
        for (int row = 0; row < image.getHeight(); row++) {
            for (int column = 0; column < image.getWidth(); column++) {
                int argb = image.getRGB(column, row);
                bytes.put((byte) argb)
                        .put((byte) (argb >> 8))
                        .put((byte) (argb >> 16))
                        .put((byte) (argb >> 24));
            }
        }
        return new Overlay.Layer(x, y, image.getWidth(), image.getHeight(), bytes);
    }
}
