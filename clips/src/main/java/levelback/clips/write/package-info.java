/** Pictures and clips written out: PNG stills, encoded films. */
@NullMarked
package levelback.clips.write;

import org.jspecify.annotations.NullMarked;
