package levelback.player.theme;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javafx.scene.Scene;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;
import levelback.scoring.scale.GaitScale;

/**
 * Colours and type of the desk. Nodes get their colours from the stylesheet by looked-up names ({@code -lb-ink} and so on);
 * a Canvas asks {@link #colour(Role, boolean)}. Both come from one file, {@code tokens.css}.
 */
public final class Theme {

    /** Steps of the score ramp between two neighbouring levels that the stylesheet names. */
    static final int PER_LEVEL = 4;

    /** Black or white: one of the two has at least 4.58 on any ground. */
    private static final Color DARK_DIGIT = Color.BLACK;

    private static final Map<Role, Color> LIGHT = read("light");
    private static final Map<Role, Color> DARK = read("dark");
    private static final String DESK_CSS = Objects.requireNonNull(
                    Theme.class.getResource("/levelback/player/theme/desk.css"))
            .toExternalForm();
    private static boolean fontsLoaded;

    /** The weights that the desk's face has. */
    public enum Weight {
        TEXT("Levelback Sans"),
        HEAD("Levelback Sans SemiBold"),
        STRONG("Levelback Sans");

        private final String family;

        Weight(String family) {
            this.family = family;
        }
    }

    private Theme() {}

    /** The colour of a role. */
    public static Color colour(Role role, boolean dark) {
        return Objects.requireNonNull((dark ? DARK : LIGHT).get(role), () -> "no colour for " + role);
    }

    /** The colour of a score on its scale: the tokens for four and five levels, OKLab between their ends for others. */
    public static Color ramp(GaitScale scale, double level, boolean dark) {
        return mixed(anchors(scale), fraction(scale, level), dark);
    }

    /** The colour of a digit on {@link #ramp}. */
    public static Color onRamp(GaitScale scale, double level, boolean dark) {
        Role[] anchors = anchors(scale);
        double at = fraction(scale, level) * (anchors.length - 1);
        if (Math.rint(at) == at) {
            return colour(digitOf(anchors[(int) at]), dark);
        }
        return clearer(ramp(scale, level, dark));
    }

    /** How far up its scale a score is, 0 sound to 1 lamest. */
    static double fraction(GaitScale scale, double level) {
        return (level - scale.lowest()) / (scale.highest() - scale.lowest());
    }

    /** The name in the stylesheet of the nearest ramp colour. */
    static String rampName(GaitScale scale, double level) {
        Role[] anchors = anchors(scale);
        return anchors.length + "-" + Math.round(fraction(scale, level) * steps(anchors));
    }

    /** A face of the desk for a Canvas or a Text. */
    public static Font font(Weight weight, double sizePx) {
        loadFonts();
        return weight == Weight.STRONG
                ? Font.font(weight.family, javafx.scene.text.FontWeight.BOLD, sizePx)
                : Font.font(weight.family, sizePx);
    }

    /** The stylesheets of a scene: colours first, then the shapes laid over JavaFX's own. */
    public static List<String> stylesheets(boolean dark) {
        loadFonts();
        String colours = colourSheet(dark);
        return List.of(
                "data:text/css;base64," + Base64.getEncoder().encodeToString(colours.getBytes(StandardCharsets.UTF_8)),
                DESK_CSS);
    }

    /** Dresses a scene, or dresses it anew after a change of theme. */
    public static void apply(Scene scene, boolean dark) {
        scene.getStylesheets().setAll(stylesheets(dark));
        scene.setFill(colour(Role.GROUND, dark));
    }

    static String colourSheet(boolean dark) {
        StringBuilder css = new StringBuilder(".root {\n");
        for (Role role : Role.values()) {
            line(css, role.css(), colour(role, dark));
        }
        for (Role[] anchors : List.of(FOUR, FIVE, ENDS)) {
            int steps = steps(anchors);
            for (int step = 0; step <= steps; step++) {
                double fraction = (double) step / steps;
                Color colour = mixed(anchors, fraction, dark);
                double at = fraction * (anchors.length - 1);
                Color digit = Math.rint(at) == at ? colour(digitOf(anchors[(int) at]), dark) : clearer(colour);
                line(css, "-lb-ramp-" + anchors.length + "-" + step, colour);
                line(css, "-lb-digit-" + anchors.length + "-" + step, digit);
            }
        }
        return css.append("}\n").toString();
    }

