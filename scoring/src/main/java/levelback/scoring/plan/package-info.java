/** How much to score before scoring it. */
@NullMarked
package levelback.scoring.plan;

import org.jspecify.annotations.NullMarked;
