package levelback.player.work;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import levelback.scoring.proof.LesionSet;
import levelback.scoring.proof.Proof;
import levelback.scoring.proof.ProofQuestion;
import levelback.scoring.proof.ProofResult;
import levelback.scoring.proof.ScoreRow;
import levelback.scoring.proof.TrimRow;
import levelback.store.book.Book;
import levelback.store.book.Books;
import levelback.store.exchange.ScoreTable;
import levelback.store.exchange.TableSource;
import levelback.store.exchange.TrimTable;
import levelback.store.herd.Herd;
import levelback.store.herd.NumberSpan;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The proof tables whose figures the reference scripts gave (see the README beside them) say the same after they went
 * through a book as they say when they are read directly.
 */
class ProofThroughBookTest {

    private static final Path TABLES = Path.of("../scoring/src/test/resources/levelback/scoring/proof");

    @TempDir
    Path folder;

    @ParameterizedTest
    @CsvSource({"once,2,COW", "repeated,2,COW", "control-lifts,2,COW", "legs,2,LEG", "hepatic,1,COW"})
    void theFiguresAreTheSameThroughTheBook(String name, double cut, ProofQuestion.Unit unit) {
        TableSource scores = TableSource.of(TABLES.resolve(name + "-scores.csv"));
        TableSource trims = TableSource.of(TABLES.resolve(name + "-trims.csv"));
        ProofQuestion question =
                new ProofQuestion(cut, unit, 0, 14, LesionSet.alarm(), Optional.empty(), Optional.empty(), 0.95, 1);
        List<ScoreRow> scoreRows = ScoreTable.read(scores).rows();
        ProofResult direct = Proof.of(scoreRows, TrimTable.read(trims).rows(), question);

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
            Herd herd = book.herd().herds().get(0);
            Map<String, String> numbers = new HashMap<>();
            for (NumberSpan span : book.herd().numbersOf(herd.id())) {
                numbers.put(span.cow().uuid().toString(), span.number());
            }
            BookRows rows = BookRows.of(book, herd);
            List<ScoreRow> back = rows.scores().stream()
                    .map(r -> new ScoreRow(number(numbers, r.cow()), r.date(), r.score(), r.scorer(), r.leg()))
                    .toList();
            List<TrimRow> trimsBack = rows.trims().stream()
                    .map(r ->
                            new TrimRow(number(numbers, r.cow()), r.date(), r.leg(), r.lesion(), r.stage(), r.chance()))
                    .toList();
            assertThat(back).containsExactlyInAnyOrderElementsOf(scoreRows);
            ProofResult through = Proof.of(back, trimsBack, question);
            assertThat(direct.counts()).isNotNull();
            assertThat(through.scored()).isEqualTo(direct.scored()).isPositive();
            assertThat(through.counts()).isEqualTo(direct.counts());
            assertThat(through.flow()).isEqualTo(direct.flow());
            assertThat(through.byScore()).isEqualTo(direct.byScore());
            assertThat(through.byLesion()).isEqualTo(direct.byLesion());
            assertThat(through.byLeg()).isEqualTo(direct.byLeg());
            assertThat(through.lagDays()).isEqualTo(direct.lagDays());
            assertThat(through.cuts()).isEqualTo(direct.cuts());
            // Sums over cows in another order may differ in the last digits.
            assertThat(through)
                    .usingRecursiveComparison()
                    .withEqualsForType((a, b) -> Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a)), Double.class)
                    .comparingOnlyFields("observed", "trend", "weighted", "clustered", "whyNotCorrected")
                    .isEqualTo(direct);
            assertThat(book.herd().visits(herd.id()))
                    .extracting(v -> v.date())
                    .isSortedAccordingTo(LocalDate::compareTo);
        }
    }

    private static String number(Map<String, String> numbers, String uuid) {
        return Optional.ofNullable(numbers.get(uuid)).orElseThrow();
    }
}
