package levelback.player.work;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * The files that a first look has found harmless, by their fingerprint: an empty file for each in the user's cache. Losing
 * it costs a second look and nothing else, so nothing that goes wrong here is told to anybody.
 */
final class KnownFiles {

    /** Another decoder is another look. */
    private static final String DECODER = "ffmpeg-8.0.1";

    private final Path folder;

    KnownFiles(UserFolder user) {
        this.folder = user.cache().resolve("looked-at").resolve(DECODER);
    }

    boolean known(String fingerprint) {
        return Files.exists(folder.resolve(name(fingerprint)));
    }

    void keep(String fingerprint) {
        try {
            Files.createDirectories(folder);
            Files.write(folder.resolve(name(fingerprint)), new byte[0]);
        } catch (IOException unwritable) {
            // looked at again next time
        }
    }

    private static String name(String fingerprint) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(fingerprint.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(digest);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}
