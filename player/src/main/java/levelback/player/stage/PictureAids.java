package levelback.player.stage;

import java.util.List;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import levelback.player.theme.Keys;
import levelback.player.theme.Style;

/**
 * Aids to the eye: further steps, a place to go to, a lighter or harder picture, the feet enlarged, fields, a second picture
 * beside. A row of keys that opens with A; the keys of the keyboard work while it is shut. What it changes is on the screen
 * only.
 */
public final class PictureAids extends VBox {

    private static final double LARGER = 1.25;
    private static final double SHARE = 0.1;

    /** What the page does for the aids. */
    public interface Moves {
        /** Goes some seconds on, below 0 back. */
        void second(int seconds);

        /** Goes to the tag after this moment, or to the one before. */
        void toTag(boolean after);

        /** Goes to a place. */
        void goTo(Place place);

        /** Walks backwards, or stands. */
        void backwards();

        /** The first time the loop begins here, the second time it ends here. */
        void loopEnd();

        /** Says something for a moment. */
        void say(String sentence);

        /** Shows by fields, or again by frames. */
        void fields();

        /** Holds this frame for a second picture; then joins the two; then puts it away. */
        void beside();

        /** The keyboard goes back to the picture. */
        void backToPicture();
    }

    private final PictureView view;
    private final PictureView second;
    private final Moves moves;
    private final TextField place = new TextField();
    private final Label light = new Label();
    private final Label contrast = new Label();
    private final ToggleButton fields;
    private final ToggleButton beside;

    /** @param second the second picture: it is toned and enlarged with the first */
    public PictureAids(PictureView view, PictureView second, Moves moves) {
        super(6);
        this.view = view;
        this.second = second;
        this.moves = moves;
        setPadding(new Insets(6, 10, 6, 10));
        setMinWidth(0);
        getStyleClass().addAll(Style.SHEET, Style.BELOW_RULE);
        setId("picture-aids");
        place.setId("aids-place");
        place.setPrefColumnCount(7);
        place.setStyle("-fx-padding: 3 6 3 6;");
        place.setPromptText(StageWords.of("aids.goTo.prompt"));
        place.setAccessibleText(StageWords.of("aids.goTo.accessible"));
        place.setOnAction(e -> go());
        place.addEventFilter(KeyEvent.KEY_PRESSED, e -> {
            if (e.getCode() == KeyCode.ESCAPE) {
                moves.backToPicture();
                e.consume();
            }
        });
        Label goTo = new Label(StageWords.of("aids.goTo"));
        HBox typed = new HBox(4, goTo, place, new levelback.player.theme.KeyCap("G"));
        typed.setAlignment(Pos.CENTER_LEFT);
        fields = toggle("fields", "T", moves::fields);
        beside = toggle("beside", "S", moves::beside);
        HBox further = row(
                key("secondBack", "Ctrl \u2190", () -> moves.second(-1)),
                key("secondOn", "Ctrl \u2192", () -> moves.second(1)),
                key("tagBack", "Ctrl \u2191", () -> moves.toTag(false)),
                key("tagOn", "Ctrl \u2193", () -> moves.toTag(true)),
                typed,
                key("backwards", "Shift Space", moves::backwards),
                key("loopEnds", "Shift L", moves::loopEnd));
        HBox looks = row(
                pair("light", key("darker", "J", () -> tone(-1, 0)), key("lighter", "K", () -> tone(1, 0))),
                pair(
                        "contrast",
                        key("softer", "Shift J", () -> tone(0, -1)),
                        key("harder", "Shift K", () -> tone(0, 1))),
                pair(
                        "size",
                        key("smaller", "Alt \u2212", () -> size(1 / LARGER)),
                        key("larger", "Alt +", () -> size(LARGER))),
                key("feet", "H", this::feet),
                key("asFilmed", "P", this::asFilmed),
                fields,
                beside);
        getChildren().addAll(List.of(further, looks));
        widthProperty().addListener((o, was, is) -> fit(further, looks));
        setOpen(false);
        tone(0, 0);
    }

    private static HBox row(Node... parts) {
        HBox row = new HBox(6, parts);
        row.setAlignment(Pos.CENTER_LEFT);
        row.setMinWidth(0);
        return row;
    }

    /** Less and more of one thing. */
    private HBox pair(String name, Button less, Button more) {
        Label label = name.equals("light") ? light : name.equals("contrast") ? contrast : new Label();
        label.setText(StageWords.of("aids." + name));
        label.setMinWidth(Region.USE_PREF_SIZE);
        for (Button key : List.of(less, more)) {
            key.setAccessibleText(StageWords.of("aids." + key.getId().substring("aids-".length()) + ".accessible"));
        }
        HBox pair = new HBox(4, label, less, more);
        pair.setAlignment(Pos.CENTER_LEFT);
        pair.setMinWidth(Region.USE_PREF_SIZE);
        return pair;
    }

