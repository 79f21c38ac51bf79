package levelback.store.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import levelback.scoring.foot.Claw;
import levelback.scoring.foot.FootAction;
import levelback.scoring.value.Leg;
import levelback.store.herd.Cow;
import levelback.store.herd.Herd;
import levelback.store.herd.Person;
import levelback.store.trim.Block;
import levelback.store.trim.Finding;
import levelback.store.trim.Foot;
import levelback.store.trim.FootCard;
import levelback.store.trim.Lift;
import levelback.store.trim.LiftCard;
import levelback.store.trim.LiftId;
import levelback.store.trim.MedicineNote;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TrimShelfTest {

    private static final LocalDate DAY = Sample.DAY;

    @TempDir
    Path folder;

    private Book book;
    private final Herd herd = Sample.herd("Otter Hill");
    private final Person tess = Sample.person("Tess");
    private final Cow cow = Sample.cow(herd.id(), "412");

    @BeforeEach
    void open() {
        book = Books.create(folder.resolve("a.levelback"));
        book.herd().put(herd);
        book.herd().put(tess);
        book.herd().put(cow, DAY);
    }

    @AfterEach
    void close() {
        book.close();
    }

    @Test
    void keepsAWholeCard() {
        Lift lift = Sample.lift(cow, DAY, tess);
        Foot hind = Sample.foot(lift, Leg.LH);
        Foot fore = new Foot(Sample.foot(lift, Leg.RF).id(), lift.id(), Leg.RF, true);
        Finding ulcer = Sample.finding(hind, "SU");
        Finding dermatitis = Sample.finding(hind, "DD");
        MedicineNote note = new MedicineNote("As on the label", "T.", "17 March", "", "B7", "14 March", "10 ml", "vet");
        book.step("Tess", "Card of 412", b -> {
            b.trim().put(lift);
            b.trim().put(hind);
            b.trim().put(fore);
            b.trim().put(ulcer);
            b.trim().put(dermatitis);
            b.trim().putActions(hind.id(), Set.of(FootAction.TRIMMED, FootAction.BLOCK_INNER));
            b.trim().putMedicine(lift.id(), note);
            b.trim().putLookAgain(lift.id(), Optional.of(DAY.plusDays(7)));
            b.trim().putPhoto(hind.id(), Path.of("foot.jpg"));
            return true;
        });
        LiftCard expected = new LiftCard(
                lift,
                List.of(
                        new FootCard(
                                hind, List.of(ulcer, dermatitis), Set.of(FootAction.TRIMMED, FootAction.BLOCK_INNER)),
                        new FootCard(fore, List.of(), Set.of())),
                Optional.of(note),
                Optional.of(DAY.plusDays(7)));
        assertThat(book.trim().cardsOf(cow.id())).containsExactly(expected);
        assertThat(book.trim().cardsOf(herd.id(), DAY, DAY)).containsExactly(expected);
        assertThat(book.trim().cardsOf(herd.id(), DAY.plusDays(1), DAY.plusDays(9)))
                .isEmpty();
        assertThat(book.trim().photosOf(hind.id())).containsExactly(Path.of("foot.jpg"));
        assertThat(book.check().counts().trims()).isEqualTo(1);
        assertThat(book.undo("Tess")).contains("Card of 412");
        assertThat(book.trim().cardsOf(cow.id())).isEmpty();
        assertThat(book.trim().blocksOn(herd.id(), DAY)).isEmpty();
        book.redo("Tess");
        assertThat(book.trim().cardsOf(cow.id())).containsExactly(expected);
    }

    @Test
    void cardsOfACowAreNewestFirstAndOfAHerdOldestFirst() {
        Lift march = Sample.lift(cow, DAY, tess);
        Lift may = Sample.lift(cow, DAY.plusDays(60), tess);
        book.trim().put(may);
        book.trim().put(march);
        assertThat(book.trim().cardsOf(cow.id())).extracting(LiftCard::lift).containsExactly(may, march);
        assertThat(book.trim().cardsOf(herd.id(), DAY, DAY.plusDays(60)))
                .extracting(LiftCard::lift)
                .containsExactly(march, may);
    }

    @Test
    void oneCardOfACowAndDay() {
        book.trim().put(Sample.lift(cow, DAY, tess));
        assertThatThrownBy(() -> book.trim().put(Sample.lift(cow, DAY, tess)))
                .isInstanceOf(StoreException.class)
                .hasMessage("This cow has a card of that day already; go on with that card.");
    }

    @Test
    void keepsTheChanceOfAControlLiftToTheLastDigit() {
        Lift refused = new Lift(LiftId.fresh(), cow.id(), DAY, tess.id(), OptionalDouble.of(5.0 / 33), true, true);
        book.step("Tess", "Refused", b -> {
            b.trim().put(refused);
            return true;
        });
        book.undo("Tess");
        book.redo("Tess");
        assertThat(book.trim().cardsOf(cow.id())).extracting(LiftCard::lift).containsExactly(refused);
        Lift impossible =
                new Lift(LiftId.fresh(), cow.id(), DAY.plusDays(1), tess.id(), OptionalDouble.of(1.5), true, true);
        assertThatThrownBy(() -> book.trim().put(impossible)).isInstanceOf(StoreException.class);
    }

    @Test
    void aFindingIsCorrectedAndTakenOffWithHistory() {
        Lift lift = Sample.lift(cow, DAY, tess);
        Foot foot = Sample.foot(lift, Leg.LH);
        Finding ulcer = Sample.finding(foot, "SU");
        book.trim().put(lift);
        book.trim().put(foot);
        book.trim().put(ulcer);
        Finding whiteLine = new Finding(
                ulcer.id(), foot.id(), Claw.MEDIAL, ulcer.zone(), true, "WLA", ulcer.severity(), "", "deep");
        book.trim().put(whiteLine);
        assertThat(book.trim().cardsOf(cow.id()).get(0).feet().get(0).findings())
                .containsExactly(whiteLine);
        book.trim().takeOff(ulcer.id());
        assertThat(book.trim().cardsOf(cow.id()).get(0).feet().get(0).findings())
                .isEmpty();
        List<Change> history = book.changes(Optional.of(cow.id()), 2);
        assertThat(history.get(0).to()).contains("\"gone\":1").contains("WLA");
        assertThat(history.get(1).from().orElse("")).contains("\"lesion\":\"SU\"");
        assertThat(history.get(1).to()).contains("\"lesion\":\"WLA\"");
    }

    @Test
    void aBlockIsOnFromItsDayUntilItsDay() {
        Foot on = footOn(DAY, Leg.LH);
        book.trim().putActions(on.id(), Set.of(FootAction.BLOCK_OUTER));
        assertThat(book.trim().blocksOn(herd.id(), DAY.minusDays(1))).isEmpty();
        Block block = new Block(cow.id(), Leg.LH, Claw.LATERAL, DAY, Optional.empty());
        assertThat(book.trim().blocksOn(herd.id(), DAY)).containsExactly(block);

        Foot off = footOn(DAY.plusDays(28), Leg.LH);
        book.trim().putActions(off.id(), Set.of(FootAction.BLOCK_OFF, FootAction.TRIMMED));
        assertThat(book.trim().blocksOn(herd.id(), DAY.plusDays(27)))
                .containsExactly(new Block(cow.id(), Leg.LH, Claw.LATERAL, DAY, Optional.of(DAY.plusDays(28))));
        assertThat(book.trim().blocksOn(herd.id(), DAY.plusDays(28))).isEmpty();

        book.trim().putActions(off.id(), Set.of(FootAction.TRIMMED));
        assertThat(book.trim().blocksOn(herd.id(), DAY.plusDays(28)))
                .as("the block was not taken off after all")
                .containsExactly(block);
        book.trim().putActions(on.id(), Set.of());
        assertThat(book.trim().blocksOn(herd.id(), DAY)).isEmpty();
    }

    @Test
    void takingABlockOffLeavesTheOtherFeetAlone() {
        Foot left = footOn(DAY, Leg.LH);
        book.trim().putActions(left.id(), Set.of(FootAction.BLOCK_INNER));
        Foot right = footOn(DAY.plusDays(5), Leg.RH);
        book.trim().putActions(right.id(), Set.of(FootAction.BLOCK_OFF));
        assertThat(book.trim().blocksOn(herd.id(), DAY.plusDays(6)))
                .extracting(Block::leg, Block::claw)
                .containsExactly(org.assertj.core.groups.Tuple.tuple(Leg.LH, Claw.MEDIAL));
    }

    @Test
    void aSecondLookCanBeTakenBack() {
        Lift lift = Sample.lift(cow, DAY, tess);
        book.trim().put(lift);
        book.trim().putLookAgain(lift.id(), Optional.of(DAY.plusDays(7)));
        book.trim().putLookAgain(lift.id(), Optional.of(DAY.plusDays(9)));
        assertThat(book.trim().cardsOf(cow.id()).get(0).lookAgainOn()).contains(DAY.plusDays(9));
        book.trim().putLookAgain(lift.id(), Optional.empty());
        assertThat(book.trim().cardsOf(cow.id()).get(0).lookAgainOn()).isEmpty();
    }

    private Foot footOn(LocalDate day, Leg leg) {
        Lift lift = Sample.lift(cow, day, tess);
        Foot foot = Sample.foot(lift, leg);
        book.trim().put(lift);
        book.trim().put(foot);
        return foot;
    }
}
