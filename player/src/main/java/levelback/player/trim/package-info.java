/** The Trim page. */
@NullMarked
package levelback.player.trim;

import org.jspecify.annotations.NullMarked;
