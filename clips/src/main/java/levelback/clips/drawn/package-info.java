/** The drawn demo herd: a walking cow from a gait model, with exact truth beside the film. */
@NullMarked
package levelback.clips.drawn;

import org.jspecify.annotations.NullMarked;
