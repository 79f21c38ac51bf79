package levelback.player.work.export;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import levelback.scoring.value.Leg;
import levelback.scoring.value.MediaTime;
import levelback.store.herd.Score;
import levelback.store.herd.Tag;
import levelback.store.lane.Pass;
import levelback.store.lane.PassId;
import levelback.store.lane.Recording;

/**
 * What is written on the recordings of a herd, by the time a player shows: milliseconds from the first picture, whatever
 * time stamp that one carries.
 */
final class FilmNotes {

    /** A tag is a moment; a person needs this long to see it. */
    private static final long SHOWN_MS = 1500;

    /**
     * A note.
     *
     * @param id UUID of the pass or the tag
     * @param text one line
     * @param tags short keys, such as {@code mobility-0-3:2} or {@code short-stride:LH}
     * @param pass whether it is the pass itself
     */
    record Note(String id, long fromMs, long toMs, String text, List<String> tags, String by, boolean pass) {
        Note {
            tags = List.copyOf(tags);
        }
    }

    /** A recording, the stem of the files about it, and its notes in order. */
    record Film(Recording recording, String stem, String source, List<Note> notes) {
        Film {
            notes = List.copyOf(notes);
        }
    }

    private final HerdContents herd;
    private final ExportNames names;

    FilmNotes(HerdContents herd, ExportNames names) {
        this.herd = herd;
        this.names = names;
    }

    List<Film> films() {
        Map<PassId, List<Score>> scores = new HashMap<>();
        herd.scores()
                .forEach(s -> s.pass()
                        .ifPresent(pass -> scores.computeIfAbsent(pass, p -> new ArrayList<>())
                                .add(s)));
        List<Film> films = new ArrayList<>();
        Set<String> taken = new HashSet<>();
        int n = 0;
        for (Recording recording : herd.recordings()) {
            n++;
            String file = String.valueOf(recording.file().getFileName());
            String stem = names.pseudonyms() ? "recording-" + n : file.replaceFirst("\\.[^.]{1,5}$", "");
            String free = stem;
            for (int k = 2; !taken.add(free.toLowerCase(Locale.ROOT)); k++) {
                free = stem + "-" + k;
            }
            List<Note> notes = new ArrayList<>();
            for (Pass pass : herd.passes()) {
                if (pass.recording().equals(recording.id())) {
                    notes.add(pass(recording, pass, scores.getOrDefault(pass.id(), List.of())));
                    herd.tags().getOrDefault(pass.id(), List.of()).forEach(tag -> notes.add(tag(recording, tag)));
                }
            }
            notes.sort(Comparator.comparing(Note::fromMs)
                    .thenComparing(Note::toMs, Comparator.reverseOrder())
                    .thenComparing(Note::text)
                    .thenComparing(Note::id));
            if (!notes.isEmpty()) {
                films.add(new Film(recording, free, names.pseudonyms() ? free : file, notes));
            }
        }
        return films;
    }

    private Note pass(Recording recording, Pass pass, List<Score> scores) {
        List<String> tags = new ArrayList<>();
        List<String> words = new ArrayList<>();
        for (Score score : scores) {
            String level = score.scaleId() + ":" + CsvFiles.plain(score.level());
            String leg = score.leg().map(l -> ":" + l).orElse("");
            tags.add(level + leg);
            words.add(level.replace(":", " ") + score.leg().map(l -> " " + l).orElse("") + " ("
                    + names.of(score.scorer()) + ")");
        }
        String cow = pass.cow().map(c -> "cow " + names.of(c)).orElse("cow not known");
        long from = ms(recording, pass.from());
        return new Note(
                pass.id().uuid().toString(),
                from,
                Math.max(from + 1, ms(recording, pass.to())),
                words.isEmpty() ? cow : cow + ": " + words.stream().sorted().collect(Collectors.joining("; ")),
                tags,
                scores.isEmpty() ? "" : names.of(scores.get(0).scorer()),
                true);
    }

    private Note tag(Recording recording, Tag tag) {
        String leg = tag.leg().map(Leg::name).orElse("");
        String words = tag.key().replace('-', ' ') + (leg.isEmpty() ? "" : " " + leg);
        String note = names.pseudonyms() ? "" : ExportNames.oneLine(tag.note());
        long from = ms(recording, tag.time());
        return new Note(
                tag.id().uuid().toString(),
                from,
                from + SHOWN_MS,
                words + (note.isEmpty() ? "" : ": " + note),
                List.of(tag.key() + (leg.isEmpty() ? "" : ":" + leg)),
                names.of(tag.by()),
                false);
    }

    private static long ms(Recording recording, MediaTime time) {
        return Math.max(0, Math.round((time.timeUs() - recording.startUs()) / 1000.0));
    }

    List<String> notCarried(boolean tags) {
        List<String> left = new ArrayList<>(List.of("Trim records, gate reads, and scores that were superseded."));
        long live = herd.scores().stream().filter(s -> s.pass().isEmpty()).count();
        if (live > 0) {
            left.add(live + " scores that were given from no pass.");
        }
        if (herd.passes().isEmpty()) {
            left.add("The book has no pass of a recording of this herd, so there is nothing to write.");
        }
        if (!tags) {
            left.add("Tags: chapters are passes only.");
        }
        return left;
    }

    /** {@code 01:02:03.004}. */
    static String clock(long ms) {
        return String.format(
                Locale.ROOT, "%02d:%02d:%02d.%03d", ms / 3_600_000, ms / 60_000 % 60, ms / 1000 % 60, ms % 1000);
    }

    /** One file for each film, named after it. */
    static Map<String, String> byStem(List<Film> films, String ending, java.util.function.Function<Film, String> text) {
        Map<String, String> files = new LinkedHashMap<>();
        films.forEach(film -> files.put(film.stem() + ending, text.apply(film)));
        return files;
    }
}
