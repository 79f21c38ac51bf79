/** The shell of the desk: window, race, sill, keys, first run, pictures of every page. */
@NullMarked
package levelback.player.shell;

import org.jspecify.annotations.NullMarked;
