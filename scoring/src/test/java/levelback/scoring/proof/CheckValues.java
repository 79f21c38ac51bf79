package levelback.scoring.proof;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import levelback.scoring.value.Leg;
import org.jspecify.annotations.Nullable;

/** Reads the files of check values; see README.md beside them for where they come from. */
final class CheckValues {

    /** A node of a JSON document. */
    record Json(@Nullable Object value) {
        Json at(Object... path) {
            Object now = value;
            for (Object step : path) {
                now = step instanceof Integer index
                        ? ((List<?>) Objects.requireNonNull(now)).get(index)
                        : ((Map<?, ?>) Objects.requireNonNull(now)).get(step);
            }
            return new Json(now);
        }

        boolean isNull() {
            return value == null;
        }

        double number() {
            return ((Number) Objects.requireNonNull(value)).doubleValue();
        }

        long whole() {
            return ((Number) Objects.requireNonNull(value)).longValue();
        }

        String text() {
            return (String) Objects.requireNonNull(value);
        }

        List<Json> items() {
            List<Json> items = new ArrayList<>();
            ((List<?>) Objects.requireNonNull(value)).forEach(item -> items.add(new Json(item)));
            return items;
        }

        double[] numbers() {
            return items().stream().mapToDouble(Json::number).toArray();
        }
    }

    private CheckValues() {}

    static Json json(String name) {
        try (InputStream in = open(name);
                JsonParser parser = new JsonFactory().createParser(in)) {
            parser.nextToken();
            return new Json(value(parser));
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    static List<ScoreRow> scores(String text) {
        return rows(text).stream()
                .map(r -> new ScoreRow(
                        r.getOrDefault("cow", ""),
                        LocalDate.parse(r.getOrDefault("date", "")),
                        Double.parseDouble(r.getOrDefault("score", "")),
                        r.getOrDefault("scorer", ""),
                        leg(r)))
                .toList();
    }

    static List<TrimRow> trims(String text) {
        return rows(text).stream()
                .map(r -> new TrimRow(
                        r.getOrDefault("cow", ""),
                        LocalDate.parse(r.getOrDefault("date", "")),
                        leg(r),
                        r.getOrDefault("lesion", ""),
                        r.getOrDefault("stage", ""),
                        r.getOrDefault("chance", "").isEmpty()
                                ? OptionalDouble.empty()
                                : OptionalDouble.of(Double.parseDouble(r.getOrDefault("chance", "")))))
                .toList();
    }

    static String text(String name) {
        try (InputStream in = open(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    static ProofQuestion question(double cut, ProofQuestion.Unit unit, int from, int to, String lesions) {
        return new ProofQuestion(
                cut, unit, from, to, LesionSet.of(lesions), Optional.empty(), Optional.empty(), 0.95, 1);
    }

    private static Optional<Leg> leg(Map<String, String> row) {
        String leg = row.getOrDefault("leg", "");
        return leg.isEmpty() ? Optional.empty() : Optional.of(Leg.valueOf(leg));
    }

    private static List<Map<String, String>> rows(String text) {
        List<String> lines = text.lines().toList();
        String[] header = lines.get(0).split(",", -1);
        List<Map<String, String>> rows = new ArrayList<>();
        for (String line : lines.subList(1, lines.size())) {
            String[] cells = line.split(",", -1);
            Map<String, String> row = new HashMap<>();
            for (int i = 0; i < header.length; i++) {
                row.put(header[i], cells[i]);
            }
            rows.add(row);
        }
        return rows;
    }

    private static InputStream open(String name) {
        return Objects.requireNonNull(CheckValues.class.getResourceAsStream(name), name);
    }

    private static @Nullable Object value(JsonParser parser) throws IOException {
        return switch (parser.currentToken()) {
            case START_OBJECT -> {
                Map<String, @Nullable Object> map = new LinkedHashMap<>();
                while (parser.nextToken() != JsonToken.END_OBJECT) {
                    String key = parser.currentName();
                    parser.nextToken();
                    map.put(key, value(parser));
                }
                yield map;
            }
            case START_ARRAY -> {
                List<@Nullable Object> list = new ArrayList<>();
                while (parser.nextToken() != JsonToken.END_ARRAY) {
                    list.add(value(parser));
                }
                yield list;
            }
            case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> parser.getNumberValue();
            case VALUE_STRING -> parser.getText();
            case VALUE_TRUE -> true;
            case VALUE_FALSE -> false;
            default -> null;
        };
    }
}
