package levelback.player.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import levelback.clips.open.ClipException;
import levelback.scoring.value.Interval;
import levelback.store.book.Book;
import levelback.store.book.BookCheck;
import levelback.store.book.Books;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The whole demo, whole and small, and what is left of it when it fails. */
class DrawDemoTest {

    private static final DrawDemo.Size SMALL = new DrawDemo.Size(12, 3, 2, 20);

    @TempDir
    Path temp;

    @Test
    void aFailureLeavesNothingBehind() throws IOException {
        DrawDemo.Draughtsman failing = (plan, films, truths, fractionDone, cancelled) -> {
            Files.writeString(films.resolve(plan.name() + ".mp4"), "half a film");
            Path truth = Files.createDirectories(truths.resolve(plan.name()));
            Files.writeString(truth.resolve("footfalls.csv"), "half a truth");
            throw new ClipException(ClipException.Reason.CANNOT_WRITE, "The disk is full; make room.");
        };
        Path fresh = temp.resolve("fresh");
        assertThatThrownBy(() -> new DrawDemo(SMALL, failing, "test").draw(fresh, false, (s, f) -> {}))
                .isInstanceOf(ClipException.class)
                .hasMessage("The disk is full; make room.");
        assertThat(fresh).doesNotExist();
        Path used = Files.createDirectory(temp.resolve("used"));
        assertThatThrownBy(() -> new DrawDemo(SMALL, failing, "test").draw(used, false, (s, f) -> {}))
                .isInstanceOf(ClipException.class);
        try (Stream<Path> left = Files.list(used)) {
            assertThat(left).isEmpty();
        }
    }

    @Test
    void aSmallDemoIsFilmedReadAndReported() throws Exception {
        DrawDemo.Demo demo = new DrawDemo(SMALL, "test").draw(temp.resolve("demo"), false, (s, f) -> {});
        // Two cows at each of the last two visits: one walks out, one walks back.
        assertThat(demo.films()).hasSize(4).allMatch(Files::isRegularFile);
        try (Book book = Books.open(demo.book())) {
            BookCheck check = book.check();
            assertThat(check.problems()).isEmpty();
            assertThat(check.counts().recordings()).isEqualTo(4);
            assertThat(check.counts().passes()).isEqualTo(4);
            assertThat(check.counts().scores()).isEqualTo(2 * 12 * 3);
        }
        assertThat(demo.report().figures().thenAndNow()).isPresent();
        assertThat(demo.report().figures().thenAndNow().orElseThrow().now().png().length)
                .isGreaterThan(10_000);
        assertThat(Files.readString(demo.report().html())).contains("data:image/png;base64,");
        List<String> made = Files.readAllLines(demo.folder().resolve(DemoFolder.LIST));
        assertThat(made).contains("truth/truth.json", "report.pdf", "demo.levelback");
        // Drawn again over itself, and never over something else.
        assertThatThrownBy(() -> new DrawDemo(SMALL, "test").draw(demo.folder(), false, (s, f) -> {}))
                .isInstanceOf(BadInput.class);
    }

    @Test
    @Tag("slow")
    void theWholeDemoFindsTheTruth() throws Exception {
        DrawDemo.Demo demo = new DrawDemo("test").draw(temp.resolve("demo"), false, (s, f) -> {});
        Interval sensitivity = demo.report()
                .figures()
                .trust()
                .rows()
                .get(0)
                .corrected()
                .orElseThrow()
                .interval()
                .orElseThrow();
        assertThat(demo.truth().sensitivity().get("A")).isBetween(sensitivity.low(), sensitivity.high());
        try (Book book = Books.open(demo.book())) {
            BookCheck check = book.check();
            assertThat(check.problems()).isEmpty();
            assertThat(check.counts().passes()).isEqualTo(32);
            assertThat(check.counts().scores()).isEqualTo(2 * 60 * 9);
        }
    }
}
