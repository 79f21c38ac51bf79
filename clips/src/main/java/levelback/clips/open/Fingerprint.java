package levelback.clips.open;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.function.BooleanSupplier;
import levelback.clips.open.ClipException.Reason;

/** What a file is known by when it has been moved. */
public final class Fingerprint {

    private static final int MIB = 1 << 20;

    private Fingerprint() {}

    /**
     * Length in bytes, a colon, and the SHA-256 of the first, the middle and the last MiB one after the other (of a file up
     * to 3 MiB: of the whole). The middle MiB begins at half the length less half a MiB.
     */
    public static String quick(Path file) throws ClipException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
            long length = channel.size();
            MessageDigest digest = sha256();
            if (length <= 3L * MIB) {
                feed(digest, channel, 0, (int) length);
            } else {
                feed(digest, channel, 0, MIB);
                feed(digest, channel, length / 2 - MIB / 2, MIB);
                feed(digest, channel, length - MIB, MIB);
            }
            return length + ":" + HexFormat.of().formatHex(digest.digest());
        } catch (IOException unreadable) {
            throw unreadable(file);
        }
    }

    /** SHA-256 of the whole file in hex digits. */
    public static String sha256(Path file, BooleanSupplier cancelled) throws ClipException {
        try (InputStream in = Files.newInputStream(file)) {
            MessageDigest digest = sha256();
            byte[] piece = new byte[MIB];
            for (int n = in.read(piece); n >= 0; n = in.read(piece)) {
                if (cancelled.getAsBoolean()) {
                    throw new ClipException(Reason.CANCELLED, "Reading " + file + " was stopped.");
                }
                digest.update(piece, 0, n);
            }
            return HexFormat.of().formatHex(digest.digest());
        } catch (IOException unreadable) {
            throw unreadable(file);
        }
    }

    private static void feed(MessageDigest digest, FileChannel channel, long from, int bytes) throws IOException {
        ByteBuffer piece = ByteBuffer.allocate(bytes);
        long at = from;
        while (piece.hasRemaining()) {
            int n = channel.read(piece, at);
            if (n < 0) {
                break; // shortened meanwhile
            }
            at += n;
        }
        digest.update(piece.flip());
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    private static ClipException unreadable(Path file) {
        return new ClipException(
                Reason.NOT_A_FILE, "Reading " + file + " failed; check the disk and that the file is still there.");
    }
}
