/** What was found and done at the chute. */
@NullMarked
package levelback.store.trim;

import org.jspecify.annotations.NullMarked;
