/** What is drawn over the pictures of a clip that is handed on. */
@NullMarked
package levelback.player.film;

import org.jspecify.annotations.NullMarked;
