package levelback.clips.drawn.herd;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import levelback.scoring.value.Leg;

/** One cow's life: her lesions, what is seen of them, what is done about them. Days count from the first visit. */
final class HerdBeast {
    private static final String[] CODES = {"SU", "WLA", "WLF", "DD", "SH", "HHE", "IP", "TU"};
    private static final double[] WEIGHTS = {22, 11, 11, 24, 14, 10, 5, 3};

    final HerdCow cow;
    final Random draws;
    final List<HerdLesion> lesions = new ArrayList<>();
    /** Where a block sits, and since which day. */
    private final Map<Leg, Integer> blocks = new EnumMap<>(Leg.class);

    HerdBeast(HerdCow cow, Random draws) {
        this.cow = cow;
        this.draws = draws;
    }

    /** Lives the fortnight that ends on a day; the lesion that began in it, if one did. */
    Optional<HerdOnset> fortnight(int day, LocalDate firstVisit) {
        lesions.removeIf(lesion -> !lesion.visible(day) && lesion.effect(day) < 0.02 && lesion.beginDay < day);
        double begins = draws.nextDouble();
        int daysAgo = draws.nextInt(HerdPlan.DAYS_BETWEEN_VISITS);
        double where = draws.nextDouble();
        boolean left = draws.nextBoolean();
        double which = draws.nextDouble();
        double size = draws.nextGaussian();
        double stage = draws.nextDouble();
        if (begins >= HerdLife.ONSET_CHANCE) {
            return Optional.empty();
        }
        boolean hind = where < 0.75;
        boolean outer = where < 0.60 || where >= 0.90;
        Leg leg = hind ? (left ? Leg.LH : Leg.RH) : (left ? Leg.LF : Leg.RF);
        String code = code(which);
        double full = Math.max(0, 1.7 + 0.5 * size) / (code.equals("SH") || code.equals("HHE") ? 3 : 1);
        boolean skin = code.equals("DD") || code.equals("IP");
        lesions.add(new HerdLesion(
                code,
                leg,
                skin ? "interdigital" : outer ? "lateral" : "medial",
                usualZone(code),
                day - daysAgo,
                full,
                stage < 0.15 ? "M1" : stage < 0.85 ? "M2" : "M4.1"));
        return Optional.of(new HerdOnset(
                cow.number(), firstVisit.plusDays(day - daysAgo), leg, outer ? "lateral" : "medial", code));
    }

    double severity(int day) {
        double s = cow.baseSeverity();
        for (HerdLesion lesion : lesions) {
            s += lesion.effect(day);
        }
        return Math.min(5, Math.max(1, s));
    }

    /** The 0 to 3 scale of the demo, cut on the line: the demo's own cut, not a conversion. */
    static int level(double s) {
        return s < 2 ? 0 : s < 3 ? 1 : s < 4.4 ? 2 : 3;
    }

    HerdState state(int day, int liftDay) {
        double s = severity(day);
        Map<Leg, Double> byLeg = new EnumMap<>(Leg.class);
        Optional<HerdLesion> worst = Optional.empty();
        boolean alarm = false;
        for (HerdLesion lesion : lesions) {
            byLeg.merge(lesion.leg, lesion.effect(day), Double::sum);
            alarm |= lesion.alarm(day + liftDay);
            if (lesion.visible(day)
                    && worst.map(w -> lesion.effect(day) > w.effect(day)).orElse(true)) {
                worst = Optional.of(lesion);
            }
        }
        return new HerdState(
                cow.number(),
                s,
                level(s),
                worst(byLeg, 0.4),
                worst.map(w -> w.leg),
                worst.map(w -> w.code).orElse("NONE"),
                alarm,
                liftDay);
    }

    HerdScore scored(HerdState state, String scorer, double shift, double noise) {
        double seen = cut(state, shift + noise * draws.nextGaussian());
        double names = draws.nextDouble();
        Leg any = draws.nextBoolean() ? Leg.LH : Leg.RH;
        int level = level(seen);
        Optional<Leg> leg = Optional.empty();
        if (level >= 2 && names < 0.95) {
            leg = Optional.of(names < 0.85 ? state.lameLeg().orElse(any) : any);
        }
        return new HerdScore(cow.number(), scorer, level, leg);
    }

    /** The leg that hurts most, if it hurts at least so much; the first in the order of the legs where two tie. */
    private static Optional<Leg> worst(Map<Leg, Double> byLeg, double atLeast) {
        Optional<Leg> worst = Optional.empty();
        double most = atLeast;
        for (Map.Entry<Leg, Double> entry : byLeg.entrySet()) {
            if (entry.getValue() >= most && (worst.isEmpty() || entry.getValue() > most)) {
                worst = Optional.of(entry.getKey());
                most = entry.getValue();
            }
        }
        return worst;
    }

    private static double cut(HerdState state, double added) {
        return Math.min(5, Math.max(1, state.severity() + added));
    }

