/** The schema of the book and its forward-only migrations. */
@NullMarked
package levelback.store.schema;

import org.jspecify.annotations.NullMarked;
