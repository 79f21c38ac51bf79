package levelback.clips.drawn;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import levelback.clips.drawn.gait.GaitNumbers;
import levelback.clips.drawn.gait.Walker;
import levelback.clips.drawn.paint.FramePainter;
import levelback.clips.drawn.truth.EventTruth;
import levelback.clips.drawn.truth.FootfallTruth;
import levelback.clips.drawn.truth.MarkTruth;
import levelback.clips.drawn.truth.PassTruth;
import levelback.clips.drawn.truth.RecordingTruth;

/** Collects what a recording truly holds: times and places from the gait model, visibility from the layers painted. */
final class WriteDownTruth {
    /** A cow shows from 12 pixels of hers on, at 960×540. */
    private static final double SHOWS_AT_SHARE = 12.0 / (960 * 540);

    private WriteDownTruth() {}

    static RecordingTruth of(RecordingPlan plan, List<Walker> walkers, List<List<FramePainter.Shown>> shown) {
        CameraPlan camera = plan.camera();
        double least = SHOWS_AT_SHARE * camera.widthPx() * camera.heightPx();
        int walks = walkers.size();
        int[] from = new int[walks];
        int[] to = new int[walks];
        boolean[] crowded = new boolean[walks];
        java.util.Arrays.fill(from, Integer.MAX_VALUE);
        java.util.Arrays.fill(to, -1);
        for (int frame = 0; frame < shown.size(); frame++) {
            List<FramePainter.Shown> seen = new ArrayList<>(shown.get(frame));
            seen.removeIf(one -> one.pixels() < least);
            for (FramePainter.Shown one : seen) {
                from[one.walk()] = Math.min(from[one.walk()], frame);
                to[one.walk()] = frame;
                crowded[one.walk()] |= seen.size() > 1;
            }
        }
        List<PassTruth> passes = new ArrayList<>();
        List<FootfallTruth> footfalls = new ArrayList<>();
        List<EventTruth> events = new ArrayList<>();
        List<List<MarkTruth>> marks = new ArrayList<>();
        for (int i = 0; i < walks; i++) {
            int pass = i + 1;
            marks.add(new ArrayList<>());
            Walker walker = walkers.get(i);
            boolean seen = to[i] >= 0;
            double fromS = seen ? plan.rate().timeS(from[i]) : 0;
            double toS = seen ? plan.rate().timeS(to[i]) : -1;
            TreeSet<String> flags = new TreeSet<>();
            for (Walker.EventAt at : walker.events()) {
                if (seen && at.timeS() >= fromS && at.timeS() <= toS) {
                    Optional<levelback.scoring.value.Leg> leg =
                            at.event() instanceof WalkEvent.Slip slip ? Optional.of(slip.leg()) : Optional.empty();
                    events.add(new EventTruth(pass, at.timeS(), at.event().text(), leg));
                    flags.add(at.event().text());
                }
            }
            if (crowded[i]) {
                events.add(new EventTruth(pass, firstCrowdedS(plan, shown, i, least), "two-cows", Optional.empty()));
            }
            if (seen && (from[i] == 0 || to[i] == shown.size() - 1)) {
                flags.add("cut-off");
            }
            for (Walker.Footfall fall : walker.footfalls(fromS, toS)) {
                footfalls.add(new FootfallTruth(pass, fall.timeS(), fall.leg(), fall.down(), fall.alongM(), 0));
            }
            GaitNumbers numbers = walker.numbers();
            passes.add(new PassTruth(
                    pass,
                    walker.plan(),
                    seen ? from[i] : 0,
                    to[i],
                    crowded[i],
                    List.copyOf(flags),
                    numbers.strideM() * walker.plan().traits().sizeFactor(),
                    numbers.strideS()));
        }
        for (int frame = 0; frame < shown.size(); frame++) {
            for (FramePainter.Shown one : shown.get(frame)) {
                for (FramePainter.Point point : one.points()) {
                    if (point.xPx() >= -.5
                            && point.yPx() >= -.5
                            && point.xPx() < camera.widthPx() - .5
                            && point.yPx() < camera.heightPx() - .5) {
                        marks.get(one.walk())
                                .add(new MarkTruth(
                                        one.walk() + 1,
                                        frame,
                                        plan.rate().timeS(frame),
                                        point.name(),
                                        point.alongM(),
                                        point.heightM(),
                                        point.xPx(),
                                        point.yPx(),
                                        point.hidden()));
                    }
                }
            }
        }
        events.sort(Comparator.comparingInt(EventTruth::pass).thenComparingDouble(EventTruth::timeS));
        List<MarkTruth> all = new ArrayList<>();
        marks.forEach(all::addAll);
        return new RecordingTruth(shown.size(), passes, footfalls, all, events);
    }

    private static double firstCrowdedS(
            RecordingPlan plan, List<List<FramePainter.Shown>> shown, int walk, double least) {
        for (int frame = 0; frame < shown.size(); frame++) {
            long seen = shown.get(frame).stream()
                    .filter(one -> one.pixels() >= least)
                    .count();
            boolean her = shown.get(frame).stream().anyMatch(one -> one.walk() == walk && one.pixels() >= least);
            if (her && seen > 1) {
                return plan.rate().timeS(frame);
            }
        }
        throw new IllegalStateException("no frame of walk " + walk + " shows two cows");
    }
}
