package levelback.player.trim;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import levelback.player.desk.Fx;
import levelback.player.desk.NeedsDesk;
import levelback.player.shell.Snapshot;
import levelback.player.theme.Theme;
import levelback.scoring.foot.Claw;
import levelback.scoring.foot.FootAction;
import levelback.scoring.value.Leg;
import levelback.store.trim.Finding;
import levelback.store.trim.FootCard;
import levelback.store.trim.LiftCard;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page by keys and by mouse, its sizes, and its pictures in {@code target/look}. */
@NeedsDesk
@SuppressWarnings("NullAway.Init")
class TrimPageTest {

    @TempDir
    Path folder;

    private ChuteBench desk;
    private TrimPage page;
    private Scene scene;

    @BeforeAll
    static void english() {
        Locale.setDefault(Locale.UK);
    }

    @BeforeEach
    void open() throws Exception {
        desk = new ChuteBench(folder);
        Fx.run(() -> {
            page = new TrimPage(desk, Clock.systemUTC());
            desk.changed = page::bookChanged;
            page.shown();
        });
        size(1440, 808, false);
    }

    @AfterEach
    void close() {
        desk.close();
    }

    private void size(double wide, double high, boolean dark) throws Exception {
        Fx.run(() -> {
            if (page.view().getParent() != null) {
                ((StackPane) page.view().getParent()).getChildren().clear();
            }
            scene = new Scene(new StackPane(page.view()), wide, high);
            Theme.apply(scene, dark);
            lay();
        });
    }

    private void lay() {
        // Rows of a FitBox and the map need the pass that their sizes come from.
        for (int i = 0; i < 3; i++) {
            scene.getRoot().applyCss();
            scene.getRoot().layout();
        }
    }

    private void picture(String name) throws Exception {
        byte[] png = Fx.get(() -> {
            lay();
            return Snapshot.png(scene.snapshot(null));
        });
        Files.createDirectories(Path.of("target/look"));
        Files.write(Path.of("target/look", name + ".png"), png);
    }

    private void press(KeyCode code, String... with) throws Exception {
        List<String> held = List.of(with);
        Fx.run(() -> {
            page.key(new KeyEvent(
                    KeyEvent.KEY_PRESSED,
                    "",
                    "",
                    code,
                    held.contains("shift"),
                    held.contains("ctrl"),
                    held.contains("alt"),
                    false));
            lay();
        });
    }

    private void type(KeyCode... codes) throws Exception {
        for (KeyCode code : codes) {
            press(code);
        }
    }

    private void touch(String id) throws Exception {
        Fx.run(() -> {
            Node node = scene.getRoot().lookup("#" + id);
            assertThat(node).as(id).isNotNull();
            ((Button) node).fire();
            lay();
        });
    }

    private void touchZone(Claw claw, int zone) throws Exception {
        Fx.run(() -> {
            String id = page.inChuteMode() ? "#chute-map" : "#trim-map";
            FootMapView map = (FootMapView) scene.getRoot().lookup(id);
            Spot at = map.middleOf(ClawZone.of(claw, zone));
            map.fireEvent(mouse(map, MouseEvent.MOUSE_PRESSED, at));
            map.fireEvent(mouse(map, MouseEvent.MOUSE_RELEASED, at));
            lay();
        });
    }

    private static MouseEvent mouse(Node on, javafx.event.EventType<MouseEvent> type, Spot local) {
        javafx.geometry.Point2D at = on.localToScene(local.x(), local.y());
        return new MouseEvent(
                type,
                at.getX(),
                at.getY(),
                at.getX(),
                at.getY(),
                MouseButton.PRIMARY,
                1,
                false,
                false,
                false,
                false,
                true,
                false,
                false,
                true,
                false,
                true,
                new javafx.scene.input.PickResult(on, new javafx.geometry.Point3D(local.x(), local.y(), 0), 0));
    }

    private LiftCard card() {
        return desk.book.trim().cardsOf(desk.thimble).stream()
                .filter(c -> c.lift().date().equals(ChuteBench.DAY))
                .findFirst()
                .orElseThrow();
    }

    private FootCard foot(Leg leg) {
        return card().feet().stream()
                .filter(f -> f.foot().leg() == leg)
                .findFirst()
                .orElseThrow();
    }

