package levelback.player.work.export;

import java.time.Clock;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import levelback.player.work.BadInput;
import levelback.store.book.Book;
import levelback.store.herd.Herd;

/** Writes the files of one kind from a book. Reads only; the book and the recordings stay as they are. */
public final class WriteExport {

    private final Book book;
    private final Clock clock;

    public WriteExport(Book book) {
        this(book, Clock.systemUTC());
    }

    /** @param clock for when an export was made, where its form says so */
    public WriteExport(Book book, Clock clock) {
        this.book = book;
        this.clock = clock;
    }

    /** What one herd gives: files by name, and what they leave out. */
    record Part(Map<String, String> files, List<String> notCarried) {}

    /**
     * Writes an export.
     *
     * @throws BadInput with one sentence if there is no such herd or the folder holds an earlier export
     */
    public ExportReport write(ExportOrder order) {
        List<Herd> herds = chosen(order);
        Map<String, String> files = new LinkedHashMap<>();
        Set<String> notCarried = new LinkedHashSet<>();
        List<String> personal = new ArrayList<>();
        Set<String> folders = new LinkedHashSet<>();
        int n = 0;
        for (Herd herd : herds) {
            n++;
            HerdContents contents = HerdContents.of(book, herd);
            ExportNames names = new ExportNames(contents, order.pseudonyms());
            String called = order.pseudonyms() ? "herd-" + n : herd.name();
            String folder = herds.size() == 1 ? "" : folder(called, folders) + "/";
            Part part = part(order, contents, names, called);
            part.files().forEach((name, text) -> files.put(folder + name, text));
            notCarried.addAll(part.notCarried());
            personal.add(PersonalData.of(contents, names));
        }
        return new ExportReport(
                FolderOut.write(order.out(), files, order.replace()),
                List.copyOf(notCarried),
                files.isEmpty()
                        ? "No file was written, so nothing about anybody leaves the book."
                        : personal.stream().distinct().collect(Collectors.joining(" ")));
    }

    private Part part(ExportOrder order, HerdContents herd, ExportNames names, String called) {
        FilmNotes films = new FilmNotes(herd, names);
        return switch (order.kind()) {
            case CSV -> {
                CsvFiles tables = new CsvFiles(herd, names, order.forSpreadsheet());
                yield new Part(tables.files(), tables.notCarried());
            }
            case PACKAGE ->
                new Part(
                        new PackageFiles(herd, names, called, clock.instant()).files(),
                        new CsvFiles(herd, names, false).notCarried());
            case ADE -> {
                AdeFiles ade = new AdeFiles(herd, names, called, clock.instant());
                yield new Part(ade.files(), ade.notCarried());
            }
            case VTT -> new Part(VttFiles.of(films.films()), films.notCarried(true));
            case ANNOTATIONS -> new Part(AnnotationFiles.of(films.films()), films.notCarried(true));
            case CHAPTERS -> new Part(ChapterFiles.of(films.films()), films.notCarried(false));
            case COCO ->
                new Part(
                        Map.of(),
                        List.of(
                                "The book holds no points set by hand on pictures, which are all that this kind carries;"
                                        + " no file was written."));
        };
    }

    private List<Herd> chosen(ExportOrder order) {
        List<Herd> herds = book.herd().herds();
        if (herds.isEmpty()) {
            throw new BadInput("The book holds no herd yet; there is nothing to export.");
        }
        if (order.herd().isEmpty()) {
            return herds;
        }
        List<Herd> named = herds.stream()
                .filter(h -> h.name().equalsIgnoreCase(order.herd().get().strip()))
                .toList();
        if (named.isEmpty()) {
            throw new BadInput(
                    "The book has no herd " + ExportNames.oneLine(order.herd().get()) + "; it has "
                            + herds.stream().map(Herd::name).sorted().collect(Collectors.joining(", ")) + ".");
        }
        return named;
    }

    private static String folder(String name, Set<String> taken) {
        String safe = name.replaceAll("[^\\p{L}\\p{N}._-]+", "-").replaceAll("^[.-]+|[.-]+$", "");
        String root = safe.isEmpty() ? "herd" : safe;
        String free = root;
        for (int n = 2; !taken.add(free.toLowerCase(java.util.Locale.ROOT)); n++) {
            free = root + "-" + n;
        }
        return free;
    }
}
