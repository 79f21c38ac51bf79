/**
 * What leaves the book: one class for each kind of file, and the step that writes them. No picture is opened and nothing
 * is sent anywhere.
 */
@NullMarked
package levelback.player.work.export;

import org.jspecify.annotations.NullMarked;
