package levelback.store.book;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Reads a book's file past the book, by plain JDBC. */
final class Dump {

    private Dump() {}

    /** Everything that stands in the book, as text: two books with the same text say the same. */
    static String of(Path book) {
        try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + book)) {
            TreeMap<String, String> tables = new TreeMap<>();
            for (String table : strings(
                    c,
                    "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT IN ('book', 'step', 'change')"
                            + " AND name NOT LIKE 'sqlite%'")) {
                tables.put(table, rows(c, "SELECT * FROM " + table + " WHERE gone = 0"));
            }
            return tables.toString();
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    static List<String> strings(Path book, String sql) {
        try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + book)) {
            return strings(c, sql);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    static void run(Path book, String sql) {
        try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + book);
                Statement s = c.createStatement()) {
            s.executeUpdate(sql);
        } catch (SQLException e) {
            throw new IllegalStateException(e.getMessage(), e);
        }
    }

    private static List<String> strings(Connection c, String sql) throws SQLException {
        try (Statement s = c.createStatement();
                ResultSet rs = s.executeQuery(sql)) {
            List<String> found = new ArrayList<>();
            while (rs.next()) {
                found.add(String.valueOf(rs.getString(1)));
            }
            return found;
        }
    }

    private static String rows(Connection c, String sql) throws SQLException {
        try (Statement s = c.createStatement();
                ResultSet rs = s.executeQuery(sql)) {
            List<String> rows = new ArrayList<>();
            int columns = rs.getMetaData().getColumnCount();
            while (rs.next()) {
                StringBuilder row = new StringBuilder();
                for (int i = 1; i <= columns; i++) {
                    row.append(rs.getString(i)).append('|');
                }
                rows.add(row.toString());
            }
            return rows.stream().sorted().collect(Collectors.joining("\n", "\n", "\n"));
        }
    }
}
