/** Value types shared by the whole of Levelback: media time, legs, estimates. No statistics here. */
@NullMarked
package levelback.scoring.value;

import org.jspecify.annotations.NullMarked;
