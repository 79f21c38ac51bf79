package levelback.store.exchange;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import levelback.scoring.foot.Claw;
import levelback.scoring.foot.DdStage;
import levelback.scoring.foot.Lesions;
import levelback.scoring.proof.TrimRow;
import levelback.scoring.value.Leg;

/**
 * A table of what was found at the chute: {@code cow,date,leg,claw,zone,lesion,severity[,stage][,chance]}.
 *
 * @param lines its rows with the lines they stand on
 * @param notes for the reader, unknown codes among them
 */
public record TrimTable(List<Line> lines, List<String> notes) {

    /** Its form. Claw, zone and severity play no part in a proof and may be left out. */
    public static final TableForm FORM = TableForm.of(
            List.of("cow", "date", "leg", "lesion"), List.of("claw", "zone", "severity", "stage", "chance"));

    /**
     * A row of the table.
     *
     * @param line the line it stands on
     * @param row what a proof reads of it
     * @param claw empty where the table does not say
     * @param zone 0 to 12
     * @param severity 1 to 3
     */
    public record Line(long line, TrimRow row, Optional<Claw> claw, OptionalInt zone, OptionalInt severity) {}

    public TrimTable {
        lines = List.copyOf(lines);
        notes = List.copyOf(notes);
    }

    /**
     * Reads a table; the first bad row ends it.
     *
     * @throws BadTable also where it has no row
     */
    public static TrimTable read(TableSource source) {
        return read(source, FORM, (row, bad) -> {
            throw bad;
        });
    }

    /** Reads a table of another form; rows that cannot be taken are handed to {@code refused}. */
    public static TrimTable read(TableSource source, TableForm form, TableReader.Refusal refused) {
        List<Line> lines = new ArrayList<>();
        Map<String, String> same = new HashMap<>();
        Map<String, Long> unknown = new TreeMap<>();
        List<String> notes = new ArrayList<>(TableReader.read(
                source,
                form,
                row -> {
                    Line line = line(row, same);
                    if (!Lesions.isKnown(line.row().lesion())) {
                        unknown.putIfAbsent(line.row().lesion(), row.line());
                    }
                    lines.add(line);
                },
                refused));
        unknown.forEach((code, line) -> notes.add(source.name() + ", line " + line + ": lesion code " + code
                + " is not on the list; it is kept as it is."));
        if (lines.isEmpty()) {
            throw new BadTable(source.name(), 0, "it has a header and no row that can be used.");
        }
        return new TrimTable(lines, notes);
    }

    /** What a proof reads of it. */
    public List<TrimRow> rows() {
        return lines.stream().map(Line::row).toList();
    }

    private static Line line(TableRow row, Map<String, String> same) {
        String cow = same.computeIfAbsent(row.needed("cow"), c -> c);
        LocalDate date = row.date("date");
        Optional<Leg> leg = row.leg("leg");
        String lesion = row.text("lesion").toUpperCase(Locale.ROOT);
        if (lesion.isEmpty()) {
            throw row.wrong("lesion", "is empty; write NONE where the foot was lifted and nothing was found.");
        }
        lesion = same.computeIfAbsent(lesion, l -> l);
        String stage = row.text("stage");
        if (!stage.isEmpty()) {
            String given = stage;
            stage = DdStage.of(stage)
                    .map(DdStage::key)
                    .orElseThrow(() ->
                            row.wrong("stage", "\"" + given + "\" is no stage; write M0, M1, M2, M3, M4 or M4.1."));
        }
        OptionalDouble chance = row.number("chance");
        if (chance.isPresent() && !(chance.getAsDouble() > 0 && chance.getAsDouble() <= 1)) {
            throw row.wrong("chance", "\"" + row.text("chance") + "\" must be above 0 and at most 1.");
        }
        OptionalInt severity = row.whole("severity", 0, 3);
        return new Line(
                row.line(),
                new TrimRow(cow, date, leg, lesion, stage, chance),
                claw(row),
                row.whole("zone", 0, 12),
                severity.isPresent() && severity.getAsInt() > 0 ? severity : OptionalInt.empty());
    }

    private static Optional<Claw> claw(TableRow row) {
        String text = row.text("claw");
        return switch (text.toLowerCase(Locale.ROOT)) {
            case "" -> Optional.empty();
            case "lateral", "outer" -> Optional.of(Claw.LATERAL);
            case "medial", "inner" -> Optional.of(Claw.MEDIAL);
            case "interdigital" -> Optional.of(Claw.INTERDIGITAL);
            case "both" -> Optional.of(Claw.BOTH);
            default ->
                throw row.wrong("claw", "\"" + text + "\" is no claw; write lateral, medial, interdigital or both.");
        };
    }
}
