package levelback.clips.corpus;

import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import levelback.clips.decode.FrameReader;
import levelback.clips.look.FirstLook;
import levelback.clips.look.LookLimits;
import levelback.clips.open.Clip;
import levelback.clips.open.ClipException;

/**
 * Run by hand: thousands of broken films of every kind in the corpus go the way a new file goes on the desk. Each is
 * looked at by the process with limits; what that calls harmless is then opened and read here, in the process that stands
 * for the desk. Arguments: how many (5000), seed (1), a folder in which the unsafe ones are kept.
 *
 * <p>{@code java -cp … levelback.clips.corpus.MutatedFilmsBench 5000 1 /tmp/unsafe}
 */
public final class MutatedFilmsBench {

    private static final int EVERY = 500;
    private static final int FRAMES = 12;

    private final Map<String, Integer> counts = new TreeMap<>();
    private final List<String> faults = new ArrayList<>();
    private long slowestMs;
    private String slowest = "";

    private MutatedFilmsBench() {}

    public static void main(String[] arguments) throws Exception {
        int films = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 5000;
        long seed = arguments.length > 1 ? Long.parseLong(arguments[1]) : 1;
        Path kept = Files.createDirectories(Path.of(arguments.length > 2 ? arguments[2] : "target/unsafe-films"));
        new MutatedFilmsBench().run(films, seed, kept);
    }

    private void run(int films, long seed, Path kept) throws Exception {
        List<Path> sources;
        Path folder = Files.createTempDirectory("levelback-mutated");
        try (Stream<String> names = CorpusTest.films()) {
            sources = new ArrayList<>(names.map(CorpusTest::film).toList());
        }
        sources.add(Files.write(folder.resolve("fields.h264"), FieldFilm.annexB(3, 8, true, true)));
        Mutation[] kinds = Mutation.values();
        Random random = new Random(seed);
        long begun = System.nanoTime();
        try (FirstLook look = new FirstLook(LookLimits.USUAL)) {
            for (int i = 0; i < films; i++) {
                Path source = sources.get(i % sources.size());
                Mutation kind = kinds[i / sources.size() % kinds.length];
                byte[] bytes = kind.change(Files.readAllBytes(source), random);
                Path film = Files.write(folder.resolve("%05d-%s-%s".formatted(i, kind, source.getFileName())), bytes);
                long from = System.nanoTime();
                String outcome = outcome(look, film);
                long tookMs = (System.nanoTime() - from) / 1_000_000;
                if (tookMs > slowestMs) {
                    slowestMs = tookMs;
                    slowest = film.getFileName() + " (" + outcome + ")";
                }
                counts.merge(outcome, 1, Integer::sum);
                if (outcome.startsWith("unsafe") || outcome.startsWith("unforeseen")) {
                    faults.add(film.getFileName() + ": " + outcome);
                    Files.copy(
                            film, kept.resolve(film.getFileName()), java.nio.file.StandardCopyOption.REPLACE_EXISTING);
                }
                Files.delete(film);
                if ((i + 1) % EVERY == 0) {
                    System.out.printf(
                            "%d after %d s: %s%n", i + 1, (System.nanoTime() - begun) / 1_000_000_000, counts);
                }
            }
        }
        faults.forEach(System.out::println);
        System.out.printf(
                "%d mutated films of %d kinds, %d ways to break them, seed %d: %s; slowest %d ms %s; %d s in all%n",
                films,
                sources.size(),
                kinds.length,
                seed,
                counts,
                slowestMs,
                slowest,
                (System.nanoTime() - begun) / 1_000_000_000);
    }

    private static String outcome(FirstLook look, Path film) {
        try {
            look.at(film, Clip.SHORT_PIXELS, () -> false);
        } catch (ClipException refused) {
            String said = String.valueOf(refused.getMessage());
            if (refused.reason() != ClipException.Reason.UNSAFE) {
                return "refused in a sentence";
            }
            return "unsafe: "
                    + said.substring(said.indexOf('(') + 1, said.indexOf(')')).replaceAll("[0-9]+ s", "the time");
        }
        return desk(film);
    }

    private static String desk(Path film) {
        try {
            Clip clip = Clip.open(film, () -> false);
            int frames = clip.facts().frameCount();
            ByteBuffer picture = ByteBuffer.allocateDirect(
                    4 * clip.facts().width() * clip.facts().height());
            int missing = 0;
            try (FrameReader reader = clip.reader(0)) {
                for (int i = 0; i < Math.min(FRAMES, frames); i++) {
                    try {
                        reader.md5((int) (i * 7919L % frames));
                        reader.readBgra(
                                (int) (i * 104729L % frames),
                                picture,
                                4 * clip.facts().width());
                    } catch (ClipException gone) {
                        missing++;
                    }
                }
            }
            String read = missing > 0 ? "read in part" : "read";
            return clip.facts().damage().isEmpty() ? read : read + ", damage named";
        } catch (ClipException refused) {
            return "fine in the first look, refused at the desk: " + refused.reason();
        } catch (RuntimeException | Error unforeseen) {
            return "unforeseen " + unforeseen + " at " + unforeseen.getStackTrace()[0];
        }
    }
}
