package levelback.clips.drawn.herd;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;

/**
 * Lets the herd live from twelve fortnights before the first visit to the last one. Before the first visit a cow is
 * lifted when somebody happens to notice her; from then on by her score. All numbers here are the demo's own choice.
 *
 * <p>{@link Random} is used because its sequence, Gaussians included, is fixed by its specification.
 */
final class HerdLife {
    /** A lesion begins on each of four legs with chance 0.05 a fortnight; which leg it is, is drawn by its share. */
    static final double ONSET_CHANCE = 4 * 0.05;

    static final double LAME_LIFT_CHANCE = 0.85;
    static final double ROUTINE_CHANCE = 0.03;
    static final int CONTROLS = 3;
    static final double REFUSAL_CHANCE = 1.0 / 15;
    static final double WRITTEN_CHANCE = 0.97;
    /** The chute is open from the day after scoring to the fifth day. */
    static final int LAST_LIFT_DAY = 5;

    private static final int FORTNIGHTS_BEFORE = 12;
    private static final double NOTICED_CHANCE = 0.30;
    private static final int BLOCK_DAYS = 28;

    private final HerdPlan drawnSoFar;
    private final int visitCount;
    private static final int SOUNDER_FILMED = 3;

    private final int filmedCount;
    private final LocalDate firstVisit;
    private final List<HerdBeast> beasts = new ArrayList<>();
    private final List<HerdOnset> lesionsBegun = new ArrayList<>();
    private final Random herdDraws;

    HerdLife(long seed, int cowCount, int visitCount, int filmedCount) {
        if (cowCount < CONTROLS + 1 || cowCount > HerdNames.COWS.size() || visitCount < 2 || filmedCount > cowCount) {
            throw new IllegalArgumentException(
                    "no such herd: " + cowCount + " cows, " + visitCount + " visits, " + filmedCount + " filmed");
        }
        this.visitCount = visitCount;
        this.filmedCount = filmedCount;
        this.firstVisit = HerdPlan.LAST_VISIT.minusDays((long) HerdPlan.DAYS_BETWEEN_VISITS * (visitCount - 1));
        this.herdDraws = new Random(mixed(seed, 0));
        List<HerdCow> cows = herd(seed, cowCount);
        this.drawnSoFar = new HerdPlan(seed, HerdNames.FARM, ZoneId.of("Europe/London"), cows, List.of(), List.of());
        for (int i = 0; i < cowCount; i++) {
            beasts.add(new HerdBeast(cows.get(i), new Random(mixed(seed, 1000 + i))));
        }
    }

    HerdPlan live() {
        for (int fortnight = -FORTNIGHTS_BEFORE; fortnight < 0; fortnight++) {
            int day = fortnight * HerdPlan.DAYS_BETWEEN_VISITS;
            for (HerdBeast beast : beasts) {
                beast.fortnight(day, firstVisit);
                boolean noticed = beast.draws.nextDouble() < NOTICED_CHANCE;
                if (noticed && HerdBeast.level(beast.severity(day)) >= 2) {
                    beast.lesions.forEach(lesion -> lesion.dress(day + 1));
                }
            }
        }
        List<HerdVisit> visits = new ArrayList<>();
        for (int v = 0; v < visitCount; v++) {
            visits.add(visit(v));
        }
        return new HerdPlan(
                drawnSoFar.seed(),
                drawnSoFar.farm(),
                drawnSoFar.zone(),
                drawnSoFar.cows(),
                withFilm(visits),
                lesionsBegun);
    }

    private HerdVisit visit(int v) {
        int day = v * HerdPlan.DAYS_BETWEEN_VISITS;
        List<HerdState> states = new ArrayList<>();
        List<HerdScore> scoresA = new ArrayList<>();
        List<HerdScore> scoresB = new ArrayList<>();
        for (HerdBeast beast : beasts) {
            beast.fortnight(day, firstVisit).ifPresent(lesionsBegun::add);
            HerdState state = beast.state(day, 1 + beast.draws.nextInt(LAST_LIFT_DAY));
            states.add(state);
            scoresA.add(beast.scored(state, "A", 0, 0.35));
            scoresB.add(beast.scored(state, "B", 0.25, 0.45));
        }
        List<Integer> sound = new ArrayList<>();
        for (int i = 0; i < beasts.size(); i++) {
            if (scoresA.get(i).level() < 2) {
                sound.add(i);
            }
        }
        OptionalDouble chance = sound.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(Math.min(1, (double) CONTROLS / sound.size()));
        Set<Integer> controls = new HashSet<>();
        while (controls.size() < Math.min(CONTROLS, sound.size())) {
            controls.add(sound.get(herdDraws.nextInt(sound.size())));
        }
        List<HerdLift> lifts = new ArrayList<>();
        for (int i = 0; i < beasts.size(); i++) {
            HerdBeast beast = beasts.get(i);
            // Drawn for every cow, so that one cow's fate never shifts another's.
            double lifted = beast.draws.nextDouble();
            boolean refuses = beast.draws.nextDouble() < REFUSAL_CHANCE;
            int liftDay = day + states.get(i).liftDay();
            HerdLift.Why why;
            if (controls.contains(i)) {
                why = HerdLift.Why.CONTROL;
            } else if (scoresA.get(i).level() >= 2 && lifted < LAME_LIFT_CHANCE) {
                why = HerdLift.Why.LAME;
            } else if (scoresA.get(i).level() < 2 && lifted < ROUTINE_CHANCE) {
                why = HerdLift.Why.ROUTINE;
            } else {
                beast.blockOff(liftDay, BLOCK_DAYS, firstVisit).ifPresent(lifts::add);
                continue;
            }
            boolean control = why == HerdLift.Why.CONTROL;
            if (control && refuses) {
                lifts.add(new HerdLift(
                        beast.cow.number(),
                        firstVisit.plusDays(liftDay),
                        why,
                        chance,
                        true,
                        List.of(),
                        Optional.empty(),
                        Optional.empty()));
            } else {
                lifts.add(
                        beast.lifted(liftDay, BLOCK_DAYS, firstVisit, why, control ? chance : OptionalDouble.empty()));
            }
        }
        lifts.sort(Comparator.comparing(HerdLift::date).thenComparing(HerdLift::cow));
        List<HerdScore> scores = new ArrayList<>(scoresA);
        scores.addAll(scoresB);
        return new HerdVisit(v + 1, firstVisit.plusDays(day), states, scores, lifts, List.of());
    }

