package levelback.player.work;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import levelback.scoring.scale.GaitScale;
import levelback.scoring.scale.GaitScales;
import levelback.store.book.Book;
import levelback.store.herd.Cow;
import levelback.store.herd.CowId;
import levelback.store.herd.Herd;
import levelback.store.herd.Person;
import levelback.store.herd.PersonId;
import levelback.store.herd.Score;
import levelback.store.herd.Visit;
import levelback.store.herd.VisitId;
import levelback.store.trim.LiftCard;

/**
 * What a report is made from, read once from the book.
 *
 * @param scale the herd's scale
 * @param visit the visit reported on
 * @param visits visits with a score of the scorer, up to that one, oldest first
 * @param scorer whose scores are reported: who scored most
 * @param cows the herd's cows that day
 * @param levels each cow's level by visit: her highest of the scorer that day
 * @param cards cards from the first visit to the day before the visit after the reported one
 * @param cardsAfter of them, those that follow the reported visit
 * @param trimmers names of who wrote these
 * @param rows scores of the scorer up to the visit, and all cards, for the arithmetic
 */
record ReportSource(
        Herd herd,
        GaitScale scale,
        Visit visit,
        List<Visit> visits,
        Person scorer,
        Map<CowId, Cow> cows,
        Map<VisitId, Map<CowId, Double>> levels,
        List<LiftCard> cards,
        List<LiftCard> cardsAfter,
        List<String> trimmers,
        BookRows rows) {

    /** How long after a visit a lift still belongs to it, where no later visit ends it. */
    private static final int DAYS_AFTER = 14;

    /**
     * @throws BadInput with one sentence where the herd or the visit is not there, or nothing is scored
     */
    static ReportSource read(Book book, Optional<String> herdName, Optional<LocalDate> on) {
        Herd herd = herd(book, herdName);
        GaitScale scale = GaitScales.byId(herd.scaleId())
                .or(() -> book.herd().scale(herd.scaleId()))
                .orElseThrow(() -> new BadInput("The scale " + herd.scaleId() + " of herd " + herd.name()
                        + " is not known to this Levelback; choose the herd's scale again."));
        List<Score> all = book.herd().scoresOf(herd.id());
        Map<PersonId, Long> counts = all.stream().collect(Collectors.groupingBy(Score::scorer, Collectors.counting()));
        Person scorer = book.herd().people().stream()
                .filter(p -> counts.containsKey(p.id()))
                .min(Comparator.comparingLong((Person p) -> -counts.getOrDefault(p.id(), 0L))
                        .thenComparing(Person::name))
                .orElseThrow(() -> new BadInput(
                        "Herd " + herd.name() + " in " + book.file() + " has no scores yet; score a visit first."));
        Map<VisitId, Map<CowId, Double>> levels = new HashMap<>();
        for (Score score : all) {
            if (score.scorer().equals(scorer.id()) && score.scaleId().equals(scale.id())) {
                levels.computeIfAbsent(score.visit(), v -> new HashMap<>())
                        .merge(score.cow(), score.level(), Math::max);
            }
        }
        List<Visit> scored = book.herd().visits(herd.id()).stream()
                .filter(v -> levels.containsKey(v.id()))
                .sorted(Comparator.comparing(Visit::date))
                .toList();
        if (scored.isEmpty()) {
            throw new BadInput("Herd " + herd.name() + " in " + book.file() + " has no scores on its own scale "
                    + scale.name() + " yet; score a visit first.");
        }
        Visit visit = visit(scored, on, herd);
        List<Visit> upTo =
                scored.stream().filter(v -> !v.date().isAfter(visit.date())).toList();
        LocalDate end = scored.stream()
                .map(Visit::date)
                .filter(d -> d.isAfter(visit.date()))
                .findFirst()
                .map(d -> d.minusDays(1))
                .orElse(visit.date().plusDays(DAYS_AFTER));
        List<LiftCard> cards = book.trim().cardsOf(herd.id(), upTo.get(0).date(), end);
        List<LiftCard> after = cards.stream()
                .filter(c -> !c.lift().date().isBefore(visit.date()))
                .toList();
        Map<PersonId, String> names = new HashMap<>();
        book.herd().people().forEach(p -> names.put(p.id(), p.name()));
        List<String> trimmers = after.stream()
                .map(c -> names.getOrDefault(c.lift().trimmer(), ""))
                .filter(name -> !name.isEmpty())
                .distinct()
                .sorted()
                .toList();
        Map<CowId, Cow> cows = new LinkedHashMap<>();
        book.herd().cows(herd.id(), visit.date()).forEach(c -> cows.put(c.id(), c));
        BookRows rows = BookRows.of(book, herd).byScorer(scorer.name()).upTo(visit.date());
        return new ReportSource(herd, scale, visit, upTo, scorer, cows, levels, cards, after, trimmers, rows);
    }

    /** First eight hex digits of the SHA-256 over all rows that the report rests on, in a fixed order. */
    String fingerprint() {
        List<String> lines = new ArrayList<>();
        rows.scores().forEach(row -> lines.add(row.toString()));
        rows.trims().forEach(row -> lines.add(row.toString()));
        lines.sort(Comparator.naturalOrder());
        try {
            byte[] sum = MessageDigest.getInstance("SHA-256")
                    .digest(String.join("\n", lines).getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(sum).substring(0, 8);
        } catch (NoSuchAlgorithmException everyJavaHasIt) {
            throw new IllegalStateException(everyJavaHasIt);
        }
    }

    /** Level of a cow at the reported visit, all cows. */
    Map<CowId, Double> today() {
        return levels.getOrDefault(visit.id(), Map.of());
    }

    /** How many cows stand at each level of the scale today, every level listed. */
    Map<Double, Long> counts() {
        Map<Double, Long> counts = new TreeMap<>();
        scale.levels().forEach(level -> counts.put(level.value(), 0L));
        today().values().forEach(level -> counts.merge(level, 1L, Long::sum));
        return counts;
    }

    private static Herd herd(Book book, Optional<String> name) {
        List<Herd> herds = book.herd().herds();
        if (herds.isEmpty()) {
            throw new BadInput(book.file() + " holds no herd yet; name a herd and score a visit first.");
        }
        String known = herds.stream().map(Herd::name).sorted().collect(Collectors.joining(", "));
        if (name.isPresent()) {
            return herds.stream()
                    .filter(h -> h.name().equals(name.get()))
                    .findFirst()
                    .orElseThrow(() -> new BadInput("There is no herd \"" + name.get() + "\" in " + book.file()
                            + "; --herd takes one of: " + known + "."));
        }
        if (herds.size() > 1) {
            throw new BadInput(book.file() + " holds several herds; say which with --herd: " + known + ".");
        }
        return herds.get(0);
    }

    private static Visit visit(List<Visit> scored, Optional<LocalDate> on, Herd herd) {
        if (on.isEmpty()) {
            return scored.get(scored.size() - 1);
        }
        return scored.stream()
                .filter(v -> v.date().equals(on.get()))
                .findFirst()
                .orElseThrow(() -> new BadInput("Herd " + herd.name() + " has no scored visit on " + on.get()
                        + "; its visits are "
                        + scored.stream().map(v -> v.date().toString()).collect(Collectors.joining(", ")) + "."));
    }
}
