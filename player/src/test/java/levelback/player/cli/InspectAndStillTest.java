package levelback.player.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The commands end to end, on a film with B-frames whose frames an ffmpeg program has listed. */
class InspectAndStillTest {

    @TempDir
    Path folder;

    private Path film;
    private List<String> oracle;
    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @BeforeEach
    void copy() throws Exception {
        film = folder.resolve("kü:%d.mp4");
        // Film and list of the corpus of the clips module; made by Debian's ffmpeg.
        Files.copy(resource("h264-b-closed.mp4"), film);
        oracle = Files.readAllLines(resource("h264-b-closed.mp4.framemd5")).stream()
                .filter(line -> !line.startsWith("#"))
                .map(line -> line.substring(line.lastIndexOf(',') + 1).strip())
                .toList();
    }

    private static Path resource(String name) throws Exception {
        return Path.of(InspectAndStillTest.class.getResource("/film/" + name).toURI());
    }

    private int run(String... args) {
        out.getBuffer().setLength(0);
        err.getBuffer().setLength(0);
        return CommandLineRoot.run(new PrintWriter(out, true), new PrintWriter(err, true), args);
    }

    private Map<String, Object> json() throws Exception {
        try (JsonParser parser = new JsonFactory().createParser(out.toString())) {
            assertThat(parser.nextToken()).isEqualTo(JsonToken.START_OBJECT);
            return object(parser);
        }
    }

    private static Map<String, Object> object(JsonParser parser) throws Exception {
        Map<String, Object> map = new LinkedHashMap<>();
        while (parser.nextToken() != JsonToken.END_OBJECT) {
            String name = parser.currentName();
            map.put(name, value(parser, parser.nextToken()));
        }
        return map;
    }

    private static Object value(JsonParser parser, JsonToken token) throws Exception {
        return switch (token) {
            case START_OBJECT -> object(parser);
            case START_ARRAY -> {
                List<Object> list = new ArrayList<>();
                for (JsonToken next = parser.nextToken(); next != JsonToken.END_ARRAY; next = parser.nextToken()) {
                    list.add(value(parser, next));
                }
                yield list;
            }
            case VALUE_NUMBER_INT -> parser.getLongValue();
            case VALUE_NUMBER_FLOAT -> parser.getDoubleValue();
            case VALUE_TRUE, VALUE_FALSE -> parser.getBooleanValue();
            case VALUE_NULL -> "null";
            default -> parser.getText();
        };
    }

    @Test
    void inspectHasEveryKeyOfTheContract() throws Exception {
        assertThat(run("inspect", film.toString(), "--json", "--frames", "--sha256", "--frame-md5", "74,3-1,0"))
                .as(err.toString())
                .isZero();
        Map<String, Object> keys = json();
        assertThat(keys)
                .containsEntry("file", film.toString())
                .containsEntry("codec", "h264")
                .containsEntry("width", 160L)
                .containsEntry("height", 90L)
                .containsEntry("pixelFormat", "yuv420p")
                .containsEntry("rotationDegrees", 0L)
                .containsEntry("timeBase", "1/12800")
                .containsEntry("frameCount", 75L)
                .containsEntry("startUs", 0L)
                .containsEntry("durationUs", 3_000_000L)
                .containsEntry("averageFrameRate", 25.0)
                .containsEntry("constantFrameRate", true)
                .containsEntry("interlaced", false)
                .containsEntry("sampleAspectRatio", "1:1")
                .containsEntry("recordedAt", "null")
                .containsEntry("readable", "whole")
                .containsEntry("damage", List.of())
                .containsKeys("container", "fingerprint", "sha256", "frames", "frameMd5");
        assertThat(keys.get("frameMd5"))
                .isEqualTo(List.of(
                        Map.of("frame", 74L, "pts", 74L * 512, "md5", oracle.get(74)),
                        Map.of("frame", 3L, "pts", 3L * 512, "md5", oracle.get(3)),
                        Map.of("frame", 2L, "pts", 2L * 512, "md5", oracle.get(2)),
                        Map.of("frame", 1L, "pts", 512L, "md5", oracle.get(1)),
                        Map.of("frame", 0L, "pts", 0L, "md5", oracle.get(0))));
        assertThat(keys.get("frames"))
                .asInstanceOf(org.assertj.core.api.InstanceOfAssertFactories.LIST)
                .hasSize(75)
                .element(50)
                .isEqualTo(Map.of("frame", 50L, "pts", 25_600L, "timeUs", 2_000_000L, "keyFrame", true));
        // sha256sum of the same file
        assertThat(keys.get("sha256"))
                .isEqualTo(java.util.HexFormat.of()
                        .formatHex(java.security.MessageDigest.getInstance("SHA-256")
                                .digest(Files.readAllBytes(film))));
    }

    @Test
    void inspectIsATableForAPerson() {
        assertThat(run("inspect", film.toString(), "--frame-md5", "5")).isZero();
        assertThat(out.toString()).contains("75, 25.00 a second, evenly spaced").contains(oracle.get(5));
    }

    @Test
    void badInputIsOneSentenceAndNothingOnStandardOutput() throws Exception {
        Path text = Files.writeString(folder.resolve("text.mp4"), "no film\n");
        List<String[]> bad = List.of(
                new String[] {"inspect", text.toString(), "--json"},
                new String[] {"inspect", folder.resolve("none.mp4").toString()},
                new String[] {"inspect", film.toString(), "--frame-md5", "75"},
                new String[] {"inspect", film.toString(), "--frame-md5", "5,x"},
                new String[] {"inspect", film.toString(), "--frame-md5", ""},
                new String[] {"still", film.toString(), "--frame", "75", "--out", folder + "/a.png"},
                new String[] {"still", film.toString(), "--at", "3.5", "--out", folder + "/a.png"},
                new String[] {"still", film.toString(), "--out", folder + "/a.png"},
                new String[] {"still", film.toString(), "--frame", "1", "--at", "1", "--out", folder + "/a.png"},
                new String[] {"still", film.toString(), "--frame", "1", "--out", film.toString()});
        byte[] before = Files.readAllBytes(film);
        for (String[] args : bad) {
            assertThat(run(args)).as(String.join(" ", args)).isEqualTo(2);
            assertThat(out.toString()).isEmpty();
            assertThat(err.toString().lines()).as(String.join(" ", args)).hasSize(1);
        }
        assertThat(Files.exists(folder.resolve("a.png"))).isFalse();
        assertThat(Files.readAllBytes(film)).isEqualTo(before);
    }

    @Test
    void stillWritesThePicture() throws Exception {
        Path png = folder.resolve("frame:%d.png");
        assertThat(run("still", film.toString(), "--at", "1.0", "--out", png.toString()))
                .as(err.toString())
                .isZero();
        assertThat(out.toString()).contains("frame 25").contains("160 x 90");
        assertThat(Files.readAllBytes(png)).startsWith(0x89, 'P', 'N', 'G');
    }
}
