package levelback.player.shell;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.application.Platform;
import javafx.scene.Node;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import levelback.player.desk.Desk;
import levelback.player.desk.Page;
import levelback.player.desk.PageId;
import levelback.player.theme.EmptyState;
import levelback.player.theme.ErrorBar;
import levelback.player.theme.Keys;
import levelback.player.theme.Style;
import levelback.player.theme.Theme;
import levelback.player.work.ImportReport;
import levelback.store.book.Book;
import levelback.store.book.Books;
import levelback.store.herd.Cow;
import levelback.store.herd.CowId;
import levelback.store.herd.Herd;
import levelback.store.herd.HerdId;
import levelback.store.herd.Person;
import levelback.store.herd.PersonId;
import levelback.store.herd.Visit;
import levelback.store.herd.VisitId;
import levelback.store.lane.Pass;
import levelback.store.lane.PassId;

/**
 * The desk: race, page, errors and sill round one open book. Lives on the JavaFX thread; everything that waits runs on one
 * background thread in the order it was asked for.
 */
final class DeskShell implements Desk, AutoCloseable {

    private static final int ERRORS_SHOWN = 3;
    private static final Person NOBODY = new Person(PersonId.fresh(), "", "");

    private final Map<PageId, Function<Desk, Page>> built;
    private final Map<PageId, Page> pages = new EnumMap<>(PageId.class);
    private final Path settingsFile;
    private final Failures failures;
    private final DeskWishes wishes;
    // Work that a page still asks for while the desk closes is dropped: there is nothing left to show it on.
    private final ExecutorService background = new ThreadPoolExecutor(
            1,
            1,
            0,
            TimeUnit.SECONDS,
            new LinkedBlockingQueue<>(),
            work -> new Thread(work, "levelback-desk"),
            new ThreadPoolExecutor.DiscardPolicy());

    private final Race race;
    private final Sill sill;
    private final VBox errors = new VBox();
    private final StackPane middle = new StackPane();
    private final BorderPane frame = new BorderPane();
    private final StackPane over = new StackPane();
    private final StackPane root = new StackPane(frame, over);
    private final HerdMenu menu;

    /** Written and read on the background thread alone. */
    private Optional<Book> book = Optional.empty();

    private Settings settings;
    // Written on the JavaFX thread, read by the background thread too.
    private volatile Situation now = Situation.NOTHING;
    private volatile Optional<HerdId> wantedHerd = Optional.empty();
    private volatile Optional<VisitId> wantedVisit = Optional.empty();
    private Optional<Person> scorer = Optional.empty();
    private Optional<Path> file = Optional.empty();
    private PageId here;
    private boolean bookOpen;
    private boolean chute;
    private boolean firstRunShown;

    /**
     * @param built the pages that are there, made on first use
     * @param settingsFile where settings are kept
     * @param wishes what needs a window: asking for files, full screen
     */
    DeskShell(
            Map<PageId, Function<Desk, Page>> built,
            Path settingsFile,
            Settings settings,
            Path logFolder,
            DeskWishes wishes) {
        this.built = new EnumMap<>(PageId.class);
        this.built.putAll(built);
        this.settingsFile = settingsFile;
        this.settings = settings;
        this.wishes = wishes;
        failures = new Failures(logFolder);
        here = this.built.keySet().stream()
                .filter(PageId.SCORE::equals)
                .findFirst()
                .orElseGet(() -> this.built.keySet().stream().findFirst().orElse(PageId.SCORE));
        menu = new HerdMenu(this);
        race = new Race(this.built.keySet(), this::go, this::openHerdMenu, this::findCow);
        sill = new Sill(this::undo, () -> askWho(true), this::showKeys);
        frame.getStyleClass().add(Style.SHEET);
        middle.getStyleClass().add(Style.SHEET);
        middle.setId("page");
        errors.setId("errors");
        over.getStyleClass().add("lb-over");
        over.setVisible(false);
        over.setPickOnBounds(true);
        frame.setTop(race);
        frame.setCenter(middle);
        frame.setBottom(new VBox(errors, sill));
        race.here(here);
        showRace();
    }

