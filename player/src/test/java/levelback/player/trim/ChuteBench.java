package levelback.player.trim;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.Function;
import levelback.player.desk.Desk;
import levelback.player.desk.PageId;
import levelback.player.work.CardDraft;
import levelback.player.work.Chute;
import levelback.player.work.FindingDraft;
import levelback.player.work.OpenCard;
import levelback.player.work.WriteCard;
import levelback.scoring.foot.Claw;
import levelback.scoring.foot.FootAction;
import levelback.scoring.value.Leg;
import levelback.store.book.Book;
import levelback.store.book.Books;
import levelback.store.herd.Cow;
import levelback.store.herd.CowId;
import levelback.store.herd.Herd;
import levelback.store.herd.HerdId;
import levelback.store.herd.Person;
import levelback.store.herd.PersonId;
import levelback.store.herd.Score;
import levelback.store.herd.ScoreId;
import levelback.store.herd.Visit;
import levelback.store.lane.PassId;
import levelback.store.trim.MedicineNote;

/** A desk on a real book that does everything at once, and an invented herd on its visit of 14 April 2026. */
final class ChuteBench implements Desk, AutoCloseable {

    static final LocalDate DAY = LocalDate.of(2026, 4, 14);
    private static final LocalDate BEGIN = LocalDate.of(2024, 1, 1);

    final Book book;
    final Herd herd =
            new Herd(HerdId.fresh(), "Nettlecombe", ZoneId.of("Europe/London"), "mobility-0-3", OptionalInt.of(60));
    final Person odo = new Person(PersonId.fresh(), "Odo", "O");
    final Visit visit;
    final List<String> messages = new ArrayList<>();
    final List<String> errors = new ArrayList<>();
    final List<String> steps = new ArrayList<>();
    final CowId thimble;
    String gate = "";
    double gateDone;
    Runnable changed = () -> {};
    OptionalDouble screen = OptionalDouble.empty();
    boolean chute;
    boolean withVisit = true;

    ChuteBench(Path folder) {
        book = Books.create(folder.resolve("trim.levelback"));
        book.herd().put(herd);
        book.herd().put(odo);
        List<Visit> visits = new ArrayList<>();
        for (int i = 4; i >= 0; i--) {
            visits.add(book.herd().visitOn(herd.id(), DAY.minusDays(14L * i)));
        }
        visit = visits.get(4);
        thimble = cow("412", "Thimble", "Kicks with LH", Optional.of(DAY.plusDays(18)));
        double[] levels = {1, 1, 2, 2, 3};
        for (int i = 0; i < 5; i++) {
            score(thimble, visits.get(i), levels[i], i == 4 ? Optional.of(Leg.RH) : Optional.empty());
        }
        String[] numbers = {"338", "264", "501", "156", "077", "90"};
        String[] names = {"Brindle", "Dumpling", "Pumpernickel", "Teasel", "Gusset", "Quill"};
        Leg[] legs = {Leg.LH, Leg.RH, Leg.LH, Leg.RF, Leg.LH, Leg.RH};
        for (int i = 0; i < numbers.length; i++) {
            CowId cow = cow(numbers[i], names[i], "", Optional.empty());
            score(cow, visit, i < 4 ? 3 : 2, Optional.of(legs[i]));
        }
        CowId control = cow("620", "Plum", "", Optional.empty());
        score(control, visit, 0, Optional.empty());
        new OpenCard(book).open(new Chute(control, DAY, odo.id()), OptionalDouble.of(3.0 / 139));
        cow("7", "Wren", "", Optional.empty());
        earlier(LocalDate.of(2025, 12, 23), List.of(), true, Set.of(FootAction.TRIMMED), Optional.empty());
        earlier(
                LocalDate.of(2026, 1, 20),
                List.of(FindingDraft.of(Claw.LATERAL, 4, "SH").severe(1)),
                false,
                Set.of(FootAction.TRIMMED),
                Optional.empty());
        earlier(
                LocalDate.of(2026, 3, 17),
                List.of(FindingDraft.of(Claw.LATERAL, 4, "SU").severe(2)),
                false,
                Set.of(FootAction.BLOCK_INNER),
                Optional.of(new MedicineNote("", "", "Thu 16 Apr, 05:00", "", "", "", "", "")));
    }

    private void earlier(
            LocalDate day,
            List<FindingDraft> findings,
            boolean none,
            Set<FootAction> done,
            Optional<MedicineNote> note) {
        new WriteCard(book)
                .write(
                        new Chute(thimble, day, odo.id()),
                        new CardDraft(
                                OptionalDouble.empty(),
                                false,
                                List.of(new CardDraft.FootDraft(Leg.RH, findings, none, done)),
                                note,
                                Optional.empty()));
    }

    private CowId cow(String number, String name, String note, Optional<LocalDate> calving) {
        Cow made = new Cow(
                CowId.fresh(),
                herd.id(),
                number,
                Optional.of(name),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                calving,
                OptionalInt.empty(),
                note);
        book.herd().put(made, BEGIN);
        return made.id();
    }

    private void score(CowId cow, Visit at, double level, Optional<Leg> leg) {
        book.herd()
                .put(new Score(
                        ScoreId.fresh(),
                        cow,
                        at.id(),
                        Optional.empty(),
                        odo.id(),
                        leg,
                        "mobility-0-3",
                        level,
                        Instant.parse("2026-04-14T08:00:00Z"),
                        false));
    }

    @Override
    public Optional<Herd> herd() {
        return Optional.of(herd);
    }

    @Override
    public Optional<Visit> visit() {
        return withVisit ? Optional.of(visit) : Optional.empty();
    }

    @Override
    public Person scorer() {
        return odo;
    }

    @Override
    public Executor background() {
        return Runnable::run;
    }

    @Override
    public Executor ui() {
        return Runnable::run;
    }

    @Override
    public <T> void read(Function<Book, T> question, Consumer<T> then) {
        T answer;
        try {
            answer = question.apply(book);
        } catch (RuntimeException e) {
            error(String.valueOf(e.getMessage()));
            return;
        }
        then.accept(answer);
    }

    @Override
    public <T> void step(String what, Function<Book, T> writes, Consumer<T> then) {
        T answer;
        try {
            answer = book.step(odo.initials(), what, writes);
        } catch (RuntimeException e) {
            error(String.valueOf(e.getMessage()));
            return;
        }
        steps.add(what);
        then.accept(answer);
        changed.run();
    }

    @Override
    public void undo() {
        book.undo(odo.initials());
        changed.run();
    }

    @Override
    public void message(String text) {
        messages.add(text);
    }

    @Override
    public void error(String sentence) {
        errors.add(sentence);
    }

    @Override
    public Job job(String name, Runnable stop) {
        throw new UnsupportedOperationException();
    }

    @Override
    public void go(PageId page) {}

    @Override
    public void openPass(PassId pass, int recordingFrame) {}

    @Override
    public void openCowOnTrim(CowId cow) {}

    @Override
    public void gateLine(PageId page, String line, double fractionDone) {
        gate = line;
        gateDone = fractionDone;
    }

    @Override
    public void chooseRecordings() {}

    @Override
    public void chuteMode(boolean on) {
        chute = on;
    }

    @Override
    public void show(Visit other) {}

    @Override
    public OptionalDouble screenPxPerMm() {
        return screen;
    }

    @Override
    public void keepScreenPxPerMm(double pxPerMm) {
        screen = OptionalDouble.of(pxPerMm);
    }

    @Override
    public boolean dark() {
        return false;
    }

    @Override
    public void close() {
        book.close();
    }
}
