package levelback.player.film;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import levelback.clips.write.Overlay.Layer;
import org.junit.jupiter.api.Test;

class LabelsTest {

    @Test
    void theTimeIsInMinutesSecondsAndThousandths() {
        assertThat(Labels.clock(0)).isEqualTo("0:00.000");
        assertThat(Labels.clock(62_345_400)).isEqualTo("1:02.345");
        assertThat(Labels.clock(3_599_999_600L)).isEqualTo("60:00.000");
    }

    @Test
    void aPlateStaysInsideThePictureHoweverLongTheLine() {
        for (int width : new int[] {64, 320, 1920}) {
            Labels labels =
                    new Labels(List.of("Cow 4711, left hind, seen at the parlour exit ".repeat(9)), true, width, 240);
            Layer plate = labels.over(3, 120_000).get(0);
            assertThat(plate.x() + plate.width()).isLessThanOrEqualTo(width);
        }
        assertThat(new Labels(List.of(), false, 320, 240).over(0, 0)).isEmpty();
    }

    @Test
    void lightLettersStandOnADarkPlate() {
        Layer plate = new Labels(List.of("W"), false, 640, 480).over(0, 0).get(0);
        int light = 0;
        for (int i = 0; i < plate.width() * plate.height(); i++) {
            int green = plate.bgra().get(4 * i + 1) & 0xFF;
            light += green > 200 ? 1 : 0;
        }
        assertThat(light).isBetween(20, plate.width() * plate.height() / 2);
        int middle = 4 * (plate.width() * (plate.height() / 2) + 2);
        assertThat(plate.bgra().get(middle + 3) & 0xFF).isBetween(150, 230);
    }
}
