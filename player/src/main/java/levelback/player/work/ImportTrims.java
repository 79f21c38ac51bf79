package levelback.player.work;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import levelback.scoring.foot.Claw;
import levelback.scoring.foot.Lesions;
import levelback.scoring.value.Leg;
import levelback.store.book.Book;
import levelback.store.exchange.TableSource;
import levelback.store.exchange.TrimTable;
import levelback.store.herd.CowId;
import levelback.store.herd.Herd;
import levelback.store.herd.PersonId;
import levelback.store.trim.Finding;
import levelback.store.trim.FindingId;
import levelback.store.trim.Foot;
import levelback.store.trim.FootCard;
import levelback.store.trim.FootId;
import levelback.store.trim.Lift;
import levelback.store.trim.LiftCard;
import levelback.store.trim.LiftId;

/** Takes rows of what was found at the chute: one card for a cow and day, one foot for a leg, one finding for a row. */
final class ImportTrims {

    private static final String CLAW_NOT_SAID = "claw not said";

    private final Book book;
    private final Herd herd;
    private final CowsOfHerd cows;
    private final TakenRows rows;
    private final Map<Key, Card> cards = new HashMap<>();

    ImportTrims(Book book, Herd herd, CowsOfHerd cows, TakenRows rows) {
        this.book = book;
        this.herd = herd;
        this.cows = cows;
        this.rows = rows;
    }

    private record Key(CowId cow, LocalDate date) {}

    private static final class OnFoot {
        private Foot foot;
        /** Findings that the book held before and no row has named yet. */
        private final List<Finding> waiting;

        private OnFoot(Foot foot, List<Finding> waiting) {
            this.foot = foot;
            this.waiting = new ArrayList<>(waiting);
        }
    }

    private static final class Card {
        private final Lift lift;
        private final boolean wasThere;
        private final Map<Leg, OnFoot> feet = new EnumMap<>(Leg.class);

        private Card(Lift lift, boolean wasThere) {
            this.lift = lift;
            this.wasThere = wasThere;
        }
    }

    void take(TableSource source, ImportOrder order) {
        TrimTable table = TrimTable.read(source, order.mapping().of(TrimTable.FORM), rows);
        rows.note(table.notes());
        LocalDate first = LocalDate.MAX;
        LocalDate last = LocalDate.MIN;
        Map<Key, TrimTable.Line> chances = new HashMap<>();
        for (TrimTable.Line line : table.lines()) {
            LocalDate date = line.row().date();
            first = date.isBefore(first) ? date : first;
            last = date.isAfter(last) ? date : last;
        }
        for (LiftCard card : book.trim().cardsOf(herd.id(), first, last)) {
            Card there = new Card(card.lift(), true);
            for (FootCard foot : card.feet()) {
                there.feet.put(foot.foot().leg(), new OnFoot(foot.foot(), foot.findings()));
            }
            cards.put(new Key(card.lift().cow(), card.lift().date()), there);
        }
        PersonId trimmer = new PeopleByName(book).of(order.scorer().orElse(""));
        Map<TrimTable.Line, Key> keys = new HashMap<>();
        for (TrimTable.Line line : table.lines()) {
            Optional<String> wrong = CowsOfHerd.wrongNumber(line.row().cow());
            if (wrong.isPresent()) {
                rows.refuse(line.line(), wrong.get());
                continue;
            }
            Key key = new Key(
                    cows.knownOrNew(line.row().cow(), line.row().date()),
                    line.row().date());
            keys.put(line, key);
            if (line.row().chance().isPresent()) {
                chances.putIfAbsent(key, line);
            }
        }
        for (TrimTable.Line line : table.lines()) {
            Key key = keys.get(line);
            if (key == null) {
                continue;
            }
            OptionalDouble chance = Optional.ofNullable(chances.get(key))
                    .map(l -> l.row().chance())
                    .orElse(OptionalDouble.empty());
            Optional<String> wrong = wrong(line, key, chance);
            if (wrong.isPresent()) {
                rows.refuse(line.line(), wrong.get());
            } else {
                rows.taken(row(line, key, chance, trimmer));
            }
        }
    }

    private Optional<String> wrong(TrimTable.Line line, Key key, OptionalDouble chance) {
        boolean refusal = line.row().lesion().equals(Lesions.REFUSED);
        if (!refusal && line.row().leg().isEmpty()) {
            return Optional.of(
                    "column leg is empty; the book keeps what was found by the foot, write LF, RF, LH or RH.");
        }
        if (line.row().chance().isPresent() && !line.row().chance().equals(chance)) {
            return Optional.of("column chance differs from the chance of the same cow and day on another line; one draw"
                    + " has one chance.");
        }
        Card card = cards.get(key);
        if (card == null) {
            return Optional.empty();
        }
        if (card.lift.refused() != refusal) {
            return Optional.of("the lift of cow " + line.row().cow() + " on "
                    + line.row().date() + " is both refused and done; keep one of the two.");
        }
        return Optional.empty();
    }

    /** Whether the row said anything new. */
    private boolean row(TrimTable.Line line, Key key, OptionalDouble chance, PersonId trimmer) {
        String lesion = line.row().lesion();
        boolean refused = lesion.equals(Lesions.REFUSED);
        Card card = cards.get(key);
        boolean isNew = card == null;
        if (card == null) {
            Lift lift = new Lift(LiftId.fresh(), key.cow(), key.date(), trimmer, chance, refused, true);
            book.trim().put(lift);
            card = new Card(lift, false);
            cards.put(key, card);
        }
        if (refused) {
            return isNew;
        }
        Leg leg = line.row().leg().orElseThrow();
        boolean clean = lesion.equals(Lesions.NONE);
        OnFoot on = card.feet.get(leg);
        if (on == null) {
            on = new OnFoot(new Foot(FootId.fresh(), card.lift.id(), leg, clean), List.of());
            book.trim().put(on.foot);
            card.feet.put(leg, on);
            isNew = true;
        }
        if (clean) {
            return isNew || !card.wasThere;
        }
        Finding found = finding(line, on.foot);
        for (Finding there : on.waiting) {
            if (sameFinding(there, found)) {
                on.waiting.remove(there);
                return false;
            }
        }
        if (on.foot.noLesion()) {
            on.foot = new Foot(on.foot.id(), on.foot.lift(), leg, false);
            book.trim().put(on.foot);
        }
        book.trim().put(found);
        return true;
    }

    private static Finding finding(TrimTable.Line line, Foot foot) {
        return new Finding(
                FindingId.fresh(),
                foot.id(),
                line.claw().orElse(Claw.BOTH),
                line.zone(),
                line.zone().isPresent(),
                line.row().lesion(),
                line.severity(),
                line.row().stage(),
                line.claw().isPresent() ? "" : CLAW_NOT_SAID);
    }

    private static boolean sameFinding(Finding one, Finding other) {
        return one.claw() == other.claw()
                && one.zone().equals(other.zone())
                && one.lesion().equals(other.lesion())
                && one.severity().equals(other.severity())
                && one.stage().equals(other.stage());
    }
}
