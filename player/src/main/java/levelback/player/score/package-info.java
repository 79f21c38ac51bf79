/** The Score page. */
@NullMarked
package levelback.player.score;

import org.jspecify.annotations.NullMarked;
