package levelback.player.shell;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;
import java.util.zip.DeflaterOutputStream;
import javafx.scene.image.Image;
import javafx.scene.image.PixelFormat;

/** Writes a picture of the desk as PNG: 8-bit RGB, no alpha (PNG specification, W3C Recommendation, third edition). */
public final class Snapshot {

    private static final byte[] SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'};

    private Snapshot() {}

    /** The bytes of a PNG file. Call it on the JavaFX thread or on a picture that no longer changes. */
    public static byte[] png(Image picture) {
        int width = (int) picture.getWidth();
        int height = (int) picture.getHeight();
        int[] row = new int[width];
        byte[] line = new byte[1 + width * 3];
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (DeflaterOutputStream deflater = new DeflaterOutputStream(packed)) {
            for (int y = 0; y < height; y++) {
                picture.getPixelReader().getPixels(0, y, width, 1, PixelFormat.getIntArgbInstance(), row, 0, width);
                int at = 1;
                for (int argb : row) {
                    line[at++] = (byte) (argb >> 16);
                    line[at++] = (byte) (argb >> 8);
                    line[at++] = (byte) argb;
                }
                deflater.write(line);
            }
            deflater.finish();
            ByteArrayOutputStream file = new ByteArrayOutputStream();
            file.write(SIGNATURE);
            ByteArrayOutputStream head = new ByteArrayOutputStream();
            DataOutputStream fields = new DataOutputStream(head);
            fields.writeInt(width);
            fields.writeInt(height);
            // 8 bits, truecolour, deflate, adaptive filtering, not interlaced.
            fields.write(new byte[] {8, 2, 0, 0, 0});
            chunk(file, "IHDR", head.toByteArray());
            chunk(file, "IDAT", packed.toByteArray());
            chunk(file, "IEND", new byte[0]);
            return file.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void chunk(ByteArrayOutputStream file, String type, byte[] data) throws IOException {
        DataOutputStream out = new DataOutputStream(file);
        out.writeInt(data.length);
        byte[] name = type.getBytes(StandardCharsets.US_ASCII);
        out.write(name);
        out.write(data);
        CRC32 crc = new CRC32();
        crc.update(name);
        crc.update(data);
        out.writeInt((int) crc.getValue());
    }
}
