package levelback.player.shell;

import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import levelback.player.theme.Style;

/** Something the desk asks, laid over the page: a head, what it is for, fields, keys. Esc closes it where it may be closed. */
class Sheet extends VBox {

    private final boolean mayBeClosed;
    private final Label wrong = new Label();

    /** @param mayBeClosed false where the desk cannot go on without an answer */
    Sheet(String title, String how, boolean mayBeClosed) {
        super(12);
        this.mayBeClosed = mayBeClosed;
        getStyleClass().add("lb-sheet-panel");
        setMaxSize(USE_PREF_SIZE, USE_PREF_SIZE);
        setPrefWidth(480);
        Label head = new Label(title);
        head.getStyleClass().add(Style.PAGE_HEAD);
        getChildren().add(head);
        if (!how.isEmpty()) {
            Label words = new Label(how);
            words.setWrapText(true);
            words.setMinHeight(USE_PREF_SIZE);
            words.getStyleClass().add(Style.SECOND);
            getChildren().add(words);
        }
        wrong.getStyleClass().add("lb-wrong");
        wrong.setWrapText(true);
        wrong.setVisible(false);
        wrong.setManaged(false);
        wrong.setId("sheet-wrong");
    }

    boolean mayBeClosed() {
        return mayBeClosed;
    }

    /** Adds a field with its name above it. */
    final void field(String name, Node field) {
        Label label = new Label(name);
        label.getStyleClass().add(Style.STRONG);
        label.setLabelFor(field);
        if (field instanceof Region region) {
            region.setMaxWidth(Double.MAX_VALUE);
        }
        getChildren().add(new VBox(4, label, field));
    }

    /** Adds the row of keys at the foot. */
    final void keys(Node... keys) {
        HBox row = new HBox(10, keys);
        row.setAlignment(Pos.CENTER_RIGHT);
        getChildren().addAll(wrong, row);
    }

    /** Says in one sentence why the answer cannot be taken. */
    final void wrong(String sentence) {
        wrong.setText("× " + sentence);
        wrong.setVisible(true);
        wrong.setManaged(true);
    }

    /** Where typing begins. */
    Node firstField() {
        return this;
    }
}
