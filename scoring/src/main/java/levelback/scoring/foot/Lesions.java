package levelback.scoring.foot;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The harmonised list of claw lesions with its codes, in our own words.
 *
 * <p>References: ICAR Claw Health Atlas, 1st edition 2015, 2nd edition 2020 (codes and definitions from memory); usual
 * zones: International Lameness Committee 2008, in part from memory. The grouping and the alarm flag are common practice,
 * no single source; the flag says which lesions are acutely painful and want action that day.
 */
public final class Lesions {

    /** Written where a foot was lifted and nothing was found. */
    public static final String NONE = "NONE";

    /** Written where a control lift was drawn but not done. */
    public static final String REFUSED = "REFUSED";

    private static final List<Lesion> ALL = List.of(
            skin(
                    "DD",
                    "digital dermatitis",
                    "digital dermatitis",
                    "infection of the skin with erosion or ulcer, later thick or wart-like skin",
                    true,
                    List.of(10, 9, 0),
                    true),
            skin(
                    "ID",
                    "interdigital dermatitis",
                    "cleft dermatitis",
                    "mild dermatitis around the claws that is not digital" + " dermatitis",
                    false,
                    List.of(0),
                    false),
            skin(
                    "IP",
                    "interdigital phlegmon (foul)",
                    "foul",
                    "even, painful swelling of the foot with smell and sudden" + " lameness",
                    true,
                    List.of(0, 9),
                    false),
            skin(
                    "IH",
                    "interdigital hyperplasia",
                    "growth in cleft",
                    "fibrous growth between the claws",
                    false,
                    List.of(0),
                    false),
            skin(
                    "HHE",
                    "heel horn erosion",
                    "heel erosion",
                    "pits to grooves in the shape of a V at the bulb, sometimes" + " down to the corium",
                    false,
                    List.of(6),
                    false),
            horn(
                    "SU",
                    "sole ulcer",
                    "sole ulcer",
                    "horn defect with the corium exposed, at the usual site of the sole",
                    true,
                    List.of(4)),
            horn(
                    "BU",
                    "bulb ulcer",
                    "bulb ulcer",
                    "horn defect with the corium exposed, at the bulb",
                    true,
                    List.of(6)),
            horn(
                    "TU",
                    "toe ulcer",
                    "toe ulcer",
                    "horn defect with the corium exposed, at the toe",
                    true,
                    List.of(1, 5)),
            horn("TN", "toe necrosis", "toe necrosis", "death of the tip of the toe, bone included", true, List.of(1)),
            horn(
                    "SH",
                    "sole haemorrhage",
                    "haemorrhage",
                    "pale yellow to red staining of sole or white line",
                    false,
                    List.of(5, 4)),
            horn(
                    "SHD",
                    "sole haemorrhage, diffuse",
                    "diffuse haemorrhage",
                    "staining of sole or white line that is" + " spread out",
                    false,
                    List.of(5, 4)),
            horn(
                    "SHC",
                    "sole haemorrhage, circumscribed",
                    "haemorrhage spot",
                    "staining of sole or white line with a" + " clear edge",
                    false,
                    List.of(4, 5)),
            horn(
                    "WLF",
                    "white line fissure",
                    "white line fissure",
                    "separation of the white line that stays after" + " balancing",
                    false,
                    List.of(3, 2, 1)),
            horn("WLA", "white line abscess", "white line abscess", "pus under the white line", true, List.of(3, 2, 1)),
            horn("DS", "double sole", "double sole", "two layers of under-run sole horn", false, List.of(5, 4, 6)),
            horn("HF", "horn fissure", "wall crack", "crack in the wall", false, List.of(7, 8)),
            horn("HFA", "horn fissure, axial", "inner wall crack", "crack in the inner wall", false, List.of(11, 12)),
            horn("HFH", "horn fissure, horizontal", "crack across", "crack across the wall", false, List.of(7, 8)),
            horn("HFV", "horn fissure, vertical", "crack lengthwise", "crack along the wall", false, List.of(7, 8)),
            horn("TS", "thin sole", "thin sole", "sole that yields to finger pressure", false, List.of(5, 4)),
            shape(
                    "SW",
                    "swelling of coronet or bulb",
                    "swelling",
                    "swelling of the tissue above the horn, from another" + " cause than foul",
                    true,
                    List.of(9)),
            shape(
                    "AC",
                    "asymmetric claws",
                    "uneven claws",
                    "clear difference in width, height or length that trimming" + " does not balance",
                    false,
                    List.of()),
            shape(
                    "CC",
                    "corkscrew claw",
                    "corkscrew",
                    "twisted claw; its front edge is not straight",
                    false,
                    List.of()),
            shape("CD", "concave dorsal wall", "concave wall", "front wall hollow", false, List.of(7)),
            shape("SC", "scissor claws", "scissor", "tips of the toes cross", false, List.of()));

    private static final Map<String, Lesion> BY_CODE = new LinkedHashMap<>();

    /** Groups asked for by one code; the group itself may stand in a file too. */
    private static final Map<String, Set<String>> GROUPS = Map.of(
            "U", Set.of("SU", "BU", "TU"),
            "WL", Set.of("WLF", "WLA"),
            "SH", Set.of("SHD", "SHC"),
            "HF", Set.of("HFA", "HFH", "HFV"));

    static {
        ALL.forEach(lesion -> BY_CODE.put(lesion.code(), lesion));
    }

    private Lesions() {}

    /** Every lesion, in the order of the keys. */
    public static List<Lesion> all() {
        return ALL;
    }

    /** Those with a key of their own on the Trim page; the finer kinds of SH and HF stand behind their key. */
    public static List<Lesion> withKey() {
        return ALL.stream()
                .filter(l ->
                        !membersOf("SH").contains(l.code()) && !membersOf("HF").contains(l.code()))
                .toList();
    }

    /** The lesion with that code, in any case of letters; empty where the list has none. */
    public static Optional<Lesion> byCode(String code) {
        return Optional.ofNullable(BY_CODE.get(code.strip().toUpperCase(Locale.ROOT)));
    }

    /** The codes of a group: {@code U}, {@code WL}, {@code SH}, {@code HF}; empty for every other code. */
    public static Set<String> membersOf(String group) {
        return GROUPS.getOrDefault(group, Set.of());
    }

    /** Whether a trim row may carry this code without a note: a lesion, a group, {@code NONE} or {@code REFUSED}. */
    public static boolean isKnown(String code) {
        return BY_CODE.containsKey(code) || GROUPS.containsKey(code) || code.equals(NONE) || code.equals(REFUSED);
    }

    /** Lesions usually seen in a zone, likeliest first. */
    public static List<Lesion> usualIn(int zone) {
        return ALL.stream()
                .filter(l -> l.usualZones().contains(zone))
                .sorted(java.util.Comparator.comparingInt(l -> l.usualZones().indexOf(zone)))
                .toList();
    }

    private static Lesion skin(
            String code,
            String name,
            String key,
            String definition,
            boolean alarm,
            List<Integer> zones,
            boolean staged) {
        return new Lesion(code, name, key, definition, Lesion.Group.SKIN, alarm, zones, staged);
    }

    private static Lesion horn(
            String code, String name, String key, String definition, boolean alarm, List<Integer> zones) {
        return new Lesion(code, name, key, definition, Lesion.Group.HORN, alarm, zones, false);
    }

    private static Lesion shape(
            String code, String name, String key, String definition, boolean alarm, List<Integer> zones) {
        return new Lesion(code, name, key, definition, Lesion.Group.SHAPE_AND_SWELLING, alarm, zones, false);
    }
}
