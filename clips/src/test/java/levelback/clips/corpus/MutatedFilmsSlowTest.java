package levelback.clips.corpus;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;
import org.junit.jupiter.api.io.TempDir;

/**
 * 500 films with bytes changed, cut, zeroed or moved, each opened and read in a child process: none may hang, and a child
 * that dies is laid at its film's door while the parent goes on. Seed fixed.
 */
@Tag("slow")
class MutatedFilmsSlowTest {

    private static final int FILMS = 500;
    private static final int AT_A_TIME = 50;
    private static final long LIMIT_SECONDS = 30;
    private static final Mutation[] KINDS = Mutation.values();

    @TempDir
    Path folder;

    private final Map<String, Integer> counts = new TreeMap<>();
    private final List<String> faults = new ArrayList<>();

    @Test
    void noMutatedFilmHangsOrBringsDownTheReader(TestReporter reporter) throws Exception {
        List<Path> films = mutate();
        ExecutorService two = Executors.newFixedThreadPool(2);
        try {
            List<Future<?>> running = new ArrayList<>();
            for (int from = 0; from < films.size(); from += AT_A_TIME) {
                Deque<Path> batch = new ArrayDeque<>(films.subList(from, Math.min(films.size(), from + AT_A_TIME)));
                running.add(two.submit(() -> read(batch)));
            }
            for (Future<?> batch : running) {
                batch.get(5, TimeUnit.MINUTES);
            }
        } finally {
            two.shutdownNow();
        }
        reporter.publishEntry("mutated films", counts.toString());
        System.out.println(FILMS + " mutated films: " + counts);
        assertThat(counts.values().stream().mapToInt(i -> i).sum()).isEqualTo(FILMS);
        assertThat(faults).as("%s", counts).isEmpty();
        assertThat(counts.getOrDefault("read", 0))
                .as("films that still give frames: %s", counts)
                .isGreaterThan(100);
        assertThat(counts.getOrDefault("refused", 0))
                .as("films refused: %s", counts)
                .isPositive();
    }

    private List<Path> mutate() throws Exception {
        List<Path> sources =
                new ArrayList<>(CorpusTest.films().map(CorpusTest::film).toList());
        byte[] pictures = MovingPattern.yuv420p(144, 80, 40);
        FfmpegProgram preset = FfmpegProgram.ofPreset();
        for (String[] made : new String[][] {
            {"m.avi", "mpeg4", "-bf", "2"},
            {"m.mp4", "mpeg4", "-bf", "2"},
            {"m.ts", "mpeg2video", "-bf", "2"},
            {"j.mov", "mjpeg", "-q:v", "5"},
            {"v.webm", "libvpx-vp9", "-cpu-used", "8"},
            {"w.webm", "libvpx", "-cpu-used", "8"}
        }) {
            Path film = folder.resolve(made[0]);
            preset.encode(
                    pictures,
                    144,
                    80,
                    "25",
                    film,
                    Stream.concat(Stream.of("-c:v", made[1]), Arrays.stream(made, 2, made.length))
                            .toArray(String[]::new));
            sources.add(film);
        }
        Random random = new Random(20260314);
        List<Path> films = new ArrayList<>();
        for (int i = 0; i < FILMS; i++) {
            Path source = sources.get(i % sources.size());
            byte[] bytes = KINDS[i % KINDS.length].change(Files.readAllBytes(source), random);
            films.add(Files.write(folder.resolve("%03d-%s".formatted(i, source.getFileName())), bytes));
        }
        return films;
    }

    private void read(Deque<Path> batch) {
        while (!batch.isEmpty()) {
            Process child = null;
            try {
                List<String> command = new ArrayList<>(List.of(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx512m",
                        "-XX:-CreateCoredumpOnCrash",
                        "-XX:ErrorFile=" + folder.resolve("crash-%p.log"),
                        "-cp",
                        System.getProperty("java.class.path"),
                        ReadEachFilm.class.getName()));
                batch.forEach(film -> command.add(film.toString()));
                child = new ProcessBuilder(command)
                        .redirectError(folder.resolve("child-" + System.nanoTime() + ".err")
                                .toFile())
                        .start();
                follow(child, batch);
            } catch (IOException failed) {
                throw new IllegalStateException(failed);
            } finally {
                if (child != null) {
                    child.destroyForcibly();
                }
            }
        }
    }

    /** One line for each film; the film that was being read when the child died or stood still is the one to blame. */
    private void follow(Process child, Deque<Path> batch) throws IOException {
        ExecutorService one = Executors.newSingleThreadExecutor();
        try (BufferedReader lines = child.inputReader(StandardCharsets.UTF_8)) {
            while (!batch.isEmpty()) {
                Future<String> next = one.submit(lines::readLine);
                String line;
                try {
                    line = next.get(LIMIT_SECONDS, TimeUnit.SECONDS);
                } catch (java.util.concurrent.TimeoutException hangs) {
                    child.destroyForcibly();
                    blame(batch.removeFirst(), "hung");
                    return;
                } catch (InterruptedException | java.util.concurrent.ExecutionException failed) {
                    throw new IllegalStateException(failed);
                }
                if (line == null) {
                    blame(batch.removeFirst(), "crashed");
                    return;
                }
                Path film = batch.removeFirst();
                if (line.startsWith("unforeseen")) {
                    blame(film, line);
                } else {
                    count(line);
                }
            }
        } finally {
            one.shutdownNow();
        }
    }

    private synchronized void blame(Path film, String what) {
        count(what.split(" ", 2)[0]);
        faults.add(film.getFileName() + " " + what);
    }

    private synchronized void count(String what) {
        counts.merge(what, 1, Integer::sum);
    }
}
