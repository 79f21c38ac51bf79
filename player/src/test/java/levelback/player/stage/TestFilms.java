package levelback.player.stage;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.bytedeco.javacpp.Loader;

/** Films made by the {@code ffmpeg} program of the preset, which is not our code: a moving test card. */
public final class TestFilms {

    private TestFilms() {}

    /** A film with B-frames and long groups, 320 × 240, 25 pictures a second, made on 14 April 2026 at 05:56:21 UTC. */
    public static Path walk(Path folder, String name, int frames) {
        return make(
                folder.resolve(name),
                "-f",
                "lavfi",
                "-i",
                "testsrc2=size=320x240:rate=25",
                "-frames:v",
                Integer.toString(frames),
                "-c:v",
                "mpeg4",
                "-q:v",
                "4",
                "-bf",
                "2",
                "-g",
                "50",
                "-metadata",
                "creation_time=2026-04-14T05:56:21Z");
    }

    /** A film of any kind. */
    public static Path make(Path film, String... options) {
        List<String> command = new ArrayList<>();
        command.add(Loader.load(org.bytedeco.ffmpeg.ffmpeg.class));
        command.addAll(List.of("-v", "error", "-y"));
        command.addAll(List.of(options));
        command.add("file:" + film);
        try {
            Process process =
                    new ProcessBuilder(command).redirectErrorStream(true).start();
            process.getOutputStream().close();
            String said = new String(process.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
            if (process.waitFor() != 0) {
                throw new IllegalStateException(said);
            }
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
        return film;
    }
}
