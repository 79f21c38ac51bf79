package levelback.player.trim;

import javafx.geometry.Insets;
import javafx.scene.Node;
import javafx.scene.layout.Region;

/** Stacks rows and shows as many as fit: a short window shows fewer rows, never half a row. */
final class FitBox extends Region {

    private final int rowsAtLeast;

    /** @param rowsAtLeast rows that are shown even where everything is short of room */
    FitBox(int rowsAtLeast) {
        this.rowsAtLeast = rowsAtLeast;
    }

    @Override
    public javafx.geometry.Orientation getContentBias() {
        return javafx.geometry.Orientation.HORIZONTAL;
    }

    void setRows(java.util.List<? extends Node> rows) {
        getChildren().setAll(rows);
    }

    private static double high(Node node, double width) {
        return Math.max(node.minHeight(width), node.prefHeight(width));
    }

    @Override
    protected double computePrefHeight(double width) {
        return getChildren().stream().mapToDouble(n -> high(n, width)).sum();
    }

    @Override
    protected double computePrefWidth(double height) {
        return getChildren().stream().mapToDouble(n -> n.prefWidth(-1)).max().orElse(0);
    }

    @Override
    protected double computeMinHeight(double width) {
        return getChildren().stream()
                .limit(rowsAtLeast)
                .mapToDouble(n -> high(n, width))
                .sum();
    }

    @Override
    protected void layoutChildren() {
        Insets in = getInsets();
        double width = getWidth() - in.getLeft() - in.getRight();
        double y = in.getTop();
        boolean full = false;
        for (Node node : getChildren()) {
            double high = high(node, width);
            full = full || y + high > getHeight() + .5;
            node.setVisible(!full);
            if (!full) {
                node.resizeRelocate(in.getLeft(), y, width, high);
                y += high;
            }
        }
    }
}
