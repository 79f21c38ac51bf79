package levelback.player.work;

import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import levelback.store.exchange.TableForm;
import levelback.store.exchange.TableReader;
import levelback.store.exchange.TableSource;

/** Writes the rows that an import did not take beside their table, with line and reason, to be mended and taken again. */
public final class RefusedRows {

    private RefusedRows() {}

    /**
     * Writes {@code SOURCE.refused.csv} for each table that has refused rows.
     *
     * @return the files written
     * @throws CannotBeDone with one sentence if one cannot be written
     */
    public static List<Path> write(List<TableSource> sources, List<ImportReport.Refused> refused) {
        List<Path> written = new ArrayList<>();
        for (TableSource source : sources) {
            Map<Long, String> why = new HashMap<>();
            for (ImportReport.Refused row : refused) {
                if (row.source().equals(source.name())) {
                    why.put(row.line(), row.why());
                }
            }
            if (why.isEmpty()) {
                continue;
            }
            Path file = Path.of(source.name() + ".refused.csv");
            try (CsvWriter csv = CsvWriter.builder().build(Files.newBufferedWriter(file, StandardCharsets.UTF_8))) {
                List<String> header = new ArrayList<>(List.of("line", "why"));
                header.addAll(TableReader.headings(source));
                csv.writeRecord(header);
                TableReader.read(
                        source,
                        TableForm.of(List.of(), List.of()),
                        row -> line(csv, why, row.line(), row.fields()),
                        (row, bad) -> line(csv, why, row.line(), row.fields()));
            } catch (IOException unwritable) {
                throw new CannotBeDone(
                        "The good rows were taken, but " + file + " cannot be written; check the folder.", unwritable);
            }
            written.add(file);
        }
        return written;
    }

    private static void line(CsvWriter csv, Map<Long, String> why, long line, List<String> fields) {
        String reason = why.get(line);
        if (reason != null) {
            List<String> row = new ArrayList<>(List.of(Long.toString(line), reason));
            row.addAll(fields);
            csv.writeRecord(row);
        }
    }
}
