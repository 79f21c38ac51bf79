package levelback.store.book.internal;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import levelback.store.book.Change;
import levelback.store.herd.CowId;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.SqlStatements;

/** Reads the table of changes for people. */
final class History {

    private static final String OF_HER = """
            WITH her AS (SELECT n FROM cow WHERE uuid = :cow),
            rows (kind, row) AS (
                SELECT 'cow', n FROM her
                UNION ALL SELECT 'cow_number', n FROM cow_number WHERE cow IN her
                UNION ALL SELECT 'pass', n FROM pass WHERE cow IN her
                UNION ALL SELECT 'tag', n FROM tag WHERE pass IN (SELECT n FROM pass WHERE cow IN her)
                UNION ALL SELECT 'score', n FROM score WHERE cow IN her
                UNION ALL SELECT 'lift', n FROM lift WHERE cow IN her
                UNION ALL SELECT 'medicine', n FROM medicine WHERE lift IN (SELECT n FROM lift WHERE cow IN her)
                UNION ALL SELECT 'recheck', n FROM recheck WHERE lift IN (SELECT n FROM lift WHERE cow IN her)
                UNION ALL SELECT 'foot', n FROM foot WHERE lift IN (SELECT n FROM lift WHERE cow IN her)
                UNION ALL SELECT 'finding', n FROM finding WHERE foot IN (SELECT n FROM her_feet)
                UNION ALL SELECT 'foot_action', n FROM foot_action WHERE foot IN (SELECT n FROM her_feet)
                UNION ALL SELECT 'photo', n FROM photo WHERE foot IN (SELECT n FROM her_feet)
                UNION ALL SELECT 'block', n FROM block WHERE cow IN her
            ),
            her_feet AS (SELECT n FROM foot WHERE lift IN (SELECT n FROM lift WHERE cow IN her))
            """;

    private History() {}

    static List<Change> changes(Handle h, Optional<CowId> cow, int atMost) {
        String sql = (cow.isPresent() ? OF_HER : "")
                + """
                SELECT s.at_us, s.who, s.what, g.kind, json_extract(g.now, '$.uuid') AS uuid, g.was, g.now
                """
                // Her rows first, then their changes: the other way round every change of the book would be read.
                + (cow.isPresent()
                        ? "FROM rows r CROSS JOIN change g ON g.kind = r.kind AND g.row = r.row\n"
                        : "FROM change g\n")
                + "JOIN step s ON s.n = g.step ORDER BY g.n DESC LIMIT :most";
        return h.createQuery(sql)
                .configure(SqlStatements.class, s -> s.setUnusedBindingAllowed(true))
                .bind("cow", cow.map(c -> c.uuid().toString()).orElse(""))
                .bind("most", atMost)
                .map((rs, ctx) -> new Change(
                        Columns.instant(rs.getLong("at_us")),
                        rs.getString("who"),
                        rs.getString("what"),
                        rs.getString("kind"),
                        UUID.fromString(rs.getString("uuid")),
                        Columns.text(rs, "was"),
                        rs.getString("now")))
                .list();
    }
}
