package levelback.player.score;

import java.util.Optional;
import java.util.OptionalInt;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import levelback.player.score.ScoreViewModel.State;
import levelback.player.stage.PictureAids;
import levelback.player.stage.PicturePlayer;
import levelback.scoring.scale.Sign;
import levelback.scoring.value.Leg;

/** The keys of the Score page. */
final class ScoreKeyboard {

    private final ScorePage page;
    private final ScoreViewModel model;
    private final PicturePlayer player;
    private final TransportBar transport;
    private final JudgePanel judge;
    private final KeySet keySet;
    private final PictureAids aids;

    ScoreKeyboard(
            ScorePage page,
            ScoreViewModel model,
            PicturePlayer player,
            TransportBar transport,
            JudgePanel judge,
            KeySet keySet,
            PictureAids aids) {
        this.page = page;
        this.model = model;
        this.player = player;
        this.transport = transport;
        this.judge = judge;
        this.keySet = keySet;
        this.aids = aids;
    }

    boolean key(KeyEvent event) {
        if (event.getEventType() != KeyEvent.KEY_PRESSED) {
            return false;
        }
        State state = model.stateProperty().get();
        boolean onFilm = state instanceof State.OnPass || state instanceof State.Marking;
        if (event.isShortcutDown()) {
            return onFilm && further(event);
        }
        if (event.isAltDown() && !isBracket(event)) {
            return onFilm && aids.altKey(event);
        }
        if (state instanceof State.OnPass && judging(event)) {
            return true;
        }
        if (state instanceof State.Marking && marking(event)) {
            return true;
        }
        if (event.getCode() == KeyCode.W) {
            model.toggleMarking();
            return true;
        }
        return onFilm && (moving(event) || aids.key(event));
    }

    /** With Ctrl the arrows go further: a second, or a tag. */
    private boolean further(KeyEvent event) {
        switch (event.getCode()) {
            case LEFT, KP_LEFT -> page.second(-1);
            case RIGHT, KP_RIGHT -> page.second(1);
            case UP, KP_UP -> page.toTag(false);
            case DOWN, KP_DOWN -> page.toTag(true);
            default -> {
                return false;
            }
        }
        return true;
    }

    private static boolean isBracket(KeyEvent event) {
        return event.getText().equals("[") || event.getText().equals("]");
    }

    private boolean moving(KeyEvent event) {
        boolean shift = event.isShiftDown();
        switch (event.getCode()) {
            case SPACE -> {
                if (shift) {
                    transport.backwards();
                } else {
                    transport.forwards();
                    transport.walkOrStand();
                }
            }
            case LEFT, KP_LEFT -> page.step(-1, shift);
            case RIGHT, KP_RIGHT -> page.step(1, shift);
            case UP, KP_UP -> page.toMoment(false);
            case DOWN, KP_DOWN -> page.toMoment(true);
            case HOME -> page.step(-1_000_000, false);
            case END -> page.step(1_000_000, false);
            case PAGE_UP -> model.turn(-1);
            case PAGE_DOWN -> model.turn(1);
            case MINUS, SUBTRACT -> transport.slower(1);
            case PLUS, ADD, EQUALS -> transport.slower(-1);
            case L -> {
                if (shift) {
                    page.loopEnd();
                } else {
                    page.toggleLoop();
                }
            }
            case ENTER -> model.next();
            default -> {
                return false;
            }
        }
        return true;
    }

    private boolean judging(KeyEvent event) {
        if (judge.key(event)) {
            return true;
        }
        OptionalInt digit = KeySet.digit(event);
        if (digit.isPresent()) {
            model.score(digit.getAsInt());
            return true;
        }
        Optional<Leg> leg = KeySet.leg(event.getCode());
        if (leg.isPresent()) {
            model.leg(leg.get());
            return true;
        }
        Optional<Sign> sign = keySet.sign(event.getCode());
        if (sign.isPresent()) {
            model.sign(sign.get(), player.shownFrame());
            return true;
        }
        switch (event.getCode()) {
            case PERIOD, DECIMAL -> model.half();
            case BACK_SPACE -> model.takeOffAt(player.shownFrame());
            case SLASH, DIVIDE -> model.ask(true);
            default -> {
                return false;
            }
        }
        return true;
    }

    private boolean marking(KeyEvent event) {
        if (event.getCode() == KeyCode.OPEN_BRACKET || event.getText().equals("[") || event.getCode() == KeyCode.I) {
            model.markFirst(player.shownFrame());
            return true;
        }
        if (event.getCode() == KeyCode.CLOSE_BRACKET || event.getText().equals("]") || event.getCode() == KeyCode.O) {
            model.markLast(player.shownFrame());
            return true;
        }
        return false;
    }
}
