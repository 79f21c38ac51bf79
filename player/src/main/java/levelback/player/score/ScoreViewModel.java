package levelback.player.score;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BiConsumer;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import levelback.clips.decode.Span;
import levelback.clips.open.Clip;
import levelback.clips.open.ClipException;
import levelback.player.desk.Desk;
import levelback.player.desk.PageId;
import levelback.player.score.ScoreReader.MarkSheet;
import levelback.player.score.ScoreReader.Opened;
import levelback.player.score.ScoreReader.PassSheet;
import levelback.player.score.ScoreReader.Queue;
import levelback.player.score.ScoreReader.QueueRow;
import levelback.player.work.BringIn;
import levelback.player.work.CannotScore;
import levelback.player.work.FrameTime;
import levelback.player.work.GiveScore;
import levelback.player.work.MarkPass;
import levelback.player.work.NamePass;
import levelback.player.work.SetTag;
import levelback.player.work.TakeOffTag;
import levelback.scoring.foot.FootSign;
import levelback.scoring.scale.GaitScale;
import levelback.scoring.scale.Sign;
import levelback.scoring.value.Leg;
import levelback.store.herd.Cow;
import levelback.store.herd.CowId;
import levelback.store.herd.Herd;
import levelback.store.herd.Score;
import levelback.store.herd.Tag;
import levelback.store.herd.Visit;
import levelback.store.herd.VisitId;
import levelback.store.lane.Pass;
import levelback.store.lane.PassId;
import levelback.store.lane.Recording;
import levelback.store.lane.RecordingId;

/**
 * State of the Score page: one immutable {@link State} and one {@link Film} at a time. It decides everything that the page
 * shows but for the frame on the screen, which the picture knows best.
 *
 * <p>Threading: every method is called on, and every property changes on, the desk's {@code ui} thread. The book is read
 * and written in the desk's background, films are opened on {@code films}. Answers to a question that is no longer the
 * newest are dropped.
 */
public final class ScoreViewModel {

    /** What the page shows. */
    public sealed interface State {
        /** The book is being read for the first time. */
        record Reading() implements State {}

        /** There is no herd yet. */
        record NoHerd() implements State {}

        /** The visit has no passes; perhaps it has recordings. */
        record NoPasses(Queue queue) implements State {}

        /**
         * A pass is judged.
         *
         * @param leg the leg that the next sign or finding goes to
         * @param askNumber whether her number is asked for before the score can be kept
         */
        record OnPass(Queue queue, PassSheet sheet, GaitScale scale, Optional<Leg> leg, boolean askNumber)
                implements State {}

        /**
         * Passes are marked on a whole recording.
         *
         * @param first first frame of the pass being marked
         * @param last last frame of it; once there, her number is asked for
         */
        record Marking(Queue queue, MarkSheet sheet, OptionalInt first, OptionalInt last) implements State {}
    }

    /** The film behind the state. */
    public sealed interface Film {
        /** None is wanted. */
        record None() implements Film {}

        /** It is being opened. */
        record Opening(String fileName) implements Film {}

        /**
         * A span of it is to be shown.
         *
         * @param at the frame to begin with
         */
        record Ready(RecordingId recording, Clip clip, int first, int last, int at) implements Film {}

        /** It can't be shown. */
        record Broken(String sentence) implements Film {}
    }

    /** Opens a film; blocking. */
    @FunctionalInterface
    public interface Opener {
        /** @throws ClipException with one sentence for a person */
        Clip open(Path file, BooleanSupplier cancelled) throws ClipException;
    }

    /** Looks a recording through to its end. */
    interface Verifier {
        /**
         * Begins; returns at once.
         *
         * @param pass the span that is wanted first
         * @param found called on any thread with the clip as it is for certain, if that was not known before
         */
        void verify(Clip clip, Span pass, Consumer<Clip> found);
    }

    private static final int CLIPS_KEPT = 6;

    private final Desk desk;
    private final Executor films;
    private Verifier verifier = (clip, pass, found) -> {};
    private final Opener opener;
    private final Clock clock;
    private final BiConsumer<Duration, Runnable> later;
    private final Function<String, Optional<GaitScale>> scales;
    private final ScoreReader reader;

