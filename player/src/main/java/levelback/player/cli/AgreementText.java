package levelback.player.cli;

import java.io.PrintWriter;
import java.util.Locale;
import levelback.scoring.agreement.AgreementResult;
import levelback.scoring.value.Estimate;

/** What {@code agreement} prints for a person. */
final class AgreementText {

    private AgreementText() {}

    static void write(PrintWriter to, AgreementResult result, double level) {
        line(
                to,
                "%d scorers, %d clips, %d scores. Session 1, unless it says otherwise.",
                result.scorers().size(),
                result.clips(),
                result.ratings());
        to.println();
        row(to, "same score", result.exactAgreement());
        row(to, "within one", result.withinOne());
        row(to, "Fleiss' kappa", result.fleissKappa());
        row(to, "alpha, nominal", result.alphaNominal());
        row(to, "alpha, ordinal", result.alphaOrdinal());
        row(to, "alpha, interval", result.alphaInterval());
        row(to, "AC1", result.ac1());
        row(to, "AC2, linear", result.ac2Linear());
        row(to, "AC2, quadratic", result.ac2Quadratic());
        row(to, "Kendall's W", result.kendallW());
        row(to, "ICC(2,1)", result.icc().agreement());
        row(to, "ICC(3,1)", result.icc().consistency());
        pairs(to, result);
        to.println();
        line(to, "%-18s %10s %10s", "level", "between", "within");
        for (AgreementResult.LevelAgreement at : result.levelAgreement()) {
            line(
                    to,
                    "%-18s %10s %10s",
                    plain(at.score()),
                    at.value().isPresent() ? two(at.value().getAsDouble()) : "-",
                    at.within().isPresent() ? two(at.within().getAsDouble()) : "-");
        }
        if (!result.severity().isEmpty()) {
            to.println();
            to.println("How much harder than the panel, in steps of the scale:");
            result.severity().forEach(of -> row(to, of.scorer(), of.shift()));
            to.println("The same on the latent scale:");
            result.severity().forEach(of -> row(to, of.scorer(), of.latent()));
        }
        if (!result.hardestClips().isEmpty()) {
            to.println();
            to.println("Clips that split the scorers most:");
            result.hardestClips().forEach(of -> line(to, "%-18s %s", of.clip(), two(of.spread())));
        }
        to.println();
        to.println("Intervals: " + String.format(Locale.ROOT, "%.3g", 100 * level)
                + " %; --json names the method of each.");
    }

    private static void pairs(PrintWriter to, AgreementResult result) {
        if (!result.pairs().isEmpty()) {
            to.println();
            to.println("Pairs of scorers: weighted kappa (quadratic), and by how much the first scores higher:");
        }
        for (AgreementResult.Pair pair : result.pairs()) {
            row(to, pair.a() + ", " + pair.b(), pair.kappaQuadratic());
            row(to, "", pair.bias());
        }
        if (!result.within().isEmpty()) {
            to.println();
            to.println("Session 1 against session 2, weighted kappa (quadratic):");
            result.within().forEach(of -> row(to, of.scorer(), of.kappaQuadratic()));
        }
    }

    private static void row(PrintWriter to, String name, Estimate estimate) {
        line(to, "%-18s %s", name, ProofTable.shown(estimate));
    }

    private static String two(double share) {
        return String.format(Locale.ROOT, "%.2f", share);
    }

    private static String plain(double score) {
        return score == Math.rint(score) ? String.valueOf((long) score) : String.valueOf(score);
    }

    private static void line(PrintWriter to, String format, Object... args) {
        to.println(String.format(Locale.ROOT, format, args).stripTrailing());
    }
}
