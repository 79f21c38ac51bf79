package levelback.player.work;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import levelback.store.book.Book;
import levelback.store.book.Books;
import levelback.store.exchange.TableSource;
import levelback.store.herd.Cow;
import levelback.store.herd.Herd;
import levelback.store.herd.Score;
import levelback.store.herd.ScoreId;
import levelback.store.herd.Visit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** 2,000 cows scored every fortnight for five years: what a page asks of that book must not be felt. */
@Tag("slow")
class LargeBookTest {

    private static final int COWS = 2000;
    private static final int VISITS = 130;
    private static final LocalDate FIRST = LocalDate.of(2021, 3, 14);

    @TempDir
    Path folder;

    @Test
    void aPageOpensInTimeOnFiveYearsOfScores() throws IOException {
        Path table = folder.resolve("scores.csv");
        Random random = new Random(1);
        StringBuilder text = new StringBuilder("cow,date,score,scorer\n");
        for (int visit = 0; visit < VISITS; visit++) {
            for (int cow = 1; cow <= COWS; cow++) {
                text.append(cow)
                        .append(',')
                        .append(FIRST.plusDays(14L * visit))
                        .append(',')
                        .append(random.nextInt(4))
                        .append(",Anna\n");
            }
        }
        Files.writeString(table, text);
        Path file = folder.resolve("a.levelback");
        ImportOrder order = new ImportOrder(
                Optional.of("Otter Hill"),
                Optional.of("mobility-0-3"),
                Optional.empty(),
                Optional.empty(),
                TableMapping.NONE,
                false);
        try (Book book = Books.create(file)) {
            long start = System.nanoTime();
            ImportReport report =
                    new ImportTables(book).take(ImportTables.Kind.SCORES, List.of(TableSource.of(table)), order);
            double importS = (System.nanoTime() - start) / 1e9;
            assertThat(report.taken()).isEqualTo(COWS * VISITS);
            start = System.nanoTime();
            ImportReport again =
                    new ImportTables(book).take(ImportTables.Kind.SCORES, List.of(TableSource.of(table)), order);
            double againS = (System.nanoTime() - start) / 1e9;
            assertThat(again.unchanged()).isEqualTo(COWS * VISITS);

            Herd herd = book.herd().herds().get(0);
            List<Visit> visits = book.herd().visits(herd.id());
            List<Cow> cows = book.herd().cows(herd.id(), FIRST);
            double scoresOfVisit = p95(() ->
                    book.herd().scoresOf(visits.get(random.nextInt(VISITS)).id()));
            double scoresOfCow = p95(
                    () -> book.herd().scoresOf(cows.get(random.nextInt(COWS)).id()));
            double cowByNumber = p95(() -> book.herd().cowByNumber(herd.id(), "" + (1 + random.nextInt(COWS)), FIRST));
            double cowList = p95(() -> book.herd().cows(herd.id(), FIRST.plusYears(2)));
            double cards = p95(() -> book.trim().cardsOf(herd.id(), FIRST, FIRST.plusYears(5)));
            double undoWords = p95(book::nextUndo);
            double history = p95(() ->
                    book.changes(Optional.of(cows.get(random.nextInt(COWS)).id()), 500));
            double put = p95(() -> {
                Score before = book.herd()
                        .scoresOf(cows.get(random.nextInt(COWS)).id())
                        .get(0);
                return book.herd()
                        .put(new Score(
                                ScoreId.fresh(),
                                before.cow(),
                                before.visit(),
                                before.pass(),
                                before.scorer(),
                                before.leg(),
                                before.scaleId(),
                                3 - before.level(),
                                before.at(),
                                false));
            });
            start = System.nanoTime();
            int all = book.herd().scoresOf(herd.id()).size();
            double wholeHerdMs = (System.nanoTime() - start) / 1e6;
            assertThat(all).isEqualTo(COWS * VISITS);
            System.out.printf(
                    "260,000 scores: import %.1f s, the same again %.1f s, %d bytes a score; p95 in ms: scores of a visit"
                            + " %.1f, of a cow %.1f, cow by number %.2f, list of cows %.1f, cards %.1f, undo words %.2f,"
                            + " history of a cow %.1f, a score read and put %.2f; all scores of the herd once %.0f%n",
                    importS,
                    againS,
                    Files.size(file) / all,
                    scoresOfVisit,
                    scoresOfCow,
                    cowByNumber,
                    cowList,
                    cards,
                    undoWords,
                    history,
                    put,
                    wholeHerdMs);
            assertThat(book.check().problems()).isEmpty();
        }
    }

    private static double p95(java.util.function.Supplier<?> question) {
        double[] ms = new double[60];
        for (int i = 0; i < ms.length; i++) {
            long start = System.nanoTime();
            Object answer = question.get();
            ms[i] = (System.nanoTime() - start) / 1e6;
            assertThat(answer).isNotNull();
        }
        Arrays.sort(ms);
        return ms[ms.length * 95 / 100];
    }
}
