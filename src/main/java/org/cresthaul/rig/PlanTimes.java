package org.cresthaul.rig;

import java.util.List;

/**
 * What changes and slow passages take with this combination and its crew. Seconds and meters per second; the defaults
 * are this program's choice, to be edited in the rig file or with the question.
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
    /** Slowest and fastest crawl taken, meters per second. */
    public static final double LEAST_CRAWL_MPS = 0.2;

    public static final double MOST_CRAWL_MPS = 10;

    /** The keys of the times in files and questions, in the order of the components; "crawl" besides is a speed. */
    public static final List<String> KEYS = List.of(
            "stop",
            "notch",
            "liftAxle",
            "regulator",
            "shim",
            "raise",
            "lower",
            "coupleBooster",
            "uncoupleBooster",
            "closeCouple",
            "openCloseCoupling",
            "loadBooster",
            "unloadBooster");

    /** 3 mph: walking speed (common practice; no source). */
    private static final double WALKING_MPS = 3 * 0.44704;

    private static final long LONGEST = 24 * 3600;

    public PlanTimes {
        for (long t : new long[] {
            stop,
            notch,
            liftAxle,
            regulator,
            shim,
            raise,
            lower,
            coupleBooster,
            uncoupleBooster,
            closeCouple,
            openCloseCoupling,
            loadBooster,
            unloadBooster
        }) {
            if (t < 0 || t > LONGEST) {
                throw new IllegalArgumentException("a time is between 0 and 24 hours, is " + t + " s");
            }
        }
        if (!(crawlMps >= LEAST_CRAWL_MPS && crawlMps <= MOST_CRAWL_MPS)) {
            throw new IllegalArgumentException("crawling speed is between 0.2 and 10 m/s, is " + crawlMps);
        }
    }

    /** This program's choice; no source. */
    public static PlanTimes defaults() {
        return new PlanTimes(180, 900, 180, 120, 600, 240, 240, 2700, 1800, 2400, 2400, 1800, 1800, WALKING_MPS);
    }

    /** The time of each of {@link #KEYS}, seconds. */
    public List<Long> seconds() {
        return List.of(
                stop,
                notch,
                liftAxle,
                regulator,
                shim,
                raise,
                lower,
                coupleBooster,
                uncoupleBooster,
                closeCouple,
                openCloseCoupling,
                loadBooster,
                unloadBooster);
    }

    /** From times in the order of {@link #KEYS}. */
    public static PlanTimes of(List<Long> t, double crawlMps) {
        return new PlanTimes(
                t.get(0), t.get(1), t.get(2), t.get(3), t.get(4), t.get(5), t.get(6), t.get(7), t.get(8), t.get(9),
                t.get(10), t.get(11), t.get(12), crawlMps);
    }
}
