package levelback.player.shell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumSet;
import javafx.scene.Scene;
import levelback.player.desk.Fx;
import levelback.player.desk.NeedsDesk;
import levelback.player.desk.PageId;
import org.junit.jupiter.api.Test;

@NeedsDesk
class RaceTest {

    private static Race race(double wide, PageId... built) throws Exception {
        return Fx.get(() -> {
            Race race = new Race(EnumSet.of(built[0], built), page -> {}, () -> {}, typed -> {});
            Scene scene = new Scene(race, wide, 58);
            levelback.player.theme.Theme.apply(scene, false);
            race.applyCss();
            race.resize(wide, 58);
            race.layout();
            return race;
        });
    }

    private static Gate gate(Race race, PageId page) {
        return java.util.Objects.requireNonNull(race.gates().get(page), page::name);
    }

    /** Measures of the design: herd block 222 and find 150 at full size, 186 at 1280; eight places of equal width. */
    @Test
    void gatesKeepTheirPlacesWhetherNeighboursAreBuiltOrNot() throws Exception {
        for (double wide : new double[] {1280, 1440, 1920}) {
            Race few = race(wide, PageId.SCORE, PageId.TRIM, PageId.PROOF);
            Race all = race(wide, PageId.values());
            assertThat(few.gates().keySet()).containsExactly(PageId.SCORE, PageId.TRIM, PageId.PROOF);
            for (PageId page : few.gates().keySet()) {
                assertThat(gate(few, page).getLayoutX())
                        .isEqualTo(gate(all, page).getLayoutX());
            }
            double first = gate(all, PageId.LANE).getLayoutX();
            assertThat(first).isEqualTo(wide < 1360 ? 186 : 222);
            double width = gate(all, PageId.LANE).getWidth();
            for (PageId page : PageId.values()) {
                assertThat(gate(all, page).getWidth()).isCloseTo(width, within(1.0));
            }
        }
        assertThat(Race.placeLeft(8, 1440)).isEqualTo(1440 - 150);
    }
}
