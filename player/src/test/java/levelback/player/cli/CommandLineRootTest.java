package levelback.player.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import levelback.clips.open.ClipException;
import levelback.player.app.Levelback;
import levelback.player.work.BadInput;
import levelback.player.work.CannotBeDone;
import org.junit.jupiter.api.Test;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Exit statuses and sentences as fixed by the contract of the command line. */
class CommandLineRootTest {

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @Command(name = "try")
    static final class Try implements Callable<Integer> {
        @Spec
        picocli.CommandLine.Model.CommandSpec spec;

        @Option(names = "--count")
        int count;

        @Parameters(arity = "0..1", defaultValue = "")
        String kind = "";

        @Override
        public Integer call() throws Exception {
            switch (kind) {
                case "bad" -> throw new BadInput("Line 3 of a.csv is bad; mend it.");
                case "cannot" -> throw new CannotBeDone("The disk is full; make room.");
                case "clip" ->
                    throw new ClipException(
                            ClipException.Reason.NOT_A_RECORDING, "x.mp4 is no recording; choose another.");
                case "path" -> throw new java.nio.file.NoSuchFileException("nowhere.mp4");
                case "bug" -> throw new IllegalStateException("two\nlines");
                default -> spec.commandLine().getOut().println("done " + count + " – " + kind);
            }
            return 0;
        }
    }

    private int run(String... args) {
        List<CommandLineRoot.Entry> commands =
                List.of(new CommandLineRoot.Entry("try", "tries things", () -> new Try()));
        return CommandLineRoot.run(commands, new PrintWriter(out, true), new PrintWriter(err, true), args);
    }

    @Test
    void doneIsNought() {
        assertThat(run("try", "--count", "3", "@küh")).isZero();
        assertThat(out.toString()).isEqualTo("done 3 – @küh" + System.lineSeparator());
        assertThat(err.toString()).isEmpty();
    }

    @Test
    void badInputIsTwoWithItsOneSentence() {
        assertThat(run("try", "bad")).isEqualTo(2);
        assertThat(err.toString().lines()).containsExactly("Line 3 of a.csv is bad; mend it.");
        assertThat(out.toString()).isEmpty();
    }

    @Test
    void whatCannotBeDoneIsOne() {
        assertThat(run("try", "cannot")).isEqualTo(1);
        assertThat(err.toString().lines()).containsExactly("The disk is full; make room.");
    }

    @Test
    void badRecordingAndMissingFileAreTwo() {
        assertThat(run("try", "clip")).isEqualTo(2);
        assertThat(run("try", "path")).isEqualTo(2);
        assertThat(err.toString().lines()).hasSize(2).noneMatch(line -> line.contains("Exception"));
    }

    @Test
    void badUsageIsTwoAndOneSentence() {
        assertThat(run("try", "--count", "x")).isEqualTo(2);
        assertThat(run("try", "--nothing")).isEqualTo(2);
        assertThat(run("fly")).isEqualTo(2);
        assertThat(run("--fly")).isEqualTo(2);
        assertThat(err.toString().lines()).hasSize(4).allMatch(line -> line.contains("--help"));
        assertThat(out.toString()).isEmpty();
    }

    @Test
    void aFaultOfOursIsOneSentenceWithoutATrace() {
        assertThat(run("try", "bug")).isEqualTo(1);
        assertThat(err.toString().lines()).hasSize(1).noneMatch(line -> line.contains("\tat "));
    }

    @Test
    void helpNamesEveryCommandOfTheContractThatIsBuilt() {
        assertThat(CommandLineRoot.run(new PrintWriter(out, true), new PrintWriter(err, true), "--help"))
                .isZero();
        for (CommandLineRoot.Entry entry : CommandLineRoot.COMMANDS) {
            assertThat(out.toString()).contains(entry.name()).contains(entry.does());
        }
    }

    /** A child process, because only a fresh machine shows which classes are loaded. */
    @Test
    void versionAndHelpLoadNeitherDeskNorDecoderNorDatabase() throws Exception {
        for (String option : List.of("--version", "--help")) {
            Said said = child(List.of("-verbose:class"), "C.UTF-8", option);
            assertThat(said.status()).isZero();
            assertThat(said.out()).contains("levelback");
            assertThat(said.out())
                    .doesNotContain("javafx.")
                    .doesNotContain("org.bytedeco")
                    .doesNotContain("org.sqlite")
                    .doesNotContain("org.jdbi")
                    .doesNotContain("java.awt.");
        }
    }

    /** What Java 17 makes of {@code küh.mp4} in a plain locale: definitions.md, All commands, Text. */
    @Test
    void aPlainLocaleSaysWhatItCannotCarry() throws Exception {
        if (!System.getProperty("os.name").startsWith("Linux")) {
            return;
        }
        Said said = child(List.of(), "C", "inspect", "küh.mp4");
        assertThat(said.status()).isEqualTo(2);
        assertThat(said.err().lines()).hasSize(1);
        assertThat(said.err()).contains("LC_ALL=C.UTF-8");
    }

    private record Said(int status, String out, String err) {}

    private static Said child(List<String> options, String locale, String... args) throws Exception {
        List<String> command = new ArrayList<>();
        // A shell hands the name's bytes through whatever this process's own locale is.
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(options);
        command.add("-cp");
        command.add(System.getProperty("java.class.path"));
        command.add(Levelback.class.getName());
        command.addAll(List.of(args));
        Path script = java.nio.file.Files.createTempFile("levelback", ".sh");
        Path out = java.nio.file.Files.createTempFile("levelback", ".out");
        Path err = java.nio.file.Files.createTempFile("levelback", ".err");
        try {
            StringBuilder line = new StringBuilder("exec");
            for (String word : command) {
                line.append(" '").append(word).append('\'');
            }
            java.nio.file.Files.writeString(script, line.toString(), StandardCharsets.UTF_8);
            ProcessBuilder builder = new ProcessBuilder("sh", script.toString());
            builder.environment().put("LC_ALL", locale);
            builder.redirectOutput(out.toFile()).redirectError(err.toFile());
            Process process = builder.start();
            if (!process.waitFor(60, TimeUnit.SECONDS)) {
                process.destroyForcibly();
                throw new IOException("the child did not end");
            }
            return new Said(
                    process.exitValue(), java.nio.file.Files.readString(out), java.nio.file.Files.readString(err));
        } finally {
            java.nio.file.Files.delete(script);
            java.nio.file.Files.delete(out);
            java.nio.file.Files.delete(err);
        }
    }
}
