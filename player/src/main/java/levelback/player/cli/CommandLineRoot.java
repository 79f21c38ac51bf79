package levelback.player.cli;

/** The root of the command line. */
public final class CommandLineRoot {
    private CommandLineRoot() {}

    /** Runs one command and returns its exit status. */
    public static int run(String... args) {
        return args.length;
    }
}
