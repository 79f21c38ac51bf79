package levelback.player.work;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import levelback.clips.open.Clip;
import levelback.scoring.value.MediaTime;
import org.junit.jupiter.api.Test;

class FrameTimeTest {

    /** Over the films of every kind: some MPEG-2 pictures carry no stamp, and a pass must not begin and end on two clocks. */
    @Test
    void allFramesOfAFilmAreOnOneClockAndInOrder() throws Exception {
        int stampless = 0;
        for (String name : List.of("mpeg1.mpg", "mpeg2-wide.mpg", "mpeg2-one.mpg")) {
            Path film = Path.of("..", "clips", "src", "test", "resources", "corpus", name);
            assertThat(film).exists();
            Clip clip = Clip.open(film, () -> false);
            List<MediaTime> times = IntStream.range(0, clip.index().frames().size())
                    .mapToObj(frame -> FrameTime.of(clip, frame))
                    .toList();
            assertThat(times.stream().map(MediaTime::timeBase).distinct())
                    .as(name)
                    .hasSize(1);
            assertThat(times.stream().mapToLong(MediaTime::ticks).toArray())
                    .as(name)
                    .isSorted();
            boolean any = clip.index().frames().stream().anyMatch(f -> f.pts().isPresent());
            boolean all = clip.index().frames().stream().allMatch(f -> f.pts().isPresent());
            stampless += any && !all ? 1 : 0;
        }
        assertThat(stampless).as("films with pictures without a stamp").isPositive();
    }
}
