package levelback.player.cli;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import levelback.player.work.BadInput;
import levelback.player.work.FollowHerd;
import levelback.scoring.herd.HerdQuestion;
import levelback.store.book.Book;
import levelback.store.book.Books;
import levelback.store.exchange.TableSource;
import levelback.store.herd.Herd;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** How lame is the herd, and what becomes of its lame cows? From tables, or from a herd of a book. */
@Command(name = "herd")
final class HerdCommand implements Callable<Integer> {

    @Option(
            names = "--scores",
            paramLabel = "FILE",
            description = "cow,date,score[,scorer][,leg]; - reads standard input")
    private @Nullable String scores;

    @Option(
            names = "--trims",
            paramLabel = "FILE",
            description = "cow,date,leg,claw,zone,lesion,severity[,stage][,chance]; - reads standard input")
    private @Nullable String trims;

    @Option(names = "--book", paramLabel = "FILE", description = "a book in place of the tables")
    private @Nullable Path book;

    @Option(names = "--herd", paramLabel = "NAME", description = "which herd of the book")
    private @Nullable String herd;

    @Option(names = "--cut", paramLabel = "N", required = true, description = "a score at or above it is lame")
    private double cut;

    @Option(
            names = "--severe",
            paramLabel = "N",
            description = "a score at or above it is severe; default: every score above the cut")
    private @Nullable Double severe;

    @Option(
            names = "--herd-size",
            paramLabel = "N",
            description = "cows in the herd; the interval then allows for the part that was scored")
    private @Nullable Long herdSize;

    @Option(
            names = "--level",
            paramLabel = "PERCENT",
            defaultValue = "95",
            description = "of the intervals; default: 95")
    private double level = 95;

    @Option(names = "--json", description = "one JSON document in place of the table")
    private boolean json;

    @Spec
    private @Nullable CommandSpec spec;

    @Override
    public Integer call() {
        HerdQuestion question = question();
        PrintWriter out = Objects.requireNonNull(spec).commandLine().getOut();
        PrintWriter err = Objects.requireNonNull(spec).commandLine().getErr();
        FollowHerd.Answer answer = book == null ? fromTables(question) : fromBook(book, question);
        answer.notes().forEach(err::println);
        if (json) {
            HerdJson.write(out, answer);
        } else {
            HerdTable.write(out, answer);
        }
        return 0;
    }

    private HerdQuestion question() {
        if (!Double.isFinite(cut)) {
            throw new BadInput("--cut " + cut + " is no score; give a number such as 2.");
        }
        if (severe != null && !(Double.isFinite(severe) && severe >= cut)) {
            throw new BadInput("--severe " + severe + " must be a score at or above --cut " + cut + ".");
        }
        if (herdSize != null && herdSize < 1) {
            throw new BadInput("--herd-size " + herdSize + " is no herd; give the number of cows.");
        }
        return new HerdQuestion(
                cut,
                severe == null ? HerdQuestion.severeAbove(cut) : severe,
                herdSize == null ? OptionalLong.empty() : OptionalLong.of(herdSize),
                Percent.level(level));
    }

    private FollowHerd.Answer fromTables(HerdQuestion question) {
        if (scores == null) {
            throw new BadInput("--scores is needed; levelback herd --help shows the columns.");
        }
        if (scores.equals("-") && "-".equals(trims)) {
            throw new BadInput("Only one of --scores and --trims can be read from standard input; name a file.");
        }
        return FollowHerd.fromTables(
                TableSource.of(scores, System.in),
                Optional.ofNullable(trims).map(name -> TableSource.of(name, System.in)),
                question,
                LocalDate.now(java.time.ZoneId.systemDefault()));
    }

    private FollowHerd.Answer fromBook(Path file, HerdQuestion question) {
        if (scores != null || trims != null) {
            throw new BadInput("--book takes the place of --scores and --trims; give one or the other.");
        }
        if (!Files.isRegularFile(file)) {
            throw new BadInput("There is no book " + file + "; check the name.");
        }
        try (Book open = Books.open(file)) {
            List<Herd> herds = open.herd().herds();
            String known = herds.stream().map(Herd::name).sorted().collect(Collectors.joining(", "));
            Herd chosen = herds.stream()
                    .filter(h -> herd == null ? herds.size() == 1 : h.name().equals(herd))
                    .findFirst()
                    .orElseThrow(() -> new BadInput(
                            herds.isEmpty()
                                    ? file + " holds no herd yet; import scores first."
                                    : "Say which herd with --herd: " + known + "."));
            return FollowHerd.fromBook(open, chosen, question, LocalDate.now(chosen.zone()));
        }
    }
}
