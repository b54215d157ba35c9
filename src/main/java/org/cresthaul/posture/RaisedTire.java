package org.cresthaul.posture;

import org.cresthaul.rig.FramePoint;
import org.cresthaul.road.WheelPath;

/**
 * A raised tire over the path that it would roll on.
 *
 * @param armM how far beside the unit's middle it is where the unit may roll, meters
 */
record RaisedTire(CombinationShape.Circle circle, WheelPath path, double armM) {
    static final String PART = "raised tire";

    FramePoint foot() {
        return new FramePoint(circle.xM(), circle.hM() - circle.radiusM(), PART);
    }
}
