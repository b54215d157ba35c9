package org.cresthaul.route;

import java.util.Optional;
import org.cresthaul.road.Corner;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

/**
 * Where the route line enters and leaves a surveyed pavement. Beyond the edge it crosses there the road is taken to go on
 * straight at that edge's width: a combination longer than the survey stands on it.
 */
final class SurveyedEnds {
    /** How far from the corner's point an end is looked for, metres. */
    static final double FARTHEST_M = 150;

    private static final double ON_M = 160;
    private static final double STEP_M = 0.5;
    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    private final Polygon pavement;
    private final RoadFrame frame;
    private final RouteLine line;
    private final double chainageM;

    /** An end, and the road that goes on beyond it. */
    record End(Corner.RoadEnd end, Geometry road, double chainageM) {}

    SurveyedEnds(Polygon pavement, RoadFrame frame, RouteLine line, double chainageM) {
        this.pavement = pavement;
        this.frame = frame;
        this.line = line;
        this.chainageM = chainageM;
    }

    /** The end before ({@code way} -1) or after (+1) the corner's point. */
    Optional<End> find(int way) {
        boolean wasIn = false;
        Coordinate last = null;
        for (double d = 0; d <= FARTHEST_M; d += STEP_M) {
            double at = chainageM + way * d;
            if (at < 0 || at > line.lengthM()) {
                return Optional.empty();
            }
            Coordinate here = local(at);
            boolean in = pavement.contains(GEOMETRY.createPoint(here));
            if (wasIn && !in && d > 10) {
                return end(way, last, here, at);
            }
            wasIn |= in;
            last = here;
        }
        return Optional.empty();
    }

    private Coordinate local(double chainage) {
        double[] at = frame.alongRightM(line.frameAt(chainage).origin());
        return new Coordinate(at[0], -at[1]);
    }

    private Optional<End> end(int way, Coordinate inside, Coordinate outside, double chainage) {
        Coordinate[] ring = pavement.getExteriorRing().getCoordinates();
        for (int i = 1; i < ring.length; i++) {
            Geometry edge = GEOMETRY.createLineString(new Coordinate[] {ring[i - 1], ring[i]});
            Geometry step = GEOMETRY.createLineString(new Coordinate[] {inside, outside});
            if (!edge.intersects(step)) {
                continue;
            }
            Coordinate cross = edge.intersection(step).getCoordinate();
            Coordinate far = local(Math.max(0, Math.min(line.lengthM(), chainage - way * 12)));
            double heading = way > 0 ? Math.atan2(cross.y - far.y, cross.x - far.x)
                    : Math.atan2(far.y - cross.y, far.x - cross.x);
            double c = Math.cos(heading);
            double s = Math.sin(heading);
            double a = -(ring[i - 1].x - cross.x) * s + (ring[i - 1].y - cross.y) * c;
            double b = -(ring[i].x - cross.x) * s + (ring[i].y - cross.y) * c;
            double left = Math.max(a, b);
            double right = -Math.min(a, b);
            if (left + right < 2) {
                return Optional.empty();
            }
            double dx = way * ON_M * c;
            double dy = way * ON_M * s;
            // A little into the survey, so that the two are one area.
            double ix = -way * 0.01 * c;
            double iy = -way * 0.01 * s;
            Polygon road = GEOMETRY.createPolygon(new Coordinate[] {
                new Coordinate(ring[i - 1].x + ix, ring[i - 1].y + iy),
                new Coordinate(ring[i].x + ix, ring[i].y + iy),
                new Coordinate(ring[i].x + dx, ring[i].y + dy),
                new Coordinate(ring[i - 1].x + dx, ring[i - 1].y + dy),
                new Coordinate(ring[i - 1].x + ix, ring[i - 1].y + iy)
            });
            return Optional.of(new End(
                    new Corner.RoadEnd(cross.x, cross.y, heading, left, right, left, right), road, chainage));
        }
        return Optional.empty();
    }

    /** How far the route line turns between two ends, positive to the left; a whole turn round a circle counts. */
    double turnRad(End in, End out) {
        double turned = 0;
        double last = in.end().headingRad();
        for (double at = in.chainageM() + 3; at < out.chainageM() - 3; at += 3) {
            Coordinate a = local(at);
            Coordinate b = local(at + 3);
            double heading = Math.atan2(b.y - a.y, b.x - a.x);
            turned += Math.IEEEremainder(heading - last, 2 * Math.PI);
            last = heading;
        }
        return turned + Math.IEEEremainder(out.end().headingRad() - last, 2 * Math.PI);
    }
}