    /** What fills the window. */
    StackPane root() {
        return root;
    }

    Race race() {
        return race;
    }

    Situation now() {
        return now;
    }

    PageId here() {
        return here;
    }

    Settings settings() {
        return settings;
    }

    // ---- what the desk lends its pages
    // -------------------------------------------------------------------------------

    @Override
    public Optional<Herd> herd() {
        return now.herd();
    }

    @Override
    public Optional<Visit> visit() {
        return now.visit();
    }

    @Override
    public Person scorer() {
        return scorer.orElse(NOBODY);
    }

    @Override
    public Executor background() {
        return background;
    }

    @Override
    public Executor ui() {
        return work -> {
            if (Platform.isFxApplicationThread()) {
                work.run();
            } else {
                Platform.runLater(work);
            }
        };
    }

    @Override
    public <T> void read(Function<Book, T> question, Consumer<T> then) {
        inBackground(() -> {
            if (book.isEmpty()) {
                return;
            }
            T answer = question.apply(book.get());
            Platform.runLater(() -> then.accept(answer));
        });
    }

    @Override
    public <T> void step(String what, Function<Book, T> writes, Consumer<T> then) {
        String who = scorer().initials();
        inBackground(() -> {
            if (book.isEmpty()) {
                return;
            }
            T answer = book.get().step(who, what, writes);
            Situation after = Situation.read(book.get(), wantedHerdNow(), wantedVisitNow());
            Platform.runLater(() -> {
                sill.savedAt(LocalDateTime.now(ZoneId.systemDefault()));
                take(after);
                then.accept(answer);
                tellPages();
            });
        });
    }

    @Override
    public void message(String text) {
        sill.message(text);
    }

    @Override
    public void error(String sentence) {
        boolean shown = errors.getChildren().stream().anyMatch(bar -> sentence.equals(bar.getUserData()));
        if (shown) {
            return;
        }
        ErrorBar bar = new ErrorBar(sentence);
        bar.setUserData(sentence);
        bar.onClose(Words.of("close"), () -> errors.getChildren().remove(bar));
        errors.getChildren().add(bar);
        while (errors.getChildren().size() > ERRORS_SHOWN) {
            errors.getChildren().remove(0);
        }
    }

    @Override
    public Job job(String name, Runnable stop) {
        return sill.job(name, stop);
    }

    @Override
    public void go(PageId page) {
        if (!built.containsKey(page)) {
            return;
        }
        if (chute && page != PageId.TRIM) {
            chuteMode(false);
        }
        here = page;
        race.here(page);
        showPage();
    }

    @Override
    public void openPass(PassId pass, int recordingFrame) {
        if (built.containsKey(PageId.SCORE)) {
            go(PageId.SCORE);
            page(PageId.SCORE).ifPresent(page -> page.openPass(pass, recordingFrame));
        }
    }

    @Override
    public void openCowOnTrim(CowId cow) {
        if (built.containsKey(PageId.TRIM)) {
            go(PageId.TRIM);
            page(PageId.TRIM).ifPresent(page -> page.openCow(cow));
        }
    }

    @Override
    public void gateLine(PageId page, String line, double fractionDone) {
        race.count(page, line, fractionDone);
    }

    @Override
    public void chooseRecordings() {
        if (now.herd().isEmpty()) {
            askHerd(Optional.empty());
            return;
        }
        takeFiles(wishes.recordings());
    }

    @Override
    public void chuteMode(boolean on) {
        if (!built.containsKey(PageId.TRIM)) {
            return;
        }
        if (on) {
            go(PageId.TRIM);
        }
        chute = page(PageId.TRIM).map(page -> page.chuteMode(on)).orElse(false);
        showRace();
    }

    @Override
    public void show(Visit visit) {
        wantedHerd = Optional.of(visit.herd());
        wantedVisit = Optional.of(visit.id());
        refresh();
    }

    @Override
    public boolean dark() {
        return settings.dark();
    }

    // ---- the book
    // ----------------------------------------------------------------------------------------------------

