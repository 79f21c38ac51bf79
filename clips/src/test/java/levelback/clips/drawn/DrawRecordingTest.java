package levelback.clips.drawn;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.stream.Stream;
import levelback.clips.decode.FrameReader;
import levelback.clips.drawn.truth.EventTruth;
import levelback.clips.drawn.truth.MarkTruth;
import levelback.clips.drawn.truth.PassTruth;
import levelback.clips.open.Clip;
import levelback.scoring.value.Leg;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whole recordings, small: the film decodes back, the truth fits it, the same plan gives the same bytes. */
class DrawRecordingTest {
    private static final CameraPlan SMALL = new CameraPlan(320, 180, 1000.0 / 3, 5.2);

    @TempDir
    Path dir;

    private static WalkPlan cow(String number, double s, Optional<Leg> lame, Direction direction, WalkEvent... events) {
        return new WalkPlan(
                new WalkerTraits(number, 1, 1, .5, true, number.hashCode()),
                s,
                lame,
                direction,
                0,
                number.hashCode(),
                List.of(events));
    }

    private static RecordingPlan recording(String name, FrameRate rate, LaneQueue queue) {
        return new RecordingPlan(
                name,
                7,
                SMALL,
                rate,
                queue.lengthS(),
                queue.walks(),
                Instant.parse("2026-03-14T05:00:00Z"),
                Optional.of(new RecordingPlan.GateClock(
                        3.5,
                        20,
                        List.of(new RecordingPlan.Read(
                                Instant.parse("2026-03-14T05:00:04Z"), "999000000000101", "0101", "ok")))));
    }

    private static DrawRecording.Drawn draw(RecordingPlan plan, Path into) throws IOException {
        return DrawRecording.draw(plan, into, done -> {}, () -> false);
    }

    @Test
    void filmDecodesBackAndTheSamePlanGivesTheSameBytes() throws Exception {
        LaneQueue queue =
                LaneQueue.lined(List.of(cow("0101", 1.5, Optional.empty(), Direction.LEFT_TO_RIGHT)), SMALL, 1);
        RecordingPlan plan = recording("one", FrameRate.NTSC, queue);
        DrawRecording.Drawn first = draw(plan, dir.resolve("a"));
        DrawRecording.Drawn second = draw(plan, dir.resolve("b"));
        assertThat(Files.mismatch(first.film(), second.film())).isEqualTo(-1);
        assertThat(first.truth()).isEqualTo(second.truth());
        List<String> names = new ArrayList<>();
        try (Stream<Path> files = Files.list(first.truthFolder())) {
            for (Path file : files.sorted().toList()) {
                String name = file.getFileName().toString();
                names.add(name);
                assertThat(Files.mismatch(file, second.truthFolder().resolve(name)))
                        .isEqualTo(-1);
            }
        }
        assertThat(names)
                .containsExactly(
                        "events.csv", "footfalls.csv", "marks.csv", "passes.csv", "reads.csv", "recording.json");

        Clip clip = Clip.open(first.film(), () -> false);
        assertThat(clip.facts().frameCount())
                .isEqualTo(plan.frameCount())
                .isEqualTo(first.truth().frameCount());
        assertThat(clip.facts().recordedAt()).contains(plan.startedAt());
        assertThat(clip.facts().codec()).isEqualTo("mpeg4");
        assertThat(clip.facts().averageFrameRate()).isCloseTo(30_000.0 / 1001, within(.001));
        assertThat(clip.index().frames().stream().filter(f -> f.keyFrame()).count())
                .isBetween(plan.frameCount() / 50L, plan.frameCount() / 50L + 2);

        // A frame as decoded: she is in the middle of her pass, and her white coat is the brightest thing there.
        PassTruth pass = first.truth().passes().get(0);
        int middle = (pass.fromFrame() + pass.toFrame()) / 2;
        ByteBuffer bgra = ByteBuffer.allocateDirect(320 * 180 * 4);
        try (FrameReader reader = clip.reader()) {
            reader.readBgra(middle, bgra, 320 * 4);
        }
        int bright = 0;
        for (int i = 0; i < 320 * 180; i++) {
            int green = bgra.get(4 * i + 1) & 0xff;
            assertThat(green).isLessThan(250);
            bright += green > 185 ? 1 : 0;
        }
        assertThat(bright).isBetween(400, 8000);
    }

