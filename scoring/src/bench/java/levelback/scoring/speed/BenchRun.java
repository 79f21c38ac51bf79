package levelback.scoring.speed;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.StringTokenizer;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.CommandLineOptionException;
import org.openjdk.jmh.runner.options.CommandLineOptions;
import org.openjdk.jmh.runner.options.Options;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/**
 * Runs the benches and, right after, the R script of each on the input it left, and prints the ratio of the times.
 *
 * <p>Arguments: a regular expression for the benches; then options of JMH, in one argument or several.
 */
public final class BenchRun {

    private static final Path SCRIPTS = Path.of("src", "bench", "R");

    /** What R took, in seconds, and what it found. */
    private record Peer(double seconds, List<Double> answer) {}

    private BenchRun() {}

    /** Runs the benches. */
    public static void main(String[] arguments)
            throws RunnerException, CommandLineOptionException, IOException, InterruptedException {
        List<String> options = new ArrayList<>();
        for (int i = 1; i < arguments.length; i++) {
            options.addAll(words(arguments[i]));
        }
        Options run = new OptionsBuilder()
                .parent(new CommandLineOptions(options.toArray(String[]::new)))
                .include(arguments.length == 0 ? ".*" : arguments[0])
                .build();
        Collection<RunResult> results = new Runner(run).run();
        List<String> lines = new ArrayList<>();
        for (RunResult result : results) {
            lines.add(line(result));
        }
        System.out.printf("%n%-34s %12s %12s %8s  %s%n", "bench", "here, s", "R, s", "ratio", "largest difference");
        lines.forEach(System.out::println);
    }

    private static String line(RunResult result) throws IOException, InterruptedException {
        String method = result.getParams().getBenchmark();
        String bench = method.substring(0, method.lastIndexOf('.'));
        bench = bench.substring(bench.lastIndexOf('.') + 1);
        String name = bench + method.substring(method.lastIndexOf('.'));
        double here = result.getPrimaryResult().getScore() * seconds(result);
        Path script = SCRIPTS.resolve(bench + ".R");
        if (!Files.exists(script) || !Files.exists(BenchInput.input(bench))) {
            return String.format(Locale.ROOT, "%-34s %12.4f %12s", name, here, "no peer");
        }
        Peer peer = peer(script, BenchInput.input(bench));
        return String.format(
                Locale.ROOT,
                "%-34s %12.4f %12.4f %8.4f  %s",
                name,
                here,
                peer.seconds,
                here / peer.seconds,
                difference(bench, peer.answer));
    }

    private static double seconds(RunResult result) {
        return switch (result.getPrimaryResult().getScoreUnit()) {
            case "s/op" -> 1;
            case "ms/op" -> 1e-3;
            case "us/op" -> 1e-6;
            case "ns/op" -> 1e-9;
            default -> throw new IllegalStateException("a bench is in time per operation, not "
                    + result.getPrimaryResult().getScoreUnit());
        };
    }

    private static Peer peer(Path script, Path input) throws IOException, InterruptedException {
        Process r = new ProcessBuilder("Rscript", "--vanilla", script.toString(), input.toString())
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        String printed = new String(r.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        if (r.waitFor() != 0) {
            throw new IllegalStateException(script + " failed: " + printed);
        }
        double seconds = Double.NaN;
        List<Double> answer = new ArrayList<>();
        for (String line : printed.lines().toList()) {
            if (line.startsWith("seconds ")) {
                seconds = Double.parseDouble(line.substring("seconds ".length()));
            } else if (line.startsWith("answer ")) {
                words(line.substring("answer ".length())).forEach(word -> answer.add(Double.parseDouble(word)));
            }
        }
        if (Double.isNaN(seconds)) {
            throw new IllegalStateException(script + " printed no seconds: " + printed);
        }
        return new Peer(seconds, answer);
    }

    private static String difference(String bench, List<Double> peer) throws IOException {
        if (peer.isEmpty() || !Files.exists(BenchInput.answers(bench))) {
            return "not compared";
        }
        List<String> here = words(Files.readString(BenchInput.answers(bench)));
        if (here.size() != peer.size()) {
            return here.size() + " figures here, " + peer.size() + " in R";
        }
        double largest = 0;
        for (int i = 0; i < here.size(); i++) {
            largest = Math.max(largest, Math.abs(Double.parseDouble(here.get(i)) - peer.get(i)));
        }
        return String.format(Locale.ROOT, "%.2g over %d figures", largest, here.size());
    }

    private static List<String> words(String text) {
        List<String> words = new ArrayList<>();
        StringTokenizer tokens = new StringTokenizer(text);
        while (tokens.hasMoreTokens()) {
            words.add(tokens.nextToken());
        }
        return words;
    }
}
