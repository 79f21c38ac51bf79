package levelback.scoring.proof;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import levelback.scoring.value.Estimate;

/**
 * Area under the ROC curve: the chance that a cow with a lesion scored higher than one without, ties a half.
 *
 * <p>References: DeLong, DeLong & Clarke-Pearson (1988), Comparing the areas under two or more correlated receiver
 * operating characteristic curves, Biometrics 44:837 (agrees with R's pROC 1.18.0); Obuchowski (1997), Nonparametric
 * analysis of clustered ROC curve data, Biometrics 53:567, where cows repeat.
 */
final class RocArea {

    private static final String DELONG = "Mann-Whitney with ties one half, DeLong's interval";
    private static final String OBUCHOWSKI =
            "Mann-Whitney with ties one half, variance clustered by cow (Obuchowski 1997)";

    private RocArea() {}

    /**
     * The area over the lifted.
     *
     * @param lifted sorted by cow
     * @param repeated whether a cow comes more than once
     */
    static Estimate of(List<Observation> lifted, double level, boolean repeated) {
        String method = repeated ? OBUCHOWSKI : DELONG;
        TreeMap<Double, double[]> counts = new TreeMap<>();
        long sick = 0;
        for (Observation o : lifted) {
            counts.computeIfAbsent(o.score(), s -> new double[2])[o.hasLesion() ? 1 : 0]++;
            sick += o.hasLesion() ? 1 : 0;
        }
        long sound = lifted.size() - sick;
        if (sick == 0 || sound == 0) {
            return Estimate.missing(
                    lifted.size(),
                    method,
                    lifted.isEmpty()
                            ? "no cow was lifted"
                            : sick == 0
                                    ? "no lifted cow had a lesion of the set"
                                    : "every lifted cow had a lesion of the set");
        }
        // Placement of each level: share of the other group that lies on the right side of it.
        TreeMap<Double, double[]> placement = new TreeMap<>();
        double below = 0;
        double above = sick;
        double area = 0;
        for (var entry : counts.entrySet()) {
            double[] c = entry.getValue();
            above -= c[1];
            double ofSick = (below + c[0] / 2) / sound;
            double ofSound = (above + c[1] / 2) / sick;
            placement.put(entry.getKey(), new double[] {ofSound, ofSick});
            area += c[1] * ofSick / sick;
            below += c[0];
        }
        area = Math.min(1, area);
        if (sick < 2 || sound < 2) {
            return Estimate.pointOnly(
                    area, lifted.size(), method, "two cows with and two without a lesion are needed for an interval");
        }
        double variance = repeated
                ? clustered(lifted, placement, area, sick, sound)
                : deLong(counts, placement, area, sick, sound);
        if (Double.isNaN(variance)) {
            return Estimate.pointOnly(
                    area, lifted.size(), method, "two cows with and two without a lesion are needed for an interval");
        }
        double half = Proportions.normalQuantile(level) * Math.sqrt(Math.max(0, variance));
        return Estimate.of(area, Math.max(0, area - half), Math.min(1, area + half), lifted.size(), method);
    }

    private static double deLong(
            Map<Double, double[]> counts, Map<Double, double[]> placement, double area, long sick, long sound) {
        double ofSick = 0;
        double ofSound = 0;
        for (var entry : counts.entrySet()) {
            double[] c = entry.getValue();
            double[] v = placement.getOrDefault(entry.getKey(), c);
            ofSick += c[1] * (v[1] - area) * (v[1] - area);
            ofSound += c[0] * (v[0] - area) * (v[0] - area);
        }
        return ofSick / (sick - 1) / sick + ofSound / (sound - 1) / sound;
    }

    private static double clustered(
            List<Observation> lifted, Map<Double, double[]> placement, double area, long sick, long sound) {
        double squaresSick = 0;
        double squaresSound = 0;
        double products = 0;
        long cowsSick = 0;
        long cowsSound = 0;
        long cows = 0;
        int i = 0;
        while (i < lifted.size()) {
            String cow = lifted.get(i).cow();
            double sickSum = 0;
            double soundSum = 0;
            boolean anySick = false;
            boolean anySound = false;
            for (; i < lifted.size() && lifted.get(i).cow().equals(cow); i++) {
                Observation o = lifted.get(i);
                double[] v = placement.getOrDefault(o.score(), new double[2]);
                if (o.hasLesion()) {
                    sickSum += v[1] - area;
                    anySick = true;
                } else {
                    soundSum += v[0] - area;
                    anySound = true;
                }
            }
            squaresSick += sickSum * sickSum;
            squaresSound += soundSum * soundSum;
            products += sickSum * soundSum;
            cows++;
            cowsSick += anySick ? 1 : 0;
            cowsSound += anySound ? 1 : 0;
        }
        if (cowsSick < 2 || cowsSound < 2) {
            return Double.NaN;
        }
        double sickPart = squaresSick * cowsSick / ((cowsSick - 1.0) * sick);
        double soundPart = squaresSound * cowsSound / ((cowsSound - 1.0) * sound);
        double shared = products * cows / (cows - 1.0);
        return sickPart / sick + soundPart / sound + 2 * shared / ((double) sick * sound);
    }
}