    private void thimble() throws Exception {
        Fx.run(() -> {
            page.openCow(desk.thimble);
            lay();
        });
    }

    @Test
    void aCardByKeysAlone() throws Exception {
        picture("trim-empty");
        press(KeyCode.ENTER);
        // Worst first, longest waiting first: 412 is lame since three visits.
        assertThat(page.model().chute().orElseThrow().cow().cow().number()).isEqualTo("412");
        type(KeyCode.S, KeyCode.U);
        Finding line = foot(Leg.RH).findings().get(0);
        assertThat(line.lesion()).isEqualTo("SU");
        assertThat(line.zoneConfirmed()).isFalse();
        type(KeyCode.DOWN, KeyCode.DIGIT3);
        line = foot(Leg.RH).findings().get(0);
        assertThat(line.zone()).hasValue(5);
        assertThat(line.zoneConfirmed()).isTrue();
        assertThat(line.severity()).hasValue(3);
        type(KeyCode.D, KeyCode.D, KeyCode.SPACE, KeyCode.DIGIT2);
        assertThat(foot(Leg.RH).findings()).anySatisfy(f -> {
            assertThat(f.lesion()).isEqualTo("DD");
            assertThat(f.stage()).isEqualTo("M2");
            assertThat(f.claw()).isEqualTo(Claw.INTERDIGITAL);
            assertThat(f.zoneConfirmed()).isTrue();
        });
        press(KeyCode.DIGIT6, "alt");
        assertThat(foot(Leg.RH).actions()).contains(FootAction.BLOCK_INNER);
        press(KeyCode.D, "shift");
        type(KeyCode.PERIOD);
        assertThat(foot(Leg.LH).foot().noLesion()).isTrue();
        type(KeyCode.ENTER);
        assertThat(card().lift().done()).isTrue();
        assertThat(desk.gate).isEqualTo("1 of 8");
        assertThat(page.model().chute().orElseThrow().cow().cow().number()).isEqualTo("156");
        assertThat(desk.errors).isEmpty();
    }

    @Test
    void theSameCardByMouseAlone() throws Exception {
        touch("trim-start");
        touchZone(Claw.LATERAL, 4);
        touch("trim-code-SU");
        touch("trim-howBad-3");
        touch("trim-done-claw-lowered");
        touch("trim-done-block-inner");
        touchZone(Claw.LATERAL, 6);
        touch("trim-code-HHE");
        touch("trim-howBad-1");
        assertThat(foot(Leg.RH).findings())
                .extracting(f -> f.claw() + " " + f.zone().getAsInt() + " " + f.lesion() + " "
                        + f.severity().getAsInt())
                .containsExactlyInAnyOrder("LATERAL 4 SU 3", "LATERAL 6 HHE 1");
        assertThat(foot(Leg.RH).findings())
                .allSatisfy(f -> assertThat(f.zoneConfirmed()).isTrue());
        picture("trim-light");
        size(1440, 808, true);
        picture("trim-dark");
        size(1280, 628, false);
        picture("trim-1280x720");
        size(1440, 808, false);
        touchZone(Claw.LATERAL, 3);
        picture("trim-zone-chosen");
        touch("trim-foot-LH");
        touch("trim-noLesion");
        touch("trim-cowDone");
        assertThat(card().lift().done()).isTrue();
        assertThat(desk.errors).isEmpty();
    }

    @Test
    void aBlockOnTheInjuredClawAsksFirst() throws Exception {
        thimble();
        type(KeyCode.S, KeyCode.U, KeyCode.SPACE, KeyCode.DIGIT2);
        touch("trim-done-block-outer");
        assertThat(foot(Leg.RH).actions()).isEmpty();
        picture("trim-question");
        touch("trim-no");
        assertThat(foot(Leg.RH).actions()).isEmpty();
        touch("trim-done-block-outer");
        touch("trim-yes");
        assertThat(foot(Leg.RH).actions()).containsExactly(FootAction.BLOCK_OUTER);
        assertThat(card().lookAgainOn()).contains(ChuteBench.DAY.plusDays(28));
    }

