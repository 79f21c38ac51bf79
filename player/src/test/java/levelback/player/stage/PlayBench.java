package levelback.player.stage;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.stage.Stage;
import levelback.clips.decode.FrameReader;
import levelback.clips.open.Clip;

/**
 * Plays 10 s of a recording at its own pace in a window and says what was shown, what was not, and what each frame costs in
 * processor time: decoding, conversion, copying to the screen's picture, rendering. Run it under Xvfb with
 * {@code -Dprism.order=sw}: {@code PlayBench FILE [light steps]}.
 */
final class PlayBench {

    private static final double MILLIS = 1e6;
    private static final int FRAMES = 250;

    private PlayBench() {}

    public static void main(String[] args) throws Exception {
        Clip clip = Clip.open(Path.of(args[0]), 0, () -> false);
        int frames = Math.min(FRAMES, clip.index().frames().size());
        int light = args.length > 1 ? Integer.parseInt(args[1]) : 0;
        alone(clip, frames);
        CountDownLatch up = new CountDownLatch(1);
        Platform.startup(up::countDown);
        up.await();
        CountDownLatch done = new CountDownLatch(1);
        AtomicInteger shown = new AtomicInteger();
        AtomicLong missed = new AtomicLong();
        AtomicLong begun = new AtomicLong();
        AtomicLong took = new AtomicLong();
        Map<String, Long> before = new TreeMap<>();
        Platform.runLater(() -> {
            PictureView view = new PictureView();
            PicturePlayer player = new PicturePlayer(view);
            view.setTone(new Tone(light, 0));
            Stage stage = new Stage();
            stage.setScene(new Scene(view, 904, 466));
            stage.show();
            player.open(clip, 0, frames - 1, 0);
            player.setOnFrame(frame -> {
                if (frame == 0 && begun.get() == 0) {
                    before.putAll(cpu());
                    begun.set(System.nanoTime());
                    view.setOnShown(shown::incrementAndGet);
                    player.walk();
                }
            });
            player.setOnStand(() -> {
                took.set(System.nanoTime() - begun.get());
                missed.set(player.notShown());
                Map<String, Long> after = cpu();
                after.forEach((name, nanos) -> {
                    double ms = (nanos - before.getOrDefault(name, 0L)) / MILLIS / frames;
                    if (ms > 0.05) {
                        System.out.printf("%-40s %.2f ms of processor time a frame%n", name, ms);
                    }
                });
                done.countDown();
            });
        });
        done.await();
        System.out.printf(
                "%d frames in %.2f s: %d shown, %d not in time%n", frames, took.get() / 1e9, shown.get(), missed.get());
        System.exit(0);
    }

    /** Decoding and conversion by themselves, one after the other. */
    private static void alone(Clip clip, int frames) throws Exception {
        int stride = 4 * clip.facts().width();
        ByteBuffer bgra = ByteBuffer.allocateDirect(stride * clip.facts().height());
        ByteBuffer screen = ByteBuffer.allocateDirect(bgra.capacity());
        long decode = 0;
        long convert = 0;
        long copy = 0;
        try (FrameReader reader = clip.reader()) {
            for (int frame = 0; frame < frames; frame++) {
                long a = System.nanoTime();
                reader.decode(frame);
                long b = System.nanoTime();
                reader.readBgra(frame, bgra, stride);
                long c = System.nanoTime();
                screen.clear().put(bgra.clear());
                decode += b - a;
                convert += c - b;
                copy += System.nanoTime() - c;
            }
        }
        System.out.printf(
                "alone, by the clock: decode %.2f ms, convert %.2f ms, copy %.2f ms a frame%n",
                decode / MILLIS / frames, convert / MILLIS / frames, copy / MILLIS / frames);
    }

    private static Map<String, Long> cpu() {
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        Map<String, Long> nanos = new TreeMap<>();
        long java = 0;
        for (long id : threads.getAllThreadIds()) {
            var info = threads.getThreadInfo(id);
            if (info != null) {
                long used = threads.getThreadCpuTime(id);
                java += used;
                nanos.merge(info.getThreadName(), used, Long::sum);
            }
        }
        if (ManagementFactory.getOperatingSystemMXBean() instanceof com.sun.management.OperatingSystemMXBean os) {
            nanos.put("outside Java threads (decoder, compiler, GC)", os.getProcessCpuTime() - java);
        }
        return nanos;
    }
}
