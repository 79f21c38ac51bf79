package levelback.player.work;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import levelback.clips.open.Clip;
import levelback.clips.open.ClipException;
import levelback.store.book.Book;
import levelback.store.herd.Herd;

/**
 * Takes video files into a book, each into the visit of the day on which it says it was made. All are read before
 * anything is written: all or nothing, unless files that cannot be read may be skipped.
 */
public final class ImportRecordings {

    private final Book book;

    public ImportRecordings(Book book) {
        this.book = book;
    }

    /**
     * Takes files. A file that was there before counts as unchanged.
     *
     * @throws BadInput with one sentence naming the file; nothing was taken then
     */
    public ImportReport take(List<Path> files, ImportOrder order) {
        TakenRows rows = new TakenRows();
        List<Clip> clips = new ArrayList<>();
        try (OpenRecording opener = new OpenRecording()) {
            for (Path file : files) {
                try {
                    clips.add(opener.open(file, () -> false));
                } catch (ClipException bad) {
                    if (!order.skipBad()) {
                        throw new BadInput(bad.getMessage() + " Nothing was taken.", bad);
                    }
                    rows.from(file.toString());
                    rows.refuse(0, String.valueOf(bad.getMessage()));
                }
            }
        }
        String names = files.stream().map(f -> f.getFileName().toString()).collect(Collectors.joining(", "));
        return book.step(order.scorer().orElse("import"), "Import of " + names, b -> {
            Herd herd = new ImportTables(book).herd(order);
            BringIn bringIn = new BringIn(book);
            for (Clip clip : clips) {
                rows.taken(!bringIn.keep(clip, herd, Optional.empty()).wasThere());
            }
            return rows.report(herd.name(), List.of());
        });
    }
}
