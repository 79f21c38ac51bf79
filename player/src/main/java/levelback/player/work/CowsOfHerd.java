package levelback.player.work;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import levelback.store.book.Book;
import levelback.store.herd.Cow;
import levelback.store.herd.CowId;
import levelback.store.herd.HerdId;
import levelback.store.herd.NumberSpan;

/** The cows of a herd by number and day, for many rows at a time; a number that nobody carries is listed as a new cow. */
final class CowsOfHerd {

    private static final int LONGEST = 20;
    private static final Pattern ROUNDED = Pattern.compile("\\d+([.,]\\d+)?[eE]\\+\\d+");

    private final Book book;
    private final HerdId herd;
    private final Map<String, List<NumberSpan>> spans = new HashMap<>();
    private final List<String> made = new ArrayList<>();

    CowsOfHerd(Book book, HerdId herd) {
        this.book = book;
        this.herd = herd;
        for (NumberSpan span : book.herd().numbersOf(herd)) {
            spans.computeIfAbsent(span.number(), n -> new ArrayList<>()).add(span);
        }
    }

    /** Why a text cannot be a management number; empty where it can. */
    static Optional<String> wrongNumber(String number) {
        if (ROUNDED.matcher(number).matches()) {
            return Optional.of(
                    "cow " + number + " was rounded by a spreadsheet; format the column as text and export it again.");
        }
        if (number.length() > LONGEST || number.codePoints().anyMatch(Character::isISOControl)) {
            return Optional.of("a cow number has 1 to " + LONGEST + " signs on one line.");
        }
        return Optional.empty();
    }

    /** Who carried the number on that day, or came to carry it later. */
    Optional<CowId> known(String number, LocalDate day) {
        for (NumberSpan span : spans.getOrDefault(number, List.of())) {
            if (span.until().map(until -> !until.isBefore(day)).orElse(true)) {
                return Optional.of(span.cow());
            }
        }
        return Optional.empty();
    }

    /** The same, made if nobody did. */
    CowId knownOrNew(String number, LocalDate day) {
        Optional<CowId> known = known(number, day);
        if (known.isPresent()) {
            return known.get();
        }
        Cow cow = Cow.numbered(herd, number);
        add(cow, day);
        made.add(number);
        return cow.id();
    }

    /** Puts a new cow into the book. */
    void add(Cow cow, LocalDate from) {
        book.herd().put(cow, from);
        spans.computeIfAbsent(cow.number(), n -> new ArrayList<>())
                .add(new NumberSpan(cow.id(), cow.number(), from, Optional.empty()));
    }

    /** Numbers that were not known before. */
    List<String> made() {
        return made;
    }
}
