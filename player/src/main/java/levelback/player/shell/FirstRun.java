package levelback.player.shell;

import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.scene.shape.Circle;
import javafx.scene.shape.Line;
import javafx.scene.shape.Rectangle;
import javafx.scene.shape.SVGPath;
import javafx.scene.text.Text;
import levelback.player.theme.Keys;
import levelback.player.theme.Style;

/** What a book without recordings shows: three things to do, the demo herd, and how to film. */
final class FirstRun extends HBox {

    private static final double DRAWING_WIDE = 560;
    private static final double DRAWING_HIGH = 330;

    /** What its keys do. */
    interface Actions {
        void nameHerd();

        void importCows();

        void addRecordings();

        void openDemo();
    }

    /** @param demo whether the demo herd can be drawn from here */
    FirstRun(Situation now, boolean demo, Actions actions) {
        super(48);
        getStyleClass().addAll(Style.SHEET, "lb-first-run");
        setAlignment(Pos.TOP_CENTER);
        VBox steps = new VBox();
        steps.setPrefWidth(660);
        steps.setMinWidth(560);
        Label head = new Label(Words.of("first.page"));
        head.getStyleClass().add(Style.PAGE_HEAD);
        Label lead = new Label(Words.of("first.lead"));
        lead.getStyleClass().addAll(Style.SECOND, "lb-first-lead");
        lead.setWrapText(true);
        steps.getChildren().addAll(head, lead);
        boolean named = now.herd().isPresent();
        boolean cows = now.cows() > 0;
        String herdKey = now.herd()
                .map(herd -> herd.name()
                        + (herd.cowsInMilk().isPresent()
                                ? ", " + herd.cowsInMilk().getAsInt()
                                : ""))
                .orElseGet(() -> Words.of("first.herd.key"));
        step(steps, 1, "herd", named, key(herdKey, "", !named, "first-herd", actions::nameHerd));
        String cowsKey = cows ? Words.of("first.cows.done", now.cows()) : Words.of("first.cows.key");
        Button importCows = key(cowsKey, "Ctrl I", false, "first-cows", actions::importCows);
        importCows.setDisable(!named);
        step(steps, 2, "cows", cows, importCows);
        Button add = key(Words.of("first.recordings.key"), "Ctrl O", named, "first-recordings", actions::addRecordings);
        add.setDisable(!named);
        step(steps, 3, "recordings", now.anyRecording(), add);
        if (demo) {
            Hyperlink link = new Hyperlink(Words.of("first.demo.key"));
            link.setId("first-demo");
            link.setOnAction(e -> actions.openDemo());
            HBox row = new HBox(4, new Label(Words.of("first.demo")), link, new Label(Words.of("first.demo.how")));
            row.getStyleClass().add("lb-first-demo");
            row.setAlignment(Pos.BASELINE_LEFT);
            steps.getChildren().add(row);
        }
        VBox film = new VBox(12, drawing(), filmWords());
        film.setMaxWidth(DRAWING_WIDE);
        film.setMinWidth(DRAWING_WIDE);
        getChildren().addAll(steps, film);
    }

    private static Button key(String text, String cap, boolean next, String id, Runnable action) {
        Button key = next ? Keys.main(text, cap) : Keys.button(text, cap);
        key.setId(id);
        key.setOnAction(e -> action.run());
        key.setMinHeight(42);
        return key;
    }

    private static void step(VBox into, int number, String name, boolean done, Button key) {
        Circle round = new Circle(20);
        round.getStyleClass().add(done ? "lb-step-done" : "lb-step");
        Node mark;
        if (done) {
            SVGPath tick = new SVGPath();
            tick.setContent("M0 5 L5 10 L14 0");
            tick.getStyleClass().add("lb-step-tick");
            mark = tick;
        } else {
            Label digit = new Label(String.valueOf(number));
            digit.getStyleClass().add(Style.COW_PAGE);
            mark = digit;
        }
        StackPane sign = new StackPane(round, mark);
        sign.setMinWidth(40);
        Label head = new Label(Words.of("first." + name));
        head.getStyleClass().add(Style.COW);
        Label how = new Label(Words.of("first." + name + ".how"));
        how.setWrapText(true);
        how.setMinHeight(Region.USE_PREF_SIZE);
        how.getStyleClass().add(Style.SECOND);
        VBox words = new VBox(2, head, how);
        words.setAlignment(Pos.CENTER_LEFT);
        HBox.setHgrow(words, Priority.ALWAYS);
        HBox row = new HBox(16, sign, words, key);
        row.setAlignment(Pos.CENTER_LEFT);
        row.getStyleClass().add("lb-first-step");
        into.getChildren().add(row);
    }

