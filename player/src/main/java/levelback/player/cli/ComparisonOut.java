package levelback.player.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.Locale;
import java.util.OptionalDouble;
import levelback.scoring.proof.ProofComparison;

/** Two scorers on the same cows, as {@code proof --compare} writes them. */
final class ComparisonOut {

    private ComparisonOut() {}

    /**
     * The key {@code comparison}: {@code {"a","b","pairs","lifted","clustered","sensitivity","specificity":
     * {"a","b","difference":estimates,"both","aOnly","bOnly","neither","mcnemar":
     * {"statistic","pValue","exactP","midP","method"}},"auc":{"a","b","difference":estimates,"z","pValue"}}}.
     */
    static void write(JsonOut out, ProofComparison comparison) throws IOException {
        out.object("comparison", o -> {
            o.text("a", comparison.a());
            o.text("b", comparison.b());
            o.whole("pairs", comparison.pairs());
            o.whole("lifted", comparison.lifted());
            o.flag("clustered", comparison.clustered());
            shares(o, "sensitivity", comparison.sensitivity());
            shares(o, "specificity", comparison.specificity());
            o.object("auc", auc -> {
                auc.estimate("a", comparison.auc().a());
                auc.estimate("b", comparison.auc().b());
                auc.estimate("difference", comparison.auc().difference());
                auc.number("z", comparison.auc().z());
                auc.number("pValue", comparison.auc().pValue());
                why(auc, comparison.auc().why());
            });
        });
    }

    private static void shares(JsonOut out, String key, ProofComparison.Shares shares) throws IOException {
        out.object(key, o -> {
            o.estimate("a", shares.a());
            o.estimate("b", shares.b());
            o.estimate("difference", shares.difference());
            o.whole("both", shares.both());
            o.whole("aOnly", shares.aOnly());
            o.whole("bOnly", shares.bOnly());
            o.whole("neither", shares.neither());
            o.object("mcnemar", test -> {
                test.number("statistic", shares.test().statistic());
                test.number("pValue", shares.test().pValue());
                test.number("exactP", shares.test().exactP());
                test.number("midP", shares.test().midP());
                test.text("method", shares.test().method());
                why(test, shares.test().why());
            });
        });
    }

    private static void why(JsonOut out, String why) throws IOException {
        if (!why.isEmpty()) {
            out.text("why", why);
        }
    }

    /** For a person. */
    static void write(PrintWriter to, ProofComparison comparison) {
        to.println();
        to.println(String.format(
                Locale.ROOT,
                "%s against %s: %d scored by both, %d of them lifted.",
                comparison.a(),
                comparison.b(),
                comparison.pairs(),
                comparison.lifted()));
        shares(to, "sensitivity", comparison, comparison.sensitivity());
        shares(to, "specificity", comparison, comparison.specificity());
        ProofComparison.Areas auc = comparison.auc();
        to.println("AUC          " + comparison.a() + " " + ProofTable.shown(auc.a()) + ", " + comparison.b() + " "
                + ProofTable.shown(auc.b()));
        to.println("  difference " + ProofTable.shown(auc.difference()) + p(", p ", auc.pValue()));
    }

    private static void shares(PrintWriter to, String name, ProofComparison of, ProofComparison.Shares shares) {
        to.println(String.format(Locale.ROOT, "%-12s ", name) + of.a() + " " + ProofTable.shown(shares.a()) + ", "
                + of.b() + " " + ProofTable.shown(shares.b()));
        to.println("  difference " + ProofTable.shown(shares.difference())
                + p(", McNemar mid-p ", shares.test().midP()) + "; only " + of.a() + " right on " + shares.aOnly()
                + ", only " + of.b() + " on " + shares.bOnly());
    }

    private static String p(String before, OptionalDouble p) {
        return p.isEmpty() ? "" : before + String.format(Locale.ROOT, "%.3g", p.getAsDouble());
    }
}
