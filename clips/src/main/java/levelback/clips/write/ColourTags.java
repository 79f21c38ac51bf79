package levelback.clips.write;

import static org.bytedeco.ffmpeg.global.avutil.*;
import static org.bytedeco.ffmpeg.global.swscale.*;

/**
 * The matrix that a written film is coded with: BT.709 from 720 lines up, BT.601 (as SMPTE 170M) below, limited range; the
 * rule by which players read films without tags too.
 *
 * @param matrix libavutil's number
 * @param coefficients swscale's number
 */
record ColourTags(int matrix, int coefficients) {

    private static final int HD_LINES = 720;

    static ColourTags forLines(int lines) {
        return lines < HD_LINES
                ? new ColourTags(AVCOL_SPC_SMPTE170M, SWS_CS_ITU601)
                : new ColourTags(AVCOL_SPC_BT709, SWS_CS_ITU709);
    }
}
