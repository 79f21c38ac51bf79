/** The native side of reading: demuxer, decoder, seeking, colour. Only the packages that open, index and decode use it. */
@NullMarked
package levelback.clips.decode.internal;

import org.jspecify.annotations.NullMarked;
