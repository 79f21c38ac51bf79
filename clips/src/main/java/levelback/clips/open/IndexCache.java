package levelback.clips.open;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import levelback.clips.decode.internal.FrameOrder;
import levelback.clips.decode.internal.FrameTimes;
import levelback.clips.decode.internal.IndexBytes;
import levelback.scoring.value.TimeBase;

/**
 * Keeps what is known about recordings in a folder, one file for each, under the recording's quick fingerprint. A file in it
 * that is damaged, of another version or not to be read counts as none; the folder may be deleted at any time. Writing goes
 * beside and is renamed, so several programs may share a folder. Where nothing can be written, nothing is kept.
 */
public final class IndexCache {

    private static final int MAGIC = 0x4B42564C;
    /** Changes with the bytes' meaning, and with the decoder, whose pictures the check sums are of. */
    private static final int VERSION = 2;

    private static final String ENDING = ".index";
    private static final long MOST_BYTES = 256L << 20;

    private final Path folder;

    /** @param folder made when the first index is kept */
    public IndexCache(Path folder) {
        this.folder = folder;
    }

    /** Where they are kept. */
    public Path folder() {
        return folder;
    }

    /** Whether something is known about a file. */
    public boolean knows(Path file) throws ClipException {
        return Files.isRegularFile(place(file, Fingerprint.quick(file)));
    }

    private Path place(Path file, String fingerprint) {
        String name = String.valueOf(file.getFileName());
        int dot = name.lastIndexOf('.');
        // FFmpeg looks at the ending as well when it decides what a file is.
        String ending = dot < 0 ? "" : name.substring(dot + 1).toLowerCase(Locale.ROOT);
        String safe = ending.matches("[a-z0-9]{1,8}") ? "-" + ending : "";
        return folder.resolve(fingerprint.replace(':', '-') + safe + ENDING);
    }

    /** What is known about a file, if anything. A file that was touched since must still have the same packets. */
    Optional<Clip> find(Path file, BooleanSupplier cancelled) throws ClipException {
        if (!Files.isRegularFile(file) || !Files.isReadable(file)) {
            return Optional.empty(); // opening it says what is wrong
        }
        String fingerprint = Fingerprint.quick(file);
        Path place = place(file, fingerprint);
        try {
            Optional<IndexBytes> bytes = IndexBytes.toRead(Files.readAllBytes(place));
            if (bytes.isEmpty() || bytes.get().readInt() != MAGIC || bytes.get().readInt() != VERSION) {
                return Optional.empty();
            }
            long touched = bytes.get().readLong();
            Clip clip = read(file, fingerprint, bytes.get());
            if (touched != Files.getLastModifiedTime(file).toMillis()) {
                if (!clip.order().isOf(file, cancelled)) {
                    forget(file, fingerprint);
                    return Optional.empty();
                }
                keep(clip);
            }
            Files.setLastModifiedTime(place, FileTime.from(Instant.now()));
            return Optional.of(clip);
        } catch (IOException | RuntimeException unknown) { // not there, or bytes that mean nothing
            return Optional.empty();
        }
    }

    private Clip read(Path file, String fingerprint, IndexBytes from) {
        boolean decoded = from.readInt() != 0;
        int threads = from.readInt();
        FrameOrder order = FrameOrder.read(from);
        TimeBase base = new TimeBase(from.readInt(), from.readInt());
        FrameTimes times = new FrameTimes(order, base, from.readDouble());
        String container = from.readText();
        String codec = from.readText();
        int width = from.readInt();
        int height = from.readInt();
        String pixelFormat = from.readText();
        int rotation = from.readInt();
        boolean interlaced = from.readInt() != 0;
        String aspect = from.readText();
        String recorded = from.readText();
        int damaged = from.readInt();
        List<ClipFacts.Damage> damage = new ArrayList<>();
        for (int i = 0; i < damaged; i++) {
            damage.add(new ClipFacts.Damage(from.readText(), from.readLong(), from.readLong(), from.readLong() != 0));
        }
        long startUs = times.index().frames().get(0).timeUs();
        ClipFacts facts = new ClipFacts(
                file,
                container,
                codec,
                width,
                height,
                pixelFormat,
                rotation,
                base,
                order.frames(),
                OptionalLong.of(startUs),
                OptionalLong.of(times.endUs() - startUs),
                times.averageFps(),
                times.constant(),
                interlaced,
                aspect,
                recorded.isEmpty() ? Optional.empty() : Optional.of(Instant.parse(recorded)),
                damage,
                fingerprint);
        return new Clip(facts, times, order, threads, decoded, () -> forget(file, fingerprint));
    }

    /** Keeps what is known about a recording. */
    void keep(Clip clip) {
        ClipFacts facts = clip.facts();
        IndexBytes to = IndexBytes.toWrite();
        try {
            to.number(MAGIC);
            to.number(VERSION);
            to.number(Files.getLastModifiedTime(facts.file()).toMillis());
            to.number(clip.decoded() ? 1 : 0);
            to.number(clip.threads());
            clip.order().write(to);
            to.number(facts.timeBase().numerator());
            to.number(facts.timeBase().denominator());
            to.number(clip.times().nominalFps());
            to.text(facts.container());
            to.text(facts.codec());
            to.number(facts.width());
            to.number(facts.height());
            to.text(facts.pixelFormat());
            to.number(facts.rotationDegrees());
            to.number(facts.interlaced() ? 1 : 0);
            to.text(facts.sampleAspectRatio());
            to.text(facts.recordedAt().map(Instant::toString).orElse(""));
            to.number(facts.damage().size());
            for (ClipFacts.Damage span : facts.damage()) {
                to.text(span.what());
                to.number(span.fromUs());
                to.number(span.toUs());
                to.number(span.leaning() ? 1L : 0L);
            }
            write(place(facts.file(), facts.fingerprint()), to.finished());
        } catch (IOException | ArithmeticException notKept) {
            // a cache that can't be written costs time, nothing else
        }
    }

    private void write(Path place, byte[] bytes) throws IOException {
        Files.createDirectories(folder);
        Path beside = Files.createTempFile(folder, "new", ".part");
        try {
            Files.write(beside, bytes);
            Files.move(beside, place, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(beside);
        }
        makeRoom();
    }

    /** The indexes used longest ago go, until the rest weighs no more than it may. */
    private void makeRoom() throws IOException {
        List<Path> kept;
        try (Stream<Path> all = Files.list(folder)) {
            kept = all.filter(file -> file.toString().endsWith(ENDING))
                    .sorted(Comparator.comparingLong(IndexCache::usedMillis).reversed())
                    .toList();
        }
        long bytes = 0;
        for (Path file : kept) {
            bytes += Files.exists(file) ? Files.size(file) : 0;
            if (bytes > MOST_BYTES) {
                Files.deleteIfExists(file);
            }
        }
    }

    private static long usedMillis(Path file) {
        try {
            return Files.getLastModifiedTime(file).toMillis();
        } catch (IOException gone) {
            return 0;
        }
    }

    void forget(Path file, String fingerprint) {
        try {
            Files.deleteIfExists(place(file, fingerprint));
        } catch (IOException stays) {
            // its check sums or its packets will not fit next time either
        }
    }
}
