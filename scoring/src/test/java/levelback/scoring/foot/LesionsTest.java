package levelback.scoring.foot;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class LesionsTest {

    /** Codes: ICAR Claw Health Atlas (from memory); groups as on the Trim page. */
    @Test
    void holdsTheHarmonisedListByGroup() {
        assertThat(codes(Lesion.Group.SKIN)).isEqualTo("DD ID IP IH HHE");
        assertThat(codes(Lesion.Group.HORN)).isEqualTo("SU BU TU TN SH SHD SHC WLF WLA DS HF HFA HFH HFV TS");
        assertThat(codes(Lesion.Group.SHAPE_AND_SWELLING)).isEqualTo("SW AC CC CD SC");
        assertThat(Lesions.withKey()).hasSize(20).extracting(Lesion::code).doesNotContain("SHD", "HFA");
    }

    /** Alarm: ulcers, toe necrosis, white line abscess, foul, swelling, active digital dermatitis; common practice. */
    @Test
    void flagsTheAcutelyPainfulOnes() {
        assertThat(Lesions.all().stream().filter(Lesion::alarm).map(Lesion::code))
                .containsExactlyInAnyOrder("DD", "IP", "SU", "BU", "TU", "TN", "WLA", "SW");
    }

    /** International Lameness Committee 2008: ulcer at 4, toe ulcer at 1, white line at 3, digital dermatitis at 10. */
    @Test
    void knowsTheUsualZones() {
        assertThat(Lesions.byCode("su").orElseThrow().usualZones().get(0)).isEqualTo(4);
        assertThat(Lesions.byCode("TU").orElseThrow().usualZones().get(0)).isEqualTo(1);
        assertThat(Lesions.byCode("WLA").orElseThrow().usualZones().get(0)).isEqualTo(3);
        assertThat(Lesions.byCode("DD").orElseThrow().usualZones().get(0)).isEqualTo(10);
        assertThat(Lesions.usualIn(6)).extracting(Lesion::code).contains("HHE", "BU");
        assertThat(Lesions.all()).allSatisfy(l -> assertThat(l.usualZones()).allMatch(Zones::isZone));
    }

    @Test
    void zonesOneToSixBearWeightAndTheCleftBelongsToNoClaw() {
        assertThat(Zones.all()).hasSize(13).filteredOn(Zones::isWeightBearing).containsExactly(1, 2, 3, 4, 5, 6);
        assertThat(Zones.all()).filteredOn(Zones::isInterdigital).containsExactly(0, 10);
        assertThat(Zones.all().stream().map(Zones::place).distinct()).hasSize(13);
    }

    /** Vet Res 2020, adapted from Döpfer 1997 and Berry 2012: M1, M2 and M4.1 are active. */
    @Test
    void activeStagesAreM1M2AndM41() {
        assertThat(DdStage.values())
                .filteredOn(DdStage::isActive)
                .containsExactly(DdStage.M1, DdStage.M2, DdStage.M4_1);
        assertThat(DdStage.of("m4,1")).contains(DdStage.M4_1);
        assertThat(DdStage.of("M5")).isEmpty();
    }

    private static String codes(Lesion.Group group) {
        return Lesions.all().stream()
                .filter(l -> l.group() == group)
                .map(Lesion::code)
                .collect(Collectors.joining(" "));
    }
}
