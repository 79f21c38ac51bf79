package levelback.store.book.internal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.UnableToExecuteStatementException;
import org.jspecify.annotations.Nullable;

/**
 * The one connection that writes, with its statements kept ready: an import of a hundred thousand scores spends its time
 * in the database and not in parsing. Used on the writer thread only.
 */
final class Pen implements AutoCloseable {

    private static final int STATEMENTS_KEPT = 128;

    private final Handle handle;
    private final Connection connection;
    private final Map<String, PreparedStatement> ready = new LinkedHashMap<>(STATEMENTS_KEPT, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, PreparedStatement> eldest) {
            if (size() <= STATEMENTS_KEPT) {
                return false;
            }
            closeQuietly(eldest.getValue());
            return true;
        }
    };

    Pen(Handle handle) {
        this.handle = handle;
        this.connection = handle.getConnection();
    }

    /** For questions inside a step, which must see the step's own writes. */
    Handle handle() {
        return handle;
    }

    /** Runs one statement with its arguments and returns the number of rows it touched. */
    int run(String sql, @Nullable Object... arguments) {
        try {
            return bound(sql, arguments).executeUpdate();
        } catch (SQLException e) {
            forget(sql);
            throw new UnableToExecuteStatementException(e, null);
        }
    }

    /** Whether a question has any row for an answer. */
    boolean any(String sql, @Nullable Object... arguments) {
        try (ResultSet answer = bound(sql, arguments).executeQuery()) {
            return answer.next();
        } catch (SQLException e) {
            forget(sql);
            throw new UnableToExecuteStatementException(e, null);
        }
    }

    private PreparedStatement bound(String sql, @Nullable Object... arguments) throws SQLException {
        PreparedStatement statement = ready.get(sql);
        if (statement == null) {
            statement = connection.prepareStatement(sql);
            ready.put(sql, statement);
        }
        for (int i = 0; i < arguments.length; i++) {
            Object argument = arguments[i];
            statement.setObject(i + 1, argument instanceof Boolean b ? (Object) (b ? 1 : 0) : argument);
        }
        return statement;
    }

    /** Runs a script of several statements. */
    void script(String sql) {
        try (Statement statement = connection.createStatement()) {
            // The driver hands the whole text to sqlite3_exec, so triggers with their own semicolons are fine.
            statement.executeUpdate(sql);
        } catch (SQLException e) {
            throw new UnableToExecuteStatementException(e, null);
        }
    }

    long number(String sql) {
        return handle.createQuery(sql).mapTo(Long.class).one();
    }

    void begin() {
        script("BEGIN IMMEDIATE");
    }

    void commit() {
        script("COMMIT");
    }

    /** Ends the transaction if SQLite has not done so itself, as it does when the disk is full. */
    void rollback() {
        // A statement that met a full disk or a taken-out one is of no more use to the driver.
        ready.values().forEach(Pen::closeQuietly);
        ready.clear();
        try {
            script("ROLLBACK");
        } catch (UnableToExecuteStatementException noTransaction) {
            // Nothing is open: that is what was wanted.
        }
    }

    @Override
    public void close() {
        ready.values().forEach(Pen::closeQuietly);
        ready.clear();
        handle.close();
    }

    private void forget(String sql) {
        PreparedStatement failed = ready.remove(sql);
        if (failed != null) {
            closeQuietly(failed);
        }
    }

    private static void closeQuietly(PreparedStatement statement) {
        try {
            statement.close();
        } catch (SQLException e) {
            // A statement that cannot be closed goes with its connection.
        }
    }
}
