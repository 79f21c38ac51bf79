package levelback.scoring.identity;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * Says which cow each pass is, from the reads of a gate whose clock is neither set nor steady. Model and sums:
 * {@link Alignment}; clock and parameters: {@link ClockFit}; repeats: {@link TagVisit}; tags exchanged in the list:
 * {@link TagExchange}; what is settled without a person: {@link CommitRule}.
 */
public final class Identify {

    static final double LISTED = 0.001;

    private Identify() {}

    /** Aligns passes with readings, nothing settled by hand. */
    public static Identification of(List<PassSpan> passes, List<GateReading> readings) {
        return of(passes, readings, List.of());
    }

    /**
     * Aligns passes with readings; what a hand has settled stays, and the rest is aligned anew around it.
     *
     * @param passes in any order, no two of one name
     */
    public static Identification of(List<PassSpan> passes, List<GateReading> readings, List<HandDecision> decisions) {
        Map<String, HandDecision> byHand = new HashMap<>();
        decisions.forEach(d -> byHand.put(d.pass(), d));
        if (passes.isEmpty() || readings.isEmpty()) {
            String why = readings.isEmpty() ? "There are no reads, so no pass can be named." : "There are no passes.";
            return nothing(passes, readings, byHand, why);
        }
        int[] order = IntStream.range(0, passes.size())
                .boxed()
                .sorted(Comparator.comparingLong(i -> middleUs(passes.get(i), Instant.EPOCH)))
                .mapToInt(Integer::intValue)
                .toArray();
        Instant zero = passes.get(order[0]).from();
        double[] times = Arrays.stream(order)
                .mapToDouble(i -> middleUs(passes.get(i), zero) / 1e6)
                .toArray();
        ReaderClocks clocks = ReaderClocks.of(
                times,
                readings.stream()
                        .map(r -> new ReaderClocks.Read(r.reader(), new TagVisit.Read(r.tag(), us(zero, r.at()) / 1e6)))
                        .toList());
        TagExchange.PutBack putBack = TagExchange.putBack(clocks.reads());
        List<TagVisit> visits = TagVisit.of(putBack.reads());
        double[] reads = visits.stream().mapToDouble(TagVisit::firstS).toArray();
        int[] fixed = new int[order.length];
        Arrays.fill(fixed, Alignment.FREE);
        Optional<ClockFit> free = ClockFit.of(times, reads, fixed);
        if (free.isEmpty()) {
            return nothing(
                    passes,
                    readings,
                    byHand,
                    "The reads are of another day: the first is at "
                            + readings.get(0).at() + ", the first pass at " + zero
                            + "; give the reads of the milking that was filmed.");
        }
        ClockFit fit = free.get();
        MatchCheck.Verdict verdict = MatchCheck.of(fit, times, reads);
        if (verdict == MatchCheck.Verdict.OF_OTHERS) {
            return nothing(
                    passes,
                    readings,
                    byHand,
                    "No setting of the reader's clock within 14 hours makes the reads fit these passes better than"
                            + " passes that never were; check that both are of one milking.");
        }
        Alignment alignment = byHand.isEmpty()
                ? fit.alignment()
                : settled(passes, order, times, visits, reads, fit.with(), byHand, fixed);
        return result(passes, order, visits, fit, alignment, byHand, verdict, clocks.notes(), putBack.pairs());
    }

    private static Alignment settled(
            List<PassSpan> passes,
            int[] order,
            double[] times,
            List<TagVisit> visits,
            double[] reads,
            AlignmentParameters with,
            Map<String, HandDecision> byHand,
            int[] fixed) {
        for (int k = 0; k < order.length; k++) {
            HandDecision decision = byHand.get(passes.get(order[k]).pass());
            if (decision == null) {
                continue;
            }
            fixed[k] = Alignment.UNREAD;
            double expected = times[0] + with.expectedReadS(times[k] - times[0]);
            for (int j = 0; j < visits.size(); j++) {
                if (decision.tag().isPresent()
                        && visits.get(j).tag().equals(decision.tag().get())
                        && (fixed[k] < 0 || Math.abs(reads[j] - expected) < Math.abs(reads[fixed[k]] - expected))) {
                    fixed[k] = j;
                }
            }
        }
        return Alignment.of(times, reads, with, fixed);
    }

