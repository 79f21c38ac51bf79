package levelback.scoring.proof;

import java.util.ArrayList;
import java.util.List;
import levelback.scoring.foot.Lesion;
import levelback.scoring.foot.Lesions;
import levelback.scoring.value.Estimate;
import org.jspecify.annotations.Nullable;

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
        int cow = -1;

        void add(int of, boolean positive) {
            if (cowN > 0 && of != cow) {
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
     * @param repeated whether a cow comes more than once among the lifted
     */
    static List<ProofResult.OfLesion> of(Observations joined, ProofQuestion question, boolean repeated) {
        @Nullable Sums[] ofCode = new Sums[joined.trims.codes.length];
        ScoreFolds folds = joined.folds;
        for (int i = 0; i < folds.size; i++) {
            for (int k = joined.codeStart[i]; k < joined.codeStart[i + 1]; k++) {
                int code = joined.codes[k];
                Sums sums = ofCode[code];
                if (sums == null) {
                    sums = new Sums();
                    ofCode[code] = sums;
                }
                sums.add(folds.cow[i], folds.score[i] >= question.cut());
            }
        }
        LesionSet alarm = LesionSet.alarm();
        List<ProofResult.OfLesion> list = new ArrayList<>();
        for (int at = 0; at < ofCode.length; at++) {
            Sums sums = ofCode[at];
            if (sums == null) {
                continue;
            }
            String code = joined.trims.codes[at];
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
        }
        return list;
    }
}