    private final ReadOnlyObjectWrapper<State> state = new ReadOnlyObjectWrapper<>(this, "state", new State.Reading());
    private final ReadOnlyObjectWrapper<Film> film = new ReadOnlyObjectWrapper<>(this, "film", new Film.None());
    private final Map<RecordingId, Clip> clips = new LinkedHashMap<>();
    private final Set<Opened> opened = new HashSet<>();

    private volatile boolean closed;
    private long newestReading;
    private long newestFilm;
    private Optional<VisitId> deskVisit = Optional.empty();
    private Optional<VisitId> visit = Optional.empty();
    private Optional<PassId> pass = Optional.empty();
    private Optional<RecordingId> marking = Optional.empty();
    private OptionalInt first = OptionalInt.empty();
    private OptionalInt last = OptionalInt.empty();
    private OptionalInt goTo = OptionalInt.empty();
    private Optional<Leg> leg = Optional.empty();
    private boolean askNumber;
    private OptionalDouble pendingLevel = OptionalDouble.empty();

    /**
     * @param films runs the opening of films, which can take seconds
     * @param later runs something on the ui thread after a while
     * @param scales finds a scale by its id
     */
    public ScoreViewModel(
            Desk desk,
            Executor films,
            Opener opener,
            Clock clock,
            BiConsumer<Duration, Runnable> later,
            Function<String, Optional<GaitScale>> scales) {
        this.desk = Objects.requireNonNull(desk, "desk");
        this.films = films;
        this.opener = opener;
        this.clock = clock;
        this.later = later;
        this.scales = scales;
        this.reader = new ScoreReader(scales);
    }

    public ReadOnlyObjectProperty<State> stateProperty() {
        return state.getReadOnlyProperty();
    }

    public ReadOnlyObjectProperty<Film> filmProperty() {
        return film.getReadOnlyProperty();
    }

    /** Reads and shows nothing more. */
    public void close() {
        closed = true;
        newestReading++;
        newestFilm++;
    }

    /** Reads the book again; stays with the pass on show where it still is. */
    public void load() {
        if (closed) {
            return;
        }
        Optional<Herd> herd = desk.herd();
        if (herd.isEmpty()) {
            newestReading++;
            state.set(new State.NoHerd());
            film.set(new Film.None());
            desk.gateLine(PageId.SCORE, Words.of("gate.nothing"), 0);
            return;
        }
        Optional<VisitId> shown = desk.visit().map(Visit::id);
        if (!shown.equals(deskVisit)) {
            deskVisit = shown;
            visit = shown;
        }
        long asked = ++newestReading;
        ScoreReader.Question question = new ScoreReader.Question(
                herd.get(),
                visit.or(() -> shown),
                desk.scorer().id(),
                pass,
                marking,
                Set.copyOf(opened),
                clock.instant());
        desk.read(book -> reader.read(book, question), answer -> {
            if (asked == newestReading) {
                take(herd.get(), answer);
            }
        });
    }

    private void take(Herd herd, ScoreReader.Answer answer) {
        Queue queue = answer.queue();
        int passes = queue.rows().size();
        long left = passes - queue.settled();
        desk.gateLine(
                PageId.SCORE,
                passes == 0
                        ? Words.of("gate.nothing")
                        : left == 0 ? Words.of("gate.done") : Words.of("gate.left", left),
                passes == 0 ? 0 : (double) queue.settled() / passes);
        if (answer.marking().isPresent()) {
            MarkSheet sheet = answer.marking().get();
            state.set(new State.Marking(queue, sheet, first, last));
            Recording recording = sheet.recording();
            showFilm(recording, 0, recording.frameCount() - 1);
        } else if (answer.pass().isPresent()) {
            PassSheet sheet = answer.pass().get();
            if (!pass.equals(Optional.of(sheet.pass().id()))) {
                pass = Optional.of(sheet.pass().id());
                askNumber = false;
                pendingLevel = OptionalDouble.empty();
            }
            marking = Optional.empty();
            GaitScale scale = scales.apply(herd.scaleId())
                    .orElseThrow(() -> new IllegalStateException("no scale " + herd.scaleId()));
            state.set(new State.OnPass(queue, sheet, scale, leg, askNumber));
            showFilm(sheet.recording(), sheet.pass().fromFrame(), sheet.pass().toFrame());
            openInTime(sheet);
        } else {
            marking = Optional.empty();
            state.set(new State.NoPasses(queue));
            newestFilm++;
            film.set(new Film.None());
        }
    }

