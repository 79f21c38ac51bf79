package levelback.player.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import levelback.scoring.foot.Claw;
import levelback.scoring.foot.FootAction;
import levelback.scoring.foot.Lesions;
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
import levelback.store.trim.Finding;
import levelback.store.trim.FootCard;
import levelback.store.trim.LiftCard;
import levelback.store.trim.MedicineNote;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The steps at the chute, on a real book. The herd is invented. */
class WriteCardTest {

    private static final LocalDate DAY = LocalDate.of(2026, 4, 14);

    @TempDir
    Path folder;

    private Book book;
    private final Herd herd =
            new Herd(HerdId.fresh(), "Nettlecombe", ZoneId.of("Europe/London"), "mobility-0-3", OptionalInt.empty());
    private final Person odo = new Person(PersonId.fresh(), "Odo", "O");
    private CowId cow;
    private Chute chute;

    @BeforeEach
    void open() {
        book = Books.create(folder.resolve("test.levelback"));
        book.herd().put(herd);
        book.herd().put(odo);
        cow = cow("412", "");
        chute = new Chute(cow, DAY, odo.id());
    }

    @AfterEach
    void close() {
        book.close();
    }

    private CowId cow(String number, String note) {
        Cow made = new Cow(
                CowId.fresh(),
                herd.id(),
                number,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                OptionalInt.empty(),
                note);
        book.herd().put(made, LocalDate.of(2024, 1, 1));
        return made.id();
    }

    private LiftCard card() {
        return book.trim().cardsOf(cow).get(0);
    }

