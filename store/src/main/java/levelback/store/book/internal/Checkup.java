package levelback.store.book.internal;

import java.util.ArrayList;
import java.util.List;
import levelback.store.book.BookCheck;
import org.jdbi.v3.core.Handle;

/** Looks a book through. */
final class Checkup {

    private static final int PROBLEMS_SHOWN = 100;

    private Checkup() {}

    static BookCheck of(Handle h) {
        List<String> problems = new ArrayList<>();
        h.createQuery("PRAGMA integrity_check(" + PROBLEMS_SHOWN + ")").mapTo(String.class).list().stream()
                .filter(line -> !line.equals("ok"))
                .forEach(line -> problems.add("The file is damaged: " + line + "."));
        h.createQuery("PRAGMA foreign_key_check")
                .map((rs, ctx) -> "A row of " + rs.getString("table") + " (number " + rs.getLong("rowid")
                        + ") belongs to a row of " + rs.getString("parent") + " that is not there.")
                .list()
                .forEach(problems::add);
        h.createQuery("""
                        SELECT count(*) AS n FROM score WHERE gone = 0 AND in_force = 1
                        GROUP BY visit, cow, scorer, ifnull(leg, '') HAVING count(*) > 1""")
                .mapTo(Long.class)
                .list()
                .forEach(n -> problems.add(n + " scores are in force where one may be."));
        h.createQuery("""
                        SELECT DISTINCT k.number FROM cow_number k JOIN cow_number o
                            ON o.herd = k.herd AND o.number = k.number AND o.cow <> k.cow AND o.gone = 0
                                AND k.from_day <= ifnull(o.until_day, '9999') AND o.from_day <= ifnull(k.until_day, '9999')
                        WHERE k.gone = 0 ORDER BY k.number LIMIT\s""" + PROBLEMS_SHOWN)
                .mapTo(String.class)
                .list()
                .forEach(number -> problems.add("Number " + number + " is carried by two cows at a time."));
        int schema = h.createQuery("PRAGMA user_version").mapTo(Integer.class).one();
        return new BookCheck(problems, schema, counts(h));
    }

    private static BookCheck.Counts counts(Handle h) {
        return new BookCheck.Counts(
                count(h, "herd WHERE gone = 0"),
                count(h, "cow WHERE gone = 0"),
                count(h, "visit WHERE gone = 0"),
                count(h, "recording WHERE gone = 0"),
                count(h, "pass WHERE gone = 0"),
                count(h, "score WHERE gone = 0 AND in_force = 1"),
                count(
                        h,
                        "lift l WHERE gone = 0 AND (refused = 1 OR EXISTS"
                                + " (SELECT 1 FROM foot f WHERE f.lift = l.n AND f.gone = 0))"));
    }

    private static long count(Handle h, String what) {
        return h.createQuery("SELECT count(*) FROM " + what).mapTo(Long.class).one();
    }
}
