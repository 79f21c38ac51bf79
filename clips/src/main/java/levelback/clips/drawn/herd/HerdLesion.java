package levelback.clips.drawn.herd;

import levelback.scoring.value.Leg;

/** A lesion as it grows, is dressed and heals. Days count from the first visit. */
final class HerdLesion {
    /** Days over which its effect on the gait grows to its full size. */
    private static final double GROWTH_DAYS = 28;
    /** Days in which the effect halves, once dressed. */
    private static final double HALVING_DAYS = 14;
    /** Days after dressing until nothing is left to be seen. */
    private static final int VISIBLE_DAYS_DRESSED = 28;

    final String code;
    final Leg leg;
    final String claw;
    final int zone;
    final int beginDay;
    final String activeStage;
    private final double fullEffect;
    private int dressedDay = Integer.MAX_VALUE;

    HerdLesion(String code, Leg leg, String claw, int zone, int beginDay, double fullEffect, String activeStage) {
        this.code = code;
        this.leg = leg;
        this.claw = claw;
        this.zone = zone;
        this.beginDay = beginDay;
        this.fullEffect = fullEffect;
        this.activeStage = activeStage;
    }

    void dress(int day) {
        dressedDay = Math.min(dressedDay, day);
    }

    /** What it adds to s on a day. */
    double effect(int day) {
        if (day < beginDay) {
            return 0;
        }
        double grown = fullEffect * Math.min(1, (Math.min(day, dressedDay) - beginDay) / GROWTH_DAYS);
        return day <= dressedDay ? grown : grown * StrictMath.pow(0.5, (day - dressedDay) / HALVING_DAYS);
    }

    boolean visible(int day) {
        return day >= beginDay && (dressedDay == Integer.MAX_VALUE || day <= dressedDay + VISIBLE_DAYS_DRESSED);
    }

    /** Whether it counts as alarm on a day: a dressed digital dermatitis is in a quiet stage. */
    boolean alarm(int day) {
        return visible(day)
                && switch (code) {
                    case "SU", "TU", "WLA", "IP" -> true;
                    case "DD" -> day <= dressedDay;
                    default -> false;
                };
    }

    /** Stage of digital dermatitis on a day; empty text for every other lesion. */
    String stage(int day) {
        if (!code.equals("DD")) {
            return "";
        }
        return day <= dressedDay ? activeStage : "M3";
    }

    /** How bad, 1 to 3, as a trimmer would put it. */
    int severity(int day) {
        double now = Math.max(effect(day), effect(Math.min(day, dressedDay)) / 2);
        return now < 0.5 ? 1 : now < 1.4 ? 2 : 3;
    }
}
