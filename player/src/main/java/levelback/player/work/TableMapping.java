package levelback.player.work;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.ResolverStyle;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import levelback.store.exchange.TableForm;

/**
 * How another program's table is written: {@code {"columns":{"their heading":"our column"},"date":"dd.MM.yyyy",
 * "decimal":","}}; every part may be left out.
 *
 * @param columns their headings to our columns
 * @param date how its dates are written; empty for ISO
 * @param decimalComma whether a decimal comma is taken
 */
public record TableMapping(Map<String, String> columns, Optional<DateTimeFormatter> date, boolean decimalComma) {

    /** A table with our own headings, ISO dates and decimal points. */
    public static final TableMapping NONE = new TableMapping(Map.of(), Optional.empty(), false);

    public TableMapping {
        columns = Map.copyOf(columns);
    }

    /**
     * Reads a mapping file.
     *
     * @throws BadInput with one sentence if it is not there or is not a mapping
     */
    public static TableMapping read(Path file) {
        if (!Files.isRegularFile(file)) {
            throw new BadInput("There is no mapping file " + file + "; check the name.");
        }
        Map<String, String> columns = new LinkedHashMap<>();
        Optional<DateTimeFormatter> date = Optional.empty();
        boolean comma = false;
        try (JsonParser json = new JsonFactory().createParser(file.toFile())) {
            require(json.nextToken() == JsonToken.START_OBJECT, file);
            while (json.nextToken() != JsonToken.END_OBJECT) {
                String key = json.currentName();
                JsonToken value = json.nextToken();
                switch (String.valueOf(key)) {
                    case "columns" -> {
                        require(value == JsonToken.START_OBJECT, file);
                        while (json.nextToken() != JsonToken.END_OBJECT) {
                            String theirs = json.currentName();
                            require(json.nextToken() == JsonToken.VALUE_STRING, file);
                            columns.put(theirs, json.getText());
                        }
                    }
                    case "date" -> {
                        require(value == JsonToken.VALUE_STRING, file);
                        date = Optional.of(dates(json.getText(), file));
                    }
                    case "decimal" -> {
                        require(
                                value == JsonToken.VALUE_STRING
                                        && json.getText().matches("[.,]"),
                                file);
                        comma = json.getText().equals(",");
                    }
                    default ->
                        throw new BadInput("The mapping file " + file + " has \"" + key
                                + "\"; it may have columns, date and decimal.");
                }
            }
        } catch (JsonProcessingException broken) {
            throw new BadInput(
                    "The mapping file " + file + " is not JSON (line "
                            + broken.getLocation().getLineNr() + "); mend it there.",
                    broken);
        } catch (IOException unreadable) {
            throw new BadInput("The mapping file " + file + " cannot be read; check that you may read it.", unreadable);
        }
        return new TableMapping(columns, date, comma);
    }

    /** The form of a table that is written like this. */
    public TableForm of(TableForm form) {
        return form.mapped(columns, date, decimalComma);
    }

    private static DateTimeFormatter dates(String pattern, Path file) {
        try {
            // A year is a year of our era here: "y" would need the era to be read strictly.
            DateTimeFormatter dates = DateTimeFormatter.ofPattern(pattern.replace('y', 'u'), Locale.ROOT)
                    .withResolverStyle(ResolverStyle.STRICT);
            LocalDate day = LocalDate.of(2026, 3, 14);
            if (LocalDate.parse(dates.format(day), dates).equals(day)) {
                return dates;
            }
        } catch (java.time.DateTimeException | IllegalArgumentException unusable) {
            throw new BadInput(ofDates(pattern, file), unusable);
        }
        throw new BadInput(ofDates(pattern, file));
    }

    private static String ofDates(String pattern, Path file) {
        return "The mapping file " + file + " writes dates as \"" + pattern
                + "\", which is no way to write a day; write it as dd.MM.yyyy or MM/dd/yyyy.";
    }

    private static void require(boolean asItShouldBe, Path file) {
        if (!asItShouldBe) {
            throw new BadInput("The mapping file " + file
                    + " is not as it should be; write {\"columns\":{\"their heading\":\"our column\"},"
                    + "\"date\":\"dd.MM.yyyy\",\"decimal\":\",\"}.");
        }
    }
}
