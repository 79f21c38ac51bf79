/** How the drawn walker and her lane are painted. */
@NullMarked
package levelback.clips.drawn.paint;

import org.jspecify.annotations.NullMarked;