    /**
     * Films the same cows at the last two visits: a few that were lame, treated and scored sounder, then those that changed
     * most between them, the lamest, then any.
     */
    private List<HerdVisit> withFilm(List<HerdVisit> visits) {
        HerdVisit before = visits.get(visitCount - 2);
        HerdVisit last = visits.get(visitCount - 1);
        List<Integer> byInterest = new ArrayList<>();
        for (int i = 0; i < beasts.size(); i++) {
            byInterest.add(i);
        }
        byInterest.sort(Comparator.comparingDouble(
                i -> -interest(before.states().get(i), last.states().get(i))));
        List<Integer> sounder = byInterest.stream()
                .filter(i -> gotSounder(beasts.get(i).cow.number(), before, last))
                .limit(SOUNDER_FILMED)
                .toList();
        byInterest.removeAll(sounder);
        byInterest.addAll(0, sounder);
        List<Integer> chosen = new ArrayList<>(byInterest.subList(0, Math.min(filmedCount, (filmedCount + 1) / 2 + 1)));
        List<Integer> rest = new ArrayList<>(byInterest.subList(chosen.size(), byInterest.size()));
        while (chosen.size() < filmedCount) {
            chosen.add(rest.remove(herdDraws.nextInt(rest.size())));
        }
        List<HerdVisit> filmed = new ArrayList<>(visits);
        for (int v = visitCount - 2; v < visitCount; v++) {
            List<Integer> order = new ArrayList<>(chosen);
            java.util.Collections.shuffle(order, herdDraws);
            HerdVisit visit = visits.get(v);
            filmed.set(
                    v,
                    new HerdVisit(
                            visit.ordinal(),
                            visit.date(),
                            visit.states(),
                            visit.scores(),
                            visit.lifts(),
                            order.stream().map(i -> beasts.get(i).cow.number()).toList()));
        }
        return filmed;
    }

    /** Whether scorer A called her lame, something was found on her foot, and A scored her lower the next time. */
    private static boolean gotSounder(String cow, HerdVisit before, HerdVisit last) {
        int was = levelOfA(cow, before);
        return was >= 2
                && levelOfA(cow, last) < was
                && before.lifts().stream()
                        .filter(lift -> lift.cow().equals(cow))
                        .flatMap(lift -> lift.feet().stream())
                        .anyMatch(foot -> !foot.findings().isEmpty());
    }

    private static int levelOfA(String cow, HerdVisit visit) {
        return visit.scores().stream()
                .filter(score -> score.scorer().equals("A") && score.cow().equals(cow))
                .mapToInt(HerdScore::level)
                .findFirst()
                .orElseThrow();
    }

    private static double interest(HerdState before, HerdState last) {
        return Math.abs(before.severity() - last.severity()) + 0.5 * Math.max(before.severity(), last.severity());
    }

    private List<HerdCow> herd(long seed, int count) {
        Random draws = new Random(mixed(seed, 1));
        Set<String> numbers = new TreeSet<>();
        while (numbers.size() < count) {
            numbers.add("%03d".formatted(1 + draws.nextInt(640)));
        }
        List<String> names = new ArrayList<>(HerdNames.COWS);
        java.util.Collections.shuffle(names, draws);
        List<HerdCow> cows = new ArrayList<>();
        for (String number : numbers) {
            int parity = 1 + Math.min(6, (int) (-2.0 * StrictMath.log(1 - draws.nextDouble())));
            LocalDate calving = HerdPlan.LAST_VISIT.minusDays(20 + draws.nextInt(300));
            LocalDate birth = calving.minusDays(730 + 390L * (parity - 1) + draws.nextInt(60));
            double size = Math.min(1.06, Math.max(0.92, (parity == 1 ? 0.955 : 0.99) + 0.025 * draws.nextGaussian()));
            cows.add(new HerdCow(
                    number,
                    names.get(cows.size()),
                    "999" + "%012d".formatted(480_000_000_000L + Integer.parseInt(number)),
                    birth,
                    calving,
                    parity,
                    1.6 + 0.45 * draws.nextGaussian(),
                    StrictMath.exp(0.07 * draws.nextGaussian()),
                    size,
                    0.25 + 0.5 * draws.nextDouble(),
                    draws.nextDouble() < 0.4,
                    draws.nextLong()));
        }
        return cows;
    }

    /** A seed of its own for every stream of draws (finaliser of SplitMix64, Steele et al. 2014). */
    static long mixed(long seed, long stream) {
        long z = seed * 0x9E3779B97F4A7C15L + stream * 0xD1B54A32D192ED03L;
        z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }
}
