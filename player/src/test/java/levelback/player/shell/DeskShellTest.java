package levelback.player.shell;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.VBox;
import levelback.player.desk.Fx;
import levelback.player.desk.NeedsDesk;
import levelback.player.desk.PageId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@NeedsDesk
class DeskShellTest {

    @TempDir
    Path folder;

    @SuppressWarnings("resource")
    private Bench bench() throws Exception {
        return new Bench(folder, PageId.SCORE, PageId.TRIM, PageId.PROOF).open(folder.resolve("a.levelback"));
    }

    @Test
    void firstStartAsksWhoScoresThenShowsThreeThingsToDo() throws Exception {
        try (Bench bench = bench()) {
            bench.picture("first-who");
            assertThat(Fx.get(() -> bench.desk.asking())).isTrue();
            // Esc does not get past it: a score without a scorer could not be compared.
            bench.press(KeyCode.ESCAPE);
            assertThat(Fx.get(() -> bench.desk.asking())).isTrue();
            bench.firstStart();
            assertThat(bench.desk.scorer().name()).isEqualTo("Vera Holt");
            assertThat(bench.desk.scorer().initials()).isEqualTo("VH");
            assertThat(bench.desk.herd()).hasValueSatisfying(herd -> {
                assertThat(herd.name()).isEqualTo("Nine Oaks");
                assertThat(herd.cowsInMilk()).hasValue(186);
            });
            assertThat(Fx.get(() -> bench.find(Node.class, "first-recordings").isDisabled()))
                    .isFalse();
            bench.picture("first-run");
            bench.press(KeyCode.F10);
            bench.picture("first-run-dark");
        }
    }

    @Test
    void undoSaysWhatItTakesBackAndRedoBringsItAgain() throws Exception {
        try (Bench bench = bench()) {
            bench.firstStart();
            assertThat(Fx.get(() -> bench.find(Label.class, "undo-words").getText()))
                    .startsWith("Herd Nine Oaks:");
            bench.press(KeyCode.F6);
            bench.press(KeyCode.Z, "ctrl");
            assertThat(bench.desk.herd()).isEmpty();
            assertThat(Fx.get(() -> bench.find(Label.class, "sill-message").getText()))
                    .startsWith("Took back: Herd Nine Oaks");
            assertThat(bench.page(PageId.PROOF).told).contains("bookChanged");
            bench.press(KeyCode.Z, "ctrl", "shift");
            assertThat(bench.desk.herd()).isPresent();
        }
    }

    @Test
    void keysOfTheDeskGoToPagesAndOthersToThePage() throws Exception {
        try (Bench bench = bench()) {
            bench.firstStart();
            bench.press(KeyCode.F6);
            assertThat(bench.desk.here()).isEqualTo(PageId.PROOF);
            bench.press(KeyCode.F4); // Draft is not built: nothing moves
            assertThat(bench.desk.here()).isEqualTo(PageId.PROOF);
            bench.press(KeyCode.DIGIT5, "ctrl");
            assertThat(bench.desk.here()).isEqualTo(PageId.TRIM);
            bench.press(KeyCode.X);
            assertThat(bench.page(PageId.TRIM).told).endsWith("key X");
            bench.press(KeyCode.F, "ctrl");
            assertThat(Fx.get(() -> bench.scene.getFocusOwner() == bench.find(TextField.class, "find-cow")))
                    .isTrue();
            bench.press(KeyCode.Q);
            assertThat(bench.page(PageId.TRIM).told).doesNotContain("key Q");
            bench.press(KeyCode.F9);
            assertThat(bench.page(PageId.TRIM).chute).isTrue();
            assertThat(Fx.get(() -> bench.desk.race().getScene())).isNull();
            bench.press(KeyCode.F9);
            assertThat(Fx.get(() -> bench.desk.race().getScene())).isNotNull();
            bench.press(KeyCode.F12);
            assertThat(Fx.get(() -> bench.desk.asking())).isTrue();
            bench.picture("keys");
            bench.press(KeyCode.ESCAPE);
            assertThat(Fx.get(() -> bench.desk.asking())).isFalse();
        }
    }

    @Test
    void errorsStayUntilClosedAndMessagesDoNotHideThem() throws Exception {
        try (Bench bench = bench()) {
            bench.firstStart();
            Fx.run(() -> bench.desk.error("exit-2.mp4 is broken after 06:51."));
            Fx.run(() -> bench.desk.error("exit-2.mp4 is broken after 06:51."));
            Fx.run(() -> bench.desk.message("Saved."));
            bench.settle();
            VBox errors = bench.find(VBox.class, "errors");
            assertThat(errors.getChildren()).hasSize(1);
            bench.picture("error");
            bench.press(KeyCode.ESCAPE);
            assertThat(errors.getChildren()).isEmpty();
        }
    }

    @Test
    void themeAndScorerSurviveARestart() throws Exception {
        try (Bench bench = bench()) {
            bench.firstStart();
            bench.press(KeyCode.F6);
            bench.press(KeyCode.F10);
            assertThat(bench.page(PageId.PROOF).told).contains("theme");
        }
        assertThat(Files.readString(folder.resolve("settings.json"))).contains("\"theme\" : \"dark\"");
        try (Bench again = bench()) {
            assertThat(again.desk.dark()).isTrue();
            assertThat(again.desk.scorer().name()).isEqualTo("Vera Holt");
            assertThat(again.desk.herd()).isPresent();
            assertThat(Fx.get(() -> again.desk.asking())).isFalse();
        }
    }

