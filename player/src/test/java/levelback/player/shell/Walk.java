package levelback.player.shell;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import levelback.player.desk.Fx;
import levelback.player.desk.PageId;
import levelback.player.work.UserFolder;
import levelback.store.book.Book;
import levelback.store.book.Books;
import levelback.store.herd.Herd;
import levelback.store.herd.Score;
import levelback.store.herd.Tag;
import levelback.store.herd.Visit;
import levelback.store.lane.Pass;
import levelback.store.trim.Finding;
import org.testfx.api.FxRobot;
import org.testfx.util.WaitForAsyncUtils;

/**
 * The whole job once, by keyboard and mouse, in a new book: a camera file comes in, a pass is marked and scored, a sign
 * tagged, undone and redone, the foot trimmed, and Proof followed from a number to the frame.
 */
public final class Walk implements AutoCloseable {

    private final Path folder;
    private final FxRobot robot = new FxRobot();
    private final DeskShell desk;
    private final UserFolder home;

    Walk(Path folder) throws Exception {
        this.folder = folder;
        home = new UserFolder(folder.resolve("home"));
        Files.createDirectories(home.path());
        desk = Fx.get(() -> {
            Stage made = new Stage();

            return DeskWindow.show(made, Optional.empty(), home, Settings.none(), () -> {});
        });
    }

    /** Walks in a process of its own, on the screen that DISPLAY names; ends with status 0 if all held. */
    public static void main(String[] args) throws Exception {
        Fx.start();
        try (Walk walk = new Walk(Path.of(args[0]))) {
            walk.all();
        } catch (Throwable failure) { // boundary of the process: its status is the answer
            failure.printStackTrace();
            System.exit(1);
        }
        System.exit(0);
    }

    void all() throws Exception {
        signOn();
        nameHerd();
        bringIn();
        markPass();
        score();
        tagUndoRedo();
        trim();
        backToTheFrame();
    }

    private void signOn() throws Exception {
        until("asked who scores", desk::asking);
        robot.clickOn("#who-name").write("Vera Holt");
        picture("walk-1-who");
        robot.push(KeyCode.ENTER);
        until("signed on", () -> desk.scorer().initials().equals("VH") && !desk.asking());
    }

    private void nameHerd() throws Exception {
        robot.clickOn("#first-herd");
        until("asked for the herd", desk::asking);
        robot.clickOn("#herd-name").write("Nine Oaks");
        robot.push(KeyCode.ENTER);
        until("herd named", () -> desk.herd().isPresent());
    }

    private void bringIn() throws Exception {
        Path film = CameraFile.make(folder);
        // The system's own file dialog is no part of the desk: what it returns is handed over as a drop would be.
        Fx.run(() -> desk.takeFiles(List.of(film)));
        until(
                "recording in",
                () -> desk.now().anyRecording() && desk.pageInFront().isPresent());
        until("picture there", () -> exists("#score-mark-first"));
        picture("walk-2-marking");
    }

    private void markPass() throws Exception {
        until("frame shown", () -> text("#score-frame").contains("0"));
        robot.push(KeyCode.HOME);
        step(10);
        robot.push(KeyCode.OPEN_BRACKET);
        step(60);
        robot.push(KeyCode.CLOSE_BRACKET);
        until(
                "number asked",
                () -> !robot.lookup("#score-number").queryAs(TextField.class).isDisabled());
        settle();
        robot.clickOn("#score-number").write("412");
        robot.push(KeyCode.ENTER);
        until("pass kept", () -> ask(book -> passes(book).size()) == 1);
        Pass pass = ask(book -> passes(book).get(0));
        assertThat(pass.fromFrame()).isEqualTo(10);
        assertThat(pass.toFrame()).isEqualTo(70);
        assertThat(pass.cow()).isPresent();
        robot.push(KeyCode.ENTER);
        until("cow on the page", () -> text("#score-cow").equals("412"));
        picture("walk-3-pass");
    }

    private void score() throws Exception {
        robot.push(KeyCode.DIGIT2);
        until("score kept", () -> ask(book -> scores(book).size()) == 1);
        Score score = ask(book -> scores(book).get(0));
        assertThat(score.level()).isEqualTo(2);
        assertThat(score.pass()).isPresent();
        picture("walk-4-scored");
    }

    private void tagUndoRedo() throws Exception {
        step(5);
        robot.push(KeyCode.F);
        robot.push(KeyCode.Z);
        until("sign tagged", () -> ask(Walk::tags).size() == 1);
        Tag tag = ask(Walk::tags).get(0);
        assertThat(tag.key()).isEqualTo("short-stride");
        assertThat(tag.leg()).hasValue(levelback.scoring.value.Leg.RH);
        picture("walk-5-tagged");
        robot.push(KeyCode.CONTROL, KeyCode.Z);
        until("sign taken back", () -> ask(Walk::tags).isEmpty());
        robot.push(KeyCode.CONTROL, KeyCode.SHIFT, KeyCode.Z);
        until("sign there again", () -> ask(Walk::tags).size() == 1);
        assertThat(ask(Walk::tags).get(0).recordingFrame()).isEqualTo(tag.recordingFrame());
    }

