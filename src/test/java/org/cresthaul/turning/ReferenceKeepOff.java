package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.Distance;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.util.LinearComponentExtracter;
import org.locationtech.jts.index.strtree.STRtree;

/**
 * What a convex outline must keep off: everything outside an area, or the area itself. Distances are those of the
 * outline to the area's edges, segment by segment (JTS).
 */
final class ReferenceKeepOff {
    private static final double LONGEST_M = 20;
    /** Points of an outline that is where it must not be are looked at this far apart, meters. */
    private static final double DEPTH_STEP_M = 0.1;

    private final boolean outside;
    private final boolean nothing;
    private final STRtree edges = new STRtree();
    private final IndexedPointInAreaLocator area;

    private ReferenceKeepOff(Geometry area, boolean outside) {
        this.outside = outside;
        nothing = area.isEmpty() && !outside;
        this.area = new IndexedPointInAreaLocator(area);
        for (Object part : LinearComponentExtracter.getLines(area)) {
            Coordinate[] c = ((LineString) part).getCoordinates();
            for (int i = 1; i < c.length; i++) {
                add(c[i - 1], c[i]);
            }
        }
        edges.build();
    }

    /** Everything that is not in the area. */
    static ReferenceKeepOff outside(Geometry area) {
        return new ReferenceKeepOff(area, true);
    }

    /** The area. */
    static ReferenceKeepOff area(Geometry area) {
        return new ReferenceKeepOff(area, false);
    }

    boolean nothing() {
        return nothing;
    }

    private void add(Coordinate a, Coordinate b) {
        int parts = (int) Math.max(1, Math.ceil(a.distance(b) / LONGEST_M));
        Coordinate last = a;
        for (int i = 1; i <= parts; i++) {
            double t = (double) i / parts;
            Coordinate next = i == parts ? b : new Coordinate(a.x + t * (b.x - a.x), a.y + t * (b.y - a.y));
            edges.insert(new Envelope(last, next), new Coordinate[] {last, next});
            last = next;
        }
    }

    /**
     * From a convex outline (counter-clockwise, not closed) to the nearest edge, at most the limit; zero when one is in
     * it.
     */
    double edgeM(Coordinate[] convex, double limitM) {
        Envelope near = new Envelope();
        for (Coordinate c : convex) {
            near.expandToInclude(c);
        }
        near.expandBy(limitM);
        double least = limitM;
        for (Object o : edges.query(near)) {
            Coordinate[] edge = (Coordinate[]) o;
            if (inside(convex, edge[0])) {
                return 0;
            }
            for (int i = 0; i < convex.length; i++) {
                least = Math.min(
                        least, Distance.segmentToSegment(convex[i], convex[(i + 1) % convex.length], edge[0], edge[1]));
            }
        }
        return least;
    }

    /** Whether the point is where nothing may be. */
    boolean forbids(Coordinate at) {
        return outside == (area.locate(at) == Location.EXTERIOR);
    }

    /**
     * Room of a convex outline, at most the limit. Negative: it is where it must not be, so far inside (looked at on
     * points {@link #DEPTH_STEP_M} apart); an edge that is touched without a point beyond it counts as a tenth of a
     * millimeter.
     */
    double roomM(Coordinate[] convex, double limitM) {
        double d = edgeM(convex, limitM);
        Coordinate middle = new Coordinate();
        for (Coordinate c : convex) {
            middle.x += c.x / convex.length;
            middle.y += c.y / convex.length;
        }
        if (d > 0 && !forbids(middle)) {
            return d;
        }
        double deep = 1e-4;
        List<Coordinate> points = new ArrayList<>(List.of(middle));
        for (int i = 0; i < convex.length; i++) {
            Coordinate a = convex[i];
            Coordinate b = convex[(i + 1) % convex.length];
            int parts = (int) Math.ceil(a.distance(b) / DEPTH_STEP_M);
            for (int k = 0; k < parts; k++) {
                double t = (double) k / parts;
                points.add(new Coordinate(a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)));
            }
        }
        for (Coordinate p : points) {
            if (forbids(p)) {
                deep = Math.max(deep, nearestEdgeM(p));
            }
        }
        if (!outside) {
            // A pole in the middle of a body: as far as it is from getting out at the nearest side.
            Envelope around = new Envelope();
            for (Coordinate c : convex) {
                around.expandToInclude(c);
            }
            for (Object o : edges.query(around)) {
                Coordinate at = ((Coordinate[]) o)[0];
                if (inside(convex, at)) {
                    double out = Double.POSITIVE_INFINITY;
                    for (int i = 0; i < convex.length; i++) {
                        out = Math.min(out, Distance.pointToSegment(at, convex[i], convex[(i + 1) % convex.length]));
                    }
                    deep = Math.max(deep, out);
                }
            }
        }
        return -deep;
    }

    private double nearestEdgeM(Coordinate p) {
        for (double within = 0.5; ; within *= 4) {
            double least = edgeM(new Coordinate[] {p}, within);
            if (least < within || within > 2000) {
                return least;
            }
        }
    }

    private static boolean inside(Coordinate[] convex, Coordinate p) {
        if (convex.length < 3) {
            return false;
        }
        for (int i = 0; i < convex.length; i++) {
            Coordinate a = convex[i];
            Coordinate b = convex[(i + 1) % convex.length];
            if ((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x) < 0) {
                return false;
            }
        }
        return true;
    }
}
