package levelback.player.work.export;

import java.util.List;

/** What the columns of the tables are, for the package's description and its codebook. */
final class PackageFields {

    private PackageFields() {}

    /**
     * A column.
     *
     * @param type of the Table Schema: string, date, number, integer
     * @param meaning in words
     * @param values allowed texts; empty where any
     */
    record Field(String name, String type, boolean required, String meaning, List<String> values) {
        Field {
            values = List.copyOf(values);
        }
    }

    record Table(String name, String title, List<Field> fields) {
        Table {
            fields = List.copyOf(fields);
        }
    }

    private static final List<String> LEGS = List.of("LF", "RF", "LH", "RH");

    static List<Table> tables() {
        return List.of(
                new Table(
                        "cows",
                        "Cows of the herd",
                        List.of(
                                needed("cow", "string", "the cow, the same in every table; zeros in front count"),
                                free("official_id", "string", "official number"),
                                free("tag", "string", "transponder; text, as fifteen digits do not fit a number"),
                                free("name", "string", "name"),
                                free("birth", "date", "day of birth"),
                                free("calving", "date", "day of her last calving"),
                                free("parity", "integer", "calvings so far"))),
                new Table(
                        "scores",
                        "Gait scores in force",
                        List.of(
                                needed("cow", "string", "the cow"),
                                needed("date", "date", "day of the visit"),
                                needed("score", "number", "gait score on the scale of its row; higher is lamer"),
                                needed("scorer", "string", "who scored"),
                                of("leg", "leg that the scorer named; empty where none", LEGS),
                                needed("scale", "string", "gait scale, see scales.csv"))),
                new Table(
                        "trims",
                        "What was found on lifted feet; a cow with no row was not lifted",
                        List.of(
                                needed("cow", "string", "the cow"),
                                needed("date", "date", "day in the chute"),
                                of("leg", "the foot; empty where a drawn lift was not done", LEGS),
                                of("claw", "the claw", List.of("lateral", "medial", "interdigital", "both")),
                                free("zone", "integer", "zone of the claw map, 0 to 12"),
                                needed(
                                        "lesion",
                                        "string",
                                        "ICAR claw health code; NONE where the foot was lifted and nothing found,"
                                                + " REFUSED where a drawn lift was not done"),
                                free("severity", "integer", "1 mild, 2 moderate, 3 severe"),
                                of(
                                        "stage",
                                        "stage of digital dermatitis",
                                        List.of("M0", "M1", "M2", "M3", "M4", "M4.1")),
                                free("chance", "number", "chance with which she was drawn as a control lift, 0 to 1"))),
                new Table(
                        "ratings",
                        "Scores of one cow on one visit by two or more people",
                        List.of(
                                needed("scorer", "string", "who scored"),
                                needed("clip", "string", "the visit and the cow"),
                                needed("score", "number", "gait score; higher is lamer"),
                                needed("cow", "string", "the cow"),
                                needed("session", "integer", "1 first time, 2 repeat"))),
                new Table(
                        "scales",
                        "Levels of the gait scales used",
                        List.of(
                                needed("scale", "string", "gait scale"),
                                needed("score", "number", "level; higher is lamer"),
                                needed("label", "string", "what the level means"),
                                needed("lame_from", "number", "a score at or above it counts as lame"),
                                needed("severe_from", "number", "a score at or above it counts as severely lame"))));
    }

    private static Field needed(String name, String type, String meaning) {
        return new Field(name, type, true, meaning, List.of());
    }

    private static Field free(String name, String type, String meaning) {
        return new Field(name, type, false, meaning, List.of());
    }

    private static Field of(String name, String meaning, List<String> values) {
        return new Field(name, "string", false, meaning, values);
    }
}
