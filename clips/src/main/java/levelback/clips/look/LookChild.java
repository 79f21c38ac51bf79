package levelback.clips.look;

import java.io.BufferedReader;
import java.io.FileDescriptor;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Base64;
import java.util.Optional;
import java.util.concurrent.LinkedBlockingQueue;
import levelback.clips.decode.FrameReader;
import levelback.clips.open.Clip;
import levelback.clips.open.ClipException;
import levelback.clips.open.ClipException.Reason;
import levelback.clips.open.ClipFacts;
import levelback.clips.open.IndexCache;
import levelback.clips.open.Watch;

/**
 * The process that looks: for each line of its input (a bound for decoding, the most pixels of a picture, a path in base
 * 64) it opens the file as the desk would, jumps about in it, and answers with one line. A line that begins with a full
 * stop is a sign of life; how far it is stands behind. It ends with its input, so that none stays behind when the desk is gone.
 */
final class LookChild {

    static final String FINE = "fine";
    static final String REFUSED = "refused";
    static final String ALIVE = ".";

    private static final int JUMPS = 8;
    private static final long NANOS_BETWEEN_SIGNS = 500_000_000;

    private static final PrintStream ANSWERS =
            new PrintStream(new FileOutputStream(FileDescriptor.out), true, StandardCharsets.US_ASCII);

    private LookChild() {}

    /** @param arguments the folder in which indexes are kept, or nothing: then what was found out is told and forgotten */
    public static void main(String[] arguments) throws InterruptedException {
        Optional<IndexCache> indexes =
                arguments.length == 0 ? Optional.empty() : Optional.of(new IndexCache(Path.of(arguments[0])));
        LinkedBlockingQueue<String> orders = new LinkedBlockingQueue<>();
        Thread work = new Thread(() -> answerAll(orders, indexes), "look");
        work.setDaemon(true);
        work.start();
        try (BufferedReader in = new BufferedReader(
                new InputStreamReader(new FileInputStream(FileDescriptor.in), StandardCharsets.US_ASCII))) {
            for (String order = in.readLine(); order != null; order = in.readLine()) {
                orders.put(order);
            }
        } catch (IOException gone) {
            // the desk is gone: so are we
        }
        Runtime.getRuntime().halt(0);
    }

    private static void answerAll(LinkedBlockingQueue<String> orders, Optional<IndexCache> indexes) {
        try {
            while (true) {
                ANSWERS.println(answer(orders.take(), indexes));
            }
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        } catch (RuntimeException | Error unforeseen) {
            Runtime.getRuntime().halt(1); // silence would cost the person a wait
        }
    }

    static String order(long decodeUpToPixels, long picturePixels, Path file) {
        byte[] name = file.toString().getBytes(StandardCharsets.UTF_8);
        return decodeUpToPixels + " " + picturePixels + " "
                + Base64.getEncoder().encodeToString(name);
    }

    private static String answer(String order, Optional<IndexCache> indexes) {
        String[] parts = order.split(" ", 3);
        Path file = Path.of(new String(Base64.getDecoder().decode(parts[2]), StandardCharsets.UTF_8));
        try {
            look(file, Long.parseLong(parts[0]), Long.parseLong(parts[1]), indexes);
            return FINE;
        } catch (ClipException refused) {
            String sentence = String.valueOf(refused.getMessage());
            return REFUSED + " " + refused.reason() + " "
                    + Base64.getEncoder().encodeToString(sentence.getBytes(StandardCharsets.UTF_8));
        }
    }

    private static void look(Path file, long decodeUpToPixels, long picturePixels, Optional<IndexCache> indexes)
            throws ClipException {
        Signs signs = new Signs();
        Clip clip = indexes.isPresent()
                ? Clip.open(file, decodeUpToPixels, indexes.get(), signs)
                : Clip.open(file, decodeUpToPixels, signs);
        ClipFacts facts = clip.facts();
        if ((long) facts.width() * facts.height() > picturePixels) {
            throw new ClipException(
                    Reason.NOT_A_RECORDING,
                    "The pictures of %s are %d by %d, more than the %,d pixels that Levelback takes; make a smaller copy."
                            .formatted(file, facts.width(), facts.height(), picturePixels));
        }
        ByteBuffer picture = ByteBuffer.allocateDirect(4 * facts.width() * facts.height());
        try (FrameReader reader = clip.reader(0)) {
            for (int i = 0; i < JUMPS; i++) {
                signs.getAsBoolean();
                int frame = (int) ((i * 5L + 3) % JUMPS * (facts.frameCount() - 1) / JUMPS);
                try {
                    reader.readBgra(frame, picture, 4 * facts.width());
                } catch (ClipException missing) {
                    // one frame that does not come is said where it is wanted; it harms nobody
                }
            }
        }
    }

    /** A sign of life with how far it is. */
    private static final class Signs implements Watch {

        private long last;
        private double fraction;

        @Override
        public boolean getAsBoolean() {
            long now = System.nanoTime();
            if (now - last > NANOS_BETWEEN_SIGNS) {
                last = now;
                ANSWERS.println(ALIVE + fraction);
            }
            return false;
        }

        @Override
        public void at(boolean decoding, double done) {
            fraction = done;
            getAsBoolean();
        }
    }
}
