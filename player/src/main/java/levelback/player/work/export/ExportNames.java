package levelback.player.work.export;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import levelback.store.herd.Cow;
import levelback.store.herd.CowId;
import levelback.store.herd.NumberSpan;
import levelback.store.herd.Person;
import levelback.store.herd.PersonId;

/**
 * What cows and people are called in one export, each name for one only. A cow goes by the number she carried last; a
 * number that another cow carries now is followed by {@code #2}. Pseudonyms are numbered in the order of the book's own
 * random identities, which says nothing about number, name or age, and are the same in every file of the export.
 */
final class ExportNames {

    private static final int LONGEST_NUMBER = 20;

    private final boolean pseudonyms;
    private final Map<CowId, String> cows = new HashMap<>();
    private final Map<PersonId, String> people = new HashMap<>();
    private final Set<String> shared = new TreeSet<>();

    ExportNames(HerdContents herd, boolean pseudonyms) {
        this.pseudonyms = pseudonyms;
        if (pseudonyms) {
            int n = 0;
            for (Cow cow : sorted(herd.cows(), c -> c.id().uuid().toString())) {
                cows.put(cow.id(), String.format(Locale.ROOT, "C%04d", ++n));
            }
            n = 0;
            for (Person person : sorted(herd.people(), p -> p.id().uuid().toString())) {
                people.put(person.id(), "S" + ++n);
            }
            return;
        }
        nameCows(herd);
        Set<String> taken = new HashSet<>();
        for (Person person : herd.people()) {
            String name = person.name().isBlank() ? "not said" : oneLine(person.name());
            String free = name;
            for (int n = 2; !taken.add(free.toLowerCase(Locale.ROOT)); n++) {
                free = name + " (" + n + ")";
            }
            people.put(person.id(), free);
        }
    }

    private void nameCows(HerdContents herd) {
        Map<CowId, NumberSpan> last = new HashMap<>();
        for (NumberSpan span : herd.numbers()) {
            last.merge(span.cow(), span, (a, b) -> b.from().isBefore(a.from()) ? a : b);
        }
        // Who carries a number now comes before those who did.
        List<NumberSpan> order = new ArrayList<>(last.values());
        order.sort(Comparator.comparing((NumberSpan s) -> s.until().isPresent())
                .thenComparing(NumberSpan::from, Comparator.reverseOrder())
                .thenComparing(s -> s.cow().uuid().toString()));
        Set<String> taken = new HashSet<>();
        for (NumberSpan span : herd.numbers()) {
            taken.add(span.number());
        }
        Set<String> used = new HashSet<>();
        for (NumberSpan span : order) {
            String number = span.number();
            if (!used.add(number)) {
                shared.add(number);
                String root = number.length() > LONGEST_NUMBER - 4 ? number.substring(0, LONGEST_NUMBER - 4) : number;
                int n = 2;
                while (!used.add(root + "#" + n) || taken.contains(root + "#" + n)) {
                    n++;
                }
                number = root + "#" + n;
            }
            cows.put(span.cow(), number);
        }
        for (Cow cow : herd.cows()) {
            cows.computeIfAbsent(cow.id(), id -> id.uuid().toString().substring(0, 13));
        }
    }

    boolean pseudonyms() {
        return pseudonyms;
    }

    String of(CowId cow) {
        return cows.getOrDefault(cow, "");
    }

    String of(PersonId person) {
        return people.getOrDefault(person, "");
    }

    /** Numbers that more than one cow carried, so that the earlier one has another name here. */
    Set<String> shared() {
        return Set.copyOf(shared);
    }

    int cowCount() {
        return cows.size();
    }

    /** Text safe for one line: line breaks become a blank. */
    static String oneLine(String text) {
        return text.replaceAll("\\p{Cntrl}+", " ").strip();
    }

    private static <T> List<T> sorted(List<T> all, java.util.function.Function<T, String> by) {
        return all.stream().sorted(Comparator.comparing(by)).toList();
    }
}
