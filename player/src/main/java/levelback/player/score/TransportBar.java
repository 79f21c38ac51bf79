package levelback.player.score;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.Label;
import javafx.scene.control.OverrunStyle;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import levelback.player.stage.PictureAids;
import levelback.player.stage.PicturePlayer;
import levelback.player.theme.Keys;
import levelback.player.theme.Style;

/** Walk or stand, how fast, one frame on or back, the loop, and where the picture is. */
final class TransportBar extends HBox {

    private static final double[] RATES = {4, 2, 1, 0.5, 0.25, 0.125};

    /** The last step of tightening, see {@link #fit()}. */
    private static final int TIGHTEST = 6;

    /** Least width kept for the line with the file name, px. */
    private static final double LEAST_OF_NAME = 110;

    private final PicturePlayer player;
    private final Button walk;
    private final Map<Double, ToggleButton> rates = new LinkedHashMap<>();
    private final ToggleButton loop;
    private final ToggleButton aids;
    private final Label frame = Parts.label("", Style.STRONG);
    private final Label missed = Parts.label("", Style.HINT);
    private final Label of = new Label();
    private final Label own = Parts.label("", Style.HINT);
    private final HBox segments = new HBox(-1);
    private final Button back;
    private final Button on;
    private boolean backwards;

    TransportBar(PicturePlayer player, Runnable toggleLoop, PictureAids pictureAids) {
        super(8);
        this.player = player;
        setAlignment(Pos.CENTER_LEFT);
        setPadding(new Insets(0, 10, 0, 10));
        setMinHeight(48);
        setPrefHeight(48);
        getStyleClass().addAll(Style.SHEET, Style.BELOW_RULE);
        walk = Parts.quiet(Keys.main(Words.of("walk"), Words.of("cap.space")), this::walkOrStand);
        walk.setId("score-walk");
        segments.setAlignment(Pos.CENTER_LEFT);
        for (double rate : RATES) {
            ToggleButton key = Parts.quiet(Keys.toggle(Words.of("rate." + rate), ""), () -> setRate(rate));
            key.setStyle("-fx-padding: 4 7 4 7;");
            key.setAccessibleText(Words.of("rate.accessible", Words.of("rate." + rate)));
            rates.put(rate, key);
            segments.getChildren().add(key);
        }
        segments.setMinWidth(Region.USE_PREF_SIZE);
        back = Parts.key(Words.of("frame.back"), "←", () -> player.step(-1));
        on = Parts.key(Words.of("frame.on"), "→", () -> player.step(1));
        loop = Parts.quiet(Keys.toggle(Words.of("loop"), "L"), toggleLoop);
        aids = Parts.quiet(Keys.toggle(Words.of("aids"), "A"), () -> pictureAids.setOpen(!pictureAids.isOpen()));
        aids.setId("score-aids");
        pictureAids.managedProperty().addListener((o, was, is) -> aids.setSelected(is));
        missed.setId("score-not-shown");
        HBox where = new HBox(4, missed, frame, of);
        where.setAlignment(Pos.CENTER_RIGHT);
        VBox label = new VBox(where, own);
        label.setAlignment(Pos.CENTER_RIGHT);
        label.setMinWidth(0);
        where.setMinWidth(Region.USE_PREF_SIZE);
        frame.setMinWidth(Region.USE_PREF_SIZE);
        own.setMinWidth(0);
        // The number of the frame and the ending of the file name say most.
        own.setTextOverrun(OverrunStyle.CENTER_ELLIPSIS);
        frame.setId("score-frame");
        getChildren().addAll(walk, segments, back, on, loop, aids, Parts.space(), label);
        setMinWidth(0);
        widthProperty().addListener((o, was, is) -> fit());
        setRate(1);
    }

    void walkOrStand() {
        if (player.isWalking()) {
            player.stand();
        } else {
            player.walk();
        }
        refresh();
    }

    /** Walks backwards, or stands. */
    void backwards() {
        backwards = !backwards;
        setRate(Math.abs(player.rate()));
        if (!player.isWalking()) {
            player.walk();
        }
        refresh();
    }

    void forwards() {
        if (backwards) {
            backwards = false;
            setRate(Math.abs(player.rate()));
        }
    }

    void setRate(double rate) {
        player.setRate(backwards ? -rate : rate);
        rates.forEach((r, key) -> key.setSelected(r == rate));
        refresh();
    }

    /** One step slower (above 0) or faster (below 0). */
    void slower(int steps) {
        for (int i = 0; i < RATES.length; i++) {
            if (RATES[i] == Math.abs(player.rate())) {
                setRate(RATES[Math.max(0, Math.min(RATES.length - 1, i + steps))]);
                return;
            }
        }
    }

    void refresh() {
        walk.setText(Words.of(player.isWalking() ? "stand" : backwards ? "walk.back" : "walk"));
        loop.setSelected(player.loop().isPresent());
    }

    void where(String frameText, String ofText, String ownText) {
        frame.setText(frameText);
        of.setText(ofText);
        own.setText(ownText);
        long late = player.notShown();
        missed.setText(late == 0 ? "" : Words.of("frame.late", late));
        missed.setManaged(late > 0);
        missed.setVisible(late > 0);
        fit();
    }

    /**
     * Drops what is needed least, one thing after another, until the row fits: the two fast paces, a word of the loop key, the
     * caps of the keys (which leaves room for the fast paces again), the length of the recording, its file name. What every key does stays in words.
     */
    private void fit() {
        if (getWidth() <= 0) {
            return;
        }
        for (int tight = 0; tight <= TIGHTEST; tight++) {
            tighten(tight);
            if (needed() <= getWidth()) {
                return;
            }
        }
    }

    private void tighten(int tight) {
        setSpacing(tight > 2 ? 3 : tight > 0 ? 5 : 8);
        rates.forEach((rate, key) -> {
            key.setManaged(tight < 2 || tight == 4 || rate <= 1);
            key.setVisible(tight < 2 || tight == 4 || rate <= 1);
        });
        for (ButtonBase key : List.of(walk, back, on, loop, aids)) {
            key.setContentDisplay(tight < 4 ? ContentDisplay.RIGHT : ContentDisplay.TEXT_ONLY);
            key.setGraphicTextGap(tight > 2 ? 3 : tight > 0 ? 5 : 8);
        }
        loop.setText(Words.of(tight < 3 ? "loop" : "loop.short"));
        of.setManaged(tight < 5);
        of.setVisible(tight < 5);
        own.setManaged(tight < 6);
        own.setVisible(tight < 6);
    }

    /** Width at which nothing is cut but the file name. */
    private double needed() {
        double keys = walk.prefWidth(-1)
                + segments.prefWidth(-1)
                + back.prefWidth(-1)
                + on.prefWidth(-1)
                + loop.prefWidth(-1)
                + aids.prefWidth(-1)
                + 7 * getSpacing();
        double late = missed.isManaged() ? missed.prefWidth(-1) + 4 : 0;
        double where = late + frame.prefWidth(-1) + (of.isManaged() ? 4 + of.prefWidth(-1) : 0);
        return keys + Math.max(where, own.isManaged() ? LEAST_OF_NAME : 0) + snappedLeftInset() + snappedRightInset();
    }
}
