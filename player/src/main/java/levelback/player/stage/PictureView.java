package levelback.player.stage;

import java.nio.ByteBuffer;
import java.util.Optional;
import javafx.scene.AccessibleRole;
import javafx.scene.image.ImageView;
import javafx.scene.image.PixelBuffer;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.layout.Region;
import javafx.scene.shape.Rectangle;
import javafx.scene.transform.Rotate;
import javafx.scene.transform.Scale;
import javafx.scene.transform.Translate;
import org.jspecify.annotations.Nullable;

/**
 * A picture of a recording, upright and in its true shape, as large as the space allows, on a dark ground. The pixels stay
 * as they were decoded; turning and stretching is done on the screen. The wheel makes it larger about the pointer, a drag
 * moves it, two clicks show the whole again.
 */
public final class PictureView extends Region {

    private static final double LARGEST = 12;
    private static final double WHEEL_STEP = 1.0015;

    private final ImageView image = new ImageView();
    private final Translate toMiddle = new Translate();
    private final Scale zoom = new Scale(1, 1);
    private final Rotate turn = new Rotate();
    private final Scale stretch = new Scale();

    private @Nullable PixelBuffer<ByteBuffer> pixels;
    private int widthPx;
    private int heightPx;
    private int squareWidthPx;
    private int rotationDegrees;
    private double magnified = 1;
    private double shiftX;
    private double shiftY;
    private double dragX;
    private double dragY;

    public PictureView() {
        getStyleClass().add("picture-view");
        setStyle("-fx-background-color: -lb-well;");
        setAccessibleRole(AccessibleRole.IMAGE_VIEW);
        setMinSize(80, 60);
        Rectangle frame = new Rectangle();
        frame.widthProperty().bind(widthProperty());
        frame.heightProperty().bind(heightProperty());
        setClip(frame);
        image.setManaged(false);
        image.setSmooth(true);
        image.setMouseTransparent(true);
        // Read from the last: shape the pixel, turn upright, size, put in the middle.
        image.getTransforms().addAll(toMiddle, zoom, turn, stretch);
        getChildren().add(image);
        setOnScroll(e -> magnify(magnified * Math.pow(WHEEL_STEP, e.getDeltaY()), e.getX(), e.getY()));
        setOnMousePressed(e -> {
            dragX = e.getX();
            dragY = e.getY();
            requestFocus();
        });
        setOnMouseDragged(e -> {
            if (magnified > 1) {
                shiftX += e.getX() - dragX;
                shiftY += e.getY() - dragY;
                dragX = e.getX();
                dragY = e.getY();
                requestLayout();
            }
        });
        setOnMouseClicked(e -> {
            if (e.getClickCount() == 2) {
                whole();
            }
        });
    }

    /** Says what shape the next pictures have. */
    void shape(int width, int height, int squareWidth, int rotation) {
        widthPx = width;
        heightPx = height;
        squareWidthPx = squareWidth;
        rotationDegrees = rotation;
        pixels = null;
        image.setImage(null);
        whole();
    }

    /** Shows a picture; it is copied, so that it can be released at once. */
    void show(Picture picture) {
        if (pixels == null) {
            pixels = new PixelBuffer<>(
                    widthPx,
                    heightPx,
                    ByteBuffer.allocateDirect(4 * widthPx * heightPx),
                    PixelFormat.getByteBgraPreInstance());
            image.setImage(new WritableImage(pixels));
            requestLayout();
        }
        pixels.updateBuffer(buffer -> {
            buffer.getBuffer().clear().put(picture.bgra());
            return null;
        });
    }

    /** Shows nothing. */
    void clear() {
        pixels = null;
        image.setImage(null);
    }

    /** The bytes on the screen, BGRA as decoded; empty before the first picture. */
    public Optional<ByteBuffer> pixels() {
        return Optional.ofNullable(pixels)
                .map(p -> p.getBuffer().asReadOnlyBuffer().rewind());
    }

    /** Shows the whole picture again. */
    public void whole() {
        magnified = 1;
        shiftX = 0;
        shiftY = 0;
        requestLayout();
    }

    /** Makes the picture larger or smaller, leaving what lies under a point where it is. */
    public void magnify(double times, double aboutX, double aboutY) {
        double wanted = Math.max(1, Math.min(LARGEST, times));
        double change = wanted / magnified;
        double offX = aboutX - getWidth() / 2;
        double offY = aboutY - getHeight() / 2;
        shiftX = wanted == 1 ? 0 : offX - (offX - shiftX) * change;
        shiftY = wanted == 1 ? 0 : offY - (offY - shiftY) * change;
        magnified = wanted;
        requestLayout();
    }

    @Override
    protected void layoutChildren() {
        if (widthPx == 0 || getWidth() <= 0 || getHeight() <= 0) {
            return;
        }
        boolean lying = rotationDegrees % 180 != 0;
        double uprightWidth = lying ? heightPx : squareWidthPx;
        double uprightHeight = lying ? squareWidthPx : heightPx;
        double fit = Math.min(getWidth() / uprightWidth, getHeight() / uprightHeight) * magnified;
        toMiddle.setX(getWidth() / 2 + shiftX);
        toMiddle.setY(getHeight() / 2 + shiftY);
        zoom.setX(fit);
        zoom.setY(fit);
        turn.setAngle(rotationDegrees);
        stretch.setX((double) squareWidthPx / widthPx);
        image.setX(-widthPx / 2.0);
        image.setY(-heightPx / 2.0);
    }

    @Override
    protected double computePrefWidth(double height) {
        return 640;
    }

    @Override
    protected double computePrefHeight(double width) {
        return 360;
    }
}