    private static Node filmWords() {
        Text strong = new Text(Words.of("first.film") + " ");
        strong.getStyleClass().addAll("lb-ink-text", "lb-bold");
        Text rest = new Text(Words.of("first.film.how"));
        rest.getStyleClass().add("lb-ink2-text");
        return new javafx.scene.text.TextFlow(strong, rest);
    }

    /** The lane from above: two rails, floor marks, the cow between them, the camera square to it. */
    private static Node drawing() {
        Pane pane = new Pane();
        pane.getStyleClass().add("lb-film");
        pane.setMinSize(DRAWING_WIDE, DRAWING_HIGH);
        pane.setPrefSize(DRAWING_WIDE, DRAWING_HIGH);
        pane.setMaxSize(DRAWING_WIDE, DRAWING_HIGH);
        double middle = DRAWING_WIDE / 2;
        double camera = 284;
        // What the camera sees reaches past the cow at both ends.
        pane.getChildren()
                .addAll(line(middle, camera, 96, 34, "lb-film-sight"), line(middle, camera, 464, 34, "lb-film-sight"));
        pane.getChildren().addAll(line(20, 34, 540, 34, "lb-film-rail"), line(20, 116, 540, 116, "lb-film-rail"));
        for (int mark = 0; mark < 20; mark++) {
            pane.getChildren().add(box(20 + mark * 26, 120, 26, 8, mark % 2 == 0 ? "lb-film-solid" : "lb-film-open"));
        }
        // Her outline from above, walking right: rump, barrel, shoulder, neck, head with ears.
        SVGPath cow = new SVGPath();
        cow.setContent("M186 75 Q186 58 204 58 Q236 50 268 54 Q292 58 306 62 L326 66 L330 58 L336 66 Q350 68 358 75"
                + " Q350 82 336 84 L330 92 L326 84 L306 88 Q292 92 268 96 Q236 100 204 92 Q186 92 186 75 Z");
        cow.getStyleClass().add("lb-film-cow");
        pane.getChildren().addAll(line(172, 80, 186, 75, "lb-film-line"), cow);
        // Which way she goes.
        pane.getChildren()
                .addAll(
                        line(376, 75, 424, 75, "lb-film-line"),
                        line(424, 75, 414, 69, "lb-film-line"),
                        line(424, 75, 414, 81, "lb-film-line"));
        pane.getChildren()
                .addAll(
                        box(middle - 13, camera, 26, 24, "lb-film-solid"),
                        box(middle - 5, camera - 9, 10, 10, "lb-film-solid"),
                        text(middle + 24, camera + 10, Words.of("first.film.camera")),
                        text(middle + 24, camera + 26, Words.of("first.film.height")));
        pane.getChildren()
                .addAll(
                        line(112, 75, 112, camera, "lb-film-line"),
                        line(106, 75, 118, 75, "lb-film-line"),
                        line(106, camera, 118, camera, "lb-film-line"),
                        text(48, 206, Words.of("first.film.distance")),
                        text(424, 148, Words.of("first.film.lane")));
        return pane;
    }

    private static Line line(double x1, double y1, double x2, double y2, String style) {
        Line line = new Line(x1, y1, x2, y2);
        line.getStyleClass().add(style);
        return line;
    }

    private static Rectangle box(double x, double y, double wide, double high, String style) {
        Rectangle box = new Rectangle(x, y, wide, high);
        box.getStyleClass().add(style);
        return box;
    }

    private static Text text(double x, double y, String words) {
        Text text = new Text(x, y, words);
        text.getStyleClass().addAll("lb-ink2-text", Style.SMALL);
        return text;
    }
}
