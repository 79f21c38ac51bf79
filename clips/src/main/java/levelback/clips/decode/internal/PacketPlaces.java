package levelback.clips.decode.internal;

import java.util.Arrays;

/** Finds a packet's number by a number made of its place and size. Open addressing; a place taken twice finds nothing. */
final class PacketPlaces {

    private static final int NOBODY = -1;
    private static final int SEVERAL = -2;

    private final long[] handles;
    private final int[] numbers;
    private final int mask;

    /** @param count of packets to come */
    PacketPlaces(int count) {
        int slots = Integer.highestOneBit(Math.max(8, count)) * 4;
        handles = new long[slots];
        numbers = new int[slots];
        mask = slots - 1;
        Arrays.fill(numbers, NOBODY);
    }

    private int slot(long handle) {
        int slot = (int) (handle ^ handle >>> 32) & mask;
        while (numbers[slot] != NOBODY && handles[slot] != handle) {
            slot = slot + 1 & mask;
        }
        return slot;
    }

    void put(long handle, int number) {
        int slot = slot(handle);
        numbers[slot] = numbers[slot] == NOBODY ? number : SEVERAL;
        handles[slot] = handle;
    }

    /** The packet's number, or below 0. */
    int get(long handle) {
        return numbers[slot(handle)];
    }
}
