package levelback.store.book.internal;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import levelback.scoring.scale.GaitScale;
import levelback.scoring.scale.GaitScales;
import levelback.scoring.scale.ScaleLevel;
import levelback.scoring.value.MediaTime;
import levelback.scoring.value.TimeBase;
import levelback.store.book.StoreException;
import levelback.store.herd.Cow;
import levelback.store.herd.CowId;
import levelback.store.herd.Herd;
import levelback.store.herd.HerdId;
import levelback.store.herd.HerdShelf;
import levelback.store.herd.NumberSpan;
import levelback.store.herd.Person;
import levelback.store.herd.PersonId;
import levelback.store.herd.Score;
import levelback.store.herd.ScoreId;
import levelback.store.herd.Tag;
import levelback.store.herd.TagId;
import levelback.store.herd.Visit;
import levelback.store.herd.VisitId;
import levelback.store.lane.PassId;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;

/** Herds, cows, people, visits, scores and tags in SQL. */
final class SqliteHerdShelf implements HerdShelf {

    private static final String NOBODY = "";

    /** A cow with the number in force on {@code :on}, or else the one nearest to that day: the next one, then the last. */
    private static final String COW = """
            SELECT c.uuid, h.uuid AS herd, c.name, c.official_id, c.tag, c.birth, c.calving, c.parity, c.note,
                coalesce(
                    (SELECT number FROM cow_number k WHERE k.cow = c.n AND k.gone = 0 AND k.from_day <= :on
                        AND ifnull(k.until_day, '9999') >= :on ORDER BY k.from_day DESC LIMIT 1),
                    (SELECT number FROM cow_number k WHERE k.cow = c.n AND k.gone = 0 AND k.from_day > :on
                     ORDER BY k.from_day LIMIT 1),
                    (SELECT number FROM cow_number k WHERE k.cow = c.n AND k.gone = 0
                     ORDER BY k.from_day DESC LIMIT 1)) AS number
            FROM cow c JOIN herd h ON h.n = c.herd
            WHERE c.gone = 0 AND\s""";

    private static final String SCORE_ROWS = """
            SELECT s.uuid, c.uuid AS cow, v.uuid AS visit, p.uuid AS pass, w.uuid AS scorer, s.leg, k.id AS scale,
                s.level, s.at_us, s.seen
            FROM score s JOIN cow c ON c.n = s.cow JOIN visit v ON v.n = s.visit LEFT JOIN pass p ON p.n = s.pass
                JOIN person w ON w.n = s.scorer JOIN scale k ON k.n = s.scale
            WHERE s.gone = 0 AND s.in_force = %d AND\s""";

    private static final String SCORE = SCORE_ROWS.formatted(1);

    private final Connections connections;

    SqliteHerdShelf(Connections connections) {
        this.connections = connections;
    }

    @Override
    public List<Herd> herds() {
        return connections.read(h -> h.createQuery("""
                        SELECT h.uuid, h.name, h.zone, k.id AS scale, h.cows_in_milk
                        FROM herd h JOIN scale k ON k.n = h.scale WHERE h.gone = 0 ORDER BY h.name, h.n""")
                .map((rs, ctx) -> new Herd(
                        new HerdId(Columns.uuid(rs, "uuid")),
                        rs.getString("name"),
                        ZoneId.of(rs.getString("zone")),
                        rs.getString("scale"),
                        Columns.integer(rs, "cows_in_milk")))
                .list());
    }

    @Override
    public void put(Herd herd) {
        put(herd, true);
    }

    @Override
    public void putWithoutChosenScale(Herd herd) {
        put(herd, false);
    }

    @Override
    public boolean scaleIsChosen(HerdId herd) {
        return connections.read(h -> h.createQuery(
                        "SELECT EXISTS (SELECT 1 FROM herd WHERE uuid = :herd AND scale_chosen = 1 AND gone = 0)")
                .bind("herd", herd.uuid().toString())
                .mapTo(Boolean.class)
                .one());
    }

    private void put(Herd herd, boolean chosen) {
        connections.write(NOBODY, "Herd " + herd.name(), pen -> {
            requireScale(pen, herd.scaleId());
            return pen.run(
                    """
                    INSERT INTO herd (uuid, name, zone, scale, scale_chosen, cows_in_milk)
                    VALUES (?, ?, ?, (SELECT n FROM scale WHERE id = ? AND gone = 0), ?, ?)
                    ON CONFLICT (uuid) DO UPDATE SET gone = 0, name = excluded.name, zone = excluded.zone,
                        scale = excluded.scale, scale_chosen = excluded.scale_chosen,
                        cows_in_milk = excluded.cows_in_milk""",
                    herd.id().uuid().toString(),
                    herd.name(),
                    herd.zone().getId(),
                    herd.scaleId(),
                    chosen,
                    Columns.argument(herd.cowsInMilk()));
        });
    }

