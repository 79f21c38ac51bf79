package levelback.player.shell;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import javafx.scene.control.Button;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.scene.shape.SVGPath;
import levelback.player.desk.PageId;
import levelback.player.theme.KeyCap;

/**
 * The top of the desk: herd block, eight places for gates between two rails, find a cow. A gate keeps its place whether its
 * neighbours are built or not.
 */
final class Race extends Region {

    static final double HIGH = 58;
    private static final double NARROW_BELOW = 1360;

    private final Button herd = new Button();
    private final Label herdName = new Label();
    private final Label visitLine = new Label();
    private final TextField find = new TextField();
    private final KeyCap findKey = new KeyCap("Ctrl F");
    private final Map<PageId, Gate> gates = new EnumMap<>(PageId.class);
    private final Region upper = new Region();
    private final Region lower = new Region();
    private final List<Region> posts = new ArrayList<>();

    /** @param built pages that are drawn */
    Race(Set<PageId> built, Consumer<PageId> go, Runnable openHerdMenu, Consumer<String> findCow) {
        getStyleClass().add("lb-race");
        setMinHeight(HIGH);
        setPrefHeight(HIGH);
        setMaxHeight(HIGH);
        herd.getStyleClass().add("lb-herd-block");
        herd.setId("herd-block");
        herdName.getStyleClass().add("lb-herd-name");
        visitLine.getStyleClass().add("lb-gate-line");
        SVGPath down = new SVGPath();
        down.setContent("M0 0 H8 L4 6 Z");
        down.getStyleClass().add("lb-menu-mark");
        VBox words = new VBox(herdName, visitLine);
        HBox block = new HBox(2, words, down);
        HBox.setHgrow(words, Priority.ALWAYS);
        words.setMaxWidth(Double.MAX_VALUE);
        words.setMinWidth(0);
        words.setAlignment(javafx.geometry.Pos.CENTER_LEFT);
        block.setMinHeight(HIGH);
        block.setAlignment(javafx.geometry.Pos.CENTER_LEFT);
        herd.setGraphic(block);
        herd.setContentDisplay(ContentDisplay.GRAPHIC_ONLY);
        herd.setOnAction(e -> openHerdMenu.run());
        block.prefWidthProperty().bind(herd.widthProperty().subtract(26));
        upper.getStyleClass().add("lb-rail-upper");
        lower.getStyleClass().add("lb-rail-lower");
        getChildren().addAll(upper, lower, herd);
        for (int i = 0; i <= PageId.values().length * 2 + 1; i++) {
            Region post = new Region();
            post.getStyleClass().add("lb-post");
            posts.add(post);
        }
        getChildren().addAll(posts);
        for (PageId page : PageId.values()) {
            if (built.contains(page)) {
                Gate gate = new Gate(page, () -> go.accept(page));
                gates.put(page, gate);
                getChildren().add(gate);
            }
        }
        find.setPromptText(Words.of("find"));
        find.setId("find-cow");
        find.setOnAction(e -> findCow.accept(find.getText().strip()));
        findKey.visibleProperty()
                .bind(find.textProperty().isEmpty().and(find.widthProperty().greaterThan(120)));
        getChildren().addAll(find, findKey);
        getChildren().forEach(child -> child.setManaged(false));
        herd("", "");
    }

    void herd(String name, String visit) {
        herdName.setText(name);
        visitLine.setText(visit);
        herd.setAccessibleText(name + ", " + visit);
    }

    Button herdBlock() {
        return herd;
    }

    TextField findField() {
        return find;
    }

    void here(PageId page) {
        gates.forEach((id, gate) -> gate.here(id == page));
    }

    void count(PageId page, String line, double fractionDone) {
        Gate gate = gates.get(page);
        if (gate != null) {
            gate.count(line, fractionDone);
        }
    }

    Map<PageId, Gate> gates() {
        return gates;
    }

    /** Width of the herd block at a width of the desk. */
    static double herdWide(double wide) {
        return wide < NARROW_BELOW ? 186 : 222;
    }

    private static double findWide(double wide) {
        return wide < NARROW_BELOW ? 112 : 150;
    }

    /** Left edge of a gate's place; the place of {@code REVIEW} ends where the next would begin. */
    static double placeLeft(int place, double wide) {
        double herdWide = herdWide(wide);
        double forGates = wide - herdWide - findWide(wide);
        return Math.rint(herdWide + forGates * place / PageId.values().length);
    }

    @Override
    protected void layoutChildren() {
        double wide = getWidth();
        double high = getHeight();
        int places = PageId.values().length;
        double first = placeLeft(0, wide);
        double last = placeLeft(places, wide);
        herd.resizeRelocate(0, 0, first - 1, high);
        upper.resizeRelocate(first, 3, last - first, 2);
        lower.resizeRelocate(first, high - 5, last - first, 4);
        for (int i = 0; i <= places; i++) {
            double x = placeLeft(i, wide) - 1;
            posts.get(2 * i).resizeRelocate(x, 0, 2, 8);
            posts.get(2 * i + 1).resizeRelocate(x, high - 8, 2, 8);
        }
        gates.forEach((page, gate) -> {
            double left = placeLeft(page.place() - 1, wide);
            gate.showKey(wide >= NARROW_BELOW);
            gate.resizeRelocate(left, 0, placeLeft(page.place(), wide) - left, high);
        });
        double findWide = findWide(wide) - 26;
        find.resizeRelocate(wide - findWide - 14, (high - 32) / 2, findWide, 32);
        double keyWide = Math.ceil(findKey.prefWidth(-1));
        findKey.resizeRelocate(wide - 14 - keyWide - 6, (high - 18) / 2, keyWide, 18);
    }
}
