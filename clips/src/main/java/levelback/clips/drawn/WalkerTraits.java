package levelback.clips.drawn;

import java.util.Objects;

/**
 * What stays with a drawn cow from one visit to the next.
 *
 * @param cowNumber her management number, as text
 * @param sizeFactor her size against a mature cow with withers at 1.455 m, 0.85 to 1.15
 * @param strideFactor her own stride against the herd's, about 1: stride length goes with its power 0.6, stride time
 *     with its power -0.4
 * @param darkShare dark share of her coat, 0.05 to 0.95
 * @param star whether she has a white blaze on her face
 * @param coatSeed seed of her coat
 */
public record WalkerTraits(
        String cowNumber, double sizeFactor, double strideFactor, double darkShare, boolean star, long coatSeed) {

    /** @throws IllegalArgumentException if a factor is outside its range */
    public WalkerTraits {
        Objects.requireNonNull(cowNumber, "cowNumber");
        if (!(sizeFactor >= 0.85 && sizeFactor <= 1.15)) {
            throw new IllegalArgumentException("sizeFactor must be 0.85 to 1.15: " + sizeFactor);
        }
        if (!(strideFactor >= 0.6 && strideFactor <= 1.6)) {
            throw new IllegalArgumentException("strideFactor must be 0.6 to 1.6: " + strideFactor);
        }
        if (!(darkShare >= 0.05 && darkShare <= 0.95)) {
            throw new IllegalArgumentException("darkShare must be 0.05 to 0.95: " + darkShare);
        }
    }
}
