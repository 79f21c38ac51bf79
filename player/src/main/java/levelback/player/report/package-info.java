/** The report, as HTML and PDF. */
@NullMarked
package levelback.player.report;

import org.jspecify.annotations.NullMarked;
