package levelback.player.work.export;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import levelback.scoring.foot.Lesions;
import levelback.scoring.value.Leg;
import levelback.store.herd.Cow;
import levelback.store.herd.CowId;
import levelback.store.herd.PersonId;
import levelback.store.herd.Score;
import levelback.store.trim.Finding;
import levelback.store.trim.FootCard;
import levelback.store.trim.LiftCard;

/**
 * {@code scores.csv}, {@code trims.csv}, {@code cows.csv} and {@code ratings.csv}: what import, proof and agreement read.
 * A rating is a score of a whole cow that two or more people gave on one visit, the visit and the cow being the clip.
 */
final class CsvFiles {

    /** What the import writes where a table did not say which claw. */
    private static final String CLAW_NOT_SAID = "claw not said";

    private final HerdContents herd;
    private final ExportNames names;
    private final boolean guarded;

    CsvFiles(HerdContents herd, ExportNames names, boolean guarded) {
        this.herd = herd;
        this.names = names;
        this.guarded = guarded;
    }

    /** The tables by file name. */
    Map<String, String> files() {
        Map<String, String> files = new LinkedHashMap<>();
        files.put("scores.csv", scores().text());
        files.put("trims.csv", trims().text());
        files.put("cows.csv", cows().text());
        files.put("ratings.csv", ratings().text());
        return files;
    }

    private CsvText scores() {
        CsvText table = new CsvText(guarded, "cow", "date", "score", "scorer", "leg", "scale");
        for (Score score : herd.scores()) {
            table.row(
                    names.of(score.cow()),
                    herd.dayOf(score).toString(),
                    plain(score.level()),
                    names.of(score.scorer()),
                    score.leg().map(Leg::name).orElse(""),
                    score.scaleId());
        }
        return table;
    }

    private CsvText trims() {
        CsvText table =
                new CsvText(guarded, "cow", "date", "leg", "claw", "zone", "lesion", "severity", "stage", "chance");
        for (LiftCard card : herd.cards()) {
            String date = card.lift().date().toString();
            String cow = names.of(card.lift().cow());
            String chance = number(card.lift().chance());
            if (card.lift().refused()) {
                table.row(cow, date, "", "", "", Lesions.REFUSED, "", "", chance);
                continue;
            }
            for (FootCard foot : card.feet()) {
                String leg = foot.foot().leg().name();
                for (Finding finding : foot.findings()) {
                    table.row(
                            cow,
                            date,
                            leg,
                            finding.note().equals(CLAW_NOT_SAID)
                                    ? ""
                                    : finding.claw().key(),
                            whole(finding.zone()),
                            finding.lesion(),
                            whole(finding.severity()),
                            finding.stage(),
                            chance);
                }
                if (foot.findings().isEmpty() && foot.foot().noLesion()) {
                    table.row(cow, date, leg, "", "", Lesions.NONE, "", "", chance);
                }
            }
        }
        return table;
    }

    private CsvText cows() {
        CsvText table = new CsvText(guarded, "cow", "official_id", "tag", "name", "birth", "calving", "parity");
        for (Cow cow : herd.cows()) {
            boolean open = !names.pseudonyms();
            table.row(
                    names.of(cow.id()),
                    open ? cow.officialId().map(ExportNames::oneLine).orElse("") : "",
                    open ? cow.tag().map(ExportNames::oneLine).orElse("") : "",
                    open ? cow.name().map(ExportNames::oneLine).orElse("") : "",
                    open ? cow.birth().map(LocalDate::toString).orElse("") : "",
                    cow.calving().map(LocalDate::toString).orElse(""),
                    whole(cow.parity()));
        }
        return table;
    }

    private record Seen(LocalDate day, CowId cow, String scale) {}

    private CsvText ratings() {
        Map<Seen, Map<PersonId, List<Score>>> all = new HashMap<>();
        for (Score score : herd.scores()) {
            all.computeIfAbsent(new Seen(herd.dayOf(score), score.cow(), score.scaleId()), k -> new HashMap<>())
                    .computeIfAbsent(score.scorer(), k -> new ArrayList<>())
                    .add(score);
        }
        Map<Seen, List<Score>> clips = new HashMap<>();
        // A leg named beside one score is where she is lame; several of one person are of a leg each and no rating of
        // her.
        all.forEach((seen, byScorer) -> byScorer.values()
                .forEach(his -> his.stream()
                        .filter(score -> his.size() == 1 || score.leg().isEmpty())
                        .forEach(score -> clips.computeIfAbsent(seen, k -> new ArrayList<>())
                                .add(score))));
        CsvText table = new CsvText(guarded, "scorer", "clip", "score", "cow", "session");
        clips.forEach((seen, scores) -> {
            if (scores.size() > 1) {
                for (Score score : scores) {
                    table.row(
                            names.of(score.scorer()),
                            seen.day() + " " + names.of(seen.cow()),
                            plain(score.level()),
                            names.of(seen.cow()),
                            "1");
                }
            }
        });
        return table;
    }

    /** What the tables leave behind of this herd; each a sentence. */
    List<String> notCarried() {
        List<String> left = new ArrayList<>();
        Set<CowId> renumbered = new HashSet<>();
        Set<CowId> seen = new HashSet<>();
        herd.numbers().forEach(span -> {
            if (!seen.add(span.cow())) {
                renumbered.add(span.cow());
            }
        });
        if (!herd.numbers().isEmpty()) {
            left.add("Since when a cow carries her number"
                    + (renumbered.isEmpty() ? "." : ", and the earlier numbers of " + renumbered.size() + " cows."));
        }
        if (!names.shared().isEmpty() && !names.pseudonyms()) {
            left.add("That two cows carried the number " + String.join(", ", names.shared())
                    + ": the earlier one is written with #2 behind it.");
        }
        if (!herd.cards().isEmpty()) {
            left.add("Who trimmed, what was done to a foot, blocks, medicine, photos, days to look again and notes.");
        }
        long handled = herd.cards().stream()
                .filter(card -> !card.lift().refused())
                .flatMap(card -> card.feet().stream())
                .filter(foot -> foot.findings().isEmpty() && !foot.foot().noLesion())
                .count();
        if (handled > 0) {
            left.add(handled + " feet that were handled and not examined.");
        }
        if (!herd.passes().isEmpty()) {
            left.add(
                    "Recordings, passes, gate reads, and the tags on them (the kinds vtt and annotations carry those).");
        }
        if (!herd.scores().isEmpty()) {
            left.add("Scores that a later one superseded, when a score was entered, and from which pass it was given.");
        }
        if (herd.cows().stream().anyMatch(cow -> !cow.note().isBlank())) {
            left.add("Notes on cows.");
        }
        return left;
    }

    static String plain(double value) {
        return new BigDecimal(Double.toString(value)).stripTrailingZeros().toPlainString();
    }

    private static String number(OptionalDouble value) {
        return value.isPresent() ? plain(value.getAsDouble()) : "";
    }

    private static String whole(OptionalInt value) {
        return value.isPresent() ? Integer.toString(value.getAsInt()) : "";
    }
}
