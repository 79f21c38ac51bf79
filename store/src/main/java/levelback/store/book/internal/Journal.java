package levelback.store.book.internal;

import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.UnableToExecuteStatementException;
import org.jspecify.annotations.Nullable;

/**
 * The one table of changes. Triggers made from the schema itself write every change of every table into it, so that no
 * write can be forgotten; undo plays a step's changes back, newest first, as a new step, and redo plays them again.
 */
final class Journal {

    private final Clock clock;
    private final Map<String, List<String>> columnsOf = new HashMap<>();

    Journal(Clock clock) {
        this.clock = clock;
    }

    /** A step by its number and words. */
    record Entry(long n, String what) {}

    /** Sets the triggers for this connection. */
    void attach(Pen pen) {
        List<String> tables = pen.handle().createQuery("""
                        SELECT name FROM sqlite_schema
                        WHERE type = 'table' AND name NOT IN ('book', 'step', 'change') AND name NOT LIKE 'sqlite%'""").mapTo(String.class).list();
        for (String table : tables) {
            List<String> columns = pen.handle()
                    .createQuery("SELECT name FROM pragma_table_info(:table) WHERE name <> 'n' ORDER BY cid")
                    .bind("table", table)
                    .mapTo(String.class)
                    .list();
            columnsOf.put(table, columns);
            String differs = columns.stream()
                    .map(c -> "OLD.%s IS NOT NEW.%s".formatted(c, c))
                    .collect(Collectors.joining(" OR "));
            pen.script("""
                    CREATE TEMP TRIGGER %1$s_added AFTER INSERT ON main.%1$s BEGIN
                        INSERT INTO change (step, kind, row, was, now)
                        VALUES ((SELECT max(n) FROM step), '%1$s', NEW.n, NULL, %2$s);
                    END;
                    CREATE TEMP TRIGGER %1$s_changed AFTER UPDATE ON main.%1$s WHEN %4$s BEGIN
                        INSERT INTO change (step, kind, row, was, now)
                        VALUES ((SELECT max(n) FROM step), '%1$s', NEW.n, %3$s, %2$s);
                    END;
                    """.formatted(table, image("NEW", columns), image("OLD", columns), differs));
        }
    }

    /** Opens a step inside the running transaction and returns its number. */
    long open(Pen pen, String who, String what) {
        pen.run(
                "INSERT INTO step (at_us, who, what, fate) VALUES (?, ?, ?, 'stands')",
                Columns.micros(clock.instant()),
                who,
                what);
        return pen.number("SELECT max(n) FROM step");
    }

    /** Ends a step; false if it changed nothing. What was undone before it can no longer come back. */
    boolean end(Pen pen, long step) {
        boolean changed = pen.number("SELECT EXISTS (SELECT 1 FROM change WHERE step = " + step + ")") == 1;
        if (changed) {
            pen.run("UPDATE step SET fate = 'buried' WHERE fate = 'undone'");
        }
        return changed;
    }

    Optional<Entry> nextUndo(Handle handle) {
        return entry(handle, "SELECT n, what FROM step WHERE fate = 'stands' ORDER BY n DESC LIMIT 1");
    }

    Optional<Entry> nextRedo(Handle handle) {
        return entry(handle, "SELECT n, what FROM step WHERE fate = 'undone' ORDER BY n LIMIT 1");
    }

    /** Takes a step back inside the running transaction. */
    void undo(Pen pen, Entry step, String who) {
        pen.run("UPDATE step SET fate = 'undone' WHERE n = ?", step.n());
        pen.run(
                "INSERT INTO step (at_us, who, what, undoes, fate) VALUES (?, ?, ?, ?, 'is-undo')",
                Columns.micros(clock.instant()),
                who,
                "Undo: " + step.what(),
                step.n());
        play(pen, step.n(), true);
    }

    /** Brings a step back inside the running transaction. */
    void redo(Pen pen, Entry step, String who) {
        pen.run("UPDATE step SET fate = 'stands' WHERE n = ?", step.n());
        pen.run(
                "INSERT INTO step (at_us, who, what, redoes, fate) VALUES (?, ?, ?, ?, 'is-redo')",
                Columns.micros(clock.instant()),
                who,
                "Redo: " + step.what(),
                step.n());
        play(pen, step.n(), false);
    }

    private void play(Pen pen, long step, boolean back) {
        // The rows that playing adds belong to a later step, so that the reading below never meets them.
        String sql = "SELECT kind, row, was, now FROM change WHERE step = ? ORDER BY n" + (back ? " DESC" : "");
        try (PreparedStatement changes = pen.handle().getConnection().prepareStatement(sql)) {
            changes.setLong(1, step);
            try (ResultSet rs = changes.executeQuery()) {
                while (rs.next()) {
                    set(pen, rs.getString("kind"), rs.getLong("row"), rs.getString(back ? "was" : "now"));
                }
            }
        } catch (SQLException e) {
            throw new UnableToExecuteStatementException(e, null);
        }
    }

    /** Makes a row what its image says; no image means that it was not there yet. */
    private void set(Pen pen, String kind, long row, @Nullable String image) {
        if (image == null) {
            pen.run("UPDATE " + kind + " SET gone = 1 WHERE n = ?", row);
            return;
        }
        List<String> columns = columnsOf.getOrDefault(kind, List.of());
        String assignments = columns.stream()
                .map(c -> "%s = json_extract(?1, '$.%s')".formatted(c, c))
                .collect(Collectors.joining(", "));
        pen.run("UPDATE " + kind + " SET " + assignments + " WHERE n = ?2", image, row);
    }

    private static String image(String prefix, List<String> columns) {
        return columns.stream()
                .map(c -> "'%s', %s.%s".formatted(c, prefix, c))
                .collect(Collectors.joining(", ", "json_object(", ")"));
    }

    private static Optional<Entry> entry(Handle handle, String sql) {
        return handle.createQuery(sql)
                .map((rs, ctx) -> new Entry(rs.getLong("n"), rs.getString("what")))
                .findOne();
    }
}
