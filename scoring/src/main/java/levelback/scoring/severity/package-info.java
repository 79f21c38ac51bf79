/** How much harder one scorer is than the panel: in steps of the scale, and on the latent scale behind the levels. */
@NullMarked
package levelback.scoring.severity;

import org.jspecify.annotations.NullMarked;
