package levelback.player.theme;

import java.util.Optional;
import javafx.scene.layout.Region;
import javafx.scene.shape.Circle;
import javafx.scene.shape.Line;
import javafx.scene.shape.Rectangle;
import levelback.scoring.value.Estimate;
import levelback.scoring.value.Interval;

/** An estimate on its axis: thin rule, bar for the interval, dot for the value; a green-washed box is her own range. */
public final class IntervalBar extends Region {

    private final double lowAxis;
    private final double highAxis;
    private final Line rule = new Line();
    private final Rectangle range = new Rectangle();
    private final Line bar = new Line();
    private final Circle dot = new Circle(5);
    private final Line reference = new Line();

    private double value = Double.NaN;
    private Optional<Interval> interval = Optional.empty();
    private Optional<Interval> ownRange = Optional.empty();
    private double referenceAt = Double.NaN;

    /**
     * @param lowAxis value at the left end
     * @param highAxis value at the right end
     */
    public IntervalBar(double lowAxis, double highAxis) {
        if (!(lowAxis < highAxis)) {
            throw new IllegalArgumentException("axis must rise: " + lowAxis + " to " + highAxis);
        }
        this.lowAxis = lowAxis;
        this.highAxis = highAxis;
        getStyleClass().add("lb-interval");
        rule.getStyleClass().add("lb-interval-rule");
        range.getStyleClass().add("lb-interval-range");
        bar.getStyleClass().add("lb-interval-bar");
        dot.getStyleClass().add("lb-interval-dot");
        reference.getStyleClass().add("lb-interval-reference");
        getChildren().addAll(rule, range, reference, bar, dot);
        getChildren().forEach(child -> child.setManaged(false));
        setMinSize(40, 18);
        setPrefSize(120, 18);
        setMaxHeight(18);
    }

    /** Shows an estimate; one without a value clears the bar. */
    public void show(Estimate estimate) {
        value = estimate.value().orElse(Double.NaN);
        interval = estimate.interval();
        supported(true);
        setAccessibleText(
                estimate.value().isEmpty()
                        ? estimate.why().orElse("")
                        : value
                                + interval.map(i -> ", " + i.low() + " to " + i.high())
                                        .orElse("") + ", n " + estimate.n());
        requestLayout();
    }

    /** Draws what the data do not support: hollow dot, dashed bar. */
    public void supported(boolean supported) {
        pseudoClassStateChanged(javafx.css.PseudoClass.getPseudoClass("unsupported"), !supported);
    }

    /** Shows her own range behind the bar. */
    public void ownRange(Interval own) {
        ownRange = Optional.of(own);
        requestLayout();
    }

    /** Shows a dotted line at a value to compare with. */
    public void reference(double at) {
        referenceAt = at;
        requestLayout();
    }

    @Override
    protected void layoutChildren() {
        double middle = Math.rint(getHeight() / 2) + 0.5;
        line(rule, 0, middle, getWidth(), middle);
        range.setVisible(ownRange.isPresent());
        ownRange.ifPresent(own -> {
            range.setX(x(own.low()));
            range.setWidth(Math.max(1, x(own.high()) - x(own.low())));
            range.setY(middle - 8);
            range.setHeight(16);
        });
        reference.setVisible(Double.isFinite(referenceAt));
        if (Double.isFinite(referenceAt)) {
            line(reference, x(referenceAt), middle - 7, x(referenceAt), middle + 7);
        }
        dot.setVisible(Double.isFinite(value));
        bar.setVisible(Double.isFinite(value) && interval.isPresent());
        if (Double.isFinite(value)) {
            dot.setCenterX(x(value));
            dot.setCenterY(middle);
        }
        interval.ifPresent(i -> line(bar, x(i.low()), middle, x(i.high()), middle));
    }

    private double x(double at) {
        double fraction = (at - lowAxis) / (highAxis - lowAxis);
        return Math.max(0, Math.min(1, fraction)) * getWidth();
    }

    private static void line(Line line, double x1, double y1, double x2, double y2) {
        line.setStartX(x1);
        line.setStartY(y1);
        line.setEndX(x2);
        line.setEndY(y2);
    }
}
