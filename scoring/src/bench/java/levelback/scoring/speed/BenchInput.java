package levelback.scoring.speed;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.Collectors;

/** What a bench leaves for its peer in R: the input, and the figures that R must find too. */
final class BenchInput {

    private static final Path DIRECTORY = Path.of("target", "bench");

    private BenchInput() {}

    /** Where the input of a bench lies. */
    static Path input(String bench) {
        return DIRECTORY.resolve(bench + ".csv");
    }

    /** Where the figures of a bench lie. */
    static Path answers(String bench) {
        return DIRECTORY.resolve(bench + ".answer");
    }

    /** Writes the input of a bench, a table with commas. */
    static void write(Class<?> bench, CharSequence table) {
        put(input(bench.getSimpleName()), table);
    }

    /** Writes the figures that R must find too, in the order in which its script prints them. */
    static void answer(Class<?> bench, double... figures) {
        put(
                answers(bench.getSimpleName()),
                Arrays.stream(figures).mapToObj(Double::toString).collect(Collectors.joining(" ")));
    }

    private static void put(Path file, CharSequence text) {
        try {
            Files.createDirectories(DIRECTORY);
            Files.writeString(file, text, StandardCharsets.UTF_8);
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }
}
