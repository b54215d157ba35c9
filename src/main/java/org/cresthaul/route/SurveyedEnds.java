package org.cresthaul.route;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.geometry.Areas;
import org.cresthaul.road.Corner;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;

/**
 * Where the route line enters and leaves a surveyed pavement. Beyond the edge it crosses there the road is taken to go
 * on straight at that edge's width: a combination longer than the survey stands on it. What of the edge belongs to
 * opposing lanes goes on as opposing lanes.
 */
public final class SurveyedEnds {
    /** How far from the corner's point an end is looked for, meters. */
    static final double FARTHEST_M = 150;

    /** How far the road goes on beyond the survey, meters. */
    static final double ON_M = 450;

    private static final double STEP_M = 0.5;
    /** The opposing lanes are read this far inside the edge: outlines that should end on it end a little beside it. */
    private static final double INSIDE_M = 0.3;

    private static final double LEAST_WIDTH_M = 2;
    private static final double GUIDE_STEP_M = 2;
    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    private final Polygon pavement;
    private final Geometry opposing;
    private final RoadFrame frame;
    private final RouteLine line;
    private final double chainageM;

    /** An end, and the road that goes on beyond it: its own lanes, and its opposing ones. */
    public record End(Corner.RoadEnd end, Geometry road, Geometry opposing, double chainageM) {}

    public SurveyedEnds(Polygon pavement, Geometry opposing, RoadFrame frame, RouteLine line, double chainageM) {
        this.pavement = pavement;
        this.opposing = opposing;
        this.frame = frame;
        this.line = line;
        this.chainageM = chainageM;
    }

    /** The end before ({@code way} -1) or after (+1) the corner's point. */
    public Optional<End> find(int way) {
        boolean wasIn = false;
        Coordinate last = null;
        // The line may run over an island: that is no end.
        Polygon filled = GEOMETRY.createPolygon(pavement.getExteriorRing());
        for (double d = 0; d <= FARTHEST_M; d += STEP_M) {
            double at = chainageM + way * d;
            if (at < 0 || at > line.lengthM()) {
                return Optional.empty();
            }
            Coordinate here = local(at);
            boolean in = filled.contains(GEOMETRY.createPoint(here));
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
        Geometry step = GEOMETRY.createLineString(new Coordinate[] {inside, outside});
        for (int i = 1; i < ring.length; i++) {
            Geometry edge = GEOMETRY.createLineString(new Coordinate[] {ring[i - 1], ring[i]});
            if (edge.intersects(step)) {
                return edge(way, ring[i - 1], ring[i], edge.intersection(step).getCoordinate(), chainage);
            }
        }
        return Optional.empty();
    }

    private Optional<End> edge(int way, Coordinate a, Coordinate b, Coordinate cross, double chainage) {
        Coordinate far = local(Math.max(0, Math.min(line.lengthM(), chainage - way * 12)));
        double heading =
                way > 0 ? Math.atan2(cross.y - far.y, cross.x - far.x) : Math.atan2(far.y - cross.y, far.x - cross.x);
        double c = way * Math.cos(heading);
        double s = way * Math.sin(heading);
        double[] own = own(a, b, cross, -INSIDE_M * c, -INSIDE_M * s);
        Coordinate from = between(a, b, own[0]);
        Coordinate to = between(a, b, own[1]);
        double[] ownAside = aside(cross, heading, from, to);
        double[] aside = aside(cross, heading, a, b);
        if (ownAside[1] - ownAside[0] < LEAST_WIDTH_M) {
            return Optional.empty();
        }
        Geometry beside = Areas.union(on(a, from, c, s), on(to, b, c, s));
        // The own lanes are a part of the edge; rounding may put their end the last digit beyond it.
        Corner.RoadEnd end = new Corner.RoadEnd(
                cross.x,
                cross.y,
                heading,
                ownAside[1],
                -ownAside[0],
                Math.max(aside[1], ownAside[1]),
                Math.max(-aside[0], -ownAside[0]));
        return Optional.of(new End(end, on(from, to, c, s), beside, chainage));
    }

    /** Least and greatest offset of two places from the line through {@code cross}, positive to the left. */
    private static double[] aside(Coordinate cross, double heading, Coordinate a, Coordinate b) {
        double c = Math.cos(heading);
        double s = Math.sin(heading);
        double first = -(a.x - cross.x) * s + (a.y - cross.y) * c;
        double second = -(b.x - cross.x) * s + (b.y - cross.y) * c;
        return new double[] {Math.min(first, second), Math.max(first, second)};
    }

    /**
     * The part of an edge, from 0 to 1, that is no opposing lane: where the route line crosses it, or else the widest.
     */
    private double[] own(Coordinate a, Coordinate b, Coordinate cross, double inX, double inY) {
        LineString read = GEOMETRY.createLineString(
                new Coordinate[] {new Coordinate(a.x + inX, a.y + inY), new Coordinate(b.x + inX, b.y + inY)});
        Geometry free = opposing.isEmpty() ? read : read.difference(opposing);
        double at = a.distance(cross) / a.distance(b);
        List<double[]> parts = new ArrayList<>();
        for (int i = 0; i < free.getNumGeometries(); i++) {
            Coordinate[] part = free.getGeometryN(i).getCoordinates();
            if (part.length > 1) {
                double from = read.getCoordinateN(0).distance(part[0]) / read.getLength();
                double to = read.getCoordinateN(0).distance(part[part.length - 1]) / read.getLength();
                parts.add(new double[] {Math.min(from, to), Math.max(from, to)});
            }
        }
        double[] best = {0, 0};
        for (double[] part : parts) {
            if (part[0] <= at && at <= part[1] && part[1] - part[0] > LEAST_WIDTH_M / a.distance(b)) {
                return part;
            }
            best = part[1] - part[0] > best[1] - best[0] ? part : best;
        }
        return best;
    }

    private static Coordinate between(Coordinate a, Coordinate b, double t) {
        return new Coordinate(a.x + t * (b.x - a.x), a.y + t * (b.y - a.y));
    }

    private static Geometry on(Coordinate a, Coordinate b, double c, double s) {
        if (a.distance(b) < 0.001) {
            return Areas.none();
        }
        Coordinate farA = new Coordinate(a.x + ON_M * c, a.y + ON_M * s);
        Coordinate farB = new Coordinate(b.x + ON_M * c, b.y + ON_M * s);
        return GEOMETRY.createPolygon(new Coordinate[] {a, b, farB, farA, a});
    }

    /** The way the road is driven: the route line inside the survey, and straight on beyond both ends. */
    public List<Coordinate> way(End in, End out) {
        List<Coordinate> way = new ArrayList<>();
        way.add(ahead(in.end(), -ON_M));
        way.add(ahead(in.end(), 0));
        for (double at = in.chainageM() + GUIDE_STEP_M; at < out.chainageM() - GUIDE_STEP_M; at += GUIDE_STEP_M) {
            way.add(local(at));
        }
        way.add(ahead(out.end(), 0));
        way.add(ahead(out.end(), ON_M));
        return way;
    }

    private static Coordinate ahead(Corner.RoadEnd end, double m) {
        return new Coordinate(end.xM() + m * Math.cos(end.headingRad()), end.yM() + m * Math.sin(end.headingRad()));
    }

    /** How far the route line turns between two ends, positive to the left; a whole turn round a circle counts. */
    public double turnRad(End in, End out) {
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
