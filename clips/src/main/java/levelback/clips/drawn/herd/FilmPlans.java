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
import levelback.clips.drawn.LaneQueue;
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
    /** Empty lane between two cows, in seconds. */
    private static final double GAP_S = 0.5;

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
        for (int i = 0; i < cows.size(); i++) {
            HerdCow cow = plan.cow(cows.get(i));
            HerdState state = visit.states().stream()
                    .filter(s -> s.cow().equals(cow.number()))
                    .findFirst()
                    .orElseThrow();
            boolean stops = visit.ordinal() % 2 == 0 && part == 0 && i == cows.size() / 2;
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
                    0,
                    draws.nextLong(),
                    stops ? List.of(new WalkEvent.Stop(1.4, 1.2)) : List.of()));
        }
        LaneQueue lined = LaneQueue.lined(walks, CameraPlan.USUAL, GAP_S);
        for (int i = 0; i < cows.size(); i++) {
            past.add(new GateReads.Walk(
                    cows.get(i),
                    start.plusMillis(Math.round(1000 * lined.middlesS().get(i)))));
        }
        GateReads gate = GateReads.of(plan, 10 * visit.ordinal() + part, past);
        return new RecordingPlan(
                "exit-" + visit.date() + "-" + (part == 0 ? "out" : "back"),
                draws.nextLong(),
                CameraPlan.USUAL,
                FrameRate.PAL,
                lined.lengthS(),
                lined.walks(),
                start,
                Optional.of(new RecordingPlan.GateClock(
                        gate.clockOffsetS(),
                        gate.clockDriftPpm(),
                        gate.reads().stream()
                                .map(r -> new RecordingPlan.Read(r.at(), r.tag(), r.cow(), r.mark()))
                                .toList())));
    }
}
