package levelback.player.trim;

import java.io.File;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.stage.FileChooser;
import levelback.player.desk.Desk;
import levelback.player.desk.Page;
import levelback.player.desk.PageId;
import levelback.player.theme.Style;
import levelback.store.herd.CowId;

/** The Trim page: the card of the cow in the chute, and the same in chute mode. */
public final class TrimPage implements Page {

    /** Below it, rows tighten and the medicine note shares its place with the lesion keys. */
    private static final double TIGHT_PX = 770;

    private final Desk desk;
    private final TrimWords words = new TrimWords();
    private final TrimViewModel model;
    private final TrimKeyboard keyboard;
    private final StackPane root = new StackPane();
    private final CowColumn cow;
    private final FootColumn foot;
    private final CardColumn card;
    private final HBox columns;
    private final EmptyChute empty;
    private final ChuteView chute;
    private boolean chuteMode;
    private Optional<MeasureScreen> measuring = Optional.empty();

    /** A page on a desk, by the machine's clock. */
    public TrimPage(Desk desk) {
        this(desk, Clock.system(ZoneId.systemDefault()));
    }

    TrimPage(Desk desk, Clock clock) {
        this.desk = desk;
        model = new TrimViewModel(desk, clock, words);
        cow = new CowColumn(model, words);
        foot = new FootColumn(model, words);
        card = new CardColumn(model, words, this::askPhoto);
        empty = new EmptyChute(model, words);
        chute = new ChuteView(model, words, desk::undo, () -> desk.chuteMode(false), this::measure);
        keyboard = new TrimKeyboard(model, desk::undo);
        columns = new HBox(cow, foot, card);
        columns.getStyleClass().add(Style.SHEET);
        HBox.setHgrow(foot, Priority.ALWAYS);
        root.setId("trim-page");
        root.setMinSize(0, 0);
        // What cannot fit must run out below, never over the cautions at the top.
        root.setAlignment(javafx.geometry.Pos.TOP_LEFT);
        root.getStylesheets()
                .add(Objects.requireNonNull(TrimPage.class.getResource("/levelback/player/trim/trim.css"))
                        .toExternalForm());
        root.widthProperty().addListener((o, was, is) -> render());
        root.heightProperty().addListener((o, was, is) -> render());
        model.stateProperty().addListener((o, was, is) -> render());
        root.setOnDragOver(e -> {
            if (e.getDragboard().hasFiles() && model.chute().isPresent()) {
                e.acceptTransferModes(javafx.scene.input.TransferMode.COPY);
                e.consume();
            }
        });
        root.setOnDragDropped(e -> {
            if (model.chute().isPresent()) {
                e.getDragboard().getFiles().stream().map(File::toPath).forEach(model::photo);
                e.setDropCompleted(true);
                e.consume();
            }
        });
        chute.screen(desk.screenPxPerMm());
        render();
    }

    @Override
    public PageId id() {
        return PageId.TRIM;
    }

    @Override
    public Node view() {
        return root;
    }

    @Override
    public void shown() {
        model.refresh();
    }

    @Override
    public void bookChanged() {
        model.refresh();
    }

    @Override
    public void themeChanged() {
        // Everything here is drawn with looked-up colours, which change by themselves.
    }

    @Override
    public void openCow(CowId id) {
        model.open(id);
    }

    /** Whether the page is in chute mode. */
    public boolean inChuteMode() {
        return chuteMode;
    }

    @Override
    public boolean chuteMode(boolean on) {
        chuteMode = on;
        measuring = Optional.empty();
        chute.screen(desk.screenPxPerMm());
        render();
        return on;
    }

    @Override
    public void close() {
        model.close();
    }

