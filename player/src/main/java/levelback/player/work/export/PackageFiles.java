package levelback.player.work.export;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import levelback.scoring.scale.GaitScale;
import levelback.scoring.scale.ScaleLevel;

/**
 * A Frictionless Data Package, version 2 (datapackage.org): the tables of {@link CsvFiles}, the scales, a codebook, the
 * description that says what every column is, and two small readers.
 */
final class PackageFiles {

    private final HerdContents herd;
    private final ExportNames names;
    private final String called;
    private final Instant now;

    PackageFiles(HerdContents herd, ExportNames names, String called, Instant now) {
        this.herd = herd;
        this.names = names;
        this.called = called;
        this.now = now;
    }

    Map<String, String> files() {
        Map<String, String> files = new LinkedHashMap<>(new CsvFiles(herd, names, false).files());
        files.put("scales.csv", scales());
        files.put("codebook.csv", codebook());
        files.put("datapackage.json", description());
        files.put("read_me.R", PackageReaders.r());
        files.put("read_me.py", PackageReaders.python());
        return files;
    }

    private String scales() {
        CsvText table = new CsvText(false, "scale", "score", "label", "lame_from", "severe_from");
        for (GaitScale scale : herd.scales().values()) {
            for (ScaleLevel level : scale.levels()) {
                table.row(
                        scale.id(),
                        CsvFiles.plain(level.value()),
                        ExportNames.oneLine(level.text()),
                        CsvFiles.plain(scale.lameCut()),
                        CsvFiles.plain(scale.severeCut()));
            }
        }
        return table.text();
    }

    private static String codebook() {
        CsvText table = new CsvText(false, "table", "column", "type", "required", "meaning", "values");
        for (PackageFields.Table of : PackageFields.tables()) {
            for (PackageFields.Field field : of.fields()) {
                table.row(
                        of.name(),
                        field.name(),
                        field.type(),
                        field.required() ? "yes" : "no",
                        field.meaning(),
                        String.join(" ", field.values()));
            }
        }
        return table.inOrder();
    }

    private String description() {
        List<Object> resources = new ArrayList<>();
        for (PackageFields.Table table : PackageFields.tables()) {
            resources.add(resource(table));
        }
        return JsonText.of(JsonText.map(
                "$schema",
                "https://datapackage.org/profiles/2.0/datapackage.json",
                "name",
                "gait-scores-and-trims",
                "title",
                "Gait scores and trim records of " + called,
                "version",
                "1.0.0",
                "created",
                now.truncatedTo(java.time.temporal.ChronoUnit.SECONDS).toString(),
                "resources",
                resources));
    }

    private Map<String, Object> resource(PackageFields.Table table) {
        List<Object> fields =
                table.fields().stream().map(f -> (Object) field(table, f)).toList();
        Map<String, Object> schema = JsonText.map(
                "$schema",
                "https://datapackage.org/profiles/2.0/tableschema.json",
                "fields",
                fields,
                "missingValues",
                List.of(""));
        if (table.name().equals("cows")) {
            schema.put("primaryKey", List.of("cow"));
        } else if (table.name().equals("scales")) {
            schema.put("primaryKey", List.of("scale", "score"));
        } else {
            schema.put(
                    "foreignKeys",
                    List.of(JsonText.map(
                            "fields",
                            List.of("cow"),
                            "reference",
                            JsonText.map("resource", "cows", "fields", List.of("cow")))));
        }
        return JsonText.map(
                "name",
                table.name(),
                "type",
                "table",
                "title",
                table.title(),
                "path",
                table.name() + ".csv",
                "format",
                "csv",
                "mediatype",
                "text/csv",
                "encoding",
                "utf-8",
                "dialect",
                JsonText.map("delimiter", ",", "lineTerminator", "\r\n", "doubleQuote", true, "header", true),
                "schema",
                schema);
    }

    private Map<String, Object> field(PackageFields.Table table, PackageFields.Field field) {
        boolean score = field.name().equals("score") && !table.name().equals("scales");
        boolean levels = score && wholeLevels();
        Map<String, Object> map = JsonText.map(
                "name", field.name(), "type", levels ? "integer" : field.type(), "description", field.meaning());
        Map<String, Object> constraints = new LinkedHashMap<>();
        if (field.required()) {
            constraints.put("required", true);
        }
        if (field.name().equals("cow") && table.name().equals("cows")) {
            constraints.put("unique", true);
        }
        if (!field.values().isEmpty()) {
            constraints.put("enum", field.values());
        }
        switch (field.name()) {
            case "zone" -> {
                constraints.put("minimum", 0);
                constraints.put("maximum", 12);
            }
            case "parity" -> constraints.put("minimum", 0);
            case "severity" -> {
                map.put("categories", List.of(category(1, "mild"), category(2, "moderate"), category(3, "severe")));
                map.put("categoriesOrdered", true);
            }
            default -> {}
        }
        if (levels) {
            GaitScale scale = herd.scales().values().iterator().next();
            map.put(
                    "categories",
                    scale.levels().stream()
                            .map(l -> (Object) category((int) l.value(), l.text()))
                            .collect(Collectors.toList()));
            map.put("categoriesOrdered", true);
        }
        if (!constraints.isEmpty()) {
            map.put("constraints", constraints);
        }
        return map;
    }

    private static Map<String, Object> category(int value, String label) {
        return JsonText.map("value", value, "label", label);
    }

    /** Categories are whole numbers or texts: one scale of whole levels only. */
    private boolean wholeLevels() {
        return herd.scales().size() == 1
                && herd.scales().values().iterator().next().step() == 1;
    }
}
