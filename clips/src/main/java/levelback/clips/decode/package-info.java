/** Exact frames in any order, as pictures and as fingerprints. */
@NullMarked
package levelback.clips.decode;

import org.jspecify.annotations.NullMarked;
