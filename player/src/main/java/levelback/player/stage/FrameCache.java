package levelback.player.stage;

import java.util.ArrayDeque;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** The newest frames decoded, so that a step back costs nothing. Confined to the decoder thread. */
final class FrameCache {

    private final int capacity;
    private final Map<Integer, Picture> byFrame = new HashMap<>();
    private final ArrayDeque<Integer> oldestFirst = new ArrayDeque<>();

    /** @param capacity frames kept, at least 1 */
    FrameCache(int capacity) {
        this.capacity = capacity;
    }

    Optional<Picture> get(int frame) {
        return Optional.ofNullable(byFrame.get(frame));
    }

    boolean has(int frame) {
        return byFrame.containsKey(frame);
    }

    /** Takes over the caller's hold. */
    void put(Picture picture) {
        Picture before = byFrame.put(picture.frame(), picture);
        if (before == null) {
            oldestFirst.add(picture.frame());
        } else {
            before.release();
        }
        while (oldestFirst.size() > capacity) {
            Picture oldest = byFrame.remove(oldestFirst.remove());
            if (oldest != null) {
                oldest.release();
            }
        }
    }

    void clear() {
        byFrame.values().forEach(Picture::release);
        byFrame.clear();
        oldestFirst.clear();
    }
}
