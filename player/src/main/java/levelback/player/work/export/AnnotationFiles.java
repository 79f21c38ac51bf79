package levelback.player.work.export;

import static levelback.player.work.export.JsonText.map;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Web Annotation (W3C Recommendation 2017) with Media Fragments: one page of annotations for each recording. */
final class AnnotationFiles {

    private AnnotationFiles() {}

    static Map<String, String> of(List<FilmNotes.Film> films) {
        return FilmNotes.byStem(films, ".jsonld", AnnotationFiles::text);
    }

    private static String text(FilmNotes.Film film) {
        List<Object> items = new ArrayList<>();
        for (FilmNotes.Note note : film.notes()) {
            List<Object> body = new ArrayList<>();
            for (String tag : note.tags()) {
                body.add(map("type", "TextualBody", "purpose", "tagging", "value", tag));
            }
            body.add(map(
                    "type",
                    "TextualBody",
                    "purpose",
                    note.pass() ? "identifying" : "commenting",
                    "format",
                    "text/plain",
                    "language",
                    "en",
                    "value",
                    note.text()));
            Map<String, Object> item = map(
                    "id",
                    "urn:uuid:" + note.id(),
                    "type",
                    "Annotation",
                    "motivation",
                    note.tags().isEmpty() ? "identifying" : "assessing",
                    "body",
                    body,
                    "target",
                    map(
                            "source",
                            film.source(),
                            "selector",
                            map(
                                    "type",
                                    "FragmentSelector",
                                    "conformsTo",
                                    "http://www.w3.org/TR/media-frags/",
                                    "value",
                                    "t=" + seconds(note.fromMs()) + "," + seconds(note.toMs()))));
            if (!note.by().isEmpty()) {
                item.put("creator", map("type", "Person", "nickname", note.by()));
            }
            items.add(item);
        }
        return JsonText.of(map(
                "@context",
                "http://www.w3.org/ns/anno.jsonld",
                "id",
                "urn:uuid:" + film.recording().id().uuid(),
                "type",
                "AnnotationPage",
                "items",
                items));
    }

    private static String seconds(long ms) {
        return BigDecimal.valueOf(ms, 3).toPlainString();
    }
}