    @Test
    void everyControlIsAtLeast44Px() throws Exception {
        double[][] sizes = {{1440, 808}, {1280, 628}};
        for (double[] size : sizes) {
            size(size[0], size[1], false);
            thimble();
            type(KeyCode.S, KeyCode.U);
            measureControls(44);
            press(KeyCode.SPACE);
            Fx.run(() -> {
                Finding line = foot(Leg.RH).findings().get(0);
                page.model().change(line.id());
                lay();
            });
            measureControls(44);
            type(KeyCode.ESCAPE, KeyCode.D, KeyCode.D);
            measureControls(44);
            type(KeyCode.ESCAPE);
            touchZone(Claw.LATERAL, 3);
            measureControls(44);
            Fx.run(() -> {
                page.model().leave();
                lay();
            });
            measureControls(44);
            desk.undo();
        }
    }

    private void measureControls(double leastPx) throws Exception {
        Fx.run(() -> {
            lay();
            List<Region> controls = new ArrayList<>();
            collect(page.view(), controls);
            assertThat(controls).isNotEmpty();
            for (Region control : controls) {
                assertThat(control.getWidth()).as("width of %s", name(control)).isGreaterThanOrEqualTo(leastPx - .01);
                assertThat(control.getHeight())
                        .as("height of %s", name(control))
                        .isGreaterThanOrEqualTo(leastPx - .01);
                Bounds at = control.localToScene(control.getLayoutBounds());
                if (scrolls(control)) {
                    continue;
                }
                assertThat(at.getMaxX())
                        .as("right edge of %s", name(control))
                        .isLessThanOrEqualTo(scene.getWidth() + .5);
                assertThat(at.getMaxY())
                        .as("lower edge of %s", name(control))
                        .isLessThanOrEqualTo(scene.getHeight() + .5);
            }
            FootMapView map = (FootMapView) scene.getRoot().lookup(page.inChuteMode() ? "#chute-map" : "#trim-map");
            if (map != null) {
                assertThat(map.smallestZonePx()).isGreaterThanOrEqualTo(leastPx);
            }
        });
    }

    /** A row of a list that scrolls may lie out of sight. */
    private static boolean scrolls(Node node) {
        for (Node up = node; up != null; up = up.getParent()) {
            if (up instanceof javafx.scene.control.ScrollPane) {
                return true;
            }
        }
        return false;
    }

    private static String name(Node node) {
        return node.getId() + " " + node.getAccessibleText();
    }

    private static void collect(Node node, List<Region> controls) {
        if (!node.isVisible()) {
            return;
        }
        if (node instanceof Button || node instanceof TextField) {
            controls.add((Region) node);
        } else if (node instanceof Parent parent) {
            parent.getChildrenUnmodifiable().forEach(child -> collect(child, controls));
        }
    }

    @Test
    void chuteModeByNumberPad() throws Exception {
        Fx.run(() -> page.chuteMode(true));
        size(1440, 900, false);
        picture("trim-chute-empty");
        thimble();
        picture("trim-chute-where");
        // Three touches: where, what, how bad.
        type(KeyCode.NUMPAD3, KeyCode.NUMPAD8);
        picture("trim-chute");
        assertThat(ask()).isEqualTo("RH outer 3, WLA. How bad?");
        type(KeyCode.NUMPAD2);
        Finding line = foot(Leg.RH).findings().get(0);
        assertThat(line.lesion()).isEqualTo("WLA");
        assertThat(line.zone()).hasValue(3);
        assertThat(line.claw()).isEqualTo(Claw.LATERAL);
        assertThat(line.severity()).hasValue(2);
        type(KeyCode.NUMPAD1, KeyCode.NUMPAD0, KeyCode.DIVIDE, KeyCode.NUMPAD0, KeyCode.NUMPAD2);
        type(KeyCode.NUMPAD1);
        assertThat(foot(Leg.RH).actions()).contains(FootAction.BLOCK_INNER);
        assertThat(foot(Leg.RH).findings()).anySatisfy(f -> {
            assertThat(f.claw()).isEqualTo(Claw.MEDIAL);
            assertThat(f.zone()).hasValue(11);
            assertThat(f.lesion()).isEqualTo("IP");
        });
        type(KeyCode.MULTIPLY, KeyCode.NUMPAD1, KeyCode.DECIMAL);
        assertThat(foot(Leg.LH).foot().noLesion()).isTrue();
        type(KeyCode.SUBTRACT);
        assertThat(card().feet()).noneMatch(f -> f.foot().leg() == Leg.LH);
        type(KeyCode.ADD);
        assertThat(page.model().chute().orElseThrow().entry().leg()).isNotEqualTo(Leg.LH);
        type(KeyCode.ENTER);
        assertThat(card().lift().done()).isTrue();
        assertThat(desk.errors).isEmpty();
    }

