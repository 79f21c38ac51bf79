package levelback.scoring.scale;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GaitScalesTest {

    /** Cuts as printed: DairyCo sheet 2011, DairyNZ 2023, Sprecher 1997 (over 2), US programme; the others from memory. */
    @ParameterizedTest
    @CsvSource({
        "mobility-0-3,0,3,4,2,3",
        "lameness-0-3-nz,0,3,4,2,3",
        "gait-1-5,1,5,5,3,4",
        "gait-1-5-half,1,5,9,3,4",
        "lameness-1-5-half,1,5,9,3,4",
        "strides-1-5,1,5,5,3,4",
        "lameness-1-5,1,5,5,3,4",
        "welfare-0-2,0,2,3,1,2",
        "limp-1-3,1,3,3,3,3"
    })
    void hasTheLevelsAndCutsInPrint(String id, double low, double high, int levels, double lame, double severe) {
        GaitScale scale = GaitScales.byId(id).orElseThrow();
        assertThat(scale.lowest()).isEqualTo(low);
        assertThat(scale.highest()).isEqualTo(high);
        assertThat(scale.levels()).hasSize(levels);
        assertThat(scale.lameCut()).isEqualTo(lame);
        assertThat(scale.severeCut()).isEqualTo(severe);
    }

    @Test
    void everyLevelCanBeWrittenAndHasItsOwnWords() {
        for (GaitScale scale : GaitScales.all()) {
            HashSet<String> words = new HashSet<>();
            double expected = scale.lowest();
            for (ScaleLevel level : scale.levels()) {
                assertThat(level.value()).isEqualTo(expected);
                assertThat(scale.allows(level.value())).isTrue();
                assertThat(words.add(level.text())).isTrue();
                expected += scale.step();
            }
            assertThat(scale.allows(scale.highest() + scale.step())).isFalse();
            assertThat(scale.allows(scale.lowest() - scale.step())).isFalse();
            assertThat(scale.allows(scale.lowest() + scale.step() / 2)).isFalse();
            assertThat(scale.allows(scale.lameCut())).isTrue();
            assertThat(scale.allows(scale.severeCut())).isTrue();
        }
    }

    @Test
    void idsAreUniqueAndAnUnknownOneIsEmpty() {
        assertThat(GaitScales.all()).extracting(GaitScale::id).doesNotHaveDuplicates();
        assertThat(GaitScales.byId("0-3")).isEmpty();
    }
}
