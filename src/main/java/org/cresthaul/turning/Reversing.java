package org.cresthaul.turning;

import java.util.Arrays;

/**
 * How far a combination can be pushed straight back, the lead point along its own line, before a coupling is bent to its
 * limit: small angles grow by e^{s/L}, the faster the shorter the unit. With the booster's pivot free and with it locked.
 *
 * @param freeM with every coupling free, metres; {@code mostM} when no limit is met that far
 * @param lockedM with the booster's pivot locked, where there is one; else the same
 * @param freeCoupling which coupling meets its limit first, 0 is the kingpin; -1 for none
 */
public record Reversing(double freeM, double lockedM, int freeCoupling) {
    /**
     * Reverses from a small bend at every coupling.
     *
     * @param bendRad the bend at the start, radians, not zero
     * @param mostM how far to try, metres
     */
    public static Reversing of(TurningCombination combination, double bendRad, double mostM) {
        int[] coupling = {-1};
        double free = reach(combination, bendRad, mostM, coupling);
        return new Reversing(free, reach(combination.pivotLocked(), bendRad, mostM, new int[1]), coupling[0]);
    }

    private static double reach(TurningCombination combination, double bendRad, double mostM, int[] coupling) {
        double[] headings = new double[combination.chain().size()];
        for (int k = 1; k < headings.length; k++) {
            headings[k] = headings[k - 1] + bendRad;
        }
        LeadPath back = LeadPath.from(0, 0, Math.PI).line(mostM).build();
        Track track = Following.along(
                combination.chain(), back, Arrays.copyOf(headings, headings.length), Following.STATE_M, true);
        for (int i = 0; i < track.size(); i++) {
            for (int k = 0; k + 1 < headings.length; k++) {
                if (Math.abs(track.articulationRad(i, k)) >= combination.articulationLimitRad().get(k)) {
                    coupling[0] = k;
                    return track.stationM(i);
                }
            }
        }
        return mostM;
    }
}
