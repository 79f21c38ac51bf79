package levelback.player.cli;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import levelback.player.work.BadInput;
import levelback.player.work.BookRows;
import levelback.player.work.Prove;
import levelback.scoring.proof.LesionSet;
import levelback.scoring.proof.ProofComparison;
import levelback.scoring.proof.ProofQuestion;
import levelback.scoring.proof.ProofResult;
import levelback.store.book.Book;
import levelback.store.book.Books;
import levelback.store.exchange.TableSource;
import levelback.store.herd.Herd;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Did the scores find the lesions? From two tables, or from a herd of a book. */
@Command(name = "proof")
final class ProofCommand implements Callable<Integer> {

    private static final Pattern WINDOW = Pattern.compile("(-?\\d{1,5})-(-?\\d{1,5})");

    @Option(
            names = "--scores",
            paramLabel = "FILE",
            description = "cow,date,score[,scorer][,leg]; - reads standard input")
    private @Nullable String scores;

    @Option(
            names = "--trims",
            paramLabel = "FILE",
            description = "cow,date,leg,claw,zone,lesion,severity[,stage][,chance]; lesion NONE where a foot was lifted"
                    + " and nothing found; - reads standard input")
    private @Nullable String trims;

    @Option(names = "--book", paramLabel = "FILE", description = "a book in place of the two tables")
    private @Nullable Path book;

    @Option(names = "--herd", paramLabel = "NAME", description = "which herd of the book")
    private @Nullable String herd;

    @Option(names = "--cut", paramLabel = "N", required = true, description = "a score at or above it is positive")
    private double cut;

    @Option(names = "--unit", paramLabel = "cow|leg", defaultValue = "cow", description = "default: cow")
    private String unit = "cow";

    @Option(
            names = "--window-days",
            paramLabel = "A-B",
            defaultValue = "0-14",
            description = "days from score to lift, both ends in; default: 0-14")
    private String windowDays = "0-14";

    @Option(
            names = "--lesions",
            paramLabel = "alarm|any|CODE,...",
            defaultValue = "alarm",
            description = "U, WL, SH and HF stand for their kinds; default: alarm")
    private String lesions = "alarm";

    @Option(names = "--scorer", paramLabel = "NAME", description = "one scorer only")
    private @Nullable String scorer;

    @Option(
            names = "--compare",
            paramLabel = "A,B",
            description = "two scorers on the cows that both scored: McNemar, paired DeLong")
    private @Nullable String compare;

    @Option(
            names = "--until",
            paramLabel = "DATE",
            description = "end of follow-up: an unlifted score whose window runs past it is left out")
    private @Nullable String until;

    @Option(
            names = "--level",
            paramLabel = "PERCENT",
            defaultValue = "95",
            description = "of the intervals; default: 95")
    private double level = 95;

    @Option(names = "--seed", paramLabel = "N", defaultValue = "1", description = "of the resamples; default: 1")
    private long seed = 1;

    @Option(names = "--json", description = "one JSON document in place of the table")
    private boolean json;

    @Spec
    private @Nullable CommandSpec spec;

    @Override
    public Integer call() {
        ProofQuestion question = question();
        PrintWriter out = Objects.requireNonNull(spec).commandLine().getOut();
        PrintWriter err = Objects.requireNonNull(spec).commandLine().getErr();
        Optional<Prove.Pair> pair = Optional.ofNullable(compare).map(ProofCommand::pair);
        ProofResult result;
        Optional<ProofComparison> comparison;
        if (book != null) {
            if (scores != null || trims != null) {
                throw new BadInput("--book takes the place of --scores and --trims; give one or the other.");
            }
            BookRows rows = fromBook(book);
            result = Prove.fromRows(rows, question);
            comparison = pair.map(p -> Prove.compare(rows, question, p));
        } else {
            if (scores == null || trims == null) {
                throw new BadInput("--scores and --trims are both needed; levelback proof --help shows the columns.");
            }
            if (scores.equals("-") && trims.equals("-")) {
                throw new BadInput("Only one of --scores and --trims can be read from standard input; name a file.");
            }
            Prove.FromTables answer = Prove.fromTables(
                    TableSource.of(scores, System.in), TableSource.of(trims, System.in), question, pair);
            answer.notes().forEach(err::println);
            result = answer.result();
            comparison = answer.comparison();
        }
        if (json) {
            ProofJson.write(out, result, comparison);
        } else {
            ProofTable.write(out, result);
            comparison.ifPresent(c -> ComparisonOut.write(out, c));
        }
        return 0;
    }

    private ProofQuestion question() {
        if (!Double.isFinite(cut)) {
            throw new BadInput("--cut " + cut + " is no score; give a number such as 2.");
        }
        double share = level > 1 ? level / 100 : level;
        if (!(share > 0 && share < 1)) {
            throw new BadInput("--level " + level + " is no level of confidence; give a percentage such as 95.");
        }
        ProofQuestion.Unit of = switch (unit) {
            case "cow" -> ProofQuestion.Unit.COW;
            case "leg" -> ProofQuestion.Unit.LEG;
            default -> throw new BadInput("--unit " + unit + " is not known; give cow or leg.");
        };
        Matcher window = WINDOW.matcher(windowDays);
        if (!window.matches() || Integer.parseInt(window.group(1)) > Integer.parseInt(window.group(2))) {
            throw new BadInput("--window-days " + windowDays + " is no window; give two days such as 0-14.");
        }
        LesionSet set;
        try {
            set = LesionSet.of(lesions);
        } catch (IllegalArgumentException none) {
            throw new BadInput("--lesions: " + none.getMessage() + ".", none);
        }
        return new ProofQuestion(
                cut,
                of,
                Integer.parseInt(window.group(1)),
                Integer.parseInt(window.group(2)),
                set,
                Optional.ofNullable(scorer),
                Optional.ofNullable(until).map(ProofCommand::date),
                share,
                seed);
    }

    private static Prove.Pair pair(String text) {
        String[] names = text.split(",", -1);
        if (names.length != 2
                || names[0].isBlank()
                || names[1].isBlank()
                || names[0].strip().equals(names[1].strip())) {
            throw new BadInput("--compare " + text + " names no two scorers; give two such as Anna,Ben.");
        }
        return new Prove.Pair(names[0].strip(), names[1].strip());
    }

    private static LocalDate date(String text) {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeException noDate) {
            throw new BadInput("--until " + text + " is no date; write 2026-03-14.", noDate);
        }
    }

    private BookRows fromBook(Path file) {
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
                                    ? file + " holds no herd yet."
                                    : "Say which herd with --herd: " + known + "."));
            return BookRows.of(open, chosen);
        }
    }
}
