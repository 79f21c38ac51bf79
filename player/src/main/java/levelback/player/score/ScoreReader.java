package levelback.player.score;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import levelback.clips.decode.Span;
import levelback.player.work.GiveScore;
import levelback.scoring.scale.GaitScale;
import levelback.store.book.Book;
import levelback.store.herd.Cow;
import levelback.store.herd.CowId;
import levelback.store.herd.Herd;
import levelback.store.herd.PersonId;
import levelback.store.herd.Score;
import levelback.store.herd.Tag;
import levelback.store.herd.Visit;
import levelback.store.herd.VisitId;
import levelback.store.lane.Pass;
import levelback.store.lane.PassId;
import levelback.store.lane.Recording;
import levelback.store.lane.RecordingId;

/**
 * Reads from the book what the Score page may show, and no more: while a score is not in, earlier scores, other scorers and
 * their tags don't leave the book. Blocking; never on the JavaFX thread.
 */
final class ScoreReader {

    /** A cow whose earlier scores a scorer has had open, at a visit. */
    record Opened(CowId cow, VisitId visit, PersonId scorer) {}

    /** What to read. */
    record Question(
            Herd herd,
            Optional<VisitId> visit,
            PersonId scorer,
            Optional<PassId> pass,
            Optional<RecordingId> marking,
            Set<Opened> opened,
            Instant now) {}

    /** One line of the queue. */
    record QueueRow(
            PassId pass, RecordingId recording, Span frames, int ordinal, Optional<String> number, boolean settled) {}

    /** A recording of the visit. */
    record RecordingRow(RecordingId id, String fileName, int passes) {}

    /** All passes of the visit in milking order. */
    record Queue(Optional<Visit> visit, List<QueueRow> rows, List<RecordingRow> recordings) {
        Queue {
            rows = List.copyOf(rows);
            recordings = List.copyOf(recordings);
        }

        long settled() {
            return rows.stream().filter(QueueRow::settled).count();
        }

        /** The first pass that is not settled after one, from the top again at the end. */
        Optional<QueueRow> nextOpen(PassId after) {
            int at = indexOf(after);
            for (int i = 1; i <= rows.size(); i++) {
                QueueRow row = rows.get((at + i) % rows.size());
                if (!row.settled() && !row.pass().equals(after)) {
                    return Optional.of(row);
                }
            }
            return Optional.empty();
        }

        int indexOf(PassId pass) {
            for (int i = 0; i < rows.size(); i++) {
                if (rows.get(i).pass().equals(pass)) {
                    return i;
                }
            }
            return -1;
        }
    }

    /** One of the cow's scores, shown once they are open. */
    record EarlierScore(LocalDate date, Optional<GaitScale> scale, double level, boolean today) {}

    /** What may be seen of one pass. */
    record PassSheet(
            Pass pass,
            Recording recording,
            int ordinal,
            Optional<Cow> cow,
            Optional<Score> mine,
            boolean open,
            List<EarlierScore> earlier,
            List<Tag> tags,
            Optional<String> cannotScore) {
        PassSheet {
            earlier = List.copyOf(earlier);
            tags = List.copyOf(tags);
        }
    }

    /** A recording on which passes are marked. */
    record MarkSheet(Recording recording, List<Pass> passes, Map<PassId, String> numbers) {
        MarkSheet {
            passes = List.copyOf(passes);
            numbers = Map.copyOf(numbers);
        }
    }

    /** The answer; neither a pass nor a recording if the visit has none. */
    record Answer(Queue queue, Optional<PassSheet> pass, Optional<MarkSheet> marking) {}

    private static final int EARLIER_SHOWN = 5;

    private final Function<String, Optional<GaitScale>> scales;

    ScoreReader(Function<String, Optional<GaitScale>> scales) {
        this.scales = scales;
    }

