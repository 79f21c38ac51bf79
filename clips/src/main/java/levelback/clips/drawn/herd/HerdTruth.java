package levelback.clips.drawn.herd;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * What the scores of such a herd are truly worth, by brute force: many herds drawn in the same way, every cow at every
 * visit counted, lifted or not.
 *
 * <p>Positive: a score of 2 or 3. Diseased: an alarm lesion that would lie open to the eye if she were lifted on her
 * day after the visit (every cow has such a day, lifted or not).
 *
 * @param herdsSimulated herds behind the figures
 * @param sensitivity by scorer
 * @param specificity by scorer
 * @param scorerShift mean of B's level less A's, in steps of the scale
 * @param lesionShares share of each code among the lesions that began
 * @param prevalence share of cows with an alarm lesion
 * @param lameShare share that truly walks at level 2 or 3
 * @param inThisHerd the same figures counted in the herd of this seed alone
 */
public record HerdTruth(
        int herdsSimulated,
        Map<String, Double> sensitivity,
        Map<String, Double> specificity,
        double scorerShift,
        Map<String, Double> lesionShares,
        double prevalence,
        double lameShare,
        Map<String, Double> inThisHerd) {

    /** Herds drawn: the standard error of the sensitivity is then about a tenth of one demo herd's interval. */
    public static final int HERDS = 300;

    public HerdTruth {
        sensitivity = Map.copyOf(sensitivity);
        specificity = Map.copyOf(specificity);
        lesionShares = Map.copyOf(lesionShares);
        inThisHerd = Map.copyOf(inThisHerd);
    }

    /** Works the truth out for the plan's size and seed. */
    public static HerdTruth of(HerdPlan plan, int herds) {
        Tally many = new Tally();
        for (int i = 1; i <= herds; i++) {
            many.add(HerdPlan.of(
                    HerdLife.mixed(plan.seed(), 5_000_000L + i),
                    plan.cows().size(),
                    plan.visits().size(),
                    0));
        }
        Tally one = new Tally();
        one.add(plan);
        Map<String, Double> here = new LinkedHashMap<>();
        one.sensitivity().forEach((scorer, value) -> here.put("sensitivity" + scorer, value));
        one.specificity().forEach((scorer, value) -> here.put("specificity" + scorer, value));
        here.put("scorerShift", one.shift());
        here.put("prevalence", one.prevalence());
        return new HerdTruth(
                herds,
                many.sensitivity(),
                many.specificity(),
                many.shift(),
                many.lesionShares(),
                many.prevalence(),
                many.lameShare(),
                here);
    }

    /** The figures as JSON; same truth, same bytes. */
    public String json(HerdPlan plan) {
        StringBuilder text = new StringBuilder("{\n");
        text.append("  \"farm\": \"").append(plan.farm()).append("\",\n");
        text.append("  \"seed\": ").append(plan.seed()).append(",\n");
        text.append("  \"cows\": ").append(plan.cows().size()).append(",\n");
        text.append("  \"visits\": ").append(plan.visits().size()).append(",\n");
        text.append("  \"herdsSimulated\": ").append(herdsSimulated).append(",\n");
        text.append(
                        "  \"definition\": \"positive: score 2 or 3; diseased: an alarm lesion to be seen on the day she is or")
                .append(" would be lifted; every cow at every visit, lifted or not\",\n");
        map(text, "sensitivity", sensitivity);
        map(text, "specificity", specificity);
        number(text, "scorerShift", scorerShift);
        map(text, "lesionShares", lesionShares);
        number(text, "prevalence", prevalence);
        number(text, "lameShare", lameShare);
        map(text, "inThisHerd", inThisHerd);
        text.setLength(text.length() - 2);
        return text.append("\n}\n").toString();
    }

    private static void number(StringBuilder text, String key, double value) {
        text.append("  \"").append(key).append("\": ").append(shown(value)).append(",\n");
    }

    private static void map(StringBuilder text, String key, Map<String, Double> values) {
        text.append("  \"").append(key).append("\": {");
        String comma = "";
        for (Map.Entry<String, Double> entry : new TreeMap<>(values).entrySet()) {
            text.append(comma).append('"').append(entry.getKey()).append("\": ").append(shown(entry.getValue()));
            comma = ", ";
        }
        text.append("},\n");
    }

    private static String shown(double value) {
        return Double.isNaN(value) ? "null" : String.format(Locale.ROOT, "%.6f", value);
    }

    private static final class Tally {
        private final Map<String, long[]> tables = new TreeMap<>();
        private final Map<String, Integer> lesions = new TreeMap<>();
        private long shiftSum;
        private long pairs;
        private long alarms;
        private long lame;

        void add(HerdPlan plan) {
            plan.lesionsBegun().forEach(onset -> lesions.merge(onset.code(), 1, Integer::sum));
            for (HerdVisit visit : plan.visits()) {
                int cows = visit.states().size();
                for (int i = 0; i < cows; i++) {
                    HerdState state = visit.states().get(i);
                    HerdScore a = visit.scores().get(i);
                    HerdScore b = visit.scores().get(cows + i);
                    count(a, state);
                    count(b, state);
                    shiftSum += b.level() - a.level();
                    pairs++;
                    alarms += state.alarm() ? 1 : 0;
                    lame += state.trueLevel() >= 2 ? 1 : 0;
                }
            }
        }

        private void count(HerdScore score, HerdState state) {
            long[] table = tables.computeIfAbsent(score.scorer(), s -> new long[4]);
            table[(state.alarm() ? 0 : 2) + (score.level() >= 2 ? 0 : 1)]++;
        }

        Map<String, Double> sensitivity() {
            Map<String, Double> out = new TreeMap<>();
            tables.forEach((scorer, t) -> out.put(scorer, (double) t[0] / (t[0] + t[1])));
            return out;
        }

        Map<String, Double> specificity() {
            Map<String, Double> out = new TreeMap<>();
            tables.forEach((scorer, t) -> out.put(scorer, (double) t[3] / (t[2] + t[3])));
            return out;
        }

        Map<String, Double> lesionShares() {
            double all = lesions.values().stream().mapToInt(Integer::intValue).sum();
            Map<String, Double> out = new TreeMap<>();
            lesions.forEach((code, n) -> out.put(code, n / all));
            return out;
        }

        double shift() {
            return (double) shiftSum / pairs;
        }

        double prevalence() {
            return (double) alarms / pairs;
        }

        double lameShare() {
            return (double) lame / pairs;
        }
    }
}
