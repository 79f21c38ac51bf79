package levelback.player.trim;

import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import levelback.player.desk.Desk;
import levelback.player.desk.PageId;
import levelback.player.work.ChangeFinding;
import levelback.player.work.Chute;
import levelback.player.work.ChuteCow;
import levelback.player.work.ChuteRow;
import levelback.player.work.CloseCard;
import levelback.player.work.FindingDraft;
import levelback.player.work.KeepPhoto;
import levelback.player.work.ListChute;
import levelback.player.work.LookAgain;
import levelback.player.work.NoLesion;
import levelback.player.work.ReadChuteCow;
import levelback.player.work.RefuseLift;
import levelback.player.work.SetActions;
import levelback.player.work.WriteFinding;
import levelback.player.work.WriteMedicine;
import levelback.scoring.foot.Claw;
import levelback.scoring.foot.FootAction;
import levelback.scoring.foot.Lesion;
import levelback.scoring.foot.Lesions;
import levelback.scoring.value.Leg;
import levelback.store.book.Book;
import levelback.store.herd.CowId;
import levelback.store.herd.Herd;
import levelback.store.herd.Visit;
import levelback.store.trim.Finding;
import levelback.store.trim.FindingId;
import levelback.store.trim.MedicineNote;

/**
 * State of the Trim page: one immutable {@link TrimState} at a time.
 *
 * <p>Threading: every public method is called on, and the state changes on, the JavaFX thread ({@link Desk#ui()}); reading
 * and writing go through the desk's background. Every touch that says something is written at once, as a step of its own,
 * and shown when the book has it; an answer that a later question has overtaken is dropped.
 *
 * <p>A touched zone serves one code. A code without one is written on its usual zone, not confirmed, until a zone is
 * touched; then how bad it is completes it.
 */
final class TrimViewModel {

    /** The stages, in the order of their keys. */
    static final List<String> STAGES = List.of("M1", "M2", "M3", "M4", "M4.1");

    private record Snapshot(List<ChuteRow> list, Optional<ChuteCow> cow) {}

    private final Desk desk;
    private final Clock clock;
    private final TrimWords words;
    private final FootMap map = FootMap.of(FootMap.Layer.WHOLE);
    private final ReadOnlyObjectWrapper<TrimState> state =
            new ReadOnlyObjectWrapper<>(this, "state", new TrimState.Reading());

    private Optional<CowId> inChute = Optional.empty();
    private Optional<LocalDate> chosenDay = Optional.empty();
    private Optional<Visit> visitShown = Optional.empty();
    private int newestReading;
    private int stepsUnderWay;

    TrimViewModel(Desk desk, Clock clock, TrimWords words) {
        this.desk = desk;
        this.clock = clock;
        this.words = words;
    }

    ReadOnlyObjectProperty<TrimState> stateProperty() {
        return state.getReadOnlyProperty();
    }

    TrimState state() {
        return state.get();
    }

    /** The day of the cards: the visit's, unless another was chosen; today where there is no visit. */
    LocalDate day() {
        return chosenDay.orElseGet(this::usualDay);
    }

    /** The visit's day; today by the farm's calendar where there is no visit. */
    LocalDate usualDay() {
        return desk.visit()
                .map(Visit::date)
                .orElseGet(() -> LocalDate.now(
                        desk.herd().map(h -> clock.withZone(h.zone())).orElse(clock)));
    }

    /** Sets the day of the cards. */
    void setDay(LocalDate day) {
        chosenDay = Optional.of(day);
        refresh();
    }

    /** Reads the book again; a visit changed elsewhere puts the day back to the visit's. */
    void refresh() {
        if (!desk.visit().map(Visit::id).equals(visitShown.map(Visit::id))) {
            visitShown = desk.visit();
            chosenDay = Optional.empty();
            inChute = Optional.empty();
        }
        int reading = ++newestReading;
        Optional<Herd> herd = desk.herd();
        Optional<Visit> visit = desk.visit();
        LocalDate day = day();
        Optional<CowId> cow = inChute;
        desk.read(
                book -> new Snapshot(
                        visit.map(v -> new ListChute(book).list(v, day)).orElse(List.of()),
                        cow.map(id -> new ReadChuteCow(book).read(id, day))),
                read -> {
                    if (reading == newestReading) {
                        show(herd.isPresent(), day, read);
                    }
                });
    }

