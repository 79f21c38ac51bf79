package levelback.scoring.identity;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Several readers, each with its own clock or its own place along the lane. The reads of each are fitted to the passes on
 * their own; where one stands more than {@value #LEAST_S} s, and more than four standard errors, from the reader that
 * knows most passes, its reads are set to that reader's clock, and that is said. What then comes within the time of a
 * repeat is collapsed as the repeats of one reader are.
 *
 * @param reads all reads, by the clock of the reader that knows most passes
 * @param notes one sentence for each reader that was set or fits no pass
 */
record ReaderClocks(List<TagVisit.Read> reads, List<String> notes) {

    private static final double LEAST_S = 1;
    private static final int FEWEST_VISITS = 12;

    /** A reading with its time in seconds and its reader. */
    record Read(String reader, TagVisit.Read read) {}

    private record Fitted(String reader, ClockFit fit, double named) {}

    ReaderClocks {
        reads = List.copyOf(reads);
        notes = List.copyOf(notes);
    }

    static ReaderClocks of(double[] passes, List<Read> readings) {
        List<TagVisit.Read> plain = readings.stream().map(Read::read).toList();
        Map<String, List<TagVisit.Read>> byReader = new TreeMap<>();
        readings.forEach(r ->
                byReader.computeIfAbsent(r.reader(), name -> new ArrayList<>()).add(r.read()));
        if (byReader.size() < 2) {
            return new ReaderClocks(plain, List.of());
        }
        List<String> notes = new ArrayList<>();
        Map<String, Fitted> fits = new TreeMap<>();
        byReader.forEach((reader, reads) -> {
            double[] times =
                    TagVisit.of(reads).stream().mapToDouble(TagVisit::firstS).toArray();
            if (times.length < FEWEST_VISITS || passes.length < FEWEST_VISITS) {
                return;
            }
            int[] free = new int[passes.length];
            Arrays.fill(free, Alignment.FREE);
            Optional<ClockFit> fit = ClockFit.of(passes, times, free);
            if (fit.isPresent() && MatchCheck.of(fit.get(), passes, times) == MatchCheck.Verdict.OF_THESE_PASSES) {
                fits.put(reader, new Fitted(reader, fit.get(), named(fit.get().alignment())));
            } else {
                notes.add("The reads of reader " + reader + " fit none of these passes; they were weighed as strays.");
            }
        });
        Optional<Fitted> main = fits.values().stream().max(Comparator.comparingDouble(Fitted::named));
        if (main.isEmpty()) {
            return new ReaderClocks(plain, List.of());
        }
        List<TagVisit.Read> set = new ArrayList<>();
        for (Read reading : readings) {
            Fitted own = fits.get(reading.reader());
            set.add(
                    own == null || !apart(own.fit(), main.get().fit())
                            ? reading.read()
                            : moved(reading.read(), own, main.get(), passes[0]));
        }
        fits.values().stream()
                .filter(f -> apart(f.fit(), main.get().fit()))
                .forEach(f -> notes.add(String.format(
                        Locale.ROOT,
                        "Two clocks: reader %s is %s of the camera, reader %s %s; the reads of %s were set to the clock of"
                                + " %s.",
                        main.get().reader(),
                        shown(main.get().fit()),
                        f.reader(),
                        shown(f.fit()),
                        f.reader(),
                        main.get().reader())));
        return new ReaderClocks(set, notes);
    }

    private static String shown(ClockFit fit) {
        double offset = fit.with().offsetS();
        return String.format(Locale.ROOT, "%.1f s %s", Math.abs(offset), offset < 0 ? "behind" : "ahead");
    }

    private static double named(Alignment alignment) {
        double sum = 0;
        for (int i = 0; i < alignment.passes(); i++) {
            sum += 1 - alignment.unread(i);
        }
        return sum;
    }

    private static boolean apart(ClockFit one, ClockFit other) {
        double by = Math.abs(one.with().offsetS() - other.with().offsetS());
        return by > LEAST_S && by > 4 * Math.hypot(one.offsetSeS(), other.offsetSeS());
    }

    /** Back to the camera's clock by its own reader's, and from there to the other reader's. */
    private static TagVisit.Read moved(TagVisit.Read read, Fitted own, Fitted main, double firstPass) {
        double since = (read.timeS() - firstPass - own.fit().with().offsetS())
                / (1 + own.fit().with().drift());
        return new TagVisit.Read(read.tag(), firstPass + main.fit().with().expectedReadS(since));
    }
}
