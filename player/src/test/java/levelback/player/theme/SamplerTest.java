package levelback.player.theme;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import javafx.scene.Scene;
import javafx.scene.image.WritableImage;
import levelback.player.desk.Fx;
import levelback.player.desk.NeedsDesk;
import levelback.player.shell.Snapshot;
import org.junit.jupiter.api.Test;

@NeedsDesk
class SamplerTest {

    @Test
    void everyPartIsDrawnInBothThemes() throws Exception {
        for (boolean dark : new boolean[] {false, true}) {
            WritableImage picture = Fx.get(() -> {
                Scene scene = new Scene(new Sampler(), 720, 900);
                Theme.apply(scene, dark);
                return scene.snapshot(null);
            });
            Set<Integer> colours = new HashSet<>();
            for (int y = 0; y < 900; y++) {
                for (int x = 0; x < 720; x++) {
                    colours.add(picture.getPixelReader().getArgb(x, y));
                }
            }
            for (Role role : new Role[] {
                Role.SHEET,
                Role.S0,
                Role.S1,
                Role.S15,
                Role.S2,
                Role.S3,
                Role.LF,
                Role.RF,
                Role.LH,
                Role.RH,
                Role.GATE,
                Role.GATE_WASH,
                Role.RADDLE,
                Role.STOP,
                Role.STOP_WASH
            }) {
                assertThat(colours).as("%s, dark %s", role, dark).contains(argb(role, dark));
            }
            Path file = Path.of("target", "look", dark ? "sampler-dark.png" : "sampler-light.png");
            Files.createDirectories(file.getParent());
            Files.write(file, Snapshot.png(picture));
        }
    }

    private static int argb(Role role, boolean dark) {
        javafx.scene.paint.Color c = Theme.colour(role, dark);
        return 0xFF000000
                | (int) Math.round(c.getRed() * 255) << 16
                | (int) Math.round(c.getGreen() * 255) << 8
                | (int) Math.round(c.getBlue() * 255);
    }
}
