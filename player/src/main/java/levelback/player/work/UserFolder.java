package levelback.player.work;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;

/**
 * Where a user's own things lie: the default book, its media, caches, the log, the settings. {@code LEVELBACK_HOME}
 * overrides; else Linux has {@code $XDG_DATA_HOME/levelback} (or {@code ~/.local/share/levelback}), Windows
 * {@code %APPDATA%\Levelback}, macOS {@code ~/Library/Application Support/Levelback}. Makes no folder.
 *
 * @param path the folder
 */
public record UserFolder(Path path) {

    /** This user's folder on this machine. */
    public static UserFolder ofThisUser() {
        return of(System.getenv(), System.getProperty("os.name", ""), System.getProperty("user.home", "."));
    }

    static UserFolder of(Map<String, String> environment, String osName, String home) {
        String own = environment.getOrDefault("LEVELBACK_HOME", "");
        if (!own.isBlank()) {
            return new UserFolder(Path.of(own));
        }
        String os = osName.toLowerCase(Locale.ROOT);
        if (os.startsWith("windows")) {
            String appData = environment.getOrDefault("APPDATA", "");
            Path base = appData.isBlank() ? Path.of(home, "AppData", "Roaming") : Path.of(appData);
            return new UserFolder(base.resolve("Levelback"));
        }
        if (os.startsWith("mac")) {
            return new UserFolder(Path.of(home, "Library", "Application Support", "Levelback"));
        }
        String xdg = environment.getOrDefault("XDG_DATA_HOME", "");
        // A relative XDG_DATA_HOME is to be ignored (XDG Base Directory Specification 0.8).
        Path base = xdg.isBlank() || !Path.of(xdg).isAbsolute() ? Path.of(home, ".local", "share") : Path.of(xdg);
        return new UserFolder(base.resolve("levelback"));
    }

    /** The default book. */
    public Path practiceBook() {
        return path.resolve("practice.levelback");
    }

    /** Frame indexes and unpacked natives; may be deleted at any time. */
    public Path cache() {
        return path.resolve("cache");
    }

    /** The log folder. */
    public Path log() {
        return path.resolve("log");
    }

    /** Keys, measured screen, theme, locale. */
    public Path settings() {
        return path.resolve("settings.json");
    }
}