    /** Opens a book; asks where it is not there, unless it may be made. The one open until then stays open on failure. */
    void openBook(Path wanted, boolean mayMake) {
        Path path = wanted.toAbsolutePath().normalize();
        inBackground(() -> {
            if (!mayMake && !Files.exists(path)) {
                Platform.runLater(() -> askMissing(path));
                return;
            }
            Optional<LocalDateTime> saved = lastChange(path);
            Book opened = mayMake ? Books.openOrCreate(path) : Books.open(path);
            Optional<Book> before = book;
            book = Optional.of(opened);
            before.ifPresent(Book::close);
            Situation first = Situation.read(
                    opened, settings.get(Settings.HERD).flatMap(DeskShell::uuid).map(HerdId::new), Optional.empty());
            Platform.runLater(() -> {
                saved.ifPresent(sill::savedAt);
                opened(path, first);
            });
        });
        if (!bookOpen) {
            showPage();
        }
    }

    /** When a book was last written to; before it is opened, because opening may touch it. */
    private static Optional<LocalDateTime> lastChange(Path path) {
        try {
            return Files.isRegularFile(path)
                    ? Optional.of(LocalDateTime.ofInstant(
                            Files.getLastModifiedTime(path).toInstant(), ZoneId.systemDefault()))
                    : Optional.empty();
        } catch (java.io.IOException unknown) {
            return Optional.empty();
        }
    }

    private void opened(Path path, Situation first) {
        file = Optional.of(path);
        bookOpen = true;
        wantedHerd = Optional.empty();
        wantedVisit = Optional.empty();
        keep(Settings.BOOK, path.toString());
        scorer = settings.get(Settings.SCORER)
                .flatMap(DeskShell::uuid)
                .flatMap(id -> first.people().stream()
                        .filter(one -> one.id().uuid().equals(id))
                        .findFirst())
                .or(() ->
                        first.people().size() == 1 ? Optional.of(first.people().get(0)) : Optional.empty());
        closeSheet();
        take(first);
        showPage();
        if (scorer.isEmpty()) {
            askWho(false);
        }
    }

    Optional<Path> file() {
        return file;
    }

    /** Reads herd, visits, undo and counts anew, then tells the page in front. */
    void refresh() {
        inBackground(() -> {
            if (book.isEmpty()) {
                return;
            }
            Situation read = Situation.read(book.get(), wantedHerdNow(), wantedVisitNow());
            Platform.runLater(() -> take(read));
        });
    }

    private Optional<HerdId> wantedHerdNow() {
        return wantedHerd.or(() -> now.herd().map(Herd::id));
    }

    private Optional<VisitId> wantedVisitNow() {
        return wantedVisit.or(() -> now.visit().map(Visit::id));
    }

    private void take(Situation read) {
        boolean first = !now.visit().equals(read.visit()) || !now.herd().equals(read.herd());
        now = read;
        race.herd(
                now.herd().map(Herd::name).orElseGet(() -> Words.of("herd.none")),
                now.visit()
                        .map(visit -> Words.of("herd.visit", visit.ordinal(), Words.day(visit.date())))
                        .orElseGet(() -> Words.of("herd.noVisit")));
        sill.nextUndo(now.undo());
        sill.scorer(scorer.map(Person::name).orElse(""));
        if (first || firstRunShown) {
            showPage();
        }
    }

    private void tellPages() {
        pages.values().forEach(Page::bookChanged);
    }

    @Override
    public void undo() {
        takeBack(true);
    }

    @Override
    public java.util.OptionalDouble screenPxPerMm() {
        return settings.get(Settings.SCREEN).stream()
                .filter(text -> text.matches("\\d{1,3}(\\.\\d+)?"))
                .mapToDouble(Double::parseDouble)
                .filter(pxPerMm -> pxPerMm > 0)
                .findFirst();
    }

    @Override
    public void keepScreenPxPerMm(double pxPerMm) {
        keep(Settings.SCREEN, Double.toString(pxPerMm));
    }

    void redo() {
        takeBack(false);
    }

