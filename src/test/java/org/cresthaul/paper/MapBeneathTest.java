package org.cresthaul.paper;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.cresthaul.exchange.CreditedMap;
import org.cresthaul.exchange.osm.BaseMap;
import org.cresthaul.exchange.osm.BaseMap.Layer;
import org.cresthaul.exchange.osm.BaseMap.Shape;
import org.cresthaul.language.Catalog;
import org.cresthaul.paper.Drawing.Path;
import org.cresthaul.paper.Drawing.Point;
import org.cresthaul.route.LonLat;
import org.junit.jupiter.api.Test;

/** A base map in a frame of 100 by 50, of which a unit is 0.01 degrees; expected places by hand. */
class MapBeneathTest {
    private static LonLat at(double x, double y) {
        return new LonLat(x / 100, -y / 100);
    }

    private static Shape line(Layer layer, LonLat... points) {
        return new Shape(layer, false, "", List.of(points));
    }

    private static MapBeneath beneath(double unitM, Shape... shapes) {
        return new MapBeneath(
                new CreditedMap(new BaseMap(List.of(shapes), true), "invented"),
                p -> new Point(p.lonDeg() * 100, -p.latDeg() * 100),
                unitM,
                100,
                50);
    }

    private static List<Path> drawn(MapBeneath map) {
        return map.shapes().stream().map(Path.class::cast).toList();
    }

    @Test
    void cutsALineWhereItLeavesTheFrameAndTakesItUpWhereItComesBack() {
        List<Path> drawn =
                drawn(beneath(1, line(Layer.MAJOR_ROAD, at(-20, 10), at(40, 10), at(40, 90), at(60, 90), at(60, 30))));

        assertEquals(1, drawn.size());
        assertEquals(
                List.of(
                        List.of(new Point(0, 10), new Point(40, 10), new Point(40, 50)),
                        List.of(new Point(60, 50), new Point(60, 30))),
                drawn.get(0).lines());
    }

    @Test
    void cutsAnAreaAtTheFrameAndKeepsItsHoles() {
        List<LonLat> wood = List.of(at(-50, -50), at(50, -50), at(50, 25), at(-50, 25), at(-50, -50));
        List<LonLat> glade = List.of(at(10, 10), at(20, 10), at(20, 20), at(10, 20), at(10, 10));
        Path drawn = drawn(beneath(1, new Shape(Layer.WOODS, true, "", wood, List.of(glade))))
                .get(0);

        assertEquals(Ink.WOODS, drawn.fill());
        assertEquals(2, drawn.lines().size());
        assertEquals(50 * 25, area(drawn.lines().get(0)), 1e-9);
        assertEquals(10 * 10, area(drawn.lines().get(1)), 1e-9);
        drawn.lines().get(0).forEach(p -> assertTrue(p.x() >= 0 && p.y() >= 0, p.toString()));
    }

    private static double area(List<Point> ring) {
        double twice = 0;
        for (int i = 1; i < ring.size(); i++) {
            twice += ring.get(i - 1).x() * ring.get(i).y()
                    - ring.get(i).x() * ring.get(i - 1).y();
        }
        return Math.abs(twice) / 2;
    }

    @Test
    void drawsNothingOfAMapOfElsewhereAndSaysSo() {
        MapBeneath map = beneath(
                1,
                line(Layer.WATER, at(200, 10), at(240, 10)),
                new Shape(Layer.WATER, true, "", List.of(at(-50, -50), at(-10, -50), at(-10, -10), at(-50, -50))),
                new Shape(Layer.PLACE, false, "Farther", List.of(at(101, 10))));

        assertEquals(List.of(), map.shapes());
        assertEquals(List.of(), map.settlements());
        CreditedMap credited = new CreditedMap(new BaseMap(List.of(), false), "J. Doe");
        assertEquals(
                "Leg. The base map that was given shows nothing here.",
                MapBeneath.credited("Leg.", credited, false, Catalog.ENGLISH));
        assertEquals(
                "Leg. Base map: J. Doe. Some of it is left out: the map had too much.",
                MapBeneath.credited("Leg.", credited, true, Catalog.ENGLISH));
    }

    @Test
    void drawsFromTheLowestLayerUpAndARailwayTwice() {
        LonLat[] across = {at(10, 10), at(90, 40)};
        List<Path> drawn = drawn(beneath(
                1,
                line(Layer.RAILWAY, across),
                line(Layer.MAJOR_ROAD, across),
                line(Layer.MINOR_ROAD, across),
                line(Layer.WATER, across)));

        assertEquals(
                List.of(Ink.WATER, Ink.ROAD, Ink.ROAD, Ink.RAIL, Ink.PAPER),
                drawn.stream().map(Path::stroke).toList());
        assertTrue(drawn.get(1).strokeWidth() < drawn.get(2).strokeWidth(), "a major road is wider");
        assertTrue(drawn.get(4).dashed()
                && drawn.get(4).strokeWidth() < drawn.get(3).strokeWidth());
    }

    /** Where the scale is coarse, the least roads are left out and all else stays. */
    @Test
    void leavesTheLeastRoadsOutWhereTheyWouldLieOnOneAnother() {
        LonLat[] across = {at(10, 10), at(90, 40)};
        assertEquals(
                2,
                drawn(beneath(40, line(Layer.MINOR_ROAD, across), line(Layer.MIDDLE_ROAD, across)))
                        .size());
        assertEquals(
                1,
                drawn(beneath(41, line(Layer.MINOR_ROAD, across), line(Layer.MIDDLE_ROAD, across)))
                        .size());
    }

    /** No vertex of a winding line is farther than 0.3 points at 0.55 points a unit from what is drawn of it. */
    @Test
    void thinsALineByLessThanIsSeen() {
        SplittableRandom random = new SplittableRandom(7);
        List<LonLat> winding = new ArrayList<>();
        for (int i = 0; i <= 5000; i++) {
            winding.add(at(5 + i * 0.018, 25 + 15 * Math.sin(i / 300.0) + random.nextDouble(-0.2, 0.2)));
        }
        List<Point> drawn = drawn(beneath(1, new Shape(Layer.WATER, false, "", winding)))
                .get(0)
                .lines()
                .get(0);

        double worst = 0;
        for (LonLat p : winding) {
            double nearest = Double.POSITIVE_INFINITY;
            for (int i = 1; i < drawn.size(); i++) {
                nearest = Math.min(nearest, distance(new Point(p.lonDeg() * 100, -p.latDeg() * 100), drawn, i));
            }
            worst = Math.max(worst, nearest);
        }
        // Rounded to 0.1, so that half its diagonal comes on top.
        assertTrue(worst * 0.55 <= 0.3 + 0.55 * 0.0708, worst + " units");
        assertTrue(drawn.size() < 200, drawn.size() + " points of 5001");
    }

    private static double distance(Point p, List<Point> line, int end) {
        Point a = line.get(end - 1);
        Point b = line.get(end);
        double dx = b.x() - a.x();
        double dy = b.y() - a.y();
        double along = ((p.x() - a.x()) * dx + (p.y() - a.y()) * dy) / (dx * dx + dy * dy);
        double t = Math.max(0, Math.min(1, along));
        return Math.hypot(p.x() - a.x() - t * dx, p.y() - a.y() - t * dy);
    }
}
