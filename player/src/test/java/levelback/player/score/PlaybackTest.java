package levelback.player.score;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import javafx.application.Platform;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import levelback.clips.open.Clip;
import levelback.clips.write.Still;
import levelback.player.desk.Fx;
import levelback.player.desk.NeedsDesk;
import levelback.player.stage.NumberedFilm;
import levelback.player.theme.Theme;
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
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Stepping, playing and looking on the Score page; frame numbers are read from the pixels. */
@NeedsDesk
@Timeout(120)
class PlaybackTest {

    private static final int FRAMES = 250;

    @TempDir
    static Path films;

    static Path film;

    @TempDir
    Path folder;

    Book book;
    Herd herd;
    BookDesk desk;
    ScorePage page;
    Scene scene;
    final Person anna = new Person(PersonId.fresh(), "Anna", "A");

    @BeforeAll
    static void makeFilm() {
        film = NumberedFilm.oneGroup(films, "walk.mp4", FRAMES);
    }

    @BeforeEach
    void open() throws Exception {
        book = Books.create(folder.resolve("t.levelback"));
        herd = new Herd(HerdId.fresh(), "Wobblegate", ZoneId.of("Europe/London"), "mobility-0-3", OptionalInt.empty());
        book.herd().put(herd);
        book.herd().put(anna);
        desk = new BookDesk(book, Optional.of(herd), anna);
        desk.ui = Platform::runLater;
        page = Fx.get(() -> new ScorePage(desk));
        desk.bookChanged = page::bookChanged;
        scene = Fx.get(() -> {
            Scene made = new Scene((Parent) page.view(), 1440, 808);
            Theme.apply(made, false);
            return made;
        });
    }

    @AfterEach
    void close() throws Exception {
        Fx.run(page::close);
        book.close();
    }

    /** One pass over a span of the film. */
    private Pass pass(int from, int to) throws Exception {
        Clip clip = Clip.open(film, () -> false);
        BringIn.Arrival in = new BringIn(book).keep(clip, herd, Optional.empty());
        Pass pass = new MarkPass(book)
                .mark(herd, in.recording(), clip, from, to, Pass.Direction.LEFT_TO_RIGHT, Optional.of("412"));
        desk.visit = Optional.of(in.visit());
        Fx.run(page::shown);
        untilShown(from);
        return pass;
    }

    private void press(KeyCode code, String with) throws Exception {
        Fx.run(() -> page.key(new KeyEvent(
                KeyEvent.KEY_PRESSED,
                "",
                code.getChar(),
                code,
                with.contains("shift"),
                with.contains("ctrl"),
                with.contains("alt"),
                false)));
    }

    private void press(KeyCode... codes) throws Exception {
        for (KeyCode code : codes) {
            press(code, "");
        }
    }

    private static void until(Callable<Boolean> holds) throws Exception {
        long end = System.nanoTime() + 60_000_000_000L;
        while (!Fx.get(holds)) {
            assertThat(System.nanoTime()).as("waiting").isLessThan(end);
            Thread.sleep(5);
        }
    }

    /** Waits until a frame's number is in the pixels. */
    private void untilShown(int frame) throws Exception {
        until(() -> page.player().shownFrame() == frame
                && page.picture().pixels().map(NumberedFilm::read).equals(Optional.of(frame)));
    }

    private <T> T find(Class<T> kind, String id) throws Exception {
        return Fx.get(() -> kind.cast(scene.lookup("#" + id)));
    }

    /** Every number that comes on the screen from now on, read from the pixels. */
    private List<Integer> watch() throws Exception {
        List<Integer> seen = new ArrayList<>();
        Fx.run(() -> page.picture()
                .setOnShown(
                        () -> seen.add(NumberedFilm.read(page.picture().pixels().orElseThrow()))));
        return seen;
    }

    @Test
    void theFilmIsOneGroup() throws Exception {
        Clip clip = Clip.open(film, () -> false);
        assertThat(clip.index().frames()).hasSize(FRAMES);
        assertThat(clip.index().frames().stream().filter(f -> f.keyFrame()).count())
                .isEqualTo(1);
    }

    @Test
    void everyFrameOfALongGroupIsShownStepByStepBackwards() throws Exception {
        pass(0, FRAMES - 1);
        press(KeyCode.END);
        untilShown(FRAMES - 1);
        for (int frame = FRAMES - 2; frame >= 0; frame--) {
            press(KeyCode.LEFT);
            untilShown(frame);
        }
        press(KeyCode.LEFT);
        untilShown(0);
    }

    @Test
    @Tag("slow") // ten seconds of film at its own pace
    void aWalkBackwardsShowsFallingNumbersAndCountsWhatItLeftOut() throws Exception {
        pass(0, FRAMES - 1);
        press(KeyCode.END);
        untilShown(FRAMES - 1);
        List<Integer> seen = watch();
        press(KeyCode.SPACE, "shift");
        until(() -> page.player().isWalking());
        until(() -> !page.player().isWalking());
        List<Integer> shown = Fx.get(() -> List.copyOf(seen));
        assertThat(shown).doesNotHaveDuplicates().isSortedAccordingTo((a, b) -> b - a);
        assertThat(shown.get(0)).isEqualTo(FRAMES - 1);
        assertThat(shown.get(shown.size() - 1)).isZero();
        assertThat(shown.size() + Fx.get(() -> page.player().notShown())).isEqualTo(FRAMES);
    }

