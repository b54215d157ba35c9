package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.geometry.Areas;
import org.cresthaul.road.Corner;
import org.cresthaul.road.Corner.RoadEnd;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.PolygonExtracter;

/**
 * The way a corner is driven, as points a meter apart from well before it to well past it: where the road begins to
 * turn and where it ends, and on which side islands are passed.
 */
final class SteppedWay {
    /** A direction that differs less from that of the road's end is that of the end. */
    private static final double STRAIGHT_RAD = Math.toRadians(4);
    /** Of the turn that joins two straight roads when nobody drew the way. */
    private static final double JOIN_M = 14;

    private static final double POINT_M = 1.0;
    /** Holes smaller than this are poles and grates, square meters. */
    private static final double SMALLEST_ISLAND_M2 = 1;

    private static final double ENDS_M = 60;

    /** Points, and the way's direction at each. */
    final double[] x;

    final double[] y;
    final double[] heading;
    /** First and last point at which the way turns. */
    final int turnFrom;

    final int turnTo;
    private final List<Point> islands;

    private SteppedWay(List<double[]> points, Corner corner) {
        int n = points.size();
        x = new double[n];
        y = new double[n];
        heading = new double[n];
        for (int i = 0; i < n; i++) {
            x[i] = points.get(i)[0];
            y[i] = points.get(i)[1];
        }
        for (int i = 0; i < n; i++) {
            int a = Math.max(0, i - 1);
            int b = Math.min(n - 1, i + 1);
            heading[i] = Math.atan2(y[b] - y[a], x[b] - x[a]);
        }
        int from = 0;
        while (from < n - 1 && near(heading[from], corner.approach().headingRad())) {
            from++;
        }
        int to = n - 1;
        while (to > from && near(heading[to], corner.exit().headingRad())) {
            to--;
        }
        turnFrom = from;
        turnTo = to;
        islands = islands(corner);
    }

    static SteppedWay of(Corner corner) {
        List<double[]> drawn = new ArrayList<>();
        if (corner.guide().isPresent()) {
            for (Coordinate c : corner.guide().get().getCoordinates()) {
                drawn.add(new double[] {c.x, c.y});
            }
        } else {
            drawn.addAll(joined(corner));
        }
        return new SteppedWay(even(lengthened(drawn, corner)), corner);
    }

    private static boolean near(double a, double b) {
        return Math.abs(Math.IEEEremainder(a - b, 2 * Math.PI)) < STRAIGHT_RAD;
    }

    /** Middle of the own lanes of both roads, with an arc between them. */
    private static List<double[]> joined(Corner corner) {
        double[] in = middle(corner.approach());
        double[] out = middle(corner.exit());
        double a = corner.approach().headingRad();
        double b = corner.exit().headingRad();
        double sine = Math.sin(b - a);
        List<double[]> points = new ArrayList<>();
        if (Math.abs(sine) < 0.1) {
            points.add(in);
            points.add(out);
            return points;
        }
        double t = ((out[0] - in[0]) * Math.sin(b) - (out[1] - in[1]) * Math.cos(b)) / sine;
        double meetX = in[0] + t * Math.cos(a);
        double meetY = in[1] + t * Math.sin(a);
        double turn = corner.turnRad();
        double tangent = JOIN_M * Math.abs(Math.tan(0.5 * turn));
        int steps = Math.max(2, (int) (Math.abs(turn) / 0.1));
        double px = meetX - tangent * Math.cos(a);
        double py = meetY - tangent * Math.sin(a);
        points.add(new double[] {px, py});
        for (int i = 1; i <= steps; i++) {
            double from = a + turn * (i - 0.5) / steps;
            double chord = 2 * JOIN_M * Math.sin(0.5 * Math.abs(turn) / steps);
            px += chord * Math.cos(from);
            py += chord * Math.sin(from);
            points.add(new double[] {px, py});
        }
        return points;
    }

