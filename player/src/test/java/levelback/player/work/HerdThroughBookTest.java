package levelback.player.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import levelback.scoring.herd.HerdFigures;
import levelback.scoring.herd.HerdQuestion;
import levelback.store.book.Book;
import levelback.store.book.Books;
import levelback.store.exchange.TableSource;
import levelback.store.herd.Herd;
import levelback.store.herd.HerdId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The tables of the check values (herd/visits) say the same through a book as when they are read directly. */
class HerdThroughBookTest {

    private static final Path TABLES = Path.of("src/test/resources/levelback/player/cli/herd");
    private static final LocalDate TODAY = LocalDate.of(2026, 12, 1);
    private static final HerdQuestion QUESTION =
            new HerdQuestion(2, HerdQuestion.severeAbove(2), OptionalLong.empty(), .95);

    @TempDir
    Path folder;

    @Test
    void theFiguresAreTheSameThroughTheBookAndCowsKeepTheirNumbers() {
        TableSource scores = TableSource.of(TABLES.resolve("visits-scores.csv"));
        TableSource trims = TableSource.of(TABLES.resolve("visits-trims.csv"));
        FollowHerd.Answer direct = FollowHerd.fromTables(scores, Optional.of(trims), QUESTION, TODAY);
        try (Book book = Books.create(folder.resolve("a.levelback"))) {
            ImportOrder order = new ImportOrder(
                    Optional.of("Otter Hill"),
                    Optional.of("mobility-0-3"),
                    Optional.empty(),
                    Optional.empty(),
                    TableMapping.NONE,
                    false);
            new ImportTables(book).take(ImportTables.Kind.SCORES, List.of(scores), order);
            new ImportTables(book).take(ImportTables.Kind.TRIMS, List.of(trims), order);
            FollowHerd.Answer through =
                    FollowHerd.fromBook(book, book.herd().herds().get(0), QUESTION, TODAY);
            HerdFigures a = direct.figures();
            HerdFigures b = through.figures();
            assertThat(b.visits()).isEqualTo(a.visits()).hasSize(8);
            assertThat(b.changes()).isEqualTo(a.changes());
            assertThat(b.newCases().newCases()).isEqualTo(60);
            assertThat(b.newCases().riskDays()).isEqualTo(6244);
            assertThat(b.chronic()).isEqualTo(34);
            assertThat(b.cured()).isEqualTo(59);
            assertThat(b.daysToTreatment()).isEqualTo(a.daysToTreatment()).isPresent();
            assertThat(b.lameCows())
                    .extracting(cow -> through.number(cow.cow()))
                    .containsExactlyInAnyOrderElementsOf(
                            a.lameCows().stream().map(cow -> cow.cow()).toList());
        }
    }

    @Test
    void aHerdWithoutScoresIsSaidInOneSentence() {
        try (Book book = Books.create(folder.resolve("e.levelback"))) {
            Herd herd = new Herd(HerdId.fresh(), "Otter Hill", ZoneId.of("UTC"), "mobility-0-3", OptionalInt.empty());
            book.herd().put(herd);
            assertThatThrownBy(() -> FollowHerd.fromBook(book, herd, QUESTION, TODAY))
                    .isInstanceOf(BadInput.class)
                    .hasMessage("Herd Otter Hill has no score yet; score a visit, or import scores.");
        }
    }
}
