package levelback.player.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.Locale;
import levelback.scoring.proof.ProofResult;

/** The document of {@code proof --json}. */
final class ProofJson {

    private ProofJson() {}

    static void write(PrintWriter to, ProofResult result) {
        JsonOut.object(to, out -> {
            out.text("unit", result.question().unit().name().toLowerCase(Locale.ROOT));
            out.number("cut", result.question().cut());
            out.wholes(
                    "windowDays",
                    result.question().windowFromDays(),
                    result.question().windowToDays());
            out.text("lesions", result.question().lesions().name());
            if (result.question().scorer().isPresent()) {
                out.text("scorer", result.question().scorer().get());
            }
            if (result.question().until().isPresent()) {
                out.text("until", result.question().until().get().toString());
            }
            out.number("level", result.question().level());
            out.object("counts", o -> {
                o.whole("scored", result.scored());
                o.whole("lifted", result.counts().lifted());
                o.whole("tp", result.counts().tp());
                o.whole("fp", result.counts().fp());
                o.whole("fn", result.counts().fn());
                o.whole("tn", result.counts().tn());
            });
            out.flag("clustered", result.clustered());
            out.list("byScore", result.byScore(), (o, at) -> {
                o.number("score", at.score());
                o.whole("scored", at.scored());
                o.whole("lifted", at.lifted());
                o.whole("withLesion", at.withLesion());
            });
            figures(out, result);
            lists(out, result);
        });
    }

    private static void figures(JsonOut out, ProofResult result) throws IOException {
        ProofResult.Observed observed = result.observed();
        out.object("observed", o -> {
            o.estimate("sensitivity", observed.sensitivity());
            o.estimate("specificity", observed.specificity());
            o.estimate("ppv", observed.ppv());
            o.estimate("npv", observed.npv());
            o.estimate("lrPositive", observed.lrPositive());
            o.estimate("lrNegative", observed.lrNegative());
            o.estimate("youden", observed.youden());
            o.estimate("auc", observed.auc());
        });
        if (result.corrected().isPresent()) {
            ProofResult.Corrected corrected = result.corrected().get();
            out.object("corrected", o -> {
                o.text("assumption", corrected.assumption());
                o.estimate("sensitivity", corrected.sensitivity());
                o.estimate("specificity", corrected.specificity());
                o.estimate("ppv", corrected.ppv());
                o.estimate("npv", corrected.npv());
                o.estimate("prevalence", corrected.prevalence());
                o.estimate("auc", corrected.auc());
            });
        } else {
            out.nothing("corrected");
            out.text("why", result.whyNotCorrected());
        }
        if (result.weighted().isPresent()) {
            ProofResult.Weighted weighted = result.weighted().get();
            out.object("weighted", o -> {
                o.estimate("sensitivity", weighted.sensitivity());
                o.estimate("specificity", weighted.specificity());
                o.estimate("ppv", weighted.ppv());
                o.estimate("npv", weighted.npv());
                o.estimate("prevalence", weighted.prevalence());
            });
        } else {
            out.nothing("weighted");
            out.text("weightedWhy", "no lift carries the chance of a draw");
        }
        out.object("trend", o -> {
            o.number("statistic", result.trend().statistic());
            o.number("pValue", result.trend().pValue());
            if (!result.trend().why().isEmpty()) {
                o.text("why", result.trend().why());
            }
        });
    }

    private static void lists(JsonOut out, ProofResult result) throws IOException {
        out.list("byLesion", result.byLesion(), (o, lesion) -> {
            o.text("lesion", lesion.lesion());
            o.whole("n", lesion.n());
            o.number("sensitivity", lesion.sensitivity());
            o.interval("sensitivityInterval", lesion.sensitivityInterval());
            o.flag("alarm", lesion.alarm());
        });
        out.list("byLeg", result.byLeg(), (o, pair) -> {
            o.text("scored", pair.scored().name());
            o.text("found", pair.found().name());
            o.whole("n", pair.n());
        });
        out.list("lagDays", result.lagDays(), (o, lag) -> {
            o.whole("days", lag.days());
            o.whole("n", lag.n());
        });
        out.list("cuts", result.cuts(), (o, cut) -> {
            o.number("cut", cut.cut());
            o.number("sensitivity", cut.sensitivity().value());
            o.number("specificity", cut.specificity().value());
            o.interval("sensitivityInterval", cut.sensitivity().interval());
            o.interval("specificityInterval", cut.specificity().interval());
            o.number("correctedSensitivity", cut.correctedSensitivity());
            o.number("correctedSpecificity", cut.correctedSpecificity());
            if (cut.sensitivity().why().isPresent()) {
                o.text("why", cut.sensitivity().why().get());
            } else if (cut.specificity().why().isPresent()) {
                o.text("why", cut.specificity().why().get());
            }
        });
        out.list("flow", result.flow(), (o, step) -> {
            o.text("step", step.step());
            o.whole("n", step.n());
        });
    }
}
