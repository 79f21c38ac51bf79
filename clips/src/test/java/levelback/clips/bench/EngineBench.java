package levelback.clips.bench;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import levelback.clips.decode.FrameReader;
import levelback.clips.decode.internal.PacketScan;
import levelback.clips.open.Clip;
import levelback.clips.open.IndexCache;

/**
 * The engine beside its peers in one run, in turn, wall and processor time: {@code ffmpeg -f framemd5} (the preset's own
 * release where it is given, else the system's), {@code ffprobe} listing packets, and a bare seek-and-decode in C
 * ({@code src/test/bench/bare.c}, made with {@code cc}). By hand:
 * {@code java -cp ... levelback.clips.bench.EngineBench FILM FFMPEG FFPROBE BARE ROUNDS}.
 */
public final class EngineBench {

    private static final int TARGETS = 10;
    private static final double MILLIS = 1e6;

    private record Cost(double wallMs, double cpuMs) {
        static Cost begin() {
            return new Cost(System.nanoTime() / MILLIS, processCpuMs());
        }

        Cost end() {
            return new Cost(System.nanoTime() / MILLIS - wallMs, processCpuMs() - cpuMs);
        }
    }

    /** Something that takes time. */
    @FunctionalInterface
    private interface Work {
        Cost run() throws Exception;
    }

    private static final int THREADS = Math.min(4, Runtime.getRuntime().availableProcessors());

    private EngineBench() {}

    private static double processCpuMs() {
        return ((OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean()).getProcessCpuTime() / MILLIS;
    }

    /** Measures and prints. */
    public static void main(String[] args) throws Exception {
        Path film = Path.of(args[0]);
        int rounds = Integer.parseInt(args[4]);
        Clip clip = Clip.open(film, 0, () -> false);
        List<Integer> targets = new ArrayList<>();
        Random draw = new Random(7);
        for (int i = 0; i < TARGETS; i++) {
            targets.add(draw.nextInt(clip.facts().frameCount()));
        }
        pairs(
                "index / ffprobe's packets",
                rounds,
                () -> scan(film),
                () -> child(List.of(
                        args[2],
                        "-v",
                        "quiet",
                        "-select_streams",
                        "v:0",
                        "-show_entries",
                        "packet=pts,dts,size,flags,pos",
                        "-of",
                        "csv",
                        film.toString())));
        pairs(
                "full decode with check sums / framemd5",
                rounds,
                () -> whole(film),
                () -> child(List.of(
                        args[1],
                        "-v",
                        "quiet",
                        "-noautorotate",
                        "-threads",
                        String.valueOf(THREADS),
                        "-i",
                        film.toString(),
                        "-map",
                        "0:v:0",
                        "-fps_mode",
                        "passthrough",
                        "-f",
                        "framemd5",
                        "-")));
        pairs("exact seeks / bare libavcodec", rounds, () -> seeks(clip, targets), () -> bare(args[3], clip, targets));
        first(film, clip);
        System.out.println(new StepBench(film, () -> false, (stage, done) -> {}).run());
    }

    private static void pairs(String what, int rounds, Work ours, Work peers) throws Exception {
        double[] wall = new double[rounds];
        double[] cpu = new double[rounds];
        ours.run(); // the first time is the compiler's
        for (int i = 0; i < rounds; i++) {
            Cost mine = ours.run();
            Cost theirs = peers.run();
            wall[i] = mine.wallMs() / theirs.wallMs();
            cpu[i] = mine.cpuMs() / theirs.cpuMs();
            System.out.printf(
                    Locale.ROOT,
                    "  %s: %.0f (cpu %.0f) against %.0f (cpu %.0f) ms%n",
                    what,
                    mine.wallMs(),
                    mine.cpuMs(),
                    theirs.wallMs(),
                    theirs.cpuMs());
        }
        java.util.Arrays.sort(wall);
        java.util.Arrays.sort(cpu);
        System.out.printf(
                Locale.ROOT,
                "%s: wall %.2f (%.2f to %.2f), cpu %.2f (%.2f to %.2f)%n",
                what,
                wall[rounds / 2],
                wall[0],
                wall[rounds - 1],
                cpu[rounds / 2],
                cpu[0],
                cpu[rounds - 1]);
    }

    private static Cost scan(Path film) throws Exception {
        Cost from = Cost.begin();
        PacketScan.packets(film, () -> false);
        return from.end();
    }

    private static Cost whole(Path film) throws Exception {
        Cost from = Cost.begin();
        Clip.open(film, Long.MAX_VALUE, () -> false);
        return from.end();
    }

    private static Cost seeks(Clip clip, List<Integer> targets) throws Exception {
        try (FrameReader reader = clip.reader(0)) {
            reader.decode(0);
            Cost from = Cost.begin();
            for (int frame : targets) {
                reader.decode(frame);
            }
            return from.end();
        }
    }

    private static Cost bare(String program, Clip clip, List<Integer> targets) throws Exception {
        List<String> command =
                new ArrayList<>(List.of(program, clip.facts().file().toString(), String.valueOf(THREADS)));
        for (int frame : targets) {
            command.add(String.valueOf(clip.index().frames().get(frame).pts().getAsLong()));
        }
        Process process = new ProcessBuilder(command).start();
        String[] said = new String(process.getInputStream().readAllBytes(), StandardCharsets.US_ASCII)
                .strip()
                .split(" ", -1);
        return new Cost(Double.parseDouble(said[0]), Double.parseDouble(said[1]));
    }

    /** A whole program, its processor time by the shell's account of it. */
    private static Cost child(List<String> command) throws Exception {
        List<String> timed = new ArrayList<>(List.of("sh", "-c", "\"$@\" > /dev/null; times", "sh"));
        timed.addAll(command);
        long from = System.nanoTime();
        Process process = new ProcessBuilder(timed).start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.US_ASCII);
        double wallMs = (System.nanoTime() - from) / MILLIS;
        // The second line is of the shell's children: user, then system time, as 0m1.234000s.
        Matcher times = Pattern.compile("(\\d+)m([\\d.]+)s")
                .matcher(said.lines().toList().get(1));
        double cpuMs = 0;
        while (times.find()) {
            cpuMs += 60_000 * Integer.parseInt(times.group(1)) + 1000 * Double.parseDouble(times.group(2));
        }
        return new Cost(wallMs, cpuMs);
    }

