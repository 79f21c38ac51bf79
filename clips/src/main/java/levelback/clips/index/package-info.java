/** Which frame is which: one pass over the packets gives every frame its number, time and key. */
@NullMarked
package levelback.clips.index;

import org.jspecify.annotations.NullMarked;
