/**
 * The invented herd behind the drawn recordings: who she is, how lame on which day, what two scorers wrote, which feet
 * were lifted, and the truth that only the draughtsman knows. Pure arithmetic by seed: the same seed gives the same
 * herd on every machine.
 */
@NullMarked
package levelback.clips.drawn.herd;

import org.jspecify.annotations.NullMarked;