    private void show(boolean herd, LocalDate day, Snapshot read) {
        long done = read.list().stream().filter(ChuteRow::done).count();
        int all = read.list().size();
        desk.gateLine(
                PageId.TRIM,
                all == 0 ? words.text("gate.nothing") : words.text("gate", done, all),
                all == 0 ? 0 : (double) done / all);
        if (read.cow().isEmpty()) {
            state.set(new TrimState.Empty(herd, day, read.list()));
            return;
        }
        ChuteCow cow = read.cow().get();
        if (state.get() instanceof TrimState.InChute was
                && was.cow().cow().id().equals(cow.cow().id())
                && was.day().equals(day)) {
            // A line taken back by undo must not be completed; one still on its way to the book is not missed yet.
            boolean gone = stepsUnderWay == 0
                    && was.entry().line().isPresent()
                    && line(cow, was.entry().line().get().id()).isEmpty();
            Entry entry = gone ? was.entry().another() : was.entry();
            state.set(new TrimState.InChute(day, read.list(), cow, entry, was.question()));
        } else {
            Leg leg = firstFoot(read.list(), cow);
            state.set(new TrimState.InChute(
                    day, read.list(), cow, Entry.of(leg, WriteFinding.usualClaw(leg), false), Optional.empty()));
        }
    }

    private static Leg firstFoot(List<ChuteRow> list, ChuteCow cow) {
        return list.stream()
                .filter(row -> row.cow().id().equals(cow.cow().id()))
                .findFirst()
                .flatMap(ChuteRow::firstFoot)
                // No leg named: hind feet carry most lesions, so start with one of them.
                .orElse(Leg.RH);
    }

    static Optional<Finding> line(ChuteCow cow, FindingId id) {
        return cow.card().stream()
                .flatMap(card -> card.feet().stream())
                .flatMap(foot -> foot.findings().stream())
                .filter(finding -> finding.id().equals(id))
                .findFirst();
    }

    // Who is in the chute.

    void open(CowId cow) {
        inChute = Optional.of(cow);
        refresh();
    }

    /** Opens the cow that carries a number; an unknown number is a sentence in the sill. */
    void openNumber(String number) {
        Optional<Herd> herd = desk.herd();
        if (number.isBlank() || herd.isEmpty()) {
            return;
        }
        LocalDate day = day();
        desk.read(book -> new ReadChuteCow(book).byNumber(herd.get().id(), number, day), this::open);
    }

    /** Opens the first cow of the list that is still to do. */
    void startList() {
        List<ChuteRow> list = state.get() instanceof TrimState.Empty empty ? empty.list() : List.of();
        list.stream()
                .filter(row -> !row.done())
                .findFirst()
                .ifPresent(row -> open(row.cow().id()));
    }

    /** Lets the cow out without closing her card. */
    void leave() {
        inChute = Optional.empty();
        refresh();
    }

    // Which foot, which zone.

    void foot(Leg leg) {
        inChute(now -> {
            if (leg == now.entry().leg()) {
                return now.with(now.entry().another());
            }
            return now.with(Entry.of(
                            leg, WriteFinding.usualClaw(leg), now.entry().toesUp()))
                    .ask(Optional.empty());
        });
    }

    /** Takes the next foot: the partner first, then the other pair. Says so where nothing was written on the one put down. */
    void nextFoot() {
        chute().ifPresent(now -> {
            Leg leg = now.entry().leg();
            if (now.cow().foot(leg).isEmpty() && stepsUnderWay == 0) {
                desk.message(words.text("message.stays", leg));
            }
            boolean partnerNext = now.cow().foot(leg.partner()).isEmpty();
            foot(partnerNext ? leg.partner() : leg.partner().sameSide());
        });
    }

