package org.cresthaul.plan;

/**
 * What changes and slow passages take. Seconds and metres per second; the defaults are this program's choice, to be edited in
 * the rig file or with the question.
 *
 * @param stop slowing down, stopping and moving off again, whatever is done there
 * @param raise off the transport stops and up, before a hazard
 * @param lower back on the stops and to auto, after it
 * @param crawlMps crawling speed over hazards
 */
public record PlanTimes(
        long stop,
        long notch,
        long liftAxle,
        long regulator,
        long shim,
        long raise,
        long lower,
        long coupleBooster,
        long uncoupleBooster,
        long closeCouple,
        long openCloseCoupling,
        long loadBooster,
        long unloadBooster,
        double crawlMps) {
    /** 3 mph (49 CFR has no figure; common practice is walking speed). */
    private static final double WALKING_MPS = 3 * 0.44704;

    private static final long LONGEST = 24 * 3600;

    public PlanTimes {
        for (long t : new long[] {stop, notch, liftAxle, regulator, shim, raise, lower, coupleBooster, uncoupleBooster,
            closeCouple, openCloseCoupling, loadBooster, unloadBooster}) {
            if (t < 0 || t > LONGEST) {
                throw new IllegalArgumentException("a time is between 0 and 24 hours, is " + t + " s");
            }
        }
        if (!(crawlMps >= 0.2 && crawlMps <= 10)) {
            throw new IllegalArgumentException("crawling speed is between 0.2 and 10 m/s, is " + crawlMps);
        }
    }

    /** This program's choice; no source. */
    public static PlanTimes defaults() {
        return new PlanTimes(180, 900, 180, 120, 600, 240, 240, 2700, 1800, 2400, 2400, 1800, 1800, WALKING_MPS);
    }
}
