/** Published gait scales, the signs seen in how a cow walks, and their lame cuts. */
@NullMarked
package levelback.scoring.scale;

import org.jspecify.annotations.NullMarked;
