package levelback.player.proof;

import java.time.Clock;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.function.Predicate;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import levelback.player.desk.Desk;
import levelback.player.work.BookRows;
import levelback.player.work.Prove;
import levelback.scoring.proof.Observation;
import levelback.scoring.proof.ProofResult;
import levelback.scoring.proof.ScoreRow;
import levelback.scoring.scale.GaitScale;
import levelback.scoring.scale.GaitScales;
import levelback.store.book.Book;
import levelback.store.herd.Cow;
import levelback.store.herd.CowId;
import levelback.store.herd.Herd;
import levelback.store.herd.Score;
import levelback.store.herd.Tag;
import levelback.store.herd.Visit;
import levelback.store.lane.Pass;

/**
 * State of the Proof page: one immutable {@link State} at a time. Reads the book once, answers again at every change of the
 * settings; the book is read and the figures are computed in the background, and an answer that a newer question has
 * overtaken is dropped.
 *
 * <p>Threading: every public method is called on the JavaFX thread.
 */
public final class ProofViewModel {

    /** What the page can show. */
    public sealed interface State {
        /** No herd, or a herd without scores. */
        record Nothing() implements State {}

        /** The first answer is on its way. */
        record Working() implements State {}

        /**
         * An answer.
         *
         * @param cows number and name of each cow by her identity as text
         * @param tally what the page counts over all observations, beside the figures
         * @param scorers everyone who scored
         * @param open the list of cows on show; empty while none is open
         * @param working whether a newer answer is on its way
         */
        record Answer(
                ProofResult result,
                GaitScale scale,
                Map<String, CowLine> cows,
                Tally tally,
                List<String> scorers,
                ProofSettings settings,
                Optional<OpenList> open,
                boolean working)
                implements State {}

        /** The answer could not be made; one sentence. */
        record Failed(String sentence) implements State {}
    }

    /** How a cow is called. */
    public record CowLine(String number, String name) {}

    /**
     * The cows behind a number.
     *
     * @param title what they are, in words
     */
    public record OpenList(String title, List<Observation> observations) {
        public OpenList {
            observations = List.copyOf(observations);
        }
    }

    /**
     * Counted once in the background, for a herd of many years has a quarter of a million observations.
     *
     * @param drawn control lifts, drawn by chance and done
     * @param firstVisit number of the first visit that counts; empty where none does
     * @param lastVisit number of the last one
     */
    public record Tally(long drawn, OptionalInt firstVisit, OptionalInt lastVisit) {
        static Tally of(ProofResult result, Map<LocalDate, Integer> visits) {
            long drawn = 0;
            int first = Integer.MAX_VALUE;
            int last = Integer.MIN_VALUE;
            for (Observation o : result.observations()) {
                drawn += o.isLifted() && o.chance() < 1 ? 1 : 0;
                Integer visit = visits.get(o.date());
                if (o.isScored() && visit != null) {
                    first = Math.min(first, visit);
                    last = Math.max(last, visit);
                }
            }
            return first > last
                    ? new Tally(drawn, OptionalInt.empty(), OptionalInt.empty())
                    : new Tally(drawn, OptionalInt.of(first), OptionalInt.of(last));
        }
    }

    private record Source(
            BookRows rows,
            GaitScale scale,
            Map<String, CowLine> cows,
            Map<LocalDate, Integer> visits,
            List<String> scorers) {}

    private record Film(Pass pass, int frame) {}

    private final Desk desk;
    private final Clock clock;
    private final ReadOnlyObjectWrapper<State> state = new ReadOnlyObjectWrapper<>(this, "state", new State.Nothing());
    private ProofSettings settings = ProofSettings.usual();
    private Optional<Source> source = Optional.empty();
    private long newest;
    private long newestList;

    public ProofViewModel(Desk desk, Clock clock) {
        this.desk = desk;
        this.clock = clock;
    }

    public ReadOnlyObjectProperty<State> stateProperty() {
        return state.getReadOnlyProperty();
    }

    /** Reads the herd anew. */
    public void reload() {
        Optional<Herd> herd = desk.herd();
        if (herd.isEmpty()) {
            source = Optional.empty();
            newest++;
            state.set(new State.Nothing());
            return;
        }
        if (!(state.get() instanceof State.Answer)) {
            state.set(new State.Working());
        }
        long mine = ++newest;
        LocalDate today = LocalDate.now(clock);
        desk.read(book -> read(book, herd.get(), today), read -> {
            if (mine == newest) {
                source = Optional.of(read);
                answer();
            }
        });
    }

    /** Changes the settings and answers again. */
    public void set(Function<ProofSettings, ProofSettings> change) {
        settings = change.apply(settings);
        answer();
    }

    /** Moves the cut by so many levels of the scale. */
    public void moveCut(int levels) {
        if (state.get() instanceof State.Answer answer) {
            List<Double> cuts = answer.scale().levels().stream()
                    .map(l -> l.value())
                    .filter(v -> v > answer.scale().lowest())
                    .toList();
            int at = 0;
            double now = settings.cut().orElse(answer.scale().lameCut());
            while (at + 1 < cuts.size() && cuts.get(at) < now) {
                at++;
            }
            int next = Math.max(0, Math.min(cuts.size() - 1, at + levels));
            if (!cuts.isEmpty() && cuts.get(next) != now) {
                set(s -> s.withCut(cuts.get(next)));
            }
        }
    }

    /** Whether two answers show one result: the very same one, since comparing 260,000 observations would hold the desk. */
    @SuppressWarnings("ReferenceEquality")
    private static boolean isOfOneRun(State.Answer one, State.Answer other) {
        return one.result() == other.result();
    }

