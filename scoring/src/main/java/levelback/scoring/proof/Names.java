package levelback.scoring.proof;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Texts as small numbers, first in the order they come, then in the order of the texts. */
final class Names {

    private final Map<String, Integer> numbers = new HashMap<>();
    private final List<String> texts = new ArrayList<>();
    private String last = "";
    private int numberOfLast = -1;

    /** The number of a text; a new one where it was not seen before. */
    int of(String text) {
        // Tables mostly come cow by cow.
        if (numberOfLast >= 0 && text.equals(last)) {
            return numberOfLast;
        }
        Integer known = numbers.get(text);
        if (known == null) {
            known = texts.size();
            numbers.put(text, known);
            texts.add(text);
        }
        last = text;
        numberOfLast = known;
        return known;
    }

    /** The number of a text seen before, or -1. */
    int find(String text) {
        Integer known = numbers.get(text);
        return known == null ? -1 : known;
    }

    int size() {
        return texts.size();
    }

    /** All texts, ascending. */
    String[] sorted() {
        String[] sorted = texts.toArray(String[]::new);
        Arrays.sort(sorted);
        return sorted;
    }

    /** The place of each number in {@link #sorted}. */
    int[] ranks() {
        String[] sorted = sorted();
        int[] ranks = new int[sorted.length];
        for (int rank = 0; rank < sorted.length; rank++) {
            ranks[find(sorted[rank])] = rank;
        }
        return ranks;
    }

    /** The rows in the order of their keys, equal keys as they came. */
    static int[] ascending(long[] keys) {
        int[] order = new int[keys.length];
        boolean sorted = true;
        long most = 0;
        for (int i = 0; i < keys.length; i++) {
            order[i] = i;
            sorted &= i == 0 || keys[i - 1] <= keys[i];
            most = Math.max(most, keys[i]);
        }
        if (sorted) {
            return order;
        }
        if (most < Long.MAX_VALUE / keys.length - 1) {
            long[] packed = new long[keys.length];
            for (int i = 0; i < keys.length; i++) {
                packed[i] = keys[i] * keys.length + i;
            }
            Arrays.sort(packed);
            for (int i = 0; i < keys.length; i++) {
                order[i] = (int) (packed[i] % keys.length);
            }
            return order;
        }
        List<Integer> rows = new ArrayList<>(keys.length);
        for (int i = 0; i < keys.length; i++) {
            rows.add(i);
        }
        rows.sort((a, b) -> Long.compare(keys[a], keys[b]));
        for (int i = 0; i < keys.length; i++) {
            order[i] = rows.get(i);
        }
        return order;
    }
}
