package levelback.player.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import levelback.player.work.BadInput;
import levelback.player.work.IdentifyPasses;
import levelback.scoring.identity.Identification;
import levelback.store.exchange.TableSource;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Which cow each pass is, from the reads of a gate. */
@Command(name = "identify")
final class IdentifyCommand implements Callable<Integer> {

    @Option(
            names = "--passes",
            paramLabel = "FILE",
            required = true,
            description = "pass,from,to[,direction]; - reads standard input")
    private String passes = "";

    @Option(
            names = "--reads",
            paramLabel = "FILE",
            required = true,
            description = "time,tag[,reader]; - reads standard input")
    private String reads = "";

    @Option(names = "--json", description = "one JSON document in place of the table")
    private boolean json;

    @Spec
    private @Nullable CommandSpec spec;

    @Override
    public Integer call() {
        if (passes.equals("-") && reads.equals("-")) {
            throw new BadInput("Only one of --passes and --reads can be read from standard input; name a file.");
        }
        PrintWriter out = Objects.requireNonNull(spec).commandLine().getOut();
        PrintWriter err = Objects.requireNonNull(spec).commandLine().getErr();
        IdentifyPasses.FromTables answer =
                IdentifyPasses.fromTables(TableSource.of(passes, System.in), TableSource.of(reads, System.in));
        answer.notes().forEach(err::println);
        if (json) {
            document(out, answer.result());
        } else {
            table(out, answer.result());
        }
        return 0;
    }

    private static void document(PrintWriter to, Identification result) {
        JsonOut.object(to, out -> {
            if (result.clock().isPresent()) {
                Identification.Clock clock = result.clock().get();
                out.number("clockOffsetS", clock.offsetS());
                out.number("clockDriftPpm", clock.driftPpm());
                out.number("clockOffsetSeS", clock.offsetSeS());
                out.number("clockDriftSePpm", clock.driftSePpm());
            } else {
                out.nothing("clockOffsetS");
                out.nothing("clockDriftPpm");
            }
            if (result.why().isPresent()) {
                out.text("why", result.why().get());
            }
            out.list("passes", result.passes(), (o, p) -> {
                o.text("pass", p.pass());
                tag(o, p.tag());
                o.number("probability", p.probability());
                o.list("others", p.others(), (c, chance) -> {
                    tag(c, chance.tag());
                    c.number("probability", chance.probability());
                });
                o.flag("committed", p.committed());
            });
            out.texts("unmatchedTags", result.unmatchedTags());
            out.texts("notes", result.notes());
            if (result.clock().isPresent()) {
                parameters(out, result.clock().get());
            }
        });
    }

    private static void parameters(JsonOut out, Identification.Clock clock) throws IOException {
        out.object("parameters", o -> {
            o.number("sigmaS", clock.with().sigmaS());
            o.number("miss", clock.with().miss());
            o.number("strayPerS", clock.with().strayPerS());
            o.number("inversionFactor", clock.with().inversionFactor());
            o.number("exchange", clock.exchange());
        });
    }

    private static void tag(JsonOut out, Optional<String> tag) throws IOException {
        if (tag.isPresent()) {
            out.text("tag", tag.get());
        } else {
            out.nothing("tag");
        }
    }

    private static void table(PrintWriter to, Identification result) {
        result.why().ifPresent(to::println);
        result.clock()
                .ifPresent(c -> to.println(String.format(
                        Locale.ROOT,
                        "Reader clock %.2f s %s (standard error %.2f s), drift %.0f ppm (standard error %.0f ppm).",
                        Math.abs(c.offsetS()),
                        c.offsetS() >= 0 ? "ahead" : "behind",
                        c.offsetSeS(),
                        c.driftPpm(),
                        c.driftSePpm())));
        to.println(String.format(Locale.ROOT, "%-10s %-20s %8s  %s", "pass", "tag", "chance", "to settle by eye"));
        for (Identification.PassIdentity p : result.passes()) {
            to.println(String.format(
                            Locale.ROOT,
                            "%-10s %-20s %8.3f  %s",
                            p.pass(),
                            p.tag().orElse("no read"),
                            p.probability(),
                            p.committed() ? "" : "yes")
                    .stripTrailing());
        }
        if (!result.unmatchedTags().isEmpty()) {
            to.println("Tags of no pass: " + String.join(", ", result.unmatchedTags()) + ".");
        }
    }
}
