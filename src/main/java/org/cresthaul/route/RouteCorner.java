package org.cresthaul.route;

import java.util.List;
import java.util.Optional;
import org.cresthaul.geometry.Uncertainty;
import org.cresthaul.road.Corner;
import org.cresthaul.road.RoadProfile;

/**
 * A tight turn of the route.
 *
 * @param shape the corner from above, in a frame whose x runs along {@code frame}'s azimuth from its origin and whose y
 *     points to the left; empty while nobody has given its geometry
 * @param frame where that frame lies
 * @param source how the shape is known
 * @param radiusM of the bend in the route line, about, meters; there when it was found in it
 */
public record RouteCorner(
        HazardPlace place,
        Optional<Corner> shape,
        Optional<Uncertainty> survey,
        RoadFrame frame,
        CornerSource source,
        Optional<Double> radiusM)
        implements Hazard {
    public RouteCorner {
        if (shape.isPresent() && survey.isEmpty()) {
            throw new IllegalArgumentException("a corner's geometry needs the accuracy of its survey");
        }
    }

    /** None: a corner is judged from above. */
    @Override
    public List<RoadProfile> lines() {
        return List.of();
    }

    @Override
    public HazardKind kind() {
        return HazardKind.CORNER;
    }

    @Override
    public RouteCorner withSurvey(Uncertainty other) {
        return new RouteCorner(place, shape, survey.map(s -> other), frame, source, radiusM);
    }

    @Override
    public boolean isSurveyed() {
        return shape.isPresent();
    }

    /** Where a point of the corner's frame lies on the earth. */
    public LonLat lonLat(double xM, double yM) {
        return frame.at(xM, -yM);
    }
}
