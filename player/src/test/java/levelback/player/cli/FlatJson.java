package levelback.player.cli;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.Map;
import java.util.TreeMap;

/** A JSON document as one line a value: keys joined by dots, places of a list by a slash. */
final class FlatJson {

    private FlatJson() {}

    static Map<String, String> of(String json) throws IOException {
        Map<String, String> values = new TreeMap<>();
        try (JsonParser parser = new JsonFactory().createParser(json)) {
            parser.nextToken();
            walk(parser, "", values);
        }
        return values;
    }

    private static void walk(JsonParser parser, String at, Map<String, String> values) throws IOException {
        switch (parser.currentToken()) {
            case START_OBJECT -> {
                while (parser.nextToken() != JsonToken.END_OBJECT) {
                    String key = parser.currentName();
                    parser.nextToken();
                    walk(parser, at.isEmpty() ? key : at + "." + key, values);
                }
            }
            case START_ARRAY -> {
                for (int i = 0; parser.nextToken() != JsonToken.END_ARRAY; i++) {
                    walk(parser, at + "/" + i, values);
                }
            }
            default -> values.put(at, parser.getText());
        }
    }
}