    @Override
    public boolean key(KeyEvent event) {
        if (measuring.isPresent()) {
            return measureKey(event, measuring.get());
        }
        if (model.state() instanceof TrimState.Empty) {
            return emptyKey(event);
        }
        if (event.isAltDown() && model.chute().isPresent() && !chuteMode) {
            switch (event.getCode()) {
                case M -> card.toMedicine();
                case L -> card.toLookAgain();
                case P -> askPhoto();
                default -> {
                    return keyboard.key(event, chuteMode);
                }
            }
            return true;
        }
        return keyboard.key(event, chuteMode);
    }

    private boolean emptyKey(KeyEvent event) {
        if (event.isControlDown() || event.isAltDown()) {
            return false;
        }
        if (event.getCode() == KeyCode.ENTER) {
            model.startList();
            return true;
        }
        if (event.getCode().isDigitKey()) {
            empty.type(event.getCode().getName().replaceAll("\\D", ""));
            return true;
        }
        return false;
    }

    private boolean measureKey(KeyEvent event, MeasureScreen box) {
        switch (event.getCode()) {
            case LEFT, DOWN, SUBTRACT -> box.grow(-1);
            case RIGHT, UP, ADD -> box.grow(1);
            case ENTER -> measured(box.pxPerMm());
            case ESCAPE -> measureEnd();
            default -> {
                return false;
            }
        }
        return true;
    }

    private void measure() {
        measuring = Optional.of(
                new MeasureScreen(words, desk.screenPxPerMm().orElse(96 / 25.4), this::measured, this::measureEnd));
        render();
    }

    private void measured(double pxPerMm) {
        desk.keepScreenPxPerMm(pxPerMm);
        chute.screen(desk.screenPxPerMm());
        measureEnd();
    }

    private void measureEnd() {
        measuring = Optional.empty();
        render();
    }

    private void askPhoto() {
        if (root.getScene() == null || root.getScene().getWindow() == null) {
            return;
        }
        FileChooser chooser = new FileChooser();
        chooser.setTitle(words.text("photo.choose"));
        chooser.getExtensionFilters()
                .add(new FileChooser.ExtensionFilter(
                        words.text("photo.files"), "*.jpg", "*.jpeg", "*.png", "*.heic", "*.tif", "*.tiff", "*.webp"));
        Optional.ofNullable(chooser.showOpenDialog(root.getScene().getWindow()))
                .map(File::toPath)
                .ifPresent(this::photo);
    }

    private void photo(Path file) {
        model.photo(file);
    }

    private void render() {
        double high = root.getHeight();
        boolean tight = high > 0 && high < TIGHT_PX;
        double wide = root.getWidth();
        boolean narrow = wide > 0 && wide < 1400;
        cow.setPrefWidth(narrow ? 226 : 282);
        cow.setMinWidth(narrow ? 226 : 282);
        cow.setMaxWidth(narrow ? 226 : 282);
        double right = narrow ? Math.min(490, Math.max(440, wide - 226 - 564)) : 578;
        card.setMinWidth(right);
        card.setPrefWidth(right);
        card.setMaxWidth(right);
        TrimState now = model.state();
        Node front;
        if (measuring.isPresent()) {
            front = measuring.get();
        } else if (now instanceof TrimState.InChute in) {
            if (chuteMode) {
                chute.show(in);
                front = chute;
            } else {
                cow.show(in, tight);
                foot.show(in, tight);
                card.show(in, tight);
                front = columns;
            }
        } else if (now instanceof TrimState.Empty nobody) {
            empty.show(nobody, chuteMode, chute.keyPx());
            front = empty;
        } else {
            front = CowColumn.styled(new javafx.scene.control.Label(words.text("reading")), "trim-reading");
        }
        if (!List.of(front).equals(root.getChildren())) {
            root.getChildren().setAll(front);
            if (front == columns) {
                foot.map().requestFocus();
            } else if (front == empty) {
                empty.number().requestFocus();
            }
        }
        columns.getStyleClass().remove("trim-tight");
        if (tight) {
            columns.getStyleClass().add("trim-tight");
        }
    }

    /** For tests: the model behind the page. */
    TrimViewModel model() {
        return model;
    }
}
