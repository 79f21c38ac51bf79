package levelback.scoring.agreement;

import java.util.Arrays;
import levelback.scoring.severity.Panel;

/** What the severity of scorers is computed from. */
public final class SeverityPanel {

    private SeverityPanel() {}

    /** Session 1 as a panel of those who scored in it, with the ratings' levels. */
    public static Panel of(Ratings ratings) {
        Session session = ratings.session(1);
        int[] clip = new int[session.scores()];
        int[] scorer = new int[session.scores()];
        int[] level = new int[session.scores()];
        for (int c = 0; c < session.clips(); c++) {
            for (int i = session.start(c); i < session.end(c); i++) {
                clip[i] = c;
                scorer[i] = session.scorer(i);
                level[i] = session.level(i);
            }
        }
        int[] there = Arrays.stream(scorer).distinct().sorted().toArray();
        int[] numbered =
                Arrays.stream(scorer).map(s -> Arrays.binarySearch(there, s)).toArray();
        return new Panel(
                Arrays.stream(there).mapToObj(s -> ratings.scorers().get(s)).toList(),
                Arrays.stream(ratings.levels()).boxed().toList(),
                session.clips(),
                clip,
                numbered,
                level);
    }
}
