package org.cresthaul.geometry;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.geom.util.PolygonExtracter;
import org.locationtech.jts.operation.overlayng.OverlayNG;

/** Sums and differences of plane areas in metres, on a grid of 0.01 mm, which keeps every result valid. */
public final class Areas {
    private static final PrecisionModel GRID = new PrecisionModel(100_000);
    private static final GeometryFactory GEOMETRY = new GeometryFactory();

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

    private static Geometry overlay(Geometry a, Geometry b, int operation) {
        // Where areas only touch, the line they touch in is no part of the answer.
        List<Polygon> areas = new ArrayList<>();
        PolygonExtracter.getPolygons(OverlayNG.overlay(a, b, operation, GRID), areas);
        return areas.size() == 1
                ? areas.get(0)
                : areas.isEmpty() ? none() : GEOMETRY.createMultiPolygon(areas.toArray(new Polygon[0]));
    }
}
