package levelback.player.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;

/**
 * The root of the command line. One list holds every command; the class of a command is loaded only when it is asked
 * for, so that {@code --version} and {@code --help} load no JavaFX, no native library and no database.
 *
 * <p>Exit status: 0 done, 1 could not be done, 2 bad usage or bad input; an error is one sentence on standard error.
 * Commands write to {@code spec.commandLine().getOut()}, which is UTF-8 whatever the locale, and throw
 * {@link levelback.player.work.BadInput} or {@link levelback.player.work.CannotBeDone}; every other failure is turned
 * into a sentence by {@link Sentences}.
 */
public final class CommandLineRoot {

    /**
     * A command in the list.
     *
     * @param name what is typed
     * @param does one line of help
     * @param make makes it; not called before it is asked for
     */
    record Entry(String name, String does, Supplier<Callable<Integer>> make) {}

    /** Every command, in the order of the help; a new command adds one line here. */
    static final List<Entry> COMMANDS = List.of(
            new Entry("demo", "draws the demo herd, runs the whole loop on it, writes the report", DemoCommand::new),
            new Entry("report", "a visit's report as HTML and PDF", ReportCommand::new),
            new Entry("open", "opens the desk, on the book open last or the one named", OpenCommand::new),
            new Entry("tour", "renders every page of the desk to pictures", TourCommand::new),
            new Entry("proof", "did the scores find the lesions, with honest uncertainty", ProofCommand::new),
            new Entry("gait", "gait measures of a pass from its footfalls and marks", GaitCommand::new),
            new Entry("herd", "how lame the herd is, and what becomes of its lame cows", HerdCommand::new),
            new Entry("sample-size", "how many cows to score for a prevalence", SampleSizeCommand::new),
            new Entry("agreement", "do scorers agree, with each other and with themselves", AgreementCommand::new),
            new Entry("inspect", "what a video file is, frame by frame if asked", InspectCommand::new),
            new Entry("bench", "how fast this machine steps through a video file", BenchCommand::new),
            new Entry("still", "one frame of a video file as a picture", StillCommand::new),
            new Entry("clip", "a span of a video file as a film of its own", ClipCommand::new),
            new Entry("identify", "which cow each pass is, from the reads of a gate", IdentifyCommand::new),
            new Entry("import", "brings tables and recordings into a book", ImportCommand::new),
            new Entry("export", "writes a book's data as files of open forms", ExportCommand::new),
            new Entry("backup", "makes a verified copy of a book, or brings one back", BackupCommand::new),
            new Entry("check", "looks a book through and says what is wrong", CheckCommand::new),
            new Entry("history", "says who changed what in a book, and when", HistoryCommand::new));

    private CommandLineRoot() {}

    /** Runs one command on the process's own streams and returns its exit status. */
    public static int run(String... args) {
        PrintWriter out = utf8(FileDescriptor.out);
        PrintWriter err = utf8(FileDescriptor.err);
        int status = run(out, err, args);
        out.flush();
        err.flush();
        return status;
    }

    /**
     * Runs one command and returns its exit status.
     *
     * @param out takes what the command says
     * @param err takes one sentence when something is wrong, and progress on a terminal
     */
    public static int run(PrintWriter out, PrintWriter err, String... args) {
        return run(COMMANDS, out, err, args);
    }

    static int run(List<Entry> commands, PrintWriter out, PrintWriter err, String... args) {
        try {
            Sentences.requireReadableNames(args);
            String first = args.length == 0 ? "open" : args[0];
            switch (first) {
                case "--version", "-V" -> {
                    out.println(Version.line());
                    return 0;
                }
                case "--help", "-h", "help" -> {
                    help(commands, out);
                    return 0;
                }
                default -> {
                    for (Entry entry : commands) {
                        if (entry.name().equals(first)) {
                            return call(entry, out, err, args.length == 0 ? new String[] {first} : args);
                        }
                    }
                }
            }
            String kind = first.startsWith("-") ? "option" : "command";
            err.println("There is no " + kind + " \"" + Sentences.onOneLine(first)
                    + "\"; levelback --help lists the commands.");
            return 2;
        } catch (Throwable failure) { // boundary of the program: native load errors too
            return Sentences.tell(failure, err);
        } finally {
            out.flush();
            err.flush();
        }
    }

    private static int call(Entry entry, PrintWriter out, PrintWriter err, String[] args) {
        CommandSpec root = CommandSpec.create().name("levelback");
        CommandLine line = new CommandLine(root);
        CommandLine command = new CommandLine(entry.make().get());
        line.addSubcommand(entry.name(), command);
        command.getCommandSpec().mixinStandardHelpOptions(true).version(Version.line());
        if (command.getCommandSpec().usageMessage().description().length == 0) {
            command.getCommandSpec().usageMessage().description(entry.does());
        }
        line.setOut(out);
        line.setErr(err);
        // A file name that begins with @ is a file name.
        line.setExpandAtFiles(false);
        line.setUsageHelpAutoWidth(false);
        line.setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF));
        line.setParameterExceptionHandler((wrong, given) -> {
            String sentence = Sentences.onOneLine(String.valueOf(wrong.getMessage()));
            err.println(sentence + (sentence.endsWith(".") ? " " : ". ") + "levelback " + entry.name()
                    + " --help shows the usage.");
            return 2;
        });
        line.setExecutionExceptionHandler((failure, which, parsed) -> {
            out.flush();
            return Sentences.tell(failure, err);
        });
        return line.execute(args);
    }

    private static void help(List<Entry> commands, PrintWriter out) {
        out.println(
                "Levelback: gait scoring of dairy cows on video, trim records, and proof whether the scores were right.");
        out.println();
        out.println("Usage: levelback [COMMAND] [options]      (java -jar levelback.jar COMMAND ...)");
        out.println();
        for (Entry entry : commands) {
            out.printf("  %-12s %s%n", entry.name(), entry.does());
        }
        out.printf("  %-12s %s%n", "--version", "prints version and build");
        out.println();
        out.println("levelback COMMAND --help shows the options of a command. Without a command the desk opens.");
        out.println("Exit status: 0 done, 1 could not be done, 2 bad usage or bad input.");
    }

    private static PrintWriter utf8(FileDescriptor descriptor) {
        return new PrintWriter(new OutputStreamWriter(new FileOutputStream(descriptor), StandardCharsets.UTF_8), true);
    }
}
