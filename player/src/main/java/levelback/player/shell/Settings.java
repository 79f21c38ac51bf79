package levelback.player.shell;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What a user has set on this machine, one value for each name, kept as {@code settings.json}. Immutable; blocking where
 * it says so.
 *
 * @param values by name; a name that this version does not know is kept
 */
record Settings(Map<String, String> values) {

    static final String THEME = "theme";
    static final String SCORER = "scorer";
    static final String BOOK = "book";
    static final String HERD = "herd";
    static final String SCREEN = "screenPxPerMm";

    private static final JsonFactory JSON = new JsonFactory();

    Settings {
        values = Map.copyOf(values);
    }

    static Settings none() {
        return new Settings(Map.of());
    }

    /** Reads the file; one that is not there or cannot be read counts as nothing set. Blocks. */
    static Settings load(Path file) {
        Map<String, String> values = new TreeMap<>();
        if (!Files.isRegularFile(file)) {
            return none();
        }
        try (JsonParser parser = JSON.createParser(Files.readAllBytes(file))) {
            if (parser.nextToken() != JsonToken.START_OBJECT) {
                return none();
            }
            while (parser.nextToken() == JsonToken.FIELD_NAME) {
                String name = parser.currentName();
                JsonToken value = parser.nextToken();
                if (value == null) {
                    break;
                }
                if (value.isScalarValue()) {
                    values.put(name, parser.getText());
                } else {
                    parser.skipChildren();
                }
            }
        } catch (IOException damaged) {
            // A desk that does not open because of its own settings would be worse than one in its first colours.
            return none();
        }
        return new Settings(values);
    }

    /** Writes the file whole or not at all. Blocks. */
    void save(Path file) throws IOException {
        Files.createDirectories(file.toAbsolutePath().getParent());
        Path beside = file.resolveSibling(file.getFileName() + ".new");
        try (Writer writer = Files.newBufferedWriter(beside, StandardCharsets.UTF_8);
                JsonGenerator json = JSON.createGenerator(writer).useDefaultPrettyPrinter()) {
            json.writeStartObject();
            for (Map.Entry<String, String> value : new TreeMap<>(values).entrySet()) {
                json.writeStringField(value.getKey(), value.getValue());
            }
            json.writeEndObject();
        }
        Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING);
    }

    Optional<String> get(String name) {
        return Optional.ofNullable(values.get(name));
    }

    Settings with(String name, String value) {
        Map<String, String> changed = new TreeMap<>(values);
        changed.put(name, value);
        return new Settings(changed);
    }

    boolean dark() {
        return "dark".equals(values.get(THEME));
    }
}
