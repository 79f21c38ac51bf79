package levelback.store.book.internal;

import java.nio.file.Path;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import levelback.scoring.foot.Claw;
import levelback.scoring.foot.FootAction;
import levelback.scoring.value.Leg;
import levelback.store.herd.CowId;
import levelback.store.herd.HerdId;
import levelback.store.herd.PersonId;
import levelback.store.trim.Block;
import levelback.store.trim.Finding;
import levelback.store.trim.FindingId;
import levelback.store.trim.Foot;
import levelback.store.trim.FootCard;
import levelback.store.trim.FootId;
import levelback.store.trim.Lift;
import levelback.store.trim.LiftCard;
import levelback.store.trim.LiftId;
import levelback.store.trim.MedicineNote;
import levelback.store.trim.TrimShelf;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;

/** Cards of the chute in SQL. */
final class SqliteTrimShelf implements TrimShelf {

    private static final String NOBODY = "";

    private final Connections connections;

    SqliteTrimShelf(Connections connections) {
        this.connections = connections;
    }

    @Override
    public void put(Lift lift) {
        connections.write(
                NOBODY,
                "Card of " + lift.date(),
                pen -> pen.run(
                        """
                        INSERT INTO lift (uuid, cow, day, trimmer, chance, refused, done)
                        VALUES (?, (SELECT n FROM cow WHERE uuid = ?), ?, (SELECT n FROM person WHERE uuid = ?), ?, ?, ?)
                        ON CONFLICT (uuid) DO UPDATE SET gone = 0, cow = excluded.cow, day = excluded.day,
                            trimmer = excluded.trimmer, chance = excluded.chance, refused = excluded.refused,
                            done = excluded.done""",
                        lift.id().uuid().toString(),
                        lift.cow().uuid().toString(),
                        lift.date().toString(),
                        lift.trimmer().uuid().toString(),
                        Columns.argument(lift.chance()),
                        lift.refused(),
                        lift.done()));
    }

    @Override
    public void put(Foot foot) {
        connections.write(
                NOBODY,
                "Foot " + foot.leg(),
                pen -> pen.run(
                        """
                        INSERT INTO foot (uuid, lift, leg, no_lesion)
                        VALUES (?, (SELECT n FROM lift WHERE uuid = ?), ?, ?)
                        ON CONFLICT (uuid) DO UPDATE SET gone = 0, lift = excluded.lift, leg = excluded.leg,
                            no_lesion = excluded.no_lesion""",
                        foot.id().uuid().toString(),
                        foot.lift().uuid().toString(),
                        foot.leg().name(),
                        foot.noLesion()));
    }

    @Override
    public void put(Finding finding) {
        connections.write(
                NOBODY,
                "Finding " + finding.lesion(),
                pen -> pen.run(
                        """
                        INSERT INTO finding (uuid, foot, claw, zone, zone_confirmed, lesion, severity, stage, note)
                        VALUES (?, (SELECT n FROM foot WHERE uuid = ?), ?, ?, ?, ?, ?, ?, ?)
                        ON CONFLICT (uuid) DO UPDATE SET gone = 0, foot = excluded.foot, claw = excluded.claw,
                            zone = excluded.zone, zone_confirmed = excluded.zone_confirmed, lesion = excluded.lesion,
                            severity = excluded.severity, stage = excluded.stage, note = excluded.note""",
                        finding.id().uuid().toString(),
                        finding.foot().uuid().toString(),
                        finding.claw().key(),
                        Columns.argument(finding.zone()),
                        finding.zoneConfirmed(),
                        finding.lesion(),
                        Columns.argument(finding.severity()),
                        finding.stage(),
                        finding.note()));
    }

    @Override
    public void takeOff(FindingId finding) {
        connections.write(
                NOBODY,
                "Finding taken off",
                pen -> pen.run(
                        "UPDATE finding SET gone = 1 WHERE uuid = ?",
                        finding.uuid().toString()));
    }

