package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.turning.TurningCombination.AxleLine;
import org.cresthaul.turning.TurningCombination.Body;
import org.cresthaul.turning.TurningCombination.PlanUnit;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.operation.overlayng.UnaryUnionNG;

/**
 * What a unit passes over. Not a union of thousands of rectangles: a point of the ground enters a moving rectangle at its
 * front (its rear in reverse) or at a side, and leaves by crossing the line of the effective axle, unless the turn changes
 * its hand first. So the rectangle's area is that of three lines across it (front, effective axle, rear), each a ribbon
 * between the paths of its two ends, and of the rectangle itself at the start, the end and wherever the unit's turn
 * changes hand. A ribbon is cut into pieces that turn less than a radian; the few pieces are united once. The work grows
 * with the length of the path.
 *
 * <p>Areas are true to the states, joined straight: with states every 0.25 m within 3 mm on curves of 3 m radius and
 * more.
 */
public final class SweptArea {
    private static final GeometryFactory GEOMETRY = new GeometryFactory();
    /** Corners are rounded to 0.1 mm, which keeps the union valid whatever the input. */
    private static final PrecisionModel GRID = new PrecisionModel(10_000);

    private static final double PIECE_RAD = 1.0;

    private SweptArea() {}

    /** What the tyres of a unit run over, from outer face to outer face. Valid; may have holes. */
    public static Geometry ofTyres(Track track, int unit, PlanUnit plan) {
        List<Polygon> pieces = new ArrayList<>();
        for (AxleLine axle : plan.tyres()) {
            addRibbon(track, unit, axle.aheadM(), axle.halfWidthM(), pieces);
        }
        return union(pieces);
    }

    /** What the bodies of a unit pass over. Valid; may have holes. */
    public static Geometry ofBodies(Track track, int unit, PlanUnit plan) {
        List<Polygon> pieces = new ArrayList<>();
        for (Body body : plan.bodies()) {
            double middle = Math.max(body.rearM(), Math.min(body.frontM(), 0));
            addRibbon(track, unit, body.frontM(), body.halfWidthM(), pieces);
            addRibbon(track, unit, middle, body.halfWidthM(), pieces);
            addRibbon(track, unit, body.rearM(), body.halfWidthM(), pieces);
            addRectangle(track, 0, unit, body, pieces);
            addRectangle(track, track.size() - 1, unit, body, pieces);
            double hand = 0;
            for (int i = 1; i < track.size(); i++) {
                double turn = turn(track, i, unit);
                if (turn * hand < 0) {
                    addRectangle(track, i - 1, unit, body, pieces);
                }
                hand = Math.abs(turn) > 1e-12 ? turn : hand;
            }
        }
        return union(pieces);
    }

    private static double turn(Track track, int i, int unit) {
        return track.cos(i - 1, unit) * track.sin(i, unit) - track.sin(i - 1, unit) * track.cos(i, unit);
    }

    private static Geometry union(List<Polygon> pieces) {
        return UnaryUnionNG.union(List.<Geometry>copyOf(pieces), GEOMETRY, GRID);
    }

    static Coordinate place(Track track, int state, int unit, double aheadM, double leftM) {
        double c = track.cos(state, unit);
        double s = track.sin(state, unit);
        return new Coordinate(
                track.axleXM(state, unit) + aheadM * c - leftM * s, track.axleYM(state, unit) + aheadM * s + leftM * c);
    }

    /** The corners of a body at a state: rear left, rear right, front right, front left. */
    public static Coordinate[] corners(Track track, int state, int unit, Body body) {
        return new Coordinate[] {
            place(track, state, unit, body.rearM(), body.halfWidthM()),
            place(track, state, unit, body.rearM(), -body.halfWidthM()),
            place(track, state, unit, body.frontM(), -body.halfWidthM()),
            place(track, state, unit, body.frontM(), body.halfWidthM())
        };
    }

    private static void addRectangle(Track track, int state, int unit, Body body, List<Polygon> pieces) {
        Coordinate[] c = corners(track, state, unit, body);
        pieces.add(GEOMETRY.createPolygon(new Coordinate[] {c[0], c[1], c[2], c[3], c[0]}));
    }

    private static void addRibbon(Track track, int unit, double aheadM, double half, List<Polygon> pieces) {
        List<Coordinate> left = new ArrayList<>();
        List<Coordinate> right = new ArrayList<>();
        double turned = 0;
        for (int i = 0; i < track.size(); i++) {
            Coordinate l = place(track, i, unit, aheadM, half);
            Coordinate r = place(track, i, unit, aheadM, -half);
            if (i > 0) {
                turned += turn(track, i, unit);
                Coordinate l0 = place(track, i - 1, unit, aheadM, half);
                Coordinate r0 = place(track, i - 1, unit, aheadM, -half);
                boolean moves = l.distance(l0) > 1e-6 || r.distance(r0) > 1e-6;
                // Where the line turns about a point of itself, its ribbon folds: such a step stands alone.
                boolean folds = !ahead(l0, l, r0) || !ahead(l0, l, r) || !ahead(r0, r, r0, l0) || !ahead(r0, r, r0, l);
                if (moves && folds) {
                    close(left, right, pieces);
                    Geometry hull = GEOMETRY.createMultiPointFromCoords(new Coordinate[] {l0, r0, l, r}).convexHull();
                    if (hull instanceof Polygon polygon) {
                        pieces.add(polygon);
                    }
                    turned = 0;
                } else if (Math.abs(turned) > PIECE_RAD) {
                    left.add(l);
                    right.add(r);
                    close(left, right, pieces);
                    turned = 0;
                }
            }
            left.add(l);
            right.add(r);
        }
        close(left, right, pieces);
    }

    /** Whether a point is to the right of the way from one place to the next. */
    private static boolean ahead(Coordinate from, Coordinate to, Coordinate point) {
        return (to.x - from.x) * (point.y - from.y) - (to.y - from.y) * (point.x - from.x) < 0;
    }

    /** Whether the other end is to the left of the right end's way. */
    private static boolean ahead(Coordinate from, Coordinate to, Coordinate foot, Coordinate point) {
        return (to.x - from.x) * (point.y - foot.y) - (to.y - from.y) * (point.x - foot.x) > 0;
    }

    private static void close(List<Coordinate> left, List<Coordinate> right, List<Polygon> pieces) {
        if (left.size() > 1) {
            Coordinate[] ring = new Coordinate[2 * left.size() + 1];
            for (int i = 0; i < left.size(); i++) {
                ring[i] = left.get(i);
                ring[2 * left.size() - 1 - i] = right.get(i);
            }
            ring[ring.length - 1] = ring[0];
            pieces.add(GEOMETRY.createPolygon(ring));
        }
        left.clear();
        right.clear();
    }
}
