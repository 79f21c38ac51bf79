/** What a drawn recording truly holds, from the gait model and never from the picture. */
@NullMarked
package levelback.clips.drawn.truth;

import org.jspecify.annotations.NullMarked;
