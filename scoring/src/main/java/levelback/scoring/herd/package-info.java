/** Herd figures over visits. */
@NullMarked
package levelback.scoring.herd;

import org.jspecify.annotations.NullMarked;
