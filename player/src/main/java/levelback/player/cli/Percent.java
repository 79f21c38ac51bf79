package levelback.player.cli;

import levelback.player.work.BadInput;

/** Percentages given as options. */
final class Percent {

    private Percent() {}

    /**
     * A level of confidence as a share.
     *
     * @param level a percentage such as 95, or a share such as 0.95
     * @throws BadInput if it is neither
     */
    static double level(double level) {
        double share = level > 1 ? level / 100 : level;
        if (!(share > 0 && share < 1)) {
            throw new BadInput("--level " + level + " is no level of confidence; give a percentage such as 95.");
        }
        return share;
    }
}