    @Override
    public List<GaitScale> scales() {
        return connections.read(h ->
                h.createQuery("SELECT id FROM scale WHERE gone = 0 ORDER BY id").mapTo(String.class).list().stream()
                        .flatMap(id -> kept(h, id).stream())
                        .toList());
    }

    @Override
    public Optional<GaitScale> scale(String id) {
        return connections.read(h -> kept(h, id)).or(() -> GaitScales.byId(id));
    }

    private static Optional<GaitScale> kept(Handle handle, String id) {
        List<ScaleLevel> levels = handle.createQuery("""
                        SELECT l.level, l.words FROM scale_level l JOIN scale k ON k.n = l.scale
                        WHERE k.id = :id AND k.gone = 0 AND l.gone = 0 ORDER BY l.level""")
                .bind("id", id)
                .map((rs, ctx) -> new ScaleLevel(rs.getDouble("level"), rs.getString("words")))
                .list();
        return handle.createQuery("SELECT * FROM scale WHERE id = :id AND gone = 0")
                .bind("id", id)
                .map((rs, ctx) -> new GaitScale(
                        rs.getString("id"),
                        rs.getString("name"),
                        rs.getString("source"),
                        levels,
                        rs.getDouble("lame_cut"),
                        rs.getDouble("severe_cut"),
                        rs.getDouble("step")))
                .findOne();
    }

    @Override
    public void put(GaitScale scale) {
        connections.write(NOBODY, "Scale " + scale.name(), pen -> {
            write(pen, scale);
            return true;
        });
    }

    private static void write(Pen pen, GaitScale scale) {
        if (scale.levels().size() < 2) {
            throw new StoreException("A scale needs at least two levels; " + scale.id() + " has "
                    + scale.levels().size() + ".");
        }
        boolean there =
                pen.run("""
                        UPDATE scale SET name = ?, source = ?, lame_cut = ?, severe_cut = ?, step = ?
                        WHERE id = ? AND gone = 0""", scale.name(), scale.source(), scale.lameCut(), scale.severeCut(), scale.step(), scale.id())
                        > 0;
        if (!there) {
            pen.run(
                    """
                    INSERT INTO scale (uuid, name, source, lame_cut, severe_cut, step, id)
                    VALUES (?, ?, ?, ?, ?, ?, ?)""",
                    UUID.randomUUID().toString(),
                    scale.name(),
                    scale.source(),
                    scale.lameCut(),
                    scale.severeCut(),
                    scale.step(),
                    scale.id());
        }
        for (ScaleLevel level : scale.levels()) {
            boolean known = pen.run("""
                            UPDATE scale_level SET words = ? WHERE gone = 0 AND level = ?
                                AND scale = (SELECT n FROM scale WHERE id = ? AND gone = 0)""", level.text(), level.value(), scale.id()) > 0;
            if (!known) {
                pen.run("""
                        INSERT INTO scale_level (uuid, words, level, scale)
                        VALUES (?, ?, ?, (SELECT n FROM scale WHERE id = ? AND gone = 0))""", UUID.randomUUID().toString(), level.text(), level.value(), scale.id());
            }
        }
    }

    /** A published scale comes into the book, with its level texts, when it is first used there. */
    private static void requireScale(Pen pen, String id) {
        boolean there = pen.any("SELECT 1 FROM scale WHERE id = ? AND gone = 0", id);
        if (!there) {
            write(
                    pen,
                    GaitScales.byId(id)
                            .orElseThrow(() -> new StoreException(
                                    "There is no gait scale " + id + "; choose a published one or make your own.")));
        }
    }

    @Override
    public List<Person> people() {
        return connections.read(h -> h.createQuery(
                        "SELECT uuid, name, initials FROM person WHERE gone = 0 ORDER BY name, n")
                .map((rs, ctx) -> new Person(
                        new PersonId(Columns.uuid(rs, "uuid")), rs.getString("name"), rs.getString("initials")))
                .list());
    }

    @Override
    public void put(Person person) {
        connections.write(
                NOBODY,
                "Person " + person.name(),
                pen -> pen.run("""
                        INSERT INTO person (uuid, name, initials) VALUES (?, ?, ?)
                        ON CONFLICT (uuid) DO UPDATE SET gone = 0, name = excluded.name, initials = excluded.initials""", person.id().uuid().toString(), person.name(), person.initials()));
    }

