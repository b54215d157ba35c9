package org.cresthaul.clearance.bound;

import org.cresthaul.posture.CombinationShape;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.road.WheelPath;

/**
 * A raised tire over the path that it would roll on.
 *
 * @param armM how far beside the unit's middle it is where the unit may roll, meters
 */
public record RaisedTire(CombinationShape.Circle circle, WheelPath path, double armM) {
    /** What is said to be there. */
    private static final String PART = "raised tire";

    public FramePoint foot() {
        return new FramePoint(circle.xM(), circle.hM() - circle.radiusM(), PART);
    }
}
