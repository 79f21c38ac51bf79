package levelback.store.exchange;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * The text of a table, whatever it was written by.
 *
 * @param name how the table is called in sentences: the file as given, or {@code standard input}
 * @param text its text, byte order mark taken off
 */
public record TableSource(String name, String text) {

    private static final Charset WINDOWS_1252 = Charset.forName("windows-1252");

    /**
     * Reads a file, or standard input where the name is {@code -}.
     *
     * @throws BadTable if it is not there, is a folder, or is not text
     */
    public static TableSource of(String nameOrDash, InputStream standardInput) {
        if (nameOrDash.equals("-")) {
            try {
                return of("standard input", standardInput.readAllBytes());
            } catch (IOException failed) {
                throw new BadTable("standard input", 0, "it broke off while being read; run the command again.");
            }
        }
        return of(Path.of(nameOrDash), nameOrDash);
    }

    /** Reads a file. */
    public static TableSource of(Path file) {
        return of(file, file.toString());
    }

    private static TableSource of(Path file, String name) {
        if (!Files.exists(file)) {
            throw new BadTable(name, 0, "there is no such file; check the name.");
        }
        if (Files.isDirectory(file)) {
            throw new BadTable(name, 0, "this is a folder; give the table in it.");
        }
        try {
            return of(name, Files.readAllBytes(file));
        } catch (IOException failed) {
            throw new BadTable(name, 0, "it cannot be read; check that you may read it.");
        } catch (OutOfMemoryError tooLong) {
            throw new BadTable(name, 0, "it is too large to be read as one table; cut it by year.");
        }
    }

    /** Text from bytes: UTF-8, with or without byte order mark, else Windows-1252. */
    static TableSource of(String name, byte[] bytes) {
        if (startsWith(bytes, 0xFF, 0xFE) || startsWith(bytes, 0xFE, 0xFF)) {
            throw new BadTable(name, 0, "it is written in UTF-16; save it as CSV in UTF-8.");
        }
        int from = startsWith(bytes, 0xEF, 0xBB, 0xBF) ? 3 : 0;
        ByteBuffer raw = ByteBuffer.wrap(bytes, from, bytes.length - from);
        String text;
        try {
            text = StandardCharsets.UTF_8
                    .newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .onUnmappableCharacter(CodingErrorAction.REPORT)
                    .decode(raw)
                    .toString();
        } catch (CharacterCodingException notUtf8) {
            text = new String(bytes, from, bytes.length - from, WINDOWS_1252);
        }
        if (text.indexOf('\0') >= 0 || text.startsWith("PK\u0003\u0004")) {
            throw new BadTable(name, 0, "it is not a text table; save it as CSV in UTF-8.");
        }
        return new TableSource(name, text);
    }

    private static boolean startsWith(byte[] bytes, int... first) {
        if (bytes.length < first.length) {
            return false;
        }
        for (int i = 0; i < first.length; i++) {
            if ((bytes[i] & 0xFF) != first[i]) {
                return false;
            }
        }
        return true;
    }
}
