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
import javafx.scene.SnapshotParameters;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.Labeled;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.Region;
import levelback.clips.open.Clip;
import levelback.clips.write.Still;
import levelback.player.desk.Fx;
import levelback.player.desk.NeedsDesk;
import levelback.player.shell.Snapshot;
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
        Pass pass = pass(film, from, to);
        untilShown(from);
        return pass;
    }

    private Pass pass(Path of, int from, int to) throws Exception {
        Clip clip = Clip.open(of, () -> false);
        BringIn.Arrival in = new BringIn(book).keep(clip, herd, Optional.empty());
        Pass pass = new MarkPass(book)
                .mark(herd, in.recording(), clip, from, to, Pass.Direction.LEFT_TO_RIGHT, Optional.of("412"));
        desk.visit = Optional.of(in.visit());
        Fx.run(page::shown);
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

    @Test
    void theFieldsOfAnInterlacedFilmComeOneAfterTheOtherAtTheirOwnTimes() throws Exception {
        pass(NumberedFilm.interlaced(folder, "woven.mp4", 40), 0, 39);
        until(() -> page.player().clip().isPresent() && page.picture().pixels().isPresent());
        press(KeyCode.T);
        untilNumber(0);
        for (int field = 1; field < 30; field++) {
            press(KeyCode.RIGHT);
            untilNumber(field);
            int frame = field / 2;
            assertThat(Fx.get(() -> page.player().shownFrame())).isEqualTo(frame);
        }
        press(KeyCode.RIGHT, "shift");
        untilNumber(29 + 20);
        for (int field = 48; field > 40; field--) {
            press(KeyCode.LEFT);
            untilNumber(field);
        }
        long before = System.nanoTime();
        List<Integer> seen = watch();
        press(KeyCode.SPACE);
        until(() -> page.player().isWalking());
        until(() -> !page.player().isWalking());
        assertThat(Fx.get(() -> List.copyOf(seen))).isSorted().contains(79).doesNotHaveDuplicates();
        // Fields 41 to 79, 20 ms each.
        assertThat((System.nanoTime() - before) / 1e9).isGreaterThan(0.76);
        press(KeyCode.T);
        assertThat(Fx.get(() -> page.player().isByFields())).isFalse();
        until(() -> page.player().shownFrame() == 39);
    }

    @Test
    void aFilmThatIsNotInterlacedHasNoFieldsAndSaysSo() throws Exception {
        pass(0, 20);
        press(KeyCode.T);
        assertThat(desk.messages).last().isEqualTo("This recording is not interlaced: it has no fields.");
        assertThat(Fx.get(() -> page.player().isByFields())).isFalse();
    }

    /** Waits until a number is in the pixels. */
    private void untilNumber(int number) throws Exception {
        until(() -> page.picture().pixels().map(NumberedFilm::read).equals(Optional.of(number)));
    }

    private void untilBeside(int number) throws Exception {
        until(() -> page.beside().view().pixels().map(NumberedFilm::read).equals(Optional.of(number)));
    }

    @Test
    void twoClipsJoinedAtAFrameOfEachGoInStepByTheirOwnTimes() throws Exception {
        Pass then = pass(10, 90);
        press(KeyCode.RIGHT, "shift");
        untilShown(20);
        press(KeyCode.S);
        untilBeside(20);
        // The other recording has twice the rate: one of the held one's frames is two of its own.
        Pass now = pass(NumberedFilm.ofRate(folder, "now.mp4", 200, 50), 0, 199);
        Fx.run(() -> page.openPass(now.id(), 60));
        untilShown(60);
        untilBeside(20);
        press(KeyCode.S);
        assertThat(Fx.get(() -> page.beside().isJoined())).isTrue();
        for (int i = 1; i <= 10; i++) {
            press(KeyCode.RIGHT);
            press(KeyCode.RIGHT);
            untilShown(60 + 2 * i);
            untilBeside(20 + i);
        }
        press(KeyCode.LEFT, "shift");
        press(KeyCode.LEFT, "shift");
        press(KeyCode.LEFT, "shift");
        untilShown(50);
        untilBeside(15);
        // Before its pass begins, the held one stands at its first frame.
        press(KeyCode.HOME);
        untilShown(0);
        untilBeside(10);
        press(KeyCode.S);
        assertThat(Fx.get(() -> page.beside().isOpen())).isFalse();
        assertThat(then.fromFrame()).isEqualTo(10);
    }

    @Test
    void theRecordingOfTheNextPassIsOpenBeforeItsTurn() throws Exception {
        Pass now = pass(0, 40);
        Pass next = pass(NumberedFilm.ofRate(folder, "next.mp4", 60, 50), 0, 59);
        Fx.run(() -> page.openPass(now.id(), 5));
        untilShown(5);
        until(() -> page.model().isOpen(next.recording()));
        assertThat(Fx.get(() -> page.player().clip().orElseThrow().facts().file()))
                .hasFileName("walk.mp4");
        press(KeyCode.PAGE_DOWN);
        until(() -> page.player()
                .clip()
                .map(clip -> clip.facts().file().endsWith("next.mp4"))
                .orElse(false));
    }

    @Test
    void picturesToJudge() throws Exception {
        pass(0, 100);
        Fx.run(() -> page.player().show(87));
        untilShown(87);
        press(KeyCode.A, KeyCode.K, KeyCode.K);
        snapshot("playback-aids-1440", 1440, 808);
        snapshot("playback-aids-1280", 1280, 628);
        // The keys of the row below keep their caps in a window of 1280.
        Labeled aids = find(Labeled.class, "score-aids");
        assertThat(aids.getContentDisplay()).isEqualTo(ContentDisplay.RIGHT);
        press(KeyCode.H);
        snapshot("playback-feet", 1440, 808);
        press(KeyCode.H, KeyCode.RIGHT);
        untilShown(88);
        press(KeyCode.S);
        untilBeside(88);
        press(KeyCode.RIGHT, KeyCode.RIGHT);
        untilShown(90);
        press(KeyCode.S);
        snapshot("playback-beside", 1440, 808);
        // Nothing on the row of keys is cut.
        for (String id : List.of("aids-secondBack", "aids-asFilmed", "aids-beside", "score-aids")) {
            Labeled key = find(Labeled.class, id);
            assertThat(Fx.get(() -> key.getWidth() - key.prefWidth(-1))).as(id).isGreaterThan(-1);
        }
    }

    private void snapshot(String name, int width, int height) throws Exception {
        Fx.run(() -> ((Region) scene.getRoot()).resize(width, height));
        Thread.sleep(150);
        byte[] png = Fx.get(() -> {
            Parent root = scene.getRoot();
            root.applyCss();
            root.layout();
            root.applyCss();
            root.layout();
            SnapshotParameters how = new SnapshotParameters();
            how.setViewport(new javafx.geometry.Rectangle2D(0, 0, width, height));
            return Snapshot.png(root.snapshot(how, null));
        });
        Path file = Path.of("target", "look", name + ".png");
        Files.createDirectories(file.getParent());
        Files.write(file, png);
    }

    private static byte[] bytes(ByteBuffer buffer) {
        byte[] bytes = new byte[buffer.remaining()];
        buffer.get(bytes);
        return bytes;
    }
}
