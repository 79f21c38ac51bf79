/** Did the scores find the lesions: counts, rates, correction for the cows never lifted. */
@NullMarked
package levelback.scoring.proof;

import org.jspecify.annotations.NullMarked;
