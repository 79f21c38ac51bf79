/** Everything that crosses the border of the book: tables in and out. */
@NullMarked
package levelback.store.exchange;

import org.jspecify.annotations.NullMarked;
