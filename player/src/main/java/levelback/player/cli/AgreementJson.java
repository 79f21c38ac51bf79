package levelback.player.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.OptionalDouble;
import levelback.scoring.agreement.AgreementResult;
import levelback.scoring.agreement.MarginTest;

/** The document of {@code agreement --json}. */
final class AgreementJson {

    private AgreementJson() {}

    static void write(PrintWriter to, AgreementResult result) {
        JsonOut.object(to, out -> {
            out.texts("scorers", result.scorers());
            out.whole("clips", result.clips());
            out.whole("ratings", result.ratings());
            out.numbers("levels", result.levels());
            out.estimate("exactAgreement", result.exactAgreement());
            out.estimate("withinOne", result.withinOne());
            out.list("pairs", result.pairs(), AgreementJson::pair);
            out.estimate("fleissKappa", result.fleissKappa());
            out.estimate("alphaNominal", result.alphaNominal());
            out.estimate("alphaOrdinal", result.alphaOrdinal());
            out.estimate("alphaInterval", result.alphaInterval());
            out.estimate("ac1", result.ac1());
            out.estimate("ac2Linear", result.ac2Linear());
            out.estimate("ac2Quadratic", result.ac2Quadratic());
            out.estimate("kendallW", result.kendallW());
            out.object("icc", o -> {
                o.estimate("oneWay", result.icc().oneWay());
                o.estimate("agreement", result.icc().agreement());
                o.estimate("consistency", result.icc().consistency());
                o.estimate("oneWayAverage", result.icc().oneWayAverage());
                o.estimate("agreementAverage", result.icc().agreementAverage());
                o.estimate("consistencyAverage", result.icc().consistencyAverage());
            });
            lists(out, result);
        });
    }

    private static void lists(JsonOut out, AgreementResult result) throws IOException {
        out.list("levelAgreement", result.levelAgreement(), (o, at) -> {
            o.number("score", at.score());
            o.number("value", at.value());
            o.number("within", at.within());
            if (at.why().isPresent()) {
                o.text("why", at.why().get());
            }
        });
        out.list("within", result.within(), (o, of) -> {
            o.text("scorer", of.scorer());
            o.whole("n", of.n());
            exact(o, of.exact(), "no clip was scored in both sessions");
            o.estimate("kappa", of.kappa());
            o.estimate("kappaLinear", of.kappaLinear());
            o.estimate("kappaQuadratic", of.kappaQuadratic());
        });
        out.list("severity", result.severity(), (o, of) -> {
            o.text("scorer", of.scorer());
            o.estimate("shift", of.shift());
            o.estimate("latent", of.latent());
        });
        out.list("hardestClips", result.hardestClips(), (o, of) -> {
            o.text("clip", of.clip());
            o.number("spread", of.spread());
        });
    }

    private static void pair(JsonOut o, AgreementResult.Pair pair) throws IOException {
        o.text("a", pair.a());
        o.text("b", pair.b());
        o.whole("n", pair.n());
        exact(o, pair.exact(), "no clip was scored by both");
        o.estimate("kappa", pair.kappa());
        o.estimate("kappaLinear", pair.kappaLinear());
        o.estimate("kappaQuadratic", pair.kappaQuadratic());
        o.table("table", pair.table());
        o.estimate("bias", pair.bias());
        test(o, "bowker", pair.bowker());
        test(o, "stuartMaxwell", pair.stuartMaxwell());
        test(o, "bhapkar", pair.bhapkar());
    }

    private static void exact(JsonOut o, OptionalDouble share, String why) throws IOException {
        o.number("exact", share);
        if (share.isEmpty()) {
            o.text("why", why);
        }
    }

    private static void test(JsonOut out, String key, MarginTest test) throws IOException {
        out.object(key, o -> {
            o.number("statistic", test.statistic());
            if (test.degreesOfFreedom().isPresent()) {
                o.whole("df", test.degreesOfFreedom().getAsInt());
            } else {
                o.nothing("df");
            }
            o.number("pValue", test.pValue());
            if (test.why().isPresent()) {
                o.text("why", test.why().get());
            }
        });
    }
}
