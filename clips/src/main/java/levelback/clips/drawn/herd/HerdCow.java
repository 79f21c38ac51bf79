package levelback.clips.drawn.herd;

import java.time.LocalDate;

/**
 * An invented cow.
 *
 * @param number management number, text, zeros kept
 * @param name her name
 * @param tag 15-digit transponder number under the ISO 3166 test code 999
 * @param birth day of birth
 * @param calving last calving
 * @param parity how often she has calved
 * @param baseSeverity where she walks with four sound feet, on the 1 to 5 line
 * @param strideFactor her own stride against the herd's, about 1 (ρ of the gait model)
 * @param sizeFactor her size against a mature cow, 0.92 to 1.06 (k of the gait model)
 * @param darkShare dark share of her coat, 0.25 to 0.75
 * @param star whether she has a white star on her face
 * @param coatSeed seed of her coat
 */
public record HerdCow(
        String number,
        String name,
        String tag,
        LocalDate birth,
        LocalDate calving,
        int parity,
        double baseSeverity,
        double strideFactor,
        double sizeFactor,
        double darkShare,
        boolean star,
        long coatSeed) {}