    private void takeBack(boolean back) {
        String who = scorer().initials();
        inBackground(() -> {
            if (book.isEmpty()) {
                return;
            }
            Optional<String> words = back ? book.get().undo(who) : book.get().redo(who);
            Situation after = Situation.read(book.get(), wantedHerdNow(), wantedVisitNow());
            Platform.runLater(() -> {
                take(after);
                message(words.map(said -> Words.of(back ? "undo.done" : "redo.done", said))
                        .orElseGet(() -> Words.of(back ? "undo.nothing" : "redo.nothing")));
                if (words.isPresent()) {
                    sill.savedAt(LocalDateTime.now(ZoneId.systemDefault()));
                    tellPages();
                }
            });
        });
    }

    // ---- pages
    // -------------------------------------------------------------------------------------------------------

    private Optional<Page> page(PageId id) {
        Function<Desk, Page> make = built.get(id);
        if (make == null) {
            return Optional.empty();
        }
        return Optional.of(pages.computeIfAbsent(id, unused -> make.apply(this)));
    }

    /** The page in front, if it has been built and is not covered by the first run. */
    Optional<Page> pageInFront() {
        return firstRunShown || !bookOpen ? Optional.empty() : Optional.ofNullable(pages.get(here));
    }

    private void showPage() {
        firstRunShown = false;
        if (!bookOpen) {
            middle.getChildren().clear();
            return;
        }
        if (here == PageId.SCORE && (now.herd().isEmpty() || !now.anyRecording())) {
            firstRunShown = true;
            middle.getChildren().setAll(new FirstRun(now, wishes.demo().isPresent(), new FirstSteps(this)));
            return;
        }
        Optional<Page> page = page(here);
        Node view = page.map(Page::view).orElseGet(StackPane::new);
        if (middle.getChildren().size() != 1 || middle.getChildren().get(0) != view) {
            middle.getChildren().setAll(view);
        }
        page.ifPresent(Page::shown);
    }

    private void showRace() {
        frame.setTop(chute ? null : race);
        sill.setVisible(!chute);
        sill.setManaged(!chute);
        middle.requestFocus();
    }

    boolean inChuteMode() {
        return chute;
    }

    /** Files dropped on the desk, or chosen. */
    void takeFiles(List<Path> files) {
        if (files.isEmpty()) {
            return;
        }
        if (now.herd().isEmpty()) {
            askHerd(Optional.empty());
            return;
        }
        page(PageId.SCORE).ifPresent(page -> page.takeFiles(files));
    }

    void toggleTheme() {
        keep(Settings.THEME, dark() ? "light" : "dark");
        if (root.getScene() != null) {
            Theme.apply(root.getScene(), dark());
        }
        pageInFront().ifPresent(Page::themeChanged);
    }

    void toggleFullScreen() {
        wishes.fullScreen();
    }

    private void keep(String name, String value) {
        settings = settings.with(name, value);
        Settings toSave = settings;
        background.execute(() -> {
            try {
                toSave.save(settingsFile);
            } catch (java.io.IOException e) {
                Platform.runLater(() -> error(Words.of("failure.settings", settingsFile)));
            }
        });
    }

    // ---- finding a cow
    // -----------------------------------------------------------------------------------------------

    /** What was found for a number typed. */
    private record Found(List<Cow> cows, Optional<Pass> pass) {}

