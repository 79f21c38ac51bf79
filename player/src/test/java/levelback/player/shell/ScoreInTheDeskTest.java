package levelback.player.shell;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.TimeUnit;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Labeled;
import javafx.scene.control.TextInputControl;
import levelback.clips.open.Clip;
import levelback.player.desk.Fx;
import levelback.player.desk.NeedsDesk;
import levelback.player.desk.PageId;
import levelback.player.score.ScorePage;
import levelback.player.stage.TestFilms;
import levelback.player.work.BringIn;
import levelback.player.work.MarkPass;
import levelback.store.book.Book;
import levelback.store.book.Books;
import levelback.store.herd.Herd;
import levelback.store.herd.HerdId;
import levelback.store.herd.Person;
import levelback.store.herd.PersonId;
import levelback.store.lane.Pass;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.util.WaitForAsyncUtils;

/** The Score page in the desk as it is put together, over a real book and real films. */
@NeedsDesk
@Timeout(60)
class ScoreInTheDeskTest {

    @TempDir
    Path folder;

    Path april;
    DeskShell desk;
    Scene scene;

    @BeforeEach
    void open() throws Exception {
        Path march = TestFilms.make(
                folder.resolve("exit-lane-north-of-the-collecting-yard-2026-03-10-camera-2-back.mp4"),
                "-f",
                "lavfi",
                "-i",
                "testsrc2=size=320x240:rate=25",
                "-frames:v",
                "50",
                "-metadata",
                "creation_time=2026-03-10T05:56:21Z");
        april = TestFilms.walk(folder, "april.mp4", 50);
        Path file = folder.resolve("t.levelback");
        try (Book book = Books.create(file)) {
            Herd herd = new Herd(
                    HerdId.fresh(), "Wobblegate", ZoneId.of("Europe/London"), "mobility-0-3", OptionalInt.of(9));
            book.herd().put(herd);
            book.herd().put(new Person(PersonId.fresh(), "Anna", "A"));
            Clip clip = Clip.open(march, () -> false);
            BringIn.Arrival in = new BringIn(book).keep(clip, herd, Optional.empty());
            new MarkPass(book)
                    .mark(herd, in.recording(), clip, 0, 49, Pass.Direction.LEFT_TO_RIGHT, Optional.of("411"));
        }
        Path settings = folder.resolve("settings.json");
        desk = Fx.get(() -> new DeskShell(
                Map.of(PageId.SCORE, ScorePage::new),
                settings,
                Settings.load(settings),
                folder.resolve("log"),
                DeskWishes.NONE));
        scene = Fx.get(() -> DeskWindow.dress(desk, 1440, 900));
        Fx.run(() -> desk.openBook(file, false));
        until("411");
    }

    @AfterEach
    void close() throws Exception {
        Fx.run(() -> scene.setRoot(new javafx.scene.Group()));
        desk.close();
    }

    /** Waits until some words stand on the desk. */
    private void until(String words) throws Exception {
        WaitForAsyncUtils.waitFor(
                20,
                TimeUnit.SECONDS,
                () -> Fx.get(() -> {
                    lay(1280, 720);
                    return shown().stream()
                            .anyMatch(label -> String.valueOf(label.getText()).contains(words));
                }));
    }

    private void lay(double wide, double high) {
        desk.root().resize(wide, high);
        for (int pass = 0; pass < 3; pass++) {
            desk.root().applyCss();
            desk.root().layout();
        }
    }

    private List<Labeled> shown() {
        List<Labeled> shown = new ArrayList<>();
        for (Node node : desk.root().lookupAll("*")) {
            if (node instanceof Labeled label
                    && label.getText() != null
                    && !label.getText().isBlank()) {
                shown.add(label);
            }
        }
        return shown;
    }

    @Test
    void aRecordingOfAnotherDayTurnsTheRaceAndThePageToItsVisit() throws Exception {
        assertThat(Fx.get(() -> desk.visit().orElseThrow().date())).isEqualTo(LocalDate.of(2026, 3, 10));
        Fx.run(() -> desk.takeFiles(List.of(april)));
        until("april.mp4");
        WaitForAsyncUtils.waitFor(
                20,
                TimeUnit.SECONDS,
                () -> Fx.get(() -> desk.visit().orElseThrow().date().equals(LocalDate.of(2026, 4, 14))));
        WaitForAsyncUtils.waitForFxEvents(3);
        until("april.mp4");
        assertThat(Fx.get(() -> shown().stream().map(Labeled::getText).toList()))
                .as("race and page")
                .contains(Words.of(
                        "herd.visit", desk.visit().orElseThrow().ordinal(), Words.day(LocalDate.of(2026, 4, 14))))
                .contains("april.mp4")
                .doesNotContain("411");
        // Back at the March visit, the page goes with the race.
        Fx.run(() -> desk.show(desk.now().visits().stream()
                .filter(v -> v.date().getMonthValue() == 3)
                .findFirst()
                .orElseThrow()));
        until("411");
    }

    /** look.md, Sizes: nothing is cut off at 1280 × 720, nor in the smallest window. */
    @Test
    void everythingLiesInsideASmallWindow() throws Exception {
        until("frame 1");
        for (double[] size : new double[][] {{1440, 900}, {1280, 720}, {1024, 720}}) {
            List<String> outside = Fx.get(() -> {
                lay(size[0], size[1]);
                List<String> found = new ArrayList<>();
                for (Node node : desk.root().lookupAll("*")) {
                    boolean words = node instanceof Labeled label
                            && !String.valueOf(label.getText()).isBlank();
                    if ((words || node instanceof TextInputControl) && node.isVisible()) {
                        Bounds at = node.localToScene(node.getLayoutBounds());
                        if (at.getWidth() > 0 && (at.getMinX() < -0.5 || at.getMaxX() > size[0] + 0.5)) {
                            found.add(node + " to " + at.getMaxX());
                        }
                    }
                }
                return found;
            });
            assertThat(outside).as("outside %s px", size[0]).isEmpty();
        }
        Files.createDirectories(Path.of("target", "look"));
        Files.write(Path.of("target", "look", "desk-score-1280.png"), Fx.get(() -> {
            lay(1280, 720);
            return Snapshot.png(desk.root().snapshot(null, new javafx.scene.image.WritableImage(1280, 720)));
        }));
    }
}
