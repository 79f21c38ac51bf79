package levelback.player.shell;

import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.ComboBoxBase;
import javafx.scene.control.Spinner;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import levelback.player.desk.PageId;

/**
 * Which key does what, everywhere on the desk. Keys of the whole desk come first; then whatever is being typed in; then the
 * page, so that Space walks even after a key was clicked with the mouse.
 */
final class DeskKeys {

    private final DeskShell desk;

    DeskKeys(DeskShell desk) {
        this.desk = desk;
    }

    /** Takes a key before any control sees it. */
    void filter(KeyEvent event) {
        if (everywhere(event)) {
            event.consume();
            return;
        }
        if (desk.asking() || isTyping(event) || isKeyOfFocusedControl(event)) {
            return;
        }
        if (desk.pageInFront().filter(page -> page.key(event)).isPresent()) {
            event.consume();
        }
    }

    private boolean everywhere(KeyEvent event) {
        KeyCode code = event.getCode();
        if (code == KeyCode.ESCAPE && plain(event)) {
            return desk.escape();
        }
        if (code == KeyCode.F12) {
            desk.showKeys();
            return true;
        }
        if (code == KeyCode.F10) {
            desk.toggleTheme();
            return true;
        }
        if (code == KeyCode.F11) {
            desk.toggleFullScreen();
            return true;
        }
        if (desk.asking()) {
            return false;
        }
        Optional<PageId> page = plain(event) ? functionKey(code).flatMap(PageId::at) : Optional.empty();
        if (page.isPresent()) {
            desk.go(page.get());
            return true;
        }
        if (code == KeyCode.F9) {
            desk.chuteMode(!desk.inChuteMode());
            return true;
        }
        if (!event.isShortcutDown() && !event.isControlDown()) {
            return false;
        }
        return withControl(event);
    }

    private boolean withControl(KeyEvent event) {
        KeyCode code = event.getCode();
        if (code.isDigitKey() && !event.isShiftDown()) {
            Optional<PageId> page =
                    PageId.at(code.getName().charAt(code.getName().length() - 1) - '0');
            page.ifPresent(desk::go);
            return page.isPresent();
        }
        switch (code) {
            case F -> desk.race().findField().requestFocus();
            case Z -> {
                // A field's own undo comes first while something is typed in it.
                if (isTyping(event)
                        && !((TextInputControl) event.getTarget()).getText().isEmpty()) {
                    return false;
                }
                if (event.isShiftDown()) {
                    desk.redo();
                } else {
                    desk.undo();
                }
            }
            case O -> desk.chooseRecordings();
            case I -> desk.importCows();
            case TAB -> nextRegion(event.isShiftDown());
            default -> {
                return false;
            }
        }
        return true;
    }

    private void nextRegion(boolean back) {
        List<Node> regions = desk.regions();
        Node owner = desk.root().getScene().getFocusOwner();
        int at = -1;
        for (int i = 0; i < regions.size(); i++) {
            if (owner != null && isIn(owner, regions.get(i))) {
                at = i;
            }
        }
        for (int step = 1; step <= regions.size(); step++) {
            int next = Math.floorMod(at + (back ? -step : step), regions.size());
            Node target = firstFocusable(regions.get(next));
            if (target != null) {
                target.requestFocus();
                return;
            }
        }
    }

    private static boolean isIn(Node node, Node region) {
        for (Node up = node; up != null; up = up.getParent()) {
            if (up == region) {
                return true;
            }
        }
        return false;
    }

    private static @org.jspecify.annotations.Nullable Node firstFocusable(Node node) {
        if (!node.isVisible() || node.isDisabled()) {
            return null;
        }
        if (node.isFocusTraversable()) {
            return node;
        }
        if (node instanceof Parent parent) {
            for (Node child : parent.getChildrenUnmodifiable()) {
                Node found = firstFocusable(child);
                if (found != null) {
                    return found;
                }
            }
        }
        return null;
    }

    /** The number of a function key, such as 5 for F5. */
    private static Optional<Integer> functionKey(KeyCode code) {
        return code.isFunctionKey() && code.getName().matches("F\\d+")
                ? Optional.of(Integer.valueOf(code.getName().substring(1)))
                : Optional.empty();
    }

    private static boolean plain(KeyEvent event) {
        return !event.isControlDown() && !event.isAltDown() && !event.isMetaDown() && !event.isShiftDown();
    }

    private static boolean isTyping(KeyEvent event) {
        return event.getTarget() instanceof TextInputControl;
    }

    /** Space and Enter belong to a key that was reached with Tab; fields that open lists keep their arrows. */
    private static boolean isKeyOfFocusedControl(KeyEvent event) {
        if (!(event.getTarget() instanceof Node target)) {
            return false;
        }
        if (event.getCode() == KeyCode.TAB) {
            return true;
        }
        if (target instanceof ComboBoxBase || target instanceof ChoiceBox || target instanceof Spinner) {
            return true;
        }
        boolean press = event.getCode() == KeyCode.SPACE || event.getCode() == KeyCode.ENTER;
        return press && target.isFocusVisible() && (target instanceof ButtonBase || target instanceof Gate);
    }
}
