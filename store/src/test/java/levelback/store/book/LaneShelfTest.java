package levelback.store.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import levelback.scoring.value.MediaTime;
import levelback.scoring.value.TimeBase;
import levelback.store.herd.Cow;
import levelback.store.herd.Herd;
import levelback.store.herd.Visit;
import levelback.store.lane.GateRead;
import levelback.store.lane.Pass;
import levelback.store.lane.Recording;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LaneShelfTest {

    @TempDir
    Path folder;

    private Book book;
    private final Herd herd = Sample.herd("Otter Hill");
    private Visit visit;

    @BeforeEach
    void open() {
        book = Books.create(folder.resolve("a.levelback"));
        book.herd().put(herd);
        visit = book.herd().visitOn(herd.id(), Sample.DAY);
    }

    @AfterEach
    void close() {
        book.close();
    }

    @Test
    void keepsARecordingWithAllItsFacts() {
        Recording recording = Sample.recording(visit.id(), "eimer käse?100%.mp4");
        Recording unknownTime = new Recording(
                Sample.recording(visit.id(), "b").id(),
                visit.id(),
                Path.of("b.mkv"),
                "b",
                "vp9",
                640,
                360,
                0,
                new TimeBase(1001, 30_000),
                1,
                0,
                33_367,
                Optional.empty());
        book.lane().put(unknownTime);
        book.lane().put(recording);
        assertThat(book.lane().recording(recording.id())).contains(recording);
        assertThat(book.lane().byFingerprint(visit.id(), recording.fingerprint()))
                .contains(recording);
        assertThat(book.lane().byFingerprint(visit.id(), "other")).isEmpty();
        assertThat(book.lane().recordingsOf(visit.id()))
                .as("known times first")
                .containsExactly(recording, unknownTime);
    }

    @Test
    void passesStandInMilkingOrder() {
        Recording second = at(Sample.recording(visit.id(), "second"), Sample.AT.plusSeconds(60));
        Recording first = Sample.recording(visit.id(), "first");
        book.lane().put(second);
        book.lane().put(first);
        Pass c = Sample.pass(second, 5, 90, Optional.empty());
        Pass b = Sample.pass(first, 300, 400, Optional.empty());
        Pass a = Sample.pass(first, 10, 320, Optional.empty());
        book.lane().put(c);
        book.lane().put(b);
        book.lane().put(a);
        assertThat(book.lane().passesOf(visit.id())).containsExactly(a, b, c);
        assertThat(book.lane().pass(b.id())).contains(b);
    }

    @Test
    void aCorrectedPassKeepsWhichCowItWasBefore() {
        Cow cow = Sample.cow(herd.id(), "412");
        Cow other = Sample.cow(herd.id(), "77");
        book.herd().put(cow, Sample.DAY);
        book.herd().put(other, Sample.DAY);
        Recording recording = Sample.recording(visit.id(), "a");
        book.lane().put(recording);
        Pass pass = Sample.pass(recording, 10, 90, Optional.of(cow.id()));
        book.lane().put(pass);
        Pass corrected = new Pass(
                pass.id(),
                pass.recording(),
                12,
                90,
                new MediaTime(12 * 3600L, recording.timeBase()),
                pass.to(),
                pass.direction(),
                Optional.of(other.id()));
        book.lane().put(corrected);
        assertThat(book.lane().passesOf(cow.id())).isEmpty();
        assertThat(book.lane().passesOf(other.id())).containsExactly(corrected);
        assertThat(book.changes(Optional.of(other.id()), 50))
                .anyMatch(c -> c.kind().equals("pass")
                        && c.from().orElse("").contains("\"from_frame\":10")
                        && c.to().contains("\"from_frame\":12"));
    }

    @Test
    void aPassMustLieForwards() {
        Recording recording = Sample.recording(visit.id(), "a");
        book.lane().put(recording);
        assertThatThrownBy(() -> book.lane().put(Sample.pass(recording, 90, 10, Optional.empty())))
                .isInstanceOf(StoreException.class);
    }

    @Test
    void aGateReadCountsOnce() {
        Instant at = Instant.parse("2026-03-14T05:00:00.250Z");
        assertThat(book.lane().putRead(visit.id(), at, "276000000000412", "exit"))
                .isTrue();
        assertThat(book.lane().putRead(visit.id(), at, "276000000000412", "exit"))
                .isFalse();
        assertThat(book.lane().putRead(visit.id(), at.minusSeconds(9), "276000000000412", "exit"))
                .isTrue();
        assertThat(book.lane().readsOf(visit.id()))
                .containsExactly(
                        new GateRead(at.minusSeconds(9), "276000000000412", "exit"),
                        new GateRead(at, "276000000000412", "exit"));
    }

    private static Recording at(Recording r, Instant at) {
        return new Recording(
                r.id(),
                r.visit(),
                r.file(),
                r.fingerprint(),
                r.codec(),
                r.width(),
                r.height(),
                r.rotationDegrees(),
                r.timeBase(),
                r.frameCount(),
                r.startUs(),
                r.durationUs(),
                Optional.of(at));
    }
}
