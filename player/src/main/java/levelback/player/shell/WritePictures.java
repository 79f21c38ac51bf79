package levelback.player.shell;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.stream.Stream;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.scene.image.WritableImage;
import levelback.player.desk.Desk;
import levelback.player.desk.PageId;
import levelback.player.work.CannotBeDone;
import levelback.store.book.Book;
import levelback.store.book.Books;
import levelback.store.herd.CowId;
import levelback.store.herd.Herd;
import levelback.store.herd.Person;
import levelback.store.herd.PersonId;
import levelback.store.herd.Score;
import levelback.store.herd.Visit;
import levelback.store.lane.Pass;

/**
 * Renders every page to PNG files named {@code PAGE-STATE.png}: light, dark, 1280x720, chute (Trim), empty, working, error.
 * Needs no screen and shows no window. Nothing is entered in the book.
 */
public final class WritePictures {

    private static final long SETTLED_AFTER_MS = 450;
    private static final long GIVE_UP_AFTER_MS = 12_000;

    private final Path book;

    /** @param book the book the pages are shown on; it must be there */
    public WritePictures(Path book) {
        this.book = book;
    }

    /**
     * Writes the pictures. Blocks; may not be called on the JavaFX thread.
     *
     * @param out the folder, made where it is not there
     * @param written told of each file as it is written
     * @return the files written
     * @throws CannotBeDone with one sentence where system libraries are missing or the folder may not be written
     */
    public List<Path> write(Path out, Consumer<Path> written) {
        // A broken book is said before a toolkit is started for it.
        Subjects subjects;
        try (Book opened = Books.open(book)) {
            subjects = Subjects.of(opened);
        }
        Toolkit.start(false);
        List<Path> files = new ArrayList<>();
        try {
            Files.createDirectories(out);
            Path scratch = Files.createTempDirectory("levelback-tour");
            try {
                for (boolean dark : new boolean[] {false, true}) {
                    files.addAll(onBook(scratch, out, subjects, dark, written));
                }
                files.addAll(onEmptyBook(scratch, out, subjects, written));
            } finally {
                clear(scratch);
            }
        } catch (IOException e) {
            throw new CannotBeDone("The pictures could not be written to " + out + ": " + e.getMessage() + ".", e);
        }
        return files;
    }

    /**
     * What is worth showing in a book.
     *
     * @param pass the lamest pass of the newest visit that has recordings
     * @param cow the cow last at the chute, or the lamest
     */
    private record Subjects(Optional<Herd> herd, Optional<Visit> visit, Optional<Pass> pass, Optional<CowId> cow) {
        static Subjects of(Book book) {
            Optional<Herd> herd = book.herd().herds().stream().findFirst();
            if (herd.isEmpty()) {
                return new Subjects(herd, Optional.empty(), Optional.empty(), Optional.empty());
            }
            List<Visit> visits = new ArrayList<>(book.herd().visits(herd.get().id()));
            java.util.Collections.reverse(visits);
            Optional<Visit> visit = visits.stream()
                    .filter(one -> !book.lane().passesOf(one.id()).isEmpty())
                    .findFirst()
                    .or(() -> visits.stream().findFirst());
            Optional<Pass> pass = visit.flatMap(one -> lamest(book, one));
            Optional<CowId> cow = pass.flatMap(Pass::cow)
                    .or(
                            () -> book
                                    .trim()
                                    .cardsOf(herd.get().id(), LocalDate.of(1900, 1, 1), LocalDate.of(9999, 1, 1))
                                    .stream()
                                    .reduce((earlier, later) -> later)
                                    .map(card -> card.lift().cow()));
            return new Subjects(herd, visit, pass, cow);
        }

        private static Optional<Pass> lamest(Book book, Visit visit) {
            List<Pass> passes = book.lane().passesOf(visit.id());
            List<Score> scores = book.herd().scoresOf(visit.id());
            Comparator<Pass> byLevel = Comparator.comparingDouble(pass -> scores.stream()
                    .filter(score -> pass.cow().filter(score.cow()::equals).isPresent())
                    .mapToDouble(Score::level)
                    .max()
                    .orElse(-1));
            return passes.stream().max(byLevel);
        }
    }

