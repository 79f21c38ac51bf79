/** What every page is and what the desk lends it. */
@NullMarked
package levelback.player.desk;

import org.jspecify.annotations.NullMarked;
