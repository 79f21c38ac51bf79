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
 * moves it, two clicks show the whole again. A {@link Tone} changes what is on the screen, never the pixels.
 */
public final class PictureView extends Region {

    private static final double LARGEST = 12;
    private static final double FEET = 2;
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
    private Tone tone = Tone.AS_FILMED;
    private int[] shownAs = {};
    private @Nullable Picture held;
    private Runnable onShown = () -> {};

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
        clear();
        whole();
    }

    /** Shows a picture; it is held until the next one comes. */
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
        Picture before = held;
        held = picture.hold();
        if (before != null) {
            before.release();
        }
        paint(picture, pixels);
        onShown.run();
    }

    /** Called each time a picture has come on the screen. */
    public void setOnShown(Runnable listener) {
        onShown = listener;
    }

    private void paint(Picture picture, PixelBuffer<ByteBuffer> onto) {
        onto.updateBuffer(buffer -> {
            ByteBuffer screen = buffer.getBuffer().clear();
            if (tone.equals(Tone.AS_FILMED)) {
                screen.put(picture.bgra());
            } else {
                toned(picture.bgra(), screen, shownAs);
            }
            return null;
        });
    }

    /** Four bytes at a time: the byte order does not matter, as each colour goes to its own place. */
    private static void toned(ByteBuffer from, ByteBuffer to, int[] table) {
        java.nio.IntBuffer in = from.order(java.nio.ByteOrder.LITTLE_ENDIAN).asIntBuffer();
        java.nio.IntBuffer out =
                to.duplicate().order(java.nio.ByteOrder.LITTLE_ENDIAN).asIntBuffer();
        int count = in.remaining();
        for (int i = 0; i < count; i++) {
            int bgra = in.get(i);
            out.put(
                    i,
                    (bgra & 0xff000000)
                            | (table[(bgra >> 16) & 0xff] << 16)
                            | (table[(bgra >> 8) & 0xff] << 8)
                            | table[bgra & 0xff]);
        }
    }

    /** How the picture is toned on the screen. */
    public Tone tone() {
        return tone;
    }

    /** Shows this and all later pictures lighter or harder; the decoded picture stays as it is. */
    public void setTone(Tone newTone) {
        tone = newTone;
        shownAs = newTone.table();
        if (held != null && pixels != null) {
            paint(held, pixels);
        }
    }

    /** Shows nothing. */
    void clear() {
        pixels = null;
        image.setImage(null);
        if (held != null) {
            held.release();
            held = null;
        }
    }

    /** The bytes on the screen, BGRA, toned; empty before the first picture. */
    public Optional<ByteBuffer> pixels() {
        return Optional.ofNullable(pixels)
                .map(p -> p.getBuffer().asReadOnlyBuffer().rewind());
    }

    /** The picture behind the screen, BGRA as decoded; empty before the first picture. */
    public Optional<ByteBuffer> decoded() {
        return Optional.ofNullable(held).map(Picture::bgra);
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

    /** How many times larger than to fit. */
    public double magnified() {
        return magnified;
    }

    /** Makes the picture larger or smaller about the middle. */
    public void magnifyBy(double times) {
        magnify(magnified * times, getWidth() / 2, getHeight() / 2);
    }

    /** Shows the lower part of the picture, where the feet are, twice as large; again, the whole. */
    public void feet() {
        if (magnified > 1) {
            whole();
            return;
        }
        magnified = FEET;
        shiftX = 0;
        shiftY = -LARGEST * (widthPx + heightPx); // held to the lower edge by the layout
        requestLayout();
    }

    /** Moves the view over the enlarged picture, in shares of its own size: 1 right is one whole width to the right. */
    public void look(double right, double down) {
        shiftX -= right * getWidth();
        shiftY -= down * getHeight();
        requestLayout();
    }

    /** As far as a picture can be moved before its edge comes into view; nowhere if it is smaller than the view. */
    private static double within(double shift, double size, double view) {
        double most = Math.max(0, (size - view) / 2);
        return Math.max(-most, Math.min(most, shift));
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
        shiftX = within(shiftX, fit * uprightWidth, getWidth());
        shiftY = within(shiftY, fit * uprightHeight, getHeight());
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
