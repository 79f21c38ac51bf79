package levelback.player.shell;

import java.nio.file.Path;
import levelback.player.desk.Fx;
import levelback.player.desk.NeedsDesk;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@NeedsDesk
class WalkTest {

    @TempDir
    Path folder;

    @Test
    void theWholeJobOnceInANewBook() throws Exception {
        Fx.start();
        try (Walk walk = new Walk(folder)) {
            walk.all();
        }
    }
}
