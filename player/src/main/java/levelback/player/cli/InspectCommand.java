package levelback.player.cli;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import levelback.clips.decode.FrameReader;
import levelback.clips.index.IndexedFrame;
import levelback.clips.open.Clip;
import levelback.clips.open.ClipException;
import levelback.clips.open.ClipFacts;
import levelback.clips.open.Fingerprint;
import levelback.clips.open.Watch;
import levelback.player.work.OpenRecording;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code inspect}: what a recording is, frame by frame if asked. Everything is read before anything is printed. */
@Command(name = "inspect", description = "Says what a video file is, what is wrong with it, and which frame is which.")
final class InspectCommand implements Callable<Integer> {

    /** Files up to this many pixels in all (1080p: four minutes) are decoded once, so that every damage is known. */
    private static final long DECODED_PIXELS = 15_000_000_000L;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "FILE", description = "a video file; one that begins with - is given as ./-name")
    private Path file;

    @Option(names = "--frames", description = "lists every frame with its time")
    private boolean frames;

    @Option(
            names = "--frame-md5",
            paramLabel = "LIST",
            description = "fingerprints of these frames, decoded in this order, such as 0,250,7,100-90")
    private @Nullable String frameMd5;

    @Option(names = "--sha256", description = "adds the SHA-256 of the whole file")
    private boolean sha256;

    @Option(names = "--whole", description = "decodes the whole file however long it is, to find every damaged picture")
    private boolean whole;

    @Option(names = "--json", description = "prints one JSON document")
    private boolean json;

    private record Print(IndexedFrame frame, String md5) {}

    private record Findings(Clip clip, Optional<String> sha256, List<Print> prints) {}

    @Override
    public Integer call() throws ClipException, IOException {
        List<Integer> wanted = frameMd5 == null ? List.of() : FrameNumbers.parse(frameMd5);
        TerminalProgress progress = new TerminalProgress(spec.commandLine().getErr());
        try {
            return show(read(wanted, progress));
        } finally {
            progress.clear();
        }
    }

    private Findings read(List<Integer> wanted, TerminalProgress progress) throws ClipException {
        Clip clip = open(progress);
        List<Print> prints = new ArrayList<>();
        if (!wanted.isEmpty()) {
            requireThere(clip, wanted);
            try (FrameReader reader = clip.reader()) {
                for (int frame : wanted) {
                    progress.at("Fingerprints", (double) prints.size() / wanted.size());
                    prints.add(new Print(clip.index().frames().get(frame), reader.md5(frame)));
                }
            }
        }
        Optional<String> hash = sha256 ? Optional.of(Fingerprint.sha256(file, () -> false)) : Optional.empty();
        progress.clear();
        return new Findings(clip, hash, prints);
    }

    private int show(Findings findings) throws IOException {
        PrintWriter out = spec.commandLine().getOut();
        out.println(json ? document(findings) : table(findings));
        return 0;
    }

    private Clip open(TerminalProgress progress) throws ClipException {
        try (OpenRecording opener = new OpenRecording()) {
            return opener.open(file, whole ? Long.MAX_VALUE : DECODED_PIXELS, new Watch() {
                @Override
                public boolean getAsBoolean() {
                    return false; // an interrupt ends the whole program
                }

                @Override
                public void at(boolean decoding, double fraction) {
                    progress.at(decoding ? "Decoding" : "Reading", fraction);
                }
            });
        }
    }

    private void requireThere(Clip clip, List<Integer> wanted) throws ClipException {
        int count = clip.facts().frameCount();
        for (int frame : wanted) {
            if (frame >= count) {
                throw new ClipException(
                        ClipException.Reason.PAST_THE_END,
                        "There is no frame " + frame + " in " + Sentences.onOneLine(file.toString())
                                + "; its frames are numbered 0 to " + (count - 1) + ".");
            }
        }
    }

    private String document(Findings findings) throws IOException {
        StringWriter text = new StringWriter();
        try (JsonGenerator g = new JsonFactory().createGenerator(text)) {
            g.useDefaultPrettyPrinter();
            g.writeStartObject();
            facts(g, findings.clip());
            damage(g, findings.clip().facts());
            g.writeStringField("fingerprint", findings.clip().facts().fingerprint());
            if (findings.sha256().isPresent()) {
                g.writeStringField("sha256", findings.sha256().get());
            }
            if (frames) {
                g.writeArrayFieldStart("frames");
                for (IndexedFrame frame : findings.clip().index().frames()) {
                    frame(g, frame);
                    g.writeNumberField("timeUs", frame.timeUs());
                    g.writeBooleanField("keyFrame", frame.keyFrame());
                    g.writeEndObject();
                }
                g.writeEndArray();
            }
            if (frameMd5 != null) {
                g.writeArrayFieldStart("frameMd5");
                for (Print print : findings.prints()) {
                    frame(g, print.frame());
                    g.writeStringField("md5", print.md5());
                    g.writeEndObject();
                }
                g.writeEndArray();
            }
            g.writeEndObject();
        }
        return text.toString();
    }

    private static void frame(JsonGenerator g, IndexedFrame frame) throws IOException {
        g.writeStartObject();
        g.writeNumberField("frame", frame.frame());
        if (frame.pts().isPresent()) {
            g.writeNumberField("pts", frame.pts().getAsLong());
        } else {
            g.writeNullField("pts");
        }
    }

    private static void facts(JsonGenerator g, Clip clip) throws IOException {
        ClipFacts facts = clip.facts();
        g.writeStringField("file", facts.file().toString());
        g.writeStringField("container", facts.container());
        g.writeStringField("codec", facts.codec());
        g.writeNumberField("width", facts.width());
        g.writeNumberField("height", facts.height());
        g.writeStringField("pixelFormat", facts.pixelFormat());
        g.writeNumberField("rotationDegrees", facts.rotationDegrees());
        g.writeStringField("timeBase", facts.timeBase().toString());
        g.writeNumberField("frameCount", facts.frameCount());
        g.writeNumberField("startUs", facts.startUs().orElse(0));
        g.writeNumberField("durationUs", facts.durationUs().orElse(0));
        g.writeNumberField("averageFrameRate", facts.averageFrameRate());
        g.writeBooleanField("constantFrameRate", facts.constantFrameRate());
        g.writeBooleanField("interlaced", facts.interlaced());
        g.writeStringField("sampleAspectRatio", facts.sampleAspectRatio());
        if (facts.recordedAt().isPresent()) {
            g.writeStringField("recordedAt", facts.recordedAt().get().toString());
        } else {
            g.writeNullField("recordedAt");
        }
        if (clip.index().frames().stream().anyMatch(frame -> frame.pts().isEmpty())) {
            g.writeStringField("why", withoutStamps(clip));
        }
        g.writeBooleanField("decodedWhole", clip.decoded());
    }

    private static String withoutStamps(Clip clip) {
        long without = clip.index().frames().stream()
                .filter(frame -> frame.pts().isEmpty())
                .count();
        return without + " of " + clip.facts().frameCount()
                + " frames have no time stamp in the file; their times come from its frame rate";
    }

    private static void damage(JsonGenerator g, ClipFacts facts) throws IOException {
        g.writeStringField("readable", facts.damage().isEmpty() ? "whole" : "part");
        g.writeArrayFieldStart("damage");
        for (ClipFacts.Damage span : facts.damage()) {
            g.writeStartObject();
            g.writeStringField("what", span.what());
            g.writeNumberField("fromUs", span.fromUs());
            g.writeNumberField("toUs", span.toUs());
            g.writeEndObject();
        }
        g.writeEndArray();
    }

    private String table(Findings findings) {
        Clip clip = findings.clip();
        ClipFacts facts = clip.facts();
        StringBuilder text = new StringBuilder();
        line(text, "file", Sentences.onOneLine(facts.file().toString()));
        line(text, "container", facts.container());
        line(text, "codec", facts.codec() + ", " + facts.pixelFormat() + (facts.interlaced() ? ", interlaced" : ""));
        line(
                text,
                "picture",
                facts.width() + " x " + facts.height() + " stored, " + facts.uprightWidth() + " x "
                        + facts.uprightHeight() + " upright (turned " + facts.rotationDegrees()
                        + " degrees, pixel shape "
                        + facts.sampleAspectRatio() + ")");
        line(
                text,
                "frames",
                String.format(
                        Locale.ROOT,
                        "%d, %.4g a second, %s",
                        facts.frameCount(),
                        facts.averageFrameRate(),
                        facts.constantFrameRate() ? "evenly spaced" : "unevenly spaced"));
        line(
                text,
                "time",
                String.format(
                        Locale.ROOT,
                        "%.6f s from %.6f s on, in ticks of %s s",
                        facts.durationUs().orElse(0) / 1e6,
                        facts.startUs().orElse(0) / 1e6,
                        facts.timeBase()));
        line(text, "recorded at", facts.recordedAt().map(Object::toString).orElse("the file does not say"));
        line(text, "readable", facts.damage().isEmpty() ? "whole" : "in part");
        for (ClipFacts.Damage span : facts.damage()) {
            line(
                    text,
                    "",
                    String.format(
                            Locale.ROOT, "%.3f s to %.3f s: %s", span.fromUs() / 1e6, span.toUs() / 1e6, span.what()));
        }
        if (!clip.decoded()) {
            line(text, "", "judged by its packets and its first pictures; --whole decodes all of it");
        }
        line(text, "fingerprint", facts.fingerprint());
        findings.sha256().ifPresent(hash -> line(text, "sha256", hash));
        if (frames) {
            text.append(String.format("%n%8s %14s %14s  key%n", "frame", "pts", "timeUs"));
            for (IndexedFrame frame : clip.index().frames()) {
                text.append(String.format(
                        "%8d %14s %14d  %s%n",
                        frame.frame(), pts(frame), frame.timeUs(), frame.keyFrame() ? "key" : ""));
            }
        }
        if (frameMd5 != null) {
            text.append(String.format("%n%8s %14s  %s%n", "frame", "pts", "md5"));
            for (Print print : findings.prints()) {
                text.append(String.format("%8d %14s  %s%n", print.frame().frame(), pts(print.frame()), print.md5()));
            }
        }
        return text.toString().stripTrailing();
    }

    private static String pts(IndexedFrame frame) {
        return frame.pts().isPresent() ? Long.toString(frame.pts().getAsLong()) : "-";
    }

    private static void line(StringBuilder text, String what, String value) {
        text.append(String.format("%-12s %s%n", what, value));
    }
}