    /** From the wish for a known film until the first picture of its middle group stands in BGRA, without its seek. */
    private static void first(Path film, Clip clip) throws Exception {
        Path folder = Files.createTempDirectory("levelback-engine-bench");
        IndexCache known = new IndexCache(folder);
        Clip.open(film, 0, known, () -> false);
        ByteBuffer bgra = ByteBuffer.allocateDirect(
                4 * clip.facts().width() * clip.facts().height());
        int key = clip.facts().frameCount() / 2;
        while (key > 0 && !clip.index().frames().get(key).keyFrame()) {
            key--;
        }
        double[] all = new double[25];
        double[] seek = new double[all.length];
        for (int i = 0; i < all.length; i++) {
            Cost from = Cost.begin();
            try (FrameReader reader = Clip.open(film, 0, known, () -> false).readerOnShow(() -> false)) {
                reader.readBgra(key, bgra, 4 * clip.facts().width());
                all[i] = from.end().wallMs();
            }
            try (FrameReader reader = clip.reader(0)) {
                reader.decode(key > 0 ? 0 : clip.facts().frameCount() - 1);
                Cost fromSeek = Cost.begin();
                reader.decode(key);
                seek[i] = fromSeek.end().wallMs();
            }
        }
        java.util.Arrays.sort(all);
        java.util.Arrays.sort(seek);
        System.out.printf(
                Locale.ROOT,
                "first picture of a known film: median %.1f ms, least %.1f; one seek to its key frame: %.1f, least %.1f%n",
                all[all.length / 2],
                all[0],
                seek[seek.length / 2],
                seek[0]);
    }
}