    /** Points at a zone. It goes to the line that still lacks one, to the line being changed, or to the next code. */
    void zone(ClawZone zone) {
        chute().ifPresent(now -> {
            Entry entry = now.entry();
            if (entry.line().isPresent()
                    && (entry.changing() || !entry.line().get().placed())) {
                Entry.Line line = entry.line().get();
                entry(entry.choose(zone).withLine(new Entry.Line(line.id(), line.lesion(), true, false, line.said())));
                write(
                        words.text("step.place", entry.leg(), words.place(zone), line.lesion(), number(now)),
                        (book, chute) -> new ChangeFinding(book).place(chute, line.id(), zone.claw(), zone.zone()));
            } else {
                entry(entry.withoutLine().choose(zone));
            }
        });
    }

    /** Moves the chosen zone on the screen. */
    void move(int dx, int dy) {
        inChute(now -> {
            Entry entry = now.entry();
            ClawZone from = entry.chosen().orElse(new ClawZone(entry.claw(), 4));
            Optional<ClawZone> to = FootMap.next(map.placed(entry.leg(), entry.toesUp(), 556, 490), from, dx, dy);
            if (to.isEmpty()) {
                return now;
            }
            boolean lineWaits = entry.line().isPresent()
                    && (entry.changing() || !entry.line().get().placed());
            if (!lineWaits) {
                return now.with(entry.withoutLine().choose(to.get()));
            }
            Entry.Line line = entry.line().get();
            return now.with(entry.choose(to.get())
                    .withLine(new Entry.Line(line.id(), line.lesion(), line.placed(), true, line.said())));
        });
    }

    /** Confirms the zone that is chosen for the line, usual or moved to. */
    void confirmZone() {
        chute().ifPresent(now -> now.entry().chosen().ifPresent(this::zone));
    }

    void swapClaw() {
        inChute(now -> now.with(now.entry().swapClaw()));
    }

    void turn() {
        inChute(now -> now.with(now.entry().turn()));
    }

    void more(int page) {
        inChute(now -> now.with(now.entry().more(page)));
    }

    // What, how bad.

    /** Writes a code: on the zone pointed at, else on its usual one. Under change it replaces the line's code. */
    void code(String code) {
        chute().ifPresent(now -> {
            Entry entry = now.entry();
            Leg leg = entry.leg();
            Optional<Lesion> lesion = Lesions.byCode(code);
            if (lesion.isEmpty()) {
                return;
            }
            if (entry.changing() && entry.line().isPresent()) {
                Entry.Line line = entry.line().get();
                entry(entry.withLine(new Entry.Line(line.id(), code, line.placed(), line.moved(), false)));
                write(
                        words.text("step.code", leg, code, number(now)),
                        (book, chute) -> new ChangeFinding(book).lesion(chute, line.id(), code));
                return;
            }
            Optional<ClawZone> touched = entry.line().isEmpty() ? entry.chosen() : Optional.empty();
            OptionalInt usual = lesion.get().usualZones().stream()
                    .mapToInt(Integer::intValue)
                    .findFirst();
            FindingId id = FindingId.fresh();
            FindingDraft draft = new FindingDraft(
                    Optional.of(touched.map(ClawZone::claw).orElse(entry.claw())),
                    touched.map(z -> OptionalInt.of(z.zone())).orElse(OptionalInt.empty()),
                    code,
                    OptionalInt.empty(),
                    "",
                    "");
            Entry next = touched.isPresent() || usual.isEmpty()
                    ? entry.another()
                    : entry.another().choose(ClawZone.of(entry.claw(), usual.getAsInt()));
            next = touched.isPresent() ? next.choose(touched.get()) : next;
            // A code that has no usual zone (a whole claw out of shape) waits for none.
            boolean placed = touched.isPresent() || usual.isEmpty();
            entry(next.withLine(new Entry.Line(id, code, placed, false, false)));
            String place = touched.map(words::place).orElseGet(() -> words.place(entry.claw(), usual, false));
            write(
                    words.text("step.wrote", leg, place, code, number(now)),
                    (book, chute) -> new WriteFinding(book).write(chute, leg, id, draft));
        });
    }