    @Override
    public void putActions(FootId foot, Set<FootAction> actions) {
        connections.write(NOBODY, "What was done", pen -> {
            String id = foot.uuid().toString();
            for (FootAction action : FootAction.values()) {
                if (actions.contains(action)) {
                    pen.run("""
                            INSERT INTO foot_action (uuid, foot, action)
                            VALUES (?, (SELECT n FROM foot WHERE uuid = ?), ?)
                            ON CONFLICT (foot, action) WHERE gone = 0 DO NOTHING""", UUID.randomUUID().toString(), id, action.key());
                } else {
                    pen.run("""
                            UPDATE foot_action SET gone = 1
                            WHERE foot = (SELECT n FROM foot WHERE uuid = ?) AND action = ? AND gone = 0""", id, action.key());
                }
            }
            // Off before on: a claw may lose yesterday's block and get a new one on the same day.
            blocksOff(pen, id, actions.contains(FootAction.BLOCK_OFF));
            blockOn(pen, id, Claw.MEDIAL, actions.contains(FootAction.BLOCK_INNER));
            blockOn(pen, id, Claw.LATERAL, actions.contains(FootAction.BLOCK_OUTER));
            return true;
        });
    }

    private static void blocksOff(Pen pen, String foot, boolean off) {
        if (off) {
            pen.run("""
                    UPDATE block SET off_day = l.day, off_foot = f.n
                    FROM foot f JOIN lift l ON l.n = f.lift
                    WHERE f.uuid = ? AND block.cow = l.cow AND block.leg = f.leg AND block.gone = 0
                        AND block.off_day IS NULL AND block.on_day <= l.day AND block.on_foot <> f.n""", foot);
        } else {
            pen.run("""
                    UPDATE block SET off_day = NULL, off_foot = NULL
                    WHERE off_foot = (SELECT n FROM foot WHERE uuid = ?) AND gone = 0""", foot);
        }
    }

    private static void blockOn(Pen pen, String foot, Claw claw, boolean on) {
        if (on) {
            pen.run("""
                    INSERT INTO block (uuid, cow, leg, claw, on_day, on_foot)
                    SELECT ?1, l.cow, f.leg, ?2, l.day, f.n FROM foot f JOIN lift l ON l.n = f.lift
                    WHERE f.uuid = ?3 AND NOT EXISTS
                        (SELECT 1 FROM block b WHERE b.on_foot = f.n AND b.claw = ?2 AND b.gone = 0)""", UUID.randomUUID().toString(), claw.key(), foot);
        } else {
            pen.run("""
                    UPDATE block SET gone = 1
                    WHERE on_foot = (SELECT n FROM foot WHERE uuid = ?) AND claw = ? AND gone = 0""", foot, claw.key());
        }
    }

    @Override
    public void putMedicine(LiftId lift, MedicineNote note) {
        connections.write(
                NOBODY,
                "Medicine note",
                pen -> pen.run(
                        """
                        INSERT INTO medicine (uuid, lift, product, given_by, milk_withheld_until, meat_withheld_until,
                            batch, given_at, dose_as_given, prescribed_by)
                        VALUES (?, (SELECT n FROM lift WHERE uuid = ?), ?, ?, ?, ?, ?, ?, ?, ?)
                        ON CONFLICT (lift) WHERE gone = 0 DO UPDATE SET product = excluded.product,
                            given_by = excluded.given_by, milk_withheld_until = excluded.milk_withheld_until,
                            meat_withheld_until = excluded.meat_withheld_until, batch = excluded.batch,
                            given_at = excluded.given_at, dose_as_given = excluded.dose_as_given,
                            prescribed_by = excluded.prescribed_by""",
                        UUID.randomUUID().toString(),
                        lift.uuid().toString(),
                        note.product(),
                        note.givenBy(),
                        note.milkWithheldUntil(),
                        note.meatWithheldUntil(),
                        note.batch(),
                        note.givenAt(),
                        note.doseAsGiven(),
                        note.prescribedBy()));
    }

