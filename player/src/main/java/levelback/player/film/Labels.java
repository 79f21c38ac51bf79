package levelback.player.film;

import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import levelback.clips.write.Overlay;

/**
 * Lines of text in the top left corner, and the time of each frame as minutes and seconds since frame 0: light on a dark
 * plate, so that they can be read on straw and on wet concrete. Used by one thread.
 */
public final class Labels implements Overlay {

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
        this.lines = List.copyOf(lines);
        this.time = time;
        int size = Paint.letters(width, height);
        this.margin = size / 2;
        this.most = Math.max(1, width - 4 * margin);
        this.font = Paint.font(size);
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
        Graphics2D measure = Paint.image(1, 1).createGraphics();
        FontMetrics metrics = measure.getFontMetrics(font);
        List<String> fitting = all.stream().map(line -> fit(line, metrics)).toList();
        int width = fitting.stream().mapToInt(metrics::stringWidth).max().orElse(1) + 2 * margin;
        int height = metrics.getHeight() * fitting.size() + margin;
        measure.dispose();
        BufferedImage image = Paint.image(width, height);
        Graphics2D pen = Paint.pen(image);
        pen.setColor(Paint.PLATE);
        pen.fillRoundRect(0, 0, width, height, margin, margin);
        pen.setColor(Paint.INK);
        pen.setFont(font);
        for (int i = 0; i < fitting.size(); i++) {
            pen.drawString(fitting.get(i), margin, margin / 2 + metrics.getAscent() + i * metrics.getHeight());
        }
        pen.dispose();
        return Paint.layer(margin, margin, image);
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
}
