package levelback.player.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import levelback.player.work.FollowHerd;
import levelback.scoring.herd.DaysToTreatment;
import levelback.scoring.herd.HerdFigures;
import levelback.scoring.herd.LameRecord;
import levelback.scoring.herd.VisitChange;
import levelback.scoring.herd.VisitPrevalence;
import levelback.scoring.value.Estimate;

/** What {@code herd} prints for a person. */
final class HerdTable {

    private static final int WORST = 10;

    private HerdTable() {}

    static void write(PrintWriter to, FollowHerd.Answer answer) {
        HerdFigures figures = answer.figures();
        line(to, "%-12s %8s %6s %8s  %s", "visit", "scored", "lame", "severe", "lame, % of those scored");
        for (VisitPrevalence visit : figures.visits()) {
            line(
                    to,
                    "%-12s %8d %6d %8d  %s",
                    visit.date(),
                    visit.scored(),
                    visit.lame(),
                    visit.severe(),
                    percent(visit.prevalence()));
        }
        to.println();
        line(
                to,
                "%-12s %11s %10s %11s %12s %9s",
                "up to",
                "still lame",
                "recovered",
                "newly lame",
                "still sound",
                "not seen");
        for (VisitChange change : figures.changes()) {
            line(
                    to,
                    "%-12s %11d %10d %11d %12d %9d",
                    change.to(),
                    change.stillLame(),
                    change.recovered(),
                    change.newlyLame(),
                    change.stillSound(),
                    change.notSeen());
        }
        to.println();
        Estimate rate = figures.newCases().ratePer30Days();
        line(
                to,
                "New cases (lame after two sound scores): %d in %d cow days%s.",
                figures.newCases().newCases(),
                figures.newCases().riskDays(),
                rate.value().isEmpty()
                        ? ""
                        : String.format(
                                        Locale.ROOT,
                                        ", %.3f in 30 days",
                                        rate.value().getAsDouble())
                                + rate.interval()
                                        .map(i -> String.format(Locale.ROOT, " (%.3f to %.3f)", i.low(), i.high()))
                                        .orElse(""));
        line(to, "Chronic (three lame scores in a row): %d cows. Cured: %d times.", figures.chronic(), figures.cured());
        figures.daysToTreatment().ifPresent(days -> to.println(days(days)));
        HerdJson.why(figures).forEach(to::println);
        worst(to, answer);
        line(
                to,
                "Intervals: %s %%, %s.",
                String.valueOf(Math.round(1000 * figures.question().level()) / 10.0)
                        .replaceFirst("\\.0$", ""),
                figures.visits().get(0).prevalence().method());
    }

    private static String days(DaysToTreatment days) {
        String n = " (" + days.median().n() + " cows, " + days.censored() + " not lifted)";
        if (days.median().value().isEmpty()) {
            return "Days from first lame score to lift: no median, "
                    + days.median().why().orElse("") + n + ".";
        }
        String low = days.low().isPresent() ? String.valueOf((long) days.low().getAsDouble()) : "?";
        String high =
                days.high().isPresent() ? String.valueOf((long) days.high().getAsDouble()) : "not reached";
        return "Days from first lame score to lift: median "
                + (long) days.median().value().orElse(0) + ", " + low + " to " + high + n + ".";
    }

    private static void worst(PrintWriter to, FollowHerd.Answer answer) {
        List<LameRecord> repeat = answer.figures().lameCows().stream()
                .filter(cow -> cow.lame() > 1)
                .toList();
        if (repeat.isEmpty()) {
            return;
        }
        to.println();
        line(to, "%-12s %12s %10s %12s", "cow", "lame visits", "new cases", "longest run");
        for (LameRecord cow : repeat.subList(0, Math.min(WORST, repeat.size()))) {
            line(
                    to,
                    "%-12s %12s %10d %12d%s",
                    answer.number(cow.cow()),
                    cow.lame() + " of " + cow.scored(),
                    cow.newCases(),
                    cow.longestRun(),
                    cow.lameAtLast() ? "  lame at her last score" : "");
        }
        if (repeat.size() > WORST) {
            line(to, "and %d more that were lame more than once.", repeat.size() - WORST);
        }
        to.println();
    }

    private static String percent(Estimate share) {
        return String.format(Locale.ROOT, "%.1f", 100 * share.value().orElse(0))
                + share.interval()
                        .map(i -> String.format(Locale.ROOT, " (%.1f to %.1f)", 100 * i.low(), 100 * i.high()))
                        .orElse("");
    }

    private static void line(PrintWriter to, String format, Object... args) {
        to.println(String.format(Locale.ROOT, format, args).stripTrailing());
    }
}