    private List<Path> onBook(Path scratch, Path out, Subjects subjects, boolean dark, Consumer<Path> written)
            throws IOException {
        List<Path> files = new ArrayList<>();
        try (Shown shown = new Shown(scratch, book, dark)) {
            subjects.visit().ifPresent(visit -> shown.run(() -> shown.desk.show(visit)));
            shown.settle();
            for (PageId page : DeskWindow.pages().keySet()) {
                shown.size(1440, 900);
                shown.run(() -> go(shown.desk, page, subjects));
                if (dark) {
                    files.add(shown.write(out, page, "dark", written));
                    continue;
                }
                files.add(shown.write(out, page, "light", written));
                shown.size(1280, 720);
                files.add(shown.write(out, page, "1280x720", written));
                shown.size(1440, 900);
                if (page == PageId.TRIM) {
                    shown.run(() -> shown.desk.chuteMode(true));
                    files.add(shown.write(out, page, "chute", written));
                    shown.run(() -> shown.desk.chuteMode(false));
                    shown.run(() -> go(shown.desk, page, subjects));
                }
                Desk.Job job = shown.get(() -> shown.desk.job(Words.of("tour.job"), () -> {}));
                job.progress(0.42);
                files.add(shown.write(out, page, "working", written));
                job.close();
                shown.run(() -> provoke(shown.desk, page, scratch));
                files.add(shown.write(out, page, "error", written));
                shown.run(shown.desk::escape);
            }
        }
        return files;
    }

    private static void go(DeskShell desk, PageId page, Subjects subjects) {
        if (page == PageId.SCORE && subjects.pass().isPresent()) {
            Pass pass = subjects.pass().get();
            desk.openPass(pass.id(), (pass.fromFrame() + pass.toFrame()) / 2);
        } else if (page == PageId.TRIM && subjects.cow().isPresent()) {
            desk.openCowOnTrim(subjects.cow().get());
        } else {
            desk.go(page);
        }
    }