    private static Identification result(
            List<PassSpan> passes,
            int[] order,
            List<TagVisit> visits,
            ClockFit fit,
            Alignment alignment,
            Map<String, HandDecision> byHand,
            MatchCheck.Verdict verdict,
            List<String> notesOfReaders,
            int putBack) {
        Identification.PassIdentity[] named = new Identification.PassIdentity[passes.size()];
        Set<String> matched = new LinkedHashSet<>();
        TagExchange exchange = TagExchange.of(visits, putBack);
        List<Integer> open = new ArrayList<>();
        for (int k = 0; k < order.length; k++) {
            String pass = passes.get(order[k]).pass();
            HandDecision decision = byHand.get(pass);
            if (decision == null) {
                open.add(order[k]);
            }
            named[order[k]] = decision != null ? byHand(decision) : identity(pass, k, alignment, visits, exchange);
            named[order[k]].tag().ifPresent(matched::add);
        }
        double[] chance = open.stream().mapToDouble(i -> named[i].probability()).toArray();
        boolean[] settled = CommitRule.settled(chance);
        boolean sure = verdict == MatchCheck.Verdict.OF_THESE_PASSES;
        for (int k = 0; sure && k < settled.length; k++) {
            named[open.get(k)] = named[open.get(k)].settled(settled[k]);
        }
        List<String> unmatched = visits.stream()
                .map(TagVisit::tag)
                .distinct()
                .filter(tag -> !matched.contains(tag))
                .toList();
        AlignmentParameters with = fit.with();
        Identification.Clock clock = new Identification.Clock(
                with.offsetS(), fit.offsetSeS(), with.drift() * 1e6, fit.driftSe() * 1e6, with, exchange.rate());
        List<String> notes = new ArrayList<>(notesOfReaders);
        if (putBack > 0) {
            notes.add(putBack + (putBack == 1 ? " pair" : " pairs")
                    + " of neighbouring reads stood exchanged, as their repeats show, and were put back.");
        }
        notes.addAll(notes(visits, alignment, sure));
        return new Identification(Optional.of(clock), Arrays.asList(named), unmatched, notes, Optional.empty());
    }

    private static Identification.PassIdentity byHand(HandDecision decision) {
        return new Identification.PassIdentity(decision.pass(), decision.tag(), 1, List.of(), true);
    }

    private static Identification.PassIdentity identity(
            String pass, int at, Alignment alignment, List<TagVisit> visits, TagExchange exchange) {
        Map<String, Double> ofTag = new LinkedHashMap<>();
        int end = Math.min(visits.size(), alignment.endRead(at) + 1);
        for (int j = Math.max(0, alignment.firstRead(at) - 1); j < end; j++) {
            ofTag.merge(visits.get(j).tag(), exchange.probability(alignment, at, j), Double::sum);
        }
        List<Identification.Chance> chances = new ArrayList<>();
        chances.add(new Identification.Chance(Optional.empty(), alignment.unread(at)));
        ofTag.forEach((tag, p) -> chances.add(new Identification.Chance(Optional.of(tag), p)));
        chances.sort(Comparator.comparingDouble((Identification.Chance c) -> -c.probability()));
        Identification.Chance first = chances.get(0);
        return new Identification.PassIdentity(
                pass,
                first.tag(),
                first.probability(),
                chances.subList(1, chances.size()).stream()
                        .filter(c -> c.probability() >= LISTED)
                        .toList(),
                false);
    }

    private static List<String> notes(List<TagVisit> visits, Alignment alignment, boolean sure) {
        List<String> notes = new ArrayList<>();
        if (!sure) {
            notes.add("There are too few passes to tell whether these reads are theirs; every pass is left to you.");
        }
        Map<String, List<TagVisit>> ofTag = new TreeMap<>();
        visits.forEach(
                v -> ofTag.computeIfAbsent(v.tag(), t -> new ArrayList<>()).add(v));
        ofTag.forEach((tag, came) -> {
            if (came.size() > 1) {
                notes.add("Tag " + tag + " came " + came.size() + " times, more than " + Math.round(TagVisit.REPEAT_S)
                        + " s apart: she walked past again, or two cows carry it.");
            }
        });
        if (alignment.windowCut()) {
            notes.add("More than " + Alignment.MOST_READS + " reads could be one pass; the nearest were weighed.");
        }
        return notes;
    }

    private static Identification nothing(
            List<PassSpan> passes, List<GateReading> readings, Map<String, HandDecision> byHand, String why) {
        List<Identification.PassIdentity> none = passes.stream()
                .map(p -> {
                    HandDecision decision = byHand.get(p.pass());
                    return decision != null
                            ? byHand(decision)
                            : new Identification.PassIdentity(p.pass(), Optional.empty(), 1, List.of(), false);
                })
                .toList();
        List<String> tags = readings.stream().map(GateReading::tag).distinct().toList();
        return new Identification(Optional.empty(), none, tags, List.of(), Optional.of(why));
    }

    private static long middleUs(PassSpan pass, Instant zero) {
        return (us(zero, pass.from()) + us(zero, pass.to())) / 2;
    }

    private static long us(Instant zero, Instant at) {
        Duration since = Duration.between(zero, at);
        return since.getSeconds() * 1_000_000 + since.getNano() / 1_000;
    }
}
