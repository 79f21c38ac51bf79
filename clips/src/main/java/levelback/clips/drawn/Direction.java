package levelback.clips.drawn;

/** Which way she walks past the camera. */
public enum Direction {
    /** From the left edge of the picture to the right; the camera sees her right side. */
    LEFT_TO_RIGHT("left-to-right", 1),
    /** From the right edge to the left; the camera sees her left side. */
    RIGHT_TO_LEFT("right-to-left", -1);

    private final String text;
    private final int sign;

    Direction(String text, int sign) {
        this.text = text;
        this.sign = sign;
    }

    /** How truth files write it. */
    public String text() {
        return text;
    }

    /** 1 towards the right of the picture, -1 towards the left. */
    public int sign() {
        return sign;
    }
}
