package levelback.store.book.internal;

import java.nio.file.Path;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import levelback.scoring.value.MediaTime;
import levelback.scoring.value.TimeBase;
import levelback.store.herd.CowId;
import levelback.store.herd.VisitId;
import levelback.store.lane.GateRead;
import levelback.store.lane.LaneShelf;
import levelback.store.lane.Pass;
import levelback.store.lane.PassId;
import levelback.store.lane.Recording;
import levelback.store.lane.RecordingId;

/** Recordings, passes and gate reads in SQL. */
final class SqliteLaneShelf implements LaneShelf {

    private static final String NOBODY = "";

    private static final String RECORDING =
            "SELECT r.*, v.uuid AS visit_uuid FROM recording r JOIN visit v ON v.n = r.visit WHERE r.gone = 0 AND ";

    private static final String PASS = """
            SELECT p.*, r.uuid AS recording_uuid, c.uuid AS cow_uuid
            FROM pass p JOIN recording r ON r.n = p.recording LEFT JOIN cow c ON c.n = p.cow
            WHERE p.gone = 0 AND\s""";

    private final Connections connections;

    SqliteLaneShelf(Connections connections) {
        this.connections = connections;
    }

    @Override
    public void put(Recording recording) {
        connections.write(
                NOBODY,
                "Recording " + recording.file().getFileName(),
                pen -> pen.run(
                        """
                        INSERT INTO recording (uuid, visit, file, fingerprint, codec, width, height, rotation_degrees,
                            time_base, frame_count, start_us, duration_us, recorded_us)
                        VALUES (?, (SELECT n FROM visit WHERE uuid = ?), ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
                        ON CONFLICT (uuid) DO UPDATE SET gone = 0, visit = excluded.visit, file = excluded.file,
                            fingerprint = excluded.fingerprint, codec = excluded.codec, width = excluded.width,
                            height = excluded.height, rotation_degrees = excluded.rotation_degrees,
                            time_base = excluded.time_base, frame_count = excluded.frame_count,
                            start_us = excluded.start_us, duration_us = excluded.duration_us,
                            recorded_us = excluded.recorded_us""",
                        recording.id().uuid().toString(),
                        recording.visit().uuid().toString(),
                        recording.file().toString(),
                        recording.fingerprint(),
                        recording.codec(),
                        recording.width(),
                        recording.height(),
                        recording.rotationDegrees(),
                        recording.timeBase().toString(),
                        recording.frameCount(),
                        recording.startUs(),
                        recording.durationUs(),
                        recording.recordedAt().map(Columns::micros).orElse(null)));
    }

    @Override
    public Optional<Recording> recording(RecordingId recording) {
        return connections.read(h -> h.createQuery(RECORDING + "r.uuid = :recording")
                .bind("recording", recording.uuid().toString())
                .map((rs, ctx) -> recording(rs))
                .findOne());
    }

    @Override
    public Optional<Recording> byFingerprint(VisitId visit, String fingerprint) {
        return connections.read(
                h -> h.createQuery(RECORDING + "v.uuid = :visit AND r.fingerprint = :fingerprint ORDER BY r.n")
                        .bind("visit", visit.uuid().toString())
                        .bind("fingerprint", fingerprint)
                        .map((rs, ctx) -> recording(rs))
                        .findFirst());
    }

    @Override
    public List<Recording> recordingsOf(VisitId visit) {
        return connections.read(h -> h.createQuery(RECORDING
                        + "r.visit = (SELECT n FROM visit WHERE uuid = :visit)"
                        + " ORDER BY r.recorded_us IS NULL, r.recorded_us, r.n")
                .bind("visit", visit.uuid().toString())
                .map((rs, ctx) -> recording(rs))
                .list());
    }

    @Override
    public void put(Pass pass) {
        if (!pass.from().timeBase().equals(pass.to().timeBase())) {
            throw new IllegalArgumentException("both ends of a pass are in ticks of one stream: " + pass);
        }
        connections.write(
                NOBODY,
                "Pass",
                pen -> pen.run(
                        """
                        INSERT INTO pass (uuid, recording, from_frame, to_frame, from_ticks, to_ticks, time_base,
                            direction, cow)
                        VALUES (?, (SELECT n FROM recording WHERE uuid = ?), ?, ?, ?, ?, ?, ?,
                            (SELECT n FROM cow WHERE uuid = ?))
                        ON CONFLICT (uuid) DO UPDATE SET gone = 0, recording = excluded.recording,
                            from_frame = excluded.from_frame, to_frame = excluded.to_frame,
                            from_ticks = excluded.from_ticks, to_ticks = excluded.to_ticks,
                            time_base = excluded.time_base, direction = excluded.direction, cow = excluded.cow""",
                        pass.id().uuid().toString(),
                        pass.recording().uuid().toString(),
                        pass.fromFrame(),
                        pass.toFrame(),
                        pass.from().ticks(),
                        pass.to().ticks(),
                        pass.from().timeBase().toString(),
                        pass.direction().key(),
                        Columns.argument(pass.cow().map(CowId::uuid))));
    }

