package levelback.player.work;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import levelback.scoring.scale.GaitScale;
import levelback.scoring.scale.GaitScales;
import levelback.scoring.value.Leg;
import levelback.store.book.Book;
import levelback.store.exchange.BadTable;
import levelback.store.exchange.CowTable;
import levelback.store.exchange.ReadTable;
import levelback.store.exchange.ScoreTable;
import levelback.store.exchange.TableSource;
import levelback.store.herd.Cow;
import levelback.store.herd.CowId;
import levelback.store.herd.Herd;
import levelback.store.herd.HerdId;
import levelback.store.herd.PersonId;
import levelback.store.herd.Score;
import levelback.store.herd.ScoreId;
import levelback.store.herd.Visit;
import levelback.store.herd.VisitId;

/**
 * Takes tables of cows, scores, trims and gate reads into a book: as one step, all or nothing, unless bad rows may be
 * skipped. The same table again changes nothing; a score that differs from the one in force supersedes it, and one that
 * was superseded before is not brought back.
 */
public final class ImportTables {

    /** What a table holds. */
    public enum Kind {
        COWS,
        SCORES,
        TRIMS,
        READS
    }

    /** The scale that the desk offers for a herd of which nobody has said how it is scored. */
    private static final String OFFERED = "mobility-0-3";

    private final Book book;
    private final Clock clock;

    public ImportTables(Book book) {
        this(book, Clock.systemUTC());
    }

    /** @param clock for when scores were entered, and since when a cow of a cow table carries her number */
    public ImportTables(Book book, Clock clock) {
        this.book = book;
        this.clock = clock;
    }

    /**
     * Takes tables.
     *
     * @throws BadInput with one sentence naming file and line; nothing was taken then
     */
    public ImportReport take(Kind kind, List<TableSource> sources, ImportOrder order) {
        String names = sources.stream().map(TableSource::name).collect(Collectors.joining(", "));
        return book.step(order.scorer().orElse("import"), "Import of " + names, b -> {
            TakenRows rows = new TakenRows();
            Herd herd = herd(order);
            CowsOfHerd cows = new CowsOfHerd(book, herd.id());
            for (TableSource source : sources) {
                rows.from(source.name());
                try {
                    switch (kind) {
                        case COWS -> cows(source, order, herd, cows, rows);
                        case SCORES -> scores(source, order, herd, cows, rows);
                        case TRIMS -> new ImportTrims(book, herd, cows, rows).take(source, order);
                        case READS -> reads(source, order, herd, rows);
                    }
                } catch (BadTable whole) {
                    // A table whose every row is bad: the first of them says more than "no row".
                    if (!rows.anyRefused() || whole.line() > 0) {
                        throw new BadInput(String.valueOf(whole.getMessage()), whole);
                    }
                    if (order.skipBad()) {
                        continue;
                    }
                    throw rows.asBadInput();
                }
            }
            if (rows.anyRefused() && !order.skipBad()) {
                throw rows.asBadInput();
            }
            return rows.report(herd.name(), cows.made());
        });
    }

    /** The herd that the order is about, made if it is not there. */
    Herd herd(ImportOrder order) {
        List<Herd> herds = book.herd().herds();
        Optional<Herd> there = order.herd().isPresent()
                ? herds.stream()
                        .filter(h ->
                                h.name().equalsIgnoreCase(order.herd().get().strip()))
                        .findFirst()
                : herds.stream().findFirst();
        if (order.herd().isEmpty() && herds.size() > 1) {
            throw new BadInput("The book has "
                    + herds.stream().map(Herd::name).collect(Collectors.joining(", "))
                    + "; say which herd with --herd NAME.");
        }
        Optional<GaitScale> scale = order.scale().map(this::scale);
        if (there.isPresent()) {
            Herd herd = there.get();
            if (scale.isEmpty() || book.herd().scaleIsChosen(herd.id())) {
                return herd;
            }
            Herd chosen =
                    new Herd(herd.id(), herd.name(), herd.zone(), scale.get().id(), herd.cowsInMilk());
            book.herd().put(chosen);
            return chosen;
        }
        Herd made = new Herd(
                HerdId.fresh(),
                order.herd().map(String::strip).filter(name -> !name.isEmpty()).orElse("Herd"),
                order.zone().orElse(ZoneId.systemDefault()),
                scale.map(GaitScale::id).orElse(OFFERED),
                OptionalInt.empty());
        if (scale.isPresent()) {
            book.herd().put(made);
        } else {
            book.herd().putWithoutChosenScale(made);
        }
        return made;
    }