    @Test
    void marksLieInThePictureAndOnlyWhileSheShows() throws Exception {
        LaneQueue queue = LaneQueue.lined(
                List.of(
                        cow("0101", 4, Optional.of(Leg.LH), Direction.RIGHT_TO_LEFT),
                        cow("0102", 2, Optional.empty(), Direction.LEFT_TO_RIGHT)),
                SMALL,
                1);
        DrawRecording.Drawn drawn = draw(recording("two", FrameRate.PAL, queue), dir);
        assertThat(drawn.truth().passes()).hasSize(2).noneMatch(PassTruth::crowded);
        assertThat(drawn.truth().passes().get(0).toFrame())
                .isLessThan(drawn.truth().passes().get(1).fromFrame());
        int hidden = 0;
        for (MarkTruth mark : drawn.truth().marks()) {
            PassTruth pass = drawn.truth().passes().get(mark.pass() - 1);
            assertThat(mark.frame()).isBetween(pass.fromFrame() - 1, pass.toFrame() + 1);
            assertThat(mark.xPx()).isBetween(-.5, 319.5);
            assertThat(mark.yPx()).isBetween(-.5, 179.5);
            // The picture's x and the way she walks agree.
            double middle = 159.5;
            int way = pass.walk().direction().sign();
            double scale = way * (mark.xPx() - middle) / (Math.abs(mark.xM()) < .2 ? Double.NaN : mark.xM());
            if (!Double.isNaN(scale)) {
                assertThat(scale).isBetween(SMALL.pxPerM(.19) - .01, SMALL.pxPerM(-.19) + .01);
            }
            hidden += mark.hidden() ? 1 : 0;
        }
        assertThat(hidden).isBetween(20, drawn.truth().marks().size() / 3);
        // Of the far limbs something is hidden now and then; the near hooves never are.
        assertThat(drawn.truth().marks())
                .filteredOn(mark -> mark.pass() == 1 && mark.point().startsWith("hoof_L"))
                .noneMatch(MarkTruth::hidden);
        // Truth as files reads back to the same numbers.
        List<String> lines = Files.readAllLines(drawn.truthFolder().resolve("marks.csv"));
        assertThat(lines).hasSize(drawn.truth().marks().size() + 1);
        String[] cells = lines.get(1).split(",", -1);
        assertThat(Double.parseDouble(cells[6]))
                .isCloseTo(drawn.truth().marks().get(0).xPx(), within(.0006));
        List<String> falls = Files.readAllLines(drawn.truthFolder().resolve("footfalls.csv"));
        assertThat(falls.get(0)).isEqualTo("pass,time_s,leg,event,x_m,y_m");
        assertThat(falls).hasSize(drawn.truth().footfalls().size() + 1);
    }

    @Test
    void cancelledDrawingLeavesNothingBehind() {
        LaneQueue queue =
                LaneQueue.lined(List.of(cow("0101", 1.5, Optional.empty(), Direction.LEFT_TO_RIGHT)), SMALL, 1);
        int[] polls = {0};
        assertThatThrownBy(() -> DrawRecording.draw(
                        recording("stopped", FrameRate.PAL, queue), dir, done -> {}, () -> ++polls[0] > 5))
                .isInstanceOf(CancellationException.class);
        assertThat(dir).isEmptyDirectory();
    }

    @Test
    @Tag("slow")
    void eventsAreFlaggedAndTwoCowsAreCrowded() throws Exception {
        List<WalkPlan> walks = List.of(
                cow("0101", 1.5, Optional.empty(), Direction.LEFT_TO_RIGHT, new WalkEvent.Stop(2.2, 1.5)),
                cow("0102", 2, Optional.empty(), Direction.LEFT_TO_RIGHT, new WalkEvent.Slip(2, Leg.RH, .08)),
                cow("0103", 2, Optional.empty(), Direction.RIGHT_TO_LEFT, new WalkEvent.TurnBack(2, true)),
                cow("0104", 2, Optional.empty(), Direction.RIGHT_TO_LEFT, new WalkEvent.TurnBack(2, false)));
        LaneQueue queue = LaneQueue.lined(walks, SMALL, 1);
        List<WalkPlan> all = new ArrayList<>(queue.walks());
        double close = queue.walks().get(3).enterTimeS() + 2.0;
        all.add(cow("0105", 2, Optional.empty(), Direction.RIGHT_TO_LEFT).enteringAt(close));
        DrawRecording.Drawn drawn =
                draw(recording("events", FrameRate.PAL, new LaneQueue(all, queue.middlesS(), queue.lengthS())), dir);
        List<PassTruth> passes = drawn.truth().passes();
        assertThat(passes).extracting(PassTruth::crowded).containsExactly(false, false, false, true, true);
        assertThat(drawn.truth().events())
                .extracting(EventTruth::event)
                .contains("stop", "slip", "turn-back", "two-cows");
        assertThat(drawn.truth().events())
                .filteredOn(event -> event.event().equals("slip"))
                .allMatch(event -> event.leg().equals(Optional.of(Leg.RH)));
        // She who turns back leaves where she came from: her last mark lies on the side of her first.
        List<MarkTruth> turned = drawn.truth().marks().stream()
                .filter(mark -> mark.pass() == 3 && mark.point().equals("poll"))
                .toList();
        assertThat(turned.get(0).xPx()).isGreaterThan(160);
        assertThat(turned.get(turned.size() - 1).xPx()).isGreaterThan(160);
        assertThat(Files.readString(drawn.truthFolder().resolve("passes.csv"))).contains("turn-back");
        assertThat(Clip.open(drawn.film(), () -> false).facts().frameCount())
                .isEqualTo(drawn.truth().frameCount());
    }
}
