package levelback.clips.write;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A file that is written beside its place and takes it, whole and on the disk, in one move; until then the place is as it
 * was. What is not finished goes away on {@link #close()}, with the program when it is interrupted, and, where the program
 * was killed outright, when the next file is written into the same folder.
 */
final class PartFile implements AutoCloseable {

    private static final Pattern NAME = Pattern.compile("\\.levelback-(\\d+)-.*\\.part");

    /** Paths still unfinished, for an interrupt. */
    private static final Set<Path> UNFINISHED = ConcurrentHashMap.newKeySet();

    static {
        Runtime.getRuntime()
                .addShutdownHook(new Thread(() -> UNFINISHED.forEach(PartFile::remove), "unfinished files"));
    }

    private final Path target;
    private final Path part;

    private PartFile(Path target, Path part) {
        this.target = target;
        this.part = part;
    }

    /** Makes an empty file beside a place. */
    static PartFile beside(Path place) throws IOException {
        Path target = place.toAbsolutePath();
        Path parent = target.getParent();
        Path folder = parent == null ? target.getRoot() : parent;
        sweep(folder);
        Path part = Files.createTempFile(
                folder, ".levelback-" + ProcessHandle.current().pid() + "-", ".part");
        UNFINISHED.add(part);
        return new PartFile(target, part);
    }

    /** Takes away what killed programs have left. */
    private static void sweep(Path folder) throws IOException {
        try (DirectoryStream<Path> parts = Files.newDirectoryStream(folder, ".levelback-*.part")) {
            for (Path part : parts) {
                Matcher name = NAME.matcher(part.getFileName().toString());
                if (name.matches()
                        && ProcessHandle.of(Long.parseLong(name.group(1)))
                                .filter(ProcessHandle::isAlive)
                                .isEmpty()) {
                    remove(part);
                }
            }
        } catch (NumberFormatException notOurs) {
            // a name that only looks like ours
        }
    }

    /** Where to write meanwhile. */
    Path path() {
        return part;
    }

    /** Puts it on the disk and in its place. */
    void finish() throws IOException {
        try (FileChannel channel = FileChannel.open(part, StandardOpenOption.WRITE)) {
            channel.force(true);
        }
        openToOthers();
        Files.move(part, target, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
        UNFINISHED.remove(part);
    }

    /** A temporary file is its owner's alone; a picture is an ordinary file. */
    private void openToOthers() throws IOException {
        try {
            Files.setPosixFilePermissions(part, PosixFilePermissions.fromString("rw-r--r--"));
        } catch (UnsupportedOperationException otherSystem) {
            // Windows: the folder's rights hold
        }
    }

    private static void remove(Path part) {
        try {
            Files.deleteIfExists(part);
        } catch (IOException held) {
            // swept the next time
        }
    }

    @Override
    public void close() {
        if (UNFINISHED.remove(part)) {
            remove(part);
        }
    }
}
