package org.cresthaul.road;

import java.util.Optional;
import org.cresthaul.geometry.Finite;
import org.locationtech.jts.geom.Geometry;

/**
 * A corner from above, in metres, in its own frame: any origin, x to the east of it or along the approach, y to the left
 * of x. Geometries are values here: nobody changes them.
 *
 * @param pavement what tyres may run on without escorts, as far as own lanes and aprons go
 * @param escorted what they may run on when escorts hold the opposing traffic; contains {@code pavement}. Empty when no
 *     opposing lane may be borrowed
 * @param opposing lanes that no body may overhang unless they are borrowed; may be empty
 * @param obstacles what no body may touch: poles, walls, signs; may be empty
 * @param approach where the combination comes from
 * @param exit where it goes to
 * @param turnRad how far the road turns from approach to exit, positive to the left; a roundabout may turn beyond π
 */
public record Corner(
        Geometry pavement,
        Optional<Geometry> escorted,
        Geometry opposing,
        Geometry obstacles,
        RoadEnd approach,
        RoadEnd exit,
        double turnRad) {
    /**
     * A cross-section of the road at one end of the corner.
     *
     * @param headingRad direction of travel, counter-clockwise from x
     * @param leftM rightM how far own lanes and shoulder reach to either side of the point, metres, each positive outward
     *     and perhaps negative: a point on the centre line has its own lane all on one side
     * @param escortedLeftM escortedRightM the same with the opposing lanes
     */
    public record RoadEnd(
            double xM,
            double yM,
            double headingRad,
            double leftM,
            double rightM,
            double escortedLeftM,
            double escortedRightM) {
        public RoadEnd {
            Finite.require("xM", xM);
            Finite.require("yM", yM);
            Finite.require("headingRad", headingRad);
            if (!(leftM + rightM > 0) || escortedLeftM < leftM || escortedRightM < rightM) {
                throw new IllegalArgumentException("a road end needs a width: " + leftM + " + " + rightM);
            }
        }
    }

    public Corner {
        Finite.require("turnRad", turnRad);
        if (pavement.isEmpty() || !pavement.isValid() || !opposing.isValid() || !obstacles.isValid()
                || escorted.isPresent() && !escorted.get().isValid()) {
            throw new IllegalArgumentException("a corner's areas must be valid, and its pavement not empty");
        }
    }
}