    HerdLift lifted(int day, int blockDays, LocalDate firstVisit, HerdLift.Why why, OptionalDouble chance) {
        List<HerdFoot> feet = new ArrayList<>();
        Optional<HerdMedicine> medicine = Optional.empty();
        int lookAgain = 0;
        for (Leg leg : Leg.values()) {
            List<HerdFinding> findings = new ArrayList<>();
            List<String> actions = new ArrayList<>(List.of("trimmed"));
            Integer blocked = blocks.get(leg);
            if (blocked != null && day - blocked >= blockDays) {
                actions.add("block-off");
                blocks.remove(leg);
            }
            for (HerdLesion lesion : lesions) {
                if (lesion.leg != leg || !lesion.visible(day) || draws.nextDouble() >= HerdLife.WRITTEN_CHANCE) {
                    continue;
                }
                findings.add(new HerdFinding(
                        lesion.claw,
                        lesion.zone,
                        lesion.code,
                        lesion.code.equals("DD") ? OptionalInt.empty() : OptionalInt.of(lesion.severity(day)),
                        lesion.stage(day)));
                boolean fresh = lesion.alarm(day) && lesion.effect(day) > lesion.effect(day - 1);
                actions.addAll(treatment(lesion, leg, day));
                lookAgain = Math.max(lookAgain, recheckDays(lesion.code));
                if (fresh && (lesion.code.equals("IP") || (lesion.code.equals("DD") && draws.nextBoolean()))) {
                    medicine = Optional.of(note(lesion.code));
                }
                lesion.dress(day);
            }
            feet.add(new HerdFoot(
                    leg, true, findings, actions.stream().distinct().toList()));
        }
        return new HerdLift(
                cow.number(),
                firstVisit.plusDays(day),
                why,
                chance,
                false,
                feet,
                medicine,
                lookAgain == 0 ? Optional.empty() : Optional.of(firstVisit.plusDays(day + lookAgain)));
    }

    /** A block that has been on long enough comes off; the foot is not examined then. */
    Optional<HerdLift> blockOff(int day, int blockDays, LocalDate firstVisit) {
        List<HerdFoot> feet = new ArrayList<>();
        for (Leg leg : Leg.values()) {
            Integer since = blocks.get(leg);
            if (since != null && day - since >= blockDays) {
                blocks.remove(leg);
                feet.add(new HerdFoot(leg, false, List.of(), List.of("block-off")));
            }
        }
        return feet.isEmpty()
                ? Optional.empty()
                : Optional.of(new HerdLift(
                        cow.number(),
                        firstVisit.plusDays(day),
                        HerdLift.Why.BLOCK_OFF,
                        OptionalDouble.empty(),
                        false,
                        feet,
                        Optional.empty(),
                        Optional.empty()));
    }

    private List<String> treatment(HerdLesion lesion, Leg leg, int day) {
        return switch (lesion.code) {
            case "SU", "TU" -> block(lesion, leg, day, "claw-lowered", "dished");
            case "WLA" -> block(lesion, leg, day, "loose-horn-off");
            case "WLF" -> List.of("loose-horn-off");
            case "SH" -> List.of("dished");
            case "DD" -> List.of("bandage");
            default -> List.of();
        };
    }

    /** A block goes on the sound claw, once. */
    private List<String> block(HerdLesion lesion, Leg leg, int day, String... first) {
        List<String> actions = new ArrayList<>(List.of(first));
        if (!blocks.containsKey(leg) && lesion.effect(day) >= 0.5 && lesion.alarm(day)) {
            blocks.put(leg, day);
            actions.add(lesion.claw.equals("lateral") ? "block-inner" : "block-outer");
        }
        return actions;
    }

    private static int recheckDays(String code) {
        return switch (code) {
            case "SU", "TU", "WLA" -> 28;
            case "DD", "IP" -> 14;
            default -> 0;
        };
    }

    private static HerdMedicine note(String code) {
        return new HerdMedicine(
                code.equals("DD") ? "spray from the farm cabinet" : "as prescribed",
                "herd manager",
                "the day on the label",
                "the day on the label",
                "",
                "afternoon",
                "as on the label",
                code.equals("DD") ? "" : "herd vet");
    }

    private static int usualZone(String code) {
        return switch (code) {
            case "SU" -> 4;
            case "WLA", "WLF" -> 3;
            case "DD" -> 10;
            case "SH" -> 5;
            case "HHE" -> 6;
            case "IP" -> 0;
            default -> 1;
        };
    }

    private static String code(double draw) {
        double sum = 0;
        for (double weight : WEIGHTS) {
            sum += weight;
        }
        double left = draw * sum;
        for (int i = 0; i < CODES.length; i++) {
            left -= WEIGHTS[i];
            if (left < 0) {
                return CODES[i];
            }
        }
        return CODES[CODES.length - 1];
    }
}
