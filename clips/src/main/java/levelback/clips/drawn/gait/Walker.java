package levelback.clips.drawn.gait;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import levelback.clips.drawn.WalkEvent;
import levelback.clips.drawn.WalkPlan;
import levelback.scoring.value.Leg;

/**
 * One cow on her way past: her pose at any instant, and the exact instants and places of her footfalls. Everything is a
 * function of the phase p, counted in strides of LH, so that a stop or a step back keeps every identity: a planted hoof
 * stays where it is. Immutable.
 */
public final class Walker {
    /** Furthest forward that any of her reaches, cow of size 1, in metres before her middle. */
    public static final double FRONT_M = 1.53;
    /** Furthest back. */
    public static final double REAR_M = -1.00;

    private static final int FIRST_STRIDE = 8;
    private static final double SLOWING_S = .5;
    private static final double SET_DOWN_S = .22;
    private static final double TAKE_UP_S = .20;
    private static final double SLIDE_S = .080;
    private static final double SLIP_DROP_M = .02;
    private static final double BACKING = .7;

    private static final EasedKeys STANCE_PITCH = new EasedKeys(0, 0, .80, 0, .90, 12, 1, 44);
    private static final EasedKeys SWING_PITCH = new EasedKeys(0, 44, .22, 66, .55, 20, .86, -10, 1, 0);
    private static final EasedKeys STANCE_CARPUS = new EasedKeys(0, 4, .12, 0, .82, 0, 1, 16);
    private static final EasedKeys SWING_CARPUS = new EasedKeys(0, 16, .36, 68, .62, 38, .88, 3, 1, 4);

    private final WalkPlan plan;
    private final GaitNumbers numbers;
    private final double size;
    private final UnevenPace time;
    private final UnevenPace way;
    private final Passage passage = new Passage();
    private final Map<Leg, List<Tread>> treads = new EnumMap<>(Leg.class);

    private final List<EventAt> events = new ArrayList<>();
    private final double enterPhase;
    private final double startAlongM;
    private final double earPhase;
    private final double headTiltRad;
    private final double halfLaneM;

    /**
     * A planned event at its instant.
     *
     * @param event what was planned
     * @param timeS seconds from frame 0
     */
    public record EventAt(WalkEvent event, double timeS) {}

    /**
     * A hoof meeting or leaving the floor.
     *
     * @param leg which
     * @param timeS seconds from frame 0
     * @param down true: meets
     * @param alongM toe tip along the way she walks, in metres; 0 is the middle of the picture
     */
    public record Footfall(Leg leg, double timeS, boolean down, double alongM) {}

    /**
     * Lays out a walk.
     *
     * @param plan the walk
     * @param halfLaneM half of the lane on show, in metres
     */
    public Walker(WalkPlan plan, double halfLaneM) {
        this.plan = plan;
        this.halfLaneM = halfLaneM;
        numbers = GaitNumbers.of(plan);
        size = plan.traits().sizeFactor();
        Random draws = new Random(plan.gaitSeed() * 0x9E3779B97F4A7C15L + 17);
        enterPhase = FIRST_STRIDE + 4 + draws.nextDouble();
        earPhase = draws.nextDouble() * 7;
        headTiltRad = Math.toRadians(Math.max(-5, Math.min(5, 2.5 * draws.nextGaussian())));
        int strides = FIRST_STRIDE + 16 + (int) Math.ceil(2 * (2 * halfLaneM + 4 * size) / (numbers.strideM() * size));
        time = new UnevenPace(0, strides, numbers.strideS(), numbers.unevenness(), draws);
        way = new UnevenPace(0, strides, numbers.strideM(), .6 * numbers.unevenness(), draws);
        for (Leg leg : Leg.values()) {
            treads.put(leg, treads(leg, strides, draws));
        }
        layOut();
        startAlongM = -halfLaneM - FRONT_M * size - size * way.at(enterPhase);
    }

    private List<Tread> treads(Leg leg, int strides, Random draws) {
        List<Tread> made = new ArrayList<>();
        double duty = numbers.duty(leg);
        double toe = numbers.toeAtMiddleStance(leg);
        for (int j = 0; j < strides; j++) {
            double down = j + numbers.touchDown(leg) + numbers.timeJitter() * within3(draws.nextGaussian());
            double up = down + duty + .5 * numbers.timeJitter() * within3(draws.nextGaussian());
            double print = way.at((down + up) / 2) + toe + numbers.placeJitterM() * within3(draws.nextGaussian());
            made.add(new Tread(down, up, print, 0, 0));
        }
        return made;
    }

    private List<Tread> treadsOf(Leg leg) {
        return Objects.requireNonNull(treads.get(leg));
    }

