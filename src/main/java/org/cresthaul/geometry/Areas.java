package org.cresthaul.geometry;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.geom.util.PolygonExtracter;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.locationtech.jts.operation.overlayng.OverlayNG;

/** Sums and differences of plane areas in meters, on a grid of 0.01 mm, which keeps every result valid. */
public final class Areas {
    private static final PrecisionModel GRID = new PrecisionModel(100_000);
    private static final GeometryFactory GEOMETRY = new GeometryFactory();
    /** Half the width of the widest hairline, meters. */
    private static final double HAIR_M = 0.00005;
    /** Corners stay corners; a spike sharper than this is cut off by less than a millimeter. */
    private static final BufferParameters SHARP =
            new BufferParameters(8, BufferParameters.CAP_FLAT, BufferParameters.JOIN_MITRE, 5);

    private Areas() {}

    public static Geometry none() {
        return GEOMETRY.createPolygon();
    }

    public static Geometry union(Geometry a, Geometry b) {
        return overlay(a, b, OverlayNG.UNION);
    }

    public static Geometry common(Geometry a, Geometry b) {
        return overlay(a, b, OverlayNG.INTERSECTION);
    }

    /** {@code a} without {@code b}. */
    public static Geometry without(Geometry a, Geometry b) {
        return overlay(a, b, OverlayNG.DIFFERENCE);
    }

    /**
     * An area without hairlines, which sums of pieces that only just touch leave: cracks and slots up to 0.1 mm wide
     * are closed, strips up to 0.1 mm wide and rings that hold nothing are dropped. Nothing is added that is farther
     * than 0.1 mm from the area: that much may come out too large, within a crack; everywhere else the edge stays to
     * 0.01 mm or, at a spike, goes back. The answer is valid; empty stays empty.
     */
    public static Geometry sealed(Geometry area) {
        Geometry closed = offset(offset(area, HAIR_M), -HAIR_M);
        Geometry open = offset(offset(closed, -HAIR_M), HAIR_M);
        List<Polygon> kept = new ArrayList<>();
        for (Polygon p : polygons(OverlayNG.overlay(open, none(), OverlayNG.UNION, GRID))) {
            List<LinearRing> holes = new ArrayList<>();
            for (int i = 0; i < p.getNumInteriorRing(); i++) {
                if (holds(p.getInteriorRingN(i))) {
                    holes.add(p.getInteriorRingN(i));
                }
            }
            if (holds(p.getExteriorRing())) {
                kept.add(GEOMETRY.createPolygon(p.getExteriorRing(), holes.toArray(new LinearRing[0])));
            }
        }
        return gathered(kept);
    }

    private static boolean holds(LinearRing ring) {
        return GEOMETRY.createPolygon(ring).getArea() > HAIR_M * ring.getLength();
    }

    private static Geometry offset(Geometry area, double m) {
        return BufferOp.bufferOp(area, m, SHARP);
    }

    private static Geometry overlay(Geometry a, Geometry b, int operation) {
        // Where areas only touch, the line they touch in is no part of the answer.
        return gathered(polygons(OverlayNG.overlay(a, b, operation, GRID)));
    }

    private static List<Polygon> polygons(Geometry geometry) {
        List<Polygon> areas = new ArrayList<>();
        PolygonExtracter.getPolygons(geometry, areas);
        areas.removeIf(Geometry::isEmpty);
        return areas;
    }

    private static Geometry gathered(List<Polygon> areas) {
        return areas.size() == 1
                ? areas.get(0)
                : areas.isEmpty() ? none() : GEOMETRY.createMultiPolygon(areas.toArray(new Polygon[0]));
    }
}
