package levelback.store.book.internal;

import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;
import levelback.store.book.StoreException;
import levelback.store.herd.CowId;
import levelback.store.herd.HerdId;

/** A cow's management number over time: one at a time for a cow, and one cow at a time for a number. */
final class CowNumbers {

    private CowNumbers() {}

    private record Held(long n, String number, LocalDate from, Optional<LocalDate> until) {}

    /** Lets her carry the number from a day on. */
    static void give(Pen pen, CowId cow, HerdId herd, String number, LocalDate from) {
        Optional<Held> now = held(pen, """
                k.cow = (SELECT n FROM cow WHERE uuid = :id) AND k.from_day <= :day
                    AND ifnull(k.until_day, '9999') >= :day""", cow.uuid(), number, from);
        if (now.isPresent() && now.get().number().equals(number)) {
            return;
        }
        Optional<Held> another = held(pen, """
                k.herd = (SELECT n FROM herd WHERE uuid = :id) AND k.number = :number AND k.from_day <= :day
                    AND ifnull(k.until_day, '9999') >= :day""", herd.uuid(), number, from);
        if (another.isPresent()) {
            throw new StoreException("Another cow of this herd has carried number " + number + " since "
                    + another.get().from() + "; end that first or give another number.");
        }
        if (now.isPresent() && now.get().from().equals(from)) {
            // The same day again: a slip put right, not a new number.
            pen.run(
                    "UPDATE cow_number SET number = ? WHERE n = ?",
                    number,
                    now.get().n());
            return;
        }
        Optional<Held> next = held(
                pen,
                "k.cow = (SELECT n FROM cow WHERE uuid = :id) AND k.from_day > :day ORDER BY k.from_day LIMIT 1",
                cow.uuid(),
                number,
                from);
        if (now.isEmpty() && next.isPresent() && next.get().number().equals(number)) {
            pen.run(
                    "UPDATE cow_number SET from_day = ? WHERE n = ?",
                    from.toString(),
                    next.get().n());
            return;
        }
        now.ifPresent(held -> pen.run(
                "UPDATE cow_number SET until_day = ? WHERE n = ?",
                from.minusDays(1).toString(),
                held.n()));
        Optional<LocalDate> until = now.flatMap(Held::until)
                .or(() -> next.map(held -> held.from().minusDays(1)))
                .or(() -> held(pen, """
                                k.herd = (SELECT n FROM herd WHERE uuid = :id) AND k.number = :number
                                    AND k.from_day > :day ORDER BY k.from_day LIMIT 1""", herd.uuid(), number, from)
                        .map(held -> held.from().minusDays(1)));
        pen.run(
                """
                INSERT INTO cow_number (uuid, cow, herd, number, from_day, until_day)
                VALUES (?, (SELECT n FROM cow WHERE uuid = ?), (SELECT n FROM herd WHERE uuid = ?), ?, ?, ?)""",
                UUID.randomUUID().toString(),
                cow.uuid().toString(),
                herd.uuid().toString(),
                number,
                from.toString(),
                Columns.argument(until));
    }

    private static Optional<Held> held(Pen pen, String condition, UUID id, String number, LocalDate day) {
        return pen.handle()
                .createQuery("SELECT k.n, k.number, k.from_day, k.until_day FROM cow_number k WHERE k.gone = 0 AND "
                        + condition)
                .bind("id", id.toString())
                .bind("number", number)
                .bind("day", day.toString())
                .configure(org.jdbi.v3.core.statement.SqlStatements.class, s -> s.setUnusedBindingAllowed(true))
                .map((rs, ctx) -> new Held(
                        rs.getLong("n"),
                        rs.getString("number"),
                        Columns.day(rs, "from_day"),
                        Columns.dayIfAny(rs, "until_day")))
                .findFirst();
    }
}