    /** Does what goes wrong in practice, so that the picture shows what a person would see. */
    private static void provoke(DeskShell desk, PageId page, Path scratch) {
        try {
            Path text = Files.writeString(
                    scratch.resolve(page == PageId.SCORE ? "exit-2.mp4" : "older.levelback"),
                    "These are words and no recording. ".repeat(200),
                    StandardCharsets.UTF_8);
            if (page == PageId.SCORE) {
                desk.takeFiles(List.of(text));
            } else {
                desk.openBook(text, false);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<Path> onEmptyBook(Path scratch, Path out, Subjects subjects, Consumer<Path> written)
            throws IOException {
        Path empty = scratch.resolve("empty.levelback");
        try (Book fresh = Books.create(empty)) {
            Person person = new Person(PersonId.fresh(), "A", "A");
            fresh.step("A", "Signed on", open -> {
                open.herd().put(person);
                subjects.herd().ifPresent(open.herd()::put);
                return true;
            });
        }
        List<Path> files = new ArrayList<>();
        try (Shown shown = new Shown(scratch, empty, false)) {
            for (PageId page : DeskWindow.pages().keySet()) {
                shown.run(() -> shown.desk.go(page));
                files.add(shown.write(out, page, "empty", written));
            }
        }
        return files;
    }

    private static void clear(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path one : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(one);
            }
        }
    }

    /** A desk in a scene without a window. */
    private static final class Shown implements AutoCloseable {
        private final DeskShell desk;
        private final Scene scene;

        Shown(Path scratch, Path book, boolean dark) {
            Settings settings = Settings.none().with(Settings.THEME, dark ? "dark" : "light");
            desk = get(() -> new DeskShell(
                    DeskWindow.pages(), scratch.resolve("settings.json"), settings, scratch, DeskWishes.NONE));
            scene = get(() -> DeskWindow.dress(desk, 1440, 900));
            run(() -> desk.openBook(book, false));
            settle();
            run(() -> {
                if (desk.asking() && !desk.now().people().isEmpty()) {
                    desk.signOn(desk.now().people().get(0));
                }
            });
            settle();
        }

        void size(double wide, double high) {
            run(() -> {
                desk.root().resize(wide, high);
                desk.root().setPrefSize(wide, high);
                desk.root().setMinSize(wide, high);
                desk.root().setMaxSize(wide, high);
            });
        }

        Path write(Path out, PageId page, String state, Consumer<Path> written) throws IOException {
            WritableImage image = settle();
            Path file = out.resolve(page.name().toLowerCase(Locale.ROOT) + "-" + state + ".png");
            Files.write(file, Snapshot.png(image));
            written.accept(file);
            return file;
        }

        /** Waits until the picture has stopped changing, and gives it. */
        WritableImage settle() {
            long startedNs = System.nanoTime();
            long stillSinceNs = startedNs;
            WritableImage last = picture();
            while ((System.nanoTime() - stillSinceNs) / 1_000_000 < SETTLED_AFTER_MS
                    && (System.nanoTime() - startedNs) / 1_000_000 < GIVE_UP_AFTER_MS) {
                CompletableFuture<Boolean> idle = new CompletableFuture<>();
                desk.background().execute(() -> idle.complete(true));
                await(idle);
                try {
                    TimeUnit.MILLISECONDS.sleep(60);
                } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                    return last;
                }
                WritableImage next = picture();
                if (!same(last, next)) {
                    stillSinceNs = System.nanoTime();
                }
                last = next;
            }
            return last;
        }

        private WritableImage picture() {
            return get(() -> {
                double wide = desk.root().getMinWidth() > 0 ? desk.root().getMinWidth() : 1440;
                double high = desk.root().getMinHeight() > 0 ? desk.root().getMinHeight() : 900;
                desk.root().applyCss();
                desk.root().resize(wide, high);
                desk.root().layout();
                return desk.root().snapshot(null, new WritableImage((int) wide, (int) high));
            });
        }

        private static boolean same(WritableImage one, WritableImage other) {
            int wide = (int) one.getWidth();
            int high = (int) one.getHeight();
            if (wide != (int) other.getWidth() || high != (int) other.getHeight()) {
                return false;
            }
            int[] a = new int[wide];
            int[] b = new int[wide];
            for (int y = 0; y < high; y++) {
                one.getPixelReader()
                        .getPixels(0, y, wide, 1, javafx.scene.image.PixelFormat.getIntArgbInstance(), a, 0, wide);
                other.getPixelReader()
                        .getPixels(0, y, wide, 1, javafx.scene.image.PixelFormat.getIntArgbInstance(), b, 0, wide);
                if (!java.util.Arrays.equals(a, b)) {
                    return false;
                }
            }
            return true;
        }

        void run(Runnable work) {
            get(() -> {
                work.run();
                return true;
            });
        }

        <T> T get(Supplier<T> work) {
            CompletableFuture<T> answer = new CompletableFuture<>();
            Platform.runLater(() -> {
                try {
                    answer.complete(work.get());
                } catch (RuntimeException | Error e) {
                    answer.completeExceptionally(e);
                }
            });
            return await(answer);
        }

        private static <T> T await(CompletableFuture<T> answer) {
            try {
                return answer.get(60, TimeUnit.SECONDS);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new CannotBeDone("The pictures were stopped before they were all written.", e);
            } catch (TimeoutException e) {
                throw new CannotBeDone("A page did not come to rest within a minute; no picture was made of it.", e);
            } catch (ExecutionException e) {
                if (e.getCause() instanceof RuntimeException failure) {
                    throw failure;
                }
                throw new IllegalStateException(e.getCause());
            }
        }

        @Override
        public void close() {
            run(() -> scene.setRoot(new javafx.scene.Group()));
            desk.close();
        }
    }
}
