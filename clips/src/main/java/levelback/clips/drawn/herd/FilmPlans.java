package levelback.clips.drawn.herd;

import java.time.Instant;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import levelback.clips.drawn.CameraPlan;
import levelback.clips.drawn.Direction;
import levelback.clips.drawn.FrameRate;
import levelback.clips.drawn.RecordingPlan;
import levelback.clips.drawn.WalkEvent;
import levelback.clips.drawn.WalkPlan;
import levelback.clips.drawn.WalkerTraits;

/**
 * The films of a visit: half of the cows walk out to the right, the other half come back to the left, one after the
 * other, past the usual camera at 25 frames a second.
 */
public final class FilmPlans {

    /** Morning milking, by the farm's clock. */
    private static final LocalTime MILKING = LocalTime.of(6, 10);
    /** Muzzle to tail of a mature cow, in metres. */
    private static final double BODY_M = 2.75;
    /** Empty lane between two cows, in seconds. */
    private static final double GAP_S = 0.5;
    /** Speed on the line of severity at 1, 2, 3, 4, 5: stride length over stride time of the gait model. */
    private static final double[] SPEED = {1.50 / 1.14, 1.46 / 1.18, 1.405 / 1.235, 1.315 / 1.455, 1.10 / 1.80};

    private FilmPlans() {}

    /** The two films of a visit, with what the reader at the gate wrote; none for a visit without film. */
    public static List<RecordingPlan> of(HerdPlan plan, HerdVisit visit) {
        List<RecordingPlan> films = new ArrayList<>();
        List<String> order = visit.filmed();
        if (order.isEmpty()) {
            return films;
        }
        int half = (order.size() + 1) / 2;
        Instant start = visit.date().atTime(MILKING).atZone(plan.zone()).toInstant();
        for (int part = 0; part < 2; part++) {
            List<String> cows = part == 0 ? order.subList(0, half) : order.subList(half, order.size());
            if (cows.isEmpty()) {
                continue;
            }
            RecordingPlan film = film(plan, visit, cows, part, start);
            films.add(film);
            start = start.plusMillis(Math.round(film.lengthS() * 1000) + 45_000);
        }
        return films;
    }

    private static RecordingPlan film(HerdPlan plan, HerdVisit visit, List<String> cows, int part, Instant start) {
        Direction direction = part == 0 ? Direction.LEFT_TO_RIGHT : Direction.RIGHT_TO_LEFT;
        Random draws = new Random(HerdLife.mixed(plan.seed(), 20_000L + 10L * visit.ordinal() + part));
        List<WalkPlan> walks = new ArrayList<>();
        List<GateReads.Walk> past = new ArrayList<>();
        double time = 0.6;
        for (int i = 0; i < cows.size(); i++) {
            HerdCow cow = plan.cow(cows.get(i));
            HerdState state = visit.states().stream()
                    .filter(s -> s.cow().equals(cow.number()))
                    .findFirst()
                    .orElseThrow();
            List<WalkEvent> events = new ArrayList<>();
            double held = 0;
            if (visit.ordinal() % 2 == 0 && part == 0 && i == cows.size() / 2) {
                held = 1.2;
                events.add(new WalkEvent.Stop(1.4, held));
            }
            double seconds = seconds(cow, state.severity()) + (held > 0 ? held + 0.8 : 0);
            walks.add(new WalkPlan(
                    new WalkerTraits(
                            cow.number(),
                            cow.sizeFactor(),
                            cow.strideFactor(),
                            cow.darkShare(),
                            cow.star(),
                            cow.coatSeed()),
                    state.severity(),
                    state.lameLeg(),
                    direction,
                    time,
                    draws.nextLong(),
                    events));
            past.add(new GateReads.Walk(cow.number(), start.plusMillis(Math.round(1000 * (time + seconds / 2)))));
            time += seconds + GAP_S;
        }
        GateReads gate = GateReads.of(plan, 10 * visit.ordinal() + part, past);
        return new RecordingPlan(
                "exit-" + visit.date() + "-" + (part == 0 ? "out" : "back"),
                draws.nextLong(),
                CameraPlan.USUAL,
                FrameRate.PAL,
                time,
                walks,
                start,
                Optional.of(new RecordingPlan.GateClock(
                        gate.clockOffsetS(),
                        gate.clockDriftPpm(),
                        gate.reads().stream()
                                .map(r -> new RecordingPlan.Read(r.at(), r.tag(), r.cow(), r.mark()))
                                .toList())));
    }

    /** How long she is in the picture: the lane on show at the far legs and her own length, at her own speed. */
    private static double seconds(HerdCow cow, double severity) {
        int below = Math.min(3, Math.max(0, (int) severity - 1));
        double t = severity - 1 - below;
        double speed = SPEED[below] + t * (SPEED[below + 1] - SPEED[below]);
        // Lengths go by size and times by its root; her own stride by .6 and .4.
        double own = speed * cow.strideFactor() * Math.sqrt(cow.sizeFactor());
        return (2 * CameraPlan.USUAL.halfWidthM(0.19) + BODY_M * cow.sizeFactor()) / own;
    }
}