    private void openInTime(PassSheet sheet) {
        if (sheet.mine().isEmpty()) {
            return;
        }
        Score score = sheet.mine().get();
        if (sheet.open()) {
            opened.add(openedBy(score));
            return;
        }
        Duration left = Duration.between(clock.instant(), score.at().plus(GiveScore.SHUT_FOR));
        later.accept(left.isNegative() ? Duration.ZERO : left, () -> {
            if (onPass().flatMap(on -> on.sheet().mine()).equals(Optional.of(score))) {
                load();
            }
        });
    }

    private static Opened openedBy(Score score) {
        return new Opened(score.cow(), score.visit(), score.scorer());
    }

    // Where to be.

    /** Goes to a pass at a frame numbered in the recording, whatever visit it belongs to. */
    public void openPass(PassId id, OptionalInt recordingFrame) {
        Optional<Herd> herd = desk.herd();
        desk.read(
                book -> book.lane()
                        .pass(id)
                        .flatMap(p -> book.lane().recording(p.recording()))
                        .flatMap(recording -> herd.flatMap(h -> book.herd().visits(h.id()).stream()
                                .filter(v -> v.id().equals(recording.visit()))
                                .findFirst())),
                of -> {
                    if (of.isEmpty()) {
                        desk.error(Words.of("error.noPass"));
                        return;
                    }
                    goTo = recordingFrame;
                    pass = Optional.of(id);
                    stopMarking();
                    turnTo(of.get());
                });
    }

    /** Turns the desk to a visit, and reads it. */
    private void turnTo(Visit to) {
        visit = Optional.of(to.id());
        if (!desk.visit().map(Visit::id).equals(visit)) {
            desk.show(to);
        }
        deskVisit = desk.visit().map(Visit::id);
        load();
    }

    /** Goes to a pass of the queue. */
    public void select(PassId id) {
        goTo = OptionalInt.empty();
        turnTo(id);
    }

    private void turnTo(PassId id) {
        if (!pass.equals(Optional.of(id))) {
            askNumber = false;
            pendingLevel = OptionalDouble.empty();
        }
        pass = Optional.of(id);
        stopMarking();
        load();
    }

    private void stopMarking() {
        marking = Optional.empty();
        first = OptionalInt.empty();
        last = OptionalInt.empty();
    }

    /** Goes some passes on in the queue, or back. */
    public void turn(int passes) {
        onPass().ifPresent(on -> {
            int to = on.queue().indexOf(on.sheet().pass().id()) + passes;
            if (to >= 0 && to < on.queue().rows().size()) {
                select(on.queue().rows().get(to).pass());
            }
        });
    }

    /** Closes the judgement of this pass, so that a later change counts as seen, and goes to the next open one. */
    public void next() {
        if (state.get() instanceof State.Marking m) {
            stopMarking();
            Optional<QueueRow> open =
                    m.queue().rows().stream().filter(row -> !row.settled()).findFirst();
            open.ifPresentOrElse(row -> select(row.pass()), this::load);
            return;
        }
        onPass().ifPresent(on -> {
            on.sheet().mine().ifPresent(score -> opened.add(openedBy(score)));
            Optional<QueueRow> open = on.queue().nextOpen(on.sheet().pass().id());
            if (open.isPresent()) {
                select(open.get().pass());
            } else {
                boolean all = on.queue().settled() == on.queue().rows().size();
                desk.message(all ? Words.of("done.all", on.queue().rows().size()) : Words.of("done.onlyThis"));
                load();
            }
        });
    }

    // What is said of her.

