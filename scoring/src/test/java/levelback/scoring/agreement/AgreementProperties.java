package levelback.scoring.agreement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.Function;
import levelback.scoring.severity.ScorerSeverity;
import levelback.scoring.value.Estimate;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/** What must hold of every panel, whatever is in it: small ones drawn at random, holes and odd ends included. */
class AgreementProperties {

    private static final AgreementQuestion QUESTION = new AgreementQuestion(.95, 1, 100, false);

    /** With the latent scale, which takes by far the longest. */
    private static final AgreementQuestion ALL = new AgreementQuestion(.95, 1, 20, true);

    /** Up to four scorers, twelve clips, two sessions; many panels of one level, one scorer or one clip among them. */
    private static List<Rating> panel(long seed) {
        Random random = new Random(seed);
        int scorers = 1 + random.nextInt(4);
        int clips = 1 + random.nextInt(12);
        int levels = 1 + random.nextInt(4);
        double missing = random.nextInt(3) * .25;
        double noise = random.nextInt(3) * .4;
        List<Rating> rows = new ArrayList<>();
        for (int c = 0; c < clips; c++) {
            int gait = random.nextInt(levels);
            for (int s = 0; s < scorers; s++) {
                for (int session = 1; session <= 1 + (seed & 1); session++) {
                    int score = random.nextDouble() < noise ? random.nextInt(levels) : gait;
                    boolean blank = random.nextDouble() < missing;
                    rows.add(new Rating(
                            "s" + s,
                            String.format("c%02d", c),
                            blank ? OptionalDouble.empty() : OptionalDouble.of(score),
                            Optional.empty(),
                            session));
                }
            }
        }
        return rows;
    }

    private static AgreementResult of(List<Rating> rows) {
        return Agreement.of(Ratings.of(rows), QUESTION);
    }

    private static List<Rating> each(List<Rating> rows, Function<Rating, Rating> change) {
        return rows.stream().map(change).toList();
    }

    /** The figures over all scorers and clips. */
    private static Map<String, Estimate> overall(AgreementResult r) {
        Map<String, Estimate> all = new LinkedHashMap<>();
        all.put("exactAgreement", r.exactAgreement());
        all.put("withinOne", r.withinOne());
        all.put("fleissKappa", r.fleissKappa());
        all.put("alphaNominal", r.alphaNominal());
        all.put("alphaOrdinal", r.alphaOrdinal());
        all.put("alphaInterval", r.alphaInterval());
        all.put("ac1", r.ac1());
        all.put("ac2Linear", r.ac2Linear());
        all.put("ac2Quadratic", r.ac2Quadratic());
        all.put("kendallW", r.kendallW());
        all.put("oneWay", r.icc().oneWay());
        all.put("agreement", r.icc().agreement());
        all.put("consistency", r.icc().consistency());
        all.put("oneWayAverage", r.icc().oneWayAverage());
        all.put("agreementAverage", r.icc().agreementAverage());
        all.put("consistencyAverage", r.icc().consistencyAverage());
        return all;
    }

    private static List<Estimate> every(AgreementResult r) {
        List<Estimate> all = new ArrayList<>(overall(r).values());
        r.pairs().forEach(p -> all.addAll(List.of(p.kappa(), p.kappaLinear(), p.kappaQuadratic(), p.bias())));
        r.within().forEach(w -> all.addAll(List.of(w.kappa(), w.kappaLinear(), w.kappaQuadratic())));
        r.severity().forEach(s -> all.addAll(List.of(s.shift(), s.latent())));
        return all;
    }

    private static void same(String what, Estimate got, Estimate expected, double by) {
        assertThat(got.value().isPresent()).as(what).isEqualTo(expected.value().isPresent());
        assertThat(got.interval().isPresent())
                .as(what)
                .isEqualTo(expected.interval().isPresent());
        assertThat(got.why()).as(what).isEqualTo(expected.why());
        if (expected.value().isPresent()) {
            double value = expected.value().getAsDouble() * by;
            assertThat(got.value().getAsDouble()).as(what).isCloseTo(value, within(1e-7 * (1 + Math.abs(value))));
        }
        if (expected.interval().isPresent()) {
            double low = expected.interval().get().low() * by;
            double high = expected.interval().get().high() * by;
            assertThat(got.interval().orElseThrow().low()).as(what).isCloseTo(low, within(1e-6 * (1 + Math.abs(low))));
            assertThat(got.interval().orElseThrow().high())
                    .as(what)
                    .isCloseTo(high, within(1e-6 * (1 + Math.abs(high))));
        }
    }

    @Property(tries = 30)
    void theLatentScaleIsANumberOrSaysWhy(@ForAll @IntRange(max = 1_000_000) int seed) {
        Agreement.of(Ratings.of(panel(seed)), ALL)
                .severity()
                .forEach(s -> assertThat(s.latent().value().isPresent())
                        .isNotEqualTo(s.latent().why().isPresent()));
    }

