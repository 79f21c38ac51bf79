package levelback.clips.drawn;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import levelback.clips.drawn.herd.FilmPlans;
import levelback.clips.drawn.herd.HerdPlan;
import levelback.clips.drawn.paint.FramePainter;

/**
 * How much longer drawing a film of the demo while encoding it takes than drawing its frames alone, in turn in one run. By
 * hand: {@code java -cp ... levelback.clips.drawn.DrawBench}.
 */
public final class DrawBench {

    private static final int ROUNDS = 3;

    private DrawBench() {}

    /** Runs the pairs and prints them. */
    public static void main(String[] args) throws Exception {
        HerdPlan herd = HerdPlan.of(1);
        RecordingPlan plan =
                FilmPlans.of(herd, herd.visits().get(herd.visits().size() - 1)).get(0);
        Path folder = Files.createTempDirectory("levelback-draw-bench");
        for (int round = 0; round < ROUNDS; round++) {
            double aloneS = paintAlone(plan);
            long from = System.nanoTime();
            DrawRecording.draw(plan, folder, done -> {}, () -> false);
            double filmS = (System.nanoTime() - from) / 1e9;
            System.out.printf(
                    "%d frames: drawn alone %.1f s, drawn and encoded with truth %.1f s, ratio %.2f%n",
                    plan.frameCount(), aloneS, filmS, filmS / aloneS);
        }
    }

    private static double paintAlone(RecordingPlan plan) throws Exception {
        int threads = Runtime.getRuntime().availableProcessors();
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        long from = System.nanoTime();
        try (FramePainter painter = new FramePainter(plan)) {
            List<Callable<Integer>> shares = new ArrayList<>();
            for (int share = 0; share < threads; share++) {
                int first = share;
                shares.add(() -> {
                    int pixels = 0;
                    try (FramePainter.Easel easel = painter.easel()) {
                        for (int frame = first; frame < plan.frameCount(); frame += threads) {
                            pixels += painter.paint(frame, easel).size();
                        }
                    }
                    return pixels;
                });
            }
            for (var done : pool.invokeAll(shares)) {
                done.get();
            }
        } finally {
            pool.shutdown();
        }
        return (System.nanoTime() - from) / 1e9;
    }
}
