package levelback.player.shell;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The system's own libraries that the desk draws with on Linux. Looked for as files before JavaFX is loaded, because JavaFX
 * answers a missing one with a broken toolkit that cannot be started again.
 */
public final class SystemLibraries {

    private static final List<String> FOR_TEXT = List.of(
            "libpango-1.0.so.0", "libpangoft2-1.0.so.0", "libfontconfig.so.1", "libfreetype.so.6", "libglib-2.0.so.0");
    private static final List<String> FOR_WINDOWS =
            List.of("libgtk-3.so.0", "libgdk-3.so.0", "libX11.so.6", "libXtst.so.6");
    private static final String TEXT_PACKAGES = "libpango-1.0-0 libpangoft2-1.0-0 fontconfig libfreetype6 libglib2.0-0";
    private static final String WINDOW_PACKAGES = "libgtk-3-0 libxtst6";

    private SystemLibraries() {}

    /** One sentence on what is missing and which Debian packages bring it; empty where nothing is. */
    public static Optional<String> missing() {
        if (!System.getProperty("os.name", "").toLowerCase(Locale.ROOT).contains("linux")) {
            return Optional.empty();
        }
        boolean monocle = "Monocle".equals(System.getProperty("glass.platform"));
        boolean screen = !monocle && hasScreen(System.getenv());
        return missing(folders(System.getenv()), screen);
    }

    /** Whether the environment names a screen to draw on; always so outside Linux. */
    public static boolean hasScreen(Map<String, String> environment) {
        if (!System.getProperty("os.name", "").toLowerCase(Locale.ROOT).contains("linux")) {
            return true;
        }
        return !environment.getOrDefault("DISPLAY", "").isBlank()
                || !environment.getOrDefault("WAYLAND_DISPLAY", "").isBlank();
    }

    static Optional<String> missing(List<Path> folders, boolean screen) {
        List<String> gone = new ArrayList<>();
        FOR_TEXT.stream().filter(name -> !isIn(folders, name)).forEach(gone::add);
        boolean text = !gone.isEmpty();
        if (screen) {
            FOR_WINDOWS.stream().filter(name -> !isIn(folders, name)).forEach(gone::add);
        }
        if (gone.isEmpty()) {
            return Optional.empty();
        }
        boolean windows = gone.stream().anyMatch(FOR_WINDOWS::contains);
        String packages = String.join(
                " ",
                Stream.of(text ? TEXT_PACKAGES : "", windows ? WINDOW_PACKAGES : "")
                        .filter(part -> !part.isEmpty())
                        .toList());
        return Optional.of(
                "The desk cannot open because " + gone.get(0) + " is missing; install it (Debian: apt-get install "
                        + packages + "); commands, demo and report work without it.");
    }

    private static boolean isIn(List<Path> folders, String name) {
        return folders.stream().anyMatch(folder -> Files.exists(folder.resolve(name)));
    }

    static List<Path> folders(Map<String, String> environment) {
        List<Path> folders = new ArrayList<>();
        for (String given : environment.getOrDefault("LD_LIBRARY_PATH", "").split(":", -1)) {
            if (!given.isBlank()) {
                folders.add(Path.of(given));
            }
        }
        String arch = System.getProperty("os.arch", "");
        String triplet = ("amd64".equals(arch) ? "x86_64" : arch) + "-linux-gnu";
        for (String root : List.of("/lib", "/usr/lib", "/usr/local/lib")) {
            folders.add(Path.of(root, triplet));
            folders.add(Path.of(root + "64"));
            folders.add(Path.of(root));
        }
        try (Stream<Path> conf = Files.list(Path.of("/etc/ld.so.conf.d"))) {
            for (Path file : conf.toList()) {
                Files.readAllLines(file).stream()
                        .filter(line -> line.startsWith("/"))
                        .map(line -> Path.of(line.strip()))
                        .forEach(folders::add);
            }
        } catch (java.io.IOException | java.io.UncheckedIOException e) {
            // No such folder on this system: the standard places are all there is to look in.
            return folders;
        }
        return folders;
    }
}
