package levelback.clips.corpus;

import java.io.ByteArrayOutputStream;
import java.util.Random;

/**
 * Writes H.264 whose pictures are now two fields, now one frame (PAFF), as some cameras do and no free encoder: raw
 * samples in the key pictures, moved blocks without residual in the others, skipped blocks in the B pictures.
 *
 * <p>Reference: ITU-T H.264, 7.3.2.1 (sequence), 7.3.2.2 (picture parameters), 7.3.3 (slice header), 7.3.4 and 7.3.5
 * (CAVLC slice data), annex B and 7.4.1.1 (bytes that keep start codes out), 8.2.1 (order counts), E.1.1 (VUI).
 */
final class FieldFilm {

    private static final int FRAME_NUMBER_BITS = 4;
    private static final int ORDER_BITS = 8;
    private static final int P = 5;
    private static final int B = 6;
    private static final int I = 7;

    /** How one coded picture is laid out. */
    private enum Layout {
        FRAME,
        TOP,
        BOTTOM
    }

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final Random random = new Random(11);
    private final int mbWide;
    /** Macroblock rows of a frame; even. */
    private final int mbHigh;

    private byte[] bits = new byte[1 << 16];
    private int at;
    private int frameNumber;
    private int shown;

    private FieldFilm(int mbWide, int mbHigh) {
        this.mbWide = mbWide;
        this.mbHigh = mbHigh;
    }

    /**
     * Groups of pictures: a key picture, then P pictures, each (if asked) with a B picture that is shown before it. Every
     * third picture is coded as one frame, all others as two fields; the second field of a key picture leans on its first.
     *
     * @param groups how many
     * @param pairs P pictures in each group after the first picture
     * @param bidirectional whether a B picture goes before each P picture
     * @param oneIdr only the first key picture is an IDR picture; the others are plain I pictures that promise nothing
     */
    static byte[] annexB(int groups, int pairs, boolean bidirectional, boolean oneIdr) {
        FieldFilm film = new FieldFilm(4, 4);
        for (int group = 0; group < groups; group++) {
            film.parameters();
            film.group(group, group == 0 || !oneIdr, pairs, bidirectional);
        }
        return film.out.toByteArray();
    }

    private void group(int number, boolean idr, int pairs, boolean bidirectional) {
        frameNumber = idr ? 0 : frameNumber + 1;
        shown = idr ? 0 : shown + 1;
        fields(idr, I, number, frameNumber, shown);
        for (int i = 1; i <= pairs; i++) {
            frameNumber++;
            shown += bidirectional ? 2 : 1;
            picture(i, P, frameNumber, shown);
            if (bidirectional) {
                picture(i + 1, B, frameNumber + 1, shown - 1);
            }
        }
    }

    private void picture(int i, int type, int number, int order) {
        if (i % 3 == 0) {
            slice(false, type, Layout.FRAME, 0, number, 4 * order);
        } else {
            fields(false, type, 0, number, order);
        }
    }

    private void fields(boolean idr, int type, int idrId, int number, int order) {
        slice(idr, type, Layout.TOP, idrId, number, 4 * order);
        slice(false, type == I ? P : type, Layout.BOTTOM, idrId, number, 4 * order + 2);
    }

    private void parameters() {
        begin();
        put(77, 8); // Main profile
        put(0, 8);
        put(30, 8); // level 3
        ue(0);
        ue(FRAME_NUMBER_BITS - 4);
        ue(0); // order counts are sent
        ue(ORDER_BITS - 4);
        ue(2); // reference frames
        put(0, 1);
        ue(mbWide - 1);
        ue(mbHigh / 2 - 1);
        put(0, 1); // not frames only
        put(0, 1); // no mixing inside a frame
        put(1, 1);
        put(0, 1);
        put(1, 1); // VUI
        put(0, 4);
        put(1, 1); // timing
        put(0, 16);
        put(1, 16);
        put(0, 16);
        put(50, 16);
        put(1, 1);
        put(0, 3);
        put(1, 1); // restrictions: one picture reordered, three kept
        put(1, 1);
        ue(0);
        ue(0);
        ue(9);
        ue(9);
        ue(1);
        ue(3);
        nal(3, 7);
        begin();
        ue(0);
        ue(0);
        put(0, 1); // CAVLC
        put(0, 1);
        ue(0);
        ue(0);
        ue(0);
        put(0, 3);
        se(0);
        se(0);
        se(0);
        put(1, 1); // says whether to deblock
        put(0, 2);
        nal(3, 8);
    }