    private FootCard foot(Leg leg) {
        return card().feet().stream()
                .filter(f -> f.foot().leg() == leg)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aFindingKeepsClawZoneLesionAndSeverity() {
        new WriteFinding(book)
                .write(chute, Leg.RH, FindingDraft.of(Claw.LATERAL, 4, "SU").severe(3));
        Finding line = foot(Leg.RH).findings().get(0);
        assertThat(line.claw()).isEqualTo(Claw.LATERAL);
        assertThat(line.zone()).hasValue(4);
        assertThat(line.zoneConfirmed()).isTrue();
        assertThat(line.lesion()).isEqualTo("SU");
        assertThat(line.severity()).hasValue(3);
        assertThat(card().lift().date()).isEqualTo(DAY);
        assertThat(card().lift().trimmer()).isEqualTo(odo.id());
    }

    @Test
    void aCodeAloneTakesItsUsualZoneAndSaysThatItIsNotConfirmed() {
        Finding line = new WriteFinding(book).write(chute, Leg.LH, FindingDraft.of("SU"));
        // International Lameness Committee map: the sole ulcer's usual zone is 4; outer claw behind (common practice).
        assertThat(line.zone()).hasValue(4);
        assertThat(line.zoneConfirmed()).isFalse();
        assertThat(line.claw()).isEqualTo(Claw.LATERAL);
        assertThat(new WriteFinding(book)
                        .write(chute, Leg.LF, FindingDraft.of("SU"))
                        .claw())
                .isEqualTo(Claw.MEDIAL);
        assertThat(new WriteFinding(book)
                        .write(chute, Leg.LH, FindingDraft.of("DD"))
                        .claw())
                .isEqualTo(Claw.INTERDIGITAL);
        new ChangeFinding(book).place(chute, line.id(), Claw.MEDIAL, 5);
        Finding now = foot(Leg.LH).findings().stream()
                .filter(f -> f.id().equals(line.id()))
                .findFirst()
                .orElseThrow();
        assertThat(now.zone()).hasValue(5);
        assertThat(now.claw()).isEqualTo(Claw.MEDIAL);
        assertThat(now.zoneConfirmed()).isTrue();
    }

    @Test
    void everyLesionOfTheListCanBeWrittenOnEveryLeg() {
        for (Leg leg : Leg.values()) {
            Lesions.all().forEach(lesion -> {
                Finding line = new WriteFinding(book).write(chute, leg, FindingDraft.of(lesion.code()));
                assertThat(line.zone().isPresent())
                        .isEqualTo(!lesion.usualZones().isEmpty());
            });
            assertThat(foot(leg).findings()).hasSize(Lesions.all().size());
        }
    }

    @Test
    void digitalDermatitisTakesAStageAndNothingElseDoes() {
        WriteFinding write = new WriteFinding(book);
        assertThat(write.write(chute, Leg.LH, FindingDraft.of("DD").staged("M4.1"))
                        .stage())
                .isEqualTo("M4.1");
        assertThatThrownBy(
                        () -> write.write(chute, Leg.LH, FindingDraft.of("DD").severe(2)))
                .isInstanceOf(CardRefused.class)
                .hasMessageContaining("stage");
        assertThatThrownBy(
                        () -> write.write(chute, Leg.LH, FindingDraft.of("SU").staged("M2")))
                .isInstanceOf(CardRefused.class);
        assertThatThrownBy(
                        () -> write.write(chute, Leg.LH, FindingDraft.of("SU").severe(4)))
                .isInstanceOf(CardRefused.class);
        assertThatThrownBy(() -> write.write(chute, Leg.LH, FindingDraft.of(Claw.LATERAL, 13, "SU")))
                .isInstanceOf(CardRefused.class)
                .hasMessageContaining("0 to 12");
        assertThatThrownBy(() -> write.write(chute, Leg.LH, FindingDraft.of("XX")))
                .isInstanceOf(CardRefused.class)
                .hasMessageContaining("XX");
        assertThat(foot(Leg.LH).findings()).hasSize(1);
    }

    @Test
    void anUnliftedFootIsNeverACleanOne() {
        new NoLesion(book).say(chute, Leg.RH);
        assertThat(card().feet()).extracting(f -> f.foot().leg()).containsExactly(Leg.RH);
        assertThat(foot(Leg.RH).foot().noLesion()).isTrue();
        new SetActions(book).set(chute, Leg.LH, Set.of(FootAction.TRIMMED), false);
        assertThat(foot(Leg.LH).foot().noLesion()).isFalse();
        assertThat(CloseCard.unsaid(card())).containsExactly(Leg.LH);
    }

    @Test
    void aFindingEndsNoLesionAndNoLesionIsRefusedOverAFinding() {
        new NoLesion(book).say(chute, Leg.RH);
        new WriteFinding(book).write(chute, Leg.RH, FindingDraft.of("HHE"));
        assertThat(foot(Leg.RH).foot().noLesion()).isFalse();
        assertThatThrownBy(() -> new NoLesion(book).say(chute, Leg.RH)).isInstanceOf(CardRefused.class);
        assertThat(foot(Leg.RH).foot().noLesion()).isFalse();
    }

    @Test
    void aBlockOnTheInjuredClawIsRefusedUntilItIsMeant() {
        new WriteFinding(book).write(chute, Leg.RH, FindingDraft.of(Claw.LATERAL, 4, "SU"));
        SetActions set = new SetActions(book);
        assertThatThrownBy(() -> set.set(chute, Leg.RH, Set.of(FootAction.BLOCK_OUTER), false))
                .isInstanceOf(CardRefused.class)
                .hasMessageContaining("outer")
                .hasMessageContaining("SU");
        assertThat(book.trim().blocksOn(herd.id(), DAY)).isEmpty();
        set.set(chute, Leg.RH, Set.of(FootAction.BLOCK_INNER), false);
        assertThat(book.trim().blocksOn(herd.id(), DAY)).singleElement().satisfies(block -> {
            assertThat(block.leg()).isEqualTo(Leg.RH);
            assertThat(block.claw()).isEqualTo(Claw.MEDIAL);
            assertThat(block.on()).isEqualTo(DAY);
        });
        set.set(chute, Leg.RH, Set.of(FootAction.BLOCK_OUTER), true);
        assertThat(book.trim().blocksOn(herd.id(), DAY))
                .singleElement()
                .satisfies(block -> assertThat(block.claw()).isEqualTo(Claw.LATERAL));
    }

    @Test
    void aBlockComesOffOnItsDay() {
        new SetActions(book).set(chute, Leg.LH, Set.of(FootAction.BLOCK_INNER), false);
        Chute later = new Chute(cow, DAY.plusDays(28), odo.id());
        new SetActions(book).set(later, Leg.LH, Set.of(FootAction.BLOCK_OFF), false);
        assertThat(book.trim().blocksOn(herd.id(), DAY.plusDays(27))).hasSize(1);
        assertThat(book.trim().blocksOn(herd.id(), DAY.plusDays(28))).isEmpty();
    }

    /** Recheck after four weeks: AHDB; the block comes off then. */
    @Test
    void aBlockSetsTheDayToLookAgainFourWeeksOnUnlessOneStands() {
        new SetActions(book).set(chute, Leg.LH, EnumSet.of(FootAction.BLOCK_INNER), false);
        assertThat(card().lookAgainOn()).contains(LocalDate.of(2026, 5, 12));
        new LookAgain(book).on(chute, Optional.of(LocalDate.of(2026, 4, 24)));
        new SetActions(book).set(chute, Leg.RH, EnumSet.of(FootAction.BLOCK_INNER), false);
        assertThat(card().lookAgainOn()).contains(LocalDate.of(2026, 4, 24));
        assertThatThrownBy(() -> new LookAgain(book).on(chute, Optional.of(DAY)))
                .isInstanceOf(CardRefused.class);
    }

    @Test
    void theMedicineNoteIsKeptToTheLetter() {
        MedicineNote note = new MedicineNote(
                " as on the bottle  ", "Vet", "Thu, after 2nd milking?", "see label", "B 7/11", "5 pm", "1 x", "");
        new WriteMedicine(book).write(chute, note);
        assertThat(card().medicine()).contains(note);
    }

    @Test
    void aControlLiftKeepsItsChanceWhetherLiftedOrRefused() {
        double chance = 3.0 / 139;
        new OpenCard(book).open(chute, OptionalDouble.of(chance));
        new RefuseLift(book).refuse(chute);
        assertThat(card().lift().chance()).hasValue(chance);
        assertThat(card().lift().refused()).isTrue();
        // Lifted after all: the refusal falls, the chance stays.
        new NoLesion(book).say(chute, Leg.RH);
        assertThat(card().lift().refused()).isFalse();
        assertThat(card().lift().done()).isFalse();
        new CloseCard(book).close(chute);
        assertThat(card().lift().chance()).hasValue(chance);
        assertThatThrownBy(() -> new RefuseLift(book).refuse(chute)).isInstanceOf(CardRefused.class);
        Chute other = new Chute(cow("413", ""), DAY, odo.id());
        assertThatThrownBy(() -> new RefuseLift(book).refuse(other)).isInstanceOf(CardRefused.class);
        assertThatThrownBy(() -> new OpenCard(book).open(other, OptionalDouble.of(1.2)))
                .isInstanceOf(CardRefused.class);
    }

    @Test
    void aCardWithNoFootCannotBeClosed() {
        assertThatThrownBy(() -> new CloseCard(book).close(chute))
                .isInstanceOf(CardRefused.class)
                .hasMessageContaining("412");
    }

    @Test
    void aPhotoMustBeThere() throws Exception {
        assertThatThrownBy(() -> new KeepPhoto(book).keep(chute, Leg.RH, folder.resolve("no.jpg")))
                .isInstanceOf(CardRefused.class);
        Path photo = Files.writeString(folder.resolve("rh.jpg"), "not looked into");
        new KeepPhoto(book).keep(chute, Leg.RH, photo);
        assertThat(foot(Leg.RH).foot().noLesion()).isFalse();
    }

    @Test
    void aWholeCardIsOneStepForUndo() {
        CardDraft draft = new CardDraft(
                OptionalDouble.empty(),
                false,
                List.of(
                        new CardDraft.FootDraft(
                                Leg.RH,
                                List.of(FindingDraft.of(Claw.LATERAL, 4, "SU").severe(2)),
                                false,
                                Set.of(FootAction.TRIMMED, FootAction.BLOCK_INNER)),
                        new CardDraft.FootDraft(Leg.LH, List.of(), true, Set.of(FootAction.TRIMMED))),
                Optional.empty(),
                Optional.empty());
        LiftCard written = book.step("O", "Card of 412", b -> new WriteCard(b).write(chute, draft));
        assertThat(written.lift().done()).isTrue();
        assertThat(written.feet()).hasSize(2);
        assertThat(written.lookAgainOn()).contains(DAY.plusDays(28));
        assertThat(book.undo("O")).contains("Card of 412");
        assertThat(book.trim().cardsOf(cow)).isEmpty();
        assertThat(book.trim().blocksOn(herd.id(), DAY)).isEmpty();
        book.redo("O");
        assertThat(card().feet()).hasSize(2);
    }

    @Test
    void theListHasTheWorstFirstAndThenWhoWaitsLongest() {
        Visit before = book.herd().visitOn(herd.id(), DAY.minusDays(14));
        Visit now = book.herd().visitOn(herd.id(), DAY);
        CowId severe = cow("9", "");
        CowId longLame = cow("100", "");
        CowId newlyLame = cow("20", "");
        CowId treated = cow("30", "");
        CowId sound = cow("40", "");
        score(severe, before, 0);
        score(severe, now, 3);
        score(longLame, before, 2);
        score(longLame, now, 2);
        score(newlyLame, before, 1);
        score(newlyLame, now, 2);
        score(treated, before, 2);
        score(treated, now, 2);
        score(sound, now, 1);
        new NoLesion(book).say(new Chute(treated, DAY.minusDays(10), odo.id()), Leg.RH);
        List<ChuteRow> rows = new ListChute(book).list(now, DAY);
        assertThat(rows).extracting(r -> r.cow().number()).containsExactly("9", "100", "20", "30");
        assertThat(rows.get(1).waitingSince()).isEqualTo(DAY.minusDays(14));
        // Lifted between the two visits: a new wait begins.
        assertThat(rows.get(3).waitingSince()).isEqualTo(DAY);

        new OpenCard(book).open(new Chute(sound, DAY, odo.id()), OptionalDouble.of(.5));
        new NoLesion(book).say(new Chute(severe, DAY, odo.id()), Leg.RH);
        new CloseCard(book).close(new Chute(severe, DAY, odo.id()));
        rows = new ListChute(book).list(now, DAY);
        assertThat(rows).extracting(r -> r.cow().number()).containsExactly("9", "100", "20", "30", "40");
        assertThat(rows.get(0).done()).isTrue();
        assertThat(rows.get(4).why()).isEqualTo(ChuteRow.Why.CONTROL);
        assertThat(rows.get(4).done()).isFalse();
    }

    @Test
    void aScoreCorrectedToSoundTakesHerOffTheList() {
        Visit now = book.herd().visitOn(herd.id(), DAY);
        score(cow, now, 2);
        assertThat(new ListChute(book).list(now, DAY)).hasSize(1);
        score(cow, now, 1);
        assertThat(new ListChute(book).list(now, DAY)).isEmpty();
    }

    @Test
    void whatTheChuteMustKnowIsReadWithHer() {
        CowId kicks = cow("500", "Kicks with LH");
        Chute march = new Chute(kicks, DAY.minusDays(28), odo.id());
        new SetActions(book).set(march, Leg.RH, Set.of(FootAction.BLOCK_INNER), false);
        new WriteMedicine(book).write(march, new MedicineNote("x", "", "Thu 16 Apr, 05:00", "", "", "", "", ""));
        ChuteCow read = new ReadChuteCow(book).read(kicks, DAY);
        assertThat(read.card()).isEmpty();
        assertThat(read.earlier()).hasSize(1);
        assertThat(read.blocks())
                .singleElement()
                .satisfies(b -> assertThat(b.on()).isEqualTo(DAY.minusDays(28)));
        assertThat(read.withheld().orElseThrow().note().milkWithheldUntil()).isEqualTo("Thu 16 Apr, 05:00");
        assertThat(read.cow().note()).isEqualTo("Kicks with LH");
        assertThat(new ReadChuteCow(book).byNumber(herd.id(), " 500 ", DAY)).isEqualTo(kicks);
        assertThatThrownBy(() -> new ReadChuteCow(book).byNumber(herd.id(), "501", DAY))
                .isInstanceOf(CardRefused.class)
                .hasMessageContaining("501");
    }

    private void score(CowId of, Visit visit, double level) {
        book.herd()
                .put(new Score(
                        ScoreId.fresh(),
                        of,
                        visit.id(),
                        Optional.empty(),
                        odo.id(),
                        Optional.empty(),
                        "mobility-0-3",
                        level,
                        Instant.parse("2026-04-14T10:00:00Z"),
                        false));
    }
}