    /** Says how bad the last line is: the n-th key, severity or stage. */
    void howBad(int key) {
        chute().ifPresent(now -> {
            Entry entry = now.entry();
            if (entry.line().isEmpty()) {
                desk.message(words.text("message.whatFirst"));
                return;
            }
            Entry.Line line = entry.line().get();
            boolean staged = Lesions.byCode(line.lesion()).map(Lesion::staged).orElse(false);
            if (key < 1 || key > (staged ? STAGES.size() : 3)) {
                return;
            }
            Optional<ClawZone> moved = line.moved() ? entry.chosen() : Optional.empty();
            entry(entry.withLine(
                    new Entry.Line(line.id(), line.lesion(), line.placed() || moved.isPresent(), false, true)));
            String said = staged ? STAGES.get(key - 1) : Integer.toString(key);
            write(words.text("step.howBad", entry.leg(), line.lesion(), said, number(now)), (book, chute) -> {
                moved.ifPresent(z -> new ChangeFinding(book).place(chute, line.id(), z.claw(), z.zone()));
                return staged
                        ? new ChangeFinding(book).stage(chute, line.id(), said)
                        : new ChangeFinding(book).severity(chute, line.id(), key);
            });
        });
    }

    /** Says, or takes back, that the foot in hand was looked at and nothing found. */
    void noLesion() {
        chute().ifPresent(now -> {
            Leg leg = now.entry().leg();
            boolean said = now.cow().foot(leg).map(f -> f.foot().noLesion()).orElse(false);
            entry(now.entry().another());
            write(words.text(said ? "step.noLesionBack" : "step.noLesion", leg, number(now)), (book, chute) -> {
                if (said) {
                    new NoLesion(book).takeBack(chute, leg);
                } else {
                    new NoLesion(book).say(chute, leg);
                }
                return leg;
            });
        });
    }

    /** Starts or ends the correction of a line. */
    void change(FindingId id) {
        inChute(now -> {
            Entry entry = now.entry();
            if (entry.changing() && entry.line().map(l -> l.id().equals(id)).orElse(false)) {
                return now.with(entry.change(false));
            }
            return line(now.cow(), id)
                    .map(finding -> {
                        Optional<Leg> leg = legOf(now.cow(), id);
                        Entry on = Entry.of(leg.orElse(entry.leg()), entry.claw(), entry.toesUp());
                        if (finding.zone().isPresent()) {
                            on = on.choose(
                                    ClawZone.of(finding.claw(), finding.zone().getAsInt()));
                        }
                        boolean said = finding.severity().isPresent()
                                || !finding.stage().isEmpty();
                        return now.with(
                                on.withLine(new Entry.Line(id, finding.lesion(), finding.zoneConfirmed(), false, said))
                                        .change(true));
                    })
                    .orElse(now);
        });
    }

    private static Optional<Leg> legOf(ChuteCow cow, FindingId id) {
        return cow.card().stream()
                .flatMap(card -> card.feet().stream())
                .filter(foot -> foot.findings().stream().anyMatch(f -> f.id().equals(id)))
                .map(foot -> foot.foot().leg())
                .findFirst();
    }

    void takeOff(FindingId id) {
        chute().ifPresent(now -> {
            String code = line(now.cow(), id).map(Finding::lesion).orElse("");
            entry(now.entry().another());
            write(words.text("step.takeOff", now.entry().leg(), code, number(now)), (book, chute) -> {
                new ChangeFinding(book).takeOff(chute, id);
                return id;
            });
        });
    }

    // What was done, what follows.