    @Property(tries = 300)
    void nothingIsNotANumberAndWhatIsMissingSaysWhy(@ForAll @IntRange(max = 1_000_000) int seed) {
        AgreementResult result = of(panel(seed));
        for (Estimate e : every(result)) {
            if (e.interval().isPresent()) {
                double value = e.value().orElseThrow();
                assertThat(e.interval().get().low()).isFinite().isLessThanOrEqualTo(value + 1e-9);
                assertThat(e.interval().get().high()).isFinite().isGreaterThanOrEqualTo(value - 1e-9);
            } else {
                assertThat(e.why().orElse("")).isNotBlank();
            }
        }
        result.levelAgreement().forEach(at -> {
            assertThat(at.value().isPresent() && at.within().isPresent())
                    .isNotEqualTo(at.why().isPresent());
            at.value().ifPresent(v -> assertThat(v).isBetween(0.0, 1.0));
        });
        assertThat(result.severity()).extracting(ScorerSeverity::scorer).isEqualTo(result.scorers());
    }

    @Property(tries = 60)
    void theOrderOfRowsMovesNothing(@ForAll @IntRange(max = 1_000_000) int seed) {
        List<Rating> shuffled = new ArrayList<>(panel(seed));
        Collections.shuffle(shuffled, new Random(seed));
        assertThat(of(shuffled)).isEqualTo(of(panel(seed)));
    }

    @Property(tries = 80)
    void namesOfScorersAndClipsMoveNoFigure(@ForAll @IntRange(max = 1_000_000) int seed) {
        List<Rating> rows = panel(seed);
        AgreementResult before = of(rows);
        // Turned round: the first scorer becomes the last, and so the clips.
        AgreementResult after = of(each(
                rows,
                r -> new Rating(
                        "t" + (9 - (r.scorer().charAt(1) - '0')),
                        "d" + (99 - Integer.parseInt(r.clip().substring(1))),
                        r.score(),
                        r.cow(),
                        r.session())));
        Map<String, Estimate> turned = overall(after);
        overall(before).forEach((name, figure) -> same(name, Objects.requireNonNull(turned.get(name)), figure, 1));
        int k = before.severity().size();
        for (int s = 0; s < k; s++) {
            ScorerSeverity one = before.severity().get(s);
            ScorerSeverity other = after.severity().get(k - 1 - s);
            assertThat(other.shift().value().isPresent())
                    .isEqualTo(one.shift().value().isPresent());
            one.shift()
                    .value()
                    .ifPresent(
                            v -> assertThat(other.shift().value().orElseThrow()).isCloseTo(v, within(1e-9)));
            one.latent()
                    .value()
                    .ifPresent(v -> assertThat(other.latent().value().orElseThrow())
                            .isCloseTo(v, within(1e-4 * (1 + Math.abs(v)))));
        }
        before.pairs().forEach(p -> {
            AgreementResult.Pair q = after.pairs().stream()
                    .filter(o -> o.a().equals("t" + (9 - (p.b().charAt(1) - '0')))
                            && o.b().equals("t" + (9 - (p.a().charAt(1) - '0'))))
                    .findFirst()
                    .orElseThrow();
            same("kappa", q.kappa(), p.kappa(), 1);
            same("kappaQuadratic", q.kappaQuadratic(), p.kappaQuadratic(), 1);
            p.bias()
                    .value()
                    .ifPresent(v -> assertThat(q.bias().value().orElseThrow()).isCloseTo(-v, within(1e-12)));
            p.bowker()
                    .statistic()
                    .ifPresent(v ->
                            assertThat(q.bowker().statistic().orElseThrow()).isCloseTo(v, within(1e-9)));
        });
    }

    @Property(tries = 80)
    void anotherUnitOfTheScaleMovesNoCoefficient(@ForAll @IntRange(max = 1_000_000) int seed) {
        List<Rating> rows = panel(seed);
        AgreementResult before = of(rows);
        AgreementResult after = of(each(
                rows,
                r -> new Rating(
                        r.scorer(),
                        r.clip(),
                        r.score().isPresent()
                                ? OptionalDouble.of(3 + 2.5 * r.score().getAsDouble())
                                : OptionalDouble.empty(),
                        r.cow(),
                        r.session())));
        Map<String, Estimate> moved = overall(after);
        overall(before).forEach((name, figure) -> {
            // Within one looks at the unit by definition.
            if (!name.equals("withinOne")) {
                same(name, Objects.requireNonNull(moved.get(name)), figure, 1);
            }
        });
        for (int s = 0; s < before.severity().size(); s++) {
            same(
                    "shift",
                    after.severity().get(s).shift(),
                    before.severity().get(s).shift(),
                    2.5);
            same(
                    "latent",
                    after.severity().get(s).latent(),
                    before.severity().get(s).latent(),
                    1);
        }
        for (int p = 0; p < before.pairs().size(); p++) {
            same(
                    "kappaLinear",
                    after.pairs().get(p).kappaLinear(),
                    before.pairs().get(p).kappaLinear(),
                    1);
            same("bias", after.pairs().get(p).bias(), before.pairs().get(p).bias(), 2.5);
        }
    }

