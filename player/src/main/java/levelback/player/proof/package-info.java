/** The Proof page. */
@NullMarked
package levelback.player.proof;

import org.jspecify.annotations.NullMarked;
