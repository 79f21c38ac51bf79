package levelback.player.shell;

import javafx.css.PseudoClass;
import javafx.scene.AccessibleRole;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Region;
import levelback.player.desk.PageId;
import levelback.player.theme.KeyCap;
import levelback.player.theme.Style;

/** One gate of the race: the page's name, its key, one line of counts, and the lower rail filled by the share done. */
final class Gate extends Region {

    private static final PseudoClass HERE = PseudoClass.getPseudoClass("here");
    private static final double RAIL_HIGH = 4;

    private final Label name;
    private final Label line;
    private final KeyCap key;
    private final Region done = new Region();
    private double fractionDone;

    Gate(PageId page, Runnable go) {
        getStyleClass().add("lb-gate");
        setId("gate-" + page.name().toLowerCase(java.util.Locale.ROOT));
        name = new Label(Words.of("gate." + page));
        name.getStyleClass().add("lb-gate-name");
        line = new Label(Words.of("gate.nothing"));
        line.getStyleClass().add("lb-gate-line");
        key = new KeyCap("F" + page.place());
        done.getStyleClass().add("lb-gate-done");
        getChildren().addAll(name, line, key, done);
        getChildren().forEach(child -> child.setManaged(false));
        setFocusTraversable(true);
        setAccessibleRole(AccessibleRole.BUTTON);
        setOnMouseClicked(e -> go.run());
        setOnKeyPressed(e -> {
            if (e.getCode() == KeyCode.ENTER || e.getCode() == KeyCode.SPACE) {
                e.consume();
                go.run();
            }
        });
        setAccessibleText(name.getText());
    }

    void here(boolean here) {
        pseudoClassStateChanged(HERE, here);
        name.getStyleClass().remove(Style.COW);
        if (here) {
            name.getStyleClass().add(Style.COW);
        }
        requestLayout();
    }

    void count(String text, double fraction) {
        line.setText(text.isBlank() ? Words.of("gate.nothing") : text);
        fractionDone = Math.max(0, Math.min(1, fraction));
        setAccessibleText(name.getText() + ", " + line.getText());
        requestLayout();
    }

    void showKey(boolean show) {
        key.setVisible(show);
    }

    String line() {
        return line.getText();
    }

    @Override
    protected void layoutChildren() {
        double left = 13;
        double wide = getWidth();
        double keyWide = Math.ceil(key.prefWidth(-1));
        key.resizeRelocate(wide - keyWide - 9, 9, keyWide, 17);
        double room = wide - left - (key.isVisible() ? keyWide + 12 : 8);
        name.resizeRelocate(left, 6, room, 22);
        line.resizeRelocate(left, 28, wide - left - 6, 17);
        done.resizeRelocate(1, getHeight() - RAIL_HIGH, (wide - 2) * fractionDone, RAIL_HIGH);
        done.setVisible(fractionDone > 0);
    }
}