    private static final Role[] FOUR = {Role.S0, Role.S1, Role.S2, Role.S3};
    private static final Role[] FIVE = {Role.S0, Role.S1, Role.S15, Role.S2, Role.S3};
    private static final Role[] ENDS = {Role.S0, Role.S3};

    private static Role[] anchors(GaitScale scale) {
        return switch (scale.levels().size()) {
            case 4 -> FOUR;
            case 5 -> FIVE;
            default -> ENDS;
        };
    }

    private static int steps(Role[] anchors) {
        // Two ends alone must carry scales of any number of levels; 24 divides by most of them.
        return anchors.length == ENDS.length ? 24 : (anchors.length - 1) * PER_LEVEL;
    }

    private static Color mixed(Role[] anchors, double fraction, boolean dark) {
        double at = Math.max(0, Math.min(1, fraction)) * (anchors.length - 1);
        int below = Math.min((int) at, anchors.length - 2);
        if (Math.rint(at) == at) {
            return colour(anchors[(int) at], dark);
        }
        return Oklab.mix(colour(anchors[below], dark), colour(anchors[below + 1], dark), at - below);
    }

    private static Role digitOf(Role ramp) {
        return switch (ramp) {
            case S0 -> Role.T0;
            case S1 -> Role.T1;
            case S15 -> Role.T15;
            case S2 -> Role.T2;
            case S3 -> Role.T3;
            default -> throw new IllegalArgumentException("not a colour of the ramp: " + ramp);
        };
    }

    private static Color clearer(Color ground) {
        return Oklab.contrast(Color.WHITE, ground) > Oklab.contrast(DARK_DIGIT, ground) ? Color.WHITE : DARK_DIGIT;
    }

    private static void line(StringBuilder css, String name, Color colour) {
        css.append(String.format(
                Locale.ROOT,
                "  %s: #%02x%02x%02x;%n",
                name,
                Math.round(colour.getRed() * 255),
                Math.round(colour.getGreen() * 255),
                Math.round(colour.getBlue() * 255)));
    }

    private static synchronized void loadFonts() {
        if (fontsLoaded) {
            return;
        }
        for (String face : List.of("Regular", "SemiBold", "Bold", "Italic")) {
            String name = "/levelback/player/theme/LevelbackSans-" + face + ".ttf";
            Font.loadFont(
                    Objects.requireNonNull(Theme.class.getResource(name), name).toExternalForm(), 13);
        }
        fontsLoaded = true;
    }

    private static Map<Role, Color> read(String theme) {
        Matcher block = Pattern.compile("\\." + theme + " \\{(.*?)\\n\\}", Pattern.DOTALL)
                .matcher(tokens());
        if (!block.find()) {
            throw new IllegalStateException("tokens.css has no block ." + theme);
        }
        Map<String, Color> byToken = new HashMap<>();
        Matcher line = Pattern.compile("--(\\w+): (#[0-9A-Fa-f]{6});").matcher(block.group(1));
        while (line.find()) {
            byToken.put(line.group(1).toLowerCase(Locale.ROOT), Color.web(line.group(2)));
        }
        Map<Role, Color> colours = new EnumMap<>(Role.class);
        for (Role role : Role.values()) {
            colours.put(role, Objects.requireNonNull(byToken.get(role.token()), () -> theme + " has no " + role));
        }
        return colours;
    }

    static String tokens() {
        try (InputStream in =
                Objects.requireNonNull(Theme.class.getResourceAsStream("/levelback/player/theme/tokens.css"))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
