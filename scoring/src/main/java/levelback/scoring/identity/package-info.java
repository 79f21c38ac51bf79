/** Which cow each pass is: passes before the camera aligned with the reads of a gate. */
@NullMarked
package levelback.scoring.identity;

import org.jspecify.annotations.NullMarked;