    private void trim() throws Exception {
        robot.push(KeyCode.F5);
        until("on Trim", () -> desk.here() == PageId.TRIM);
        findCow();
        until("her card", () -> exists("#trim-foot-RH"));
        robot.clickOn("#trim-foot-RH");
        settle();
        robot.clickOn("#trim-code-SU");
        settle();
        robot.clickOn("#trim-howBad-2");
        until("finding on the card", () -> !ask(Walk::findings).isEmpty());
        Finding found = ask(Walk::findings).get(0);
        assertThat(found.lesion()).isEqualTo("SU");
        picture("walk-6-trimmed");
    }

    /** Proof counts her as one that scored lame and had a lesion; the count opens her, and she her clip. */
    private void backToTheFrame() throws Exception {
        robot.push(KeyCode.F6);
        until("counted on Proof", () -> text("#proof-tp").equals("1"));
        picture("walk-7-proof");
        robot.clickOn("#proof-tp");
        until("her in the list", () -> exists("#proof-list"));
        settle();
        Node first = robot.lookup("#proof-list .list-cell").query();
        robot.clickOn(first);
        until(
                "back on Score",
                () -> desk.here() == PageId.SCORE && text("#score-cow").equals("412"));
        picture("walk-8-frame");
    }

    private void findCow() {
        robot.push(KeyCode.CONTROL, KeyCode.F);
        robot.write("412");
        robot.push(KeyCode.ENTER);
    }

    private static List<Finding> findings(Book book) {
        return passes(book).get(0).cow().map(cow -> book.trim().cardsOf(cow)).orElse(List.of()).stream()
                .flatMap(card -> card.feet().stream())
                .filter(foot -> foot.foot().leg() == levelback.scoring.value.Leg.RH)
                .flatMap(foot -> foot.findings().stream())
                .toList();
    }

    // ---- what the walk asks -----------------------------------------------------------------------------------------

    /** Reads the book beside the desk, as another program would. */
    private <T> T ask(java.util.function.Function<Book, T> question) {
        try (Book book = Books.open(home.practiceBook())) {
            return question.apply(book);
        }
    }

    private static Visit visit(Book book) {
        Herd herd = book.herd().herds().get(0);
        List<Visit> visits = book.herd().visits(herd.id());
        return visits.get(visits.size() - 1);
    }

    private static List<Pass> passes(Book book) {
        return book.lane().passesOf(visit(book).id());
    }

    private static List<Score> scores(Book book) {
        return book.herd().scoresOf(visit(book).id());
    }

    private static List<Tag> tags(Book book) {
        return book.herd().tagsOf(passes(book).get(0).id());
    }

    private void step(int frames) {
        for (int i = 0; i < frames / 10; i++) {
            robot.push(KeyCode.SHIFT, KeyCode.RIGHT);
        }
        for (int i = 0; i < frames % 10; i++) {
            robot.push(KeyCode.RIGHT);
        }
        settle();
    }

    private boolean exists(String query) {
        return robot.lookup(query).tryQuery().filter(Node::isVisible).isPresent();
    }

    private String text(String query) {
        return robot.lookup(query)
                .tryQuery()
                .map(node -> node instanceof Labeled label ? label.getText() : "")
                .orElse("");
    }

    private static void settle() {
        WaitForAsyncUtils.waitForFxEvents(5);
    }

    private interface Holds {
        boolean now() throws Exception;
    }

    private void until(String what, Holds holds) throws Exception {
        long endNs = System.nanoTime() + TimeUnit.SECONDS.toNanos(25);
        while (System.nanoTime() < endNs) {
            settle();
            if (holds.now()) {
                settle();
                return;
            }
            TimeUnit.MILLISECONDS.sleep(40);
        }
        picture("walk-failed");
        throw new AssertionError("not " + what + "; on the page: "
                + Fx.get(() -> desk.root().lookupAll(".label").stream()
                        .map(node -> ((Label) node).getText())
                        .toList()));
    }

    private void picture(String name) throws Exception {
        settle();
        byte[] png = Fx.get(() -> Snapshot.png(desk.root().getScene().snapshot(null)));
        Path file = Path.of("target", "look", name + ".png");
        Files.createDirectories(file.getParent());
        Files.write(file, png);
    }

    PageId here() {
        return desk.here();
    }

    @Override
    public void close() {
        try {
            Fx.run(() -> desk.root().getScene().getWindow().hide());
            desk.close();
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
    }
}