    private String ask() throws Exception {
        return Fx.get(() -> ((Label) scene.getRoot().lookup("#chute-ask")).getText());
    }

    @Test
    void chuteModeByTouchAlone() throws Exception {
        Fx.run(() -> page.chuteMode(true));
        size(1440, 900, true);
        thimble();
        touchZone(Claw.LATERAL, 4);
        touch("chute-code-SU");
        touch("chute-howBad-3");
        touch("chute-block");
        assertThat(foot(Leg.RH).actions()).containsExactly(FootAction.BLOCK_INNER);
        touch("chute-walls");
        picture("trim-chute-walls-dark");
        touchZone(Claw.MEDIAL, 9);
        touch("chute-code-DD");
        touch("chute-howBad-5");
        assertThat(foot(Leg.RH).findings()).anySatisfy(f -> {
            assertThat(f.stage()).isEqualTo("M4.1");
            assertThat(f.zone()).hasValue(9);
            assertThat(f.claw()).isEqualTo(Claw.MEDIAL);
        });
        touch("chute-leave");
        assertThat(desk.chute).isFalse();
    }

    @Test
    void chuteKeysAre20MmOnTheMeasuredScreen() throws Exception {
        double[] pxPerMm = {96 / 25.4, 4.4};
        double[][] sizes = {{1440, 900}, {1280, 720}, {1920, 1080}};
        for (double screen : pxPerMm) {
            for (double[] size : sizes) {
                desk.screen = screen == 4.4 ? java.util.OptionalDouble.of(screen) : java.util.OptionalDouble.empty();
                Fx.run(() -> page.chuteMode(true));
                size(size[0], size[1], false);
                thimble();
                measureChute(size, screen, "where");
                press(KeyCode.NUMPAD4);
                measureChute(size, screen, "what");
                press(KeyCode.NUMPAD9);
                measureChute(size, screen, "howBad");
                press(KeyCode.NUMPAD2);
                measureChute(size, screen, "then");
                Fx.run(() -> {
                    page.model().leave();
                    lay();
                });
                measureControls(20 * screen);
            }
        }
    }

    /** The cap of a key lies beside its words, never over them: on a plain screen and on a fine one. */
    @Test
    void noKeyCapLiesOverTheWordsOfItsChuteKey() throws Exception {
        Fx.run(() -> page.chuteMode(true));
        for (double perMm : new double[] {96 / 25.4, 5.2}) {
            desk.screen = java.util.OptionalDouble.of(perMm);
            size(1440, 900, false);
            thimble();
            assertThat(Fx.get(() -> {
                        List<String> covered = new ArrayList<>();
                        int seen = 0;
                        for (Node node : scene.getRoot().lookupAll(".trim-chute-key")) {
                            for (Node cap : node.lookupAll(".lb-keycap")) {
                                seen++;
                                Bounds over = cap.localToScene(cap.getBoundsInLocal());
                                for (Node first : node.lookupAll(".trim-chute-first")) {
                                    Node words = first.lookup(".text");
                                    if (over.intersects(words.localToScene(words.getBoundsInLocal()))) {
                                        covered.add(((Label) first).getText());
                                    }
                                }
                            }
                        }
                        assertThat(seen).isGreaterThan(5);
                        return covered;
                    }))
                    .isEmpty();
        }
    }

    private void measureChute(double[] size, double screen, String step) throws Exception {
        picture("trim-chute-%d-%s-%s".formatted((int) size[1], screen > 4 ? "fine" : "96", step));
        measureControls(20 * screen);
    }