    @Override
    public List<Cow> cows(HerdId herd, LocalDate on) {
        return connections.read(h -> h.createQuery(COW + """
                        h.uuid = :herd ORDER BY length(ltrim(number, '0')), ltrim(number, '0'), number""")
                .bind("on", on.toString())
                .bind("herd", herd.uuid().toString())
                .map((rs, ctx) -> cow(rs))
                .list());
    }

    @Override
    public Optional<Cow> cow(CowId cow, LocalDate on) {
        return connections.read(h -> one(h, cow, on));
    }

    private static Optional<Cow> one(Handle handle, CowId cow, LocalDate on) {
        return handle.createQuery(COW + "c.uuid = :cow")
                .bind("on", on.toString())
                .bind("cow", cow.uuid().toString())
                .map((rs, ctx) -> cow(rs))
                .findOne();
    }

    @Override
    public Optional<Cow> cowByNumber(HerdId herd, String number, LocalDate on) {
        return connections.read(h -> h.createQuery("""
                        SELECT c.uuid FROM cow_number k JOIN cow c ON c.n = k.cow AND c.gone = 0
                        WHERE k.herd = (SELECT n FROM herd WHERE uuid = :herd) AND k.number = :number AND k.gone = 0
                            AND ifnull(k.until_day, '9999') >= :on
                        ORDER BY k.from_day LIMIT 1""")
                .bind("herd", herd.uuid().toString())
                .bind("number", number)
                .bind("on", on.toString())
                .mapTo(String.class)
                .findOne()
                .flatMap(uuid -> one(h, new CowId(UUID.fromString(uuid)), on)));
    }

    @Override
    public Optional<Cow> cowByTag(HerdId herd, String tag, LocalDate on) {
        return connections.read(h -> h.createQuery(COW
                        + "c.herd = (SELECT n FROM herd WHERE uuid = :herd) AND c.tag = :tag ORDER BY c.n DESC LIMIT 1")
                .bind("on", on.toString())
                .bind("herd", herd.uuid().toString())
                .bind("tag", tag)
                .map((rs, ctx) -> cow(rs))
                .findOne());
    }

    private static Cow cow(ResultSet rs) throws SQLException {
        return new Cow(
                new CowId(Columns.uuid(rs, "uuid")),
                new HerdId(Columns.uuid(rs, "herd")),
                rs.getString("number"),
                Columns.text(rs, "name"),
                Columns.text(rs, "official_id"),
                Columns.text(rs, "tag"),
                Columns.dayIfAny(rs, "birth"),
                Columns.dayIfAny(rs, "calving"),
                Columns.integer(rs, "parity"),
                rs.getString("note"));
    }

    @Override
    public void put(Cow cow, LocalDate from) {
        if (cow.number().isBlank()) {
            throw new StoreException("A cow needs a number; type it as it stands on her collar.");
        }
        connections.write(NOBODY, "Cow " + cow.number(), pen -> {
            pen.run(
                    """
                    INSERT INTO cow (uuid, herd, name, official_id, tag, birth, calving, parity, note)
                    VALUES (?, (SELECT n FROM herd WHERE uuid = ?), ?, ?, ?, ?, ?, ?, ?)
                    ON CONFLICT (uuid) DO UPDATE SET gone = 0, herd = excluded.herd, name = excluded.name,
                        official_id = excluded.official_id, tag = excluded.tag, birth = excluded.birth,
                        calving = excluded.calving, parity = excluded.parity, note = excluded.note""",
                    cow.id().uuid().toString(),
                    cow.herd().uuid().toString(),
                    Columns.argument(cow.name()),
                    Columns.argument(cow.officialId()),
                    Columns.argument(cow.tag()),
                    Columns.argument(cow.birth()),
                    Columns.argument(cow.calving()),
                    Columns.argument(cow.parity()),
                    cow.note());
            CowNumbers.give(pen, cow.id(), cow.herd(), cow.number(), from);
            return true;
        });
    }

    @Override
    public List<NumberSpan> numbersOf(HerdId herd) {
        return connections.read(h -> h.createQuery("""
                        SELECT c.uuid, k.number, k.from_day, k.until_day
                        FROM cow_number k JOIN cow c ON c.n = k.cow AND c.gone = 0
                        WHERE k.gone = 0 AND k.herd = (SELECT n FROM herd WHERE uuid = :herd)
                        ORDER BY k.from_day, k.n""")
                .bind("herd", herd.uuid().toString())
                .map((rs, ctx) -> new NumberSpan(
                        new CowId(Columns.uuid(rs, "uuid")),
                        rs.getString("number"),
                        Columns.day(rs, "from_day"),
                        Columns.dayIfAny(rs, "until_day")))
                .list());
    }