    /** Adds or takes away one thing done; a block on a claw with an injury is asked about first. */
    void action(FootAction action) {
        chute().ifPresent(now -> {
            Leg leg = now.entry().leg();
            boolean was =
                    now.cow().foot(leg).map(f -> f.actions().contains(action)).orElse(false);
            Optional<Claw> claw = SetActions.blockedClaw(action);
            List<String> injuries = claw.isEmpty() || was
                    ? List.of()
                    : SetActions.injuriesOf(
                            now.cow().foot(leg).map(f -> f.findings()).orElse(List.of()), claw.get());
            if (injuries.isEmpty()) {
                toggle(now, leg, action, was, false);
            } else {
                state.set(now.ask(Optional.of(new Question.BlockOnInjuredClaw(leg, action, injuries))));
            }
        });
    }

    private void toggle(TrimState.InChute now, Leg leg, FootAction action, boolean was, boolean meant) {
        write(words.text(was ? "step.notDone" : "step.done", leg, words.action(action), number(now)), (book, chute) -> {
            new SetActions(book).toggle(chute, leg, action, meant);
            return action;
        });
    }

    /** The block key of chute mode: on the claw across from the finding. */
    FootAction blockOnSound(TrimState.InChute now) {
        Claw hurt = now.entry()
                .line()
                .flatMap(line -> line(now.cow(), line.id()))
                .map(Finding::claw)
                .orElse(now.entry().claw());
        return hurt == Claw.MEDIAL ? FootAction.BLOCK_OUTER : FootAction.BLOCK_INNER;
    }

    void medicine(MedicineNote note) {
        chute().ifPresent(now -> {
            Optional<MedicineNote> was = now.cow().card().flatMap(card -> card.medicine());
            if (was.map(note::equals).orElseGet(() -> note.equals(NOTHING_GIVEN))) {
                return;
            }
            write(words.text("step.medicine", number(now)), (book, chute) -> {
                new WriteMedicine(book).write(chute, note);
                return note;
            });
        });
    }

    /** A medicine note with nothing typed. */
    static final MedicineNote NOTHING_GIVEN = new MedicineNote("", "", "", "", "", "", "", "");

    void lookAgain(Optional<LocalDate> day) {
        chute().ifPresent(now -> {
            if (now.cow().card().flatMap(c -> c.lookAgainOn()).equals(day)) {
                return;
            }
            write(
                    day.map(d -> words.text("step.lookAgain", words.dayInRow(d), number(now)))
                            .orElse(words.text("step.lookAgainNot", number(now))),
                    (book, chute) -> {
                        new LookAgain(book).on(chute, day);
                        return day;
                    });
        });
    }

    /** The key that sets the usual day, or takes the day off. */
    void lookAgainUsual() {
        chute().ifPresent(now -> lookAgain(
                now.cow().card().flatMap(c -> c.lookAgainOn()).isPresent()
                        ? Optional.empty()
                        : Optional.of(LookAgain.usualDay(now.day()))));
    }

    void photo(Path file) {
        chute().ifPresent(now -> {
            Leg leg = now.entry().leg();
            write(words.text("step.photo", leg, String.valueOf(file.getFileName()), number(now)), (book, chute) -> {
                new KeepPhoto(book).keep(chute, leg, file);
                return file;
            });
        });
    }

    // Done.

    /** Closes the card and calls the next cow of the list; asks first where something was left unsaid. */
    void cowDone() {
        chute().ifPresent(now -> {
            if (now.question().isPresent()) {
                answer(true);
                return;
            }
            List<Leg> unsaid = now.cow().card().map(CloseCard::unsaid).orElse(List.of());
            if (!unsaid.isEmpty()) {
                state.set(now.ask(Optional.of(new Question.FeetUnsaid(unsaid))));
            } else {
                close(now);
            }
        });
    }

    private void close(TrimState.InChute now) {
        Optional<CowId> next =
                now.next().stream().findFirst().map(row -> row.cow().id());
        write(
                words.text("step.cowDone", number(now)),
                (book, chute) -> {
                    new CloseCard(book).close(chute);
                    return chute;
                },
                done -> {
                    inChute = next;
                    refresh();
                });
    }

