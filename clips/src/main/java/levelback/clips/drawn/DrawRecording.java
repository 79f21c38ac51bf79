package levelback.clips.drawn;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;
import levelback.clips.drawn.paint.FramePainter;
import levelback.clips.drawn.truth.RecordingTruth;
import levelback.clips.drawn.truth.TruthFiles;
import levelback.clips.write.FilmWriter;

/**
 * Draws a recording: frames are painted by several threads and encoded as they come, in order. The same plan gives the
 * same bytes, however many threads paint.
 */
public final class DrawRecording {
    private static final int FRAMES_AHEAD_PER_THREAD = 6;

    private DrawRecording() {}

    /**
     * What was drawn.
     *
     * @param film the film, {@code NAME.mp4}
     * @param truthFolder the truth beside it
     * @param truth the same as records
     */
    public record Drawn(Path film, Path truthFolder, RecordingTruth truth) {}

    /**
     * Draws a recording into {@code dir/NAME.mp4} and its truth into {@code truthDir/NAME/}.
     *
     * @param plan what to draw
     * @param dir folder of films; made if it is not there
     * @param truthDir folder of truths; made if it is not there
     * @param fractionDone told now and then, from 0 to 1, on the calling thread
     * @param cancelled polled
     * @throws IOException if a file cannot be written; nothing half-written is left
     * @throws CancellationException if cancelled; nothing half-written is left
     */
    public static Drawn draw(
            RecordingPlan plan, Path dir, Path truthDir, DoubleConsumer fractionDone, BooleanSupplier cancelled)
            throws IOException {
        Files.createDirectories(dir);
        Path film = dir.resolve(plan.name() + ".mp4");
        Path part = dir.resolve(plan.name() + ".part.mp4");
        int threads = Math.max(1, Math.min(8, Runtime.getRuntime().availableProcessors()));
        List<List<FramePainter.Shown>> shown = new ArrayList<>(plan.frameCount());
        RecordingTruth truth;
        try (FramePainter painter = new FramePainter(plan)) {
            paintAndEncode(plan, painter, part, threads, shown, fractionDone, cancelled);
            truth = WriteDownTruth.of(plan, painter.walkers(), shown);
        } catch (IOException | RuntimeException e) {
            Files.deleteIfExists(part);
            throw e;
        }
        Files.move(part, film, java.nio.file.StandardCopyOption.REPLACE_EXISTING);
        Path folder = truthDir.resolve(plan.name());
        TruthFiles.write(plan, truth, folder);
        return new Drawn(film, folder, truth);
    }

    /** Draws a recording into {@code dir/NAME.mp4} and its truth into {@code dir/NAME/}. */
    public static Drawn draw(RecordingPlan plan, Path dir, DoubleConsumer fractionDone, BooleanSupplier cancelled)
            throws IOException {
        return draw(plan, dir, dir, fractionDone, cancelled);
    }

    private record Painted(FramePainter.Easel easel, List<FramePainter.Shown> shown) {}

    private static void paintAndEncode(
            RecordingPlan plan,
            FramePainter painter,
            Path part,
            int threads,
            List<List<FramePainter.Shown>> shown,
            DoubleConsumer fractionDone,
            BooleanSupplier cancelled)
            throws IOException {
        CameraPlan camera = plan.camera();
        int frames = plan.frameCount();
        int ahead = Math.min(frames, threads * FRAMES_AHEAD_PER_THREAD);
        LinkedBlockingQueue<FramePainter.Easel> free = new LinkedBlockingQueue<>();
        List<FramePainter.Easel> easels = new ArrayList<>();
        for (int i = 0; i < ahead; i++) {
            easels.add(painter.easel());
        }
        free.addAll(easels);
        ExecutorService pool = Executors.newFixedThreadPool(threads, task -> {
            Thread thread = new Thread(task, "levelback-painter");
            thread.setDaemon(true);
            return thread;
        });
        Deque<Future<Painted>> waiting = new ArrayDeque<>();
        try (FilmWriter writer = new FilmWriter(
                part,
                FilmWriter.Kind.MPEG4_IN_MP4,
                camera.widthPx(),
                camera.heightPx(),
                plan.rate().numerator(),
                plan.rate().denominator(),
                plan.startedAt())) {
            int next = 0;
            for (int frame = 0; frame < frames; frame++) {
                if (cancelled.getAsBoolean()) {
                    throw new CancellationException("drawing was stopped");
                }
                while (next < frames && waiting.size() < ahead) {
                    int number = next++;
                    FramePainter.Easel easel = free.remove();
                    waiting.add(pool.submit(() -> new Painted(easel, painter.paint(number, easel))));
                }
                Painted painted = waiting.remove().get();
                writer.write(painted.easel().bgr());
                shown.add(painted.shown());
                free.add(painted.easel());
                if (frame % 10 == 0) {
                    fractionDone.accept((double) frame / frames);
                }
            }
            writer.finish();
            fractionDone.accept(1);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new CancellationException("drawing was stopped");
        } catch (ExecutionException e) {
            if (e.getCause() instanceof UncheckedIOException io) {
                throw io.getCause();
            }
            throw new IllegalStateException("a frame could not be painted", e.getCause());
        } finally {
            stop(pool);
            for (FramePainter.Easel easel : easels) {
                easel.close();
            }
        }
    }

    /** Waits for painters in the middle of a frame: their easels are native memory. */
    private static void stop(ExecutorService pool) {
        pool.shutdownNow();
        boolean interrupted = false;
        while (true) {
            try {
                if (pool.awaitTermination(1, java.util.concurrent.TimeUnit.MINUTES)) {
                    break;
                }
            } catch (InterruptedException e) {
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