    @Override
    public void putLookAgain(LiftId lift, Optional<LocalDate> on) {
        connections.write(
                NOBODY,
                on.isPresent() ? "Look again on " + on.get() : "No second look",
                pen -> on.isPresent()
                        ? pen.run(
                                """
                                INSERT INTO recheck (uuid, lift, day) VALUES (?, (SELECT n FROM lift WHERE uuid = ?), ?)
                                ON CONFLICT (lift) WHERE gone = 0 DO UPDATE SET day = excluded.day""",
                                UUID.randomUUID().toString(),
                                lift.uuid().toString(),
                                on.get().toString())
                        : pen.run("""
                                UPDATE recheck SET gone = 1
                                WHERE lift = (SELECT n FROM lift WHERE uuid = ?) AND gone = 0""", lift.uuid().toString()));
    }

    @Override
    public void putPhoto(FootId foot, Path file) {
        connections.write(
                NOBODY,
                "Photo " + file.getFileName(),
                pen -> pen.run("""
                        INSERT INTO photo (uuid, foot, file) VALUES (?, (SELECT n FROM foot WHERE uuid = ?), ?)
                        ON CONFLICT (foot, file) WHERE gone = 0 DO NOTHING""", UUID.randomUUID().toString(), foot.uuid().toString(), file.toString()));
    }

    @Override
    public List<Path> photosOf(FootId foot) {
        return connections.read(h -> h.createQuery("""
                        SELECT file FROM photo WHERE gone = 0 AND foot = (SELECT n FROM foot WHERE uuid = :foot)
                        ORDER BY n""")
                .bind("foot", foot.uuid().toString())
                .map((rs, ctx) -> Path.of(rs.getString("file")))
                .list());
    }

    @Override
    public List<LiftCard> cardsOf(CowId cow) {
        Map<String, String> arguments = Map.of("cow", cow.uuid().toString());
        return connections.read(
                h -> cards(h, "l.cow = (SELECT n FROM cow WHERE uuid = :cow)", arguments, "l.day DESC, l.n DESC"));
    }

    @Override
    public List<LiftCard> cardsOf(HerdId herd, LocalDate from, LocalDate to) {
        Map<String, String> arguments =
                Map.of("herd", herd.uuid().toString(), "from", from.toString(), "to", to.toString());
        return connections.read(h -> cards(h, """
                l.day BETWEEN :from AND :to
                    AND l.cow IN (SELECT n FROM cow WHERE herd = (SELECT n FROM herd WHERE uuid = :herd))""", arguments, "l.day, l.n"));
    }

    @Override
    public List<Block> blocksOn(HerdId herd, LocalDate day) {
        return connections.read(h -> h.createQuery("""
                        SELECT c.uuid AS cow_uuid, b.leg, b.claw, b.on_day, b.off_day
                        FROM block b JOIN cow c ON c.n = b.cow
                        WHERE b.gone = 0 AND c.herd = (SELECT n FROM herd WHERE uuid = :herd)
                            AND b.on_day <= :day AND (b.off_day IS NULL OR b.off_day > :day)
                        ORDER BY b.on_day, b.n""")
                .bind("herd", herd.uuid().toString())
                .bind("day", day.toString())
                .map((rs, ctx) -> new Block(
                        new CowId(Columns.uuid(rs, "cow_uuid")),
                        Leg.valueOf(rs.getString("leg")),
                        claw(rs),
                        Columns.day(rs, "on_day"),
                        Columns.dayIfAny(rs, "off_day")))
                .list());
    }