    /** Keeps a control lift as refused. */
    void refuse() {
        chute().ifPresent(now -> {
            Optional<CowId> next =
                    now.next().stream().findFirst().map(row -> row.cow().id());
            write(
                    words.text("step.refused", number(now)),
                    (book, chute) -> {
                        new RefuseLift(book).refuse(chute);
                        return chute;
                    },
                    done -> {
                        inChute = next;
                        refresh();
                    });
        });
    }

    /** Answers the question on the page. */
    void answer(boolean yes) {
        chute().ifPresent(now -> {
            Optional<Question> asked = now.question();
            TrimState.InChute answered = now.ask(Optional.empty());
            state.set(answered);
            if (!yes || asked.isEmpty()) {
                return;
            }
            if (asked.get() instanceof Question.BlockOnInjuredClaw block) {
                toggle(answered, block.leg(), block.action(), false, true);
            } else {
                close(answered);
            }
        });
    }

    // Typing.

    /** A letter of a code; the code is written as soon as it is whole. */
    void letter(char letter) {
        chute().ifPresent(now -> {
            String typed = now.entry().letters() + Character.toUpperCase(letter);
            if (LesionKeys.beginningWith(typed).isEmpty()) {
                typed = String.valueOf(Character.toUpperCase(letter));
            }
            if (LesionKeys.beginningWith(typed).isEmpty()) {
                desk.message(words.text("message.noCode", typed));
                entry(now.entry().typed(""));
            } else if (LesionKeys.all().contains(typed)) {
                entry(now.entry().typed(""));
                code(typed);
            } else {
                entry(now.entry().typed(typed));
            }
        });
    }

    /** Takes back what is half typed or open, innermost first; true if there was something. */
    boolean escape() {
        Optional<TrimState.InChute> now = chute();
        if (now.isEmpty()) {
            return false;
        }
        Entry entry = now.get().entry();
        if (now.get().question().isPresent()) {
            answer(false);
        } else if (!entry.letters().isEmpty() || entry.padZero() || entry.footNext() || entry.more() > 0) {
            entry(entry.typed("").footNext(false).more(0));
        } else if (entry.changing()
                || entry.line().isPresent()
                || entry.chosen().isPresent()) {
            entry(entry.another());
        } else {
            leave();
        }
        return true;
    }

    /** Drops answers that are still on their way. */
    void close() {
        newestReading++;
    }

    void setEntry(UnaryOperator<Entry> change) {
        inChute(now -> now.with(change.apply(now.entry())));
    }

    // Plumbing.

    Optional<TrimState.InChute> chute() {
        return state.get() instanceof TrimState.InChute now ? Optional.of(now) : Optional.empty();
    }

    private void inChute(UnaryOperator<TrimState.InChute> change) {
        chute().ifPresent(now -> state.set(change.apply(now)));
    }

    private void entry(Entry entry) {
        inChute(now -> now.with(entry));
    }

    private static String number(TrimState.InChute now) {
        return now.cow().cow().number();
    }

    @FunctionalInterface
    private interface Writing<T> {
        T write(Book book, Chute chute);
    }

    private <T> void write(String what, Writing<T> writing) {
        write(what, writing, done -> {});
    }

    private <T> void write(String what, Writing<T> writing, Consumer<T> then) {
        TrimState.InChute now = chute().orElseThrow();
        Chute chute = new Chute(now.cow().cow().id(), now.day(), desk.scorer().id());
        stepsUnderWay++;
        Function<Book, T> guarded = book -> {
            try {
                return writing.write(book, chute);
            } catch (RuntimeException e) {
                // The desk shows the sentence; the page must only forget what it thought was on its way.
                desk.ui().execute(() -> {
                    stepsUnderWay--;
                    refresh();
                });
                throw e;
            }
        };
        desk.step(what, guarded, done -> {
            stepsUnderWay--;
            then.accept(done);
            refresh();
        });
    }
}
