package levelback.clips.drawn.paint;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import levelback.clips.drawn.CameraPlan;
import levelback.clips.drawn.Direction;
import levelback.clips.drawn.FrameRate;
import levelback.clips.drawn.RecordingPlan;
import levelback.clips.drawn.WalkPlan;
import levelback.clips.drawn.WalkerTraits;
import levelback.clips.drawn.gait.LimbPose;
import levelback.clips.drawn.gait.Pose;
import levelback.clips.drawn.gait.Walker;
import levelback.scoring.value.Leg;
import org.junit.jupiter.api.Test;

/** What is painted lies where the truth says it lies. */
class FramePainterTest {

    private static RecordingPlan plan(Direction direction, double s, Optional<Leg> lame) {
        return plan(CameraPlan.USUAL, direction, s, lame);
    }

    private static RecordingPlan plan(CameraPlan camera, Direction direction, double s, Optional<Leg> lame) {
        WalkPlan walk = new WalkPlan(new WalkerTraits("0101", 1, 1, .5, true, 3), s, lame, direction, .5, 4, List.of());
        return new RecordingPlan("x", 5, camera, FrameRate.PAL, 12, List.of(walk), Instant.EPOCH, Optional.empty());
    }

    @Test
    void paintedHoofStandsOnItsProjectedToe() {
        for (Direction direction : Direction.values()) {
            CameraPlan camera = direction == Direction.LEFT_TO_RIGHT ? CameraPlan.USUAL : CameraPlan.FURTHER;
            try (FramePainter painter = new FramePainter(plan(camera, direction, 3, Optional.of(Leg.LH)));
                    FramePainter.Easel easel = painter.easel()) {
                Walker walker = painter.walkers().get(0);
                int middle = (int) (walker.middleTimeS() * 25);
                int checked = 0;
                Map<String, Double> footing = new HashMap<>();
                for (int frame = middle - 25; frame < middle + 25; frame++) {
                    FramePainter.Shown shown = painter.paint(frame, easel).get(0);
                    Pose pose = walker.pose(FrameRate.PAL.timeS(frame));
                    for (LimbPose limb : pose.limbs()) {
                        int layer = CowPainter.layerOf(limb.leg(), direction.sign());
                        String name = "hoof_" + limb.leg();
                        if (!limb.planted() || layer < CowPainter.NEAR_HIND || limb.pitchRad() > .01) {
                            footing.remove(name);
                            continue;
                        }
                        FramePainter.Point toe = shown.points().stream()
                                .filter(point -> point.name().equals(name))
                                .findFirst()
                                .orElseThrow();
                        double[] found = lowestForemost(easel.canvas, 16 + layer, direction.sign());
                        assertThat(found[1]).as("row of the sole").isBetween(toe.yPx() - 1.6, toe.yPx() + 1.6);
                        assertThat(found[0]).as("column of the toe").isBetween(toe.xPx() - 2.2, toe.xPx() + 2.2);
                        // In stance its print does not move, in the truth nor in the picture.
                        double before = footing.getOrDefault(name, found[0]);
                        assertThat(Math.abs(found[0] - before)).as("slide").isLessThanOrEqualTo(1);
                        footing.put(name, before);
                        checked++;
                    }
                }
                assertThat(checked).isGreaterThan(30);
            }
        }
    }

    /** Foremost column within 3 rows of the lowest row of a layer, and that lowest row. */
    private static double[] lowestForemost(Canvas canvas, int layer, int way) {
        int lowest = -1;
        int best = way > 0 ? -1 : canvas.width;
        for (int y = canvas.height - 1; y >= 0 && y > lowest - 3; y--) {
            for (int x = 0; x < canvas.width; x++) {
                if ((canvas.owner[y * canvas.width + x] & 0xff) == layer) {
                    lowest = Math.max(lowest, y);
                    best = way > 0 ? Math.max(best, x) : Math.min(best, x);
                }
            }
        }
        return new double[] {best, lowest};
    }

