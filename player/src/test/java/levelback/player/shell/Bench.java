package levelback.player.shell;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import levelback.player.desk.Desk;
import levelback.player.desk.Fx;
import levelback.player.desk.Page;
import levelback.player.desk.PageId;
import org.testfx.util.WaitForAsyncUtils;

/** A desk on a real book in a folder of its own, without a window. */
final class Bench implements AutoCloseable {

    /** A page that keeps what it was told. */
    static final class Witness implements Page {
        final PageId id;
        final Desk desk;
        final List<String> told = new ArrayList<>();
        final Label view;
        boolean chute;

        Witness(PageId id, Desk desk) {
            this.id = id;
            this.desk = desk;
            view = new Label("page " + id);
            view.setFocusTraversable(true);
        }

        @Override
        public PageId id() {
            return id;
        }

        @Override
        public Node view() {
            return view;
        }

        @Override
        public void shown() {
            told.add("shown");
        }

        @Override
        public void bookChanged() {
            told.add("bookChanged");
        }

        @Override
        public boolean key(KeyEvent event) {
            told.add("key " + event.getCode());
            return true;
        }

        @Override
        public void themeChanged() {
            told.add("theme");
        }

        @Override
        public void takeFiles(List<Path> files) {
            told.add("files " + files);
        }

        @Override
        public void openCow(levelback.store.herd.CowId cow) {
            told.add("cow " + cow.uuid());
        }

        @Override
        public void openPass(levelback.store.lane.PassId pass, int frame) {
            told.add("pass " + pass.uuid() + " at " + frame);
        }

        @Override
        public boolean chuteMode(boolean on) {
            chute = on;
            return on;
        }

        @Override
        public void close() {
            told.add("closed");
        }
    }

    final Path folder;
    final Map<PageId, Witness> pages = new EnumMap<>(PageId.class);
    final DeskShell desk;
    final Scene scene;

    Bench(Path folder, PageId... built) throws Exception {
        this.folder = folder;
        Map<PageId, Function<Desk, Page>> make = new EnumMap<>(PageId.class);
        for (PageId id : built) {
            make.put(id, lent -> {
                Witness page = new Witness(id, lent);
                pages.put(id, page);
                return page;
            });
        }
        Path settings = folder.resolve("settings.json");
        Settings loaded = Settings.load(settings);
        desk = Fx.get(() -> new DeskShell(make, settings, loaded, folder.resolve("log"), DeskWishes.NONE));
        scene = Fx.get(() -> DeskWindow.dress(desk, 1440, 900));
    }

    /** Opens a book and waits until it is on show. */
    @SuppressWarnings("resource")
    Bench open(Path book) throws Exception {
        Fx.run(() -> desk.openBook(book, true));
        settle();
        return this;
    }

    /** Waits until background work and what it asked of the JavaFX thread is done. */
    void settle() throws Exception {
        for (int round = 0; round < 3; round++) {
            CountDownLatch idle = new CountDownLatch(1);
            desk.background().execute(idle::countDown);
            if (!idle.await(30, TimeUnit.SECONDS)) {
                throw new IllegalStateException("the desk does not come to rest");
            }
            WaitForAsyncUtils.waitForFxEvents(2);
        }
    }

    void until(BooleanSupplier what) throws Exception {
        WaitForAsyncUtils.waitFor(20, TimeUnit.SECONDS, () -> Fx.get(what::getAsBoolean));
    }

    void press(KeyCode code, String... modifiers) throws Exception {
        List<String> down = List.of(modifiers);
        Fx.run(() -> {
            Node target = scene.getFocusOwner() == null ? desk.root() : scene.getFocusOwner();
            javafx.event.Event.fireEvent(
                    target,
                    new KeyEvent(
                            KeyEvent.KEY_PRESSED,
                            "",
                            "",
                            code,
                            down.contains("shift"),
                            down.contains("ctrl"),
                            down.contains("alt"),
                            false));
        });
        settle();
    }

    Witness page(PageId id) {
        return java.util.Objects.requireNonNull(pages.get(id), () -> id + " was not shown");
    }

    <N extends Node> N find(Class<N> type, String id) {
        return type.cast(java.util.Objects.requireNonNull(desk.root().lookup("#" + id), id));
    }

    /** Signs on and names a herd by typing into the sheets, as a person would on the first start. */
    void firstStart() throws Exception {
        Fx.run(() -> {
            this.find(javafx.scene.control.TextField.class, "who-name").setText("Vera Holt");
            this.find(javafx.scene.control.Button.class, "who-go").fire();
        });
        settle();
        Fx.run(() -> desk.askHerd(java.util.Optional.empty()));
        Fx.run(() -> {
            this.find(javafx.scene.control.TextField.class, "herd-name").setText("Nine Oaks");
            this.find(javafx.scene.control.TextField.class, "herd-cows").setText("186");
            this.find(javafx.scene.control.Button.class, "herd-go").fire();
        });
        settle();
    }

    void picture(String name) throws Exception {
        WritableImage image = Fx.get(() -> scene.snapshot(null));
        Path file = Path.of("target", "look", name + ".png");
        Files.createDirectories(file.getParent());
        Files.write(file, Snapshot.png(image));
    }

    @Override
    public void close() {
        javafx.application.Platform.runLater(() -> scene.setRoot(new javafx.scene.Group()));
        desk.close();
    }
}