    @Override
    public List<Pass> passesOf(VisitId visit) {
        return connections.read(h -> h.createQuery(PASS
                        + "r.gone = 0 AND r.visit = (SELECT n FROM visit WHERE uuid = :visit)"
                        + " ORDER BY r.recorded_us IS NULL, r.recorded_us, r.n, p.from_frame, p.n")
                .bind("visit", visit.uuid().toString())
                .map((rs, ctx) -> pass(rs))
                .list());
    }

    @Override
    public Optional<Pass> pass(PassId pass) {
        return connections.read(h -> h.createQuery(PASS + "p.uuid = :pass")
                .bind("pass", pass.uuid().toString())
                .map((rs, ctx) -> pass(rs))
                .findOne());
    }

    @Override
    public List<Pass> passesOf(CowId cow) {
        return connections.read(h -> h.createQuery("""
                        SELECT p.*, r.uuid AS recording_uuid, c.uuid AS cow_uuid
                        FROM pass p JOIN recording r ON r.n = p.recording JOIN cow c ON c.n = p.cow
                            JOIN visit v ON v.n = r.visit
                        WHERE p.gone = 0 AND r.gone = 0 AND p.cow = (SELECT n FROM cow WHERE uuid = :cow)
                        ORDER BY v.day DESC, r.recorded_us DESC, r.n DESC, p.from_frame DESC, p.n DESC""")
                .bind("cow", cow.uuid().toString())
                .map((rs, ctx) -> pass(rs))
                .list());
    }

    @Override
    public boolean putRead(VisitId visit, Instant at, String tag, String reader) {
        return connections.write(
                        NOBODY,
                        "Gate read of " + tag,
                        pen -> pen.run(
                                """
                                INSERT INTO gate_read (uuid, visit, at_us, tag, reader)
                                VALUES (?, (SELECT n FROM visit WHERE uuid = ?), ?, ?, ?)
                                ON CONFLICT (visit, at_us, tag, reader) WHERE gone = 0 DO NOTHING""",
                                UUID.randomUUID().toString(),
                                visit.uuid().toString(),
                                Columns.micros(at),
                                tag,
                                reader))
                > 0;
    }

    @Override
    public List<GateRead> readsOf(VisitId visit) {
        return connections.read(h -> h.createQuery("""
                        SELECT at_us, tag, reader FROM gate_read
                        WHERE gone = 0 AND visit = (SELECT n FROM visit WHERE uuid = :visit) ORDER BY at_us, n""")
                .bind("visit", visit.uuid().toString())
                .map((rs, ctx) ->
                        new GateRead(Columns.instant(rs.getLong("at_us")), rs.getString("tag"), rs.getString("reader")))
                .list());
    }

    private static Recording recording(ResultSet rs) throws SQLException {
        return new Recording(
                new RecordingId(Columns.uuid(rs, "uuid")),
                new VisitId(Columns.uuid(rs, "visit_uuid")),
                Path.of(rs.getString("file")),
                rs.getString("fingerprint"),
                rs.getString("codec"),
                rs.getInt("width"),
                rs.getInt("height"),
                rs.getInt("rotation_degrees"),
                TimeBase.parse(rs.getString("time_base")),
                rs.getInt("frame_count"),
                rs.getLong("start_us"),
                rs.getLong("duration_us"),
                Columns.instantIfAny(rs, "recorded_us"));
    }

    private static Pass pass(ResultSet rs) throws SQLException {
        TimeBase base = TimeBase.parse(rs.getString("time_base"));
        String direction = rs.getString("direction");
        return new Pass(
                new PassId(Columns.uuid(rs, "uuid")),
                new RecordingId(Columns.uuid(rs, "recording_uuid")),
                rs.getInt("from_frame"),
                rs.getInt("to_frame"),
                new MediaTime(rs.getLong("from_ticks"), base),
                new MediaTime(rs.getLong("to_ticks"), base),
                direction.equals(Pass.Direction.LEFT_TO_RIGHT.key())
                        ? Pass.Direction.LEFT_TO_RIGHT
                        : direction.equals(Pass.Direction.RIGHT_TO_LEFT.key())
                                ? Pass.Direction.RIGHT_TO_LEFT
                                : Pass.Direction.UNKNOWN,
                Columns.uuidIfAny(rs, "cow_uuid").map(CowId::new));
    }
}
