package levelback.player.work;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The folder of the demo and the list of what the demo made in it. Every file is written into the list before it is
 * made, so that replacing the demo, and clearing up after a failure, take away what the demo made and nothing else.
 */
final class DemoFolder {

    static final String LIST = "made-by-demo.txt";

    private final Path folder;
    private final Path list;
    private final Set<String> made = new LinkedHashSet<>();
    private final boolean wasThere;

    private DemoFolder(Path folder, boolean wasThere) {
        this.folder = folder;
        this.list = folder.resolve(LIST);
        this.wasThere = wasThere;
    }

    /**
     * Makes the folder ready.
     *
     * @param replace take away what an earlier demo made in it
     * @throws BadInput if it holds anything and is not to be replaced, or holds files in the way that no demo made
     */
    static DemoFolder open(Path folder, boolean replace) throws IOException {
        Path full = folder.toAbsolutePath().normalize();
        if (Files.exists(full) && !Files.isDirectory(full)) {
            throw new BadInput(folder + " is a file; name a folder for the demo with --dir.");
        }
        boolean wasThere = Files.isDirectory(full);
        DemoFolder demo = new DemoFolder(full, wasThere);
        if (wasThere && !isEmpty(full)) {
            if (!replace) {
                throw new BadInput(folder + " is not empty; choose another folder with --dir, or add --replace to take"
                        + " away what an earlier demo made in it.");
            }
            demo.takeAwayEarlier();
            for (String name : List.of("demo.levelback", "recordings", "truth", "report.html", "report.pdf", "tour")) {
                if (Files.exists(full.resolve(name))) {
                    throw new BadInput(full.resolve(name)
                            + " was not made by a demo, or holds something else; move it away or choose another folder"
                            + " with --dir.");
                }
            }
        }
        Files.createDirectories(full);
        return demo;
    }

    /** The folder of a demo that is there already, to add to its list. */
    static DemoFolder reopen(Path folder) {
        return new DemoFolder(folder.toAbsolutePath().normalize(), true);
    }

    Path path() {
        return folder;
    }

    /** A file about to be made, by its path inside the folder; its own folder is made. */
    synchronized Path file(String inside) throws IOException {
        Path file = folder.resolve(inside);
        announce(inside);
        Files.createDirectories(file.getParent());
        return file;
    }

    /** Writes a name into the list. */
    synchronized void announce(String inside) throws IOException {
        if (made.add(inside.replace('\\', '/'))) {
            Files.writeString(
                    list,
                    inside.replace('\\', '/') + "\n",
                    StandardCharsets.UTF_8,
                    StandardOpenOption.CREATE,
                    StandardOpenOption.APPEND);
        }
    }

    /** Lists whatever lies in a folder inside by now. */
    void announceAll(String inside) throws IOException {
        Path part = folder.resolve(inside);
        if (!Files.isDirectory(part)) {
            return;
        }
        List<Path> files;
        try (Stream<Path> walk = Files.walk(part)) {
            files = walk.filter(Files::isRegularFile).sorted().toList();
        }
        for (Path file : files) {
            announce(folder.relativize(file).toString());
        }
    }

    /** Takes away everything made so far, after a failure; the folder too if it was not there before. */
    void clear() {
        takeAway(made);
        try {
            Files.deleteIfExists(list);
            if (!wasThere) {
                Files.deleteIfExists(folder);
            }
        } catch (IOException left) {
            // Something else lies in it by now, or it may not be touched: then it stays.
        }
    }

    private void takeAwayEarlier() throws IOException {
        List<String> earlier;
        try {
            earlier = Files.readAllLines(list, StandardCharsets.UTF_8);
        } catch (NoSuchFileException none) {
            return;
        }
        List<String> inside = new ArrayList<>();
        for (String name : earlier) {
            // The list is a file like any other: a line that leads out of the folder is not followed.
            if (!name.isBlank() && folder.resolve(name).normalize().startsWith(folder)) {
                inside.add(name);
            }
        }
        takeAway(inside);
        Files.deleteIfExists(list);
    }

    private void takeAway(Iterable<String> names) {
        Set<Path> folders = new LinkedHashSet<>();
        for (String name : names) {
            Path file = folder.resolve(name);
            try {
                if (!Files.isDirectory(file)) {
                    Files.deleteIfExists(file);
                }
            } catch (IOException stays) {
                // It is said later, when its place is needed.
            }
            for (Path up = file.getParent(); up != null && !up.equals(folder); up = up.getParent()) {
                folders.add(up);
            }
        }
        List<Path> deepestFirst = new ArrayList<>(folders);
        deepestFirst.sort(Collections.reverseOrder(java.util.Comparator.comparingInt(Path::getNameCount)));
        for (Path empty : deepestFirst) {
            try {
                Files.deleteIfExists(empty);
            } catch (DirectoryNotEmptyException foreign) {
                // It holds something that no demo made.
            } catch (IOException stays) {
                // As above.
            }
        }
    }

    private static boolean isEmpty(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.findAny().isEmpty();
        }
    }
}
