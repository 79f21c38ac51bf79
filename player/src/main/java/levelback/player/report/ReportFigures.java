package levelback.player.report;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import levelback.scoring.scale.GaitScale;
import levelback.scoring.value.Estimate;
import levelback.scoring.value.Leg;

/**
 * Everything that stands in a report, counted and worked out; the page only sets it in type.
 *
 * @param herd name of the herd
 * @param visit day of the visit
 * @param ordinal which visit of the herd it is
 * @param scale the herd's gait scale
 * @param scorer whose scores these are
 * @param trimmers who lifted the feet
 * @param today the visit's own point of the trend
 * @param first the first visit's point, where this is not the first
 * @param notSeen cows of the herd without a score at this visit
 * @param trend one point for each visit up to this one, oldest first
 * @param sinceLast what changed since the visit before
 * @param toLift days from the first lame score to the lift
 * @param quick how many lame scores were followed by a lift within two days
 * @param levels how many cows at each level, soundest first
 * @param thenAndNow one cow on two days
 * @param lifted the cows lifted for this visit, worst first
 * @param trust what the scores are worth
 * @param made where this comes from
 */
public record ReportFigures(
        String herd,
        LocalDate visit,
        int ordinal,
        GaitScale scale,
        String scorer,
        List<String> trimmers,
        Point today,
        Optional<Point> first,
        long notSeen,
        List<Point> trend,
        Optional<SinceLast> sinceLast,
        Estimate toLift,
        Quick quick,
        List<Level> levels,
        Optional<ThenAndNow> thenAndNow,
        List<Lifted> lifted,
        Trust trust,
        Made made) {

    public ReportFigures {
        trimmers = List.copyOf(trimmers);
        trend = List.copyOf(trend);
        levels = List.copyOf(levels);
        lifted = List.copyOf(lifted);
    }

    /**
     * One visit in the trend.
     *
     * @param scored cows scored
     * @param lame cows at or above the lame cut
     * @param share lame of scored, with its interval
     * @param severe cows at or above the severe cut
     */
    public record Point(LocalDate date, long scored, long lame, Estimate share, long severe) {}

    /**
     * What changed since the visit before.
     *
     * @param stillLame lame at both visits
     * @param threeOrMore of these, lame at three visits running or more
     * @param newlyLame lame now and not then
     * @param newCases of these, after two sound scores
     * @param recovered lame then, sound now
     */
    public record SinceLast(
            LocalDate from, long stillLame, long threeOrMore, long newlyLame, long newCases, long recovered) {}

    /**
     * Lame scores followed by a lift within two days.
     *
     * @param within of them, lifted within two days
     * @param lameScores all lame scores with two days after them, the never lifted among them
     */
    public record Quick(long within, long lameScores) {}

    /** How many cows stand at a level. */
    public record Level(double level, long cows) {}

    /**
     * One cow on two days.
     *
     * @param leg the leg it is about, where one is known
     * @param remarks what was found and done in between, one sentence each
     * @param scores her scores from the earlier day to the later
     */
    public record ThenAndNow(
            String number,
            String name,
            Optional<Leg> leg,
            List<String> remarks,
            List<Double> scores,
            Shot then,
            Shot now) {
        public ThenAndNow {
            remarks = List.copyOf(remarks);
            scores = List.copyOf(scores);
        }
    }

    /**
     * An exact frame.
     *
     * @param level her score that day
     * @param recording name of the file
     * @param frame frame numbered in the recording
     * @param png the picture, or empty where the recording cannot be read any more; {@code trouble} then says why
     * @param trouble one sentence, or empty text
     */
    @SuppressWarnings("ArrayRecordComponent")
    public record Shot(LocalDate date, OptionalDouble level, String recording, int frame, byte[] png, String trouble) {}

    /**
     * One cow lifted.
     *
     * @param score her score at the visit
     * @param lastFive her scores at the last five visits, oldest first; empty where she was not seen
     * @param feet one line for each foot with a finding, or one line for all feet
     * @param why {@code control} for a control lift, {@code refused} for one not done, else empty text
     */
    public record Lifted(
            String number,
            String name,
            OptionalDouble score,
            List<OptionalDouble> lastFive,
            List<FootLine> feet,
            Optional<LocalDate> lookAgain,
            String why) {
        public Lifted {
            lastFive = List.copyOf(lastFive);
            feet = List.copyOf(feet);
        }
    }

    /** What was found on a foot and done to it; no leg where the line stands for all feet. */
    public record FootLine(Optional<Leg> leg, String found, String done) {}

    /**
     * What the scores are worth.
     *
     * @param question the question in words: cut, window, unit, lesions, visits
     * @param sensitivity share of cows with a lesion that had scored lame
     * @param rows each figure beside its corrected self
     * @param assumption what the correction takes for granted
     * @param why why nothing is corrected, or empty text
     * @param scored cow-visits scored
     * @param lifted of them lifted
     */
    public record Trust(
            String question,
            Pair sensitivity,
            List<Pair> rows,
            String assumption,
            String why,
            long scored,
            long lifted) {
        public Trust {
            rows = List.copyOf(rows);
        }
    }

    /**
     * A figure among the lifted only, beside the one for all that were scored.
     *
     * @param key the figure's key, such as {@code sensitivity}
     */
    public record Pair(String key, Estimate observed, Optional<Estimate> corrected) {}

    /**
     * Where a report comes from.
     *
     * @param version Levelback's version and build
     * @param filters what was counted, in words
     * @param bookFingerprint first eight hex digits of the SHA-256 over the scores and cards that were read
     */
    public record Made(
            String version,
            LocalDate from,
            LocalDate to,
            String filters,
            long shown,
            String bookFingerprint,
            ZoneId zone,
            Instant at) {}
}
