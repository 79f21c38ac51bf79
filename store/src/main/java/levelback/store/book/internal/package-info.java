/** How the book is kept: connections, the journal behind undo and history, and the shelves in SQL. Private to the store. */
@NullMarked
package levelback.store.book.internal;

import org.jspecify.annotations.NullMarked;