    @Override
    public void endNumber(CowId cow, LocalDate lastDay) {
        connections.write(
                NOBODY,
                "End of a cow's number",
                pen -> pen.run("""
                        UPDATE cow_number SET until_day = ?1
                        WHERE cow = (SELECT n FROM cow WHERE uuid = ?2) AND gone = 0 AND from_day <= ?1
                            AND ifnull(until_day, '9999') > ?1""", lastDay.toString(), cow.uuid().toString()));
    }

    @Override
    public List<Visit> visits(HerdId herd) {
        return connections.read(h -> h.createQuery("""
                        SELECT v.uuid, v.day, row_number() OVER (ORDER BY v.day) AS ordinal
                        FROM visit v WHERE v.gone = 0 AND v.herd = (SELECT n FROM herd WHERE uuid = :herd)
                        ORDER BY v.day""")
                .bind("herd", herd.uuid().toString())
                .map((rs, ctx) -> new Visit(
                        new VisitId(Columns.uuid(rs, "uuid")), herd, Columns.day(rs, "day"), rs.getInt("ordinal")))
                .list());
    }

    @Override
    public Visit visitOn(HerdId herd, LocalDate date) {
        Optional<Visit> there = visitOf(herd, date);
        if (there.isPresent()) {
            return there.get();
        }
        connections.write(
                NOBODY,
                "Visit of " + date,
                pen -> pen.run("""
                        INSERT INTO visit (uuid, herd, day) VALUES (?, (SELECT n FROM herd WHERE uuid = ?), ?)
                        ON CONFLICT (herd, day) WHERE gone = 0 DO NOTHING""", UUID.randomUUID().toString(), herd.uuid().toString(), date.toString()));
        return visitOf(herd, date).orElseThrow(() -> new StoreException("The herd of this visit is not in the book."));
    }

    private Optional<Visit> visitOf(HerdId herd, LocalDate date) {
        return visits(herd).stream().filter(v -> v.date().equals(date)).findFirst();
    }

    @Override
    public Score put(Score score) {
        return connections.write(NOBODY, "Score " + score.level(), pen -> {
            requireScale(pen, score.scaleId());
            String cow = score.cow().uuid().toString();
            String visit = score.visit().uuid().toString();
            String scorer = score.scorer().uuid().toString();
            Object leg = Columns.argument(score.leg());
            pen.run("""
                    UPDATE score SET in_force = 0
                    WHERE visit = (SELECT n FROM visit WHERE uuid = ?) AND cow = (SELECT n FROM cow WHERE uuid = ?)
                        AND scorer = (SELECT n FROM person WHERE uuid = ?) AND ifnull(leg, '') = ifnull(?, '')
                        AND gone = 0 AND in_force = 1""", visit, cow, scorer, leg);
            Score kept = withOwnId(pen, score);
            pen.run(
                    """
                    INSERT INTO score (uuid, in_force, cow, visit, pass, scorer, leg, scale, level, at_us, seen)
                    VALUES (?, 1, (SELECT n FROM cow WHERE uuid = ?), (SELECT n FROM visit WHERE uuid = ?),
                        (SELECT n FROM pass WHERE uuid = ?), (SELECT n FROM person WHERE uuid = ?), ?,
                        (SELECT n FROM scale WHERE id = ? AND gone = 0), ?, ?, ?)""",
                    kept.id().uuid().toString(),
                    cow,
                    visit,
                    Columns.argument(score.pass().map(PassId::uuid)),
                    scorer,
                    leg,
                    score.scaleId(),
                    score.level(),
                    Columns.micros(score.at()),
                    score.seenBeforeChanging());
            return kept;
        });
    }

    private static Score withOwnId(Pen pen, Score s) {
        boolean used =
                pen.any("SELECT 1 FROM score WHERE uuid = ?", s.id().uuid().toString());
        Instant at = Columns.instant(Columns.micros(s.at()));
        return new Score(
                used ? ScoreId.fresh() : s.id(),
                s.cow(),
                s.visit(),
                s.pass(),
                s.scorer(),
                s.leg(),
                s.scaleId(),
                s.level(),
                at,
                s.seenBeforeChanging());
    }