    void findCow(String typed) {
        if (typed.isEmpty()) {
            return;
        }
        if (now.herd().isEmpty()) {
            error(Words.of("find.noHerd"));
            return;
        }
        Herd herd = now.herd().get();
        LocalDate on = now.visit().map(Visit::date).orElseGet(() -> LocalDate.now(herd.zone()));
        read(
                open -> {
                    List<Cow> cows = open.herd()
                            .cowByNumber(herd.id(), typed, on)
                            .map(List::of)
                            .orElseGet(() -> open.herd().cows(herd.id(), on).stream()
                                    .filter(cow -> cow.number().startsWith(typed)
                                            || cow.name()
                                                    .filter(typed::equalsIgnoreCase)
                                                    .isPresent())
                                    .toList());
                    Optional<Pass> pass = cows.size() == 1
                            ? open.lane().passesOf(cows.get(0).id()).stream().findFirst()
                            : Optional.empty();
                    return new Found(cows, pass);
                },
                found -> {
                    if (found.cows().isEmpty()) {
                        message(Words.of("find.unknown", typed, herd.name()));
                    } else if (found.cows().size() > 1) {
                        List<String> numbers =
                                found.cows().stream().limit(8).map(Cow::number).toList();
                        message(Words.of("find.several", typed, String.join(", ", numbers)));
                    } else {
                        race.findField().clear();
                        Cow cow = found.cows().get(0);
                        if (here != PageId.TRIM && found.pass().isPresent() && built.containsKey(PageId.SCORE)) {
                            openPass(found.pass().get().id(), found.pass().get().fromFrame());
                        } else {
                            openCowOnTrim(cow.id());
                        }
                        middle.requestFocus();
                    }
                });
    }

    // ---- what the desk asks
    // ------------------------------------------------------------------------------------------

    private void openHerdMenu() {
        menu.show(race.herdBlock());
    }

    void askWho(boolean mayBeClosed) {
        ask(new SignOnSheet(now.people(), mayBeClosed, this::signOn, (name, initials) -> {
            Person person = new Person(PersonId.fresh(), name, initials);
            scorer = Optional.of(person);
            this.<Boolean>step(
                    Words.of("who.step", name),
                    open -> {
                        open.herd().put(person);
                        return true;
                    },
                    done -> signOn(person));
        }));
    }

    void signOn(Person person) {
        scorer = Optional.of(person);
        keep(Settings.SCORER, person.id().uuid().toString());
        sill.scorer(person.name());
        closeSheet();
        showPage();
    }

    void askHerd(Optional<Herd> before) {
        ask(new HerdSheet(before, herd -> {
            String words = herd.cowsInMilk().isPresent()
                    ? Words.of(
                            "settings.step",
                            herd.name(),
                            herd.scaleId(),
                            herd.cowsInMilk().getAsInt())
                    : Words.of("settings.stepNoCows", herd.name(), herd.scaleId());
            closeSheet();
            wantedHerd = Optional.of(herd.id());
            wantedVisit =
                    now.herd().filter(one -> one.id().equals(herd.id())).isPresent() ? wantedVisit : Optional.empty();
            this.<Boolean>step(
                    words,
                    open -> {
                        open.herd().put(herd);
                        return true;
                    },
                    done -> {
                        keep(Settings.HERD, herd.id().uuid().toString());
                        showPage();
                    });
        }));
    }

    void showHerd(Herd herd) {
        wantedHerd = Optional.of(herd.id());
        wantedVisit = Optional.empty();
        now = new Situation(
                now.herds(),
                Optional.of(herd),
                List.of(),
                Optional.empty(),
                now.people(),
                now.undo(),
                now.redo(),
                0,
                true);
        keep(Settings.HERD, herd.id().uuid().toString());
        refresh();
    }

    void askOpenBook() {
        wishes.book().ifPresent(path -> openBook(path, false));
    }

    void askNewBook() {
        wishes.newBook().ifPresent(path -> openBook(path, true));
    }

    void openDemo() {
        wishes.demo().ifPresent(demo -> demo.open(this));
    }

    void importCows() {
        if (now.herd().isEmpty()) {
            askHerd(Optional.empty());
            return;
        }
        wishes.cows().ifPresent(this::importCows);
    }

    /** Takes a table of cows into the herd on show; a bad line is said in one sentence and nothing is taken then. */
    void importCows(Path table) {
        Optional<Herd> into = now.herd();
        String who = scorer().initials();
        inBackground(() -> {
            if (book.isEmpty() || into.isEmpty()) {
                return;
            }
            ImportReport report = CowImport.take(book.get(), table, into.get(), who);
            Situation after = Situation.read(book.get(), wantedHerdNow(), wantedVisitNow());
            Platform.runLater(() -> {
                sill.savedAt(LocalDateTime.now(ZoneId.systemDefault()));
                take(after);
                message(Words.of(
                        "import.done",
                        report.taken(),
                        report.unchanged(),
                        report.refused().size()));
                tellPages();
            });
        });
    }

