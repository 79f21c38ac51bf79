package levelback.scoring.bench;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import levelback.scoring.proof.LesionSet;
import levelback.scoring.proof.Proof;
import levelback.scoring.proof.ProofQuestion;
import levelback.scoring.proof.ProofResult;
import levelback.scoring.proof.ScoreRow;
import levelback.scoring.proof.TrimRow;
import levelback.scoring.value.Leg;

/**
 * A million scores of cows that come again and again: joined with their trims, every figure with its interval clustered by
 * cow. The same rows go to R (script beside, own code over base R and pROC) in the same run, and the ratio decides.
 *
 * <p>By hand: {@code java -cp scoring/target/classes:scoring/target/test-classes:player/target/lib/*
 * levelback.scoring.bench.ProofBench FOLDER [COWS]}. Writes {@code scores.csv} and {@code trims.csv} into the folder.
 */
public final class ProofBench {

    private static final int SCORES = 1_000_000;
    private static final LocalDate DAY = LocalDate.of(2020, 1, 6);
    private static final Leg[] LEGS = {Leg.LF, Leg.RF, Leg.LH, Leg.RH};

    private ProofBench() {}

    /** @param args a folder for the tables; how many cows share the million scores, 20,000 if not said */
    public static void main(String[] args) throws IOException, InterruptedException {
        Path folder = Files.createDirectories(Path.of(args[0]));
        int cows = args.length > 1 ? Integer.parseInt(args[1]) : 20_000;
        List<ScoreRow> scores = new ArrayList<>();
        List<TrimRow> trims = new ArrayList<>();
        herd(cows, scores, trims);
        write(folder, scores, trims);
        ProofQuestion question = new ProofQuestion(
                2, ProofQuestion.Unit.COW, 0, 14, LesionSet.of("any"), Optional.empty(), Optional.empty(), .95, 1);
        double[] seconds = new double[9];
        ProofResult result = Proof.of(scores, trims, question);
        for (int i = -3; i < seconds.length; i++) {
            long from = System.nanoTime();
            result = Proof.of(scores, trims, question);
            if (i >= 0) {
                seconds[i] = (System.nanoTime() - from) / 1e9;
            }
        }
        Arrays.sort(seconds);
        System.out.printf(
                Locale.ROOT,
                "here: %d scores, %d cows, %d trim rows: median %.2f s (%.2f to %.2f)%n",
                scores.size(),
                cows,
                trims.size(),
                seconds[seconds.length / 2],
                seconds[0],
                seconds[seconds.length - 1]);
        System.out.printf(
                Locale.ROOT,
                "here: sensitivity %s, corrected %s, auc %s%n",
                result.observed().sensitivity(),
                result.corrected().map(ProofResult.Corrected::sensitivity),
                result.observed().auc());
        double r = inR(folder);
        System.out.printf(Locale.ROOT, "R: %.2f s; ratio %.3f%n", r, seconds[seconds.length / 2] / r);
    }

    private static void herd(int cows, List<ScoreRow> scores, List<TrimRow> trims) {
        SplittableRandom random = new SplittableRandom(1);
        int visits = SCORES / cows;
        for (int c = 0; c < cows; c++) {
            String cow = String.valueOf(100_000 + c);
            double prone = random.nextDouble();
            for (int v = 0; v < visits; v++) {
                LocalDate day = DAY.plusDays(14L * v);
                boolean sick = random.nextDouble() < .05 + .3 * prone * prone;
                double score =
                        Math.min(3, Math.max(0, Math.floor((sick ? 2.2 : .8) + 1.8 * (random.nextDouble() - .5))));
                scores.add(new ScoreRow(cow, day, score, "Anna", Optional.empty()));
                if (random.nextDouble() < (score >= 2 ? .8 : .06)) {
                    trims.add(new TrimRow(
                            cow,
                            day.plusDays(random.nextInt(10)),
                            Optional.of(LEGS[random.nextInt(4)]),
                            sick ? random.nextBoolean() ? "SU" : "WLA" : "NONE",
                            "",
                            OptionalDouble.empty()));
                }
            }
        }
    }

    private static void write(Path folder, List<ScoreRow> scores, List<TrimRow> trims) throws IOException {
        try (PrintWriter out = new PrintWriter(folder.resolve("scores.csv").toFile(), StandardCharsets.UTF_8)) {
            out.println("cow,date,score,scorer");
            scores.forEach(s -> out.println(s.cow() + "," + s.date() + "," + (int) s.score() + "," + s.scorer()));
        }
        try (PrintWriter out = new PrintWriter(folder.resolve("trims.csv").toFile(), StandardCharsets.UTF_8)) {
            out.println("cow,date,leg,claw,zone,lesion,severity");
            trims.forEach(t -> out.println(
                    t.cow() + "," + t.date() + "," + t.leg().map(Leg::name).orElse("") + ",,," + t.lesion() + ","));
        }
    }

    /** Runs the script; it prints what it found and, on its last line, the seconds without the reading of the tables. */
    private static double inR(Path folder) throws IOException, InterruptedException {
        Path script = folder.resolve("proof.R");
        try (var in = ProofBench.class.getResourceAsStream("proof.R")) {
            if (in == null) {
                throw new IOException("no proof.R beside the bench");
            }
            Files.write(script, in.readAllBytes());
        }
        Process r = new ProcessBuilder("Rscript", script.toString(), folder.toString())
                .redirectErrorStream(true)
                .start();
        String out = new String(r.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        if (r.waitFor() != 0) {
            throw new IOException("R: " + out);
        }
        List<String> lines = out.lines().toList();
        lines.forEach(line -> System.out.println("R: " + line));
        return Double.parseDouble(lines.get(lines.size() - 1));
    }
}
