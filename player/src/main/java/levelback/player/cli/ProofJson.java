package levelback.player.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import levelback.scoring.proof.ProofComparison;
import levelback.scoring.proof.ProofResult;

/** The document of {@code proof --json}. */
final class ProofJson {

    private ProofJson() {}

    static void write(PrintWriter to, ProofResult result, Optional<ProofComparison> comparison) {
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
            if (comparison.isPresent()) {
                ComparisonOut.write(out, comparison.get());
            }
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
            ProofResult.Alternatives better = result.alternatives();
            o.object("alternatives", c -> {
                c.estimate("lrPositive", better.lrPositive());
                c.estimate("lrNegative", better.lrNegative());
                c.estimate("youden", better.youden());
                c.estimate("auc", better.auc());
            });
        });
        if (result.corrected().isPresent()) {
            corrected(out, "corrected", result.corrected().get());
            if (result.correctedDelta().isPresent()) {
                corrected(out, "correctedDelta", result.correctedDelta().get());
            }
            if (result.correctedBootstrap().isPresent()) {
                corrected(out, "correctedBootstrap", result.correctedBootstrap().get());
            }
            if (result.correctedDraws().isPresent()) {
                corrected(out, "correctedDraws", result.correctedDraws().get());
            }
        } else {
            out.nothing("corrected");
            out.text("why", result.whyNotCorrected());
        }
        if (result.weighted().isPresent()) {
            weighted(out, "weighted", result.weighted().get());
            if (result.weightedDraws().isPresent()) {
                weighted(out, "weightedDraws", result.weightedDraws().get());
            }
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

    private static void weighted(JsonOut out, String key, ProofResult.Weighted weighted) throws IOException {
        out.object(key, o -> {
            o.estimate("sensitivity", weighted.sensitivity());
            o.estimate("specificity", weighted.specificity());
            o.estimate("ppv", weighted.ppv());
            o.estimate("npv", weighted.npv());
            o.estimate("prevalence", weighted.prevalence());
            o.number("horvitzThompsonLesions", weighted.lesionsTotal());
            o.number("horvitzThompsonScored", weighted.scoredTotal());
        });
    }

    private static void corrected(JsonOut out, String key, ProofResult.Corrected figures) throws IOException {
        out.object(key, o -> {
            o.text("assumption", figures.assumption());
            o.estimate("sensitivity", figures.sensitivity());
            o.estimate("specificity", figures.specificity());
            o.estimate("ppv", figures.ppv());
            o.estimate("npv", figures.npv());
            o.estimate("prevalence", figures.prevalence());
            o.estimate("auc", figures.auc());
        });
    }

    private static void lists(JsonOut out, ProofResult result) throws IOException {
        out.list("byLesion", result.byLesion(), (o, lesion) -> {
            o.text("lesion", lesion.lesion());
            o.whole("n", lesion.n());
            o.number("sensitivity", lesion.sensitivity());
            o.interval("sensitivityInterval", lesion.sensitivityInterval());
            if (lesion.why().isPresent()) {
                o.text("why", lesion.why().get());
            }
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
            String why = Stream.of(
                            cut.sensitivity().why(),
                            cut.specificity().why(),
                            Optional.of(cut.whyNotCorrected()).filter(w -> !w.isEmpty()))
                    .flatMap(Optional::stream)
                    .distinct()
                    .collect(Collectors.joining("; "));
            if (!why.isEmpty()) {
                o.text("why", why);
            }
        });
        out.list("netBenefit", result.netBenefit(), (o, at) -> {
            o.number("cut", at.cut());
            o.number("threshold", at.threshold());
            o.number("value", at.value().value());
            o.interval("interval", at.value().interval());
            o.number("liftAll", at.liftAll());
            o.number("liftNone", 0);
            o.number("corrected", at.corrected());
            if (at.value().why().isPresent()) {
                o.text("why", at.value().why().get());
            } else if (at.corrected().isEmpty()) {
                o.text("why", result.whyNotCorrected(at.cut()));
            }
        });
        out.list("flow", result.flow(), (o, step) -> {
            o.text("step", step.step());
            o.whole("n", step.n());
        });
    }
}
