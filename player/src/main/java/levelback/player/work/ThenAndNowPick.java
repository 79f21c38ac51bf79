package levelback.player.work;

import java.io.IOException;
import java.nio.file.Files;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import levelback.clips.open.ClipException;
import levelback.player.report.ReportFigures.Shot;
import levelback.player.report.ReportFigures.ThenAndNow;
import levelback.player.report.ReportWords;
import levelback.scoring.value.Leg;
import levelback.store.book.Book;
import levelback.store.herd.Cow;
import levelback.store.herd.CowId;
import levelback.store.herd.Visit;
import levelback.store.lane.Pass;
import levelback.store.lane.Recording;
import levelback.store.trim.FootCard;
import levelback.store.trim.LiftCard;

/**
 * Picks the cow whose two filmed days differ most, best the one who got sounder and had something found in between, and
 * takes her two exact frames.
 */
final class ThenAndNowPick {

    private final Book book;
    private final ReportWords words;

    ThenAndNowPick(Book book, ReportWords words) {
        this.book = book;
        this.words = words;
    }

    private record Candidate(Cow cow, Visit thenVisit, Pass then, Pass now, double rank) {}

    private record Filmed(Visit visit, Pass pass) {}

    /** Empty where no cow scored at this visit and before was filmed on both days. */
    Optional<ThenAndNow> pick(ReportSource source) {
        Map<CowId, Filmed> now = filmed(source, source.visit());
        Optional<Candidate> best = Optional.empty();
        for (int v = source.visits().size() - 2; v >= 0; v--) {
            Visit earlier = source.visits().get(v);
            for (Filmed then : filmed(source, earlier).values()) {
                CowId id = then.pass().cow().orElseThrow();
                Filmed today = now.get(id);
                Cow cow = source.cows().get(id);
                OptionalDouble before = ReportLines.level(source.levels(), earlier, id);
                OptionalDouble after = ReportLines.level(source.levels(), source.visit(), id);
                if (today == null || cow == null || before.isEmpty() || after.isEmpty()) {
                    continue;
                }
                double change = before.getAsDouble() - after.getAsDouble();
                // A cow that got sounder comes before one that got lamer by as much.
                double rank = change > 0 ? change + 0.5 : -change;
                if (rank > 0 && foundBetween(source, id, earlier)) {
                    rank += 0.25;
                }
                if (best.isEmpty() || rank > best.get().rank()) {
                    best = Optional.of(new Candidate(cow, earlier, then.pass(), today.pass(), rank));
                }
            }
        }
        return best.map(pair -> picture(source, pair));
    }

    /** The cow's cards that the report may tell of. */
    private static List<LiftCard> cardsOf(ReportSource source, CowId cow) {
        return source.cards().stream().filter(c -> c.lift().cow().equals(cow)).toList();
    }

    /** Whether something was found on her feet after the earlier visit (a cow is scored before she is lifted) and before this one. */
    private static boolean foundBetween(ReportSource source, CowId cow, Visit earlier) {
        return cardsOf(source, cow).stream()
                .filter(c -> !c.lift().date().isBefore(earlier.date())
                        && c.lift().date().isBefore(source.visit().date()))
                .flatMap(c -> c.feet().stream())
                .anyMatch(foot -> !foot.findings().isEmpty());
    }

    private Map<CowId, Filmed> filmed(ReportSource source, Visit visit) {
        Map<CowId, Filmed> filmed = new java.util.LinkedHashMap<>();
        for (Pass pass : book.lane().passesOf(visit.id())) {
            pass.cow()
                    .filter(cow ->
                            source.levels().getOrDefault(visit.id(), Map.of()).containsKey(cow))
                    .ifPresent(cow -> filmed.putIfAbsent(cow, new Filmed(visit, pass)));
        }
        return filmed;
    }

    private ThenAndNow picture(ReportSource source, Candidate pair) {
        CowId id = pair.cow().id();
        List<LiftCard> cards = cardsOf(source, id);
        List<Double> scores = new ArrayList<>();
        for (Visit visit : source.visits()) {
            if (!visit.date().isBefore(pair.thenVisit().date())) {
                ReportLines.level(source.levels(), visit, id).ifPresent(scores::add);
            }
        }
        // To the end of the report's lifts: one that got lamer was lifted after the second picture.
        List<String> remarks =
                new ReportLines(words).remarks(cards, pair.thenVisit().date().minusDays(1), LocalDate.MAX);
        return new ThenAndNow(
                pair.cow().number(),
                pair.cow().name().orElse(""),
                leg(cards, source, pair),
                remarks,
                scores,
                shot(source, pair.thenVisit(), pair.then(), id),
                shot(source, source.visit(), pair.now(), id));
    }

    /** The leg of the first finding in between; else the leg her scorer named on the lamer day. */
    private Optional<Leg> leg(List<LiftCard> cards, ReportSource source, Candidate pair) {
        for (LiftCard card : cards) {
            if (!card.lift().date().isBefore(pair.thenVisit().date())) {
                for (FootCard foot : card.feet()) {
                    if (!foot.findings().isEmpty()) {
                        return Optional.of(foot.foot().leg());
                    }
                }
            }
        }
        return book.herd().scoresOf(pair.cow().id()).stream()
                .filter(s -> s.scorer().equals(source.scorer().id()))
                .filter(s -> s.visit().equals(source.visit().id())
                        || s.visit().equals(pair.thenVisit().id()))
                .flatMap(s -> s.leg().stream())
                .findFirst();
    }

    private Shot shot(ReportSource source, Visit visit, Pass pass, CowId cow) {
        OptionalDouble level = ReportLines.level(source.levels(), visit, cow);
        int frame = (pass.fromFrame() + pass.toFrame()) / 2;
        Optional<Recording> recording = book.lane().recording(pass.recording());
        String name = recording.map(r -> String.valueOf(r.file().getFileName())).orElse("");
        if (recording.isEmpty() || !Files.isRegularFile(recording.get().file())) {
            return new Shot(visit.date(), level, name, frame, new byte[0], words.say("shot.gone", name));
        }
        try {
            byte[] png = StillPicture.png(recording.get().file(), frame);
            return new Shot(visit.date(), level, name, frame, png, "");
        } catch (ClipException unreadable) {
            return new Shot(visit.date(), level, name, frame, new byte[0], String.valueOf(unreadable.getMessage()));
        } catch (IOException unreadable) {
            return new Shot(visit.date(), level, name, frame, new byte[0], words.say("shot.gone", name));
        }
    }
}
