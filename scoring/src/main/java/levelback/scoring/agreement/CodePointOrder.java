package levelback.scoring.agreement;

import java.util.Comparator;

/** Names by Unicode code point: unlike {@link String#compareTo}, characters past U+FFFF stand last. */
enum CodePointOrder implements Comparator<String> {
    /** The one order. */
    ORDER;

    @Override
    public int compare(String a, String b) {
        int common = Math.min(a.length(), b.length());
        for (int i = 0; i < common; i++) {
            char x = a.charAt(i);
            char y = b.charAt(i);
            if (x != y) {
                boolean high = Character.isSurrogate(x);
                return high == Character.isSurrogate(y) ? Character.compare(x, y) : high ? 1 : -1;
            }
        }
        return Integer.compare(a.length(), b.length());
    }
}
