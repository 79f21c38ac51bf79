package levelback.player.work;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import levelback.player.report.ReportFigures;
import levelback.player.report.ReportFigures.Made;
import levelback.player.report.ReportFigures.Pair;
import levelback.player.report.ReportFigures.Trust;
import levelback.player.report.ReportWords;
import levelback.scoring.proof.LesionSet;
import levelback.scoring.proof.Proof;
import levelback.scoring.proof.ProofQuestion;
import levelback.scoring.proof.ProofResult;
import levelback.scoring.value.Estimate;
import levelback.store.book.Book;

/** Gathers the figures of a report, each by the call that its command makes. */
final class GatherReport {

    private static final int WINDOW_DAYS = 14;

    private final Book book;
    private final ReportWords words;
    private final String version;
    private final Instant now;

    GatherReport(Book book, ReportWords words, String version, Instant now) {
        this.book = book;
        this.words = words;
        this.version = version;
        this.now = now;
    }

    ReportFigures of(Optional<String> herd, Optional<LocalDate> visit) {
        ReportSource source = ReportSource.read(book, herd, visit);
        ReportHerd numbers = ReportHerd.of(source);
        List<ReportFigures.Point> trend = numbers.trend();
        ReportFigures.Point today = trend.get(trend.size() - 1);
        long listed = source.cows().size();
        return new ReportFigures(
                source.herd().name(),
                source.visit().date(),
                source.visit().ordinal(),
                source.scale(),
                source.scorer().name(),
                source.trimmers(),
                today,
                trend.size() > 1 ? Optional.of(trend.get(0)) : Optional.empty(),
                Math.max(0, listed - today.scored()),
                trend,
                numbers.sinceLast(),
                numbers.toLift(),
                numbers.quick(),
                source.counts().entrySet().stream()
                        .map(e -> new ReportFigures.Level(e.getKey(), e.getValue()))
                        .toList(),
                new ThenAndNowPick(book, words).pick(source),
                new ReportLines(words).lifted(source.cardsAfter(), source.cows(), source.visits(), source.levels()),
                trust(source),
                new Made(
                        version,
                        source.visits().get(0).date(),
                        source.visit().date(),
                        words.say("filters", source.scorer().name()),
                        today.scored(),
                        source.fingerprint(),
                        source.herd().zone(),
                        now));
    }

    /** The question of the Proof page with its usual window, asked of this scorer's scores up to this visit. */
    static ProofQuestion question(ReportSource source) {
        return new ProofQuestion(
                source.scale().lameCut(),
                ProofQuestion.Unit.COW,
                0,
                WINDOW_DAYS,
                LesionSet.alarm(),
                Optional.empty(),
                Optional.empty(),
                0.95,
                1);
    }

    private Trust trust(ReportSource source) {
        ProofResult proof = Proof.of(source.rows().scores(), source.rows().trims(), question(source));
        Optional<ProofResult.Corrected> corrected = proof.corrected();
        ProofResult.Observed observed = proof.observed();
        Pair sensitivity = pair("sensitivity", observed.sensitivity(), corrected.map(c -> c.sensitivity()));
        String level = level(source.scale().lameCut());
        return new Trust(
                words.say(
                        "question",
                        source.visits().get(0).ordinal(),
                        source.visit().ordinal(),
                        level,
                        words.say("lesions.alarm"),
                        0,
                        WINDOW_DAYS),
                sensitivity,
                List.of(
                        sensitivity,
                        pair("specificity", observed.specificity(), corrected.map(c -> c.specificity())),
                        pair("ppv", observed.ppv(), corrected.map(c -> c.ppv())),
                        pair("npv", observed.npv(), corrected.map(c -> c.npv())),
                        pair("auc", observed.auc(), corrected.map(c -> c.auc()))),
                corrected.map(ProofResult.Corrected::assumption).orElse(""),
                proof.whyNotCorrected(),
                proof.scored(),
                proof.counts().lifted());
    }

    private static Pair pair(String key, Estimate observed, Optional<Estimate> corrected) {
        return new Pair(key, observed, corrected);
    }

    private static String level(double cut) {
        return cut == Math.rint(cut) ? Long.toString((long) cut) : Double.toString(cut);
    }
}
