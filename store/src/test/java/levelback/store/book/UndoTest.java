package levelback.store.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import levelback.scoring.foot.FootAction;
import levelback.scoring.value.Leg;
import levelback.store.herd.Cow;
import levelback.store.herd.Herd;
import levelback.store.herd.Person;
import levelback.store.herd.Score;
import levelback.store.herd.Tag;
import levelback.store.herd.Visit;
import levelback.store.lane.Pass;
import levelback.store.lane.Recording;
import levelback.store.trim.Finding;
import levelback.store.trim.Foot;
import levelback.store.trim.Lift;
import levelback.store.trim.MedicineNote;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class UndoTest {

    @TempDir
    Path folder;

    /** A book with something of everything in it, and random work on it. */
    private static final class Work {
        private final Book book;
        private final Herd herd = Sample.herd("Otter Hill");
        private final Person anna = Sample.person("Anna");
        private final List<Cow> cows = List.of(Sample.cow(herd.id(), "1"), Sample.cow(herd.id(), "2"));
        private final Visit visit;
        private final Pass pass;
        private final Tag tag;
        private final Lift lift;
        private final Foot foot;
        private final Finding finding;
        private int cards;

        Work(Book book) {
            this.book = book;
            book.herd().put(herd);
            book.herd().put(anna);
            cows.forEach(cow -> book.herd().put(cow, Sample.DAY));
            visit = book.herd().visitOn(herd.id(), Sample.DAY);
            Recording recording = Sample.recording(visit.id(), "a");
            book.lane().put(recording);
            pass = Sample.pass(recording, 1, 50, Optional.of(cows.get(0).id()));
            book.lane().put(pass);
            tag = Sample.tag(pass, anna, 20);
            lift = Sample.lift(cows.get(0), Sample.DAY, anna);
            book.trim().put(lift);
            foot = Sample.foot(lift, Leg.LH);
            book.trim().put(foot);
            finding = Sample.finding(foot, "SU");
        }

        /** One step of each kind that pages make; {@code choice} says which. */
        void step(int choice) {
            int kind = choice % 16;
            int detail = choice / 16;
            book.step("Anna", "Step " + choice, b -> {
                switch (kind) {
                    case 0, 1, 2 -> b.herd().put(Sample.score(cows.get(detail % 2), visit, anna, detail % 4));
                    case 3 ->
                        b.herd()
                                .put(Sample.score(
                                        cows.get(0).id(), visit.id(), anna.id(), Optional.of(Leg.LF), detail % 4));
                    case 4 -> b.herd().put(tag);
                    case 5 -> b.herd().takeOff(tag.id());
                    case 6 -> b.trim().put(finding);
                    case 7 -> b.trim().takeOff(finding.id());
                    case 8 ->
                        b.trim()
                                .putActions(
                                        foot.id(),
                                        detail % 2 == 0 ? Set.of(FootAction.BLOCK_INNER) : Set.of(FootAction.TRIMMED));
                    case 9 -> b.trim().putLookAgain(lift.id(), Optional.of(Sample.DAY.plusDays(detail + 1L)));
                    case 10 -> b.trim().putLookAgain(lift.id(), Optional.empty());
                    case 11 ->
                        b.trim().putMedicine(lift.id(), new MedicineNote("p" + detail, "", "", "", "", "", "", ""));
                    case 12 -> b.herd().visitOn(herd.id(), Sample.DAY.plusDays(detail));
                    case 13 -> b.lane().putRead(visit.id(), Sample.AT.plusSeconds(detail), "tag", "gate");
                    case 14 -> {
                        Lift more = Sample.lift(cows.get(1), Sample.DAY.plusDays(++cards), anna);
                        Foot hind = Sample.foot(more, Leg.RH);
                        b.trim().put(more);
                        b.trim().put(hind);
                        b.trim().put(Sample.finding(hind, "DD"));
                    }
                    default -> b.trim().putPhoto(foot.id(), Path.of("photo" + detail + ".jpg"));
                }
                return true;
            });
        }
    }

    @Property(tries = 25, seed = "20260314")
    void takingEverythingBackAndForthEndsWhereItWas(
            @ForAll @Size(min = 1, max = 25) List<@IntRange(min = 0, max = 160) Integer> choices) throws IOException {
        Path dir = Files.createTempDirectory("undo");
        Path file = dir.resolve("a.levelback");
        try (Book book = Books.create(file)) {
            Work work = new Work(book);
            List<String> states = new ArrayList<>();
            states.add(Dump.of(file));
            for (int choice : choices) {
                long before = book.revision();
                work.step(choice);
                boolean changed = book.revision() != before;
                if (changed) {
                    states.add(Dump.of(file));
                } else {
                    assertThat(Dump.of(file)).isEqualTo(states.get(states.size() - 1));
                }
            }
            for (int i = states.size() - 2; i >= 0; i--) {
                assertThat(book.undo("Anna")).isPresent();
                assertThat(Dump.of(file)).isEqualTo(states.get(i));
            }
            for (int i = 1; i < states.size(); i++) {
                assertThat(book.redo("Anna")).isPresent();
                assertThat(Dump.of(file)).isEqualTo(states.get(i));
            }
            assertThat(book.redo("Anna")).isEmpty();
            assertThat(book.check().problems()).isEmpty();
        }
        try (var files = Files.list(dir)) {
            for (Path left : files.toList()) {
                Files.delete(left);
            }
        }
        Files.delete(dir);
    }

    @Test
    void undoAndRedoOutliveARestart() {
        Path file = folder.resolve("a.levelback");
        Work work;
        String before;
        String after;
        try (Book book = Books.create(file)) {
            work = new Work(book);
            before = Dump.of(file);
            work.step(4);
            work.step(0);
            after = Dump.of(file);
        }
        try (Book book = Books.open(file)) {
            assertThat(book.nextUndo()).contains("Step 0");
            assertThat(book.undo("Ben")).contains("Step 0");
            assertThat(book.nextRedo()).contains("Step 0");
        }
        try (Book book = Books.open(file)) {
            assertThat(book.undo("Ben")).contains("Step 4");
            assertThat(Dump.of(file)).isEqualTo(before);
            assertThat(book.nextRedo()).contains("Step 4");
        }
        try (Book book = Books.open(file)) {
            assertThat(book.redo("Ben")).contains("Step 4");
            assertThat(book.redo("Ben")).contains("Step 0");
            assertThat(Dump.of(file)).isEqualTo(after);
        }
    }

    @Test
    void whatWasUndoneBeforeANewStepIsGoneForGoodButStaysInTheHistory() {
        Path file = folder.resolve("a.levelback");
        try (Book book = Books.create(file)) {
            Work work = new Work(book);
            work.step(4);
            work.step(0);
            book.undo("Anna");
            work.step(16);
            assertThat(book.nextRedo()).isEmpty();
            book.undo("Anna");
            assertThat(book.nextRedo()).contains("Step 16");
            book.undo("Anna");
            assertThat(book.redo("Anna")).contains("Step 4");
            assertThat(book.redo("Anna")).contains("Step 16");
            assertThat(book.redo("Anna")).isEmpty();
            assertThat(book.changes(Optional.empty(), 500))
                    .extracting(Change::step)
                    .contains("Step 0", "Undo: Step 0", "Step 16", "Redo: Step 16");
        }
    }

    @Test
    void undoAddsToTheHistoryAndSaysWho() {
        Path file = folder.resolve("a.levelback");
        try (Book book = Books.create(file)) {
            Work work = new Work(book);
            int before = book.changes(Optional.empty(), 1000).size();
            work.step(4);
            book.undo("Ben");
            List<Change> changes = book.changes(Optional.empty(), 1000);
            assertThat(changes).hasSize(before + 2);
            assertThat(changes.get(0).by()).isEqualTo("Ben");
            assertThat(changes.get(0).step()).isEqualTo("Undo: Step 4");
            assertThat(changes.get(1).by()).isEqualTo("Anna");
            assertThat(changes.get(1).from()).isEmpty();
        }
    }

    @Test
    void aStepIsAllOrNothing() {
        Path file = folder.resolve("a.levelback");
        try (Book book = Books.create(file)) {
            Work work = new Work(book);
            String before = Dump.of(file);
            long revision = book.revision();
            assertThatThrownBy(() -> book.step("Anna", "Half", b -> {
                        b.herd().put(work.tag);
                        throw new IllegalStateException("in the middle");
                    }))
                    .isInstanceOf(IllegalStateException.class)
                    .hasMessage("in the middle");
            assertThat(Dump.of(file)).isEqualTo(before);
            assertThat(book.revision()).isEqualTo(revision);
        }
    }

    @Test
    void aStepSeesItsOwnWritesAndOthersDoNot() throws Exception {
        Path file = folder.resolve("a.levelback");
        try (Book book = Books.create(file)) {
            Work work = new Work(book);
            ExecutorService other = Executors.newSingleThreadExecutor();
            try {
                book.step("Anna", "Look", b -> {
                    b.herd().put(work.tag);
                    assertThat(b.herd().tagsOf(work.pass.id())).containsExactly(work.tag);
                    Future<List<Tag>> outside = other.submit(() -> book.herd().tagsOf(work.pass.id()));
                    try {
                        assertThat(outside.get()).isEmpty();
                    } catch (InterruptedException | ExecutionException e) {
                        throw new IllegalStateException(e);
                    }
                    return true;
                });
                assertThat(book.herd().tagsOf(work.pass.id())).containsExactly(work.tag);
            } finally {
                other.shutdownNow();
            }
        }
    }

    @Test
    void aStepThatChangesNothingIsNoStep() {
        try (Book book = Books.create(folder.resolve("a.levelback"))) {
            Work work = new Work(book);
            work.step(4);
            long revision = book.revision();
            work.step(4);
            assertThat(book.revision()).isEqualTo(revision);
            assertThat(book.undo("Anna")).contains("Step 4");
        }
    }

    @Test
    void writesFromManyThreadsAllArrive() throws Exception {
        try (Book book = Books.create(folder.resolve("a.levelback"))) {
            Work work = new Work(book);
            ExecutorService many = Executors.newFixedThreadPool(8);
            try {
                List<Future<Score>> scores = new ArrayList<>();
                for (int i = 0; i < 80; i++) {
                    Person scorer = Sample.person("Scorer " + i);
                    scores.add(many.submit(() -> {
                        book.herd().put(scorer);
                        book.herd().scoresOf(work.herd.id());
                        return book.herd().put(Sample.score(work.cows.get(1), work.visit, scorer, 2));
                    }));
                }
                for (Future<Score> score : scores) {
                    Score acknowledged = score.get();
                    assertThat(book.herd().scoresOf(work.visit.id())).contains(acknowledged);
                }
            } finally {
                many.shutdownNow();
            }
            assertThat(book.herd().scoresOf(work.visit.id())).hasSize(80);
        }
    }
}
