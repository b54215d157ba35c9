package org.cresthaul.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;

/** Hairlines are closed, everything wider stays as it is. Areas of rectangles are worked out by hand. */
class AreasTest {
    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    /** From x, y to x, y, turned by 0.3 rad so that no edge falls on the grid. */
    private static Polygon box(double x0, double y0, double x1, double y1) {
        double[][] at = {{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}, {x0, y0}};
        Coordinate[] ring = new Coordinate[5];
        for (int i = 0; i < 5; i++) {
            ring[i] = new Coordinate(
                    at[i][0] * Math.cos(0.3) - at[i][1] * Math.sin(0.3),
                    at[i][0] * Math.sin(0.3) + at[i][1] * Math.cos(0.3));
        }
        ring[4] = ring[0].copy();
        return GEOMETRY.createPolygon(ring);
    }

    private static Geometry withSlot(double widthM) {
        return Areas.union(box(0, 0, 10, 4), Areas.union(box(0, 4 + widthM, 10, 8), box(-1, 0, 0, 8)));
    }

    @Test
    void aSlotOfATwentiethOfAMillimeterIsClosed() {
        Geometry sealed = Areas.sealed(withSlot(0.00005));
        assertEquals(88, sealed.getArea(), 0.001);
        assertEquals(38, sealed.getBoundary().getLength(), 0.001);
        assertTrue(sealed.isValid());
    }

    @Test
    void aSlotOfHalfAMillimeterstays() {
        Geometry sealed = Areas.sealed(withSlot(0.0005));
        assertEquals(88 - 10 * 0.0005, sealed.getArea(), 0.0002);
        assertEquals(58, sealed.getBoundary().getLength(), 0.001);
    }

    @Test
    void edgesAndCornersStayWhereTheyAre() {
        Geometry area = Areas.without(box(-3, -2, 40, 25), box(5, 5, 9, 30));
        Geometry sealed = Areas.sealed(area);
        assertTrue(area.buffer(0.00003).covers(sealed), "nothing is added");
        assertTrue(sealed.buffer(0.00003).covers(area), "nothing is lost");
        assertEquals(area.getNumPoints(), sealed.getNumPoints());
    }

    @Test
    void stripsAndRingsThatHoldNothingAreDropped() {
        Geometry strip = Areas.union(box(0, 0, 10, 4), box(10, 1, 30, 1.00008));
        assertEquals(40, Areas.sealed(strip).getArea(), 0.0005);
        assertTrue(Areas.sealed(strip).getEnvelopeInternal().getMaxX() < 10);
        Geometry pierced = Areas.without(box(0, 0, 10, 4), box(3, 2, 4, 2.00008));
        assertEquals(1, pierced.getBoundary().getNumGeometries() - 1, "a hole to begin with");
        assertEquals(1, Areas.sealed(pierced).getBoundary().getNumGeometries());
        assertTrue(Areas.sealed(Areas.none()).isEmpty());
    }
}
