package levelback.clips.drawn.herd;

/** A medicine note as somebody typed it; neutral words, no product, no dose, no days. */
public record HerdMedicine(
        String product,
        String givenBy,
        String milkWithheldUntil,
        String meatWithheldUntil,
        String batch,
        String givenAt,
        String doseAsGiven,
        String prescribedBy) {}