    /** All parts of the cards in one query each, put together here: the time does not grow with the number of cards. */
    private static List<LiftCard> cards(Handle h, String which, Map<String, String> arguments, String order) {
        String lifts = "(SELECT l.n FROM lift l WHERE l.gone = 0 AND " + which + ")";
        Map<String, List<Finding>> findings = grouped(h, """
                SELECT f.uuid AS owner, d.* FROM finding d JOIN foot f ON f.n = d.foot
                WHERE d.gone = 0 AND f.gone = 0 AND f.lift IN %s ORDER BY d.n""".formatted(lifts), arguments, (rs, ctx) -> finding(rs));
        Map<String, List<FootAction>> actions =
                grouped(h, """
                SELECT f.uuid AS owner, a.action FROM foot_action a JOIN foot f ON f.n = a.foot
                WHERE a.gone = 0 AND f.gone = 0 AND f.lift IN %s ORDER BY a.n""".formatted(lifts), arguments, (rs, ctx) -> action(rs.getString("action")));
        Map<String, List<FootCard>> feet = grouped(h, """
                SELECT l.uuid AS owner, f.* FROM foot f JOIN lift l ON l.n = f.lift
                WHERE f.gone = 0 AND f.lift IN %s ORDER BY f.n""".formatted(lifts), arguments, (rs, ctx) -> {
            Foot foot = new Foot(
                    new FootId(Columns.uuid(rs, "uuid")),
                    new LiftId(Columns.uuid(rs, "owner")),
                    Leg.valueOf(rs.getString("leg")),
                    rs.getBoolean("no_lesion"));
            String id = rs.getString("uuid");
            Set<FootAction> done = EnumSet.noneOf(FootAction.class);
            done.addAll(actions.getOrDefault(id, List.of()));
            return new FootCard(foot, findings.getOrDefault(id, List.of()), done);
        });
        Map<String, List<MedicineNote>> medicines =
                grouped(h, """
                SELECT l.uuid AS owner, m.* FROM medicine m JOIN lift l ON l.n = m.lift
                WHERE m.gone = 0 AND m.lift IN %s""".formatted(lifts), arguments, (rs, ctx) -> medicine(rs));
        return h.createQuery("""
                        SELECT l.uuid, c.uuid AS cow_uuid, l.day, w.uuid AS trimmer_uuid, l.chance, l.refused, l.done,
                            r.day AS look_again
                        FROM lift l JOIN cow c ON c.n = l.cow JOIN person w ON w.n = l.trimmer
                            LEFT JOIN recheck r ON r.lift = l.n AND r.gone = 0
                        WHERE l.gone = 0 AND %s ORDER BY %s""".formatted(which, order))
                .bindMap(arguments)
                .map((rs, ctx) -> {
                    String id = rs.getString("uuid");
                    return new LiftCard(
                            new Lift(
                                    new LiftId(Columns.uuid(rs, "uuid")),
                                    new CowId(Columns.uuid(rs, "cow_uuid")),
                                    Columns.day(rs, "day"),
                                    new PersonId(Columns.uuid(rs, "trimmer_uuid")),
                                    Columns.real(rs, "chance"),
                                    rs.getBoolean("refused"),
                                    rs.getBoolean("done")),
                            feet.getOrDefault(id, List.of()),
                            medicines.getOrDefault(id, List.of()).stream().findFirst(),
                            Columns.dayIfAny(rs, "look_again"));
                })
                .list();
    }

    private static <T> Map<String, List<T>> grouped(
            Handle h, String sql, Map<String, String> arguments, RowMapper<T> mapper) {
        Map<String, List<T>> groups = new HashMap<>();
        h.createQuery(sql)
                .bindMap(arguments)
                .map((rs, ctx) -> Map.entry(rs.getString("owner"), mapper.map(rs, ctx)))
                .forEach(entry -> groups.computeIfAbsent(entry.getKey(), k -> new ArrayList<>())
                        .add(entry.getValue()));
        return groups;
    }

    private static Finding finding(ResultSet rs) throws SQLException {
        return new Finding(
                new FindingId(Columns.uuid(rs, "uuid")),
                new FootId(Columns.uuid(rs, "owner")),
                claw(rs),
                Columns.integer(rs, "zone"),
                rs.getBoolean("zone_confirmed"),
                rs.getString("lesion"),
                Columns.integer(rs, "severity"),
                rs.getString("stage"),
                rs.getString("note"));
    }

    private static MedicineNote medicine(ResultSet rs) throws SQLException {
        return new MedicineNote(
                rs.getString("product"),
                rs.getString("given_by"),
                rs.getString("milk_withheld_until"),
                rs.getString("meat_withheld_until"),
                rs.getString("batch"),
                rs.getString("given_at"),
                rs.getString("dose_as_given"),
                rs.getString("prescribed_by"));
    }

    private static Claw claw(ResultSet rs) throws SQLException {
        return Claw.valueOf(rs.getString("claw").toUpperCase(Locale.ROOT));
    }

    private static FootAction action(String key) {
        for (FootAction action : FootAction.values()) {
            if (action.key().equals(key)) {
                return action;
            }
        }
        throw new IllegalStateException("unknown action " + key);
    }
}