    /** Gives a score; it is saved at once. */
    public void score(double level) {
        onPass().ifPresent(on -> {
            if (!on.scale().allows(level)) {
                desk.message(Words.of("score.notOnScale", on.scale().name(), Words.level(level)));
                return;
            }
            if (on.sheet().cow().isEmpty()) {
                pendingLevel = OptionalDouble.of(level);
                ask(true);
                return;
            }
            Cow cow = on.sheet().cow().get();
            GiveScore.Judgement said = judgement(on, cow.id(), level);
            desk.step(
                    Words.of("step.scored", Words.level(level), cow.number()),
                    book -> new GiveScore(book).give(said),
                    score -> load());
        });
    }

    private GiveScore.Judgement judgement(State.OnPass on, CowId cow, double level) {
        VisitId at = on.sheet().recording().visit();
        boolean earlierOpen = opened.contains(new Opened(cow, at, desk.scorer().id()));
        return new GiveScore.Judgement(
                cow,
                at,
                Optional.of(on.sheet().pass().id()),
                desk.scorer().id(),
                Optional.empty(),
                on.scale(),
                level,
                clock.instant(),
                earlierOpen);
    }

    /** Adds a half to the score in force, on a scale that has halves. */
    public void half() {
        onPass().ifPresent(on -> {
            if (on.scale().step() > 0.5) {
                desk.message(Words.of("score.noHalves", on.scale().name()));
            } else if (on.sheet().mine().isEmpty()) {
                desk.message(Words.of("score.halfOfWhat"));
            } else {
                score(Math.floor(on.sheet().mine().get().level()) + 0.5);
            }
        });
    }

    /** Chooses the leg for what comes next; the same again chooses none. */
    public void leg(Leg chosen) {
        onPass().ifPresent(on -> {
            leg = leg.equals(Optional.of(chosen)) ? Optional.empty() : Optional.of(chosen);
            state.set(new State.OnPass(on.queue(), on.sheet(), on.scale(), leg, askNumber));
        });
    }

    /** Tags a sign at a frame, on the chosen leg where it belongs to one. */
    public void sign(Sign sign, int recordingFrame) {
        onPass().ifPresent(on -> moment(on, recordingFrame).ifPresent(moment -> {
            if (sign.isOfALeg() && leg.isEmpty()) {
                desk.message(Words.of("sign.legFirst", Words.of("sign." + sign.key())));
                return;
            }
            Optional<Leg> of = sign.isOfALeg() ? leg : Optional.empty();
            desk.step(
                    step("step.tagged", of, Words.of("sign." + sign.key()), on, recordingFrame),
                    book -> new SetTag(book).sign(moment, sign, of),
                    tag -> load());
        }));
    }

    /** Keeps a foot finding of the chosen leg at a frame; false if no leg is chosen. */
    public boolean finding(FootSign finding, int recordingFrame) {
        Optional<State.OnPass> on = onPass();
        if (on.isEmpty()) {
            return false;
        }
        if (leg.isEmpty()) {
            desk.message(Words.of("finding.legFirst"));
            return false;
        }
        Leg of = leg.get();
        moment(on.get(), recordingFrame)
                .ifPresent(moment -> desk.step(
                        step("step.tagged", leg, Words.of("finding." + finding.key()), on.get(), recordingFrame),
                        book -> new SetTag(book).footFinding(moment, finding, of, ""),
                        tag -> load()));
        return true;
    }

    /** Takes off the newest tag of this scorer at a frame. */
    public void takeOffAt(int recordingFrame) {
        onPass().ifPresent(on -> {
            Optional<Tag> here = on.sheet().tags().stream()
                    .filter(tag -> tag.recordingFrame() == recordingFrame
                            && tag.by().equals(desk.scorer().id()))
                    .reduce((a, b) -> b);
            here.ifPresentOrElse(this::takeOff, () -> desk.message(Words.of("tag.noneHere")));
        });
    }

    /** Takes off a tag. */
    public void takeOff(Tag tag) {
        onPass().ifPresent(on -> desk.step(
                step("step.tookOff", tag.leg(), tagText(tag), on, tag.recordingFrame()),
                book -> {
                    new TakeOffTag(book).takeOff(tag.id());
                    return tag;
                },
                done -> load()));
    }

