/** Simulations that hold intervals against what they promise, run by hand. */
@NullMarked
package levelback.scoring.bench;

import org.jspecify.annotations.NullMarked;