    @Test
    @Tag("slow") // ten seconds of film at its own pace
    void aWalkAtHerOwnPaceShowsOrCountsEveryFrame() throws Exception {
        pass(0, FRAMES - 1);
        List<Integer> seen = watch();
        long before = System.nanoTime();
        press(KeyCode.SPACE);
        until(() -> page.player().isWalking());
        until(() -> !page.player().isWalking());
        double seconds = (System.nanoTime() - before) / 1e9;
        List<Integer> shown = Fx.get(() -> List.copyOf(seen));
        assertThat(shown).doesNotHaveDuplicates().isSorted().contains(0, FRAMES - 1);
        assertThat(shown.size() + Fx.get(() -> page.player().notShown())).isEqualTo(FRAMES);
        // Ten seconds of film by its own times: never early.
        assertThat(seconds).isGreaterThan(9.9);
    }

    @Test
    void aLoopStaysInside() throws Exception {
        pass(0, FRAMES - 1);
        Fx.run(() -> page.player().show(100));
        untilShown(100);
        press(KeyCode.L, "shift");
        press(KeyCode.RIGHT, "shift");
        untilShown(110);
        List<Integer> seen = watch();
        press(KeyCode.L, "shift");
        until(() -> seen.stream().filter(n -> n == 100).count() >= 3);
        press(KeyCode.SPACE);
        assertThat(Fx.get(() -> List.copyOf(seen)))
                .allMatch(n -> n >= 100 && n <= 110)
                .contains(105, 110);
    }

    @Test
    void ctrlArrowsGoASecondAndFromTagToTag() throws Exception {
        Pass pass = pass(50, 200);
        press(KeyCode.RIGHT, "ctrl");
        untilShown(75);
        press(KeyCode.B);
        press(KeyCode.RIGHT, "ctrl");
        press(KeyCode.RIGHT, "ctrl");
        untilShown(125);
        press(KeyCode.B);
        assertThat(book.herd().tagsOf(pass.id())).hasSize(2);
        press(KeyCode.LEFT, "ctrl");
        untilShown(100);
        press(KeyCode.UP, "ctrl");
        untilShown(75);
        press(KeyCode.DOWN, "ctrl");
        untilShown(125);
        // A second back from 60 would leave the pass.
        Fx.run(() -> page.player().show(60));
        press(KeyCode.LEFT, "ctrl");
        untilShown(50);
    }

    @Test
    void aFrameOrATimeIsTyped() throws Exception {
        pass(50, 200);
        TextField place = find(TextField.class, "aids-place");
        for (Object[] typed : new Object[][] {{"1", 50}, {"#77", 77}, {"151", 200}, {"2,04 s", 101}, {"0:01.00", 75}}) {
            press(KeyCode.G);
            Fx.run(() -> {
                place.setText((String) typed[0]);
                place.fireEvent(new javafx.event.ActionEvent());
            });
            untilShown((Integer) typed[1]);
        }
        press(KeyCode.G);
        Fx.run(() -> {
            place.setText("152");
            place.fireEvent(new javafx.event.ActionEvent());
        });
        assertThat(desk.messages)
                .last()
                .isEqualTo("152 is not in this pass: it has frames 1 to 151, in the recording #50 to #200.");
        untilShown(75);
    }

    @Test
    void aLighterPictureIsOnTheScreenOnlyAndNeverInAStill() throws Exception {
        pass(0, 100);
        Path before = folder.resolve("before.png");
        Path after = folder.resolve("after.png");
        Clip clip = Clip.open(film, () -> false);
        Still.write(clip, 0, before);
        byte[] plain = Fx.get(() -> bytes(page.picture().pixels().orElseThrow()));
        press(KeyCode.K, KeyCode.K);
        press(KeyCode.K, "shift");
        byte[] light = Fx.get(() -> bytes(page.picture().pixels().orElseThrow()));
        assertThat(light).isNotEqualTo(plain);
        // The toned picture keeps to every later frame, and the decoded one stays what it was.
        assertThat(Fx.get(() -> bytes(page.picture().decoded().orElseThrow()))).isEqualTo(plain);
        Still.write(clip, 0, after);
        assertThat(Files.readAllBytes(after)).isEqualTo(Files.readAllBytes(before));
        press(KeyCode.RIGHT);
        untilShown(1);
        press(KeyCode.LEFT);
        untilShown(0);
        assertThat(Fx.get(() -> bytes(page.picture().pixels().orElseThrow()))).isEqualTo(light);
        press(KeyCode.P);
        assertThat(Fx.get(() -> bytes(page.picture().pixels().orElseThrow()))).isEqualTo(plain);
    }

    private static byte[] bytes(ByteBuffer buffer) {
        byte[] bytes = new byte[buffer.remaining()];
        buffer.get(bytes);
        return bytes;
    }
}
