/**
 * Do scorers agree, with each other and with themselves? Agreement beyond chance, its uncertainty, and where it fails.
 *
 * <p>Start at {@link levelback.scoring.agreement.Ratings}, which holds the scores of a panel.
 */
@NullMarked
package levelback.scoring.agreement;

import org.jspecify.annotations.NullMarked;
