package levelback.scoring.proof;

import java.util.LinkedHashSet;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import levelback.scoring.foot.DdStage;
import levelback.scoring.foot.Lesion;
import levelback.scoring.foot.Lesions;

/**
 * The lesions a proof looks for.
 *
 * @param name {@code alarm}, {@code any}, or the codes as asked for
 * @param codes single codes after groups were taken apart; empty where every code counts
 * @param activeStagesOnly whether digital dermatitis with a stage counts only in M1, M2 and M4.1
 */
public record LesionSet(String name, Set<String> codes, boolean activeStagesOnly) {
    public LesionSet {
        codes = Set.copyOf(codes);
    }

    /** Every code but {@code NONE} and {@code REFUSED}. */
    public static LesionSet any() {
        return new LesionSet("any", Set.of(), false);
    }

    /** The lesions that want action that day (common practice, no single source): ulcers, TN, WLA, IP, SW, active DD. */
    public static LesionSet alarm() {
        Set<String> codes = Lesions.all().stream()
                .filter(Lesion::alarm)
                .map(Lesion::code)
                .collect(Collectors.toCollection(TreeSet::new));
        codes.add("U");
        return new LesionSet("alarm", codes, true);
    }

    /**
     * Reads {@code alarm}, {@code any} or a list of codes with commas; {@code U}, {@code WL}, {@code SH}, {@code HF} stand
     * for their kinds and themselves.
     *
     * @throws IllegalArgumentException if no code is named; the message is a sentence for a person
     */
    public static LesionSet of(String spec) {
        String wanted = spec.strip();
        if (wanted.equalsIgnoreCase("any")) {
            return any();
        }
        if (wanted.equalsIgnoreCase("alarm")) {
            return alarm();
        }
        Set<String> codes = new LinkedHashSet<>();
        Set<String> asked = new LinkedHashSet<>();
        for (String part : wanted.split(",", -1)) {
            String code = part.strip().toUpperCase(Locale.ROOT);
            if (!code.isEmpty()) {
                asked.add(code);
                codes.add(code);
                codes.addAll(Lesions.membersOf(code));
            }
        }
        if (codes.isEmpty() || codes.contains(Lesions.NONE) || codes.contains(Lesions.REFUSED)) {
            throw new IllegalArgumentException(
                    "the lesions \"" + spec + "\" name no lesion; give alarm, any, or codes such as SU,WLA");
        }
        return new LesionSet(String.join(",", asked), codes, false);
    }

    /** Whether a line of a trim counts as a lesion of this set. */
    public boolean has(TrimRow row) {
        return has(row.lesion(), row.stage());
    }

    /**
     * Whether a code counts.
     *
     * @param code in upper case
     * @param stage stage of digital dermatitis, or empty text
     */
    public boolean has(String code, String stage) {
        if (code.equals(Lesions.NONE) || code.equals(Lesions.REFUSED)) {
            return false;
        }
        if (!codes.isEmpty() && !codes.contains(code)) {
            return false;
        }
        return !(activeStagesOnly && code.equals("DD") && !stage.isEmpty())
                || DdStage.of(stage).map(DdStage::isActive).orElse(false);
    }
}
