package levelback.player.work.export;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * Passes as chapters: Matroska chapters (RFC 9559) as the XML that its tools take, and FFmpeg's metadata file. Never for
 * MP4, whose chapters move starts and ends.
 */
final class ChapterFiles {

    private ChapterFiles() {}

    static Map<String, String> of(List<FilmNotes.Film> films) {
        Map<String, String> files = new LinkedHashMap<>(FilmNotes.byStem(films, ".chapters.xml", ChapterFiles::xml));
        files.putAll(FilmNotes.byStem(films, ".ffmetadata", ChapterFiles::metadata));
        return files;
    }

    private static String xml(FilmNotes.Film film) {
        StringBuilder text = new StringBuilder("""
                <?xml version="1.0" encoding="UTF-8"?>
                <!DOCTYPE Chapters SYSTEM "matroskachapters.dtd">
                <Chapters>
                  <EditionEntry>
                """);
        for (FilmNotes.Note note : film.notes()) {
            if (note.pass()) {
                text.append("    <ChapterAtom>\n      <ChapterUID>")
                        .append(uid(note.id()))
                        .append("</ChapterUID>\n      <ChapterTimeStart>")
                        .append(FilmNotes.clock(note.fromMs()))
                        .append("000000</ChapterTimeStart>\n      <ChapterTimeEnd>")
                        .append(FilmNotes.clock(note.toMs()))
                        .append("000000</ChapterTimeEnd>\n      <ChapterDisplay>\n        <ChapterString>")
                        .append(note.text()
                                .replace("&", "&amp;")
                                .replace("<", "&lt;")
                                .replace(">", "&gt;"))
                        .append("""
                                </ChapterString>
                                        <ChapterLanguage>eng</ChapterLanguage>
                                      </ChapterDisplay>
                                    </ChapterAtom>
                                """);
            }
        }
        return text.append("  </EditionEntry>\n</Chapters>\n").toString();
    }

    /** A number other than 0, the same for the same pass. */
    private static long uid(String id) {
        long half = UUID.fromString(id).getLeastSignificantBits() & Long.MAX_VALUE;
        return half == 0 ? 1 : half;
    }

    private static String metadata(FilmNotes.Film film) {
        StringBuilder text = new StringBuilder(";FFMETADATA1\n");
        for (FilmNotes.Note note : film.notes()) {
            if (note.pass()) {
                text.append("[CHAPTER]\nTIMEBASE=1/1000\nSTART=")
                        .append(note.fromMs())
                        .append("\nEND=")
                        .append(note.toMs())
                        .append("\ntitle=")
                        .append(note.text().replaceAll("([=;#\\\\])", "\\\\$1"))
                        .append('\n');
            }
        }
        return text.toString();
    }
}
