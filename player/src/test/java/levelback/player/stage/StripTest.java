package levelback.player.stage;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.scene.Scene;
import javafx.scene.image.PixelReader;
import javafx.scene.image.WritableImage;
import javafx.scene.layout.StackPane;
import javafx.scene.paint.Color;
import levelback.player.desk.Fx;
import levelback.player.desk.NeedsDesk;
import levelback.player.shell.Snapshot;
import levelback.player.theme.Role;
import levelback.player.theme.Theme;
import levelback.scoring.value.Leg;
import org.junit.jupiter.api.Test;

@NeedsDesk
class StripTest {

    private static final double WIDE = 904;
    private static final double HIGH = 246;

    private static StripContent gait() {
        List<Stance> stances = new ArrayList<>();
        List<StripContent.Point> head = new ArrayList<>();
        List<StripContent.Point> back = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            long at = i * 1_410_000L;
            stances.add(new Stance(Leg.LH, at + 1, at + 1_040_000, true));
            stances.add(new Stance(Leg.LF, at + 170_000, at + 1_170_000, true));
            stances.add(new Stance(Leg.RH, at + 600_000, at + 1_480_000, i != 2));
            stances.add(new Stance(Leg.RF, at + 930_000, at + 1_920_000, true));
        }
        for (int i = 0; i <= 100; i++) {
            head.add(new StripContent.Point(i * 53_000L, Math.sin(i / 4.0)));
            back.add(new StripContent.Point(i * 53_000L, Math.sin(i / 2.0)));
        }
        return new StripContent(
                0,
                5_320_000,
                stances,
                List.of(new StripContent.Curve(false, head), new StripContent.Curve(true, back)),
                List.of(
                        new StripContent.Remark(820_000, 41, Optional.of(Leg.RH), "short stride"),
                        new StripContent.Remark(3_060_000, 153, Optional.empty(), "head bob")));
    }

    private static WritableImage picture(StripContent content, boolean dark) throws Exception {
        return picture(content, dark, dark ? "strip-dark.png" : "strip.png");
    }

    private static WritableImage picture(StripContent content, boolean dark, String name) throws Exception {
        return Fx.get(() -> {
            Strip strip = new Strip();
            StackPane root = new StackPane(strip);
            Scene scene = new Scene(root, WIDE, HIGH);
            Theme.apply(scene, dark);
            strip.show(content);
            strip.setPlayhead(3_060_000);
            strip.setLoop(1_410_000, 2_820_000);
            root.applyCss();
            root.layout();
            WritableImage image = root.snapshot(null, null);
            Path file = Path.of("target", "look", name);
            Files.createDirectories(file.getParent());
            Files.write(file, Snapshot.png(image));
            return image;
        });
    }

    @Test
    void drawsEachStanceOnItsLegsLineInBothThemes() throws Exception {
        for (boolean dark : new boolean[] {false, true}) {
            WritableImage image = picture(gait(), dark);
            StripScale scale = new StripScale(0, 5_320_000, 84, WIDE - 12);
            PixelReader pixels = image.getPixelReader();
            // Four lines share what lies between ruler (26 px) and the curves (80 px from the bottom).
            double line = (HIGH - 80 - 26) / 4;
            for (Stance stance : gait().stances()) {
                if (!stance.confirmed() || stance.downUs() > 4_000_000) {
                    continue;
                }
                int at = List.of(Leg.LF, Leg.RF, Leg.LH, Leg.RH).indexOf(stance.leg());
                int x = (int) scale.x(stance.downUs() + 60_000);
                int y = (int) (26 + line * (at + 0.5));
                assertThat(pixels.getColor(x, y))
                        .as(stance + ", dark " + dark)
                        .isEqualTo(exact(Theme.colour(Role.of(stance.leg()), dark)));
            }
        }
    }

    @Test
    void damageIsHatchedFromTheRulerDownHoweverShort() throws Exception {
        StripContent sound = gait();
        StripContent broken = new StripContent(
                sound.fromUs(),
                sound.toUs(),
                sound.stances(),
                sound.curves(),
                sound.remarks(),
                List.of(
                        new StripContent.Damaged(1_500_000, 2_100_000, "pictures 37 to 52 were patched by the decoder"),
                        new StripContent.Damaged(4_000_000, 4_000_000, "one picture is missing"),
                        new StripContent.Damaged(5_320_000, 9_000_000, "the file is cut off"),
                        new StripContent.Damaged(-9, -5, "before the span")));
        for (boolean dark : new boolean[] {false, true}) {
            WritableImage image = picture(broken, dark, dark ? "strip-damage-dark.png" : "strip-damage.png");
            StripScale scale = new StripScale(0, 5_320_000, 84, WIDE - 12);
            Color stop = exact(Theme.colour(Role.STOP, dark));
            for (long at : new long[] {1_510_000, 1_800_000, 2_090_000, 4_010_000, 5_315_000}) {
                assertThat(image.getPixelReader().getColor((int) scale.x(at), 24))
                        .as("%d, dark %s", at, dark)
                        .isEqualTo(stop);
            }
            for (long at : new long[] {50_000, 1_300_000, 2_300_000, 4_200_000}) {
                assertThat(image.getPixelReader().getColor((int) scale.x(at), 24))
                        .as("%d, dark %s", at, dark)
                        .isNotEqualTo(stop);
            }
        }
    }

    /** As eight bits a channel keep it. */
    private static Color exact(Color colour) {
        return Color.rgb((int) Math.round(colour.getRed() * 255), (int) Math.round(colour.getGreen() * 255), (int)
                Math.round(colour.getBlue() * 255));
    }
}
