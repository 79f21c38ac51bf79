/** Recordings, passes and gate reads. */
@NullMarked
package levelback.store.lane;

import org.jspecify.annotations.NullMarked;
