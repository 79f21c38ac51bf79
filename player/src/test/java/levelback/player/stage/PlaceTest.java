package levelback.player.stage;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PlaceTest {

    @Test
    void aBareNumberIsAFrameOfThePageAndOneWithAHashOfTheRecording() {
        assertThat(Place.typed(" 153 ")).contains(new Place.Frame(153));
        assertThat(Place.typed("#4711")).contains(new Place.OwnFrame(4711));
        assertThat(Place.typed("# 0")).contains(new Place.OwnFrame(0));
    }

    @Test
    void aTimeHasAPointAColonOrAnS() {
        assertThat(Place.typed("3.06")).contains(new Place.Time(3_060_000));
        assertThat(Place.typed("3,06 s")).contains(new Place.Time(3_060_000));
        assertThat(Place.typed("3s")).contains(new Place.Time(3_000_000));
        assertThat(Place.typed("1:03.5")).contains(new Place.Time(63_500_000));
        assertThat(Place.typed("1:02:03")).contains(new Place.Time(3_723_000_000L));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "x", "-3", "1:2:3:4", "##3", "3.1.2", "99999999999", "s", "1e3"})
    void anythingElseIsNoPlace(String text) {
        assertThat(Place.typed(text)).isEmpty();
    }
}
