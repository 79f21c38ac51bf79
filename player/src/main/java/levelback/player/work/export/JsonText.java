package levelback.player.work.export;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** One JSON document from maps, lists, texts, numbers and flags. */
final class JsonText {

    private JsonText() {}

    /** A map in the order given; a value that is empty text or an empty optional is left out, as no reader wants a null. */
    static Map<String, Object> map(Object... keysAndValues) {
        Map<String, Object> map = new LinkedHashMap<>();
        for (int i = 0; i < keysAndValues.length; i += 2) {
            Object value = keysAndValues[i + 1];
            if (!value.equals("")) {
                map.put(String.valueOf(keysAndValues[i]), value);
            }
        }
        return map;
    }

    static String of(Object document) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text).useDefaultPrettyPrinter()) {
            write(json, document);
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return text + "\n";
    }

    /** The same on one line. */
    static String line(Object document) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            write(json, document);
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return text.toString();
    }

    private static void write(JsonGenerator json, Object value) throws IOException {
        if (value instanceof Map<?, ?> map) {
            json.writeStartObject();
            for (Map.Entry<?, ?> entry : map.entrySet()) {
                json.writeFieldName(String.valueOf(entry.getKey()));
                write(json, entry.getValue());
            }
            json.writeEndObject();
        } else if (value instanceof List<?> list) {
            json.writeStartArray();
            for (Object element : list) {
                write(json, element);
            }
            json.writeEndArray();
        } else if (value instanceof Double number) {
            if (number == Math.rint(number) && Math.abs(number) < 1e15) {
                json.writeNumber(number.longValue());
            } else {
                json.writeNumber(number);
            }
        } else if (value instanceof Integer || value instanceof Long) {
            json.writeNumber(((Number) value).longValue());
        } else if (value instanceof Boolean flag) {
            json.writeBoolean(flag);
        } else {
            json.writeString(String.valueOf(value));
        }
    }
}
