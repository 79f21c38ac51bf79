package levelback.player.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BenchCommandTest {

    @TempDir
    Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String... args) {
        return CommandLineRoot.run(new PrintWriter(out, true), new PrintWriter(err, true), args);
    }

    private static Path film() throws Exception {
        return Path.of(
                BenchCommandTest.class.getResource("/film/h264-b-closed.mp4").toURI());
    }

    /** The keys that the command-line page fixes, each with its figure; those of an inner object as outer.inner. */
    private Map<String, Double> figures() throws Exception {
        Map<String, Double> figures = new LinkedHashMap<>();
        String outer = "";
        try (JsonParser parser = new JsonFactory().createParser(out.toString())) {
            for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
                String name = parser.currentName();
                if (token == JsonToken.START_OBJECT && name != null) {
                    outer = name + ".";
                } else if (token == JsonToken.END_OBJECT) {
                    outer = "";
                } else if (token.isNumeric()) {
                    figures.put(outer + name, parser.getDoubleValue());
                }
            }
        }
        return figures;
    }

    @Test
    void printsTheFixedKeys() throws Exception {
        assertThat(run("bench", film().toString(), "--json")).as(err.toString()).isZero();
        Map<String, Double> figures = figures();
        assertThat(figures.keySet().stream().collect(Collectors.joining(" ")))
                .isEqualTo("decodeFps indexMs stepForwardMs.p50 stepForwardMs.p95 stepForwardMs.max stepBackMs.p50"
                        + " stepBackMs.p95 stepBackMs.max seekMs.p50 seekMs.p95 seekMs.max frameDecodeMs playDropped"
                        + " peakMemoryMb");
        assertThat(figures.entrySet())
                .filteredOn(figure -> !figure.getKey().equals("playDropped"))
                .allSatisfy(figure ->
                        assertThat(figure.getValue()).as(figure.getKey()).isPositive());
        assertThat(err.toString()).isEmpty();
    }

    @Test
    void saysInOneSentenceThatAFileIsNoFilm() throws Exception {
        Path text = Files.writeString(folder.resolve("text.mp4"), "cow,date,score\n");
        assertThat(run("bench", text.toString(), "--json")).isEqualTo(2);
        assertThat(out.toString()).isEmpty();
        assertThat(err.toString().lines()).hasSize(1);
        assertThat(err.toString()).contains("is not a video file");
    }
}