    /** Keeps that the pass can't be scored, and why. */
    public void cannotScore(String reason, int recordingFrame) {
        onPass().ifPresent(on -> moment(on, recordingFrame)
                .ifPresent(moment -> desk.step(
                        Words.of("step.cannot", nameOf(on.sheet()), reason),
                        book -> new CannotScore(book)
                                .cannot(moment.pass(), moment.by(), reason, recordingFrame, moment.time(), moment.at()),
                        tag -> next())));
    }

    /** The word on screen for a tag. */
    static String tagText(Tag tag) {
        return Words.of((tag.kind() == Tag.Kind.SIGN ? "sign." : "finding.") + tag.key());
    }

    private static String nameOf(PassSheet sheet) {
        return sheet.cow().map(cow -> Words.of("cow.called", cow.number())).orElse(Words.of("cow.unknown"));
    }

    private static String step(String key, Optional<Leg> of, String text, State.OnPass on, int recordingFrame) {
        return Words.of(
                key,
                of.map(l -> l + " ").orElse("") + text,
                nameOf(on.sheet()),
                Integer.toString(recordingFrame - on.sheet().pass().fromFrame() + 1));
    }

    private Optional<SetTag.Moment> moment(State.OnPass on, int recordingFrame) {
        Clip clip = clips.get(on.sheet().recording().id());
        if (clip == null) {
            desk.message(Words.of("film.notYet"));
            return Optional.empty();
        }
        return Optional.of(new SetTag.Moment(
                on.sheet().pass().id(),
                desk.scorer().id(),
                recordingFrame,
                FrameTime.of(clip, recordingFrame),
                clock.instant()));
    }

    // Who she is.

    /** Asks for her number, or stops asking. */
    public void ask(boolean asking) {
        askNumber = asking;
        if (!asking) {
            pendingLevel = OptionalDouble.empty();
        }
        if (state.get() instanceof State.Marking m && !asking) {
            last = OptionalInt.empty();
            state.set(new State.Marking(m.queue(), m.sheet(), first, last));
        }
        onPass().ifPresent(on -> state.set(new State.OnPass(on.queue(), on.sheet(), on.scale(), leg, askNumber)));
    }

    /** Takes her number as typed; blank leaves her unknown. */
    public void number(String typed) {
        String number = typed.strip();
        if (state.get() instanceof State.Marking m) {
            mark(m, number);
            return;
        }
        Optional<Herd> herd = desk.herd();
        onPass().filter(on -> herd.isPresent()).ifPresent(on -> {
            if (number.isEmpty()) {
                ask(false);
                return;
            }
            OptionalDouble level = pendingLevel;
            PassId id = on.sheet().pass().id();
            String words = level.isPresent()
                    ? Words.of("step.namedAndScored", number, Words.level(level.getAsDouble()))
                    : Words.of("step.named", number);
            desk.step(
                    words,
                    book -> {
                        Cow cow = new NamePass(book).name(herd.get(), id, number);
                        level.ifPresent(l -> new GiveScore(book).give(judgement(on, cow.id(), l)));
                        return cow;
                    },
                    cow -> {
                        ask(false);
                        load();
                    });
        });
    }

    // Recordings.

    /** Shows a whole recording, to mark passes on it. */
    public void markOn(RecordingId recording) {
        stopMarking();
        marking = Optional.of(recording);
        goTo = OptionalInt.empty();
        load();
    }

    /** Shows the whole recording of the pass on show, or goes back to the passes. */
    public void toggleMarking() {
        if (state.get() instanceof State.Marking) {
            stopMarking();
            load();
        } else if (state.get() instanceof State.OnPass on) {
            markOn(on.sheet().recording().id());
        } else if (state.get() instanceof State.NoPasses none
                && !none.queue().recordings().isEmpty()) {
            markOn(none.queue().recordings().get(0).id());
        }
    }

    /** The pass being marked begins at this frame. */
    public void markFirst(int recordingFrame) {
        if (state.get() instanceof State.Marking m) {
            first = OptionalInt.of(recordingFrame);
            last = OptionalInt.empty();
            state.set(new State.Marking(m.queue(), m.sheet(), first, last));
        }
    }

