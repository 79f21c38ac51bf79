package levelback.scoring.severity;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.core.filter.FilteringParserDelegate;
import com.fasterxml.jackson.core.filter.JsonPointerBasedFilter;
import com.fasterxml.jackson.core.filter.TokenFilter.Inclusion;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.TreeSet;
import java.util.stream.IntStream;

/** The panels of the check values, with the figures beside them; each file says in {@code source} what made it. */
final class PanelFiles {

    private PanelFiles() {}

    /** Session 1 of a panel; scorers, clips and levels in their order. */
    static Panel panel(String name) {
        List<List<String>> rows = new ArrayList<>();
        try (InputStream in = open(name + ".csv")) {
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            boolean sessions = text.lines().findFirst().orElse("").endsWith(",session");
            text.lines()
                    .skip(1)
                    .map(line -> Arrays.asList(line.split(",", -1)))
                    .filter(cells -> !cells.get(2).isEmpty())
                    .filter(cells -> !sessions || cells.get(3).equals("1"))
                    .forEach(rows::add);
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
        TreeSet<String> scorers = new TreeSet<>();
        TreeSet<String> clips = new TreeSet<>();
        TreeSet<Double> levels = new TreeSet<>();
        for (List<String> row : rows) {
            scorers.add(row.get(0));
            clips.add(row.get(1));
            levels.add(Double.valueOf(row.get(2)));
        }
        return new Panel(
                List.copyOf(scorers),
                List.copyOf(levels),
                clips.size(),
                rows.stream().mapToInt(row -> clips.headSet(row.get(1)).size()).toArray(),
                rows.stream()
                        .mapToInt(row -> scorers.headSet(row.get(0)).size())
                        .toArray(),
                rows.stream()
                        .mapToInt(row ->
                                levels.headSet(Double.valueOf(row.get(2))).size())
                        .toArray());
    }

    /** The numbers at or under a place in the figures, such as {@code /clmm/laplace/thresholds}, in their order. */
    static List<Double> figures(String name, String place) {
        try (InputStream in = open(name + ".json");
                JsonParser parser = new FilteringParserDelegate(
                        new JsonFactory().createParser(in),
                        new JsonPointerBasedFilter(JsonPointer.compile(place)),
                        Inclusion.ONLY_INCLUDE_ALL,
                        true)) {
            List<Double> figures = new ArrayList<>();
            while (parser.nextToken() != null) {
                if (parser.currentToken().isNumeric()) {
                    figures.add(parser.getDoubleValue());
                }
            }
            return figures;
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    /** One number for each scorer, in their order, such as {@code shift/low}. */
    static List<Double> ofScorers(String name, String place) {
        return IntStream.range(0, panel(name).scorers().size())
                .mapToObj(s -> figures(name, "/severity/" + s + "/" + place).get(0))
                .toList();
    }

    private static InputStream open(String name) {
        return Objects.requireNonNull(PanelFiles.class.getResourceAsStream("/check-values/agreement/" + name), name);
    }
}
