package levelback.player.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import levelback.clips.open.Clip;
import levelback.clips.open.ClipException;
import levelback.player.stage.TestFilms;
import levelback.scoring.foot.FootSign;
import levelback.scoring.scale.GaitScale;
import levelback.scoring.scale.GaitScales;
import levelback.scoring.scale.Sign;
import levelback.scoring.value.Leg;
import levelback.store.book.Book;
import levelback.store.book.Books;
import levelback.store.book.StoreException;
import levelback.store.herd.Cow;
import levelback.store.herd.Herd;
import levelback.store.herd.HerdId;
import levelback.store.herd.Person;
import levelback.store.herd.PersonId;
import levelback.store.herd.Score;
import levelback.store.herd.Tag;
import levelback.store.lane.Pass;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ScoringStepsTest {

    private static final Instant NOW = Instant.parse("2026-04-15T08:00:00Z");
    private static final GaitScale SCALE = GaitScales.byId("mobility-0-3").orElseThrow();

    @TempDir
    static Path films;

    static Path film;
    static Clip clip;

    @TempDir
    Path folder;

    Book book;
    Herd herd;
    final Person anna = new Person(PersonId.fresh(), "Anna", "A");
    final Person ben = new Person(PersonId.fresh(), "Ben", "B");

    @BeforeAll
    static void makeFilm() throws ClipException {
        film = TestFilms.walk(films, "exit.mp4", 60);
        clip = Clip.open(film, () -> false);
    }

    @BeforeEach
    void openBook() {
        book = Books.create(folder.resolve("t.levelback"));
        herd = new Herd(HerdId.fresh(), "Wobblegate", ZoneId.of("Europe/London"), SCALE.id(), OptionalInt.empty());
        book.herd().put(herd);
        book.herd().put(anna);
        book.herd().put(ben);
    }

    @AfterEach
    void closeBook() {
        book.close();
    }

    private BringIn bringIn() {
        return new BringIn(book, Clock.fixed(NOW, ZoneOffset.UTC));
    }

    @Test
    void bringsARecordingInToTheVisitOfTheDayItWasMade() throws Exception {
        BringIn.Arrival in = bringIn().bringIn(film, herd, Optional.empty(), () -> false);
        // The film says 05:56:21 UTC; in London that is the morning of the same day.
        assertThat(in.visit().date()).isEqualTo(LocalDate.of(2026, 4, 14));
        assertThat(in.wasThere()).isFalse();
        assertThat(in.recording().file()).isEqualTo(film.toAbsolutePath().normalize());
        assertThat(in.recording().frameCount()).isEqualTo(60);
        assertThat(in.recording().recordedAt()).contains(Instant.parse("2026-04-14T05:56:21Z"));
        assertThat(book.lane().recording(in.recording().id())).contains(in.recording());
    }

    @Test
    void theDayIsTheFarmsAndNotGreenwichs() throws Exception {
        Herd far = new Herd(HerdId.fresh(), "Far", ZoneId.of("America/Los_Angeles"), SCALE.id(), OptionalInt.empty());
        book.herd().put(far);
        BringIn.Arrival in = bringIn().bringIn(film, far, Optional.empty(), () -> false);
        // 05:56 UTC is 22:56 of the evening before, Pacific daylight time (UTC-7 since 8 March 2026).
        assertThat(in.visit().date()).isEqualTo(LocalDate.of(2026, 4, 13));
    }

    @Test
    void theSameFileAgainChangesNothing() throws Exception {
        BringIn.Arrival first = bringIn().bringIn(film, herd, Optional.empty(), () -> false);
        long revision = book.revision();
        BringIn.Arrival again = bringIn().bringIn(film, herd, Optional.empty(), () -> false);
        assertThat(again.wasThere()).isTrue();
        assertThat(again.recording()).isEqualTo(first.recording());
        assertThat(book.revision()).isEqualTo(revision);
    }

    @Test
    void aMovedFileIsFoundAgainUnderItsNewName() throws Exception {
        Path before = Files.copy(film, folder.resolve("a.mp4"));
        BringIn.Arrival first = bringIn().bringIn(before, herd, Optional.empty(), () -> false);
        Path moved = Files.move(before, folder.resolve("b.mp4"));
        BringIn.Arrival again = bringIn().bringIn(moved, herd, Optional.empty(), () -> false);
        assertThat(again.recording().id()).isEqualTo(first.recording().id());
        assertThat(book.lane().recording(first.recording().id()).orElseThrow().file())
                .isEqualTo(moved);
    }

    @Test
    void aFileThatIsNoRecordingSaysSoAndLeavesTheBookAlone() throws Exception {
        Path text = Files.writeString(folder.resolve("notes.mp4"), "cows, mostly\n");
        long revision = book.revision();
        assertThatThrownBy(() -> bringIn().bringIn(text, herd, Optional.empty(), () -> false))
                .isInstanceOf(ClipException.class)
                .hasMessageContaining("notes.mp4");
        assertThat(book.revision()).isEqualTo(revision);
        assertThat(book.herd().visits(herd.id())).isEmpty();
    }

    @Test
    void aPassKeepsTheStreamsOwnTimesAndListsANewCow() throws Exception {
        BringIn.Arrival in = bringIn().bringIn(film, herd, Optional.empty(), () -> false);
        Pass pass = new MarkPass(book)
                .mark(herd, in.recording(), clip, 5, 40, Pass.Direction.UNKNOWN, Optional.of(" 0412 "));
        // 25 pictures a second: frame 5 is 0.2 s after frame 0.
        assertThat(pass.from().timeUs() - clip.index().frames().get(0).timeUs()).isEqualTo(200_000);
        assertThat(pass.from().timeBase()).isEqualTo(clip.facts().timeBase());
        Cow cow = book.herd().cow(pass.cow().orElseThrow(), in.visit().date()).orElseThrow();
        assertThat(cow.number()).isEqualTo("0412");
        Pass second = new MarkPass(book)
                .mark(herd, in.recording(), clip, 45, 59, Pass.Direction.UNKNOWN, Optional.of("0412"));
        assertThat(second.cow()).isEqualTo(pass.cow());
        assertThat(book.lane().passesOf(in.visit().id())).containsExactly(pass, second);
    }

    @Test
    void framesThatAreNotThereAreRefused() throws Exception {
        BringIn.Arrival in = bringIn().bringIn(film, herd, Optional.empty(), () -> false);
        MarkPass step = new MarkPass(book);
        assertThatThrownBy(
                        () -> step.mark(herd, in.recording(), clip, 10, 60, Pass.Direction.UNKNOWN, Optional.empty()))
                .isInstanceOf(StoreException.class)
                .hasMessageContaining("60");
        assertThatThrownBy(() -> step.mark(herd, in.recording(), clip, 10, 9, Pass.Direction.UNKNOWN, Optional.empty()))
                .isInstanceOf(StoreException.class);
        assertThat(book.lane().passesOf(in.visit().id())).isEmpty();
    }

    @Test
    void anUnknownPassCanBeNamedLaterButAScoredOneKeepsHerCow() throws Exception {
        BringIn.Arrival in = bringIn().bringIn(film, herd, Optional.empty(), () -> false);
        Pass pass =
                new MarkPass(book).mark(herd, in.recording(), clip, 0, 40, Pass.Direction.UNKNOWN, Optional.empty());
        Cow cow = new NamePass(book).name(herd, pass.id(), "77");
        assertThat(book.lane().pass(pass.id()).orElseThrow().cow()).contains(cow.id());
        score(cow, in, pass, anna, 1, NOW, false);
        assertThatThrownBy(() -> new NamePass(book).name(herd, pass.id(), "78"))
                .isInstanceOf(StoreException.class)
                .hasMessageContaining("78");
        assertThat(new NamePass(book).name(herd, pass.id(), "77")).isEqualTo(cow);
        assertThatThrownBy(() -> new NamePass(book).name(herd, pass.id(), "  ")).isInstanceOf(StoreException.class);
    }

    private Score score(
            Cow cow, BringIn.Arrival in, Pass pass, Person who, double level, Instant at, boolean earlierOpen) {
        return new GiveScore(book)
                .give(new GiveScore.Judgement(
                        cow.id(),
                        in.visit().id(),
                        Optional.of(pass.id()),
                        who.id(),
                        Optional.empty(),
                        SCALE,
                        level,
                        at,
                        earlierOpen));
    }

    @Test
    void aChangeBeforeTheEarlierScoresOpenIsPlainAndAfterItIsSeen() throws Exception {
        BringIn.Arrival in = bringIn().bringIn(film, herd, Optional.empty(), () -> false);
        Pass pass =
                new MarkPass(book).mark(herd, in.recording(), clip, 0, 40, Pass.Direction.UNKNOWN, Optional.of("5"));
        Cow cow = book.herd().cowByNumber(herd.id(), "5", in.visit().date()).orElseThrow();
        assertThat(score(cow, in, pass, anna, 1, NOW, false).seenBeforeChanging())
                .isFalse();
        // 2.999 s later: a slip put right. 3 s after that one: the earlier scores were open.
        assertThat(score(cow, in, pass, anna, 2, NOW.plusMillis(2_999), false).seenBeforeChanging())
                .isFalse();
        assertThat(score(cow, in, pass, anna, 3, NOW.plusMillis(5_999), false).seenBeforeChanging())
                .isTrue();
        // Once seen, always seen.
        assertThat(score(cow, in, pass, anna, 2, NOW.plusMillis(6_000), false).seenBeforeChanging())
                .isTrue();
        // Enter opens them at once.
        assertThat(score(cow, in, pass, ben, 1, NOW, false).seenBeforeChanging())
                .isFalse();
        assertThat(score(cow, in, pass, ben, 0, NOW.plusMillis(500), true).seenBeforeChanging())
                .isTrue();
        List<Score> inForce = book.herd().scoresOf(in.visit().id());
        assertThat(inForce).extracting(Score::level).containsExactlyInAnyOrder(2.0, 0.0);
    }

    @Test
    void theSameScoreAgainChangesNothing() throws Exception {
        BringIn.Arrival in = bringIn().bringIn(film, herd, Optional.empty(), () -> false);
        Pass pass =
                new MarkPass(book).mark(herd, in.recording(), clip, 0, 40, Pass.Direction.UNKNOWN, Optional.of("5"));
        Cow cow = book.herd().cowByNumber(herd.id(), "5", in.visit().date()).orElseThrow();
        Score first = score(cow, in, pass, anna, 1, NOW, false);
        long revision = book.revision();
        assertThat(score(cow, in, pass, anna, 1, NOW.plusSeconds(60), true)).isEqualTo(first);
        assertThat(book.revision()).isEqualTo(revision);
    }

    @Test
    void aLevelThatTheScaleDoesNotHaveIsRefused() throws Exception {
        BringIn.Arrival in = bringIn().bringIn(film, herd, Optional.empty(), () -> false);
        Pass pass =
                new MarkPass(book).mark(herd, in.recording(), clip, 0, 40, Pass.Direction.UNKNOWN, Optional.of("5"));
        Cow cow = book.herd().cowByNumber(herd.id(), "5", in.visit().date()).orElseThrow();
        for (double level : new double[] {4, -1, 1.5}) {
            assertThatThrownBy(() -> score(cow, in, pass, anna, level, NOW, false))
                    .isInstanceOf(StoreException.class)
                    .hasMessageContaining("0 to 3");
        }
        assertThat(book.herd().scoresOf(in.visit().id())).isEmpty();
    }

    @Test
    void tagsComeAtTheirMomentGoAndComeBackByUndo() throws Exception {
        BringIn.Arrival in = bringIn().bringIn(film, herd, Optional.empty(), () -> false);
        Pass pass =
                new MarkPass(book).mark(herd, in.recording(), clip, 0, 40, Pass.Direction.UNKNOWN, Optional.empty());
        SetTag.Moment moment = new SetTag.Moment(pass.id(), anna.id(), 7, FrameTime.of(clip, 7), NOW);
        Tag sign = new SetTag(book).sign(moment, Sign.SHORT_STRIDE, Optional.of(Leg.RH));
        Tag finding = new SetTag(book).footFinding(moment, FootSign.SWELLING, Leg.RH, "");
        assertThat(book.herd().tagsOf(pass.id())).containsExactlyInAnyOrder(sign, finding);
        assertThat(new SetTag(book).sign(moment, Sign.SHORT_STRIDE, Optional.of(Leg.RH)))
                .isEqualTo(sign);
        assertThat(sign.time().timeUs()).isEqualTo(clip.index().frames().get(7).timeUs());
        book.step("A", "Took off short stride", b -> {
            new TakeOffTag(b).takeOff(sign.id());
            return sign;
        });
        assertThat(book.herd().tagsOf(pass.id())).containsExactly(finding);
        assertThat(book.undo("A")).contains("Took off short stride");
        assertThat(book.herd().tagsOf(pass.id())).containsExactlyInAnyOrder(sign, finding);
    }

    @Test
    void aSignOfALegNeedsTheLegAndOneOfTheWholeCowHasNone() throws Exception {
        BringIn.Arrival in = bringIn().bringIn(film, herd, Optional.empty(), () -> false);
        Pass pass =
                new MarkPass(book).mark(herd, in.recording(), clip, 0, 40, Pass.Direction.UNKNOWN, Optional.empty());
        SetTag.Moment moment = new SetTag.Moment(pass.id(), anna.id(), 7, FrameTime.of(clip, 7), NOW);
        assertThatThrownBy(() -> new SetTag(book).sign(moment, Sign.SPARES_LEG, Optional.empty()))
                .isInstanceOf(StoreException.class);
        assertThat(new SetTag(book)
                        .sign(moment, Sign.HEAD_BOB, Optional.of(Leg.LF))
                        .leg())
                .isEmpty();
    }

    @Test
    void cannotScoreKeepsTheReasonAndTheLastOneHolds() throws Exception {
        BringIn.Arrival in = bringIn().bringIn(film, herd, Optional.empty(), () -> false);
        Pass pass =
                new MarkPass(book).mark(herd, in.recording(), clip, 0, 40, Pass.Direction.UNKNOWN, Optional.empty());
        CannotScore step = new CannotScore(book);
        step.cannot(pass.id(), anna.id(), "hidden", 3, FrameTime.of(clip, 3), NOW);
        step.cannot(pass.id(), anna.id(), "too dark", 4, FrameTime.of(clip, 4), NOW);
        assertThat(book.herd().tagsOf(pass.id())).singleElement().satisfies(tag -> {
            assertThat(tag.kind()).isEqualTo(Tag.Kind.CANNOT_SCORE);
            assertThat(tag.note()).isEqualTo("too dark");
        });
        assertThatThrownBy(() -> step.cannot(pass.id(), anna.id(), " ", 3, FrameTime.of(clip, 3), NOW))
                .isInstanceOf(StoreException.class);
    }
}
