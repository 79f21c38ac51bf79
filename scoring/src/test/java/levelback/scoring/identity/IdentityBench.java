package levelback.scoring.identity;

import java.util.List;
import java.util.Locale;

/**
 * Reliability of the probabilities over simulated milkings, and the goals of the Lane. By hand: {@code java -cp
 * scoring/target/classes:scoring/target/test-classes:player/target/lib/* levelback.scoring.identity.IdentityBench [RUNS]}.
 */
public final class IdentityBench {

    static final List<Milking.Setting> SETTINGS = List.of(
            Milking.GOAL,
            Milking.GOAL.named("goal, 6 to 14 s apart").gaps(6, 14),
            Milking.GOAL.named("goal, 3 to 9 s apart").gaps(3, 9),
            Milking.GOAL.named("goal, strays").strays(.02),
            Milking.EASY,
            Milking.CROWDED,
            Milking.EASY.named("easy without swaps").swaps(0),
            Milking.CROWDED.named("crowded without swaps").swaps(0),
            Milking.CROWDED.named("crowded, in order").swaps(0).inOrder(true),
            Milking.EASY.named("a fifth not filmed").swaps(0).filmed(.8),
            Milking.EASY.named("a fifth unread").swaps(0).miss(.2),
            Milking.EASY.named("an hour off").swaps(0).clock(-3590, -80),
            Milking.EASY.named("15 cows").swaps(0).cows(15),
            Milking.EASY.named("many strays").swaps(0).strays(.25));

    private IdentityBench() {}

    /** @param args how many milkings of each setting, 60 if not said */
    public static void main(String[] args) {
        int runs = args.length > 0 ? Integer.parseInt(args[0]) : 60;
        for (Milking.Setting setting : SETTINGS) {
            long from = System.nanoTime();
            Reliability reliability = of(setting, 1000, runs);
            System.out.printf(
                    Locale.ROOT,
                    "%s, %d milkings of %d, %.1f s%n",
                    setting.name(),
                    runs,
                    setting.cows(),
                    (System.nanoTime() - from) / 1e9);
            System.out.print(reliability.table());
        }
    }

    static Reliability of(Milking.Setting setting, long seed, int runs) {
        Reliability reliability = new Reliability();
        for (int r = 0; r < runs; r++) {
            Milking milking = Milking.of(setting, seed + r);
            reliability.add(milking, setting, Identify.of(milking.passes(), milking.readings()));
        }
        return reliability;
    }
}
