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
 * What a unit passes over. Not a union of thousands of rectangles: a place that a moving rectangle comes to cover is
 * entered over one of its sides, so its area is that of the rectangle at the start and of the ribbons that its sides
 * draw. The long sides are cut at the effective axle, where they move along themselves. A ribbon is a ring between the
 * paths of a side's two ends, cut where the unit's turn changes hand and after a radian; a piece that folds is replaced
 * by its steps. The few pieces are united once. The work grows with the length of the path.
 *
 * <p>Areas are true to the states, joined straight: with states every 0.25 m within 3 mm on curves of 3 m radius and
 * more.
 */
public final class SweptArea {
    private static final GeometryFactory GEOMETRY = new GeometryFactory();
    /** Corners are rounded to 0.1 mm, which keeps the union valid whatever the input. */
    private static final PrecisionModel GRID = new PrecisionModel(10_000);

    private static final double PIECE_RAD = 1.0;
    /** Between two states a long side that turns less than this covers nothing new: a micrometer on a long unit. */
    private static final double STILL_RAD = 1e-7;

    /** A step of less is a side moving along itself, square meters. */
    private static final double LEAST_M2 = 1e-7;

    private SweptArea() {}

    /** What the tires of a unit run over, from outer face to outer face. Valid; may have holes. */
    public static Geometry ofTires(Track track, int unit, PlanUnit plan) {
        List<Polygon> pieces = new ArrayList<>();
        for (AxleLine axle : plan.tires()) {
            double half = axle.halfWidthM();
            addRibbon(track, unit, axle.aheadM(), half, axle.aheadM(), -half, pieces);
        }
        return union(pieces);
    }

    /** What the bodies of a unit pass over. Valid; may have holes. */
    public static Geometry ofBodies(Track track, int unit, PlanUnit plan) {
        List<Polygon> pieces = new ArrayList<>();
        for (Body body : plan.bodies()) {
            double half = body.halfWidthM();
            double middle = Math.max(body.rearM(), Math.min(body.frontM(), 0));
            addRibbon(track, unit, body.frontM(), half, body.frontM(), -half, pieces);
            addRibbon(track, unit, body.rearM(), half, body.rearM(), -half, pieces);
            for (int side = -1; side <= 1; side += 2) {
                if (body.frontM() > middle) {
                    addRibbon(track, unit, body.frontM(), side * half, middle, side * half, pieces);
                }
                if (body.rearM() < middle) {
                    addRibbon(track, unit, middle, side * half, body.rearM(), side * half, pieces);
                }
            }
            addRectangle(track, 0, unit, body, pieces);
            addRectangle(track, track.size() - 1, unit, body, pieces);
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

    private static void addRibbon(
            Track track, int unit, double aheadA, double leftA, double aheadB, double leftB, List<Polygon> pieces) {
        List<Coordinate> a = new ArrayList<>();
        List<Coordinate> b = new ArrayList<>();
        double turned = 0;
        // What is steered may go aside without turning.
        boolean lengthwise = leftA == leftB && track.chain().get(unit).steered().isEmpty();
        for (int i = 0; i < track.size(); i++) {
            double turn = i == 0 ? 0 : turn(track, i, unit);
            if (lengthwise && Math.abs(turn) < STILL_RAD) {
                // The side moves along itself.
                close(a, b, pieces);
                turned = 0;
                a.add(place(track, i, unit, aheadA, leftA));
                b.add(place(track, i, unit, aheadB, leftB));
                continue;
            }
            if (turn * turned < 0 || Math.abs(turned) > PIECE_RAD) {
                close(a, b, pieces);
                a.add(place(track, i - 1, unit, aheadA, leftA));
                b.add(place(track, i - 1, unit, aheadB, leftB));
                turned = 0;
            }
            turned += turn;
            a.add(place(track, i, unit, aheadA, leftA));
            b.add(place(track, i, unit, aheadB, leftB));
        }
        close(a, b, pieces);
    }

    private static void close(List<Coordinate> a, List<Coordinate> b, List<Polygon> pieces) {
        if (a.size() > 1) {
            Coordinate[] ring = new Coordinate[2 * a.size() + 1];
            for (int i = 0; i < a.size(); i++) {
                ring[i] = a.get(i);
                ring[2 * a.size() - 1 - i] = b.get(i);
            }
            ring[ring.length - 1] = ring[0];
            Polygon piece = GEOMETRY.createPolygon(ring);
            if (piece.isValid()) {
                pieces.add(piece);
            } else {
                addSteps(a, b, pieces);
            }
        }
        a.clear();
        b.clear();
    }

    /** A ribbon that folds, step by step: the hull of a step holds all its side passes over, and by a hair more. */
    private static void addSteps(List<Coordinate> a, List<Coordinate> b, List<Polygon> pieces) {
        for (int i = 1; i < a.size(); i++) {
            Geometry hull = GEOMETRY.createMultiPointFromCoords(
                            new Coordinate[] {a.get(i - 1), b.get(i - 1), a.get(i), b.get(i)})
                    .convexHull();
            if (hull instanceof Polygon polygon && polygon.getArea() > LEAST_M2) {
                pieces.add(polygon);
            }
        }
    }
}
