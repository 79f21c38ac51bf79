/**
 * Gait measures from footfalls and marks: strides, steps, tracking-up, support, phase, back arch, head bob, each with
 * its uncertainty. Times in seconds, lengths in metres, x along the way she walks, y up.
 */
@NullMarked
package levelback.scoring.gait;

import org.jspecify.annotations.NullMarked;
