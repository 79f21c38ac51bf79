/** Claws, zones, lesions and foot findings, in the trade's words and the ICAR claw-health codes. */
@NullMarked
package levelback.scoring.foot;

import org.jspecify.annotations.NullMarked;
