package levelback.player.work.export;

import java.util.List;
import java.util.Map;

/** WebVTT (W3C): one file for each recording under its own name, which a player shows as subtitles when it lies beside. */
final class VttFiles {

    private VttFiles() {}

    static Map<String, String> of(List<FilmNotes.Film> films) {
        return FilmNotes.byStem(films, ".vtt", VttFiles::text);
    }

    private static String text(FilmNotes.Film film) {
        StringBuilder text = new StringBuilder("WEBVTT\n\n");
        for (FilmNotes.Note note : film.notes()) {
            text.append(note.id())
                    .append('\n')
                    .append(FilmNotes.clock(note.fromMs()))
                    .append(" --> ")
                    .append(FilmNotes.clock(note.toMs()))
                    .append('\n')
                    .append(escaped(note.text()))
                    .append("\n\n");
        }
        return text.toString();
    }

    /** An arrow would end the cue's text; escaping every > of it is what the standard offers. */
    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }
}
