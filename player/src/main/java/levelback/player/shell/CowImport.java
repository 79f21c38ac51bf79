package levelback.player.shell;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import levelback.player.work.ImportOrder;
import levelback.player.work.ImportReport;
import levelback.player.work.ImportTables;
import levelback.player.work.TableMapping;
import levelback.store.book.Book;
import levelback.store.exchange.TableSource;
import levelback.store.herd.Herd;

/** Takes a table of cows into a herd: the same step as the command {@code import}. */
final class CowImport {

    private CowImport() {}

    /** Takes the table, all rows or none. Blocks. */
    static ImportReport take(Book book, Path table, Herd herd, String initials) {
        ImportOrder order = new ImportOrder(
                Optional.of(herd.name()),
                Optional.empty(),
                Optional.of(initials),
                Optional.empty(),
                TableMapping.NONE,
                false);
        return new ImportTables(book).take(ImportTables.Kind.COWS, List.of(TableSource.of(table)), order);
    }
}
