package org.cresthaul.report;

import java.util.List;
import org.cresthaul.road.StandardHump;
import org.cresthaul.units.Rounded;
import org.cresthaul.units.Rounding;

/**
 * How high a hump a combination clears: for every configuration in transport, how far the road may fall on both sides
 * of a {@link StandardHump} of so many tracks. It tells what to survey first, and is no verdict on any place.
 *
 * @param tracks of the hump
 * @param planeM how long the road lies in the plane of the rails, meters
 * @param overM over which length it falls, meters
 * @param rungs by configuration, in the report's order
 */
public record HumpLadder(
        int tracks,
        @Rounded(Rounding.LENGTH_NEAR) double planeM,
        @Rounded(Rounding.LENGTH_NEAR) double overM,
        List<Rung> rungs) {
    /**
     * One configuration.
     *
     * @param clearM the largest fall that is clear, null where not even a level road is
     * @param contactM the least fall found at which contact cannot be ruled out, null where there is none up to 24 in
     */
    public record Rung(
            String configuration,
            @Rounded(Rounding.LIMIT_NEAR) Double clearM,
            @Rounded(Rounding.LIMIT_NEAR) Double contactM) {}

    public HumpLadder {
        rungs = List.copyOf(rungs);
    }
}
