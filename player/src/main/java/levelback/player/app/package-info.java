/** The start of the program. */
@NullMarked
package levelback.player.app;

import org.jspecify.annotations.NullMarked;
