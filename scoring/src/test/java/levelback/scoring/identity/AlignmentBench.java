package levelback.scoring.identity;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Collectors;

/**
 * The alignment of 2,000 cows with their reads: the sums alone under given parameters beside the same sums in R (script
 * beside, own code) in the same run, whose posteriors must agree; and the whole of {@code identify} with clock and
 * parameters to be found.
 *
 * <p>By hand: {@code java -cp scoring/target/classes:scoring/target/test-classes:player/target/lib/*
 * levelback.scoring.identity.AlignmentBench FOLDER}.
 */
public final class AlignmentBench {

    private static final int RUNS = 15;

    private AlignmentBench() {}

    /** @param args a folder for the times */
    public static void main(String[] args) throws IOException, InterruptedException {
        Path folder = Files.createDirectories(Path.of(args[0]));
        for (Milking.Setting setting : List.of(
                Milking.GOAL.named("goal").cows(2000),
                Milking.EASY.named("easy").cows(2000),
                Milking.CROWDED.named("crowded").cows(2000))) {
            of(setting, folder);
        }
    }

    private static void of(Milking.Setting setting, Path folder) throws IOException, InterruptedException {
        Milking milking = Milking.of(setting, 1);
        double zero = milking.passes().get(0).from().toEpochMilli() / 1e3;
        double[] passes = milking.passes().stream()
                .mapToDouble(s -> (s.from().toEpochMilli() + s.to().toEpochMilli()) / 2e3 - zero)
                .toArray();
        double[] reads = TagVisit.of(milking.readings().stream()
                        .map(r -> new TagVisit.Read(r.tag(), r.at().toEpochMilli() / 1e3 - zero))
                        .toList())
                .stream()
                .mapToDouble(TagVisit::firstS)
                .toArray();
        Identification whole = Identify.of(milking.passes(), milking.readings());
        AlignmentParameters with = whole.clock().orElseThrow().with();
        double[] sums = new double[RUNS];
        double[] all = new double[RUNS];
        double[] cpu = new double[RUNS];
        var threads = java.lang.management.ManagementFactory.getThreadMXBean();
        Alignment alignment = Alignment.of(passes, reads, with);
        for (int run = -5; run < RUNS; run++) {
            long from = System.nanoTime();
            alignment = Alignment.of(passes, reads, with);
            long then = System.nanoTime();
            long ran = threads.getCurrentThreadCpuTime();
            whole = Identify.of(milking.passes(), milking.readings());
            if (run >= 0) {
                sums[run] = (then - from) / 1e9;
                all[run] = (System.nanoTime() - then) / 1e9;
                cpu[run] = (threads.getCurrentThreadCpuTime() - ran) / 1e9;
            }
        }
        Arrays.sort(sums);
        Arrays.sort(all);
        Arrays.sort(cpu);
        double r = inR(folder, passes, reads, with);
        double worst = 0;
        List<String> lines = Files.readAllLines(folder.resolve("unread.txt"));
        for (int i = 0; i < passes.length; i++) {
            worst = Math.max(worst, Math.abs(Double.parseDouble(lines.get(i).strip()) - alignment.unread(i)));
        }
        System.out.printf(
                Locale.ROOT,
                "%s, %d passes, %d reads: sums %.4f s (%.4f to %.4f), R %.3f s, ratio %.4f, posteriors differ by at most"
                        + " %.1e%s; identify in all %.3f s (%.3f to %.3f; of the processor %.3f s), named %d%n",
                setting.name(),
                passes.length,
                reads.length,
                sums[RUNS / 2],
                sums[0],
                sums[RUNS - 1],
                r,
                sums[RUNS / 2] / r,
                worst,
                alignment.windowCut() ? " (windows cut here, not in R)" : "",
                all[RUNS / 2],
                all[0],
                all[RUNS - 1],
                cpu[RUNS / 2],
                whole.passes().stream().filter(p -> p.tag().isPresent()).count());
    }

    private static double inR(Path folder, double[] passes, double[] reads, AlignmentParameters with)
            throws IOException, InterruptedException {
        write(folder.resolve("passes.txt"), passes);
        write(folder.resolve("reads.txt"), reads);
        write(
                folder.resolve("parameters.txt"),
                with.offsetS(),
                with.drift(),
                with.sigmaS(),
                with.miss(),
                with.strayPerS(),
                with.inversionFactor());
        Path script = folder.resolve("alignment.R");
        try (var in = Objects.requireNonNull(AlignmentBench.class.getResourceAsStream("alignment.R"))) {
            Files.write(script, in.readAllBytes());
        }
        Process process = new ProcessBuilder("Rscript", script.toString(), folder.toString())
                .redirectErrorStream(true)
                .start();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        if (process.waitFor() != 0) {
            throw new IOException("R: " + out);
        }
        return Double.parseDouble(out.lines().reduce((a, b) -> b).orElseThrow().strip());
    }

    private static void write(Path file, double... values) throws IOException {
        Files.writeString(
                file, Arrays.stream(values).mapToObj(Double::toString).collect(Collectors.joining("\n", "", "\n")));
    }
}