    private static double within3(double n) {
        return Math.max(-3, Math.min(3, n));
    }

    /** Lays out real time against walking time, and the slips. */
    private void layOut() {
        double enterWalkS = time.at(enterPhase);
        List<WalkEvent> inOrder = new ArrayList<>(plan.events());
        inOrder.sort(Comparator.comparingDouble(WalkEvent::atStride));
        boolean left = false;
        for (WalkEvent event : inOrder) {
            double atS = time.at(enterPhase + event.atStride()) - enterWalkS;
            if (left) {
                break;
            }
            if (event instanceof WalkEvent.Slip slip) {
                slip(slip);
                continue;
            }
            passage.walkUntil(atS);
            events.add(new EventAt(event, passage.timeS() + plan.enterTimeS()));
            passage.add(SLOWING_S, 1, 0, false);
            if (event instanceof WalkEvent.Stop stop) {
                passage.add(stop.holdS(), 0, 0, true);
                passage.add(SLOWING_S, 0, 1, false);
            } else if (event instanceof WalkEvent.TurnBack back) {
                passage.add(SLOWING_S, 0, -BACKING, false);
                if (back.leaves()) {
                    passage.backForEver(BACKING);
                    left = true;
                } else {
                    // Slowing and starting take 0.25 s of walking each; what is left of 0.6 stride is walked evenly.
                    double evenS = Math.max(0, .6 * numbers.strideS() - BACKING * SLOWING_S) / BACKING;
                    passage.add(evenS, -BACKING, -BACKING, false);
                    passage.add(SLOWING_S, -BACKING, 0, false);
                    passage.add(SLOWING_S, 0, 1, false);
                }
            }
        }
        if (!left) {
            passage.walkOnForEver();
        }
        for (WalkEvent event : inOrder) {
            if (event instanceof WalkEvent.Slip slip) {
                slipTread(slip)
                        .flatMap(tread -> firstTimeS(tread.downPhase()))
                        .ifPresent(timeS -> events.add(new EventAt(slip, timeS + plan.enterTimeS())));
            }
        }
        events.sort(Comparator.comparingDouble(EventAt::timeS));
    }

    private Optional<Tread> slipTread(WalkEvent.Slip slip) {
        return treadsOf(slip.leg()).stream()
                .filter(tread -> tread.downPhase() >= enterPhase + slip.atStride())
                .findFirst();
    }

    private void slip(WalkEvent.Slip slip) {
        List<Tread> all = treadsOf(slip.leg());
        slipTread(slip)
                .ifPresent(tread -> all.set(
                        all.indexOf(tread),
                        new Tread(
                                tread.downPhase(),
                                tread.upPhase(),
                                tread.printM(),
                                slip.slideM() / size,
                                SLIDE_S / numbers.strideS())));
    }

    /** A cow of size 1 standing square, every foot at the middle of its stance, back level: where the coat is laid on. */
    public static Pose standing() {
        List<LimbPose> limbs = new ArrayList<>(4);
        for (Leg leg : Leg.values()) {
            double x = leg.isFore() ? GaitNumbers.FORE_TOE_M : GaitNumbers.HIND_TOE_M;
            Limbs.Foot foot = new Limbs.Foot(new Spot(x, 0), 0, Math.toRadians(52), 0, true);
            limbs.add(Limbs.pose(leg, foot, 0));
        }
        return new Pose(0, new BodyPose(0, 0, 0, 0, -Math.toRadians(48), 0, 0, 0), limbs);
    }

    /** When the first of her comes into the picture, by the plan. */
    public double enterTimeS() {
        return plan.enterTimeS();
    }

    /** When the last of her is out of the picture, ahead or, if she turns back, behind. */
    public double leaveTimeS() {
        double outAheadM = halfLaneM - REAR_M * size;
        double outBehindM = -halfLaneM - FRONT_M * size;
        for (double t = plan.enterTimeS() + .1; ; t += .05) {
            double along = alongM(t);
            if (along > outAheadM || along < outBehindM || t > plan.enterTimeS() + 600) {
                return t;
            }
        }
    }

    /** When the middle of her first reaches the middle of the picture; when she turns, if she never does. */
    public double middleTimeS() {
        double best = plan.enterTimeS();
        double bestM = -1e9;
        double leave = leaveTimeS();
        for (double t = plan.enterTimeS(); t < leave; t += .02) {
            double along = alongM(t) + (FRONT_M + REAR_M) / 2 * size;
            if (along >= 0) {
                return t;
            }
            if (along > bestM) {
                bestM = along;
                best = t;
            }
        }
        return best;
    }

    /** What was planned. */
    public WalkPlan plan() {
        return plan;
    }