    /**
     * Opens the cows behind a number. They are looked for in the background; the list is shown when they are found, unless
     * another was asked for or the figures have changed since.
     */
    public void open(String title, Predicate<Observation> which) {
        if (!(state.get() instanceof State.Answer asked)) {
            return;
        }
        long mine = ++newestList;
        desk.background().execute(() -> {
            OpenList found = new OpenList(title, behind(asked, which));
            desk.ui().execute(() -> {
                if (mine == newestList && state.get() instanceof State.Answer a && isOfOneRun(a, asked)) {
                    state.set(new State.Answer(
                            a.result(),
                            a.scale(),
                            a.cows(),
                            a.tally(),
                            a.scorers(),
                            a.settings(),
                            Optional.of(found),
                            a.working()));
                }
            });
        });
    }

    /** Latest day first, then by number. */
    private static List<Observation> behind(State.Answer a, Predicate<Observation> which) {
        return a.result().behind(which).stream()
                .sorted(Comparator.comparing(Observation::date)
                        .reversed()
                        .thenComparing(o -> a.cows()
                                .getOrDefault(o.cow(), new CowLine(o.cow(), ""))
                                .number()))
                .toList();
    }

    /** Closes the list; whether one was open. */
    public boolean closeList() {
        newestList++;
        if (state.get() instanceof State.Answer a && a.open().isPresent()) {
            state.set(new State.Answer(
                    a.result(),
                    a.scale(),
                    a.cows(),
                    a.tally(),
                    a.scorers(),
                    a.settings(),
                    Optional.empty(),
                    a.working()));
            return true;
        }
        return false;
    }

    /** Opens the clip of a judgement at its frame, or says that it was not filmed. */
    public void openClip(Observation observation) {
        Optional<Herd> herd = desk.herd();
        if (herd.isEmpty()) {
            return;
        }
        desk.read(book -> film(book, herd.get(), observation), film -> {
            if (film.isPresent()) {
                desk.openPass(film.get().pass().id(), film.get().frame());
            } else {
                String number = state.get() instanceof State.Answer a
                        ? a.cows()
                                .getOrDefault(observation.cow(), new CowLine("", ""))
                                .number()
                        : "";
                desk.message(Words.of("no.film", number, Words.day(observation.date())));
            }
        });
    }

    private void answer() {
        if (source.isEmpty()) {
            return;
        }
        Source from = source.get();
        ProofSettings asked = settings;
        if (from.rows().scores().isEmpty()) {
            state.set(new State.Nothing());
            return;
        }
        if (state.get() instanceof State.Answer a) {
            state.set(new State.Answer(a.result(), a.scale(), a.cows(), a.tally(), a.scorers(), asked, a.open(), true));
        }
        long mine = ++newest;
        LocalDate today = LocalDate.now(clock);
        desk.background().execute(() -> {
            State next;
            try {
                ProofResult result =
                        Prove.fromRows(from.rows(), asked.question(from.scale().lameCut(), today));
                next = new State.Answer(
                        result,
                        from.scale(),
                        from.cows(),
                        Tally.of(result, from.visits()),
                        from.scorers(),
                        asked,
                        Optional.empty(),
                        false);
            } catch (RuntimeException failed) {
                next = new State.Failed(String.valueOf(failed.getMessage()));
            }
            State show = next;
            desk.ui().execute(() -> {
                if (mine == newest) {
                    state.set(show);
                }
            });
        });
    }

    private static Source read(Book book, Herd herd, LocalDate today) {
        GaitScale scale = GaitScales.byId(herd.scaleId())
                .or(() -> book.herd().scale(herd.scaleId()))
                .orElse(GaitScales.all().get(0));
        Map<String, CowLine> cows = new HashMap<>();
        for (Cow cow : book.herd().cows(herd.id(), today)) {
            cows.put(
                    cow.id().uuid().toString(),
                    new CowLine(cow.number(), cow.name().orElse("")));
        }
        BookRows rows = BookRows.of(book, herd);
        List<String> scorers =
                rows.scores().stream().map(ScoreRow::scorer).distinct().sorted().toList();
        Map<LocalDate, Integer> visits = new HashMap<>();
        book.herd().visits(herd.id()).forEach(visit -> visits.put(visit.date(), visit.ordinal()));
        return new Source(rows, scale, cows, visits, scorers);
    }

    /** Her pass of that day, at the frame of a sign tagged on it, else in its middle. */
    private static Optional<Film> film(Book book, Herd herd, Observation observation) {
        Optional<Visit> visit = book.herd().visits(herd.id()).stream()
                .filter(v -> v.date().equals(observation.date()))
                .findFirst();
        if (visit.isEmpty()) {
            return Optional.empty();
        }
        Optional<Pass> scored = book.herd().scoresOf(visit.get().id()).stream()
                .filter(s -> s.cow().uuid().toString().equals(observation.cow()))
                .map(Score::pass)
                .flatMap(Optional::stream)
                .findFirst()
                .flatMap(id -> book.lane().pass(id));
        return scored.or(() -> book.lane().passesOf(visit.get().id()).stream()
                        .filter(p -> p.cow()
                                .map(CowId::uuid)
                                .filter(id -> id.toString().equals(observation.cow()))
                                .isPresent())
                        .findFirst())
                .map(pass -> new Film(
                        pass,
                        book.herd().tagsOf(pass.id()).stream()
                                .filter(t -> t.kind() == Tag.Kind.SIGN)
                                .mapToInt(Tag::recordingFrame)
                                .min()
                                .orElse((pass.fromFrame() + pass.toFrame()) / 2)));
    }
}
