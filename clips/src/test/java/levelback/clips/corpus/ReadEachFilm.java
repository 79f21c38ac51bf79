package levelback.clips.corpus;

import java.nio.ByteBuffer;
import java.nio.file.Path;
import levelback.clips.decode.FrameReader;
import levelback.clips.open.Clip;
import levelback.clips.open.ClipException;

/** The child process of {@link MutatedFilmsSlowTest}: opens each film and reads frames of it in a jumping order. */
final class ReadEachFilm {

    private ReadEachFilm() {}

    public static void main(String[] films) {
        for (String film : films) {
            System.out.println(outcome(Path.of(film)));
            System.out.flush();
        }
    }

    private static String outcome(Path film) {
        try {
            Clip clip = Clip.open(film, () -> false);
            int frames = clip.facts().frameCount();
            int unreadable = 0;
            ByteBuffer bgra = ByteBuffer.allocateDirect(
                    4 * clip.facts().width() * clip.facts().height());
            try (FrameReader reader = clip.reader(0)) {
                for (int i = 0; i < Math.min(20, frames); i++) {
                    try {
                        reader.md5((int) (i * 7919L % frames));
                        reader.readBgra(
                                (int) (i * 104729L % frames),
                                bgra,
                                4 * clip.facts().width());
                    } catch (ClipException missing) {
                        unreadable++;
                    }
                }
            }
            return unreadable == 0 ? "read" : "read-in-part";
        } catch (ClipException refused) {
            return "refused";
        } catch (RuntimeException | Error unforeseen) {
            return "unforeseen " + unforeseen + " " + java.util.Arrays.toString(unforeseen.getStackTrace());
        }
    }
}