    /** In a narrow window the caps give way, as they do on the row below. */
    private void fit(HBox... rows) {
        double room = getWidth() - getPadding().getLeft() - getPadding().getRight();
        for (HBox row : rows) {
            caps(row, ContentDisplay.RIGHT);
            if (row.prefWidth(-1) > room) {
                caps(row, ContentDisplay.TEXT_ONLY);
            }
        }
    }

    private static void caps(HBox row, ContentDisplay display) {
        for (Node part : row.getChildren()) {
            if (part instanceof ButtonBase key) {
                key.setContentDisplay(display);
            } else if (part instanceof HBox pair) {
                caps(pair, display);
            }
        }
    }

    private static <B extends ButtonBase> B dress(B button, String name, Runnable does) {
        button.setId("aids-" + name);
        button.setFocusTraversable(false);
        button.setStyle("-fx-padding: 3 6 3 6;");
        button.setGraphicTextGap(5);
        button.setOnAction(e -> does.run());
        return button;
    }

    private static Button key(String name, String cap, Runnable does) {
        return dress(Keys.button(StageWords.of("aids." + name), cap), name, does);
    }

    private static ToggleButton toggle(String name, String cap, Runnable does) {
        return dress(Keys.toggle(StageWords.of("aids." + name), cap), name, does);
    }

    /** Whether the row of keys is open. */
    public boolean isOpen() {
        return isManaged();
    }

    /** Opens or shuts the row of keys. */
    public void setOpen(boolean open) {
        setManaged(open);
        setVisible(open);
    }

    /** What the clip on show allows, and what is on. */
    public void show(boolean interlaced, boolean byFields, boolean hasBeside) {
        fields.setManaged(interlaced);
        fields.setVisible(interlaced);
        fields.setSelected(byFields);
        beside.setSelected(hasBeside);
    }

    /** What is said when fields were asked for. */
    public String fieldsSay(boolean interlaced, boolean byFields) {
        return StageWords.of(!interlaced ? "fields.none" : byFields ? "fields.on" : "fields.off");
    }

    /** What is said when a frame is held for a second picture. */
    public String heldSays(int frame) {
        return StageWords.of("beside.held", Integer.toString(frame));
    }

    /** What is said when the two pictures are joined. */
    public String joinedSays() {
        return StageWords.of("beside.joined");
    }

    /** What is said when the second picture is put away. */
    public String awaySays() {
        return StageWords.of("beside.away");
    }

    /** A letter, with or without Shift. */
    public boolean key(KeyEvent event) {
        boolean shift = event.isShiftDown();
        switch (event.getCode()) {
            case A -> setOpen(!isOpen());
            case G -> typePlace();
            case J -> tone(shift ? 0 : -1, shift ? -1 : 0);
            case K -> tone(shift ? 0 : 1, shift ? 1 : 0);
            case H -> feet();
            case P -> asFilmed();
            case T -> moves.fields();
            case S -> moves.beside();
            default -> {
                return false;
            }
        }
        return true;
    }

    /** With Alt the keys move over the picture. */
    public boolean altKey(KeyEvent event) {
        switch (event.getCode()) {
            case LEFT, KP_LEFT -> look(-SHARE, 0);
            case RIGHT, KP_RIGHT -> look(SHARE, 0);
            case UP, KP_UP -> look(0, -SHARE);
            case DOWN, KP_DOWN -> look(0, SHARE);
            case PLUS, ADD, EQUALS -> size(LARGER);
            case MINUS, SUBTRACT -> size(1 / LARGER);
            default -> {
                return false;
            }
        }
        return true;
    }

    private void feet() {
        if (view.magnified() > 1) {
            view.whole();
            second.whole();
        } else {
            view.feet();
            second.whole();
            second.feet();
        }
    }

    private void size(double times) {
        view.magnifyBy(times);
        second.magnifyBy(times);
    }

    private void look(double right, double down) {
        view.look(right, down);
        second.look(right, down);
    }

    private void typePlace() {
        setOpen(true);
        place.clear();
        place.requestFocus();
    }

    private void go() {
        Place.typed(place.getText())
                .ifPresentOrElse(
                        to -> {
                            moves.backToPicture();
                            moves.goTo(to);
                        },
                        () -> moves.say(StageWords.of("aids.goTo.what")));
    }

    private void tone(int lighter, int harder) {
        view.setTone(view.tone().plus(lighter, harder));
        second.setTone(view.tone());
        Tone now = view.tone();
        light.setText(StageWords.of("aids.light") + signed(now.light()));
        contrast.setText(StageWords.of("aids.contrast") + signed(now.contrast()));
    }

    private static String signed(int steps) {
        return steps > 0 ? " +" + steps : steps < 0 ? " \u2212" + -steps : "";
    }

    private void asFilmed() {
        view.whole();
        second.whole();
        view.setTone(Tone.AS_FILMED);
        tone(0, 0);
    }
}
