package levelback.player.work;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import levelback.scoring.scale.GaitScale;
import levelback.scoring.scale.GaitScales;
import levelback.scoring.value.Leg;
import levelback.store.book.Book;
import levelback.store.herd.Cow;
import levelback.store.herd.CowId;
import levelback.store.herd.Score;
import levelback.store.herd.Visit;
import levelback.store.herd.VisitId;
import levelback.store.trim.LiftCard;

/**
 * Who is to be lifted: the cows scored lame in a visit, the worst first and among equals the one that has waited longest;
 * after them the control lifts drawn, and cows that were brought in by number.
 *
 * <p>Only scores in force count. Several scores of a cow in a visit fold into the highest (as in Proof). She waits since the
 * first visit of her present run of lame scores; a lift between two visits ends the run.
 */
public final class ListChute {

    private final Book book;

    public ListChute(Book book) {
        this.book = book;
    }

    /**
     * The list of a visit as it stands on a day.
     *
     * @param visit the visit whose scores count
     * @param day the day at the chute, on or after the visit
     */
    public List<ChuteRow> list(Visit visit, LocalDate day) {
        Map<CowId, Cow> cows = book.herd().cows(visit.herd(), day).stream()
                .collect(Collectors.toMap(Cow::id, Function.identity(), (a, b) -> a));
        Map<VisitId, LocalDate> dates =
                book.herd().visits(visit.herd()).stream().collect(Collectors.toMap(Visit::id, Visit::date));
        Map<CowId, List<Score>> scores =
                book.herd().scoresOf(visit.herd()).stream().collect(Collectors.groupingBy(Score::cow));
        Map<CowId, List<LiftCard>> cards = book.trim().cardsOf(visit.herd(), LocalDate.of(1900, 1, 1), day).stream()
                .collect(Collectors.groupingBy(card -> card.lift().cow()));

        List<ChuteRow> rows = new ArrayList<>();
        for (Cow cow : cows.values()) {
            List<Score> hers = scores.getOrDefault(cow.id(), List.of());
            List<LiftCard> lifts = cards.getOrDefault(cow.id(), List.of());
            row(cow, visit, hers, lifts, dates).ifPresent(rows::add);
        }
        rows.sort(Comparator.comparing(ChuteRow::why)
                .thenComparing(row -> -severity(row))
                .thenComparing(ChuteRow::waitingSince)
                .thenComparing(row -> row.cow().number(), NUMBERS));
        return rows;
    }

    /** Cow numbers in the order a person counts: 77 before 101, and text after figures. */
    public static final Comparator<String> NUMBERS = Comparator.<String>comparingInt(
                    number -> number.chars().allMatch(Character::isDigit) ? 0 : 1)
            .thenComparing(number -> number.replaceFirst("^0+(?=.)", ""), Comparator.comparingInt(String::length))
            .thenComparing(number -> number.replaceFirst("^0+(?=.)", ""))
            .thenComparing(Comparator.naturalOrder());

    private static Optional<ChuteRow> row(
            Cow cow, Visit visit, List<Score> hers, List<LiftCard> lifts, Map<VisitId, LocalDate> dates) {
        Optional<Score> worst = worstOf(hers, visit.id());
        Optional<LiftCard> card = lifts.stream()
                .filter(lift -> !lift.lift().date().isBefore(visit.date()))
                .max(Comparator.comparing(lift -> lift.lift().date()));
        boolean lame = worst.isPresent() && isLame(worst.get());
        if (!lame && card.isEmpty()) {
            return Optional.empty();
        }
        OptionalDouble chance = card.map(c -> c.lift().chance()).orElse(OptionalDouble.empty());
        ChuteRow.Why why =
                lame ? ChuteRow.Why.LAME : chance.isPresent() ? ChuteRow.Why.CONTROL : ChuteRow.Why.BY_NUMBER;
        LocalDate since = lame
                ? runStart(visit, hers, lifts, dates)
                : card.map(c -> c.lift().date()).orElse(visit.date());
        boolean done = card.isPresent()
                && (card.get().lift().done() || card.get().lift().refused());
        return Optional.of(new ChuteRow(
                cow,
                why,
                worst.map(Score::scaleId).orElse(""),
                worst.map(score -> OptionalDouble.of(score.level())).orElse(OptionalDouble.empty()),
                worst.flatMap(score -> leg(hers, score)),
                since,
                chance,
                done));
    }

    /** The visit at which her present run of lame scores began. */
    private static LocalDate runStart(
            Visit visit, List<Score> hers, List<LiftCard> lifts, Map<VisitId, LocalDate> dates) {
        Map<LocalDate, VisitId> seen = new HashMap<>();
        for (Score score : hers) {
            LocalDate date = dates.get(score.visit());
            if (date != null && !date.isAfter(visit.date())) {
                seen.put(date, score.visit());
            }
        }
        LocalDate start = visit.date();
        for (LocalDate date :
                seen.keySet().stream().sorted(Comparator.reverseOrder()).toList()) {
            VisitId at = seen.get(date);
            if (at == null || !worstOf(hers, at).map(ListChute::isLame).orElse(false)) {
                break;
            }
            LocalDate later = start;
            if (lifts.stream()
                    .anyMatch(card -> !card.feet().isEmpty()
                            && !card.lift().date().isBefore(date)
                            && card.lift().date().isBefore(later))) {
                break;
            }
            start = date;
        }
        return start;
    }

    /** Her highest score in a visit. */
    static Optional<Score> worstOf(List<Score> hers, VisitId visit) {
        return hers.stream()
                .filter(score -> score.visit().equals(visit))
                .max(Comparator.comparingDouble(Score::level)
                        .thenComparing(score -> score.leg().isPresent()));
    }

    private static Optional<Leg> leg(List<Score> hers, Score worst) {
        return worst.leg()
                .or(() -> hers.stream()
                        .filter(score -> score.visit().equals(worst.visit()))
                        .flatMap(score -> score.leg().stream())
                        .findFirst());
    }

    private static boolean isLame(Score score) {
        return GaitScales.byId(score.scaleId())
                .map(scale -> score.level() >= scale.lameCut())
                .orElse(false);
    }

    /** How far up its own scale a score lies, so that two scales in one visit can be put in order. */
    private static double severity(ChuteRow row) {
        if (row.level().isEmpty()) {
            return 0;
        }
        double level = row.level().getAsDouble();
        return GaitScales.byId(row.scaleId())
                .map(scale -> shareOf(scale, level))
                .orElse(0.0);
    }

    private static double shareOf(GaitScale scale, double level) {
        return (level - scale.lowest()) / (scale.highest() - scale.lowest());
    }
}
