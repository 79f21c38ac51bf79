package levelback.player.score;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.concurrent.Callable;
import javafx.application.Platform;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.Labeled;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.text.Text;
import levelback.clips.decode.FrameReader;
import levelback.clips.open.Clip;
import levelback.player.desk.Fx;
import levelback.player.desk.NeedsDesk;
import levelback.player.score.ScoreViewModel.State;
import levelback.player.shell.Snapshot;
import levelback.player.stage.Strip;
import levelback.player.stage.TestFilms;
import levelback.player.theme.ScoreTile;
import levelback.player.theme.Theme;
import levelback.player.work.BringIn;
import levelback.player.work.GiveScore;
import levelback.player.work.MarkPass;
import levelback.player.work.SetTag;
import levelback.scoring.foot.FootSign;
import levelback.scoring.scale.GaitScales;
import levelback.scoring.scale.Sign;
import levelback.scoring.value.Leg;
import levelback.store.book.Book;
import levelback.store.book.Books;
import levelback.store.herd.Cow;
import levelback.store.herd.Herd;
import levelback.store.herd.HerdId;
import levelback.store.herd.Person;
import levelback.store.herd.PersonId;
import levelback.store.herd.Tag;
import levelback.store.herd.Visit;
import levelback.store.lane.Pass;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@NeedsDesk
@Timeout(60)
class ScorePageTest {

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
    final Person ben = new Person(PersonId.fresh(), "Ben", "B");

    @BeforeAll
    static void makeFilm() {
        film = TestFilms.walk(films, "exit-0414-1.mp4", 160);
    }

