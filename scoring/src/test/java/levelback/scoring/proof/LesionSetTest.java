package levelback.scoring.proof;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class LesionSetTest {

    @Test
    void alarmIsThePublishedListAndDermatitisOnlyWhereActive() {
        LesionSet alarm = LesionSet.of("alarm");
        assertThat(alarm.codes()).containsExactlyInAnyOrder("U", "SU", "BU", "TU", "TN", "WLA", "IP", "SW", "DD");
        assertThat(alarm.has("DD", "")).isTrue();
        assertThat(alarm.has("DD", "M2")).isTrue();
        assertThat(alarm.has("DD", "M4")).isFalse();
        assertThat(alarm.has("SHC", "")).isFalse();
    }

    @Test
    void anyTakesEveryCodeButNoneAndRefused() {
        assertThat(LesionSet.any().has("ZZ", "")).isTrue();
        assertThat(LesionSet.any().has("DD", "M3")).isTrue();
        assertThat(LesionSet.any().has("NONE", "")).isFalse();
        assertThat(LesionSet.any().has("REFUSED", "")).isFalse();
    }

    @Test
    void aListTakesGroupsApart() {
        LesionSet set = LesionSet.of("u, wl");
        assertThat(set.name()).isEqualTo("U,WL");
        assertThat(set.codes()).containsExactlyInAnyOrder("U", "SU", "BU", "TU", "WL", "WLF", "WLA");
        assertThat(LesionSet.of("U").has("TN", "")).isFalse();
        assertThat(LesionSet.of("DD").has("DD", "M3")).isTrue();
        assertThatThrownBy(() -> LesionSet.of(" , ")).hasMessageContaining("alarm, any");
    }
}