    Answer read(Book book, Question question) {
        Map<VisitId, Visit> visits = book.herd().visits(question.herd().id()).stream()
                .collect(Collectors.toMap(Visit::id, Function.identity(), (a, b) -> a, LinkedHashMap::new));
        Optional<Visit> asked = question.visit().flatMap(id -> Optional.ofNullable(visits.get(id)));
        if (asked.isEmpty()) {
            return new Answer(new Queue(Optional.empty(), List.of(), List.of()), Optional.empty(), Optional.empty());
        }
        Visit visit = asked.get();
        List<Pass> passes = book.lane().passesOf(visit.id());
        Map<CowId, Cow> cows = book.herd().cows(question.herd().id(), visit.date()).stream()
                .collect(Collectors.toMap(Cow::id, Function.identity(), (a, b) -> a));
        Map<CowId, Score> mine = book.herd().scoresOf(visit.id()).stream()
                .filter(score -> score.scorer().equals(question.scorer()))
                .collect(Collectors.toMap(Score::cow, Function.identity(), ScoreReader::newer));
        Map<PassId, List<Tag>> tags = new HashMap<>();
        List<QueueRow> rows = new ArrayList<>();
        Map<PassId, String> numbers = new HashMap<>();
        for (Pass pass : passes) {
            Optional<String> number = pass.cow().map(cows::get).map(Cow::number);
            number.ifPresent(n -> numbers.put(pass.id(), n));
            boolean settled = pass.cow().map(mine::containsKey).orElse(false);
            if (!settled) {
                List<Tag> ofPass = book.herd().tagsOf(pass.id());
                tags.put(pass.id(), ofPass);
                settled = cannot(ofPass, question.scorer()).isPresent();
            }
            Span frames = new Span(pass.fromFrame(), Math.max(pass.fromFrame(), pass.toFrame()));
            rows.add(new QueueRow(pass.id(), pass.recording(), frames, rows.size() + 1, number, settled));
        }
        List<Recording> recordings = book.lane().recordingsOf(visit.id());
        Queue queue = new Queue(Optional.of(visit), rows, recordingRows(recordings, passes));
        Optional<MarkSheet> marking = question.marking()
                .flatMap(
                        id -> recordings.stream().filter(r -> r.id().equals(id)).findFirst())
                .map(recording -> new MarkSheet(
                        recording,
                        passes.stream()
                                .filter(pass -> pass.recording().equals(recording.id()))
                                .toList(),
                        numbers));
        if (marking.isPresent() || rows.isEmpty()) {
            return new Answer(queue, Optional.empty(), marking);
        }
        QueueRow current = question.pass()
                .map(queue::indexOf)
                .filter(at -> at >= 0)
                .map(rows::get)
                .or(() -> rows.stream().filter(row -> !row.settled()).findFirst())
                .orElse(rows.get(0));
        Pass pass = passes.get(current.ordinal() - 1);
        Recording recording = recordings.stream()
                .filter(r -> r.id().equals(pass.recording()))
                .findFirst()
                .orElseThrow();
        List<Tag> ofPass =
                tags.containsKey(pass.id()) ? tags.get(pass.id()) : book.herd().tagsOf(pass.id());
        return new Answer(
                queue,
                Optional.of(sheet(book, question, visit, visits, pass, recording, current, cows, mine, ofPass)),
                Optional.empty());
    }

    private PassSheet sheet(
            Book book,
            Question question,
            Visit visit,
            Map<VisitId, Visit> visits,
            Pass pass,
            Recording recording,
            QueueRow row,
            Map<CowId, Cow> cows,
            Map<CowId, Score> mine,
            List<Tag> tags) {
        Optional<Cow> cow = pass.cow().map(cows::get);
        Optional<Score> score = cow.map(Cow::id).map(mine::get);
        boolean open = score.isPresent()
                && (!question.now().isBefore(score.get().at().plus(GiveScore.SHUT_FOR))
                        || question.opened().contains(new Opened(score.get().cow(), visit.id(), question.scorer())));
        List<Tag> seen = tags.stream()
                .filter(tag -> tag.kind() != Tag.Kind.CANNOT_SCORE)
                .filter(tag -> open || tag.by().equals(question.scorer()))
                .sorted(Comparator.comparingInt(Tag::recordingFrame).thenComparing(Tag::at))
                .toList();
        List<EarlierScore> earlier =
                open ? earlier(book, cow.orElseThrow().id(), visit, visits, question.scorer()) : List.of();
        return new PassSheet(
                pass, recording, row.ordinal(), cow, score, open, earlier, seen, cannot(tags, question.scorer()));
    }

    /** The last visits' scores, one of each visit: the scorer's own before another's. */
    private List<EarlierScore> earlier(Book book, CowId cow, Visit today, Map<VisitId, Visit> visits, PersonId scorer) {
        Map<VisitId, Score> byVisit = new LinkedHashMap<>();
        for (Score score : book.herd().scoresOf(cow)) {
            byVisit.merge(score.visit(), score, (a, b) -> b.scorer().equals(scorer) ? b : a);
        }
        List<EarlierScore> all = byVisit.values().stream()
                .flatMap(score -> Optional.ofNullable(visits.get(score.visit()))
                        .map(of -> new EarlierScore(
                                of.date(),
                                scales.apply(score.scaleId()),
                                score.level(),
                                of.id().equals(today.id())))
                        .stream())
                .filter(score -> !score.date().isAfter(today.date()))
                .sorted(Comparator.comparing(EarlierScore::date))
                .toList();
        return all.subList(Math.max(0, all.size() - EARLIER_SHOWN), all.size());
    }

    private static Score newer(Score a, Score b) {
        return a.at().isBefore(b.at()) ? b : a;
    }

    private static Optional<String> cannot(List<Tag> tags, PersonId scorer) {
        return tags.stream()
                .filter(tag -> tag.kind() == Tag.Kind.CANNOT_SCORE && tag.by().equals(scorer))
                .map(Tag::note)
                .findFirst();
    }

    private static List<RecordingRow> recordingRows(List<Recording> recordings, List<Pass> passes) {
        return recordings.stream()
                .map(recording -> new RecordingRow(
                        recording.id(), String.valueOf(recording.file().getFileName()), (int) passes.stream()
                                .filter(pass -> pass.recording().equals(recording.id()))
                                .count()))
                .toList();
    }
}
