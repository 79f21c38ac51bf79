/** The book: one SQLite file that holds a practice's herds, its one writer, its changes and undo. */
@NullMarked
package levelback.store.book;

import org.jspecify.annotations.NullMarked;