    private void slice(boolean idr, int type, Layout layout, int idrId, int number, int order) {
        boolean kept = type != B;
        begin();
        ue(0);
        ue(type);
        ue(0);
        put(number & (1 << FRAME_NUMBER_BITS) - 1, FRAME_NUMBER_BITS);
        put(layout == Layout.FRAME ? 0 : 1, 1);
        if (layout != Layout.FRAME) {
            put(layout == Layout.BOTTOM ? 1 : 0, 1);
        }
        if (idr) {
            ue(idrId & 1);
        }
        put(order & (1 << ORDER_BITS) - 1, ORDER_BITS);
        if (type == B) {
            put(1, 1); // spatial direct
        }
        if (type != I) {
            put(0, 1); // one reference in each list
            put(0, type == B ? 2 : 1); // lists as they are
        }
        if (kept) {
            put(0, idr ? 2 : 1);
        }
        se(0);
        ue(1); // no deblocking
        int macroblocks = mbWide * mbHigh / (layout == Layout.FRAME ? 1 : 2);
        switch (type) {
            case I -> {
                for (int i = 0; i < macroblocks; i++) {
                    ue(25); // I_PCM
                    samples();
                }
            }
            case P -> moved(macroblocks);
            default -> ue(macroblocks);
        }
        nal(kept ? 3 : 0, idr ? 5 : 1);
    }

    private void samples() {
        while (at % 8 != 0) {
            put(0, 1);
        }
        int base = 40 + random.nextInt(150);
        for (int i = 0; i < 384; i++) {
            put(i < 256 ? base + (i * 7 + i / 16 * 3) % 50 : 100 + base / 4, 8);
        }
    }

    /** Blocks that move, with a new one in raw samples now and then so that no two pictures are the same. */
    private void moved(int macroblocks) {
        int fresh = random.nextInt(macroblocks);
        for (int i = 0; i < macroblocks; i++) {
            ue(0); // none skipped
            if (i == fresh) {
                ue(5 + 25);
                samples();
            } else {
                ue(0); // 16x16 from list 0
                se(random.nextInt(9) - 4);
                se(random.nextInt(5) - 2);
                ue(0); // no residual
            }
        }
    }

    private void begin() {
        java.util.Arrays.fill(bits, (byte) 0);
        at = 0;
    }

    private void put(int value, int count) {
        for (int i = count - 1; i >= 0; i--, at++) {
            bits[at >> 3] |= (byte) ((value >> i & 1) << (7 - (at & 7)));
        }
    }

    private void ue(int value) {
        int length = 32 - Integer.numberOfLeadingZeros(value + 1);
        put(0, length - 1);
        put(value + 1, length);
    }

    private void se(int value) {
        ue(value > 0 ? 2 * value - 1 : -2 * value);
    }

    private void nal(int kept, int type) {
        put(1, 1);
        int bytes = (at + 7) / 8;
        out.writeBytes(new byte[] {0, 0, 0, 1, (byte) (kept << 5 | type)});
        int zeros = 0;
        for (int i = 0; i < bytes; i++) {
            if (zeros >= 2 && (bits[i] & 0xFF) <= 3) {
                out.write(3);
                zeros = 0;
            }
            out.write(bits[i]);
            zeros = bits[i] == 0 ? zeros + 1 : 0;
        }
    }
}
