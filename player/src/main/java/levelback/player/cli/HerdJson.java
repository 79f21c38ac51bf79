package levelback.player.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import levelback.player.work.FollowHerd;
import levelback.scoring.herd.DaysToTreatment;
import levelback.scoring.herd.HerdFigures;
import levelback.scoring.herd.HerdQuestion;
import levelback.scoring.herd.LameRecord;

/** The document of {@code herd --json}. */
final class HerdJson {

    private HerdJson() {}

    static void write(PrintWriter to, FollowHerd.Answer answer) {
        HerdFigures figures = answer.figures();
        JsonOut.object(to, out -> {
            question(out, figures.question());
            visits(out, figures);
            out.whole("newCases", figures.newCases().newCases());
            out.number(
                    "newCaseRatePer30Days", figures.newCases().ratePer30Days().value());
            out.estimate("newCaseRate", figures.newCases().ratePer30Days());
            out.whole("riskDays", figures.newCases().riskDays());
            out.whole("chronic", figures.chronic());
            out.whole("cured", figures.cured());
            if (figures.daysToTreatment().isPresent()) {
                days(out, figures.daysToTreatment().get());
            } else {
                out.nothing("daysToTreatment");
            }
            List<String> why = why(figures);
            if (!why.isEmpty()) {
                out.text("why", String.join(" ", why));
            }
            offenders(out, answer);
        });
    }

    /** Whole sentences on what could not be worked out. */
    static List<String> why(HerdFigures figures) {
        List<String> why = new ArrayList<>();
        if (figures.newCases().ratePer30Days().value().isEmpty()) {
            why.add("No rate of new cases: "
                    + figures.newCases().ratePer30Days().why().orElse("") + ".");
        }
        if (figures.daysToTreatment().isEmpty()) {
            why.add(
                    figures.lameCows().isEmpty()
                            ? "No days to treatment: no cow scored lame."
                            : "No days to treatment: no trim records were given; add --trims.");
        }
        return why;
    }

    private static void question(JsonOut out, HerdQuestion question) throws IOException {
        out.number("cut", question.lameCut());
        if (question.severeCut() == HerdQuestion.severeAbove(question.lameCut())) {
            out.number("severeAbove", question.lameCut());
        } else {
            out.number("severeFrom", question.severeCut());
        }
        if (question.herdSize().isPresent()) {
            out.whole("herdSize", question.herdSize().getAsLong());
        }
        out.number("level", question.level());
    }

    private static void visits(JsonOut out, HerdFigures figures) throws IOException {
        out.list("visits", figures.visits(), (o, visit) -> {
            o.text("date", visit.date().toString());
            o.whole("scored", visit.scored());
            if (visit.unscored().isPresent()) {
                o.whole("unscored", visit.unscored().getAsLong());
            }
            o.whole("lame", visit.lame());
            o.estimate("prevalence", visit.prevalence());
            o.whole("severe", visit.severe());
        });
        out.list("flow", figures.changes(), (o, change) -> {
            o.text("from", change.from().toString());
            o.text("to", change.to().toString());
            o.whole("stillLame", change.stillLame());
            o.whole("recovered", change.recovered());
            o.whole("newlyLame", change.newlyLame());
            o.whole("stillSound", change.stillSound());
            o.whole("notSeen", change.notSeen());
            o.whole("notSeenBefore", change.notSeenBefore());
            o.whole("newCases", change.newCases());
        });
    }

    private static void days(JsonOut out, DaysToTreatment days) throws IOException {
        out.object("daysToTreatment", o -> {
            o.number("median", days.median().value());
            o.number("low", days.low());
            o.number("high", days.high());
            o.whole("n", days.median().n());
            o.whole("censored", days.censored());
            o.text("method", days.median().method());
            if (days.median().why().isPresent()) {
                o.text("why", days.median().why().get());
            }
        });
    }

    private static void offenders(JsonOut out, FollowHerd.Answer answer) throws IOException {
        Map<Integer, Long> visits = new TreeMap<>();
        Map<Integer, Long> cases = new TreeMap<>();
        for (LameRecord cow : answer.figures().lameCows()) {
            visits.merge(cow.lame(), 1L, Long::sum);
            cases.merge(cow.newCases(), 1L, Long::sum);
        }
        out.list("cowsByLameVisits", visits.entrySet(), (o, entry) -> {
            o.whole("lameVisits", entry.getKey());
            o.whole("cows", entry.getValue());
        });
        out.list("lameCowsByNewCases", cases.entrySet(), (o, entry) -> {
            o.whole("newCases", entry.getKey());
            o.whole("cows", entry.getValue());
        });
        List<LameRecord> repeat = answer.figures().lameCows().stream()
                .filter(cow -> cow.lame() > 1)
                .toList();
        out.list("repeatOffenders", repeat, (o, cow) -> {
            o.text("cow", answer.number(cow.cow()));
            o.whole("scored", cow.scored());
            o.whole("lameVisits", cow.lame());
            o.whole("spells", cow.spells());
            o.whole("newCases", cow.newCases());
            o.whole("longestRun", cow.longestRun());
            o.text("firstLame", cow.firstLame().toString());
            o.flag("lameAtLast", cow.lameAtLast());
        });
    }
}
