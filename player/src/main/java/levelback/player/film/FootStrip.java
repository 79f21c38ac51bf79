package levelback.player.film;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import levelback.clips.write.Overlay;
import levelback.player.theme.Role;
import levelback.player.theme.Theme;
import levelback.scoring.gait.Footfall;
import levelback.scoring.value.Leg;

/**
 * The strip along the foot of the pictures: one line for each leg, its stances as bars over the length of the clip, and a
 * playhead at the frame that is shown. Used by one thread.
 */
public final class FootStrip implements Overlay {

    private static final List<Leg> LINES = List.of(Leg.LF, Leg.RF, Leg.LH, Leg.RH);
    private static final double MICROS = 1e6;

    /** A bar. */
    private record Bar(double fromS, double toS) {}

    private final Map<Leg, List<Bar>> stances = new EnumMap<>(Leg.class);
    private final double fromS;
    private final double toS;
    private final int width;
    private final int height;
    private final int letters;
    private final int line;
    private final int gutter;
    private final Layer band;

    /**
     * @param footfalls their times in seconds since frame 0
     * @param fromS beginning of the clip, in seconds since frame 0
     * @param toS end of the clip, after {@code fromS}
     * @param width of the pictures
     * @param height of the pictures
     */
    public FootStrip(List<Footfall> footfalls, double fromS, double toS, int width, int height) {
        this.fromS = fromS;
        this.toS = toS;
        this.width = width;
        this.height = height;
        this.letters = Paint.letters(width, height);
        this.line = letters * 4 / 3;
        this.gutter = letters * 5 / 2;
        for (Leg leg : LINES) {
            stances.put(leg, bars(footfalls, leg));
        }
        this.band = band();
    }

    /** From each strike to the lift-off after it; one that is never lifted stands to the end. */
    private List<Bar> bars(List<Footfall> footfalls, Leg leg) {
        List<Footfall> own = footfalls.stream()
                .filter(footfall -> footfall.leg() == leg)
                .sorted(Comparator.comparingDouble(Footfall::timeS))
                .toList();
        List<Bar> bars = new ArrayList<>();
        for (int i = 0; i < own.size(); i++) {
            if (own.get(i).event() == Footfall.Event.DOWN) {
                boolean last = i + 1 == own.size();
                double up = last ? toS : own.get(i + 1).timeS();
                if (last || own.get(i + 1).event() == Footfall.Event.UP) {
                    bars.add(new Bar(own.get(i).timeS(), up));
                }
            } else if (i == 0) {
                bars.add(new Bar(fromS, own.get(i).timeS())); // she stood on it when the clip began
            }
        }
        return bars;
    }

    private int bandHeight() {
        return LINES.size() * line + letters / 2;
    }

    private double x(double seconds) {
        double share = (seconds - fromS) / (toS - fromS);
        return gutter + Math.min(1, Math.max(0, share)) * (width - gutter - letters / 2.0);
    }

    private Layer band() {
        BufferedImage image = Paint.image(width, bandHeight());
        Graphics2D pen = Paint.pen(image);
        pen.setColor(Paint.PLATE);
        pen.fillRect(0, 0, width, bandHeight());
        Font font = Paint.font(letters * 9 / 10);
        pen.setFont(font);
        for (int i = 0; i < LINES.size(); i++) {
            Leg leg = LINES.get(i);
            int top = letters / 4 + i * line;
            pen.setColor(Paint.INK);
            pen.drawString(leg.name(), letters / 2, top + line * 3 / 4);
            for (Bar bar : stances.getOrDefault(leg, List.of())) {
                if (bar.toS() <= fromS || bar.fromS() >= toS) {
                    continue;
                }
                int left = (int) Math.round(x(bar.fromS()));
                int right = Math.max(left + 2, (int) Math.round(x(bar.toS())));
                pen.setColor(colour(leg));
                pen.fillRect(left, top + line / 8, right - left, line * 3 / 4);
            }
        }
        pen.dispose();
        return Paint.layer(0, height - bandHeight(), image);
    }

    private static Color colour(Leg leg) {
        javafx.scene.paint.Color hue = Theme.colour(Role.of(leg), true);
        return new Color((float) hue.getRed(), (float) hue.getGreen(), (float) hue.getBlue());
    }

    @Override
    public List<Layer> over(int frame, long afterUs) {
        int thick = Math.max(2, letters / 8);
        BufferedImage image = Paint.image(thick + 2, bandHeight());
        Graphics2D pen = Paint.pen(image);
        pen.setColor(Paint.INK);
        pen.setStroke(new BasicStroke(thick));
        pen.drawLine(image.getWidth() / 2, 0, image.getWidth() / 2, bandHeight());
        pen.dispose();
        int at = (int) Math.round(x(afterUs / MICROS)) - image.getWidth() / 2;
        return List.of(band, Paint.layer(at, height - bandHeight(), image));
    }
}
