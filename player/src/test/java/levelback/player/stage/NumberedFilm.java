package levelback.player.stage;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;

/** A film that carries the number of each frame as ten blocks, white for a binary 1, so that it survives coding. */
public final class NumberedFilm {

    /** Width in pixels. */
    public static final int WIDTH = 320;

    /** Height in pixels. */
    public static final int HEIGHT = 96;

    private static final int BITS = 10;
    private static final int BLOCK = WIDTH / BITS;

    private NumberedFilm() {}

    /** A film of one group of pictures: only its first frame stands by itself, and B-frames lie between the others. */
    public static Path oneGroup(Path folder, String name, int frames) {
        return coded(
                folder,
                name,
                frames,
                "-c:v",
                "mpeg4",
                "-q:v",
                "3",
                "-bf",
                "2",
                "-g",
                Integer.toString(frames),
                "-sc_threshold",
                "1000000000");
    }

    /** An interlaced film, upper field first: its fields are numbered, those of frame {@code n} are 2n and 2n + 1. */
    public static Path interlaced(Path folder, String name, int frames) {
        return coded(
                folder,
                name,
                frames,
                25,
                true,
                "-vf",
                "setfield=tff",
                "-c:v",
                "mpeg2video",
                "-q:v",
                "2",
                "-flags",
                "+ilme+ildct",
                "-bf",
                "0",
                "-g",
                "12");
    }

    /** A film coded in a given way, 25 frames a second. */
    public static Path coded(Path folder, String name, int frames, String... coding) {
        return coded(folder, name, frames, 25, false, coding);
    }

    /** A film of another rate. */
    public static Path ofRate(Path folder, String name, int frames, int rate) {
        return coded(folder, name, frames, rate, false, "-c:v", "mpeg4", "-q:v", "3", "-g", "50");
    }

    private static Path coded(Path folder, String name, int frames, int rate, boolean woven, String... coding) {
        Path raw = folder.resolve(name + ".gray");
        try (OutputStream out = Files.newOutputStream(raw)) {
            byte[] picture = new byte[WIDTH * HEIGHT];
            for (int frame = 0; frame < frames; frame++) {
                for (int y = 0; y < HEIGHT; y++) {
                    int number = woven ? 2 * frame + y % 2 : frame;
                    for (int x = 0; x < WIDTH; x++) {
                        picture[y * WIDTH + x] = (byte) (((number >> (x / BLOCK)) & 1) == 1 ? 235 : 20);
                    }
                }
                out.write(picture);
            }
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
        String[] input = {
            "-f",
            "rawvideo",
            "-pix_fmt",
            "gray",
            "-s",
            WIDTH + "x" + HEIGHT,
            "-r",
            Integer.toString(rate),
            "-i",
            "file:" + raw,
            "-pix_fmt",
            "yuv420p",
            "-metadata",
            "creation_time=2026-04-14T05:56:21Z"
        };
        String[] all = Arrays.copyOf(input, input.length + coding.length);
        System.arraycopy(coding, 0, all, input.length, coding.length);
        return TestFilms.make(folder.resolve(name), all);
    }

    /** The number in a picture: the middle of each block, BGRA, rows packed. */
    public static int read(ByteBuffer bgra) {
        int number = 0;
        for (int bit = 0; bit < BITS; bit++) {
            int green = bgra.get(4 * (HEIGHT / 2 * WIDTH + bit * BLOCK + BLOCK / 2) + 1) & 0xff;
            number |= (green > 128 ? 1 : 0) << bit;
        }
        return number;
    }
}
