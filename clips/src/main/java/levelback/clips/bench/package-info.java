/** How fast this machine steps through a recording. */
@NullMarked
package levelback.clips.bench;

import org.jspecify.annotations.NullMarked;
