package levelback.clips.write;

import java.io.BufferedOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.CRC32;
import java.util.zip.Deflater;

/**
 * Writes 8-bit RGB pictures as PNG.
 *
 * <p>References: ISO/IEC 15948:2004 (PNG), 5.3 chunk layout, 9.2 filter type 1 (Sub), 11.2.2 IHDR, 11.3.3.5 sRGB.
 */
public final class PngWriter {

    private static final byte[] SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};
    private static final int TRUE_COLOUR = 2;
    private static final byte FILTER_SUB = 1;
    private static final int PIECE = 1 << 16;

    private PngWriter() {}

    /**
     * Writes a picture beside its place and then renames it, so that nothing half-written stays. Alpha is not kept.
     *
     * @param bgra rows of blue, green, red, alpha from the buffer's byte 0 on; position and limit are left alone
     * @param strideBytes bytes from one row to the next, at least 4 × width
     * @throws IllegalArgumentException if a size is below 1 or the buffer is too small
     */
    public static void write(Path png, int width, int height, ByteBuffer bgra, int strideBytes) throws IOException {
        if (width < 1
                || height < 1
                || strideBytes < 4 * width
                || bgra.capacity() < (long) strideBytes * (height - 1) + 4L * width) {
            throw new IllegalArgumentException(
                    "not a picture of %d by %d with rows of %d bytes: %s".formatted(width, height, strideBytes, bgra));
        }
        try (PartFile part = PartFile.beside(png)) {
            try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(part.path()), PIECE)) {
                write(out, width, height, bgra, strideBytes);
            }
            part.finish();
        }
    }

    /** Writes a picture to a stream, which stays open. */
    public static void write(OutputStream out, int width, int height, ByteBuffer bgra, int strideBytes)
            throws IOException {
        out.write(SIGNATURE);
        ByteBuffer head = ByteBuffer.allocate(13);
        head.putInt(width).putInt(height).put((byte) 8).put((byte) TRUE_COLOUR).put(new byte[3]);
        chunk(out, "IHDR", head.array(), 13);
        chunk(out, "sRGB", new byte[] {0}, 1);
        Deflater deflater = new Deflater(6);
        try {
            byte[] row = new byte[1 + 3 * width];
            byte[] piece = new byte[PIECE];
            for (int y = 0; y < height; y++) {
                fill(row, width, bgra, y * strideBytes);
                deflater.setInput(row);
                drain(deflater, piece, out);
            }
            deflater.finish();
            drain(deflater, piece, out);
        } finally {
            deflater.end();
        }
        chunk(out, "IEND", new byte[0], 0);
        out.flush();
    }

    private static void fill(byte[] row, int width, ByteBuffer bgra, int from) {
        row[0] = FILTER_SUB;
        int red = 0;
        int green = 0;
        int blue = 0;
        int at = 1;
        for (int x = 0; x < width; x++) {
            int pixel = from + 4 * x;
            int b = bgra.get(pixel);
            int g = bgra.get(pixel + 1);
            int r = bgra.get(pixel + 2);
            row[at++] = (byte) (r - red);
            row[at++] = (byte) (g - green);
            row[at++] = (byte) (b - blue);
            red = r;
            green = g;
            blue = b;
        }
    }

    private static void drain(Deflater deflater, byte[] piece, OutputStream out) throws IOException {
        for (int n = deflater.deflate(piece); n > 0; n = deflater.deflate(piece)) {
            chunk(out, "IDAT", piece, n);
        }
    }

    private static void chunk(OutputStream out, String name, byte[] data, int length) throws IOException {
        byte[] type = name.getBytes(StandardCharsets.US_ASCII);
        CRC32 crc = new CRC32();
        crc.update(type);
        crc.update(data, 0, length);
        DataOutputStream numbers = new DataOutputStream(out);
        numbers.writeInt(length);
        numbers.write(type);
        numbers.write(data, 0, length);
        numbers.writeInt((int) crc.getValue());
    }
}
