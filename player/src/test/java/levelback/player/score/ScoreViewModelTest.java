package levelback.player.score;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import levelback.clips.open.Clip;
import levelback.player.desk.PageId;
import levelback.player.score.ScoreViewModel.Film;
import levelback.player.score.ScoreViewModel.State;
import levelback.player.stage.TestFilms;
import levelback.player.work.BringIn;
import levelback.player.work.GiveScore;
import levelback.player.work.MarkPass;
import levelback.player.work.SetTag;
import levelback.scoring.foot.FootSign;
import levelback.scoring.scale.GaitScales;
import levelback.scoring.scale.Sign;
import levelback.scoring.value.Leg;
import levelback.store.book.Book;
import levelback.store.book.Books;
import levelback.store.herd.Herd;
import levelback.store.herd.HerdId;
import levelback.store.herd.Person;
import levelback.store.herd.PersonId;
import levelback.store.herd.Score;
import levelback.store.herd.Tag;
import levelback.store.herd.Visit;
import levelback.store.lane.Pass;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ScoreViewModelTest {

    @TempDir
    static Path films;

    static Path film;

    @TempDir
    Path folder;

    Book book;
    Herd herd;
    BookDesk desk;
    ScoreViewModel model;
    final Person anna = new Person(PersonId.fresh(), "Anna", "A");
    final Person ben = new Person(PersonId.fresh(), "Ben", "B");
    final List<Runnable> later = new ArrayList<>();
    final TurnedClock clock = new TurnedClock();

    /** A clock that the test turns. */
    static final class TurnedClock extends Clock {
        Instant now = Instant.parse("2026-04-14T10:00:00Z");

        @Override
        public ZoneId getZone() {
            return ZoneOffset.UTC;
        }

        @Override
        public Clock withZone(ZoneId zone) {
            return this;
        }

        @Override
        public Instant instant() {
            return now;
        }
    }

    @BeforeAll
    static void makeFilm() {
        film = TestFilms.walk(films, "exit.mp4", 90);
    }

    @BeforeEach
    void open() {
        book = Books.create(folder.resolve("t.levelback"));
        herd = new Herd(HerdId.fresh(), "Wobblegate", ZoneId.of("Europe/London"), "mobility-0-3", OptionalInt.empty());
        book.herd().put(herd);
        book.herd().put(anna);
        book.herd().put(ben);
        desk = new BookDesk(book, Optional.of(herd), anna);
        model = new ScoreViewModel(
                desk, Runnable::run, Clip::open, clock, (wait, then) -> later.add(then), GaitScales::byId);
        desk.bookChanged = model::load;
    }

    @AfterEach
    void close() {
        book.close();
    }

    /** Three passes: cow 11, cow 12, unknown. */
    private List<Pass> threePasses() throws Exception {
        Clip clip = Clip.open(film, () -> false);
        BringIn.Arrival in = new BringIn(book).keep(clip, herd, Optional.empty());
        MarkPass mark = new MarkPass(book);
        List<Pass> passes = List.of(
                mark.mark(herd, in.recording(), clip, 0, 29, Pass.Direction.LEFT_TO_RIGHT, Optional.of("11")),
                mark.mark(herd, in.recording(), clip, 30, 59, Pass.Direction.LEFT_TO_RIGHT, Optional.of("12")),
                mark.mark(herd, in.recording(), clip, 60, 89, Pass.Direction.LEFT_TO_RIGHT, Optional.empty()));
        desk.visit = Optional.of(in.visit());
        model.load();
        return passes;
    }

    private void give(Pass pass, Visit visit, Person who, double level, Instant at) {
        new GiveScore(book)
                .give(new GiveScore.Judgement(
                        pass.cow().orElseThrow(),
                        visit.id(),
                        Optional.empty(),
                        who.id(),
                        Optional.empty(),
                        GaitScales.byId("mobility-0-3").orElseThrow(),
                        level,
                        at,
                        false));
    }

    private State.OnPass on() {
        assertThat(model.stateProperty().get()).isInstanceOf(State.OnPass.class);
        return (State.OnPass) model.stateProperty().get();
    }

    @Test
    void aBookWithoutAHerdOrWithoutPassesSaysSo() {
        model.load();
        assertThat(model.stateProperty().get()).isInstanceOf(State.NoPasses.class);
        assertThat(desk.gates).containsEntry(PageId.SCORE, "–");
        desk.herd = Optional.empty();
        model.load();
        assertThat(model.stateProperty().get()).isInstanceOf(State.NoHerd.class);
    }

    @Test
    void aDroppedFileComesInAndTwoKeysMarkAPassOnIt() {
        model.load();
        model.bringIn(List.of(film));
        assertThat(model.stateProperty().get()).isInstanceOf(State.Marking.class);
        assertThat(desk.visit.orElseThrow().date()).isEqualTo(LocalDate.of(2026, 4, 14));
        assertThat(model.filmProperty().get()).isInstanceOfSatisfying(Film.Ready.class, ready -> {
            assertThat(ready.first()).isZero();
            assertThat(ready.last()).isEqualTo(89);
        });
        model.markLast(20);
        assertThat(desk.messages).last().asString().contains("first frame first");
        model.markFirst(20);
        model.markLast(10);
        assertThat(desk.messages).last().asString().contains("lies before");
        model.markLast(50);
        model.number("412");
        model.markFirst(51);
        model.markLast(70);
        model.number("");
        State.Marking marked = (State.Marking) model.stateProperty().get();
        assertThat(marked.sheet().passes()).extracting(Pass::fromFrame).containsExactly(20, 51);
        assertThat(marked.sheet().numbers().values()).containsExactly("412");
        assertThat(desk.steps).contains("Marked a pass of cow 412, frames 20 to 50");
        model.next();
        assertThat(on().sheet().cow().orElseThrow().number()).isEqualTo("412");
        assertThat(desk.gates).containsEntry(PageId.SCORE, "2 to score");
    }

    @Test
    void aFileThatIsNoRecordingGivesOneSentenceAndNothingElse() throws Exception {
        model.load();
        Path text = Files.writeString(folder.resolve("notes.mp4"), "cows, mostly\n");
        model.bringIn(List.of(text));
        assertThat(desk.errors).singleElement().asString().contains("notes.mp4").doesNotContain("Exception");
        assertThat(model.stateProperty().get()).isInstanceOf(State.NoPasses.class);
        assertThat(desk.steps).isEmpty();
    }

    @Test
    void aScoreIsInTheBookAtTheKeystrokeAndEnterOnlyMovesOn() throws Exception {
        threePasses();
        model.score(2);
        assertThat(book.herd().scoresOf(desk.visit.orElseThrow().id()))
                .singleElement()
                .satisfies(score -> {
                    assertThat(score.level()).isEqualTo(2);
                    assertThat(score.scorer()).isEqualTo(anna.id());
                    assertThat(score.pass()).contains(on().sheet().pass().id());
                });
        assertThat(desk.steps).containsExactly("Scored 2, cow 11");
        assertThat(desk.gates).containsEntry(PageId.SCORE, "2 to score");
        long revision = book.revision();
        model.next();
        assertThat(on().sheet().cow().orElseThrow().number()).isEqualTo("12");
        assertThat(book.revision()).isEqualTo(revision);
    }

    @Test
    void earlierScoresOtherScorersAndTheirTagsStayShutUntilTheScoreIsIn() throws Exception {
        List<Pass> passes = threePasses();
        Visit before = book.herd().visitOn(herd.id(), LocalDate.of(2026, 3, 31));
        Visit today = desk.visit.orElseThrow();
        give(passes.get(0), before, anna, 3, Instant.parse("2026-03-31T10:00:00Z"));
        give(passes.get(0), today, ben, 3, Instant.parse("2026-04-14T09:00:00Z"));
        new SetTag(book)
                .sign(
                        new SetTag.Moment(
                                passes.get(0).id(), ben.id(), 3, passes.get(0).from(), clock.now),
                        Sign.HEAD_BOB,
                        Optional.empty());
        model.load();
        assertThat(on().sheet().earlier()).isEmpty();
        assertThat(on().sheet().tags()).isEmpty();
        assertThat(on().queue().rows().get(0).settled()).isFalse();
        model.score(1);
        assertThat(on().sheet().open()).isFalse();
        assertThat(on().sheet().earlier()).isEmpty();
        assertThat(on().sheet().tags()).isEmpty();
        clock.now = clock.now.plus(Duration.ofSeconds(3));
        later.get(later.size() - 1).run();
        assertThat(on().sheet().open()).isTrue();
        assertThat(on().sheet().earlier())
                .extracting(ScoreReader.EarlierScore::level)
                .containsExactly(3.0, 1.0);
        assertThat(on().sheet().tags()).extracting(Tag::key).containsExactly("head-bob");
    }

    @Test
    void aChangeAfterEnterOrThreeSecondsIsKeptAsSeenEvenAfterAnUndo() throws Exception {
        List<Pass> passes = threePasses();
        model.score(1);
        clock.now = clock.now.plusSeconds(1);
        model.score(2);
        assertThat(on().sheet().mine().orElseThrow().seenBeforeChanging()).isFalse();
        model.next();
        model.select(passes.get(0).id());
        assertThat(on().sheet().open()).isTrue();
        model.score(3);
        assertThat(on().sheet().mine().orElseThrow().seenBeforeChanging()).isTrue();
        book.undo("A");
        book.undo("A");
        book.undo("A");
        model.load();
        assertThat(on().sheet().mine()).isEmpty();
        assertThat(on().sheet().open()).isFalse();
        model.score(0);
        assertThat(on().sheet().mine().orElseThrow().seenBeforeChanging()).isTrue();
    }

    @Test
    void anUnknownCowsNumberIsAskedForAndTheScoreIsNotLost() throws Exception {
        List<Pass> passes = threePasses();
        model.select(passes.get(2).id());
        model.score(2);
        assertThat(on().askNumber()).isTrue();
        assertThat(book.herd().scoresOf(desk.visit.orElseThrow().id())).isEmpty();
        model.number("0099");
        assertThat(on().askNumber()).isFalse();
        assertThat(on().sheet().cow().orElseThrow().number()).isEqualTo("0099");
        assertThat(on().sheet().mine().orElseThrow().level()).isEqualTo(2);
        // One step: one undo takes back both.
        book.undo("A");
        model.load();
        assertThat(on().sheet().cow()).isEmpty();
    }

    @Test
    void signsGoToTheChosenLegAtTheFrameAndComeOffThere() throws Exception {
        threePasses();
        model.sign(Sign.SHORT_STRIDE, 7);
        assertThat(desk.messages).last().asString().contains("leg first");
        model.leg(Leg.RH);
        model.sign(Sign.SHORT_STRIDE, 7);
        model.sign(Sign.HEAD_BOB, 9);
        assertThat(model.finding(FootSign.SWELLING, 9)).isTrue();
        assertThat(on().sheet().tags())
                .extracting(Tag::key, Tag::leg, Tag::recordingFrame)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple("short-stride", Optional.of(Leg.RH), 7),
                        org.assertj.core.groups.Tuple.tuple("head-bob", Optional.empty(), 9),
                        org.assertj.core.groups.Tuple.tuple("swelling", Optional.of(Leg.RH), 9));
        assertThat(desk.steps).contains("Tagged RH short stride, cow 11, frame 8");
        model.takeOffAt(7);
        assertThat(on().sheet().tags()).extracting(Tag::key).containsExactly("head-bob", "swelling");
        model.takeOffAt(8);
        assertThat(desk.messages).last().asString().contains("No tag");
        model.leg(Leg.RH);
        assertThat(on().leg()).isEmpty();
    }

    @Test
    void onlyAScaleWithHalvesTakesAHalf() throws Exception {
        threePasses();
        model.score(2);
        model.half();
        assertThat(desk.messages).last().asString().contains("no halves");
        model.score(5);
        assertThat(desk.messages).last().asString().contains("no score 5");
        herd = new Herd(herd.id(), herd.name(), herd.zone(), "lameness-1-5-half", OptionalInt.empty());
        book.herd().put(herd);
        desk.herd = Optional.of(herd);
        model.load();
        model.score(3);
        model.half();
        assertThat(on().sheet().mine().orElseThrow().level()).isEqualTo(3.5);
    }

    @Test
    void cannotScoreSettlesThePassWithItsReasonAndMovesOn() throws Exception {
        List<Pass> passes = threePasses();
        model.cannotScore("hidden", 4);
        assertThat(on().sheet().pass().id()).isEqualTo(passes.get(1).id());
        assertThat(on().queue().rows().get(0).settled()).isTrue();
        model.select(passes.get(0).id());
        assertThat(on().sheet().cannotScore()).contains("hidden");
        assertThat(book.herd().scoresOf(desk.visit.orElseThrow().id())).isEmpty();
    }

    @Test
    void theLastPassSaysThatAllAreScored() throws Exception {
        List<Pass> passes = threePasses();
        model.score(0);
        model.next();
        model.score(1);
        model.next();
        assertThat(on().sheet().pass().id()).isEqualTo(passes.get(2).id());
        model.score(2);
        model.number("13");
        model.next();
        assertThat(desk.messages).last().isEqualTo("All 3 scored.");
        assertThat(desk.gates).containsEntry(PageId.SCORE, "all scored");
    }

    @Test
    void opensAPassOfAnotherVisitAtAFrame() throws Exception {
        List<Pass> passes = threePasses();
        Visit other = book.herd().visitOn(herd.id(), LocalDate.of(2026, 4, 28));
        desk.visit = Optional.of(other);
        model.load();
        assertThat(model.stateProperty().get()).isInstanceOf(State.NoPasses.class);
        model.openPass(passes.get(1).id(), OptionalInt.of(44));
        assertThat(on().sheet().pass().id()).isEqualTo(passes.get(1).id());
        assertThat(model.filmProperty().get())
                .isInstanceOfSatisfying(
                        Film.Ready.class, ready -> assertThat(ready.at()).isEqualTo(44));
        assertThat(desk.visit.orElseThrow().date()).isEqualTo(LocalDate.of(2026, 4, 14));
    }

    @Test
    void aRecordingThatIsGoneSaysWhereItWasAndScoringGoesOn() throws Exception {
        Path copy = Files.copy(film, folder.resolve("gone.mp4"));
        Clip clip = Clip.open(copy, () -> false);
        BringIn.Arrival in = new BringIn(book).keep(clip, herd, Optional.empty());
        new MarkPass(book).mark(herd, in.recording(), clip, 0, 9, Pass.Direction.UNKNOWN, Optional.of("5"));
        Files.delete(copy);
        desk.visit = Optional.of(in.visit());
        model.load();
        assertThat(model.filmProperty().get())
                .isInstanceOfSatisfying(
                        Film.Broken.class,
                        broken -> assertThat(broken.sentence())
                                .contains("gone.mp4")
                                .contains(folder.toString())
                                .contains("Drop the file"));
        model.score(1);
        assertThat(on().sheet().mine()).map(Score::level).contains(1.0);
    }
}