    private static double[] middle(RoadEnd end) {
        double aside = 0.5 * (end.leftM() - end.rightM());
        return new double[] {
            end.xM() - aside * Math.sin(end.headingRad()), end.yM() + aside * Math.cos(end.headingRad())
        };
    }

    private static List<double[]> lengthened(List<double[]> drawn, Corner corner) {
        double[] first = drawn.get(0);
        double[] last = drawn.get(drawn.size() - 1);
        double a = corner.approach().headingRad();
        double b = corner.exit().headingRad();
        List<double[]> all = new ArrayList<>();
        all.add(new double[] {first[0] - ENDS_M * Math.cos(a), first[1] - ENDS_M * Math.sin(a)});
        all.addAll(drawn);
        all.add(new double[] {last[0] + ENDS_M * Math.cos(b), last[1] + ENDS_M * Math.sin(b)});
        return all;
    }

    private static List<double[]> even(List<double[]> drawn) {
        List<double[]> points = new ArrayList<>();
        double into = 0;
        for (int i = 1; i < drawn.size(); i++) {
            double dx = drawn.get(i)[0] - drawn.get(i - 1)[0];
            double dy = drawn.get(i)[1] - drawn.get(i - 1)[1];
            double length = Math.hypot(dx, dy);
            while (into < length) {
                points.add(
                        new double[] {drawn.get(i - 1)[0] + dx * into / length, drawn.get(i - 1)[1] + dy * into / length
                        });
                into += POINT_M;
            }
            into -= length;
        }
        return points;
    }

    /** A point in every island and every hole of the pavement; a pole in the road is passed on either side. */
    private static List<Point> islands(Corner corner) {
        List<Point> points = new ArrayList<>();
        if (corner.guide().isEmpty()) {
            return points;
        }
        corner.ground().islands().forEach(i -> points.add(i.area().getInteriorPoint()));
        List<Geometry> roads = new ArrayList<>(List.of(corner.pavement()));
        corner.escorted().ifPresent(roads::add);
        for (Geometry road : roads) {
            List<Polygon> polygons = new ArrayList<>();
            PolygonExtracter.getPolygons(road, polygons);
            for (Polygon p : polygons) {
                for (int h = 0; h < p.getNumInteriorRing(); h++) {
                    Geometry hole = Areas.without(
                            p.getFactory().createPolygon(p.getInteriorRingN(h).getCoordinates()), corner.obstacles());
                    if (hole.getArea() >= SMALLEST_ISLAND_M2) {
                        points.add(hole.getInteriorPoint());
                    }
                }
            }
        }
        return List.copyOf(points);
    }

    /** Whether a line from before the corner to past it leaves every island on the side on which this way leaves it. */
    boolean passesIslandsLike(Track track) {
        for (Point island : islands) {
            double own = 0;
            for (int i = 1; i < x.length; i++) {
                own += angle(island, x[i - 1], y[i - 1], x[i], y[i]);
            }
            double other = 0;
            for (int i = 1; i < track.size(); i++) {
                other += angle(island, track.leadXM(i - 1), track.leadYM(i - 1), track.leadXM(i), track.leadYM(i));
            }
            int last = track.size() - 1;
            // Closed over the ends, the two ways go round the island together, or by a whole turn apart.
            double ends = angle(island, x[x.length - 1], y[y.length - 1], track.leadXM(last), track.leadYM(last))
                    - angle(island, x[0], y[0], track.leadXM(0), track.leadYM(0));
            if (Math.abs(own + ends - other) > Math.PI) {
                return false;
            }
        }
        return true;
    }

    private static double angle(Point from, double ax, double ay, double bx, double by) {
        double px = ax - from.getX();
        double py = ay - from.getY();
        double qx = bx - from.getX();
        double qy = by - from.getY();
        return Math.atan2(px * qy - py * qx, px * qx + py * qy);
    }
}
