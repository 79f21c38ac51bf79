package levelback.player.work.export;

import java.nio.file.Path;
import java.util.Optional;

/**
 * What is to be written where.
 *
 * @param herd which herd; empty for all, each in a folder of its own where there are several
 * @param pseudonyms whether cows and people are given numbers of the export's own
 * @param forSpreadsheet whether text that a spreadsheet would run as a formula is guarded
 * @param replace whether files of an earlier export may be replaced
 */
public record ExportOrder(
        Kind kind, Path out, Optional<String> herd, boolean pseudonyms, boolean forSpreadsheet, boolean replace) {

    /** The kinds of files. */
    public enum Kind {
        /** Tables that import, proof and agreement read back. */
        CSV,
        /** A Frictionless Data Package. */
        PACKAGE,
        /** ICAR ADE JSON. */
        ADE,
        /** WebVTT subtitles. */
        VTT,
        /** W3C Web Annotations. */
        ANNOTATIONS,
        /** COCO keypoints. */
        COCO,
        /** Matroska chapters and FFmpeg metadata. */
        CHAPTERS
    }
}
