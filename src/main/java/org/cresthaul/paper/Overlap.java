package org.cresthaul.paper;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.paper.Drawing.Point;
import org.cresthaul.paper.Drawing.Shape;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.LinearComponentExtracter;
import org.locationtech.jts.geom.util.PolygonExtracter;

/** Where a combination and the road or a structure are drawn into one another: hatched and outlined in red. */
final class Overlap {
    private static final double STEP = 4;
    private static final GeometryFactory SHAPES = new GeometryFactory();

    private Overlap() {}

    /**
     * @param bodies outlines of the combination
     * @param solids outlines of the road and of structures
     */
    static List<Shape> of(List<List<Point>> bodies, List<List<Point>> solids) {
        Geometry common = area(bodies).intersection(area(solids));
        List<Shape> shapes = new ArrayList<>();
        for (Object each : PolygonExtracter.getPolygons(common)) {
            Polygon polygon = (Polygon) each;
            // What only rests on the road shares a line with it, not an area.
            if (polygon.getArea() > 1e-6) {
                shapes.add(new Drawing.Path(hatch(polygon), false, Ink.NONE, Ink.CONTACT, 0.9, false));
                shapes.add(new Drawing.Path(
                        List.of(points(polygon.getExteriorRing())), true, Ink.NONE, Ink.CONTACT, 1.2, false));
            }
        }
        return shapes;
    }

    private static Geometry area(List<List<Point>> outlines) {
        Geometry area = SHAPES.createPolygon();
        for (List<Point> outline : outlines) {
            List<Coordinate> ring = new ArrayList<>();
            outline.forEach(p -> ring.add(new Coordinate(p.x(), p.y())));
            ring.add(ring.get(0));
            area = area.union(
                    SHAPES.createPolygon(ring.toArray(new Coordinate[0])).buffer(0));
        }
        return area;
    }

    /** Strokes up to the right, one at least through the middle of what is smaller than their distance. */
    private static List<List<Point>> hatch(Polygon polygon) {
        Envelope box = polygon.getEnvelopeInternal();
        double from = box.getMinX() + box.getMinY();
        double to = box.getMaxX() + box.getMaxY();
        double step = Math.min(STEP, (to - from) / 2);
        List<List<Point>> strokes = new ArrayList<>();
        for (double sum = from + step / 2; sum < to; sum += step) {
            LineString stroke = SHAPES.createLineString(new Coordinate[] {
                new Coordinate(sum - box.getMaxY(), box.getMaxY()), new Coordinate(sum - box.getMinY(), box.getMinY())
            });
            for (Object line : LinearComponentExtracter.getLines(stroke.intersection(polygon))) {
                strokes.add(points((LineString) line));
            }
        }
        return strokes;
    }

    private static List<Point> points(LineString line) {
        List<Point> points = new ArrayList<>();
        for (Coordinate c : line.getCoordinates()) {
            points.add(new Point(c.x, c.y));
        }
        return points;
    }
}