    @Property(tries = 60)
    void aClipThatOneScorerAloneScoredChangesNothingPairwise(@ForAll @IntRange(max = 1_000_000) int seed) {
        List<Rating> rows = panel(seed);
        AgreementResult before = of(rows);
        if (before.levels().isEmpty()) {
            return;
        }
        List<Rating> more = new ArrayList<>(rows);
        more.add(new Rating("s0", "zz", OptionalDouble.of(before.levels().get(0)), Optional.empty(), 1));
        AgreementResult after = of(more);
        assertThat(after.exactAgreement()).isEqualTo(before.exactAgreement());
        assertThat(after.withinOne()).isEqualTo(before.withinOne());
        assertThat(after.pairs()).isEqualTo(before.pairs());
        assertThat(after.within()).isEqualTo(before.within());
        assertThat(after.levelAgreement()).isEqualTo(before.levelAgreement());
        assertThat(after.hardestClips()).isEqualTo(before.hardestClips());
        assertThat(after.alphaOrdinal().value()).isEqualTo(before.alphaOrdinal().value());
        if (before.scorers().size() > 1
                && before.severity().stream().allMatch(s -> s.shift().n() > 0)) {
            assertThat(after.kendallW()).isEqualTo(before.kendallW());
            assertThat(after.icc()).isEqualTo(before.icc());
        }
    }

    @Property(tries = 40)
    void twoThatScoreAlikeAgreeFully(@ForAll @IntRange(max = 1_000_000) int seed) {
        Random random = new Random(seed);
        List<Rating> rows = new ArrayList<>();
        int clips = 3 + random.nextInt(20);
        for (int c = 0; c < clips; c++) {
            // The first two clips make sure of two levels.
            int score = c < 2 ? c : random.nextInt(4);
            rows.add(new Rating("A", "c" + c, OptionalDouble.of(score), Optional.empty(), 1));
            rows.add(new Rating("B", "c" + c, OptionalDouble.of(score), Optional.empty(), 1));
        }
        AgreementResult result = of(rows);
        overall(result)
                .forEach((name, figure) ->
                        assertThat(figure.value().orElseThrow()).as(name).isCloseTo(1, within(1e-12)));
        assertThat(result.pairs().get(0).kappaLinear().value().orElseThrow()).isCloseTo(1, within(1e-12));
        assertThat(result.severity()).allSatisfy(s -> {
            assertThat(s.shift().value().orElseThrow()).isZero();
            assertThat(s.latent().value()).isEmpty();
        });
    }

    @Property(tries = 60)
    void clipsThatCountNoughtAreNotThereAndClipsThatCountOnceAre(@ForAll @IntRange(max = 1_000_000) int seed) {
        Random random = new Random(seed);
        List<Rating> rows = panel(seed);
        List<Rating> first = rows.stream().filter(r -> r.session() == 1).toList();
        String dropped = "c0" + random.nextInt(2);
        Ratings all = Ratings.of(first);
        double[] levels = all.levels();
        Ratings.Builder rest = new Ratings.Builder();
        first.stream()
                .filter(r -> !r.clip().equals(dropped))
                .forEach(r -> rest.add(r.scorer(), r.clip(), r.score().orElse(Double.NaN), "", 1));
        LevelCounts counts = LevelCounts.of(all.session(1), levels.length);
        LevelCounts fewer = LevelCounts.of(rest.build(levels).session(1), levels.length);
        double[] weights = counts.clips();
        int[] of = new int[levels.length];
        first.stream()
                .filter(r -> r.clip().equals(dropped) && r.score().isPresent())
                .forEach(r -> of[java.util.Arrays.binarySearch(levels, r.score().getAsDouble())]++);
        for (int k = 0; k < counts.kinds(); k++) {
            weights[k] -= java.util.Arrays.equals(counts.counts(k), of) ? 1 : 0;
        }
        for (Alpha.Metric metric : Alpha.Metric.values()) {
            OptionalDouble weighted = new Alpha(counts, levels, metric).value(weights);
            OptionalDouble left = new Alpha(fewer, levels, metric).value(fewer.clips());
            assertThat(weighted.isPresent()).isEqualTo(left.isPresent());
            left.ifPresent(v -> assertThat(weighted.orElseThrow()).isCloseTo(v, within(1e-9)));
        }
    }
}
