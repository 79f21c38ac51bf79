/** Opening a local recording: white-lists, facts, and what is wrong with it. */
@NullMarked
package levelback.clips.open;

import org.jspecify.annotations.NullMarked;
