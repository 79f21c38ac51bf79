package levelback.clips.decode.internal;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.BitSet;
import java.util.Optional;
import java.util.zip.CRC32C;

/**
 * The bytes of an index in the cache: little-endian numbers one after the other, closed by the CRC32C of all before it, so
 * that a damaged file is known for one.
 */
public final class IndexBytes {

    private ByteBuffer bytes;

    private IndexBytes(ByteBuffer bytes) {
        this.bytes = bytes.order(ByteOrder.LITTLE_ENDIAN);
    }

    /** Empty, to be written. */
    public static IndexBytes toWrite() {
        return new IndexBytes(ByteBuffer.allocate(1 << 16));
    }

    /** To be read; empty where the check sum at the end is not that of the bytes before it. */
    public static Optional<IndexBytes> toRead(byte[] stored) {
        if (stored.length < Integer.BYTES) {
            return Optional.empty();
        }
        int content = stored.length - Integer.BYTES;
        ByteBuffer all = ByteBuffer.wrap(stored).order(ByteOrder.LITTLE_ENDIAN);
        return all.getInt(content) == check(stored, content)
                ? Optional.of(new IndexBytes(all.limit(content)))
                : Optional.empty();
    }

    /** What was written, with its check sum. */
    public byte[] finished() {
        int content = bytes.position();
        byte[] whole = new byte[content + Integer.BYTES];
        bytes.duplicate().flip().get(whole, 0, content);
        ByteBuffer.wrap(whole).order(ByteOrder.LITTLE_ENDIAN).putInt(content, check(whole, content));
        return whole;
    }

    private static int check(byte[] of, int length) {
        CRC32C crc = new CRC32C();
        crc.update(of, 0, length);
        return (int) crc.getValue();
    }

    private ByteBuffer room(long more) {
        if (bytes.remaining() < more) {
            long wanted = Math.max(2L * bytes.capacity(), bytes.position() + more);
            ByteBuffer larger = ByteBuffer.allocate(Math.toIntExact(wanted)).order(ByteOrder.LITTLE_ENDIAN);
            bytes = larger.put(bytes.flip());
        }
        return bytes;
    }

    /** Writes a number. */
    public void number(int value) {
        room(Integer.BYTES).putInt(value);
    }

    /** Writes a long number. */
    public void number(long value) {
        room(Long.BYTES).putLong(value);
    }

    /** Writes a number with a fraction. */
    public void number(double value) {
        room(Double.BYTES).putDouble(value);
    }

    /** Writes a text. */
    public void text(String value) {
        bytes(value.getBytes(StandardCharsets.UTF_8));
    }

    /** Writes a set of numbers. */
    void set(BitSet value) {
        longs(value.toLongArray());
    }

    void bytes(byte[] values) {
        number(values.length);
        room(values.length).put(values);
    }

    void ints(int[] values) {
        number(values.length);
        int size = Math.multiplyExact(values.length, Integer.BYTES);
        room(size).asIntBuffer().put(values);
        bytes.position(bytes.position() + size);
    }

    void longs(long[] values) {
        number(values.length);
        int size = Math.multiplyExact(values.length, Long.BYTES);
        room(size).asLongBuffer().put(values);
        bytes.position(bytes.position() + size);
    }

    /** Reads a number. */
    public int readInt() {
        return bytes.getInt();
    }

    /** Reads a long number. */
    public long readLong() {
        return bytes.getLong();
    }

    /** Reads a number with a fraction. */
    public double readDouble() {
        return bytes.getDouble();
    }

    /** Reads a text. */
    public String readText() {
        return new String(readBytes(), StandardCharsets.UTF_8);
    }

    BitSet readSet() {
        return BitSet.valueOf(readLongs());
    }

    private int length(int each) {
        int length = bytes.getInt();
        if (length < 0 || (long) length * each > bytes.remaining()) {
            throw new IllegalArgumentException("no such length: " + length);
        }
        return length;
    }

    byte[] readBytes() {
        byte[] values = new byte[length(1)];
        bytes.get(values);
        return values;
    }

    int[] readInts() {
        int[] values = new int[length(Integer.BYTES)];
        bytes.asIntBuffer().get(values);
        bytes.position(bytes.position() + values.length * Integer.BYTES);
        return values;
    }

    long[] readLongs() {
        long[] values = new long[length(Long.BYTES)];
        bytes.asLongBuffer().get(values);
        bytes.position(bytes.position() + values.length * Long.BYTES);
        return values;
    }
}
