/** The steps of the job, free of the screen: the desk, the commands and the demo call the same ones. */
@NullMarked
package levelback.player.work;

import org.jspecify.annotations.NullMarked;
