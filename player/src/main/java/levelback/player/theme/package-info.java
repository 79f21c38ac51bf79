/** Colours, type and the small parts every page draws with. */
@NullMarked
package levelback.player.theme;

import org.jspecify.annotations.NullMarked;
