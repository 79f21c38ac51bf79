package levelback.scoring.agreement;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import levelback.scoring.severity.AdditiveShift;
import levelback.scoring.severity.Panel;
import levelback.scoring.severity.ScorerSeverity;
import levelback.scoring.severity.Severity;
import levelback.scoring.value.Estimate;

/** Every figure of agreement over one panel. Nothing here is NaN: what can't be computed is missing, with its reason. */
public final class Agreement {

    private static final String ONE_LEVEL = "no two different levels are compared: no agreement beyond chance";
    private static final int HARDEST = 10;

    private final Ratings ratings;
    private final AgreementQuestion question;
    private final double[] levels;
    private final Session first;

    private Agreement(Ratings ratings, AgreementQuestion question) {
        this.ratings = ratings;
        this.question = question;
        levels = ratings.levels();
        first = ratings.session(1);
    }

    /** The figures of a panel. */
    public static AgreementResult of(Ratings ratings, AgreementQuestion question) {
        return new Agreement(ratings, question).result();
    }

    private AgreementResult result() {
        LevelCounts counts = LevelCounts.of(first, levels.length);
        Resamples resamples = new Resamples(question.draws(), question.seed(), question.level());
        Complete complete = Complete.of(first, question.draws() > 0);
        return new AgreementResult(
                ratings.scorers(),
                ratings.clips().size(),
                ratings.scored(),
                Arrays.stream(levels).boxed().toList(),
                pooled(0),
                pooled(1),
                pairs(),
                beyondChance(counts, Weights.NOMINAL, BeyondChance.Chance.FLEISS),
                alpha(counts, Alpha.Metric.NOMINAL, resamples),
                alpha(counts, Alpha.Metric.ORDINAL, resamples),
                alpha(counts, Alpha.Metric.INTERVAL, resamples),
                beyondChance(counts, Weights.NOMINAL, BeyondChance.Chance.GWET),
                beyondChance(counts, Weights.LINEAR, BeyondChance.Chance.GWET),
                beyondChance(counts, Weights.QUADRATIC, BeyondChance.Chance.GWET),
                kendall(complete, resamples),
                Intraclass.of(complete, levels, question.level()),
                levelAgreement(),
                within(),
                severity(),
                hardest());
    }

    /** Pairs of scorers at most so far apart, in scale units. */
    private Estimate pooled(double apart) {
        return PooledAgreement.of(
                first.clips(),
                ratings.clusters(),
                ratings::cluster,
                clip -> {
                    int[] given = given(clip);
                    double near = 0;
                    for (int i = 0; i < given.length; i++) {
                        near += given[i] * (given[i] - 1.0) / 2;
                        for (int j = i + 1; j < given.length && levels[j] - levels[i] <= apart + 1e-12; j++) {
                            near += (double) given[i] * given[j];
                        }
                    }
                    return near;
                },
                clip -> {
                    double scores = first.end(clip) - first.start(clip);
                    return scores * (scores - 1) / 2;
                },
                ratings.byCow(),
                question.level());
    }

    private List<AgreementResult.Pair> pairs() {
        int k = ratings.scorers().size();
        PairTable[] tables = new PairTable[k * k];
        for (int a = 0; a < k; a++) {
            for (int b = a + 1; b < k; b++) {
                tables[a * k + b] = new PairTable(levels);
            }
        }
        for (int clip = 0; clip < first.clips(); clip++) {
            for (int i = first.start(clip); i < first.end(clip); i++) {
                for (int j = i + 1; j < first.end(clip); j++) {
                    tables[first.scorer(i) * k + first.scorer(j)].add(first.level(i), first.level(j));
                }
            }
        }
        List<AgreementResult.Pair> pairs = new ArrayList<>();
        for (int a = 0; a < k; a++) {
            for (int b = a + 1; b < k; b++) {
                pairs.add(pair(ratings.scorers().get(a), ratings.scorers().get(b), tables[a * k + b]));
            }
        }
        return pairs;
    }

