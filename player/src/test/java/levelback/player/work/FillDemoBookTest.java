package levelback.player.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import levelback.clips.drawn.herd.HerdLift;
import levelback.clips.drawn.herd.HerdPlan;
import levelback.clips.drawn.herd.HerdVisit;
import levelback.player.report.ReportFigures.Lifted;
import levelback.player.report.ReportWords;
import levelback.scoring.proof.TrimRow;
import levelback.store.book.Book;
import levelback.store.book.Books;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The book says what the plan says: every score, every card, control lifts with their chance. */
class FillDemoBookTest {

    @TempDir
    Path temp;

    private final HerdPlan plan = HerdPlan.of(1);

    private Book filled() {
        Book book = Books.create(temp.resolve("demo.levelback"));
        FillDemoBook fill = new FillDemoBook(book, plan);
        fill.people();
        for (HerdVisit visit : plan.visits()) {
            fill.visit(visit, List.of());
        }
        return book;
    }

    @Test
    void everyScoreAndCardOfThePlanIsInTheBook() {
        try (Book book = filled()) {
            BookRows rows = BookRows.of(book, book.herd().herds().get(0));
            assertThat(rows.scores()).hasSize(2 * 60 * 9);
            long refusedPlanned = 0;
            long controlsPlanned = 0;
            long rowsPlanned = 0;
            Set<String> liftedPlanned = new HashSet<>();
            for (HerdVisit visit : plan.visits()) {
                for (HerdLift lift : visit.lifts()) {
                    refusedPlanned += lift.refused() ? 1 : 0;
                    controlsPlanned += lift.chance().isPresent() ? 1 : 0;
                    rowsPlanned += lift.feet().stream()
                            .filter(f -> f.examined())
                            .mapToInt(f -> Math.max(1, f.findings().size()))
                            .sum();
                    if (lift.feet().stream().anyMatch(f -> f.examined())) {
                        liftedPlanned.add(lift.cow() + lift.date());
                    }
                }
            }
            List<TrimRow> trims = rows.trims();
            assertThat(trims.stream().filter(r -> r.lesion().equals("REFUSED"))).hasSize((int) refusedPlanned);
            assertThat(trims.stream().filter(r -> !r.lesion().equals("REFUSED")))
                    .hasSize((int) rowsPlanned);
            assertThat(trims.stream()
                            .filter(r -> !r.lesion().equals("REFUSED"))
                            .map(r -> r.cow() + r.date())
                            .distinct())
                    .hasSameSizeAs(liftedPlanned);
            assertThat(trims.stream()
                            .filter(r -> r.chance().isPresent())
                            .map(r -> r.cow() + r.date())
                            .distinct())
                    .hasSize((int) controlsPlanned);
            assertThat(book.check().problems()).isEmpty();
        }
    }

    @Test
    void aReportReadsTheLastVisitOfTheScorerWhoScoredMost() {
        try (Book book = filled()) {
            ReportSource source = ReportSource.read(book, Optional.empty(), Optional.empty());
            assertThat(source.visit().date()).isEqualTo(HerdPlan.LAST_VISIT);
            assertThat(source.visits()).hasSize(9);
            assertThat(source.scorer().name()).isEqualTo("Ada Fenn");
            HerdVisit last = plan.visits().get(8);
            long lame = last.scores().stream()
                    .filter(s -> s.scorer().equals("A") && s.level() >= 2)
                    .count();
            assertThat(source.today().values().stream().filter(level -> level >= 2))
                    .hasSize((int) lame);
            assertThat(source.counts().values().stream()
                            .mapToLong(Long::longValue)
                            .sum())
                    .isEqualTo(60);
            List<Lifted> lines = new ReportLines(new ReportWords(java.util.Locale.UK))
                    .lifted(source.cardsAfter(), source.cows(), source.visits(), source.levels());
            assertThat(lines).hasSameSizeAs(last.lifts());
            for (int i = 1; i < lines.size(); i++) {
                assertThat(lines.get(i).score().orElse(-1))
                        .isLessThanOrEqualTo(lines.get(i - 1).score().orElse(-1));
            }
            assertThat(source.fingerprint()).matches("[0-9a-f]{8}");
        }
    }

    @Test
    void whatIsNotThereIsSaidInASentence() {
        try (Book empty = Books.create(temp.resolve("empty.levelback"))) {
            assertThatThrownBy(() -> ReportSource.read(empty, Optional.empty(), Optional.empty()))
                    .isInstanceOf(BadInput.class)
                    .hasMessageContaining("holds no herd yet");
        }
        try (Book book = filled()) {
            assertThatThrownBy(() -> ReportSource.read(book, Optional.of("Nowhere"), Optional.empty()))
                    .isInstanceOf(BadInput.class)
                    .hasMessageContaining("Larkenmoss");
            assertThatThrownBy(() -> ReportSource.read(book, Optional.empty(), Optional.of(LocalDate.of(2020, 1, 1))))
                    .isInstanceOf(BadInput.class)
                    .hasMessageContaining("2026-03-10");
        }
    }
}
