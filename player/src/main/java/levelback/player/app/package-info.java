/** The start of the program and the shell of the desk. */
@NullMarked
package levelback.player.app;

import org.jspecify.annotations.NullMarked;
