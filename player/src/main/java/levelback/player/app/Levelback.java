package levelback.player.app;

/** Starts Levelback: the desk or a command. Extends nothing of JavaFX, so that commands never load it. */
public final class Levelback {
    private Levelback() {}

    public static void main(String[] args) {
        System.exit(levelback.player.cli.CommandLineRoot.run(args));
    }
}
