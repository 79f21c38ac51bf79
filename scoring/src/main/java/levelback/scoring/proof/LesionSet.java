package levelback.scoring.proof;

import java.util.Set;

/**
 * The lesions a proof looks for.
 *
 * @param name {@code alarm}, {@code any}, or the codes as asked for
 * @param codes single codes after groups were taken apart; empty where every code counts
 * @param activeStagesOnly whether digital dermatitis with a stage counts only in M1, M2 and M4.1
 */
public record LesionSet(String name, Set<String> codes, boolean activeStagesOnly) {
    public LesionSet {
        codes = Set.copyOf(codes);
    }
}
