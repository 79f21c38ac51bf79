package levelback.player.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Which Levelback this is. The build is named by the first eight hex digits of the SHA-256 over the program's own four
 * jars, so that two people can tell whether they run the same bytes.
 */
public final class Version {

    private Version() {}

    /** Version number as in the build, such as {@code 0.1.0}; {@code unpacked} where it runs from class folders. */
    public static String number() {
        return Optional.ofNullable(Version.class.getPackage().getImplementationVersion())
                .orElse("unpacked");
    }

    /** {@code levelback 0.1.0, build 1a2b3c4d}. */
    public static String line() {
        return "levelback " + number() + build().map(b -> ", build " + b).orElse("");
    }

    private static Optional<String> build() {
        try {
            Path jar = Path.of(Version.class
                    .getProtectionDomain()
                    .getCodeSource()
                    .getLocation()
                    .toURI());
            if (!Files.isRegularFile(jar)) {
                return Optional.empty();
            }
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            digest.update(Files.readAllBytes(jar));
            Path lib = jar.resolveSibling("lib");
            if (Files.isDirectory(lib)) {
                try (Stream<Path> files = Files.list(lib)) {
                    List<Path> own = files.filter(
                                    f -> f.getFileName().toString().matches("(clips|scoring|store)-\\d.*\\.jar"))
                            .sorted()
                            .toList();
                    for (Path module : own) {
                        digest.update(Files.readAllBytes(module));
                    }
                }
            }
            return Optional.of(HexFormat.of().formatHex(digest.digest()).substring(0, 8));
        } catch (IOException | java.net.URISyntaxException | NoSuchAlgorithmException unreadable) {
            return Optional.empty();
        }
    }
}
