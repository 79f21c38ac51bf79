package levelback.player.shell;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** A camera file that Levelback's own code did not write: made with Debian's ffmpeg, else with the one of the preset. */
final class CameraFile {

    private CameraFile() {}

    /** Six seconds at 25 pictures a second: H.264 with B-frames where x264 is there, else MPEG-4 with B-frames. */
    static Path make(Path folder) throws IOException, InterruptedException {
        Path file = folder.resolve("exit-cam.mp4");
        Path debian = Path.of("/usr/bin/ffmpeg");
        List<String> command = new ArrayList<>();
        boolean installed = Files.isExecutable(debian);
        command.add(installed ? debian.toString() : org.bytedeco.javacpp.Loader.load(org.bytedeco.ffmpeg.ffmpeg.class));
        command.addAll(List.of("-v", "error", "-y", "-f", "lavfi", "-i", "testsrc2=size=640x360:rate=25", "-t", "6"));
        command.addAll(
                installed
                        ? List.of("-c:v", "libx264", "-bf", "2", "-g", "50", "-pix_fmt", "yuv420p")
                        : List.of("-c:v", "mpeg4", "-bf", "2", "-g", "50"));
        command.add(file.toString());
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("ffmpeg.log").toFile())
                .start();
        if (!process.waitFor(60, TimeUnit.SECONDS) || process.exitValue() != 0) {
            process.destroyForcibly();
            try (Stream<String> lines = Files.lines(folder.resolve("ffmpeg.log"))) {
                throw new IOException("ffmpeg made no file: " + lines.reduce("", (a, b) -> a + b));
            }
        }
        return file;
    }
}
