package levelback.clips.drawn.gait;

/**
 * One foot on the floor once.
 *
 * @param downPhase phase of its touch-down, in strides of LH
 * @param upPhase phase of its lift-off
 * @param printM toe tip on the floor, along the way she walks, in lengths of a cow of size 1
 * @param slideM how far it slid forward into that place
 * @param slidePhase how long the slide takes, in strides
 */
record Tread(double downPhase, double upPhase, double printM, double slideM, double slidePhase) {
    /** Of a slip, the share of the sliding time that the foot stands before it gives way. */
    private static final double GRIP = .4;

    /** Where it meets the floor. */
    double landsM() {
        return printM - slideM;
    }

    /** Where the toe is at a phase of this stance. */
    double toeM(double phase) {
        if (slideM == 0) {
            return printM;
        }
        double u = Math.max(0, Math.min(1, (phase - downPhase) / slidePhase - GRIP));
        return printM - slideM * (1 - u * u * (3 - 2 * u));
    }
}