    /** The pass being marked ends at this frame; her number is asked for. */
    public void markLast(int recordingFrame) {
        if (state.get() instanceof State.Marking m) {
            if (first.isEmpty()) {
                desk.message(Words.of("mark.firstFirst"));
            } else if (recordingFrame < first.getAsInt()) {
                desk.message(Words.of("mark.before", recordingFrame, first.getAsInt()));
            } else {
                last = OptionalInt.of(recordingFrame);
                state.set(new State.Marking(m.queue(), m.sheet(), first, last));
            }
        }
    }

    private void mark(State.Marking m, String number) {
        Optional<Herd> herd = desk.herd();
        Clip clip = clips.get(m.sheet().recording().id());
        if (herd.isEmpty() || clip == null || first.isEmpty() || last.isEmpty()) {
            return;
        }
        int from = first.getAsInt();
        int to = last.getAsInt();
        Optional<String> typed = number.isEmpty() ? Optional.empty() : Optional.of(number);
        desk.step(
                typed.map(n -> Words.of("step.marked", Words.of("cow.called", n), from, to))
                        .orElse(Words.of("step.marked", Words.of("cow.unknown"), from, to)),
                book -> new MarkPass(book)
                        .mark(herd.get(), m.sheet().recording(), clip, from, to, Pass.Direction.UNKNOWN, typed),
                marked -> {
                    first = OptionalInt.empty();
                    last = OptionalInt.empty();
                    goTo = OptionalInt.empty();
                    pass = Optional.of(marked.id());
                    load();
                });
    }

    /** Brings recordings in, one after another, in the background. */
    public void bringIn(List<Path> files) {
        Optional<Herd> herd = desk.herd();
        if (herd.isEmpty()) {
            desk.error(Words.of("error.noHerd"));
            return;
        }
        Optional<Visit> onShow = desk.visit();
        for (Path file : files) {
            AtomicBoolean stop = new AtomicBoolean();
            String name = String.valueOf(file.getFileName());
            Desk.Job job = desk.job(Words.of("job.reading", name), () -> stop.set(true));
            films.execute(() -> {
                try {
                    Clip clip = opener.open(file, stop::get);
                    desk.ui().execute(() -> keep(herd.get(), onShow, clip, name));
                } catch (ClipException e) {
                    if (e.reason() != ClipException.Reason.CANCELLED) {
                        sayInUi(String.valueOf(e.getMessage()));
                    }
                } catch (RuntimeException | LinkageError e) { // task boundary
                    log("bringing in " + name, e);
                    sayInUi(Words.of("error.bringIn", name));
                } finally {
                    job.close();
                }
            });
        }
    }

    private void keep(Herd herd, Optional<Visit> onShow, Clip clip, String name) {
        desk.step(
                Words.of("step.broughtIn", name),
                book -> new BringIn(book, clock).keep(clip, herd, onShow),
                arrival -> {
                    remember(arrival.recording().id(), clip);
                    desk.message(arrival.wasThere() ? Words.of("in.again", name) : Words.of("in.new", name));
                    stopMarking();
                    marking = Optional.of(arrival.recording().id());
                    goTo = OptionalInt.empty();
                    turnTo(arrival.visit());
                });
    }

    private void sayInUi(String sentence) {
        desk.ui().execute(() -> desk.error(sentence));
    }

    private static void log(String what, Throwable problem) {
        System.getLogger(ScoreViewModel.class.getName()).log(System.Logger.Level.ERROR, what, problem);
    }

    // The film.

    private void showFilm(Recording recording, int from, int to) {
        Clip known = clips.get(recording.id());
        if (known != null) {
            newestFilm++;
            ready(recording, known, from, to);
            return;
        }
        long asked = ++newestFilm;
        String name = String.valueOf(recording.file().getFileName());
        film.set(new Film.Opening(name));
        films.execute(() -> {
            Film outcome = null;
            try {
                Clip clip = opener.open(recording.file(), () -> false);
                desk.ui().execute(() -> {
                    remember(recording.id(), clip);
                    if (asked == newestFilm) {
                        ready(recording, clip, from, to);
                    }
                });
            } catch (ClipException e) {
                outcome = new Film.Broken(
                        e.reason() == ClipException.Reason.NOT_A_FILE
                                ? Words.of(
                                        "film.gone",
                                        name,
                                        String.valueOf(recording.file().getParent()))
                                : String.valueOf(e.getMessage()));
            } catch (RuntimeException | LinkageError e) { // task boundary
                log("opening " + name, e);
                outcome = new Film.Broken(Words.of("film.failed", name));
            }
            Film broken = outcome;
            if (broken != null) {
                desk.ui().execute(() -> {
                    if (asked == newestFilm) {
                        film.set(broken);
                    }
                });
            }
        });
    }

