package levelback.player.work;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import levelback.player.report.ReportFigures.Point;
import levelback.player.report.ReportFigures.Quick;
import levelback.player.report.ReportFigures.SinceLast;
import levelback.scoring.foot.Lesions;
import levelback.scoring.herd.DaysToTreatment;
import levelback.scoring.herd.VisitChange;
import levelback.scoring.herd.VisitPrevalence;
import levelback.scoring.proof.ScoreRow;
import levelback.scoring.proof.TrimRow;
import levelback.scoring.value.Estimate;

/** The herd over its visits, as the report prints it. */
record ReportHerd(List<Point> trend, Optional<SinceLast> sinceLast, Estimate toLift, Quick quick) {

    private static final int QUICK_DAYS = 2;

    static ReportHerd of(ReportSource source) {
        List<ScoreRow> scores = source.rows().scores();
        List<TrimRow> trims = source.rows().trims();
        double cut = source.scale().lameCut();
        List<Point> trend = VisitPrevalence.of(scores, cut, source.scale().severeCut(), 0.95).stream()
                .map(v -> new Point(v.date(), v.scored(), v.lame(), v.prevalence(), v.severe()))
                .toList();
        Optional<SinceLast> since = Optional.empty();
        if (trend.size() > 1) {
            VisitChange change = VisitChange.between(
                    scores,
                    trend.get(trend.size() - 2).date(),
                    trend.get(trend.size() - 1).date(),
                    cut);
            since = Optional.of(new SinceLast(
                    change.from(),
                    change.stillLame(),
                    change.threeOrMore(),
                    change.newlyLame(),
                    change.newCases(),
                    change.recovered()));
        }
        return new ReportHerd(
                trend, since, DaysToTreatment.of(scores, trims, cut, 0.95).median(), quick(scores, trims, cut));
    }

    /** Of all lame scores, one for a cow and day, how many were followed by a lift within two days. */
    static Quick quick(List<ScoreRow> scores, List<TrimRow> trims, double cut) {
        Map<String, TreeSet<LocalDate>> lifted = new HashMap<>();
        for (TrimRow row : trims) {
            if (!row.lesion().equals(Lesions.REFUSED)) {
                lifted.computeIfAbsent(row.cow(), c -> new TreeSet<>()).add(row.date());
            }
        }
        Map<String, TreeMap<LocalDate, Double>> cows = new HashMap<>();
        for (ScoreRow row : scores) {
            cows.computeIfAbsent(row.cow(), c -> new TreeMap<>()).merge(row.date(), row.score(), Math::max);
        }
        long lame = 0;
        long within = 0;
        for (Map.Entry<String, TreeMap<LocalDate, Double>> cow : cows.entrySet()) {
            TreeSet<LocalDate> lifts = lifted.getOrDefault(cow.getKey(), new TreeSet<>());
            for (Map.Entry<LocalDate, Double> score : cow.getValue().entrySet()) {
                if (score.getValue() >= cut) {
                    lame++;
                    LocalDate next = lifts.ceiling(score.getKey());
                    within += next != null && ChronoUnit.DAYS.between(score.getKey(), next) <= QUICK_DAYS ? 1 : 0;
                }
            }
        }
        return new Quick(within, lame);
    }
}
