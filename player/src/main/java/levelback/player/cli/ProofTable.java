package levelback.player.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import levelback.scoring.proof.ProofResult;
import levelback.scoring.value.Estimate;

/** What {@code proof} prints for a person. */
final class ProofTable {

    private ProofTable() {}

    static void write(PrintWriter to, ProofResult result) {
        line(
                to,
                "Positive: score %s or more. Lifted within %d to %d days. Unit: %s. Lesions: %s.",
                plain(result.question().cut()),
                result.question().windowFromDays(),
                result.question().windowToDays(),
                result.question().unit().name().toLowerCase(Locale.ROOT),
                result.question().lesions().name());
        line(
                to,
                "%d scored, %d lifted: %d true positive, %d false positive, %d false negative, %d true negative.",
                result.scored(),
                result.counts().lifted(),
                result.counts().tp(),
                result.counts().fp(),
                result.counts().fn(),
                result.counts().tn());
        to.println();
        line(to, "%-8s %8s %8s %12s", "score", "scored", "lifted", "with lesion");
        for (ProofResult.AtScore at : result.byScore()) {
            line(to, "%-8s %8d %8d %12d", plain(at.score()), at.scored(), at.lifted(), at.withLesion());
        }
        to.println();
        ProofResult.Observed o = result.observed();
        line(to, "%-12s %-32s %s", "", "lifted only", "corrected for the never lifted");
        row(to, "sensitivity", o.sensitivity(), result.corrected().map(ProofResult.Corrected::sensitivity));
        row(to, "specificity", o.specificity(), result.corrected().map(ProofResult.Corrected::specificity));
        row(to, "PPV", o.ppv(), result.corrected().map(ProofResult.Corrected::ppv));
        row(to, "NPV", o.npv(), result.corrected().map(ProofResult.Corrected::npv));
        row(to, "AUC", o.auc(), result.corrected().map(ProofResult.Corrected::auc));
        row(to, "LR+", o.lrPositive(), java.util.Optional.empty());
        row(to, "LR-", o.lrNegative(), java.util.Optional.empty());
        row(to, "Youden", o.youden(), java.util.Optional.empty());
        result.corrected().ifPresent(c -> line(to, "%-12s %-32s %s", "prevalence", "", shown(c.prevalence())));
        to.println();
        to.println(result.corrected().map(ProofResult.Corrected::assumption).orElse(result.whyNotCorrected()));
        to.println("Intervals: " + Math.round(100 * result.question().level()) + " %, "
                + o.sensitivity().method() + ".");
        result.weighted().ifPresent(w -> {
            to.println();
            to.println("Weighted by the chance of the control lifts:");
            line(to, "%-12s %s", "sensitivity", shown(w.sensitivity()));
            line(to, "%-12s %s", "specificity", shown(w.specificity()));
            line(to, "%-12s %s", "PPV", shown(w.ppv()));
            line(to, "%-12s %s", "NPV", shown(w.npv()));
            line(to, "%-12s %s", "prevalence", shown(w.prevalence()));
        });
        to.println();
        if (result.trend().statistic().isPresent()) {
            line(
                    to,
                    "Trend over scores: X2 %.2f on 1 df, p %.3g.",
                    result.trend().statistic().getAsDouble(),
                    result.trend().pValue().orElse(1));
        } else {
            to.println("Trend over scores: " + result.trend().why() + ".");
        }
        netBenefit(to, result);
        to.println();
        line(to, "%-8s %8s %12s", "lesion", "n", "scored lame");
        for (ProofResult.OfLesion lesion : result.byLesion()) {
            line(
                    to,
                    "%-8s %8d %12.2f%s",
                    lesion.lesion(),
                    lesion.n(),
                    lesion.sensitivity(),
                    lesion.alarm() ? "  alarm" : "");
        }
        to.println();
        to.println("What became of every score row:");
        for (ProofResult.Step step : result.flow()) {
            line(to, "  %-18s %8d", step.step(), step.n());
        }
    }

    /** At the cut asked for, at a few thresholds. */
    private static void netBenefit(PrintWriter to, ProofResult result) {
        List<ProofResult.AtThreshold> curve = result.netBenefit().stream()
                .filter(at -> at.cut() == result.question().cut())
                .filter(at -> List.of(.1, .2, .3, .5).contains(at.threshold()))
                .toList();
        if (curve.isEmpty()) {
            return;
        }
        to.println();
        to.println("Net benefit of lifting from the cut on, in lesions found in a lifted cow:");
        for (ProofResult.AtThreshold at : curve) {
            line(
                    to,
                    "  worth a lift from %2.0f %%  %s; lifting all %.3f",
                    100 * at.threshold(),
                    shown(at.value()),
                    at.liftAll().orElse(0));
        }
    }

    private static void row(PrintWriter to, String name, Estimate left, java.util.Optional<Estimate> right) {
        line(
                to,
                "%-12s %-32s %s",
                name,
                shown(left),
                right.map(ProofTable::shown).orElse(""));
    }

    static String shown(Estimate estimate) {
        if (estimate.value().isEmpty()) {
            return "- (" + estimate.why().orElse("") + ")";
        }
        String value = String.format(Locale.ROOT, "%.3f", estimate.value().getAsDouble());
        return value
                + estimate.interval()
                        .map(i -> String.format(Locale.ROOT, " (%.3f to %.3f)", i.low(), i.high()))
                        .orElse(" (no interval)")
                + " n " + estimate.n();
    }

    private static String plain(double score) {
        return score == Math.rint(score) ? String.valueOf((long) score) : String.valueOf(score);
    }

    private static void line(PrintWriter to, String format, Object... args) {
        to.println(String.format(Locale.ROOT, format, args).stripTrailing());
    }
}