    @Test
    void theScreenIsMeasuredAgainstABankCard() throws Exception {
        Fx.run(() -> page.chuteMode(true));
        size(1440, 900, false);
        thimble();
        touch("chute-measure");
        picture("trim-measure");
        for (int i = 0; i < 40; i++) {
            touch("measure-larger");
        }
        touch("measure-fits");
        // 85.60 mm is the width of a card by ISO/IEC 7810 ID-1; 40 steps of 2 px wider than at 96 dpi.
        assertThat(desk.screen.getAsDouble())
                .isCloseTo(96 / 25.4 + 80 / 85.60, org.assertj.core.data.Offset.offset(1e-9));
        assertThat(Fx.get(() -> ((Button) scene.getRoot().lookup("#chute-leave")).getHeight()))
                .isGreaterThanOrEqualTo(20 * desk.screen.getAsDouble());
        assertThat(Fx.get(() -> Optional.ofNullable(scene.getRoot().lookup("#chute-measure"))))
                .isEmpty();
    }

    @Test
    void theMedicineNoteIsKeptAsTyped() throws Exception {
        thimble();
        Fx.run(() -> {
            ((TextField) scene.getRoot().lookup("#trim-medicine-product")).setText("  from the bottle ");
            TextField milk = (TextField) scene.getRoot().lookup("#trim-medicine-milk");
            milk.setText("after Friday?");
            milk.getOnAction().handle(new javafx.event.ActionEvent());
            lay();
        });
        assertThat(card().medicine().orElseThrow().product()).isEqualTo("  from the bottle ");
        assertThat(card().medicine().orElseThrow().milkWithheldUntil()).isEqualTo("after Friday?");
        assertThat(cautions()).anyMatch(c -> c.contains("after Friday?"));
    }

    private List<String> cautions() throws Exception {
        return Fx.get(() -> scene.getRoot().lookupAll(".lb-caution").stream()
                .map(Node::getAccessibleText)
                .toList());
    }

    @Test
    void cautionsStandFirstAndSayWhatTheBookKnows() throws Exception {
        thimble();
        assertThat(cautions())
                .hasSize(4)
                .anyMatch(c -> c.contains("Block on RH inner") && c.contains("28 d"))
                .anyMatch(c -> c.contains("Thu 16 Apr, 05:00") && c.contains("17 Mar"))
                .anyMatch(c -> c.contains("Kicks with LH"))
                .anyMatch(c -> c.contains("Calves 2 May"));
        assertThat(labels()).anyMatch(text -> text.contains("Before you lift"));
        Fx.run(() -> {
            page.model().leave();
            lay();
        });
        assertThat(labels())
                .anyMatch(text -> text.startsWith("Grinder"))
                .anyMatch(text -> text.startsWith("Chute"))
                .anyMatch(text -> text.startsWith("Medicines"))
                .anyMatch(text -> text.contains("local law"));
    }

    private List<String> labels() throws Exception {
        return Fx.get(() -> scene.getRoot().lookupAll(".label").stream()
                .filter(Label.class::isInstance)
                .map(n -> ((Label) n).getText())
                .toList());
    }

    @Test
    void anUnreadableDayIsOneSentenceAndChangesNothing() throws Exception {
        thimble();
        Fx.run(() -> {
            TextField look = (TextField) scene.getRoot().lookup("#trim-lookAgain");
            look.setText("soon");
            look.getOnAction().handle(new javafx.event.ActionEvent());
            lay();
        });
        assertThat(Fx.get(() -> scene.getRoot().lookup(".lb-error").getAccessibleText()))
                .contains("soon is not a day");
        Fx.run(() -> {
            TextField look = (TextField) scene.getRoot().lookup("#trim-lookAgain");
            look.setText("+14");
            look.getOnAction().handle(new javafx.event.ActionEvent());
            lay();
        });
        assertThat(card().lookAgainOn()).contains(ChuteBench.DAY.plusDays(14));
    }

    @Test
    void aControlLiftCanBeKeptAsRefused() throws Exception {
        Fx.run(() -> {
            page.model().openNumber("620");
            lay();
        });
        picture("trim-control");
        touch("trim-refuse");
        assertThat(desk.book.trim().cardsOf(desk.herd.id(), ChuteBench.DAY, ChuteBench.DAY))
                .anySatisfy(c -> {
                    assertThat(c.lift().refused()).isTrue();
                    assertThat(c.lift().chance()).hasValue(3.0 / 139);
                });
    }
}