    @Override
    public List<Score> scoresOf(VisitId visit) {
        return connections.read(
                h -> scores(h.createQuery(SCORE + "s.visit = (SELECT n FROM visit WHERE uuid = :visit) ORDER BY s.n")
                        .bind("visit", visit.uuid().toString())));
    }

    @Override
    public List<Score> scoresOf(HerdId herd) {
        return connections.read(h -> scores(h.createQuery(SCORE
                        + "s.visit IN (SELECT n FROM visit WHERE herd = (SELECT n FROM herd WHERE uuid = :herd))"
                        + " ORDER BY v.day, s.n")
                .bind("herd", herd.uuid().toString())));
    }

    @Override
    public List<Score> scoresOf(CowId cow) {
        return connections.read(
                h -> scores(h.createQuery(SCORE + "s.cow = (SELECT n FROM cow WHERE uuid = :cow) ORDER BY v.day, s.n")
                        .bind("cow", cow.uuid().toString())));
    }

    @Override
    public List<Score> supersededScoresOf(HerdId herd) {
        return connections.read(h -> scores(h.createQuery(SCORE_ROWS.formatted(0)
                        + "s.visit IN (SELECT n FROM visit WHERE herd = (SELECT n FROM herd WHERE uuid = :herd))"
                        + " ORDER BY s.n")
                .bind("herd", herd.uuid().toString())));
    }

    private static List<Score> scores(Query query) {
        return query.map((rs, ctx) -> new Score(
                        new ScoreId(Columns.uuid(rs, "uuid")),
                        new CowId(Columns.uuid(rs, "cow")),
                        new VisitId(Columns.uuid(rs, "visit")),
                        Columns.uuidIfAny(rs, "pass").map(PassId::new),
                        new PersonId(Columns.uuid(rs, "scorer")),
                        Columns.leg(rs, "leg"),
                        rs.getString("scale"),
                        rs.getDouble("level"),
                        Columns.instant(rs.getLong("at_us")),
                        rs.getBoolean("seen")))
                .list();
    }

    @Override
    public void put(Tag tag) {
        connections.write(
                NOBODY,
                "Tag " + tag.key(),
                pen -> pen.run(
                        """
                        INSERT INTO tag (uuid, pass, person, kind, key, leg, frame, ticks, time_base, note, at_us)
                        VALUES (?, (SELECT n FROM pass WHERE uuid = ?), (SELECT n FROM person WHERE uuid = ?),
                            ?, ?, ?, ?, ?, ?, ?, ?)
                        ON CONFLICT (uuid) DO UPDATE SET gone = 0, pass = excluded.pass, person = excluded.person,
                            kind = excluded.kind, key = excluded.key, leg = excluded.leg, frame = excluded.frame,
                            ticks = excluded.ticks, time_base = excluded.time_base, note = excluded.note,
                            at_us = excluded.at_us""",
                        tag.id().uuid().toString(),
                        tag.pass().uuid().toString(),
                        tag.by().uuid().toString(),
                        tag.kind().name(),
                        tag.key(),
                        Columns.argument(tag.leg()),
                        tag.recordingFrame(),
                        tag.time().ticks(),
                        tag.time().timeBase().toString(),
                        tag.note(),
                        Columns.micros(tag.at())));
    }

    @Override
    public void takeOff(TagId tag) {
        connections.write(
                NOBODY,
                "Tag taken off",
                pen -> pen.run(
                        "UPDATE tag SET gone = 1 WHERE uuid = ?", tag.uuid().toString()));
    }

    @Override
    public List<Tag> tagsOf(PassId pass) {
        return connections.read(h -> h.createQuery("""
                        SELECT t.*, w.uuid AS by_uuid FROM tag t JOIN person w ON w.n = t.person
                        WHERE t.gone = 0 AND t.pass = (SELECT n FROM pass WHERE uuid = :pass) ORDER BY t.frame, t.n""")
                .bind("pass", pass.uuid().toString())
                .map((rs, ctx) -> new Tag(
                        new TagId(Columns.uuid(rs, "uuid")),
                        pass,
                        new PersonId(Columns.uuid(rs, "by_uuid")),
                        Tag.Kind.valueOf(rs.getString("kind")),
                        rs.getString("key"),
                        Columns.leg(rs, "leg"),
                        rs.getInt("frame"),
                        new MediaTime(rs.getLong("ticks"), TimeBase.parse(rs.getString("time_base"))),
                        rs.getString("note"),
                        Columns.instant(rs.getLong("at_us"))))
                .list());
    }
}
