package levelback.player.trim;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import levelback.scoring.foot.Lesion;
import levelback.scoring.foot.Lesions;

/** Where each lesion's key lies on the page and on the number pad. */
final class LesionKeys {

    /** The twenty codes of the page, in reading order, by group. */
    static final List<String> SKIN = List.of("DD", "ID", "IP", "IH", "HHE");

    static final List<String> HORN = List.of("SU", "BU", "TU", "TN", "SH", "WLF", "WLA", "DS", "HF", "TS");
    static final List<String> SHAPE = List.of("SW", "AC", "CC", "CD", "SC");

    /** Finer kinds of SH and HF, behind <em>More</em>. */
    static final List<String> FINER = List.of("SHD", "SHC", "HFA", "HFH", "HFV");

    /** Pages of nine, keys in the order 7 8 9, 4 5 6, 1 2 3 of the number pad: the commonest at the chute first (our choice). */
    static final List<List<String>> PAD = List.of(
            List.of("SU", "WLA", "DD", "WLF", "SH", "HHE", "IP", "SW", "TU"),
            List.of("BU", "TN", "DS", "HF", "TS", "ID", "IH", "AC", "CC"),
            List.of("CD", "SC", "SHD", "SHC", "HFA", "HFH", "HFV"));

    private static final int[] PAD_DIGITS = {7, 8, 9, 4, 5, 6, 1, 2, 3};

    private LesionKeys() {}

    /** The twenty codes of the page; any of them can be typed, because none begins with another. */
    static List<String> all() {
        List<String> codes = new ArrayList<>(SKIN);
        codes.addAll(HORN);
        codes.addAll(SHAPE);
        return codes;
    }

    /** All codes that have a key, the finer kinds last. */
    static List<String> allWithFiner() {
        List<String> codes = all();
        codes.addAll(FINER);
        return codes;
    }

    /** The code under a digit of the number pad, on a page of it. */
    static Optional<String> onPad(int page, int digit) {
        List<String> keys = PAD.get(page % PAD.size());
        for (int i = 0; i < keys.size(); i++) {
            if (PAD_DIGITS[i] == digit) {
                return Optional.of(keys.get(i));
            }
        }
        return Optional.empty();
    }

    /** The digit of the n-th key of a pad page. */
    static int padDigit(int index) {
        return PAD_DIGITS[index];
    }

    /** Codes that are usual in a zone, likeliest first: those that name it first come before those that name it later. */
    static List<String> usualIn(int zone) {
        return allWithFiner().stream()
                .filter(code -> zones(code).contains(zone))
                .sorted(Comparator.comparingInt(code -> zones(code).indexOf(zone)))
                .toList();
    }

    private static List<Integer> zones(String code) {
        return Lesions.byCode(code).map(Lesion::usualZones).orElse(List.of());
    }

    /** Codes that begin with some letters. */
    static List<String> beginningWith(String letters) {
        return all().stream().filter(code -> code.startsWith(letters)).toList();
    }
}
