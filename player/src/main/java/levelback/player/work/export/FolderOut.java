package levelback.player.work.export;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import levelback.player.work.BadInput;
import levelback.player.work.CannotBeDone;

/** Writes the files of an export: all of them beside first, and only when the last one is on the disk each takes its name. */
final class FolderOut {

    private static final String PART = ".part";

    private FolderOut() {}

    /**
     * Writes files into a folder, which is made where it is not there.
     *
     * @param files content by path under the folder, with / between
     * @throws BadInput if one of them is there already and may not be replaced; nothing was written then
     * @throws CannotBeDone with one sentence where the disk or the folder does not take them; nothing is left behind
     */
    static List<Path> write(Path folder, Map<String, String> files, boolean replace) {
        if (Files.exists(folder) && !Files.isDirectory(folder)) {
            throw new BadInput(folder + " is a file; give a folder to export into.");
        }
        for (String name : files.keySet()) {
            Path there = folder.resolve(name);
            if (Files.exists(there) && !replace) {
                throw new BadInput(folder + " holds " + name
                        + " of an earlier export already; give another folder, or --replace to write over it.");
            }
            if (Files.isDirectory(there)) {
                throw new BadInput(there + " is a folder where a file is to be written; give another folder.");
            }
        }
        List<Path> parts = new ArrayList<>();
        List<Path> written = new ArrayList<>();
        try {
            for (Map.Entry<String, String> file : files.entrySet()) {
                Path target = folder.resolve(file.getKey());
                if (target.getParent() != null) {
                    Files.createDirectories(target.getParent());
                }
                Path part = target.resolveSibling(target.getFileName() + PART);
                parts.add(part);
                Files.writeString(part, file.getValue(), StandardCharsets.UTF_8);
            }
            for (String name : files.keySet()) {
                Path target = folder.resolve(name);
                Files.move(
                        target.resolveSibling(target.getFileName() + PART),
                        target,
                        StandardCopyOption.REPLACE_EXISTING);
                written.add(target);
            }
            return written;
        } catch (IOException e) {
            parts.forEach(FolderOut::forget);
            String why = String.valueOf(e.getMessage()).contains("No space left")
                    ? "the disk is full; make room and export again."
                    : "check that the folder is there and may be written.";
            throw new CannotBeDone("The export could not be written to " + folder + ": " + why, e);
        }
    }

    private static void forget(Path part) {
        try {
            Files.deleteIfExists(part);
        } catch (IOException left) {
            // Its name says that it is only a part.
        }
    }
}
