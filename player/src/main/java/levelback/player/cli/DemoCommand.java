package levelback.player.cli;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import levelback.player.report.ReportFigures;
import levelback.player.work.DrawDemo;
import levelback.scoring.value.Estimate;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code demo}: draws the demo herd, runs the whole loop on it, and opens the desk on it where there is a screen. */
@Command(name = "demo", description = "Draws the demo herd, runs the whole loop on it and writes the report.")
final class DemoCommand implements Callable<Integer> {

    @Spec
    CommandSpec spec;

    @Option(
            names = "--dir",
            paramLabel = "DIR",
            defaultValue = "levelback-demo",
            description = "folder for the demo (./levelback-demo)")
    Path dir;

    @Option(names = "--no-window", description = "does not open the desk afterwards")
    boolean noWindow;

    @Option(names = "--replace", description = "takes away first what an earlier demo made in the folder")
    boolean replace;

    @Override
    public Integer call() throws Exception {
        PrintWriter say = spec.commandLine().getOut();
        PrintWriter err = spec.commandLine().getErr();
        long start = System.nanoTime();
        TerminalProgress progress = new TerminalProgress(err);
        DrawDemo.Demo demo;
        try {
            demo = new DrawDemo(Version.line()).draw(dir, replace, progress::at);
        } finally {
            progress.clear();
        }
        List<DrawDemo.Stage> stages = new ArrayList<>(demo.stages());
        long beforeTour = System.nanoTime();
        Path tour = demo.folder().resolve("tour");
        Optional<String> noTour = tour(demo, tour, err);
        stages.add(new DrawDemo.Stage("pictures of every page", (System.nanoTime() - beforeTour) / 1e9));
        stages.add(new DrawDemo.Stage("in all", (System.nanoTime() - start) / 1e9));

        say.println("The demo herd is in " + demo.folder());
        say.println("  book        " + demo.book());
        say.println("  recordings  " + demo.films().size() + " films, " + demo.frames() + " frames, in "
                + demo.folder().resolve("recordings"));
        say.println("  truth       " + demo.folder().resolve("truth"));
        say.println("  report      " + demo.report().html() + " and report.pdf");
        if (noTour.isEmpty() && Files.isDirectory(tour)) {
            say.println("  pictures    " + count(tour) + " in " + tour);
        }
        say.println();
        figures(say, demo);
        say.println();
        for (DrawDemo.Stage stage : stages) {
            say.println(String.format(Locale.ROOT, "  %-24s %6.1f s", stage.name(), stage.seconds()));
        }
        noTour.ifPresent(err::println);
        say.flush();
        if (noWindow || !hasScreen()) {
            return 0;
        }
        return CommandLineRoot.run(say, err, "open", "--book", demo.book().toString());
    }

    private static void figures(PrintWriter say, DrawDemo.Demo demo) {
        ReportFigures figures = demo.report().figures();
        say.println(ReportCommand.headline(figures));
        ReportFigures.Trust trust = figures.trust();
        say.println(trust.question() + ": " + trust.scored() + " cow-visits scored by " + figures.scorer() + ", "
                + trust.lifted() + " lifted.");
        say.println(String.format(
                Locale.ROOT, "  %-12s %-22s %-22s %s", "", "lifted cows only", "corrected", "truth (by brute force)"));
        for (ReportFigures.Pair row : trust.rows()) {
            String truth = switch (row.key()) {
                case "sensitivity" -> two(demo.truth().sensitivity().get("A"));
                case "specificity" -> two(demo.truth().specificity().get("A"));
                default -> "";
            };
            say.println(String.format(
                            Locale.ROOT,
                            "  %-12s %-22s %-22s %s",
                            row.key(),
                            shown(row.observed()),
                            row.corrected().map(DemoCommand::shown).orElse("not to be had"),
                            truth)
                    .stripTrailing());
        }
        if (!trust.why().isEmpty()) {
            say.println("  " + trust.why());
        }
    }

    private static String two(@org.jspecify.annotations.Nullable Double value) {
        return value == null ? "" : String.format(Locale.ROOT, "%.2f", value);
    }

    private static String shown(Estimate estimate) {
        if (estimate.value().isEmpty()) {
            return estimate.why().orElse("");
        }
        return estimate.interval()
                .map(i -> "%s (%s to %s)".formatted(two(estimate.value().getAsDouble()), two(i.low()), two(i.high())))
                .orElseGet(() -> two(estimate.value().getAsDouble()));
    }

    /** Renders the pages; a missing system library or page costs a sentence, not the demo. */
    private static Optional<String> tour(DrawDemo.Demo demo, Path tour, PrintWriter err) throws java.io.IOException {
        boolean known =
                CommandLineRoot.COMMANDS.stream().anyMatch(entry -> entry.name().equals("tour"));
        if (!known) {
            return Optional.empty();
        }
        java.io.StringWriter said = new java.io.StringWriter();
        int status = CommandLineRoot.run(
                new PrintWriter(new java.io.StringWriter()),
                new PrintWriter(said, true),
                "tour",
                "--out",
                tour.toString(),
                "--book",
                demo.book().toString());
        demo.listTour();
        err.flush();
        return status == 0
                ? Optional.empty()
                : Optional.of("No pictures of the pages: " + said.toString().strip());
    }

    private static long count(Path folder) throws java.io.IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(f -> f.toString().endsWith(".png")).count();
        }
    }

    private static boolean hasScreen() {
        if (!System.getProperty("os.name", "").startsWith("Linux")) {
            return true;
        }
        return !System.getenv().getOrDefault("DISPLAY", "").isEmpty()
                || !System.getenv().getOrDefault("WAYLAND_DISPLAY", "").isEmpty();
    }
}
