package levelback.player.work;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.DoubleAdder;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;
import levelback.clips.drawn.DrawRecording;
import levelback.clips.drawn.RecordingPlan;
import levelback.clips.drawn.herd.FilmPlans;
import levelback.clips.drawn.herd.HerdPlan;
import levelback.clips.drawn.herd.HerdTables;
import levelback.clips.drawn.herd.HerdTruth;
import levelback.clips.drawn.herd.HerdVisit;
import levelback.clips.drawn.truth.RecordingTruth;
import levelback.clips.open.Clip;
import levelback.clips.open.ClipException;
import levelback.store.book.Book;
import levelback.store.book.Books;

/**
 * Draws the demo herd and runs the whole loop on it: films and truth, the book filled by the desk's own steps, the proof,
 * the report. On a failure everything it made is taken away again.
 */
public final class DrawDemo {

    /** Herd of the demo; the same seed gives the same herd. */
    public static final long SEED = 1;

    /** How large a demo is drawn; the usual one, or a small one for tests. */
    record Size(int cows, int visits, int filmed, int truthHerds) {
        static final Size USUAL = new Size(60, 9, 16, HerdTruth.HERDS);
    }

    /** Draws one film, {@code NAME.mp4}, with its truth in a folder NAME; blocking, called from several threads. */
    interface Draughtsman {
        /**
         * @param films the folder of films
         * @param truths the folder of truths
         */
        RecordingTruth draw(
                RecordingPlan plan, Path films, Path truths, DoubleConsumer fractionDone, BooleanSupplier cancelled)
                throws ClipException, IOException;
    }

    /** Hears how far it is. Called from several threads. */
    public interface Progress {
        /**
         * @param stage the stage in words
         * @param fractionDone work done of the stage, in [0, 1]
         */
        void at(String stage, double fractionDone);
    }

    /** How long a stage took. */
    public record Stage(String name, double seconds) {}

    /**
     * What was made.
     *
     * @param folder the folder it lies in
     * @param book the book, filled and closed
     * @param films the recordings
     * @param frames frames drawn
     * @param truth what the scores of such a herd are truly worth
     * @param report the report and its figures
     * @param stages the time of each stage
     */
    public record Demo(
            Path folder,
            Path book,
            List<Path> films,
            long frames,
            HerdTruth truth,
            WriteReport.Written report,
            List<Stage> stages) {
        public Demo {
            films = List.copyOf(films);
            stages = List.copyOf(stages);
        }

        /** Writes the pictures of the pages into the list of what the demo made. */
        public void listTour() throws IOException {
            DemoFolder.reopen(folder).announceAll("tour");
        }
    }

    private final Size size;
    private final Draughtsman draughtsman;
    private final String version;
    private final List<Stage> stages = new ArrayList<>();

    /** @param version Levelback's version and build, for the report */
    public DrawDemo(String version) {
        this(Size.USUAL, version);
    }

    DrawDemo(Size size, String version) {
        this(
                size,
                (plan, films, truths, fractionDone, cancelled) -> DrawRecording.draw(
                                plan, films, truths, fractionDone, cancelled)
                        .truth(),
                version);
    }

    DrawDemo(Size size, Draughtsman draughtsman, String version) {
        this.size = size;
        this.draughtsman = draughtsman;
        this.version = version;
    }

    /**
     * Draws into a folder.
     *
     * @param replace whether to take away first what an earlier demo made there
     * @throws BadInput with one sentence if the folder holds anything and may not be replaced
     */
    public Demo draw(Path folder, boolean replace, Progress progress) throws ClipException, IOException {
        DemoFolder demo = DemoFolder.open(folder, replace);
        boolean done = false;
        try {
            Demo made = draw(demo, progress);
            done = true;
            return made;
        } finally {
            if (!done) {
                demo.clear();
            }
        }
    }

    private Demo draw(DemoFolder demo, Progress progress) throws ClipException, IOException {
        long start = System.nanoTime();
        HerdPlan plan = HerdPlan.of(SEED, size.cows(), size.visits(), size.filmed());
        HerdTruth truth = HerdTruth.of(plan, size.truthHerds());
        Files.writeString(demo.file("truth/truth.json"), truth.json(plan), StandardCharsets.UTF_8);
        Files.writeString(demo.file("truth/scores.csv"), HerdTables.scores(plan), StandardCharsets.UTF_8);
        Files.writeString(demo.file("truth/trims.csv"), HerdTables.trims(plan), StandardCharsets.UTF_8);
        start = lap("herd and truth", start);

        List<Drawing> drawings = films(demo, plan, progress);
        start = lap("drawing and encoding", start);

        for (String ending : List.of("", "-wal", "-shm")) {
            demo.announce("demo.levelback" + ending);
        }
        Path bookFile = demo.path().resolve("demo.levelback");
        WriteReport.Written report;
        try (Book book = Books.create(bookFile)) {
            fill(book, plan, drawings, progress);
            start = lap("filling the book", start);
            demo.announce("report.html");
            demo.announce("report.pdf");
            progress.at("report", 0);
            report = new WriteReport(book, version).write(demo.path(), Optional.empty(), Optional.empty());
            lap("proof and report", start);
        }
        return new Demo(
                demo.path(),
                bookFile,
                drawings.stream().map(Drawing::film).toList(),
                drawings.stream().mapToLong(d -> d.truth().frameCount()).sum(),
                truth,
                report,
                stages);
    }

