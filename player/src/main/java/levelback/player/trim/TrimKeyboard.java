package levelback.player.trim;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import levelback.scoring.foot.FootAction;
import levelback.scoring.value.Leg;
import levelback.store.trim.Finding;
import levelback.store.trim.FootCard;

/** What the keyboard does while a cow is in the chute. */
final class TrimKeyboard {

    private static final Map<KeyCode, Leg> FEET =
            Map.of(KeyCode.E, Leg.LF, KeyCode.R, Leg.RF, KeyCode.D, Leg.LH, KeyCode.F, Leg.RH);

    /** Alt 1 to Alt 9, in the order of the keys on the page. */
    static final List<FootAction> DONE = List.of(
            FootAction.TRIMMED,
            FootAction.CLAW_LOWERED,
            FootAction.LOOSE_HORN_OFF,
            FootAction.DISHED,
            FootAction.FOREIGN_BODY_OUT,
            FootAction.BLOCK_INNER,
            FootAction.BLOCK_OUTER,
            FootAction.BLOCK_OFF,
            FootAction.BANDAGE);

    private final TrimViewModel model;
    private final PadKeys pad;
    private final Runnable undo;

    TrimKeyboard(TrimViewModel model, Runnable undo) {
        this.model = model;
        this.undo = undo;
        pad = new PadKeys(model);
    }

    /** Uses a key; false if it means nothing here. */
    boolean key(KeyEvent event, boolean chuteMode) {
        if (model.chute().isEmpty()) {
            return false;
        }
        if (event.isControlDown() || event.isMetaDown()) {
            if (event.getCode() == KeyCode.T) {
                model.turn();
                return true;
            }
            return false;
        }
        if (event.isAltDown()) {
            return withAlt(event);
        }
        KeyCode code = event.getCode();
        if (event.isShiftDown() && FEET.containsKey(code)) {
            Optional.ofNullable(FEET.get(code)).ifPresent(model::foot);
            return true;
        }
        int digit = digit(code);
        if (digit >= 0) {
            if (event.isShiftDown()) {
                return false;
            }
            if (chuteMode || code.isKeypadKey()) {
                pad.digit(digit);
            } else {
                topRow(digit);
            }
            return true;
        }
        if (code.isLetterKey() && !event.isShiftDown()) {
            model.letter(code.getName().charAt(0));
            return true;
        }
        return single(event, chuteMode);
    }

    private boolean single(KeyEvent event, boolean chuteMode) {
        switch (event.getCode()) {
            case LEFT, KP_LEFT -> model.move(-1, 0);
            case RIGHT, KP_RIGHT -> model.move(1, 0);
            case UP, KP_UP -> model.move(0, -1);
            case DOWN, KP_DOWN -> model.move(0, 1);
            case SPACE -> model.confirmZone();
            case ENTER -> model.cowDone();
            case ESCAPE -> {
                return model.escape();
            }
            case BACK_SPACE -> model.setEntry(entry -> entry.typed(""));
            case ADD, PLUS -> model.nextFoot();
            case EQUALS -> {
                if (!event.isShiftDown()) {
                    return false;
                }
                model.nextFoot();
            }
            case MULTIPLY, ASTERISK -> model.setEntry(entry -> entry.footNext(true));
            case DIVIDE, SLASH -> model.swapClaw();
            case DECIMAL, PERIOD -> model.noLesion();
            case SUBTRACT -> minus();
            case MINUS -> {
                if (!chuteMode) {
                    return false;
                }
                minus();
            }
            default -> {
                return false;
            }
        }
        return true;
    }

    /** Minus takes back: an open question first, then the last step. */
    private void minus() {
        if (model.chute().flatMap(TrimState.InChute::question).isPresent()) {
            model.answer(false);
        } else {
            undo.run();
        }
    }

    private boolean withAlt(KeyEvent event) {
        int digit = digit(event.getCode());
        if (digit >= 1 && digit <= DONE.size()) {
            model.action(DONE.get(digit - 1));
            return true;
        }
        if (event.getCode() == KeyCode.C) {
            lastLine().ifPresent(line -> model.change(line.id()));
            return true;
        }
        return false;
    }

    private Optional<Finding> lastLine() {
        return model.chute()
                .flatMap(now -> now.cow().foot(now.entry().leg()))
                .map(FootCard::findings)
                .filter(lines -> !lines.isEmpty())
                .map(lines -> lines.get(lines.size() - 1));
    }

    private void topRow(int digit) {
        if (digit == 0) {
            model.chute().ifPresent(now -> model.more(now.entry().more() == 0 ? 1 : 0));
        } else {
            model.howBad(digit);
        }
    }

    private static int digit(KeyCode code) {
        if (!code.isDigitKey()) {
            return -1;
        }
        String name = code.getName();
        char last = name.charAt(name.length() - 1);
        return Character.isDigit(last) ? last - '0' : -1;
    }
}
