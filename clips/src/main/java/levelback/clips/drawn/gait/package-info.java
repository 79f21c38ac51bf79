/** How a cow walks, from sound to lame: phases, prints, limbs, trunk and head. Pure arithmetic in metres and seconds. */
@NullMarked
package levelback.clips.drawn.gait;

import org.jspecify.annotations.NullMarked;