    private AgreementResult.Pair pair(String a, String b, PairTable table) {
        long[][] counts = table.counts();
        return new AgreementResult.Pair(
                a,
                b,
                table.n(),
                share(table),
                table.kappa(Weights.NOMINAL, question.level()),
                table.kappa(Weights.LINEAR, question.level()),
                table.kappa(Weights.QUADRATIC, question.level()),
                Arrays.stream(counts)
                        .map(row -> Arrays.stream(row).boxed().toList())
                        .toList(),
                table.bias(question.level()),
                MarginTest.bowker(counts),
                MarginTest.stuartMaxwell(counts),
                MarginTest.bhapkar(counts));
    }

    private static OptionalDouble share(PairTable table) {
        return table.n() == 0 ? OptionalDouble.empty() : OptionalDouble.of((double) table.same() / table.n());
    }

    private Estimate beyondChance(LevelCounts counts, Weights kind, BeyondChance.Chance chance) {
        return BeyondChance.of(counts, levels, kind, chance, question.level());
    }

    private Estimate alpha(LevelCounts counts, Alpha.Metric metric, Resamples resamples) {
        long n = counts.compared();
        return resamples.estimate(
                counts.clips(), n, n == 0 ? "no clip has two scores" : ONE_LEVEL, new Alpha(counts, levels, metric));
    }

    private Estimate kendall(Complete complete, Resamples resamples) {
        int n = complete.clips();
        double[] each = new double[n];
        Arrays.fill(each, 1);
        if (complete.scorers() < 2) {
            return Estimate.missing(
                    n,
                    Resamples.METHOD,
                    complete.scorers() == 0 ? "no score in session 1" : "one scorer: nobody to agree with");
        }
        return resamples.estimate(
                each,
                n,
                n == 0 ? "no clip was scored by every scorer" : "no scorer told any two clips apart",
                new Concordance(complete, levels.length));
    }

    private List<AgreementResult.LevelAgreement> levelAgreement() {
        int q = levels.length;
        double[] repeated = new double[q];
        double[] possible = new double[q];
        for (int clip = 0; clip < first.clips(); clip++) {
            int scores = first.end(clip) - first.start(clip);
            int[] given = new int[q];
            for (int i = first.start(clip); i < first.end(clip); i++) {
                given[first.level(i)]++;
            }
            for (int l = 0; l < q && scores >= 2; l++) {
                repeated[l] += given[l] * (given[l] - 1.0);
                possible[l] += given[l] * (scores - 1.0);
            }
        }
        double[] same = new double[q];
        double[] named = new double[q];
        for (PairTable table : bothSessions()) {
            long[][] counts = table.counts();
            for (int i = 0; i < q; i++) {
                for (int j = 0; j < q; j++) {
                    same[i] += i == j ? 2.0 * counts[i][i] : 0;
                    named[i] += counts[i][j] + counts[j][i];
                }
            }
        }
        List<AgreementResult.LevelAgreement> all = new ArrayList<>();
        for (int l = 0; l < q; l++) {
            OptionalDouble between =
                    possible[l] > 0 ? OptionalDouble.of(repeated[l] / possible[l]) : OptionalDouble.empty();
            OptionalDouble again = named[l] > 0 ? OptionalDouble.of(same[l] / named[l]) : OptionalDouble.empty();
            List<String> why = new ArrayList<>();
            if (between.isEmpty()) {
                why.add("no clip with two scores has this level");
            }
            if (again.isEmpty()) {
                why.add("within: nobody gave this level to a clip scored twice");
            }
            all.add(new AgreementResult.LevelAgreement(
                    levels[l], between, again, why.isEmpty() ? Optional.empty() : Optional.of(String.join("; ", why))));
        }
        return all;
    }

