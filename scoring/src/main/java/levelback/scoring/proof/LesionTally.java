package levelback.scoring.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import levelback.scoring.foot.Lesion;
import levelback.scoring.foot.Lesions;
import levelback.scoring.value.Estimate;

/** How the scores did on each lesion code: share of the lifted with it that scored at or above the cut. */
final class LesionTally {

    /** Sums of one code, and of the cow that is being read. */
    private static final class Sums {
        long x;
        long n;
        long xx;
        long xn;
        long nn;
        long cows;
        long cowX;
        long cowN;
        String cow = "";

        void add(String of, boolean positive) {
            if (cowN > 0 && !of.equals(cow)) {
                close();
            }
            cow = of;
            cowN++;
            cowX += positive ? 1 : 0;
        }

        void close() {
            x += cowX;
            n += cowN;
            xx += cowX * cowX;
            xn += cowX * cowN;
            nn += cowN * cowN;
            cows++;
            cowX = 0;
            cowN = 0;
        }

        CutCounts.Cluster cluster() {
            double p = (double) x / n;
            double squares = xx - 2 * p * xn + p * p * nn;
            return new CutCounts.Cluster(x, n, squares <= 1e-13 * nn ? 0 : squares, cows);
        }
    }

    private LesionTally() {}

    /**
     * Every code found on a lifted observation, of the set or not.
     *
     * @param lifted sorted by cow
     * @param repeated whether a cow comes more than once
     */
    static List<ProofResult.OfLesion> of(List<Observation> lifted, ProofQuestion question, boolean repeated) {
        TreeMap<String, Sums> codes = new TreeMap<>();
        for (Observation o : lifted) {
            boolean positive = o.score() >= question.cut();
            for (String code : o.codes()) {
                codes.computeIfAbsent(code, c -> new Sums()).add(o.cow(), positive);
            }
        }
        LesionSet alarm = LesionSet.alarm();
        List<ProofResult.OfLesion> list = new ArrayList<>();
        codes.forEach((code, sums) -> {
            sums.close();
            Estimate found = repeated
                    ? Proportions.clustered(sums.cluster(), question.level(), "")
                    : Proportions.estimate(sums.x, sums.n, question.level(), "");
            list.add(new ProofResult.OfLesion(
                    code,
                    sums.n,
                    found.value().orElse(0),
                    found.interval(),
                    found.why(),
                    Lesions.byCode(code).map(Lesion::alarm).orElse(alarm.has(code, "")),
                    question.lesions().has(code, "")));
        });
        return list;
    }
}
