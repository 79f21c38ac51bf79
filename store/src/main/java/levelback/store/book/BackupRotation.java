package levelback.store.book;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Which backups of a book stay: the newest few, and the newest of every month. Only files of the book's own names count. */
public final class BackupRotation {

    private BackupRotation() {}

    /** Why a backup stays. */
    public enum Why {
        NEWEST,
        MONTH
    }

    /** A backup that stays. */
    public record Kept(Path file, Why why) {}

    record Plan(List<Kept> kept, List<Path> superfluous) {
        Plan {
            kept = List.copyOf(kept);
            superfluous = List.copyOf(superfluous);
        }
    }

    private record Found(Path file, String stamp, int again) {}

    /** Sorts the backups in a folder whose names begin with a stem and go on with the time they were made, UTC. */
    static Plan of(Path folder, String stem, int newest) {
        Pattern name = Pattern.compile(Pattern.quote(stem) + "(\\d{8}-\\d{6})(?:-(\\d{1,6}))?\\.levelback");
        List<Found> found = new ArrayList<>();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.toList()) {
                Matcher ours = name.matcher(String.valueOf(file.getFileName()));
                if (ours.matches() && Files.isRegularFile(file)) {
                    found.add(new Found(
                            file, ours.group(1), ours.group(2) == null ? 1 : Integer.parseInt(ours.group(2))));
                }
            }
        } catch (IOException e) {
            throw new BackupFailed("The folder " + folder + " cannot be read; check its permissions.", e);
        }
        found.sort(
                Comparator.comparing(Found::stamp).thenComparing(Found::again).reversed());
        List<Kept> kept = new ArrayList<>();
        List<Path> superfluous = new ArrayList<>();
        Set<String> months = new HashSet<>();
        for (Found backup : found) {
            boolean firstOfMonth = months.add(backup.stamp().substring(0, 6));
            if (kept.size() < newest && superfluous.isEmpty()) {
                kept.add(new Kept(backup.file(), Why.NEWEST));
            } else if (firstOfMonth) {
                kept.add(new Kept(backup.file(), Why.MONTH));
            } else {
                superfluous.add(backup.file());
            }
        }
        return new Plan(kept, superfluous);
    }
}