    private void askMissing(Path path) {
        Sheet sheet = new Sheet(Words.of("book.notThere", path), Words.of("book.notThere.how"), false);
        javafx.scene.control.Button make = Keys.main(Words.of("book.make"), "");
        make.setId("book-make");
        make.setOnAction(e -> openBook(path, true));
        javafx.scene.control.Button other = Keys.button(Words.of("book.other"), "");
        other.setOnAction(e -> askOpenBook());
        sheet.keys(other, make);
        ask(sheet);
    }

    void showKeys() {
        if (over.getChildren().stream().anyMatch(KeySheet.class::isInstance)) {
            closeSheet();
        } else if (!over.isVisible()) {
            ask(new KeySheet());
        }
    }

    private void ask(Sheet sheet) {
        over.getChildren().setAll(sheet);
        over.setVisible(true);
        Platform.runLater(sheet.firstField()::requestFocus);
    }

    boolean asking() {
        return over.isVisible();
    }

    void closeSheet() {
        over.getChildren().clear();
        over.setVisible(false);
        middle.requestFocus();
    }

    /** Esc: closes the last thing opened. Returns whether there was one. */
    boolean escape() {
        if (over.isVisible()) {
            if (over.getChildren().get(0) instanceof Sheet sheet && sheet.mayBeClosed()) {
                closeSheet();
            }
            return true;
        }
        if (!errors.getChildren().isEmpty()) {
            errors.getChildren().remove(errors.getChildren().size() - 1);
            return true;
        }
        if (race.findField().isFocused()) {
            race.findField().clear();
            middle.requestFocus();
            return true;
        }
        return false;
    }

    /** Parts that Ctrl Tab goes through: race, page from left to right, sill. */
    List<Node> regions() {
        List<Node> regions = new ArrayList<>();
        if (!chute) {
            regions.add(race);
        }
        Node view =
                middle.getChildren().isEmpty() ? middle : middle.getChildren().get(0);
        regions.addAll(
                view instanceof javafx.scene.Parent parent
                                && parent.getChildrenUnmodifiable().size() > 1
                        ? parent.getChildrenUnmodifiable()
                        : List.of(view));
        regions.add(sill);
        return regions;
    }

    // ---- work and its end
    // --------------------------------------------------------------------------------------------

    private void inBackground(Runnable work) {
        background.execute(() -> {
            try {
                work.run();
            } catch (Throwable failure) { // boundary of the thread: native load errors too
                tell(failure);
            }
        });
    }

    /** Says a failure in one sentence in the error bar. May be called on any thread but blocks on the disk. */
    void tell(Throwable failure) {
        String sentence = failures.sentence(failure);
        Platform.runLater(() -> {
            error(sentence);
            if (!bookOpen && !over.isVisible()) {
                middle.getChildren().setAll(noBook());
            }
        });
    }

    private Node noBook() {
        javafx.scene.control.Button other = Keys.main(Words.of("book.other"), "");
        other.setOnAction(e -> askOpenBook());
        javafx.scene.control.Button fresh = Keys.button(Words.of("menu.newBook"), "");
        fresh.setOnAction(e -> askNewBook());
        EmptyState empty = new EmptyState(Words.of("book.none"), "", other, fresh);
        empty.setMaxSize(520, EmptyState.USE_PREF_SIZE);
        return empty;
    }

    /** Closes pages and book once everything entered is written. Blocks for at most ten seconds. */
    @Override
    public void close() {
        pages.values().forEach(Page::close);
        pages.clear();
        background.execute(() -> book.ifPresent(Book::close));
        background.shutdown();
        try {
            background.awaitTermination(10, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static Optional<java.util.UUID> uuid(String text) {
        try {
            return Optional.of(java.util.UUID.fromString(text));
        } catch (IllegalArgumentException edited) {
            return Optional.empty();
        }
    }
}
