/** The command line. */
@NullMarked
package levelback.player.cli;

import org.jspecify.annotations.NullMarked;