    @Test
    void farLegsAreDarkerThanNearOnesAndNothingIsBurntOut() {
        try (FramePainter painter = new FramePainter(plan(Direction.LEFT_TO_RIGHT, 1.5, Optional.empty()));
                FramePainter.Easel easel = painter.easel()) {
            int middle = (int) (painter.walkers().get(0).middleTimeS() * 25);
            double[] sum = new double[16];
            int[] n = new int[16];
            int burnt = 0;
            for (int frame = middle - 12; frame < middle + 12; frame += 3) {
                painter.paint(frame, easel);
                Canvas canvas = easel.canvas;
                int below = (int) CameraPlan.USUAL.rowPx(.45, 0);
                for (int i = 0; i < canvas.owner.length; i++) {
                    int layer = canvas.owner[i] & 15;
                    int green = canvas.bgr[3 * i + 1] & 0xff;
                    burnt += layer > 0 && green > 245 ? 1 : 0;
                    if (i / canvas.width > below) {
                        sum[layer] += green;
                        n[layer]++;
                    }
                }
            }
            double near = (sum[CowPainter.NEAR_FORE] + sum[CowPainter.NEAR_HIND])
                    / (n[CowPainter.NEAR_FORE] + n[CowPainter.NEAR_HIND]);
            double far = (sum[CowPainter.FAR_FORE] + sum[CowPainter.FAR_HIND])
                    / (n[CowPainter.FAR_FORE] + n[CowPainter.FAR_HIND]);
            assertThat(far / near).isBetween(.45, .85);
            assertThat(burnt).isZero();
        }
    }

    @Test
    void noiseIsAnotherInEveryFrameAndAFrameIsTheSameWheneverItIsPainted() {
        try (FramePainter painter = new FramePainter(plan(Direction.LEFT_TO_RIGHT, 1.5, Optional.empty()));
                FramePainter.Easel easel = painter.easel()) {
            byte[] one = new byte[960 * 540 * 3];
            byte[] two = new byte[960 * 540 * 3];
            byte[] again = new byte[960 * 540 * 3];
            List<byte[]> all = new ArrayList<>(List.of(one, two, again));
            int[] frames = {2, 3, 2};
            for (int i = 0; i < 3; i++) {
                painter.paint(frames[i], easel);
                easel.copyTo(all.get(i));
            }
            assertThat(again).isEqualTo(one);
            // Empty lane: all that changes is the noise, of sigma 2.2 a channel, and the lamps' flicker.
            double squares = 0;
            int still = 0;
            for (int i = 0; i < one.length; i++) {
                int d = (one[i] & 0xff) - (two[i] & 0xff);
                squares += d * d;
                still += d == 0 ? 1 : 0;
            }
            assertThat(Math.sqrt(squares / one.length)).isBetween(2.2, 4.5);
            assertThat((double) still / one.length).isLessThan(.35);
        }
    }

    @Test
    void twoCoatsDiffer() {
        Texture one = Coat.bake(new WalkerTraits("1", 1, 1, .5, true, 1), 1);
        Texture two = Coat.bake(new WalkerTraits("2", 1, 1, .5, true, 2), 1);
        Texture dark = Coat.bake(new WalkerTraits("3", 1, 1, .75, true, 3), 1);
        int differ = 0;
        for (int i = 0; i < one.colour.length; i++) {
            differ += ((one.colour[i] & 0xff) > 110) != ((two.colour[i] & 0xff) > 110) ? 1 : 0;
        }
        assertThat((double) differ / one.colour.length).isGreaterThan(.10);
        assertThat(darkShare(one)).isBetween(.42, .58);
        assertThat(darkShare(dark)).isBetween(.67, .83);
    }

    private static double darkShare(Texture coat) {
        Spline.Path outline = Spline.through(Outlines.trunk(Walker.standing().body()), true, 6);
        for (int i = 0; i < outline.size; i++) {
            outline.x[i] = (outline.x[i] - coat.leftM) * coat.pxPerM;
            outline.y[i] = (coat.topM - outline.y[i]) * coat.pxPerM;
        }
        float[] mask = Coat.mask(outline, coat.width, coat.height);
        int dark = 0;
        int all = 0;
        for (int i = 0; i < mask.length; i++) {
            if (mask[i] > .5) {
                all++;
                dark += (coat.colour[i] & 0xff) < 110 ? 1 : 0;
            }
        }
        return (double) dark / all;
    }
}