    private GaitScale scale(String id) {
        return book.herd()
                .scale(id)
                .orElseThrow(
                        () -> new BadInput("There is no gait scale " + id + "; choose one of " + scaleIds() + "."));
    }

    /** Ids of the published scales. */
    public static String scaleIds() {
        return GaitScales.all().stream().map(GaitScale::id).collect(Collectors.joining(", "));
    }

    private record Place(CowId cow, LocalDate date, PersonId scorer, Optional<Leg> leg) {}

    private record Said(String scale, double level) {}

    private void scores(TableSource source, ImportOrder order, Herd herd, CowsOfHerd cows, TakenRows rows) {
        ScoreTable table = ScoreTable.read(source, order.mapping().of(ScoreTable.FORM), rows);
        rows.note(table.notes());
        PeopleByName people = new PeopleByName(book);
        Map<VisitId, LocalDate> dates = new HashMap<>();
        Map<LocalDate, VisitId> visits = new HashMap<>();
        for (Visit visit : book.herd().visits(herd.id())) {
            dates.put(visit.id(), visit.date());
            visits.put(visit.date(), visit.id());
        }
        Map<Place, Said> inForce = new HashMap<>();
        for (Score score : book.herd().scoresOf(herd.id())) {
            inForce.put(place(score, dates), new Said(score.scaleId(), score.level()));
        }
        Map<Place, Set<Said>> superseded = new HashMap<>();
        for (Score score : book.herd().supersededScoresOf(herd.id())) {
            superseded
                    .computeIfAbsent(place(score, dates), p -> new HashSet<>())
                    .add(new Said(score.scaleId(), score.level()));
        }
        Map<String, Optional<GaitScale>> scales = new HashMap<>();
        boolean chosen = book.herd().scaleIsChosen(herd.id());
        Instant now = clock.instant();
        for (ScoreTable.Line line : table.lines()) {
            String scaleId = !line.scale().isEmpty()
                    ? line.scale()
                    : order.scale().orElseGet(() -> {
                        if (!chosen) {
                            throw new BadInput(source.name() + " does not say on which gait scale these scores are,"
                                    + " and neither does the herd; add --scale with one of " + scaleIds() + ".");
                        }
                        return herd.scaleId();
                    });
            Optional<GaitScale> scale =
                    scales.computeIfAbsent(scaleId, id -> book.herd().scale(id));
            String cow = line.row().cow();
            double level = line.row().score();
            Optional<String> wrong = CowsOfHerd.wrongNumber(cow)
                    .or(() -> scale.isEmpty()
                            ? Optional.of("column scale has " + scaleId + ", which is no gait scale; write one of "
                                    + scaleIds() + ".")
                            : Optional.empty())
                    .or(() -> scale.filter(s -> !s.allows(level))
                            .map(s -> "column score has " + plain(level) + ", which " + s.id()
                                    + " does not have; it runs from " + plain(s.lowest()) + " to "
                                    + plain(s.highest()) + " in steps of " + plain(s.step()) + "."));
            if (wrong.isPresent()) {
                rows.refuse(line.line(), wrong.get());
                continue;
            }
            LocalDate date = line.row().date();
            PersonId scorer = people.of(
                    line.row().scorer().isEmpty()
                            ? order.scorer().orElse("")
                            : line.row().scorer());
            Place place = new Place(
                    cows.knownOrNew(cow, date), date, scorer, line.row().leg());
            Said said = new Said(scaleId, level);
            boolean isNew = !said.equals(inForce.get(place))
                    && !superseded.getOrDefault(place, Set.of()).contains(said);
            if (isNew) {
                VisitId visit = visits.computeIfAbsent(
                        date, day -> book.herd().visitOn(herd.id(), day).id());
                book.herd()
                        .put(new Score(
                                ScoreId.fresh(),
                                place.cow(),
                                visit,
                                Optional.empty(),
                                scorer,
                                place.leg(),
                                scaleId,
                                level,
                                now,
                                false));
                inForce.put(place, said);
            }
            rows.taken(isNew);
        }
    }

