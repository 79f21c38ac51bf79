package levelback.clips.look;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import levelback.clips.open.ClipException;
import levelback.clips.open.ClipException.Reason;
import levelback.clips.open.IndexCache;
import levelback.clips.open.Watch;
import org.jspecify.annotations.Nullable;

/**
 * Has files looked at by a process of their own before this one opens them. A file that crashes a native decoder, hangs
 * it or makes it eat memory brings down that process and costs one sentence here. One process serves any number of files;
 * it is started when the first is asked about and anew after each one that it did not survive. One file at a time.
 */
public final class FirstLook implements AutoCloseable {

    private static final int POLL_MS = 50;
    /** The process has to map its heap, its code and its libraries on top of what it may hold. */
    private static final long MAPPED_BYTES = 6L << 30;

    private static final Path PRLIMIT = Path.of("/usr/bin/prlimit");
    private static final String GONE = "gone";

    private final LookLimits limits;
    private final String mainClass;
    private final Optional<Path> indexes;
    private @Nullable Process process;
    private @Nullable PrintStream orders;
    private LinkedBlockingQueue<String> answers = new LinkedBlockingQueue<>();
    private boolean closed;

    /** @param limits how much each file may take */
    public FirstLook(LookLimits limits) {
        this(limits, LookChild.class.getName(), Optional.empty());
    }

    /**
     * A look whose work is not done twice: what it finds out about a file is kept.
     *
     * @param limits how much each file may take
     * @param indexes where
     */
    public FirstLook(LookLimits limits, IndexCache indexes) {
        this(limits, LookChild.class.getName(), Optional.of(indexes.folder()));
    }

    /** For tests: another class may stand in for what looks. */
    FirstLook(LookLimits limits, String mainClass) {
        this(limits, mainClass, Optional.empty());
    }

    private FirstLook(LookLimits limits, String mainClass, Optional<Path> indexes) {
        this.indexes = indexes;
        this.limits = limits;
        this.mainClass = mainClass;
    }

    /**
     * Has a file looked at; returns when it has proved harmless. Where no process can be started (a locked-down machine)
     * this returns at once, and the file is opened unseen.
     *
     * @param decodeUpToPixels as for {@link levelback.clips.open.Clip#open(Path, long, BooleanSupplier)}
     * @param cancelled polled while waiting
     * @throws ClipException if it cannot be read, or brought the process down; one sentence for a person
     */
    public synchronized void at(Path file, long decodeUpToPixels, BooleanSupplier cancelled) throws ClipException {
        if (closed) {
            throw new IllegalStateException("closed");
        }
        PrintStream to;
        try {
            to = running();
        } catch (IOException notAllowed) {
            return;
        }
        to.println(LookChild.order(decodeUpToPixels, limits.picturePixels(), file.toAbsolutePath()));
        String answer = await(file, cancelled);
        if (answer.startsWith(LookChild.REFUSED)) {
            String[] parts = answer.split(" ", 3);
            String sentence = new String(Base64.getDecoder().decode(parts[2]), StandardCharsets.UTF_8);
            // It was asked by the whole path; a person knows the file as given.
            throw new ClipException(
                    Reason.valueOf(parts[1]), sentence.replace(name(file.toAbsolutePath()), name(file)));
        }
        if (!answer.equals(LookChild.FINE)) {
            stop();
            throw unsafe(file, "it brought down the decoder");
        }
    }