    /** Of each scorer, session 1 against session 2. */
    private PairTable[] bothSessions() {
        Session second = ratings.session(2);
        int k = ratings.scorers().size();
        PairTable[] tables = new PairTable[k];
        Arrays.setAll(tables, s -> new PairTable(levels));
        for (int clip = 0; clip < first.clips(); clip++) {
            int i = first.start(clip);
            int j = second.start(clip);
            while (i < first.end(clip) && j < second.end(clip)) {
                int by = Integer.compare(first.scorer(i), second.scorer(j));
                if (by == 0) {
                    tables[first.scorer(i)].add(first.level(i), second.level(j));
                }
                i += by <= 0 ? 1 : 0;
                j += by >= 0 ? 1 : 0;
            }
        }
        return tables;
    }

    private List<AgreementResult.Within> within() {
        Session second = ratings.session(2);
        boolean[] came = new boolean[ratings.scorers().size()];
        for (int j = 0; j < second.scores(); j++) {
            came[second.scorer(j)] = true;
        }
        PairTable[] tables = bothSessions();
        List<AgreementResult.Within> within = new ArrayList<>();
        for (int s = 0; s < came.length; s++) {
            if (came[s]) {
                within.add(new AgreementResult.Within(
                        ratings.scorers().get(s),
                        tables[s].n(),
                        share(tables[s]),
                        tables[s].kappa(Weights.NOMINAL, question.level()),
                        tables[s].kappa(Weights.LINEAR, question.level()),
                        tables[s].kappa(Weights.QUADRATIC, question.level())));
            }
        }
        return within;
    }

    private List<ScorerSeverity> severity() {
        Panel panel = SeverityPanel.of(ratings);
        List<ScorerSeverity> known = first.scores() == 0 ? List.of() : severity(panel);
        List<ScorerSeverity> severity = new ArrayList<>();
        int next = 0;
        for (String scorer : ratings.scorers()) {
            if (next < known.size() && known.get(next).scorer().equals(scorer)) {
                severity.add(known.get(next++));
            } else {
                Estimate none = Estimate.missing(0, "not computed", "no score of hers in session 1");
                severity.add(new ScorerSeverity(scorer, none, none));
            }
        }
        return severity;
    }

    private List<ScorerSeverity> severity(Panel panel) {
        if (question.latent()) {
            return Severity.of(panel, question.level());
        }
        List<Estimate> shifts = AdditiveShift.of(panel, question.level());
        List<ScorerSeverity> severity = new ArrayList<>();
        for (int s = 0; s < shifts.size(); s++) {
            severity.add(new ScorerSeverity(
                    panel.scorers().get(s),
                    shifts.get(s),
                    Estimate.missing(shifts.get(s).n(), "not computed", "the latent scale was switched off")));
        }
        return severity;
    }

    private List<AgreementResult.HardClip> hardest() {
        // Sums of halves in another order must not break a tie, hence whole billionths. Clips stand by code point, and
        // a
        // later one takes a place only with more.
        List<AgreementResult.HardClip> hardest = new ArrayList<>();
        for (int clip = 0; clip < first.clips(); clip++) {
            double scores = first.end(clip) - first.start(clip);
            if (scores >= 2) {
                double spread = apart(given(clip)) / (scores * (scores - 1) / 2);
                int place = hardest.size();
                while (place > 0 && Math.round(hardest.get(place - 1).spread() * 1e9) < Math.round(spread * 1e9)) {
                    place--;
                }
                if (place < HARDEST) {
                    hardest.add(
                            place, new AgreementResult.HardClip(ratings.clips().get(clip), spread));
                    if (hardest.size() > HARDEST) {
                        hardest.remove(HARDEST);
                    }
                }
            }
        }
        return hardest;
    }

    /** Scorers for each level on a clip. */
    private int[] given(int clip) {
        int[] given = new int[levels.length];
        for (int i = first.start(clip); i < first.end(clip); i++) {
            given[first.level(i)]++;
        }
        return given;
    }

    /** The differences of all pairs of scores, added up. */
    private double apart(int[] given) {
        double apart = 0;
        for (int i = 0; i < given.length; i++) {
            for (int j = i + 1; j < given.length && given[i] > 0; j++) {
                apart += given[i] * given[j] * (levels[j] - levels[i]);
            }
        }
        return apart;
    }
}