    private static Place place(Score score, Map<VisitId, LocalDate> dates) {
        return new Place(score.cow(), dates.getOrDefault(score.visit(), LocalDate.MIN), score.scorer(), score.leg());
    }

    private void cows(TableSource source, ImportOrder order, Herd herd, CowsOfHerd cows, TakenRows rows) {
        CowTable table = CowTable.read(source, order.mapping().of(CowTable.FORM), rows);
        rows.note(table.notes());
        LocalDate today = LocalDate.now(clock.withZone(herd.zone()));
        Map<CowId, Cow> known = new LinkedHashMap<>();
        Map<String, Cow> tags = new HashMap<>();
        for (Cow cow : book.herd().cows(herd.id(), today)) {
            known.put(cow.id(), cow);
            cow.tag().ifPresent(tag -> tags.put(tag, cow));
        }
        for (CowTable.Line line : table.lines()) {
            Optional<String> wrong = CowsOfHerd.wrongNumber(line.cow());
            Optional<Cow> before = cows.known(line.cow(), today).flatMap(id -> Optional.ofNullable(known.get(id)));
            if (wrong.isEmpty() && before.isPresent() && differs(before.get().officialId(), line.officialId())) {
                wrong = Optional.of("cow " + line.cow() + " has the official number "
                        + before.get().officialId().orElse("") + " in the book and "
                        + line.officialId().orElse("") + " here; say which is right, or end her number first.");
            }
            Optional<Cow> wearer = line.tag().map(tags::get);
            if (wrong.isEmpty() && wearer.isPresent() && !wearer.map(Cow::id).equals(before.map(Cow::id))) {
                wrong = Optional.of("column tag has " + line.tag().orElse("") + ", which cow "
                        + wearer.get().number() + " wears in the book; take it off her first.");
            }
            if (wrong.isPresent()) {
                rows.refuse(line.line(), wrong.get());
                continue;
            }
            Cow cow = new Cow(
                    before.map(Cow::id).orElseGet(CowId::fresh),
                    herd.id(),
                    line.cow(),
                    line.name().or(() -> before.flatMap(Cow::name)),
                    line.officialId().or(() -> before.flatMap(Cow::officialId)),
                    line.tag().or(() -> before.flatMap(Cow::tag)),
                    line.birth().or(() -> before.flatMap(Cow::birth)),
                    line.calving().or(() -> before.flatMap(Cow::calving)),
                    line.parity().isPresent()
                            ? line.parity()
                            : before.map(Cow::parity).orElse(OptionalInt.empty()),
                    before.map(Cow::note).orElse(""));
            boolean isNew = !before.equals(Optional.of(cow));
            if (isNew && before.isPresent()) {
                book.herd().put(cow, today);
            } else if (isNew) {
                cows.add(cow, today);
            }
            rows.taken(isNew);
        }
    }

    private void reads(TableSource source, ImportOrder order, Herd herd, TakenRows rows) {
        ReadTable table = ReadTable.read(
                source, order.mapping().of(ReadTable.FORM), order.zone().orElse(herd.zone()), rows);
        rows.note(table.notes());
        Map<LocalDate, VisitId> visits = new HashMap<>();
        for (ReadTable.Line line : table.lines()) {
            LocalDate day = LocalDate.ofInstant(line.at(), herd.zone());
            VisitId visit = visits.computeIfAbsent(
                    day, d -> book.herd().visitOn(herd.id(), d).id());
            rows.taken(book.lane().putRead(visit, line.at(), line.tag(), line.reader()));
        }
    }

    private static boolean differs(Optional<String> one, Optional<String> other) {
        return one.isPresent() && other.isPresent() && !one.equals(other);
    }

    static String plain(double level) {
        return level == Math.rint(level) ? Long.toString((long) level) : Double.toString(level);
    }
}