    private void ready(Recording recording, Clip clip, int from, int to) {
        int end = Math.min(to, clip.index().frames().size() - 1);
        int at = goTo.orElse(Math.min(from, end));
        boolean goes = goTo.isPresent();
        goTo = OptionalInt.empty();
        Film.Ready wanted = new Film.Ready(recording.id(), clip, Math.min(from, end), end, at);
        if (!goes
                && film.get() instanceof Film.Ready now
                && now.clip() == clip
                && now.first() == wanted.first()
                && now.last() == wanted.last()) {
            return; // the picture stays where it is
        }
        clips.remove(recording.id());
        clips.put(recording.id(), clip); // the newest: the one on show is the last to be forgotten
        film.set(wanted);
        openAhead();
        verifier.verify(
                clip,
                new Span(wanted.first(), wanted.last()),
                certain -> desk.ui().execute(() -> verified(recording, clip, certain)));
    }

    /** What packets and pictures differ in comes on the page; where they agree nothing moves. */
    private void verified(Recording recording, Clip before, Clip certain) {
        if (clips.get(recording.id()) != before) {
            return;
        }
        remember(recording.id(), certain);
        if (film.get() instanceof Film.Ready now
                && now.clip() == before
                && !(certain.facts().equals(before.facts()) && certain.index().equals(before.index()))) {
            int end = certain.index().frames().size() - 1;
            film.set(new Film.Ready(
                    recording.id(),
                    certain,
                    Math.min(now.first(), end),
                    Math.min(now.last(), end),
                    Math.min(now.at(), end)));
        }
    }

    /** Has recordings that were indexed by their packets looked through in the background. */
    void verifyWith(Verifier other) {
        verifier = other;
    }

    /** The pass that comes after this one, where it is in the same recording. */
    Optional<Span> nextSpan() {
        return onPass().flatMap(on -> on.queue()
                .nextOpen(on.sheet().pass().id())
                .filter(row -> row.recording().equals(on.sheet().recording().id()))
                .map(ScoreReader.QueueRow::frames));
    }

    /** Opens the recording of the next pass to score while this one is judged; if it can't be, that is said when it is due. */
    private void openAhead() {
        Optional<RecordingId> next = onPass().flatMap(
                        on -> on.queue().nextOpen(on.sheet().pass().id()))
                .map(QueueRow::recording)
                .filter(id -> !clips.containsKey(id));
        next.ifPresent(id -> desk.read(
                book -> book.lane().recording(id),
                found -> found.ifPresent(recording -> films.execute(() -> openAhead(recording)))));
    }

    private void openAhead(Recording recording) {
        try {
            Clip clip = opener.open(recording.file(), () -> closed);
            desk.ui().execute(() -> {
                if (!clips.containsKey(recording.id())) {
                    remember(recording.id(), clip);
                }
            });
        } catch (ClipException e) {
            // She is not on show yet: the sentence comes when she is.
        } catch (RuntimeException | LinkageError e) { // task boundary
            log("opening ahead " + recording.file().getFileName(), e);
        }
    }

    /** Whether a recording is open. */
    boolean isOpen(RecordingId recording) {
        return clips.containsKey(recording);
    }

    private void remember(RecordingId recording, Clip clip) {
        clips.put(recording, clip);
        while (clips.size() > CLIPS_KEPT) {
            clips.remove(clips.keySet().iterator().next());
        }
    }

    private Optional<State.OnPass> onPass() {
        return state.get() instanceof State.OnPass on ? Optional.of(on) : Optional.empty();
    }

    /** The signs in the order of their keys. */
    static List<Sign> signs() {
        return Arrays.asList(Sign.values());
    }
}