    private String await(Path file, BooleanSupplier cancelled) throws ClipException {
        long begun = System.nanoTime();
        long sign = begun;
        long whole = limits.wholeFor(sizeOf(file)).toNanos();
        while (true) {
            String line = next();
            long now = System.nanoTime();
            if (line != null && !line.startsWith(LookChild.ALIVE)) {
                return line;
            }
            if (line != null) {
                tell(cancelled, line);
            }
            sign = line == null ? sign : now;
            if (cancelled.getAsBoolean()) {
                stop();
                throw new ClipException(Reason.CANCELLED, "Reading " + name(file) + " was stopped.");
            }
            if (now - sign > limits.silence().toNanos() || now - begun > whole) {
                stop();
                throw unsafe(
                        file,
                        "reading it did not come to an end within " + TimeUnit.NANOSECONDS.toSeconds(now - begun)
                                + " s");
            }
            Process watched = process;
            OptionalLong held = watched == null ? OptionalLong.empty() : ResidentMemory.of(watched.pid());
            if (held.isPresent() && held.getAsLong() > limits.residentBytes()) {
                stop();
                throw unsafe(
                        file, "reading it took more than %,d MB of memory".formatted(limits.residentBytes() >> 20));
            }
        }
    }

    private static void tell(BooleanSupplier cancelled, String line) {
        try {
            Watch.tell(cancelled, false, Double.parseDouble(line.substring(LookChild.ALIVE.length())));
        } catch (NumberFormatException bare) {
            // a sign of life and nothing more
        }
    }

    private @Nullable String next() throws ClipException {
        try {
            return answers.poll(POLL_MS, TimeUnit.MILLISECONDS);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            stop();
            throw new ClipException(Reason.CANCELLED, "Reading was stopped.");
        }
    }

    private static long sizeOf(Path file) {
        try {
            return Files.size(file);
        } catch (IOException unreadable) {
            return 0; // the process will say so
        }
    }

    private static String name(Path file) {
        return file.toString().replaceAll("\\p{Cntrl}+", " ");
    }

    private static ClipException unsafe(Path file, String what) {
        return new ClipException(
                Reason.UNSAFE,
                name(file) + " is damaged in a way that cannot be read safely (" + what
                        + "); copy it from the camera again, or convert it with another program first.");
    }

    private PrintStream running() throws IOException {
        Process now = process;
        PrintStream known = orders;
        if (now != null && now.isAlive() && known != null) {
            return known;
        }
        stop();
        Process fresh = new ProcessBuilder(command())
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        LinkedBlockingQueue<String> heard = new LinkedBlockingQueue<>();
        Thread listener = new Thread(() -> listen(fresh, heard), "first look");
        listener.setDaemon(true);
        listener.start();
        PrintStream to = new PrintStream(fresh.getOutputStream(), true, StandardCharsets.US_ASCII);
        process = fresh;
        orders = to;
        answers = heard;
        return to;
    }

    private static void listen(Process from, LinkedBlockingQueue<String> heard) {
        try (BufferedReader lines = from.inputReader(StandardCharsets.US_ASCII)) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                heard.add(line);
            }
        } catch (IOException broken) {
            // as good as gone
        }
        heard.add(GONE);
    }

    private List<String> command() {
        List<String> command = new ArrayList<>();
        if (Files.isExecutable(PRLIMIT)) {
            // A burst of memory between two looks at what it holds meets this wall.
            command.addAll(
                    List.of(PRLIMIT.toString(), "--as=" + (limits.residentBytes() + MAPPED_BYTES), "--core=0", "--"));
        }
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(List.of(
                "-Xmx512m",
                "-XX:MaxDirectMemorySize=1g",
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-XX:-CreateCoredumpOnCrash",
                "-XX:+SuppressFatalErrorMessage",
                "-Dfile.encoding=UTF-8"));
        for (String property : System.getProperties().stringPropertyNames()) {
            if (property.startsWith("org.bytedeco.")) {
                command.add("-D" + property + "=" + System.getProperty(property));
            }
        }
        command.addAll(List.of("-cp", System.getProperty("java.class.path"), mainClass));
        indexes.ifPresent(folder -> command.add(folder.toAbsolutePath().toString()));
        return command;
    }

    private void stop() {
        Process now = process;
        if (now != null) {
            now.descendants().forEach(ProcessHandle::destroyForcibly);
            now.destroyForcibly();
        }
        if (orders != null) {
            orders.close();
        }
        process = null;
        orders = null;
    }

    @Override
    public synchronized void close() {
        closed = true;
        stop();
    }
}
