/** The picture with its strip. */
@NullMarked
package levelback.player.stage;

import org.jspecify.annotations.NullMarked;
