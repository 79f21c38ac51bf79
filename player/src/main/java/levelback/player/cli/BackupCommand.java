package levelback.player.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import levelback.player.work.BackUpBook;
import levelback.player.work.BadInput;
import levelback.store.book.BackupRotation;
import levelback.store.book.BookBackup;
import levelback.store.book.BookCheck;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code backup}: a verified copy of a book, also while a desk is open; or one brought back. */
@Command(
        name = "backup",
        footer = {
            "",
            "JSON with --to: backup, bytes, schema, counts, kept [file, why: newest or month], removed.",
            "JSON with --restore: restored, from, keptAs (the book that stood there before, or null), schema, counts.",
            "A restore looks the backup through first and keeps the present book beside under another name."
        })
final class BackupCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Option(names = "--book", required = true, paramLabel = "FILE", description = "the book")
    private Path book;

    @Option(names = "--to", paramLabel = "DIR", description = "folder of the backups; made if it is not there")
    private @Nullable Path to;

    @Option(names = "--restore", paramLabel = "FILE", description = "the backup to go back to")
    private @Nullable Path restore;

    @Option(
            names = "--keep",
            paramLabel = "N",
            defaultValue = "" + BackUpBook.NEWEST,
            description = "how many of the newest stay, beside one of every month (${DEFAULT-VALUE})")
    private int keep;

    @Option(names = "--json", description = "one JSON document")
    private boolean json;

    @SuppressWarnings("NullAway.Init") // picocli fills the fields in
    BackupCommand() {}

    @Override
    public Integer call() {
        if (to != null && restore == null) {
            made(new BackUpBook().make(book, to, keep));
        } else if (restore != null && to == null) {
            restored(restore, new BackUpBook().restore(restore, book));
        } else {
            throw new BadInput("Say --to DIR for a backup or --restore FILE to go back to one; one of the two.");
        }
        return 0;
    }

    private void made(BookBackup.Made made) {
        PrintWriter out = spec.commandLine().getOut();
        if (json) {
            JsonOut.object(out, o -> {
                o.text("backup", made.file().toString());
                o.whole("bytes", made.bytes());
                counts(o, made.check());
                o.list("kept", made.kept(), (k, kept) -> {
                    k.text("file", kept.file().toString());
                    k.text("why", kept.why().name().toLowerCase(Locale.ROOT));
                });
                o.texts("removed", made.removed().stream().map(Path::toString).toList());
            });
            return;
        }
        out.println("Backup " + made.file() + ", looked through and whole.");
        for (BackupRotation.Kept kept : made.kept()) {
            out.println("  kept     " + kept.file().getFileName()
                    + (kept.why() == BackupRotation.Why.MONTH ? "  (newest of its month)" : ""));
        }
        made.removed().forEach(old -> out.println("  removed  " + old.getFileName()));
    }

    private void restored(Path from, BookBackup.Restored restored) {
        PrintWriter out = spec.commandLine().getOut();
        if (json) {
            JsonOut.object(out, o -> {
                o.text("restored", restored.book().toString());
                o.text("from", from.toString());
                if (restored.keptAs().isPresent()) {
                    o.text("keptAs", restored.keptAs().get().toString());
                } else {
                    o.nothing("keptAs");
                }
                counts(o, restored.check());
            });
            return;
        }
        out.println(restored.book() + " is again as in " + from + ".");
        restored.keptAs().ifPresent(kept -> out.println("The book that stood there is kept as " + kept + "."));
    }

    private static void counts(JsonOut out, BookCheck check) throws IOException {
        out.whole("schema", check.schema());
        out.object("counts", c -> {
            c.whole("herds", check.counts().herds());
            c.whole("cows", check.counts().cows());
            c.whole("visits", check.counts().visits());
            c.whole("recordings", check.counts().recordings());
            c.whole("passes", check.counts().passes());
            c.whole("scores", check.counts().scores());
            c.whole("trims", check.counts().trims());
        });
    }
}
