package levelback.store.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.Stream;
import levelback.store.herd.Cow;
import levelback.store.herd.Herd;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a farm does to backups. */
class BookBackupTest {

    @TempDir
    Path folder;

    private final BookBackup backup = new BookBackup();

    private Path book(int cows) {
        Path file = folder.resolve("farm.levelback");
        try (Book book = Books.openOrCreate(file)) {
            Herd herd = Sample.herd("Fixture Farm");
            book.herd().put(herd);
            for (int i = 0; i < cows; i++) {
                book.herd().put(Sample.cow(herd.id(), "A" + i), Sample.DAY);
            }
        }
        return file;
    }

    private static long cows(Path file) {
        try (Book book = Books.open(file)) {
            return book.check().counts().cows();
        }
    }

    private static List<String> names(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(f -> String.valueOf(f.getFileName())).sorted().toList();
        }
    }

    @Test
    void aBackupOpensAsTheSameBookAndIsOneFile() throws IOException {
        Path to = folder.resolve("backups");
        BookBackup.Made made = backup.make(book(3), to, 10);
        assertThat(names(to)).containsExactly(String.valueOf(made.file().getFileName()));
        assertThat(made.check().counts().cows()).isEqualTo(3);
        assertThat(cows(made.file())).isEqualTo(3);
    }

    @Test
    void aBackupIsTakenWhileADeskWrites() throws Exception {
        Path file = book(1);
        AtomicBoolean stop = new AtomicBoolean();
        try (Book desk = Books.open(file)) {
            Herd herd = desk.herd().herds().get(0);
            Thread writer = new Thread(() -> {
                for (int i = 0; !stop.get(); i++) {
                    desk.herd().put(Cow.numbered(herd.id(), "W" + i), Sample.DAY);
                }
            });
            writer.start();
            try {
                long before = 0;
                for (int i = 0; i < 5; i++) {
                    BookBackup.Made made = backup.make(file, folder.resolve("b"), 10);
                    assertThat(made.check().problems()).isEmpty();
                    assertThat(made.check().counts().cows()).isGreaterThanOrEqualTo(before);
                    before = made.check().counts().cows();
                }
            } finally {
                stop.set(true);
                writer.join();
            }
        }
    }

    @Test
    void aDamagedBookGivesNoBackupAndTouchesNoEarlierOne() throws IOException {
        Path file = book(400);
        Path to = folder.resolve("b");
        BookBackup.Made good = backup.make(file, to, 10);
        byte[] was = Files.readAllBytes(good.file());
        damage(file);
        assertThatThrownBy(() -> backup.make(file, to, 1))
                .isInstanceOf(StoreException.class)
                .hasMessageMatching(
                        "farm\\.levelback is (not whole|damaged), so no copy .*every earlier backup is as it was.*");
        assertThat(names(to)).containsExactly(String.valueOf(good.file().getFileName()));
        assertThat(Files.readAllBytes(good.file())).isEqualTo(was);
    }

    private static void damage(Path file) throws IOException {
        try (RandomAccessFile raw = new RandomAccessFile(file.toFile(), "rw")) {
            byte[] junk = new byte[4096];
            java.util.Arrays.fill(junk, (byte) 0x5A);
            for (long page = raw.length() / 4096 - 12; page < raw.length() / 4096 - 4; page++) {
                raw.seek(page * 4096);
                raw.write(junk);
            }
        }
    }

    @Test
    void aDamagedBackupIsNotRestoredAndTheBookStays() throws IOException {
        Path file = book(400);
        Path copy = backup.make(file, folder.resolve("b"), 10).file();
        damage(copy);
        byte[] was = Files.readAllBytes(file);
        assertThatThrownBy(() -> backup.restore(copy, file)).isInstanceOf(StoreException.class);
        assertThat(Files.readAllBytes(file)).isEqualTo(was);
        assertThat(names(folder)).containsExactly("b", "farm.levelback");
    }

    @Test
    void restoreKeepsThePresentBookBeside() throws IOException {
        Path file = book(2);
        Path copy = backup.make(file, folder.resolve("b"), 10).file();
        try (Book book = Books.open(file)) {
            book.herd().put(Sample.cow(book.herd().herds().get(0).id(), "late"), Sample.DAY);
        }
        BookBackup.Restored restored = backup.restore(copy, file);
        assertThat(cows(file)).isEqualTo(2);
        assertThat(cows(restored.keptAs().orElseThrow())).isEqualTo(3);
        assertThat(Files.exists(copy)).isTrue();
    }

    @Test
    void aDamagedBookIsSetAsideWhenABackupComesBack() throws IOException {
        Path file = book(5);
        Path copy = backup.make(file, folder.resolve("b"), 10).file();
        Files.write(file, new byte[5000]);
        BookBackup.Restored restored = backup.restore(copy, file);
        assertThat(cows(file)).isEqualTo(5);
        assertThat(Files.size(restored.keptAs().orElseThrow())).isEqualTo(5000);
    }

    @Test
    void aBookThatIsGoneComesBackWithoutItsStaleLog() throws IOException {
        Path file = book(5);
        Path copy = backup.make(file, folder.resolve("b"), 10).file();
        Files.delete(file);
        Files.write(folder.resolve("farm.levelback-wal"), new byte[100]);
        assertThat(backup.restore(copy, file).keptAs()).isEmpty();
        assertThat(cows(file)).isEqualTo(5);
        assertThat(names(folder).toString()).contains("before-restore");
    }

    @Test
    void aBookOpenInADeskIsNotReplaced() throws IOException {
        Path file = book(2);
        Path copy = backup.make(file, folder.resolve("b"), 10).file();
        try (Book desk = Books.open(file)) {
            assertThatThrownBy(() -> backup.restore(copy, file))
                    .isInstanceOf(StoreException.class)
                    .hasMessageContaining("is open in a desk or another program: nothing was changed");
            desk.herd().put(Sample.cow(desk.herd().herds().get(0).id(), "on"), Sample.DAY);
        }
        assertThat(cows(file)).isEqualTo(3);
        assertThat(names(folder)).containsExactly("b", "farm.levelback");
    }

    @Test
    void aFullDiskIsRefusedInOneSentence() throws IOException {
        Path file = book(2);
        BookBackup full = new BookBackup(Clock.systemUTC(), f -> 1000);
        assertThatThrownBy(() -> full.make(file, folder.resolve("b"), 10))
                .isInstanceOf(BackupFailed.class)
                .hasMessageContaining("no room")
                .hasMessageContaining("choose another folder.");
        assertThat(names(folder.resolve("b"))).isEmpty();
    }

    /** A real full disk: /dev/shm is too large, so a file system of its own where the machine allows one. */
    @Test
    void aDiskThatFillsWhileCopyingLeavesNothingBehind() throws Exception {
        Path file = book(2000);
        Path small = Files.createDirectory(folder.resolve("small"));
        Process mount = new ProcessBuilder("mount", "-t", "tmpfs", "-o", "size=256k", "tmpfs", small.toString())
                .redirectErrorStream(true)
                .start();
        Assumptions.assumeTrue(mount.waitFor() == 0, "no small file system can be mounted on this machine");
        try {
            BookBackup blind = new BookBackup(Clock.systemUTC(), f -> Long.MAX_VALUE);
            assertThatThrownBy(() -> blind.make(file, small, 10))
                    .isInstanceOf(BackupFailed.class)
                    .hasMessageContaining("no room left");
            assertThat(names(small)).isEmpty();
        } finally {
            new ProcessBuilder("umount", small.toString()).start().waitFor();
        }
    }

    @Test
    void aReadOnlyFolderIsRefusedInOneSentence() throws IOException {
        Path file = book(2);
        Path to = Files.createDirectory(folder.resolve("locked"));
        Files.setPosixFilePermissions(to, PosixFilePermissions.fromString("r-xr-xr-x"));
        Assumptions.assumeFalse(Files.isWritable(to), "this user may write everywhere");
        assertThatThrownBy(() -> backup.make(file, to, 10))
                .isInstanceOf(BackupFailed.class)
                .hasMessageContaining("may not be written");
    }

    @Test
    void theNewestAndOneOfEveryMonthStay() throws IOException {
        Path file = book(1);
        Path to = folder.resolve("b");
        for (String at : List.of(
                "2026-01-05T10:00:00Z",
                "2026-01-30T10:00:00Z",
                "2026-02-02T10:00:00Z",
                "2026-02-20T10:00:00Z",
                "2026-03-01T10:00:00Z",
                "2026-03-02T10:00:00Z")) {
            new BookBackup(Clock.fixed(Instant.parse(at), ZoneOffset.UTC), f -> Long.MAX_VALUE).make(file, to, 2);
        }
        Files.writeString(to.resolve("farm-notes.levelback"), "not ours");
        BookBackup.Made last = new BookBackup(
                        Clock.fixed(Instant.parse("2026-03-03T10:00:00Z"), ZoneOffset.UTC), f -> Long.MAX_VALUE)
                .make(file, to, 2);
        assertThat(last.kept().stream()
                        .map(k -> k.why() + " "
                                + String.valueOf(k.file().getFileName()).replaceFirst("farm-[0-9a-f]{8}-", "")))
                .containsExactly(
                        "NEWEST 20260303-100000.levelback",
                        "NEWEST 20260302-100000.levelback",
                        "MONTH 20260220-100000.levelback",
                        "MONTH 20260130-100000.levelback");
        assertThat(last.removed()).singleElement().asString().contains("20260301");
        assertThat(names(to)).hasSize(5).contains("farm-notes.levelback");
    }

    @Test
    void whatIsNoBookGivesNoBackup() throws IOException {
        Path text = Files.writeString(folder.resolve("list.txt"), "not a book at all");
        assertThatThrownBy(() -> backup.make(text, folder.resolve("b"), 1))
                .hasMessageContaining("not a Levelback book");
        assertThatThrownBy(() -> backup.restore(text, book(1))).hasMessageContaining("not a Levelback book");
    }
}
