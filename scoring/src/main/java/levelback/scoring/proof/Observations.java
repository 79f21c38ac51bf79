package levelback.scoring.proof;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import levelback.scoring.foot.Lesions;
import levelback.scoring.proof.Observation.Box;
import levelback.scoring.value.Leg;

/**
 * Score rows joined with the trim rows of their windows.
 *
 * @param all every observation, by cow, day, scorer and leg; those with an open window among them
 * @param rows score rows that came in
 * @param rowsWithoutLeg rows left out because the unit is the leg and they name none
 * @param trimsOfUnscored trim rows of cows without a score
 */
record Observations(List<Observation> all, long rows, long rowsWithoutLeg, long trimsOfUnscored) {

    private record Key(String cow, LocalDate date, String scorer, Optional<Leg> leg) {}

    /** Score rows folded together; mutable while they are gathered. */
    private static final class Fold {
        double score = Double.NEGATIVE_INFINITY;
        final Set<Leg> legs = EnumSet.noneOf(Leg.class);
        int rows;

        void add(ScoreRow row) {
            rows++;
            if (row.score() > score) {
                score = row.score();
                legs.clear();
            }
            if (row.score() == score) {
                row.leg().ifPresent(legs::add);
            }
        }
    }

    static Observations join(List<ScoreRow> scores, List<TrimRow> trims, ProofQuestion question) {
        boolean byLeg = question.unit() == ProofQuestion.Unit.LEG;
        Map<Key, Fold> folds = new HashMap<>();
        Set<String> cows = new HashSet<>();
        long rows = 0;
        long withoutLeg = 0;
        for (ScoreRow row : scores) {
            if (question.scorer().isPresent() && !question.scorer().get().equals(row.scorer())) {
                continue;
            }
            rows++;
            cows.add(row.cow());
            if (byLeg && row.leg().isEmpty()) {
                withoutLeg++;
                continue;
            }
            Key key = new Key(row.cow(), row.date(), row.scorer(), byLeg ? row.leg() : Optional.empty());
            folds.computeIfAbsent(key, k -> new Fold()).add(row);
        }
        Map<String, List<TrimRow>> byCow = new HashMap<>();
        long unscored = 0;
        for (TrimRow trim : trims) {
            if (cows.contains(trim.cow())) {
                byCow.computeIfAbsent(trim.cow(), c -> new ArrayList<>()).add(trim);
            } else {
                unscored++;
            }
        }
        byCow.values().forEach(list -> list.sort(Comparator.comparing(TrimRow::date)));
        List<Observation> all = new ArrayList<>(folds.size());
        folds.forEach((key, fold) -> all.add(observe(key, fold, byCow.getOrDefault(key.cow(), List.of()), question)));
        all.sort(Comparator.comparing(Observation::cow)
                .thenComparing(Observation::date)
                .thenComparing(Observation::scorer)
                .thenComparing(o -> o.leg().map(Leg::name).orElse("")));
        return new Observations(List.copyOf(all), rows, withoutLeg, unscored);
    }

    private static Observation observe(Key key, Fold fold, List<TrimRow> trims, ProofQuestion question) {
        LocalDate from = key.date().plusDays(question.windowFromDays());
        LocalDate to = key.date().plusDays(question.windowToDays());
        boolean lifted = false;
        boolean refused = false;
        boolean lesion = false;
        OptionalInt lag = OptionalInt.empty();
        double chance = 1;
        Set<String> codes = new TreeSet<>();
        Set<Leg> lesionLegs = EnumSet.noneOf(Leg.class);
        for (int i = firstFrom(trims, from); i < trims.size(); i++) {
            TrimRow trim = trims.get(i);
            if (trim.date().isAfter(to)) {
                break;
            }
            boolean notDone = trim.lesion().equals(Lesions.REFUSED);
            // A control lift that was not done names no leg; it concerns every leg of hers.
            if (key.leg().isPresent()
                    && !trim.leg().equals(key.leg())
                    && !(notDone && trim.leg().isEmpty())) {
                continue;
            }
            if (notDone) {
                refused = true;
                continue;
            }
            lifted = true;
            if (lag.isEmpty()) {
                lag = OptionalInt.of((int) ChronoUnit.DAYS.between(key.date(), trim.date()));
            }
            chance = Math.min(chance, trim.chance().orElse(1));
            if (!trim.lesion().equals(Lesions.NONE)) {
                codes.add(trim.lesion());
            }
            if (question.lesions().has(trim)) {
                lesion = true;
                trim.leg().ifPresent(lesionLegs::add);
            }
        }
        Box box;
        if (lifted) {
            box = lesion ? Box.WITH_LESION : Box.NO_LESION;
        } else if (refused) {
            box = Box.REFUSED;
        } else if (question.until().isPresent() && to.isAfter(question.until().get())) {
            box = Box.WINDOW_OPEN;
        } else {
            box = Box.NEVER_LIFTED;
        }
        return new Observation(
                key.cow(),
                key.date(),
                key.scorer(),
                fold.legs,
                fold.score,
                fold.rows,
                box,
                lag,
                List.copyOf(codes),
                lesionLegs,
                chance);
    }

    /** Index of the first trim on or after a day; the list is sorted by day. */
    private static int firstFrom(List<TrimRow> trims, LocalDate day) {
        int low = 0;
        int high = trims.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (trims.get(middle).date().isBefore(day)) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
