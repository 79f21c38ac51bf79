package levelback.clips.drawn.herd;

import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import levelback.scoring.value.Leg;

/** The herd's scores and trims as tables that the commands read; the columns after the first ones are the truth. */
public final class HerdTables {

    private HerdTables() {}

    /** {@code scores.csv}: what both scorers wrote, and how she truly was. */
    public static String scores(HerdPlan plan) {
        StringBuilder text = new StringBuilder("cow,date,score,scorer,leg,s,true_score,lame_leg,lesion_leg\n");
        for (HerdVisit visit : plan.visits()) {
            Map<String, HerdState> states = new TreeMap<>();
            visit.states().forEach(state -> states.put(state.cow(), state));
            for (HerdScore score : visit.scores()) {
                HerdState state = states.get(score.cow());
                if (state == null) {
                    continue;
                }
                text.append(String.format(
                        Locale.ROOT,
                        "%s,%s,%d,%s,%s,%.4f,%d,%s,%s\n",
                        score.cow(),
                        visit.date(),
                        score.level(),
                        score.scorer(),
                        score.leg().map(Leg::name).orElse(""),
                        state.severity(),
                        state.trueLevel(),
                        state.lameLeg().map(Leg::name).orElse(""),
                        state.lesionLeg().map(Leg::name).orElse("")));
            }
        }
        return text.toString();
    }

    /** {@code trims.csv}: what was written at the chute; a foot that was not examined gives no row. */
    public static String trims(HerdPlan plan) {
        StringBuilder text = new StringBuilder("cow,date,leg,claw,zone,lesion,severity,stage,chance\n");
        for (HerdVisit visit : plan.visits()) {
            for (HerdLift lift : visit.lifts()) {
                String start = lift.cow() + "," + lift.date() + ",";
                String chance = lift.chance().isPresent()
                        ? String.format(Locale.ROOT, "%.10f", lift.chance().getAsDouble())
                        : "";
                if (lift.refused()) {
                    text.append(start).append(",,,REFUSED,,,").append(chance).append('\n');
                }
                for (HerdFoot foot : lift.feet()) {
                    for (HerdFinding finding : foot.findings()) {
                        text.append(start)
                                .append(foot.leg())
                                .append(',')
                                .append(finding.claw())
                                .append(',')
                                .append(finding.zone())
                                .append(',')
                                .append(finding.code())
                                .append(',')
                                .append(
                                        finding.severity().isPresent()
                                                ? finding.severity().getAsInt()
                                                : "")
                                .append(',')
                                .append(finding.stage())
                                .append(',')
                                .append(chance)
                                .append('\n');
                    }
                    if (foot.examined() && foot.findings().isEmpty()) {
                        text.append(start)
                                .append(foot.leg())
                                .append(",,,NONE,,,")
                                .append(chance)
                                .append('\n');
                    }
                }
            }
        }
        return text.toString();
    }
}
