package levelback.player.theme;

import java.util.Locale;
import levelback.scoring.value.Leg;

/**
 * What a colour is for. Code names the role and never the colour; {@code tokens.css} gives each role a colour for light
 * and for dark. In a stylesheet the role {@code GATE_WASH} is {@code -lb-gate-wash}.
 */
public enum Role {
    /** Behind the page, race and sill. */
    GROUND,
    /** The page. */
    SHEET,
    /** Group heads, quiet fields, chart floors. */
    INSET,
    /** Hairlines; decoration only. */
    RULE,
    /** Control and mark outlines. */
    EDGE,
    /** Text of the first voice; marks. */
    INK,
    /** Text of the second voice. */
    INK2,
    /** Text of the third voice; hints. */
    INK3,
    /** Action, focus, progress; never "good". */
    GATE,
    /** Text on {@link #GATE}. */
    ON_GATE,
    /** Chosen row or key. */
    GATE_WASH,
    /** Caution ground. */
    RADDLE,
    /** Text on caution. */
    ON_RADDLE,
    /** Error edge and text. */
    STOP,
    /** Text on {@link #STOP}. */
    ON_STOP,
    /** Error ground. */
    STOP_WASH,
    /** Behind pictures. */
    WELL,
    /** Text on pictures. */
    ON_WELL,
    /** Focus ring. */
    FOCUS,
    /** Score ramp, soundest. */
    S0,
    /** Score ramp, second of four and of five. */
    S1,
    /** Score ramp, the middle of five. */
    S15,
    /** Score ramp, third of four, fourth of five. */
    S2,
    /** Score ramp, lamest. */
    S3,
    /** Digit on {@link #S0}. */
    T0,
    /** Digit on {@link #S1}. */
    T1,
    /** Digit on {@link #S15}. */
    T15,
    /** Digit on {@link #S2}. */
    T2,
    /** Digit on {@link #S3}. */
    T3,
    /** Outline of every score tile. */
    S_EDGE,
    /** Left fore. */
    LF,
    /** Right fore. */
    RF,
    /** Left hind. */
    LH,
    /** Right hind. */
    RH,
    /** Letters on {@link #LF}. */
    ON_LF,
    /** Letters on {@link #RF}. */
    ON_RF,
    /** Letters on {@link #LH}. */
    ON_LH,
    /** Letters on {@link #RH}. */
    ON_RH,
    /** Outline of leg marks. */
    LEG_EDGE;

    /** The colour of a leg; its letters always stand beside it. */
    public static Role of(Leg leg) {
        return switch (leg) {
            case LF -> LF;
            case RF -> RF;
            case LH -> LH;
            case RH -> RH;
        };
    }

    /** The colour of letters on a leg's colour. */
    public static Role on(Leg leg) {
        return switch (leg) {
            case LF -> ON_LF;
            case RF -> ON_RF;
            case LH -> ON_LH;
            case RH -> ON_RH;
        };
    }

    /** The name in a stylesheet, such as {@code -lb-gate-wash}. */
    public String css() {
        return "-lb-" + name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The name in {@code tokens.css} without dashes and case, such as {@code gatewash}. */
    String token() {
        return name().toLowerCase(Locale.ROOT).replace("_", "");
    }
}
