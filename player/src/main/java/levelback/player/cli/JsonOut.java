package levelback.player.cli;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.util.Optional;
import java.util.OptionalDouble;
import levelback.scoring.value.Estimate;
import levelback.scoring.value.Interval;

/** Writes the JSON documents of the commands: numbers in full, what is missing as null with its reason. */
final class JsonOut {

    /** Writes the content of one document. */
    @FunctionalInterface
    interface Content {
        void write(JsonOut out) throws IOException;
    }

    private final JsonGenerator json;

    private JsonOut(JsonGenerator json) {
        this.json = json;
    }

    /** Writes one document that is an object, and a line break. */
    static void object(PrintWriter to, Content content) {
        try (JsonGenerator generator = new JsonFactory()
                .createGenerator(to)
                .disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET)
                .useDefaultPrettyPrinter()) {
            generator.writeStartObject();
            content.write(new JsonOut(generator));
            generator.writeEndObject();
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
        to.println();
        to.flush();
    }

    void text(String key, String value) throws IOException {
        json.writeStringField(key, value);
    }

    void flag(String key, boolean value) throws IOException {
        json.writeBooleanField(key, value);
    }

    void whole(String key, long value) throws IOException {
        json.writeNumberField(key, value);
    }

    /** A number in full; whole ones without a fraction. */
    void number(String key, double value) throws IOException {
        json.writeFieldName(key);
        number(value);
    }

    /** A number, or null where there is none. */
    void number(String key, OptionalDouble value) throws IOException {
        json.writeFieldName(key);
        if (value.isPresent()) {
            number(value.getAsDouble());
        } else {
            json.writeNull();
        }
    }

    void nothing(String key) throws IOException {
        json.writeNullField(key);
    }

    void wholes(String key, long... values) throws IOException {
        json.writeFieldName(key);
        json.writeArray(values, 0, values.length);
    }

    void texts(String key, Iterable<String> values) throws IOException {
        json.writeArrayFieldStart(key);
        for (String value : values) {
            json.writeString(value);
        }
        json.writeEndArray();
    }

    void numbers(String key, Iterable<Double> values) throws IOException {
        json.writeArrayFieldStart(key);
        for (double value : values) {
            number(value);
        }
        json.writeEndArray();
    }

    /** Rows of whole numbers. */
    void table(String key, Iterable<? extends Iterable<Long>> rows) throws IOException {
        json.writeArrayFieldStart(key);
        for (Iterable<Long> row : rows) {
            json.writeStartArray();
            for (long count : row) {
                json.writeNumber(count);
            }
            json.writeEndArray();
        }
        json.writeEndArray();
    }

    void interval(String key, Optional<Interval> interval) throws IOException {
        if (interval.isEmpty()) {
            nothing(key);
            return;
        }
        object(key, o -> {
            o.number("low", interval.get().low());
            o.number("high", interval.get().high());
        });
    }

    /** {@code {"value","low","high","n","method"}}, and {@code "why"} where something is missing. */
    void estimate(String key, Estimate estimate) throws IOException {
        object(key, o -> o.estimateKeys(estimate));
    }

    /** The keys of an estimate into the object that is open, so that others can stand beside them. */
    void estimateKeys(Estimate estimate) throws IOException {
        number("value", estimate.value());
        number("low", end(estimate, true));
        number("high", end(estimate, false));
        whole("n", estimate.n());
        text("method", estimate.method());
        if (estimate.why().isPresent()) {
            text("why", estimate.why().get());
        }
    }

    /** A nested object. */
    void object(String key, Content content) throws IOException {
        json.writeObjectFieldStart(key);
        content.write(this);
        json.writeEndObject();
    }

    /** Writes one element of a list as the content of an object. */
    @FunctionalInterface
    interface Element<T> {
        void write(JsonOut out, T element) throws IOException;
    }

    /** A list of objects. */
    <T> void list(String key, Iterable<T> elements, Element<T> each) throws IOException {
        json.writeArrayFieldStart(key);
        for (T element : elements) {
            json.writeStartObject();
            each.write(this, element);
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static OptionalDouble end(Estimate estimate, boolean low) {
        return estimate.interval()
                .map(i -> OptionalDouble.of(low ? i.low() : i.high()))
                .orElse(OptionalDouble.empty());
    }

    private void number(double value) throws IOException {
        if (value == Math.rint(value) && Math.abs(value) < 1e15) {
            json.writeNumber((long) value);
        } else {
            json.writeNumber(value);
        }
    }
}
