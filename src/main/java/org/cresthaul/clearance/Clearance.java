package org.cresthaul.clearance;

import java.util.Optional;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.UnitName;

/**
 * The least gap of a passage.
 *
 * @param valueM the gap at {@code steerM}, meters, positive when free; attained there
 * @param provenWithinM the true minimum over every position lies between {@code valueM - provenWithinM} and
 *     {@code valueM}; the drawn deck sag adds at most 0.1 mm on the safe side
 * @param unit which unit is nearest
 * @param point where on it, in its frame
 * @param raisedTire whether that is the foot of a raised tire
 * @param distanceM where on the road, meters along the line
 * @param steerM where the steer axle stands then, meters along the line
 * @param undecided why the position search ended without closing its bound; then nothing is known but {@code valueM}
 */
public record Clearance(
        double valueM,
        double provenWithinM,
        UnitName unit,
        FramePoint point,
        boolean raisedTire,
        double distanceM,
        double steerM,
        Optional<Undecided> undecided) {
    /** Whether the search closed its bound. */
    public boolean proven() {
        return undecided.isEmpty();
    }
}
