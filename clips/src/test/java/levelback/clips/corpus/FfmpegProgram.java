package levelback.clips.corpus;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.bytedeco.javacpp.Loader;

/** An {@code ffmpeg} program: the one inside the preset, or Debian's. Makes films and is the oracle for their frames. */
public record FfmpegProgram(Path program) {

    /** The program inside the FFmpeg preset. */
    public static FfmpegProgram ofPreset() {
        Loader.load(org.bytedeco.ffmpeg.ffprobe.class);
        return new FfmpegProgram(Path.of(Loader.load(org.bytedeco.ffmpeg.ffmpeg.class)));
    }

    /** Debian's, where it is installed. */
    public static Optional<FfmpegProgram> ofSystem() {
        Path usual = Path.of("/usr/bin/ffmpeg");
        return Files.isExecutable(usual) ? Optional.of(new FfmpegProgram(usual)) : Optional.empty();
    }

    /** Frames of the first picture stream that is no cover, as a decode from the start gives them. */
    public List<OracleFrame> frames(Path film) {
        List<String> hash = List.of(
                "-v",
                "quiet",
                "-threads",
                "1",
                "-noautorotate",
                "-i",
                "file:" + film,
                "-map",
                "0:V:0",
                "-fps_mode",
                "passthrough",
                "-f",
                "framemd5",
                "-");
        List<String> probe = List.of(
                "-v",
                "quiet",
                "-threads",
                "1",
                "-select_streams",
                "V:0",
                "-show_entries",
                "frame=key_frame,pts,best_effort_timestamp",
                "-of",
                "csv=p=0",
                "file:" + film);
        FfmpegProgram beside = new FfmpegProgram(program.resolveSibling("ffprobe"));
        return OracleFrame.parse(
                new String(run(hash, new byte[0], false), StandardCharsets.UTF_8),
                new String(beside.run(probe, new byte[0], false), StandardCharsets.UTF_8));
    }

    /** Encodes raw {@code yuv420p} pictures. */
    public void encode(byte[] pictures, int width, int height, String rate, Path film, String... options) {
        List<String> arguments = new ArrayList<>(List.of(
                "-v",
                "error",
                "-y",
                "-f",
                "rawvideo",
                "-pix_fmt",
                "yuv420p",
                "-s",
                width + "x" + height,
                "-r",
                rate,
                "-i",
                "-"));
        arguments.addAll(List.of(options));
        arguments.add("file:" + film);
        run(arguments, pictures, true);
    }

    /** Runs it and gives its standard output. */
    public byte[] run(List<String> arguments, byte[] input, boolean mustSucceed) {
        List<String> command = new ArrayList<>();
        command.add(program.toString());
        command.addAll(arguments);
        try {
            Process process = new ProcessBuilder(command)
                    .redirectError(mustSucceed ? ProcessBuilder.Redirect.PIPE : ProcessBuilder.Redirect.DISCARD)
                    .start();
            CompletableFuture<Void> feeding = CompletableFuture.runAsync(() -> {
                try (OutputStream in = process.getOutputStream()) {
                    in.write(input);
                } catch (IOException closedEarly) {
                    // the program says itself what it did not like
                }
            });
            CompletableFuture<byte[]> complaint = CompletableFuture.supplyAsync(() -> {
                try {
                    return process.getErrorStream().readAllBytes();
                } catch (IOException gone) {
                    return new byte[0];
                }
            });
            byte[] out = process.getInputStream().readAllBytes();
            feeding.join();
            if (!process.waitFor(60, TimeUnit.SECONDS)) {
                process.destroyForcibly();
                throw new IllegalStateException("hangs: " + command);
            }
            if (mustSucceed && process.exitValue() != 0) {
                throw new IllegalStateException(command + ": " + new String(complaint.join(), StandardCharsets.UTF_8));
            }
            return out;
        } catch (IOException failed) {
            throw new IllegalStateException(command.toString(), failed);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(stopped);
        }
    }
}
