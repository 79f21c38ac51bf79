package levelback.store.book;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A process that is killed in the middle of its work loses nothing that it had acknowledged. */
class KillTest {

    @TempDir
    Path folder;

    @Test
    void aKilledDeskLosesNothingAcknowledged() throws Exception {
        killAndLook(folder.resolve("one.levelback"), 1, 400);
    }

    @Test
    @Tag("slow")
    void fiftyKillsLoseNothingAcknowledged() throws Exception {
        Random random = new Random(20260314);
        Path book = folder.resolve("fifty.levelback");
        long entries = 0;
        List<String> all = new ArrayList<>();
        for (int kill = 1; kill <= 50; kill++) {
            List<String> acknowledged = killAndLook(book, kill, 1 + random.nextInt(700));
            all.addAll(acknowledged);
            entries += acknowledged.size();
        }
        requireThere(book, all);
        assertThat(entries).isGreaterThan(50);
    }

    /** Starts a desk on the book and kills it when it has acknowledged about so many entries. */
    private static List<String> killAndLook(Path book, long seed, int entries)
            throws IOException, InterruptedException {
        Process desk = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-Xshare:auto",
                        "-cp",
                        System.getProperty("java.class.path"),
                        KilledDesk.class.getName(),
                        book.toString(),
                        Long.toString(seed))
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        List<String> acknowledged = new ArrayList<>();
        try (BufferedReader said =
                new BufferedReader(new InputStreamReader(desk.getInputStream(), StandardCharsets.UTF_8))) {
            for (String line = said.readLine(); line != null; line = said.readLine()) {
                acknowledged.add(line);
                if (acknowledged.size() == entries) {
                    // SIGKILL on POSIX systems, TerminateProcess on Windows: no hook of the program runs.
                    // Through the handle, which leaves what was said before readable.
                    desk.toHandle().destroyForcibly();
                }
            }
        }
        assertThat(desk.waitFor(30, TimeUnit.SECONDS)).isTrue();
        assertThat(acknowledged.size()).as("it worked until it was killed").isGreaterThanOrEqualTo(entries);
        // The last line may have been cut in the middle by the kill; what is not whole was not acknowledged.
        acknowledged.removeIf(
                line -> !line.matches("(cow|pass|score|tag|finding|recording) [0-9a-f-]{36}|(undo|redo) .+"));
        requireThere(book, acknowledged);
        return acknowledged;
    }

    private static void requireThere(Path file, List<String> acknowledged) {
        try (Book book = Books.open(file)) {
            assertThat(book.check().problems()).isEmpty();
        }
        Set<String> there = new HashSet<>();
        for (String table : List.of("recording", "cow", "pass", "score", "tag", "finding")) {
            for (String uuid : Dump.strings(file, "SELECT uuid FROM " + table + " WHERE gone = 0")) {
                there.add(table + " " + uuid);
            }
        }
        // A kill may come between an undo and its redo: then what was undone is rightly gone, and so much only.
        List<String> missing = acknowledged.stream()
                .filter(line -> !line.startsWith("undo") && !line.startsWith("redo") && !there.contains(line))
                .toList();
        long undone = Long.parseLong(Dump.strings(file, "SELECT count(*) FROM step WHERE fate IN ('undone', 'buried')")
                .get(0));
        assertThat(missing.size()).as("%s, %d steps undone", missing, undone).isLessThanOrEqualTo((int) undone);
        Set<String> history = new HashSet<>(Dump.strings(file, "SELECT json_extract(now, '$.uuid') FROM change"));
        assertThat(missing).allMatch(line -> history.contains(line.substring(line.indexOf(' ') + 1)));
        Set<String> steps =
                new HashSet<>(Dump.strings(file, "SELECT what FROM step WHERE fate IN ('is-undo', 'is-redo')"));
        for (String line : acknowledged) {
            if (line.startsWith("undo ") || line.startsWith("redo ")) {
                String words = (line.startsWith("undo ") ? "Undo: " : "Redo: ") + line.substring(5);
                assertThat(steps).contains(words);
            }
        }
    }
}
