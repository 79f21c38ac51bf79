package levelback.player.trim;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.ResourceBundle;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The words of the page: cautions are there, and nothing that could be taken for advice on a drug. */
class TrimWordsTest {

    private static String resource(String name) throws Exception {
        try (InputStream in = Objects.requireNonNull(TrimWordsTest.class.getResourceAsStream(name))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    /**
     * Common groups and names of cattle medicines (general knowledge, from memory); none may stand in the words of the page.
     */
    private static final List<String> MEDICINES = List.of(
            "cillin",
            "cycline",
            "ceftiofur",
            "tylosin",
            "sulfa",
            "sulpha",
            "mycin",
            "micin",
            "quinolone",
            "floxacin",
            "profen",
            "meloxicam",
            "flunixin",
            "carprofen",
            "tolfenamic",
            "dexameth",
            "prednis",
            "lidocaine",
            "procaine",
            "xylazine",
            "salicyl",
            "formalin",
            "copper",
            "antibiotic",
            "NSAID",
            "painkiller");

    @Test
    void noDrugNameDoseOrWaitingTimeStandsInTheWords() throws Exception {
        String words = resource("/levelback/player/trim/Trim.properties");
        for (String medicine : MEDICINES) {
            assertThat(words.toLowerCase(Locale.ROOT)).doesNotContain(medicine.toLowerCase(Locale.ROOT));
        }
        assertThat(Pattern.compile(
                                "\\d+\\s*(mg|ml|g/|iu|units|h(ours)? milk|days? milk|days? meat|milkings)",
                                Pattern.CASE_INSENSITIVE)
                        .matcher(words)
                        .find())
                .isFalse();
        // The only figure of days in the words is the day to look again.
        assertThat(Pattern.compile("\\b\\d+ days")
                        .matcher(words)
                        .results()
                        .map(m -> m.group())
                        .distinct())
                .containsOnly("28 days");
    }

    @Test
    void cautionsForChuteGrinderAndMedicinesDeferToVetLabelAndLaw() {
        ResourceBundle words = ResourceBundle.getBundle("levelback.player.trim.Trim");
        assertThat(words.getString("safety.chute")).contains("Chute");
        assertThat(words.getString("safety.grinder")).contains("guard");
        assertThat(words.getString("safety.medicine")).contains("prescribed").contains("label");
        assertThat(words.getString("safety.vet")).contains("vet").contains("law");
        assertThat(words.getString("safety.line")).contains("Vet, label and local law");
        assertThat(words.getString("medicine.means")).contains("kept as typed");
    }

    @Test
    void daysAreReadAsPeopleTypeThem() {
        TrimWords words = new TrimWords();
        LocalDate from = LocalDate.of(2026, 4, 14);
        LocalDate day = LocalDate.of(2026, 5, 12);
        assertThat(words.readDay("2026-05-12", from)).contains(day);
        assertThat(words.readDay(" 12.5.2026 ", from)).contains(day);
        assertThat(words.readDay("+28", from)).contains(day);
        assertThat(words.readDay(words.day(day), from)).contains(day);
        assertThat(words.readDay("soon", from)).isEmpty();
        assertThat(words.readDay("31.2.2026 x", from)).isEmpty();
    }

    @Test
    void everyLesionOfTheKeysIsOnTheListAndNoneIsMissing() {
        assertThat(LesionKeys.allWithFiner())
                .containsExactlyInAnyOrderElementsOf(levelback.scoring.foot.Lesions.all().stream()
                        .map(levelback.scoring.foot.Lesion::code)
                        .toList());
        assertThat(LesionKeys.PAD.stream().flatMap(List::stream))
                .containsExactlyInAnyOrderElementsOf(LesionKeys.allWithFiner());
        // Typing works letter by letter only if no typed code is the beginning of another.
        for (String code : LesionKeys.all()) {
            assertThat(LesionKeys.beginningWith(code)).containsExactly(code);
        }
    }

    /** International Lameness Committee map: the sole ulcer's usual zone is 4, white line lesions' is 3, foul lies in 0. */
    @Test
    void aZoneBringsItsUsualCodesFirst() {
        assertThat(LesionKeys.usualIn(4).get(0)).isEqualTo("SU");
        assertThat(LesionKeys.usualIn(3)).startsWith("WLF", "WLA");
        assertThat(LesionKeys.usualIn(0)).contains("IP", "ID", "IH");
        assertThat(LesionKeys.usualIn(10)).startsWith("DD");
    }
}
