package org.cresthaul.road;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.geometry.Areas;
import org.cresthaul.geometry.Finite;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;

/**
 * A corner built from a few measures: two roads that meet, driven on the right. Origin: where the roads' centre lines
 * meet (a roundabout's centre); x along the approach, y to its left. Curved edges are drawn so that the pavement never
 * comes out larger than it is: by less than 5 mm smaller.
 *
 * @param turnRad from approach to exit, positive to the left
 * @param kerb the return on the inside of the turn; none on a roundabout
 * @param apronM how far tyres may run up behind the return (or onto a roundabout's middle island), metres
 * @param roundabout when the roads meet on one
 * @param islands tyres keep off, bodies may overhang; in the template's frame
 * @param obstacles nothing may touch
 */
public record CornerTemplate(
        double turnRad,
        RoadWidths approach,
        RoadWidths exit,
        KerbReturn kerb,
        double apronM,
        Optional<Roundabout> roundabout,
        List<List<PlanPoint>> islands,
        List<Obstacle> obstacles) {
    /** How far the approach and exit are drawn, metres: farther than any combination reaches. */
    static final double REACH_M = 160;

    private static final GeometryFactory GEOMETRY = new GeometryFactory();
    private static final double STEP_RAD = Math.toRadians(2);
    private static final int QUADRANT = 45;

    /** A point of the template's frame, metres. */
    public record PlanPoint(double xM, double yM) {
        public PlanPoint {
            Finite.require("xM", xM);
            Finite.require("yM", yM);
        }
    }

    /**
     * One road.
     *
     * @param ownM from the centre line to the right edge of the lanes in the direction of travel
     * @param opposingM the lanes of the other direction; zero on a one-way road
     * @param shoulderM beside the own lanes, firm enough for tyres
     * @param borrow whether the opposing lanes may be borrowed with escorts
     */
    public record RoadWidths(double ownM, double opposingM, double shoulderM, boolean borrow) {
        public RoadWidths {
            Finite.requireAtLeast("ownM", 0.5, ownM);
            Finite.requireAtLeast("opposingM", 0, opposingM);
            Finite.requireAtLeast("shoulderM", 0, shoulderM);
        }
    }

    /**
     * A kerb return of one radius, or of three: first, middle, last, the middle arc set in by an offset from both edges.
     */
    public record KerbReturn(double firstM, double middleM, double lastM, double offsetM) {
        public KerbReturn {
            Finite.requireAtLeast("middleM", 0, middleM);
            Finite.requireAtLeast("offsetM", 0, offsetM);
            if (firstM < middleM + offsetM || lastM < middleM + offsetM) {
                throw new IllegalArgumentException("the outer radii must be at least the middle one and the offset");
            }
        }

        public static KerbReturn single(double radiusM) {
            return new KerbReturn(radiusM, radiusM, radiusM, 0);
        }
    }

    /**
     * A roundabout, driven counter-clockwise.
     *
     * @param outerM radius of its outer edge
     * @param islandM radius of the middle island's kerb, without the apron of the template
     * @param filletM radius of the kerb returns between it and the roads
     */
    public record Roundabout(double outerM, double islandM, double filletM) {
        public Roundabout {
            Finite.requireAtLeast("islandM", 0.5, islandM);
            Finite.requireAtLeast("outerM", islandM + 2, outerM);
            Finite.requireAtLeast("filletM", 0, filletM);
        }
    }

    /** A pole (one point and a radius) or anything with an outline (three points and more). */
    public record Obstacle(List<PlanPoint> outline, double radiusM) {
        public Obstacle {
            outline = List.copyOf(outline);
            Finite.requireAtLeast("radiusM", 0, radiusM);
            if (outline.isEmpty() || outline.size() < 3 && !(radiusM > 0)) {
                throw new IllegalArgumentException("an obstacle needs three points, or a radius");
            }
        }
    }

    public CornerTemplate {
        islands = islands.stream().map(List::copyOf).toList();
        obstacles = List.copyOf(obstacles);
        Finite.requireAtLeast("apronM", 0, apronM);
        double deg = Math.toDegrees(Math.abs(Finite.require("turnRad", turnRad)));
        if (roundabout.isEmpty() && (deg < 20 || deg > 150)) {
            throw new IllegalArgumentException("a junction turns by 20 to 150 degrees, not " + deg);
        }
        if (deg > 270) {
            throw new IllegalArgumentException("a roundabout turns by at most 270 degrees, not " + deg);
        }
    }

    /** The areas of this template. */
    public Corner corner() {
        return roundabout.isPresent() ? atRoundabout(roundabout.get()) : atJunction();
    }

    /** Works in a frame whose y points to the inside of the turn, and mirrors a right turn back at the end. */
    private Corner atJunction() {
        boolean right = turnRad < 0;
        double turn = Math.abs(turnRad);
        Strip in = new Strip(0, approach, right);
        Strip out = new Strip(turn, exit, right);
        Geometry fillet = fillet(in.innerM, out.innerM, turn);
        Geometry ownIn = in.strip(in.ownFrom, in.ownTo);
        Geometry ownOut = out.strip(out.ownFrom, out.ownTo);
        Geometry allIn = in.strip(in.outerM, in.innerM);
        Geometry allOut = out.strip(out.outerM, out.innerM);
        Geometry box = Areas.common(allIn, allOut);
        Geometry ownInCut = Areas.common(ownIn, out.side(right ? out.ownFrom : out.outerM));
        Geometry ownOutCut = Areas.common(ownOut, in.side(right ? in.ownFrom : in.outerM));
        Geometry own = Areas.union(ownInCut, ownOutCut);
        // Turning across, the truck has the junction itself; turning to its own side it has its own lanes and the return.
        Geometry pavement = Areas.union(own, right ? fillet : Areas.union(box, fillet));
        Geometry opposing = Areas.union(
                Areas.common(in.strip(in.opposingFrom, in.opposingTo), out.side(out.outerM)),
                Areas.common(out.strip(out.opposingFrom, out.opposingTo), in.side(in.outerM)));
        opposing = Areas.without(opposing, pavement);
        Optional<Geometry> escorted = Optional.empty();
        if (approach.borrow || exit.borrow) {
            Geometry wide = Areas.union(pavement, box);
            if (approach.borrow) {
                wide = Areas.union(wide, Areas.common(allIn, out.side(out.outerM)));
            }
            if (exit.borrow) {
                wide = Areas.union(wide, Areas.common(allOut, in.side(in.outerM)));
            }
            escorted = Optional.of(Areas.union(wide, fillet));
        }
        if (apronM > 0) {
            Geometry apron = Areas.common(
                    Areas.common(buffer(fillet, apronM), in.side(in.innerM)), out.side(out.innerM));
            pavement = Areas.union(pavement, apron);
            escorted = escorted.map(e -> Areas.union(e, apron));
        }
        return finish(pavement, escorted, opposing, right, in.end(right), out.end(right));
    }

    private Corner atRoundabout(Roundabout round) {
        Strip in = new Strip(0, approach, false);
        Strip out = new Strip(turnRad, exit, false);
        Geometry disk = buffer(GEOMETRY.createPoint(new Coordinate(0, 0)), round.outerM);
        Geometry before = Areas.common(
                in.strip(in.outerM, in.innerM), rectangle(0, -REACH_M, 0, -REACH_M, REACH_M));
        Geometry beyond = Areas.common(
                out.strip(out.outerM, out.innerM), rectangle(turnRad, 0, REACH_M, -REACH_M, REACH_M));
        Geometry all = Areas.union(Areas.union(disk, before), beyond);
        if (round.filletM > 0) {
            all = buffer(buffer(all, round.filletM), -round.filletM);
        }
        double kerb = Math.max(0.1, round.islandM - apronM);
        // A regular polygon around the island's kerb, not in it.
        Geometry island = buffer(GEOMETRY.createPoint(new Coordinate(0, 0)),
                kerb / Math.cos(Math.PI / (4 * QUADRANT)));
        all = Areas.without(all, island);
        Geometry opposing = Areas.without(
                Areas.union(
                        Areas.common(in.strip(in.opposingFrom, in.opposingTo),
                                rectangle(0, -REACH_M, 0, -REACH_M, REACH_M)),
                        Areas.common(out.strip(out.opposingFrom, out.opposingTo),
                                rectangle(turnRad, 0, REACH_M, -REACH_M, REACH_M))),
                disk);
        Geometry pavement = Areas.without(all, opposing);
        Optional<Geometry> escorted = approach.borrow || exit.borrow ? Optional.of(all) : Optional.empty();
        return finish(pavement, escorted, opposing, false, in.end(false), out.end(false));
    }

    private Corner finish(
            Geometry pavement,
            Optional<Geometry> escorted,
            Geometry opposing,
            boolean mirror,
            Corner.RoadEnd in,
            Corner.RoadEnd out) {
        Geometry kept = Areas.none();
        for (List<PlanPoint> island : islands) {
            kept = Areas.union(kept, polygon(island));
        }
        Geometry hard = Areas.none();
        for (Obstacle o : obstacles) {
            hard = Areas.union(hard, o.outline.size() >= 3 ? polygon(o.outline) : pole(o));
        }
        Geometry off = Areas.union(kept, hard);
        AffineTransformation flip = AffineTransformation.scaleInstance(1, mirror ? -1 : 1);
        Geometry flipped = largest(Areas.without(flip.transform(pavement), off));
        return new Corner(
                flipped,
                escorted.map(e -> largest(Areas.union(Areas.without(flip.transform(e), off), flipped))),
                flip.transform(opposing),
                hard,
                in,
                out,
                turnRad);
    }

    /** Without the slivers that a difference may leave apart. */
    private static Geometry largest(Geometry area) {
        Geometry most = area.getGeometryN(0);
        for (int i = 1; i < area.getNumGeometries(); i++) {
            most = area.getGeometryN(i).getArea() > most.getArea() ? area.getGeometryN(i) : most;
        }
        return most;
    }

    private static Geometry buffer(Geometry g, double m) {
        return BufferOp.bufferOp(g, m, new BufferParameters(QUADRANT));
    }

    private static Polygon polygon(List<PlanPoint> points) {
        Coordinate[] ring = new Coordinate[points.size() + 1];
        for (int i = 0; i < points.size(); i++) {
            ring[i] = new Coordinate(points.get(i).xM, points.get(i).yM);
        }
        ring[points.size()] = ring[0];
        return GEOMETRY.createPolygon(ring);
    }

    private static Geometry pole(Obstacle o) {
        double around = o.radiusM / Math.cos(Math.PI / 32);
        return BufferOp.bufferOp(
                GEOMETRY.createPoint(new Coordinate(o.outline.get(0).xM, o.outline.get(0).yM)), around,
                new BufferParameters(8));
    }

    private static Polygon rectangle(double headingRad, double fromM, double toM, double rightM, double leftM) {
        Coordinate[] ring = new Coordinate[5];
        double[][] at = {{fromM, rightM}, {toM, rightM}, {toM, leftM}, {fromM, leftM}};
        for (int i = 0; i < 4; i++) {
            ring[i] = turned(headingRad, at[i][0], at[i][1]);
        }
        ring[4] = ring[0];
        return GEOMETRY.createPolygon(ring);
    }

    private static Coordinate turned(double headingRad, double alongM, double leftM) {
        double c = Math.cos(headingRad);
        double s = Math.sin(headingRad);
        return new Coordinate(alongM * c - leftM * s, alongM * s + leftM * c);
    }

    /** The pavement that the kerb return adds between the inner edges of the two roads. */
    private Geometry fillet(double innerIn, double innerOut, double turn) {
        if (kerb.middleM + kerb.offsetM <= 0) {
            return Areas.none();
        }
        // In the oblique frame of the two edges: u along the approach edge back from their corner, v along the exit edge.
        double cos = Math.cos(turn);
        double sin = Math.sin(turn);
        // The corner: on the line y = innerIn, and on the exit's line −x sin + y cos = innerOut.
        double cornerX = (innerIn * cos - innerOut) / sin;
        double set = kerb.middleM + kerb.offsetM;
        // The middle circle's centre is "set" inside both edges.
        double centreY = innerIn + set;
        double centreX = (centreY * cos - (innerOut + set)) / sin;
        List<Coordinate> points = new ArrayList<>();
        points.add(new Coordinate(cornerX, innerIn));
        double r1 = kerb.firstM;
        double reach1 = Math.sqrt(sq(r1 - kerb.middleM) - sq(r1 - kerb.middleM - kerb.offsetM));
        double c1x = centreX - reach1;
        double c1y = innerIn + r1;
        double join1 = Math.atan2(centreY - c1y, centreX - c1x);
        if (r1 == kerb.middleM) {
            join1 = -Math.PI / 2;
        }
        double r3 = kerb.lastM;
        double reach3 = Math.sqrt(sq(r3 - kerb.middleM) - sq(r3 - kerb.middleM - kerb.offsetM));
        double t3 = innerOut + r3;
        double along = centreX * cos + centreY * sin + reach3;
        double c3x = along * cos - t3 * sin;
        double c3y = along * sin + t3 * cos;
        double end = turn - Math.PI / 2;
        double join3 = r3 == kerb.middleM ? end : Math.atan2(centreY - c3y, centreX - c3x);
        addArc(points, c1x, c1y, r1, -Math.PI / 2, join1);
        addArc(points, centreX, centreY, kerb.middleM, join1, join3);
        addArc(points, c3x, c3y, r3, join3, end);
        points.add(points.get(0));
        return GEOMETRY.createPolygon(points.toArray(new Coordinate[0])).buffer(0);
    }

    /** An arc by the tangents at even steps: it stays on the pavement's side of the kerb. */
    private static void addArc(List<Coordinate> into, double x, double y, double r, double from, double to) {
        int steps = (int) Math.ceil((to - from) / STEP_RAD - 1e-9);
        if (steps < 1 || r <= 0) {
            return;
        }
        double step = (to - from) / steps;
        into.add(new Coordinate(x + r * Math.cos(from), y + r * Math.sin(from)));
        double around = r / Math.cos(step / 2);
        for (int i = 0; i < steps; i++) {
            double at = from + (i + 0.5) * step;
            into.add(new Coordinate(x + around * Math.cos(at), y + around * Math.sin(at)));
        }
        into.add(new Coordinate(x + r * Math.cos(to), y + r * Math.sin(to)));
    }

    private static double sq(double v) {
        return v * v;
    }

    /** One road in the working frame: offsets grow to the inside of the turn. */
    private static final class Strip {
        final double headingRad;
        final RoadWidths widths;
        final double ownFrom;
        final double ownTo;
        final double opposingFrom;
        final double opposingTo;
        final double innerM;
        final double outerM;

        Strip(double headingRad, RoadWidths widths, boolean ownInside) {
            this.headingRad = headingRad;
            this.widths = widths;
            double own = widths.ownM + widths.shoulderM;
            ownFrom = ownInside ? 0 : -own;
            ownTo = ownInside ? own : 0;
            opposingFrom = ownInside ? -widths.opposingM : 0;
            opposingTo = ownInside ? 0 : widths.opposingM;
            innerM = Math.max(ownTo, opposingTo);
            outerM = Math.min(ownFrom, opposingFrom);
        }

        Geometry strip(double from, double to) {
            return to > from ? rectangle(headingRad, -REACH_M, REACH_M, from, to) : Areas.none();
        }

        /** Everything on the inside of an offset. */
        Geometry side(double offset) {
            return rectangle(headingRad, -3 * REACH_M, 3 * REACH_M, offset, 3 * REACH_M);
        }

        Corner.RoadEnd end(boolean mirror) {
            double own = widths.ownM + widths.shoulderM;
            double left = widths.borrow ? widths.opposingM : 0;
            return new Corner.RoadEnd(0, 0, mirror ? -headingRad : headingRad, 0, own, left, own);
        }
    }
}
