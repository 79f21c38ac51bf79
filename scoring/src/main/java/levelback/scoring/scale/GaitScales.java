package levelback.scoring.scale;

import java.util.List;
import java.util.Optional;

/**
 * The published gait scales that a herd may choose from. The words of each level are our own; {@link GaitScale#source()}
 * says where the scale was printed and what of it is from memory, to be checked against the original before it is relied
 * on.
 *
 * <p>A scale is never guessed from the numbers in a file: the same three classes have been printed as 0, 1, 2 and as 0,
 * 2, 3.
 */
public final class GaitScales {

    private static final GaitScale MOBILITY_0_3 = new GaitScale(
            "mobility-0-3",
            "AHDB mobility, 0–3",
            "AHDB, formerly DairyCo, mobility score sheet 2011",
            List.of(
                    level(0, "Even rhythm and even load on four feet, flat back, long strides possible"),
                    level(1, "Steps uneven or shortened, but the leg cannot be picked out at once"),
                    level(2, "Leg picked out at once, or clearly short strides; back usually arched"),
                    level(3, "As 2, and slower than a person walking briskly; falls behind sound cows")),
            2,
            3,
            1);

    private static final GaitScale LAMENESS_0_3_NZ = new GaitScale(
            "lameness-0-3-nz",
            "DairyNZ lameness, 0–3",
            "DairyNZ lameness score poster and web page 2023",
            List.of(
                    level(0, "Walks evenly and keeps pace; the hind foot lands in the print of the fore foot"),
                    level(1, "Uneven; the hind foot may miss the fore print; leg hard to tell"),
                    level(2, "Lame: hind foot falls short, leg can be told, back arched, head bobs"),
                    level(3, "Very lame: very slow, stops, large movements of the head")),
            2,
            3,
            1);

    private static final GaitScale GAIT_1_5 = new GaitScale(
            "gait-1-5",
            "Sprecher back and gait, 1–5",
            "Sprecher, Hostetler & Kaneene 1997, Theriogenology 47:1179; words of the levels from memory",
            List.of(
                    level(1, "Back flat standing and walking"),
                    level(2, "Back flat standing, arched walking; gait still normal"),
                    level(3, "Back arched standing and walking; stride cut short on one leg or more"),
                    level(4, "Back arched; sets her feet down one by one, with care; spares a leg or more"),
                    level(5, "As 4, and cannot or will hardly put weight on a leg")),
            3,
            4,
            1);

    private static final GaitScale GAIT_1_5_HALF = new GaitScale(
            "gait-1-5-half",
            "Flower & Weary overall gait, 1–5 by halves",
            "Flower & Weary 2006, J Dairy Sci 89:139; halves, words of the levels and cuts from memory",
            List.of(
                    level(1, "Smooth: flat back, steady head, hind feet in the fore prints, joints bend freely"),
                    level(1.5, "Between 1 and 2"),
                    level(2, "Not quite smooth: a small fault in one of back, head, tracking or joints"),
                    level(2.5, "Between 2 and 3"),
                    level(3, "Moves freely, but her gait is visibly compromised; a slight limp may show"),
                    level(3.5, "Between 3 and 4"),
                    level(4, "Clearly compromised: arched back, head bob, short strides, unwilling on a leg"),
                    level(4.5, "Between 4 and 5"),
                    level(5, "Severely restricted: moves only when driven, hardly loads a leg")),
            3,
            4,
            0.5);

    private static final GaitScale LAMENESS_1_5_HALF = new GaitScale(
            "lameness-1-5-half",
            "Manson & Leaver lameness, 1–5 by halves",
            "Manson & Leaver 1988; levels and cuts from memory",
            List.of(
                    level(1, "No swing of the legs in or out, no unevenness, no tenderness"),
                    level(1.5, "Slight swing of a leg in or out"),
                    level(2, "Slight unevenness or tenderness of the feet"),
                    level(2.5, "Uneven or tender, more than slightly; not lame"),
                    level(3, "Slightly lame; behaviour normal"),
                    level(3.5, "Obviously lame; has trouble turning"),
                    level(4, "Obviously lame; behaviour affected"),
                    level(4.5, "Has trouble getting up"),
                    level(5, "Extreme trouble getting up and walking")),
            3,
            4,
            0.5);

    private static final GaitScale STRIDES_1_5 = new GaitScale(
            "strides-1-5",
            "Winckler & Willen gait, 1–5",
            "Winckler & Willen 2001; levels and cuts from memory",
            List.of(
                    level(1, "Normal: timing and load of the steps equal"),
                    level(2, "Stiff or tender on her feet"),
                    level(3, "Short strides on one leg"),
                    level(4, "Short strides on more than one leg, or strong reluctance on one"),
                    level(5, "One leg not used, or strong reluctance on two or more")),
            3,
            4,
            1);

    private static final GaitScale LAMENESS_1_5 = new GaitScale(
            "lameness-1-5",
            "Thomsen lameness, 1–5",
            "Thomsen et al. 2008; levels and cuts from memory",
            List.of(
                    level(1, "Normal"),
                    level(2, "Walks unevenly"),
                    level(3, "Slightly lame"),
                    level(4, "Lame"),
                    level(5, "Severely lame")),
            3,
            4,
            1);

    private static final GaitScale WELFARE_0_2 = new GaitScale(
            "welfare-0-2",
            "Welfare Quality lameness, 0–2 (loose housed)",
            "Welfare Quality assessment protocol for cattle 2009; words of the levels from memory; tied cows are judged"
                    + " by other signs",
            List.of(
                    level(0, "Not lame: timing and load of the steps equal"),
                    level(1, "Lame: uneven footfall, limps on one leg"),
                    level(2, "Severely lame: strong reluctance on one leg, or more than one leg affected")),
            1,
            2,
            1);

    private static final GaitScale LIMP_1_3 = new GaitScale(
            "limp-1-3",
            "US dairy industry mobility, 1–3",
            "Trade interview on the national industry programme; the scale names no severe level of its own",
            List.of(level(1, "Sound"), level(2, "Stiff, or favours a leg slightly; no limp"), level(3, "Obvious limp")),
            3,
            3,
            1);

    private static final List<GaitScale> ALL = List.of(
            MOBILITY_0_3,
            LAMENESS_0_3_NZ,
            GAIT_1_5,
            GAIT_1_5_HALF,
            LAMENESS_1_5_HALF,
            STRIDES_1_5,
            LAMENESS_1_5,
            WELFARE_0_2,
            LIMP_1_3);

    private GaitScales() {}

    /** Every scale, in the order in which a person chooses from them. */
    public static List<GaitScale> all() {
        return ALL;
    }

    /** The scale with that id; empty where there is none. */
    public static Optional<GaitScale> byId(String id) {
        return ALL.stream().filter(scale -> scale.id().equals(id)).findFirst();
    }

    private static ScaleLevel level(double value, String text) {
        return new ScaleLevel(value, text);
    }
}