    /** How she walks, in numbers. */
    public GaitNumbers numbers() {
        return numbers;
    }

    /** Planned events that took place, in order of time. */
    public List<EventAt> events() {
        return List.copyOf(events);
    }

    private double walkS(double timeS) {
        return passage.at(timeS - plan.enterTimeS()).walkAt(timeS - plan.enterTimeS());
    }

    private double phase(double timeS) {
        return time.phaseAt(walkS(timeS) + time.at(enterPhase));
    }

    /** First real time, from entering, at which a phase is reached. */
    private Optional<Double> firstTimeS(double phase) {
        double walk = time.at(phase) - time.at(enterPhase);
        for (Passage.Stretch stretch : passage.stretches()) {
            Optional<Double> at = crossing(stretch, walk);
            if (at.isPresent()) {
                return at;
            }
        }
        return Optional.empty();
    }

    private static Optional<Double> crossing(Passage.Stretch stretch, double walkS) {
        double begin = stretch.walkS();
        double end = stretch.walkAt(stretch.endS());
        if (begin == end || walkS < Math.min(begin, end) || walkS >= Math.max(begin, end)) {
            return Optional.empty();
        }
        boolean forward = end > begin;
        double low = stretch.fromS();
        double high = stretch.endS();
        for (int i = 0; i < 100 && high - low > 1e-10; i++) {
            double middle = (low + high) / 2;
            if (forward == (stretch.walkAt(middle) < walkS)) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return Optional.of((low + high) / 2);
    }

    /** Where the middle of the cow frame is at a time, along the way she walks, in metres. */
    public double alongM(double timeS) {
        return startAlongM + size * way.at(phase(timeS));
    }

    /** Her pose at a time, in seconds from frame 0. */
    public Pose pose(double timeS) {
        double p = phase(timeS);
        double x = way.at(p);
        double lifted = lifted(timeS);
        BodyPose body = body(p, timeS);
        double hipUp = body.upM(Limbs.HIP.x());
        double withersUp = body.upM(Limbs.SCAPULA_TURNS.x());
        List<LimbPose> limbs = new ArrayList<>(4);
        for (Leg leg : Leg.values()) {
            Limbs.Foot foot = foot(leg, p, x, lifted);
            limbs.add(Limbs.pose(leg, foot, leg.isFore() ? withersUp : hipUp));
        }
        return new Pose(startAlongM + size * x, body, limbs);
    }

    /** In a stop, how much of its lift a foot in the air has left: 1 walking, 0 set down. */
    private double lifted(double timeS) {
        double realS = timeS - plan.enterTimeS();
        Passage.Stretch stretch = passage.at(realS);
        if (!stretch.hold()) {
            return 1;
        }
        double down = (realS - stretch.fromS()) / SET_DOWN_S;
        double up = (realS - stretch.endS() + TAKE_UP_S) / TAKE_UP_S;
        // Steep at the floor, so that there is an instant of contact to find.
        return down < 1 ? Math.cos(Math.PI / 2 * down) : up > 0 ? Math.sin(Math.PI / 2 * up) : 0;
    }

    private Limbs.Foot foot(Leg leg, double p, double x, double lifted) {
        List<Tread> all = treadsOf(leg);
        int i = Math.max(1, Math.min(all.size() - 2, (int) Math.floor(p - numbers.touchDown(leg))));
        while (i > 1 && all.get(i).downPhase() > p) {
            i--;
        }
        while (i < all.size() - 2 && all.get(i + 1).downPhase() <= p) {
            i++;
        }
        Tread tread = all.get(i);
        boolean lame = numbers.lameLeg().isPresent() && numbers.lameLeg().get() == leg;
        double favour = lame ? numbers.favour() : 0;
        double pasternSlope = Math.toRadians(60);
        if (p < tread.upPhase()) {
            double f = (p - tread.downPhase()) / (tread.upPhase() - tread.downPhase());
            double sink = f < .9 ? Math.sin(Math.PI * f / .9) : 0;
            return new Limbs.Foot(
                    new Spot(tread.toeM(p) - x, 0),
                    Math.toRadians(STANCE_PITCH.get(f)),
                    pasternSlope - Math.toRadians(9) * sink * (1 - .35 * favour),
                    Math.toRadians(STANCE_CARPUS.get(f)),
                    true);
        }
        Tread next = all.get(i + 1);
        double f = Math.min(1, (p - tread.upPhase()) / (next.downPhase() - tread.upPhase()));
        double even = f * f * f * (10 - 15 * f + 6 * f * f);
        double e = .66 * even + .24 * (f - Math.sin(2 * Math.PI * f) / (2 * Math.PI)) + .10 * f;
        double rise = (leg.isFore() ? .090 : .085) * (1 - .12 * favour);
        double y = rise * Math.sin(Math.PI * Math.pow(f, .8));
        double toeX = tread.printM() + e * (next.landsM() - tread.printM());
        return new Limbs.Foot(
                new Spot(toeX - x, Math.max(0, y) * lifted),
                Math.toRadians(SWING_PITCH.get(f)) * lifted,
                pasternSlope,
                Math.toRadians(SWING_CARPUS.get(f)) * lifted,
                lifted == 0);
    }

    private BodyPose body(double p, double timeS) {
        double q = 2 * Math.PI * p;
        double hips = .010 * Math.cos(2 * q - 1.32 * Math.PI);
        double withers = .009 * Math.cos(2 * (q - .48 * Math.PI) - 1.32 * Math.PI);
        double bob = numbers.bobTwiceM() * Math.cos(2 * (q - 1.2 * Math.PI));
        if (numbers.lameLeg().isPresent()) {
            Leg lame = numbers.lameLeg().get();
            double mu = 2 * Math.PI * (p - numbers.touchDown(lame) - numbers.duty(lame) / 2);
            // The head goes down as a lame hind foot bears, up as a lame fore foot does.
            bob += (lame.isFore() ? 1 : -1) * numbers.bobOnceM() * Math.cos(mu);
            if (lame.isFore()) {
                withers += .012 * numbers.favour() * Math.cos(mu);
            } else {
                hips += .014 * numbers.favour() * Math.cos(mu);
            }
        }
        double drop = slipDrop(p);
        double neck = -(1.25 * numbers.headLowerM() + .02) / .6 + bob / .6;
        double head = -Math.toRadians(48) + headTiltRad + .45 * neck;
        double flick = Math.max(0, Math.sin(.9 * timeS + earPhase)) * Math.sin(5.1 * timeS + 3 * earPhase);
        return new BodyPose(
                hips - drop,
                withers,
                numbers.backRiseM(),
                neck,
                head,
                .06 * Math.sin(q + earPhase),
                .008 * Math.sin(2 * q + .6),
                Math.toRadians(6) * flick);
    }

    private double slipDrop(double p) {
        double drop = 0;
        for (EventAt at : events) {
            if (at.event() instanceof WalkEvent.Slip slip && !slip.leg().isFore()) {
                for (Tread tread : treadsOf(slip.leg())) {
                    double u = (p - tread.downPhase()) / .3;
                    if (tread.slideM() > 0 && u > 0 && u < 1) {
                        double sine = Math.sin(Math.PI * u);
                        drop = SLIP_DROP_M * sine * sine;
                    }
                }
            }
        }
        return drop;
    }

    /** Her footfalls between two times, in order of time. */
    public List<Footfall> footfalls(double fromS, double toS) {
        List<Footfall> found = new ArrayList<>();
        double enterWalkS = time.at(enterPhase);
        for (Passage.Stretch stretch : passage.stretches()) {
            if (stretch.endS() + plan.enterTimeS() < fromS || stretch.fromS() + plan.enterTimeS() > toS) {
                continue;
            }
            boolean forward = stretch.rate0() + stretch.rate1() > 0;
            for (Leg leg : Leg.values()) {
                List<Tread> all = treadsOf(leg);
                if (stretch.hold()) {
                    setDown(stretch, leg, found);
                    continue;
                }
                for (Tread tread : all) {
                    crossing(stretch, time.at(tread.downPhase()) - enterWalkS)
                            .ifPresent(at -> found.add(footfall(leg, at, forward, tread.landsM())));
                    crossing(stretch, time.at(tread.upPhase()) - enterWalkS)
                            .ifPresent(at -> found.add(footfall(leg, at, !forward, tread.printM())));
                }
            }
        }
        found.removeIf(footfall -> footfall.timeS() < fromS || footfall.timeS() > toS);
        found.sort(Comparator.comparingDouble(Footfall::timeS).thenComparing(Footfall::leg));
        return found;
    }

    private Footfall footfall(Leg leg, double realS, boolean down, double alongM) {
        return new Footfall(leg, realS + plan.enterTimeS(), down, startAlongM + size * alongM);
    }

    private void setDown(Passage.Stretch hold, Leg leg, List<Footfall> found) {
        double p = time.phaseAt(hold.walkS() + time.at(enterPhase));
        double x = way.at(p);
        Limbs.Foot foot = foot(leg, p, x, 1);
        if (!foot.planted()) {
            found.add(footfall(leg, hold.fromS() + SET_DOWN_S, true, foot.toe().x() + x));
            found.add(footfall(leg, hold.endS() - TAKE_UP_S, false, foot.toe().x() + x));
        }
    }
}
