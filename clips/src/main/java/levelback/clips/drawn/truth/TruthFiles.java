package levelback.clips.drawn.truth;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import levelback.clips.drawn.CameraPlan;
import levelback.clips.drawn.RecordingPlan;
import levelback.clips.drawn.WalkPlan;
import levelback.clips.drawn.paint.View;

/** Writes a recording's truth into a folder, each file in the columns of the command that reads its kind. */
public final class TruthFiles {
    private TruthFiles() {}

    /** Writes {@code footfalls.csv marks.csv passes.csv events.csv recording.json} and, with a gate, {@code reads.csv}. */
    public static void write(RecordingPlan plan, RecordingTruth truth, Path folder) throws IOException {
        Files.createDirectories(folder);
        try (BufferedWriter out = writer(folder, "footfalls.csv")) {
            out.write("pass,time_s,leg,event,x_m,y_m\n");
            for (FootfallTruth f : truth.footfalls()) {
                out.write(text(
                        "%d,%.6f,%s,%s,%.5f,%.5f%n",
                        f.pass(), f.timeS(), f.leg(), f.down() ? "down" : "up", f.xM(), f.yM()));
            }
        }
        try (BufferedWriter out = writer(folder, "marks.csv")) {
            out.write("pass,frame,time_s,point,x_m,y_m,x_px,y_px,hidden\n");
            StringBuilder line = new StringBuilder(96);
            for (MarkTruth m : truth.marks()) {
                line.setLength(0);
                line.append(m.pass()).append(',').append(m.frame()).append(',');
                fixed(line, m.timeS(), 6).append(',').append(m.point()).append(',');
                fixed(line, m.xM(), 5).append(',');
                fixed(line, m.yM(), 5).append(',');
                fixed(line, m.xPx(), 3).append(',');
                fixed(line, m.yPx(), 3).append(',').append(m.hidden()).append('\n');
                out.append(line);
            }
        }
        try (BufferedWriter out = writer(folder, "passes.csv")) {
            out.write("pass,cow,from_frame,to_frame,direction,crowded,flags\n");
            for (PassTruth p : truth.passes()) {
                if (p.seen()) {
                    out.write(text(
                            "%d,%s,%d,%d,%s,%s,%s%n",
                            p.pass(),
                            p.walk().traits().cowNumber(),
                            p.fromFrame(),
                            p.toFrame(),
                            p.walk().direction().text(),
                            p.crowded(),
                            String.join(" ", p.flags())));
                }
            }
        }
        try (BufferedWriter out = writer(folder, "events.csv")) {
            out.write("pass,time_s,event,leg\n");
            for (EventTruth e : truth.events()) {
                out.write(text(
                        "%d,%.6f,%s,%s%n",
                        e.pass(), e.timeS(), e.event(), e.leg().map(Enum::name).orElse("")));
            }
        }
        if (plan.gate().isPresent()) {
            try (BufferedWriter out = writer(folder, "reads.csv")) {
                out.write("time,tag,cow,mark\n");
                for (RecordingPlan.Read r : plan.gate().get().reads()) {
                    out.write(text("%s,%s,%s,%s%n", r.at(), r.tag(), r.cowNumber(), r.mark()));
                }
            }
        }
        try (BufferedWriter out = writer(folder, "recording.json")) {
            out.write(json(plan, truth));
        }
    }

    private static BufferedWriter writer(Path folder, String name) throws IOException {
        return Files.newBufferedWriter(folder.resolve(name), StandardCharsets.UTF_8);
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format.replace("%n", "\n"), values);
    }

    /** A number with fixed decimals; far quicker than a format string, and marks are many. */
    private static StringBuilder fixed(StringBuilder out, double v, int decimals) {
        long power = 1;
        for (int i = 0; i < decimals; i++) {
            power *= 10;
        }
        long scaled = Math.round(Math.abs(v) * power);
        if (v < 0 && scaled > 0) {
            out.append('-');
        }
        out.append(scaled / power).append('.');
        String rest = Long.toString(scaled % power);
        for (int i = rest.length(); i < decimals; i++) {
            out.append('0');
        }
        return out.append(rest);
    }

    private static String json(RecordingPlan plan, RecordingTruth truth) {
        CameraPlan camera = plan.camera();
        StringBuilder out = new StringBuilder();
        out.append(text(
                "{%n  \"name\": \"%s\",%n  \"seed\": %d,%n  \"startedAt\": \"%s\",%n",
                plan.name(), plan.seed(), plan.startedAt()));
        out.append(text(
                "  \"frameRate\": \"%d/%d\",%n  \"frameCount\": %d,%n",
                plan.rate().numerator(), plan.rate().denominator(), truth.frameCount()));
        out.append(text(
                "  \"camera\": {\"widthPx\": %d, \"heightPx\": %d, \"focalPx\": %s, \"distanceM\": %s},%n",
                camera.widthPx(), camera.heightPx(), camera.focalPx(), camera.distanceM()));
        out.append(text(
                "  \"pxPerMMiddle\": %.4f,%n  \"pxPerMNearFeet\": %.4f,%n  \"pxPerMFarFeet\": %.4f,%n",
                camera.pxPerM(0), camera.pxPerM(-View.LIMB_OFF_M), camera.pxPerM(View.LIMB_OFF_M)));
        plan.gate()
                .ifPresent(gate -> out.append(text(
                        "  \"clockOffsetS\": %.6f,%n  \"clockDriftPpm\": %.4f,%n", gate.offsetS(), gate.driftPpm())));
        out.append("  \"passes\": [");
        String between = "\n";
        for (PassTruth pass : truth.passes()) {
            WalkPlan walk = pass.walk();
            out.append(between)
                    .append(text(
                            "    {\"pass\": %d, \"cow\": \"%s\", \"s\": %.4f, \"lameLeg\": %s, \"size\": %.4f, \"stride\": %.4f, "
                                    + "\"strideLengthM\": %.4f, \"strideTimeS\": %.4f, \"enterTimeS\": %.4f, \"gaitSeed\": %d}",
                            pass.pass(),
                            escaped(walk.traits().cowNumber()),
                            walk.severityS(),
                            walk.lameLeg().map(leg -> "\"" + leg + "\"").orElse("null"),
                            walk.traits().sizeFactor(),
                            walk.traits().strideFactor(),
                            pass.strideLengthM(),
                            pass.strideTimeS(),
                            walk.enterTimeS(),
                            walk.gaitSeed()));
            between = ",\n";
        }
        return out.append("\n  ]\n}\n").toString();
    }

    private static String escaped(String text) {
        return text.replace("\\", "\\\\").replace("\"", "\\\"");
    }
}
