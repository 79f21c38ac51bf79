package levelback.clips.decode;

/**
 * What the brightness and colour numbers of a picture mean, in the code points of ITU-T H.273 (which FFmpeg uses).
 *
 * @param matrix how they are made from red, green and blue; never unspecified
 * @param primaries which red, green and blue; 2 where the stream does not say
 * @param transfer how light becomes a number; 2 where the stream does not say
 */
public record FrameColour(int matrix, int primaries, int transfer) {}
