package levelback.player.work;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The table of design section 4; XDG Base Directory Specification 0.8 for the relative path that is ignored. */
class UserFolderTest {

    @Test
    void everySystemHasItsPlace() {
        assertThat(UserFolder.of(Map.of(), "Linux", "/home/a").path())
                .isEqualTo(Path.of("/home/a/.local/share/levelback"));
        assertThat(UserFolder.of(Map.of("XDG_DATA_HOME", "/data"), "Linux", "/home/a")
                        .path())
                .isEqualTo(Path.of("/data/levelback"));
        assertThat(UserFolder.of(Map.of("XDG_DATA_HOME", "data"), "Linux", "/home/a")
                        .path())
                .isEqualTo(Path.of("/home/a/.local/share/levelback"));
        assertThat(UserFolder.of(Map.of(), "Mac OS X", "/Users/a").path())
                .isEqualTo(Path.of("/Users/a/Library/Application Support/Levelback"));
        assertThat(UserFolder.of(Map.of("APPDATA", "/roaming"), "Windows 11", "/c")
                        .path())
                .isEqualTo(Path.of("/roaming/Levelback"));
    }

    @Test
    void levelbackHomeOverrides() {
        assertThat(UserFolder.of(Map.of("LEVELBACK_HOME", "/x", "XDG_DATA_HOME", "/data"), "Linux", "/h")
                        .practiceBook())
                .isEqualTo(Path.of("/x/practice.levelback"));
    }
}
