/** A file that was never seen before is first looked at by another process, so that what it does to a decoder it does there. */
@NullMarked
package levelback.clips.look;

import org.jspecify.annotations.NullMarked;