    private record Drawing(HerdVisit visit, RecordingPlan plan, Path film, RecordingTruth truth) {}

    private List<Drawing> films(DemoFolder demo, HerdPlan plan, Progress progress) throws ClipException, IOException {
        List<RecordingPlan> planned = new ArrayList<>();
        List<HerdVisit> visits = new ArrayList<>();
        for (HerdVisit visit : plan.visits()) {
            for (RecordingPlan film : FilmPlans.of(plan, visit)) {
                planned.add(film);
                visits.add(visit);
            }
        }
        double frames = planned.stream().mapToInt(RecordingPlan::frameCount).sum();
        DoubleAdder drawn = new DoubleAdder();
        Stop stop = new Stop();
        // Two at a time: while one waits for its encoder, the other paints.
        ExecutorService pool = Executors.newFixedThreadPool(2, work -> {
            Thread thread = new Thread(work, "levelback-film");
            thread.setDaemon(true);
            return thread;
        });
        try {
            Files.createDirectories(demo.path().resolve("recordings"));
            List<Future<Drawing>> running = new ArrayList<>();
            for (int i = 0; i < planned.size(); i++) {
                RecordingPlan film = planned.get(i);
                HerdVisit visit = visits.get(i);
                running.add(pool.submit(() -> draw(demo, film, visit, stop, drawn, frames, progress)));
            }
            List<Drawing> drawings = new ArrayList<>();
            for (Future<Drawing> each : running) {
                drawings.add(wait(each, stop));
            }
            return drawings;
        } finally {
            stop.asked = true;
            pool.shutdown();
            awaitEnd(pool);
        }
    }

    private Drawing draw(
            DemoFolder demo,
            RecordingPlan film,
            HerdVisit visit,
            Stop stop,
            DoubleAdder drawn,
            double frames,
            Progress progress)
            throws ClipException, IOException {
        Path file = demo.file("recordings/" + film.name() + ".mp4");
        demo.announce("recordings/" + film.name() + ".part.mp4");
        double[] before = {0};
        try {
            RecordingTruth truth = draughtsman.draw(
                    film,
                    demo.path().resolve("recordings"),
                    demo.path().resolve("truth"),
                    fraction -> {
                        drawn.add((fraction - before[0]) * film.frameCount());
                        before[0] = fraction;
                        progress.at("drawing", drawn.sum() / frames);
                    },
                    () -> stop.asked);
            return new Drawing(visit, film, file, truth);
        } catch (ClipException | IOException | RuntimeException | Error failure) {
            stop.because(failure);
            throw failure;
        } finally {
            demo.announceAll("truth/" + film.name());
        }
    }

    private static void awaitEnd(ExecutorService pool) {
        try {
            if (!pool.awaitTermination(60, java.util.concurrent.TimeUnit.SECONDS)) {
                pool.shutdownNow();
            }
        } catch (InterruptedException stop) {
            pool.shutdownNow();
            Thread.currentThread().interrupt();
        }
    }

    /** The films stop together; the first failure is the one to tell, not that the others were stopped for it. */
    private static final class Stop {
        private volatile boolean asked;
        private volatile Optional<Throwable> first = Optional.empty();

        synchronized void because(Throwable failure) {
            if (first.isEmpty() && !asked) {
                first = Optional.of(failure);
            }
            asked = true;
        }
    }

    private static Drawing wait(Future<Drawing> drawing, Stop stop) throws ClipException, IOException {
        try {
            return drawing.get();
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new CannotBeDone("The demo was stopped; what it had made was taken away.", interrupted);
        } catch (ExecutionException failure) {
            Throwable cause = stop.first.orElse(failure);
            if (cause instanceof ClipException clip) {
                throw clip;
            }
            if (cause instanceof IOException io) {
                throw io;
            }
            if (cause instanceof RuntimeException own) {
                throw own;
            }
            if (cause instanceof Error error) {
                throw error;
            }
            throw new IllegalStateException(cause);
        }
    }

    private void fill(Book book, HerdPlan plan, List<Drawing> drawings, Progress progress) throws ClipException {
        FillDemoBook fill = new FillDemoBook(book, plan);
        fill.people();
        for (HerdVisit visit : plan.visits()) {
            List<FillDemoBook.Film> films = new ArrayList<>();
            for (Drawing drawing : drawings) {
                if (drawing.visit().equals(visit)) {
                    // Read like any file that a user drops in; nothing is taken from the draughtsman's own memory.
                    films.add(new FillDemoBook.Film(
                            drawing.plan(), drawing.truth(), Clip.open(drawing.film(), () -> false)));
                }
            }
            fill.visit(visit, films);
            progress.at(
                    "filling the book", (double) visit.ordinal() / plan.visits().size());
        }
    }

    private long lap(String name, long start) {
        long now = System.nanoTime();
        stages.add(new Stage(name, (now - start) / 1e9));
        return now;
    }
}