    @BeforeEach
    void open() throws Exception {
        book = Books.create(folder.resolve("t.levelback"));
        herd = new Herd(HerdId.fresh(), "Wobblegate", ZoneId.of("Europe/London"), "mobility-0-3", OptionalInt.empty());
        book.herd().put(herd);
        book.herd().put(anna);
        book.herd().put(ben);
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

    private List<Pass> passes(Path of, int... bounds) throws Exception {
        Clip clip = Clip.open(of, () -> false);
        BringIn.Arrival in = new BringIn(book).keep(clip, herd, Optional.empty());
        List<Pass> passes = new ArrayList<>();
        for (int i = 0; i + 1 < bounds.length; i += 2) {
            passes.add(new MarkPass(book)
                    .mark(
                            herd,
                            in.recording(),
                            clip,
                            bounds[i],
                            bounds[i + 1],
                            Pass.Direction.LEFT_TO_RIGHT,
                            i == 4 ? Optional.empty() : Optional.of(Integer.toString(411 + i))));
        }
        desk.visit = Optional.of(in.visit());
        Fx.run(page::shown);
        return passes;
    }

    private void press(KeyCode code, boolean shift) throws Exception {
        Fx.run(() ->
                page.key(new KeyEvent(KeyEvent.KEY_PRESSED, "", code.getChar(), code, shift, false, false, false)));
    }

    private void press(KeyCode... codes) throws Exception {
        for (KeyCode code : codes) {
            press(code, false);
        }
    }

    private static void until(Callable<Boolean> holds) throws Exception {
        long end = System.nanoTime() + 20_000_000_000L;
        while (!Fx.get(holds)) {
            assertThat(System.nanoTime()).as("waiting").isLessThan(end);
            Thread.sleep(5);
        }
    }

    private void untilShown(int frame) throws Exception {
        until(() ->
                page.player().shownFrame() == frame && page.picture().pixels().isPresent());
    }

    private State.OnPass on() throws Exception {
        return (State.OnPass) Fx.get(() -> page.model().stateProperty().get());
    }

    private static byte[] bytes(ByteBuffer buffer) {
        byte[] bytes = new byte[buffer.remaining()];
        buffer.get(bytes);
        return bytes;
    }

    private byte[] onScreen() throws Exception {
        return Fx.get(() -> bytes(page.picture().pixels().orElseThrow()));
    }

    private static byte[] decoded(Path of, int frame) throws Exception {
        Clip clip = Clip.open(of, () -> false);
        ByteBuffer bgra = ByteBuffer.allocateDirect(
                4 * clip.facts().width() * clip.facts().height());
        try (FrameReader reader = clip.reader()) {
            reader.readBgra(frame, bgra, 4 * clip.facts().width());
        }
        return bytes(bgra.rewind());
    }

    private static void assertSame(byte[] shown, byte[] decoded, int frame) {
        assertThat(java.util.Arrays.equals(shown, decoded)).as("frame " + frame).isTrue();
    }

    @Test
    void thePictureOnTheScreenIsTheVeryFrameAfterAnySteps() throws Exception {
        passes(film, 0, 159);
        untilShown(0);
        Random random = new Random(4711);
        int frame = 0;
        for (int i = 0; i < 60; i++) {
            switch (random.nextInt(5)) {
                case 0 -> {
                    press(KeyCode.RIGHT);
                    frame = Math.min(159, frame + 1);
                }
                case 1 -> {
                    press(KeyCode.LEFT);
                    frame = Math.max(0, frame - 1);
                }
                case 2 -> {
                    press(KeyCode.RIGHT, true);
                    frame = Math.min(159, frame + 10);
                }
                case 3 -> {
                    press(KeyCode.LEFT, true);
                    frame = Math.max(0, frame - 10);
                }
                default -> {
                    frame = random.nextInt(160);
                    int to = frame;
                    Fx.run(() -> page.player().show(to));
                }
            }
            untilShown(frame);
            assertSame(onScreen(), decoded(film, frame), frame);
        }
    }

    @Test
    void aWalkGoesThroughThePassAndStandsAtItsEnd() throws Exception {
        passes(film, 20, 40);
        untilShown(20);
        press(KeyCode.PLUS, KeyCode.SPACE);
        until(() -> page.player().isWalking());
        until(() -> !page.player().isWalking());
        untilShown(40);
        assertSame(onScreen(), decoded(film, 40), 40);
        press(KeyCode.SPACE, true);
        until(() -> !page.player().isWalking() && page.player().shownFrame() == 20);
        assertSame(onScreen(), decoded(film, 20), 20);
    }

    @Test
    void keysScoreTagFindAndTakeOff() throws Exception {
        List<Pass> passes = passes(film, 0, 49, 50, 99);
        untilShown(0);
        press(KeyCode.RIGHT, KeyCode.RIGHT);
        untilShown(2);
        press(KeyCode.F, KeyCode.Z, KeyCode.B, KeyCode.Q, KeyCode.DIGIT1, KeyCode.DIGIT2);
        assertThat(book.herd().tagsOf(passes.get(0).id()))
                .extracting(Tag::key, Tag::leg, Tag::recordingFrame)
                .containsExactlyInAnyOrder(
                        org.assertj.core.groups.Tuple.tuple("short-stride", Optional.of(Leg.RH), 2),
                        org.assertj.core.groups.Tuple.tuple("head-bob", Optional.empty(), 2),
                        org.assertj.core.groups.Tuple.tuple("swelling", Optional.of(Leg.RH), 2));
        assertThat(on().sheet().mine().orElseThrow().level()).isEqualTo(2);
        press(KeyCode.BACK_SPACE);
        assertThat(book.herd().tagsOf(passes.get(0).id())).hasSize(2);
        press(KeyCode.ENTER);
        assertThat(on().sheet().pass().id()).isEqualTo(passes.get(1).id());
        untilShown(50);
        press(KeyCode.U, KeyCode.DIGIT2);
        assertThat(book.herd().tagsOf(passes.get(1).id()))
                .singleElement()
                .satisfies(tag -> assertThat(tag.note()).isEqualTo("too few strides in the picture"));
        press(KeyCode.PAGE_UP);
        assertThat(on().sheet().pass().id()).isEqualTo(passes.get(0).id());
        untilShown(0);
        press(KeyCode.DOWN);
        untilShown(2);
    }

    @Test
    void theMouseDoesTheSame() throws Exception {
        List<Pass> passes = passes(film, 0, 49, 50, 99);
        untilShown(0);
        layout();
        click("#score-leg-RH");
        click("#score-sign-spares-leg");
        click("#score-level-3");
        assertThat(on().sheet().mine().orElseThrow().level()).isEqualTo(3);
        assertThat(book.herd().tagsOf(passes.get(0).id())).extracting(Tag::leg).containsExactly(Optional.of(Leg.RH));
        Strip strip = (Strip) Fx.get(() -> scene.lookup(".lb-strip"));
        Bounds bounds = strip.getLayoutBounds();
        // The gutter is 84 px wide and 12 px are left free at the right: the middle between them is the middle in time.
        mouse(strip, 84 + (bounds.getWidth() - 96) * 0.5, 60);
        untilShown(24);
        click("#score-walk");
        until(() -> page.player().isWalking());
        click("#score-walk");
        until(() -> !page.player().isWalking());
    }

    @Test
    void nothingThatCouldSwayTheScorerIsOnThePageBeforeTheScoreIsIn() throws Exception {
        List<Pass> passes = passes(film, 0, 49, 50, 99);
        Visit before = book.herd().visitOn(herd.id(), LocalDate.of(2026, 3, 31));
        for (Pass pass : passes) {
            give(pass, before, anna, 3, Instant.parse("2026-03-31T10:00:00Z"));
            give(pass, desk.visit.orElseThrow(), ben, 3, Instant.parse("2026-04-14T09:00:00Z"));
            SetTag.Moment moment = new SetTag.Moment(pass.id(), ben.id(), pass.fromFrame(), pass.from(), Instant.now());
            new SetTag(book).sign(moment, Sign.STIFF_JOINTS, Optional.of(Leg.LH));
            new SetTag(book).footFinding(moment, FootSign.BLOCK_ON, Leg.LH, "");
        }
        Fx.run(page::bookChanged);
        untilShown(0);
        layout();
        assertThat(seen())
                .noneMatch(text -> text.contains("now open") || text.contains("Mar") || text.contains("block on"));
        // The four tiles of the keys, and no other.
        assertThat(tiles()).isEqualTo(4);
        assertThat(Fx.get(() -> scene.lookup("#score-sign-stiff-joints").getStyleClass()))
                .doesNotContain("lb-chosen");
        press(KeyCode.DIGIT1);
        layout();
        assertThat(tiles()).isEqualTo(4);
        // After 3 s they open by themselves.
        until(() -> on(page).sheet().open());
        layout();
        assertThat(seen()).anyMatch(text -> text.contains("now open"));
        assertThat(seen()).anyMatch(text -> text.contains("block on"));
        assertThat(tiles()).isEqualTo(6);
        press(KeyCode.ENTER);
        layout();
        assertThat(on().sheet().pass().id()).isEqualTo(passes.get(1).id());
        assertThat(tiles()).isEqualTo(4);
        assertThat(seen())
                .noneMatch(text -> text.contains("now open") || text.contains("Mar") || text.contains("block on"));
    }

    private static State.OnPass on(ScorePage page) {
        return (State.OnPass) page.model().stateProperty().get();
    }

    private void give(Pass pass, Visit visit, Person who, double level, Instant at) {
        new GiveScore(book)
                .give(new GiveScore.Judgement(
                        pass.cow().orElseThrow(),
                        visit.id(),
                        Optional.empty(),
                        who.id(),
                        Optional.empty(),
                        GaitScales.byId("mobility-0-3").orElseThrow(),
                        level,
                        at,
                        false));
    }

    @Test
    void inANewBookADroppedFileIsMarkedScoredAndUndone() throws Exception {
        Fx.run(page::shown);
        assertThat(seen()).anyMatch(text -> text.contains("No passes to score."));
        Fx.run(() -> page.takeFiles(List.of(film)));
        until(() -> page.model().stateProperty().get() instanceof State.Marking);
        untilShown(0);
        press(KeyCode.RIGHT, true);
        untilShown(10);
        press(KeyCode.OPEN_BRACKET);
        press(KeyCode.END);
        untilShown(159);
        press(KeyCode.CLOSE_BRACKET);
        layout();
        TextInputControl number = (TextInputControl) Fx.get(() -> scene.lookup("#score-number"));
        Fx.run(() -> {
            number.setText("0412");
            number.fireEvent(new javafx.event.ActionEvent());
        });
        press(KeyCode.ENTER);
        assertThat(on().sheet().pass().fromFrame()).isEqualTo(10);
        assertThat(on().sheet().cow().map(Cow::number)).contains("0412");
        press(KeyCode.DIGIT3);
        assertThat(book.herd().scoresOf(desk.visit.orElseThrow().id())).hasSize(1);
        assertThat(book.undo("A")).contains("Scored 3, cow 0412");
        Fx.run(page::bookChanged);
        assertThat(on().sheet().mine()).isEmpty();
    }

    @Test
    void anyCameraFileIsShownUprightAndExact() throws Exception {
        Path rotated = TestFilms.make(
                films.resolve("phone.mp4"), "-display_rotation", "90", "-i", "file:" + film, "-c", "copy");
        Path uneven = TestFilms.make(
                films.resolve("uneven.mp4"),
                "-i",
                "file:" + film,
                "-vf",
                "select=not(eq(mod(n\\,3)\\,1))",
                "-fps_mode",
                "vfr",
                "-c:v",
                "mpeg4",
                "-bf",
                "2");
        Path one = TestFilms.make(
                films.resolve("one.mp4"),
                "-f",
                "lavfi",
                "-i",
                "testsrc2=size=320x240:rate=25",
                "-frames:v",
                "1",
                "-c:v",
                "mpeg4");
        Path large = TestFilms.make(
                films.resolve("large.mp4"),
                "-f",
                "lavfi",
                "-i",
                "testsrc2=size=3840x2160:rate=25",
                "-frames:v",
                "6",
                "-c:v",
                "mpeg4");
        for (Path any : List.of(rotated, uneven, one, large)) {
            Fx.run(() -> page.takeFiles(List.of(any)));
            until(() -> page.model().stateProperty().get() instanceof State.Marking m
                    && m.sheet().recording().file().getFileName().equals(any.getFileName()));
            int last = Clip.open(any, () -> false).facts().frameCount() - 1;
            until(() -> page.player()
                    .clip()
                    .map(c -> c.facts().file().getFileName())
                    .equals(Optional.of(any.getFileName())));
            press(KeyCode.END);
            untilShown(last);
            assertSame(onScreen(), decoded(any, last), last);
        }
        assertThat(Clip.open(rotated, () -> false).facts().uprightHeight()).isEqualTo(320);
        assertThat(desk.errors).isEmpty();
    }

    @Test
    void aRecordingThatWasCutOffShowsWhatIsThereAndSaysWhatIsNot() throws Exception {
        Path whole = TestFilms.make(films.resolve("whole.mkv"), "-i", "file:" + film, "-c", "copy");
        byte[] bytes = Files.readAllBytes(whole);
        Path cut = Files.write(films.resolve("cut.mkv"), java.util.Arrays.copyOf(bytes, bytes.length * 2 / 3));
        Fx.run(() -> page.takeFiles(List.of(cut)));
        until(() -> page.model().stateProperty().get() instanceof State.Marking);
        untilShown(0);
        int last = Clip.open(cut, () -> false).facts().frameCount() - 1;
        assertThat(last).isBetween(60, 140);
        Fx.run(() -> page.player().show(50));
        untilShown(50);
        assertSame(onScreen(), decoded(film, 50), 50);
        // At the cut the pictures between the last two anchors are lost, so that the last number is the cut film's own.
        press(KeyCode.END);
        untilShown(last);
        assertSame(onScreen(), decoded(cut, last), last);
        picture("score-cut-off", 1280, 628, false);
        assertThat(Fx.get(() -> said(scene.getRoot())))
                .containsExactly("The recording is cut off after frame " + last + "; what is there is exact.");
    }

    /** Sentences that stand in error bars. */
    private static List<String> said(Parent of) {
        List<String> said = new ArrayList<>();
        for (Node bar : of.lookupAll(".lb-error")) {
            said.add(bar.getAccessibleText().replaceFirst("^Error: ", ""));
        }
        return said;
    }

    @Test
    @org.junit.jupiter.api.Tag("slow")
    void picturesOfThePage() throws Exception {
        Path source = Optional.ofNullable(System.getenv("LEVELBACK_LOOK_FILM"))
                .map(Path::of)
                .orElse(film);
        int quarter = Clip.open(source, () -> false).facts().frameCount() / 4;
        List<Pass> passes = passes(
                source,
                0,
                quarter - 1,
                quarter,
                2 * quarter - 1,
                2 * quarter,
                3 * quarter - 1,
                3 * quarter,
                4 * quarter - 1);
        Cow cow = book.herd()
                .cow(passes.get(0).cow().orElseThrow(), LocalDate.of(2026, 4, 14))
                .orElseThrow();
        book.herd()
                .put(
                        new Cow(
                                cow.id(),
                                cow.herd(),
                                cow.number(),
                                Optional.of("Thimble"),
                                Optional.empty(),
                                Optional.empty(),
                                Optional.empty(),
                                Optional.of(LocalDate.of(2026, 1, 8)),
                                OptionalInt.of(3),
                                ""),
                        LocalDate.of(2026, 1, 1));
        for (int i = 1; i < 5; i++) {
            Visit visit =
                    book.herd().visitOn(herd.id(), LocalDate.of(2026, 4, 14).minusWeeks(2L * i));
            give(passes.get(0), visit, anna, i > 2 ? 1 : 2, Instant.parse("2026-03-31T10:00:00Z"));
        }
        Fx.run(page::bookChanged);
        untilShown(0);
        Fx.run(() -> page.player().show(quarter / 2 - 10));
        untilShown(quarter / 2 - 10);
        press(KeyCode.F, KeyCode.Z);
        press(KeyCode.RIGHT, true);
        untilShown(quarter / 2);
        press(KeyCode.X, KeyCode.B, KeyCode.Q, KeyCode.DIGIT1);
        picture("score", 1440, 808, false);
        picture("score-1280", 1280, 628, false);
        press(KeyCode.Q);
        picture("score-finding", 1440, 808, false);
        press(KeyCode.ESCAPE, KeyCode.U);
        picture("score-cannot-1280", 1280, 628, false);
        press(KeyCode.ESCAPE);
        press(KeyCode.DIGIT3);
        until(() -> on(page).sheet().open());
        picture("score-dark", 1440, 808, true);
        Fx.run(() -> page.model().select(passes.get(2).id()));
        press(KeyCode.DIGIT2);
        picture("score-unknown", 1440, 808, false);
        press(KeyCode.W);
        until(() -> page.model().stateProperty().get() instanceof State.Marking);
        press(KeyCode.OPEN_BRACKET);
        press(KeyCode.RIGHT, true);
        press(KeyCode.CLOSE_BRACKET);
        picture("score-marking", 1440, 808, false);
        herd = new Herd(herd.id(), herd.name(), herd.zone(), "lameness-1-5-half", OptionalInt.empty());
        desk.herd = Optional.of(herd);
        Fx.run(() -> page.model().select(passes.get(1).id()));
        picture("score-halves-1280", 1280, 628, false);
        assertThat(Path.of("target", "look", "score.png")).isNotEmptyFile();
    }

    /** 1280 × 720 and the smallest window, 1024 × 640, less the race (58) and the sill (34): look.md, Sizes. */
    @Test
    void aLongFileNameCutsNothingOffInASmallWindow() throws Exception {
        Path named =
                Files.copy(film, folder.resolve("exit-lane-north-of-the-collecting-yard-2026-03-10-camera-2-back.mp4"));
        passes(named, 0, 39, 40, 79, 80, 119);
        untilShown(0);
        press(KeyCode.X, KeyCode.B);
        press(KeyCode.DIGIT3);
        until(() -> on(page).sheet().open());
        javafx.scene.layout.StackPane window = Fx.get(() -> {
            var made = new javafx.scene.layout.StackPane();
            scene.setRoot(made);
            made.getChildren().add(page.view());
            return made;
        });
        for (int[] size : new int[][] {{1280, 628}, {1024, 548}, {1440, 808}, {1280, 628}}) {
            Fx.run(() -> {
                window.resize(size[0], size[1]);
                for (int pass = 0; pass < 3; pass++) {
                    window.applyCss();
                    window.layout();
                }
            });
            picture("score-long-name-" + size[0], size[0], size[1], false);
            List<String> cut = Fx.get(() -> cut(window, size[0], size[1]));
            assertThat(cut).as("cut off at %d × %d", size[0], size[1]).isEmpty();
        }
        press(KeyCode.W);
        until(() -> page.model().stateProperty().get() instanceof State.Marking);
        picture("score-marking-1024", 1024, 548, false);
        assertThat(Fx.get(() -> cut(window, 1024, 548))).isEmpty();
    }

    /** Every key and line of words that does not lie wholly in the window, and every key whose words are cut. */
    private static List<String> cut(Parent window, double wide, double high) {
        List<String> cut = new ArrayList<>();
        for (Node node : window.lookupAll("*")) {
            if (!(node instanceof Labeled words)
                    || words.getText() == null
                    || words.getText().isBlank()) {
                continue;
            }
            boolean shown = true;
            boolean scrolls = false;
            for (Node up = node; up != null; up = up.getParent()) {
                // In the lowest window the signs and findings are reached by scrolling.
                scrolls |= up instanceof javafx.scene.control.ScrollPane && high < 600;
                shown &= up.isVisible();
            }
            if (!shown || words.getWidth() == 0) {
                continue;
            }
            Bounds at = node.localToScene(node.getLayoutBounds());
            if (at.getMinX() < -0.5
                    || at.getMaxX() > wide + 0.5
                    || (!scrolls && (at.getMinY() < -0.5 || at.getMaxY() > high + 0.5))) {
                cut.add("outside: " + words.getText() + " at " + at.getMinX() + " to " + at.getMaxX() + ", "
                        + at.getMaxY());
            } else if (node instanceof javafx.scene.control.ButtonBase
                    && words.getWidth() < words.prefWidth(-1) - 0.5
                    && !words.isWrapText()
                    && words.getContentDisplay() != javafx.scene.control.ContentDisplay.GRAPHIC_ONLY) {
                cut.add("cut: " + words.getText() + " " + words.getWidth() + " of " + words.prefWidth(-1));
            }
        }
        return cut;
    }

    private void picture(String name, int width, int height, boolean dark) throws Exception {
        Fx.run(() -> {
            Theme.apply(scene, dark);
            ((javafx.scene.layout.Region) scene.getRoot()).resize(width, height);
        });
        Thread.sleep(150);
        byte[] png = Fx.get(() -> {
            Parent root = scene.getRoot();
            root.applyCss();
            root.layout();
            root.applyCss();
            root.layout();
            javafx.scene.SnapshotParameters how = new javafx.scene.SnapshotParameters();
            how.setViewport(new javafx.geometry.Rectangle2D(0, 0, width, height));
            return Snapshot.png(root.snapshot(how, null));
        });
        Path file = Path.of("target", "look", name + ".png");
        Files.createDirectories(file.getParent());
        Files.write(file, png);
    }

    private void layout() throws Exception {
        Fx.run(() -> {
            ((javafx.scene.layout.Region) scene.getRoot()).resize(1440, 808);
            scene.getRoot().applyCss();
            scene.getRoot().layout();
        });
    }

    private void click(String id) throws Exception {
        Fx.run(() -> {
            Node node = scene.lookup(id);
            assertThat(node).as(id).isInstanceOf(Button.class);
            ((Button) node).fire();
        });
    }

    /** Presses at a place of a node; an event carries the scene's coordinates to its target. */
    private static void mouse(Node node, double x, double y) throws Exception {
        Fx.run(() -> {
            javafx.geometry.Point2D at = node.localToScene(x, y);
            node.fireEvent(new MouseEvent(
                    MouseEvent.MOUSE_PRESSED,
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
                    false,
                    false,
                    true,
                    null));
        });
    }

    /** All words that a person or a screen reader could take from the page. */
    private List<String> seen() throws Exception {
        return Fx.get(() -> {
            List<String> texts = new ArrayList<>();
            collect(scene.getRoot(), texts);
            return texts;
        });
    }

    private static void collect(Node node, List<String> texts) {
        if (node.getAccessibleText() != null) {
            texts.add(node.getAccessibleText());
        }
        if (node instanceof Labeled labeled && labeled.getText() != null) {
            texts.add(labeled.getText());
        }
        if (node instanceof Text text) {
            texts.add(text.getText());
        }
        if (node instanceof Parent parent) {
            parent.getChildrenUnmodifiable().forEach(child -> collect(child, texts));
        }
    }

    private int tiles() throws Exception {
        return Fx.get(() -> count(scene.getRoot()));
    }

    private static int count(Node node) {
        int own = node instanceof ScoreTile ? 1 : 0;
        return node instanceof Parent parent
                ? own
                        + parent.getChildrenUnmodifiable().stream()
                                .mapToInt(ScorePageTest::count)
                                .sum()
                : own;
    }
}