    @Test
    void aFileThatIsNoBookIsRefusedInOneSentenceAndTheOpenBookStays() throws Exception {
        Path text = Files.writeString(folder.resolve("notes.levelback"), "not a book ".repeat(400));
        try (Bench bench = bench()) {
            bench.firstStart();
            Fx.run(() -> bench.desk.openBook(text, false));
            bench.settle();
            VBox errors = bench.find(VBox.class, "errors");
            assertThat(errors.getChildren()).hasSize(1);
            assertThat((String) errors.getChildren().get(0).getUserData()).contains("notes.levelback");
            assertThat(bench.desk.herd()).isPresent();
        }
        assertThat(Files.readString(text)).startsWith("not a book not");
    }

    @Test
    void aBookOfANewerVersionIsRefusedInOneSentence() throws Exception {
        Path newer = folder.resolve("newer.levelback");
        levelback.store.book.Books.create(newer).close();
        // SQLite file format, section 1.3: user_version is the big-endian number at offset 60 of the header.
        try (java.io.RandomAccessFile raw = new java.io.RandomAccessFile(newer.toFile(), "rw")) {
            raw.seek(60);
            raw.writeInt(99);
        }
        try (Bench bench = bench()) {
            bench.firstStart();
            Fx.run(() -> bench.desk.openBook(newer, false));
            bench.settle();
            VBox errors = bench.find(VBox.class, "errors");
            assertThat(errors.getChildren()).hasSize(1);
            assertThat((String) errors.getChildren().get(0).getUserData())
                    .contains("newer.levelback")
                    .containsIgnoringCase("newer");
            assertThat(bench.desk.file()).hasValue(folder.resolve("a.levelback").toAbsolutePath());
        }
    }

    @Test
    void aBookThatIsNotThereIsAskedAboutAndNotMade() throws Exception {
        Path absent = folder.resolve("absent.levelback");
        try (Bench bench = bench()) {
            bench.firstStart();
            Fx.run(() -> bench.desk.openBook(absent, false));
            bench.settle();
            assertThat(absent).doesNotExist();
            Fx.run(() ->
                    bench.find(javafx.scene.control.Button.class, "book-make").fire());
            bench.settle();
            assertThat(absent).exists();
        }
    }

    @Test
    void aSlowBookDoesNotFreezeTheDesk() throws Exception {
        try (Bench bench = bench()) {
            bench.firstStart();
            CountDownLatch slow = new CountDownLatch(1);
            CountDownLatch reading = new CountDownLatch(1);
            Fx.run(() -> bench.desk.read(
                    book -> {
                        reading.countDown();
                        try {
                            slow.await();
                        } catch (InterruptedException e) {
                            Thread.currentThread().interrupt();
                        }
                        return 1;
                    },
                    done -> {}));
            reading.await();
            // The book is stuck: each of these must still come back from the JavaFX thread at once.
            long startedNs = System.nanoTime();
            Fx.run(() -> bench.desk.go(PageId.PROOF));
            Fx.run(bench.desk::undo);
            Fx.run(() -> bench.desk.findCow("412"));
            Fx.run(bench.desk::toggleTheme);
            Fx.run(bench.desk::refresh);
            assertThat((System.nanoTime() - startedNs) / 1_000_000).isLessThan(5000);
            assertThat(bench.desk.here()).isEqualTo(PageId.PROOF);
            assertThat(slow.getCount()).isEqualTo(1);
            slow.countDown();
            bench.settle();
            assertThat(bench.desk.herd()).isEmpty(); // the undo asked for meanwhile took the herd back
        }
    }

    @Test
    void droppedFilesGoToThePageThatBringsRecordingsIn() throws Exception {
        try (Bench bench = bench()) {
            bench.firstStart();
            Fx.run(() -> bench.desk.takeFiles(List.of(Path.of("exit.mp4"))));
            assertThat(bench.page(PageId.SCORE).told).contains("files [exit.mp4]");
        }
    }

    @Test
    void aTableOfCowsComesInAsOneStepAndABadOneChangesNothing() throws Exception {
        Path good = Files.writeString(
                folder.resolve("cows.csv"), "cow;name;calving\n064;Bramble;2026-01-03\n412;Thimble;\n");
        Path bad = Files.writeString(folder.resolve("bad.csv"), "cow;name;calving\n077;Gusset;3rd of May\n");
        try (Bench bench = bench()) {
            bench.firstStart();
            Fx.run(() -> bench.desk.importCows(bad));
            bench.settle();
            VBox errors = bench.find(VBox.class, "errors");
            assertThat((String) errors.getChildren().get(0).getUserData())
                    .contains("bad.csv")
                    .contains("3rd of May");
            assertThat(bench.desk.now().cows()).isZero();
            Fx.run(() -> bench.desk.importCows(good));
            bench.settle();
            assertThat(bench.desk.now().cows()).isEqualTo(2);
            Fx.run(() -> bench.desk.findCow("412"));
            bench.settle();
            assertThat(bench.page(PageId.TRIM).told).anyMatch(told -> told.startsWith("cow "));
            bench.press(KeyCode.Z, "ctrl");
            assertThat(bench.desk.now().cows()).isZero();
        }
    }

    @Test
    void aFailedStepIsOneSentenceAndNothingIsWritten() throws Exception {
        try (Bench bench = bench()) {
            bench.firstStart();
            Fx.run(() -> bench.desk.step(
                    "Nothing",
                    book -> {
                        throw new IllegalStateException("thought impossible");
                    },
                    done -> {}));
            bench.settle();
            VBox errors = bench.find(VBox.class, "errors");
            assertThat((String) errors.getChildren().get(0).getUserData())
                    .contains("IllegalStateException")
                    .doesNotContain("\n");
            assertThat(Files.readString(folder.resolve("log/desk.log"))).contains("thought impossible");
            assertThat(Fx.get(() -> bench.find(Label.class, "undo-words").getText()))
                    .startsWith("Herd Nine Oaks:");
        }
    }
}
