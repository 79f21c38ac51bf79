package levelback.store.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import levelback.scoring.scale.GaitScale;
import levelback.scoring.scale.ScaleLevel;
import levelback.scoring.value.Leg;
import levelback.store.herd.Cow;
import levelback.store.herd.Herd;
import levelback.store.herd.Person;
import levelback.store.herd.Score;
import levelback.store.herd.Tag;
import levelback.store.herd.Visit;
import levelback.store.lane.Pass;
import levelback.store.lane.Recording;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HerdShelfTest {

    private static final LocalDate DAY = Sample.DAY;

    @TempDir
    Path folder;

    private Book book;
    private final Herd herd = Sample.herd("Otter Hill");
    private final Person anna = Sample.person("Anna");
    private final Person ben = Sample.person("Ben");

    @BeforeEach
    void open() {
        book = Books.create(folder.resolve("a.levelback"));
        book.herd().put(herd);
        book.herd().put(anna);
        book.herd().put(ben);
    }

    @AfterEach
    void close() {
        book.close();
    }

    @Test
    void keepsHerdsAndPeopleAndTheirCorrections() {
        Herd renamed = new Herd(herd.id(), "Otter Hill Farm", ZoneId.of("UTC"), "gait-1-5", OptionalInt.empty());
        book.herd().put(Sample.herd("Alder Brook"));
        book.herd().put(renamed);
        assertThat(book.herd().herds()).extracting(Herd::name).containsExactly("Alder Brook", "Otter Hill Farm");
        assertThat(book.herd().herds()).contains(renamed);
        assertThat(book.herd().people()).containsExactly(anna, ben);
    }

    @Test
    void refusesAScaleThatNobodyKnows() {
        Herd odd = new Herd(herd.id(), "x", ZoneId.of("UTC"), "no-such-scale", OptionalInt.empty());
        assertThatThrownBy(() -> book.herd().put(odd))
                .isInstanceOf(StoreException.class)
                .hasMessageContaining("no gait scale no-such-scale");
        assertThat(book.herd().herds()).containsExactly(herd);
    }

    @Test
    void keepsAScaleOfOnesOwn() {
        GaitScale own = new GaitScale(
                "yard-3",
                "Our yard's three",
                "ours",
                List.of(new ScaleLevel(1, "walks well"), new ScaleLevel(2, "uneven"), new ScaleLevel(3, "lame")),
                2,
                3,
                0.5);
        book.herd().put(own);
        assertThat(book.herd().scale("yard-3")).contains(own);
        assertThat(book.herd().scales()).contains(own);
        book.herd().put(new Herd(herd.id(), "Otter Hill", ZoneId.of("UTC"), "yard-3", OptionalInt.empty()));
        assertThat(book.herd().herds().get(0).scaleId()).isEqualTo("yard-3");
    }

    @Test
    void bringsAPublishedScaleInWithItsLevelTexts() {
        GaitScale kept = book.herd().scales().get(0);
        assertThat(kept.id()).isEqualTo("mobility-0-3");
        // Four levels, 0 to 3, lame from 2: the mobility scale as the trade prints it (trade sheet, section 1).
        assertThat(kept.levels()).extracting(ScaleLevel::value).containsExactly(0.0, 1.0, 2.0, 3.0);
        assertThat(kept.levels()).allMatch(level -> !level.text().isBlank());
        assertThat(kept.lameCut()).isEqualTo(2);
        assertThat(book.herd().scale("nothing")).isEmpty();
    }

    @Test
    void aNumberBelongsToADay() {
        Cow cow = Sample.cow(herd.id(), "0412");
        book.herd().put(cow, DAY);
        Cow later = withNumber(cow, "77");
        book.herd().put(later, DAY.plusDays(30));

        assertThat(book.herd().cow(cow.id(), DAY)).contains(cow);
        assertThat(book.herd().cow(cow.id(), DAY.plusDays(29))).contains(cow);
        assertThat(book.herd().cow(cow.id(), DAY.plusDays(30))).contains(later);
        assertThat(book.herd().cowByNumber(herd.id(), "0412", DAY.plusDays(29))).contains(cow);
        assertThat(book.herd().cowByNumber(herd.id(), "0412", DAY.plusDays(30))).isEmpty();
        assertThat(book.herd().cowByNumber(herd.id(), "77", DAY.plusDays(30))).contains(later);
        assertThat(book.herd().cowByNumber(herd.id(), "412", DAY))
                .as("zeros are kept")
                .isEmpty();
        assertThat(book.herd().cowByNumber(herd.id(), "0412", DAY.minusDays(20)))
                .as("written down later only")
                .contains(cow);
        assertThat(book.herd().cowByTag(herd.id(), "2760000000412", DAY)).contains(cow);
    }

    @Test
    void aNumberIsCarriedByOneCowAtATime() {
        Cow first = Sample.cow(herd.id(), "412");
        Cow second = Sample.cow(herd.id(), "412");
        book.herd().put(first, DAY);
        assertThatThrownBy(() -> book.herd().put(second, DAY.plusDays(5)))
                .isInstanceOf(StoreException.class)
                .hasMessage("Another cow of this herd has carried number 412 since 2026-03-14; end that first or give"
                        + " another number.");
        assertThat(book.herd().cow(second.id(), DAY)).as("nothing half-written").isEmpty();

        book.herd().endNumber(first.id(), DAY.plusDays(4));
        book.herd().put(second, DAY.plusDays(5));
        assertThat(book.herd().cowByNumber(herd.id(), "412", DAY.plusDays(4))).contains(first);
        assertThat(book.herd().cowByNumber(herd.id(), "412", DAY.plusDays(5))).contains(second);
        assertThat(book.check().problems()).isEmpty();

        Herd other = Sample.herd("Alder Brook");
        book.herd().put(other);
        book.herd().put(Sample.cow(other.id(), "412"), DAY);
        assertThat(book.herd().cows(other.id(), DAY)).hasSize(1);
    }

    @Test
    void aSlipInTheNumberIsPutRightOnTheSameDay() {
        Cow cow = Sample.cow(herd.id(), "421");
        book.herd().put(cow, DAY);
        book.herd().put(withNumber(cow, "412"), DAY);
        assertThat(book.herd().cowByNumber(herd.id(), "421", DAY)).isEmpty();
        assertThat(book.herd().cowByNumber(herd.id(), "412", DAY)).isPresent();
        assertThat(book.changes(Optional.of(cow.id()), 10))
                .anyMatch(c ->
                        c.kind().equals("cow_number") && c.from().orElse("").contains("421") && c.to().contains("412"));
    }

    @Test
    void listsCowsByNumberAndNotByAlphabet() {
        for (String number : List.of("100", "9", "012", "A7")) {
            book.herd().put(Sample.cow(herd.id(), number), DAY);
        }
        assertThat(book.herd().cows(herd.id(), DAY)).extracting(Cow::number).containsExactly("9", "012", "A7", "100");
    }

    @Test
    void visitsAreCountedFromTheFirst() {
        Visit second = book.herd().visitOn(herd.id(), DAY);
        assertThat(second.ordinal()).isEqualTo(1);
        Visit first = book.herd().visitOn(herd.id(), DAY.minusDays(14));
        assertThat(first.ordinal()).isEqualTo(1);
        assertThat(book.herd().visitOn(herd.id(), DAY)).isEqualTo(new Visit(second.id(), herd.id(), DAY, 2));
        assertThat(book.herd().visits(herd.id())).extracting(Visit::ordinal).containsExactly(1, 2);
    }

    @Test
    void oneScoreIsInForceAndTheEarlierOneStays() {
        Cow cow = Sample.cow(herd.id(), "412");
        book.herd().put(cow, DAY);
        Visit visit = book.herd().visitOn(herd.id(), DAY);
        Score two = book.herd().put(Sample.score(cow, visit, anna, 2));
        Score bens = book.herd().put(Sample.score(cow, visit, ben, 1));
        Score leg = book.herd().put(Sample.score(cow.id(), visit.id(), anna.id(), Optional.of(Leg.LH), 3));
        Score three = book.herd().put(Sample.score(cow, visit, anna, 3));

        assertThat(book.herd().scoresOf(visit.id())).containsExactlyInAnyOrder(bens, leg, three);
        assertThat(book.herd().scoresOf(cow.id())).containsExactlyInAnyOrder(bens, leg, three);
        assertThat(book.herd().scoresOf(herd.id())).containsExactlyInAnyOrder(bens, leg, three);
        assertThat(book.changes(Optional.of(cow.id()), 50))
                .as("the score that was superseded")
                .anyMatch(c -> c.row().equals(two.id().uuid())
                        && c.from().orElse("").contains("\"in_force\":1")
                        && c.to().contains("\"in_force\":0")
                        && c.to().contains("\"level\":2.0"));
    }

    @Test
    void aScoreIsNeverOverwrittenEvenUnderItsOwnIdentity() {
        Cow cow = Sample.cow(herd.id(), "412");
        book.herd().put(cow, DAY);
        Visit visit = book.herd().visitOn(herd.id(), DAY);
        Score two = book.herd().put(Sample.score(cow, visit, anna, 2));
        Score again = new Score(
                two.id(),
                two.cow(),
                two.visit(),
                two.pass(),
                two.scorer(),
                two.leg(),
                two.scaleId(),
                3,
                two.at(),
                true);
        Score kept = book.herd().put(again);
        assertThat(kept.id()).isNotEqualTo(two.id());
        assertThat(book.herd().scoresOf(visit.id())).containsExactly(kept);
    }

    @Test
    void tagsAreSetCorrectedAndTakenOff() {
        Visit visit = book.herd().visitOn(herd.id(), DAY);
        Recording recording = Sample.recording(visit.id(), "a.mp4");
        book.lane().put(recording);
        Pass pass = Sample.pass(recording, 10, 200, Optional.empty());
        book.lane().put(pass);
        Tag late = Sample.tag(pass, anna, 150);
        Tag early = Sample.tag(pass, anna, 50);
        book.herd().put(late);
        book.herd().put(early);
        assertThat(book.herd().tagsOf(pass.id())).containsExactly(early, late);
        book.herd().takeOff(early.id());
        assertThat(book.herd().tagsOf(pass.id())).containsExactly(late);
    }

    @Test
    void anEntryAboutSomethingUnknownIsASentence() {
        Visit visit = book.herd().visitOn(herd.id(), DAY);
        Cow stranger = Sample.cow(herd.id(), "1");
        assertThatThrownBy(() -> book.herd().put(Sample.score(stranger, visit, anna, 2)))
                .isInstanceOf(StoreException.class)
                .hasMessage("What this entry belongs to is not in the book (score.cow); nothing was written.");
        assertThatThrownBy(() -> book.herd().put(Sample.cow(Sample.herd("x").id(), "3"), DAY))
                .isInstanceOf(StoreException.class)
                .hasMessageContaining("cow.herd");
    }

    private static Cow withNumber(Cow c, String number) {
        return new Cow(
                c.id(),
                c.herd(),
                number,
                c.name(),
                c.officialId(),
                c.tag(),
                c.birth(),
                c.calving(),
                c.parity(),
                c.note());
    }
}
