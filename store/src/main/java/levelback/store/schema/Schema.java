package levelback.store.schema;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * The numbered scripts that make a book or bring an older one up, forward only. Script number <i>k</i> takes a book from
 * schema <i>k</i>−1 to schema <i>k</i>; a script that has been released is never edited.
 *
 * @param scripts SQL of schema 1, 2, and so on
 */
public record Schema(List<String> scripts) {

    /** SQLite's {@code application_id} of a book: {@code LVLB}. */
    public static final int APPLICATION_ID = 0x4C564C42;

    private static final int NEWEST = 1;

    public Schema {
        scripts = List.copyOf(scripts);
    }

    /** The scripts of this build. */
    public static Schema ofThisBuild() {
        List<String> scripts = new ArrayList<>();
        for (int number = 1; number <= NEWEST; number++) {
            scripts.add(read("%03d.sql".formatted(number)));
        }
        return new Schema(scripts);
    }

    /** Number of the schema that these scripts lead to. */
    public int version() {
        return scripts.size();
    }

    private static String read(String name) {
        try (InputStream in = Schema.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("schema script " + name + " is not in this build");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
