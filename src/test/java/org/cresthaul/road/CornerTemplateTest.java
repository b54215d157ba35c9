package org.cresthaul.road;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.cresthaul.road.CornerTemplate.CurbReturn;
import org.cresthaul.road.CornerTemplate.Median;
import org.cresthaul.road.CornerTemplate.PlanPoint;
import org.cresthaul.road.CornerTemplate.RoadWidths;
import org.cresthaul.road.CornerTemplate.Roundabout;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;

/** The areas of templates: closed, true to their measures, and driven the right way. */
class CornerTemplateTest {
    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    private static CornerTemplate junction(double degrees, RoadWidths in, RoadWidths out, double radiusM) {
        return new CornerTemplate(
                Math.toRadians(degrees),
                in,
                out,
                CurbReturn.single(radiusM),
                0,
                Optional.empty(),
                List.of(),
                List.of());
    }

    private static CornerTemplate random(Random random) {
        RoadWidths in = new RoadWidths(
                3 + 5 * random.nextDouble(), random.nextInt(3) * 2.1, random.nextInt(3) * 0.7, random.nextBoolean());
        RoadWidths out = new RoadWidths(
                3 + 5 * random.nextDouble(), random.nextInt(3) * 2.1, random.nextInt(3) * 0.7, random.nextBoolean());
        boolean round = random.nextInt(4) == 0;
        double degrees = (random.nextBoolean() ? 1 : -1) * (20 + 130 * random.nextDouble());
        double radius = 2 + 30 * random.nextDouble();
        return new CornerTemplate(
                Math.toRadians(degrees),
                in,
                out,
                CurbReturn.single(radius),
                random.nextInt(2) * 1.3,
                round ? Optional.of(new Roundabout(18 + 12 * random.nextDouble(), 7, radius)) : Optional.empty(),
                List.of(),
                List.of());
    }

    /**
     * Every edge of an area has the area on one side and none on the other, a fifth of a millimeter off it and farther:
     * nowhere a crack or a sliver. Judged by points, not by the operations that make the areas.
     */
    static int cracks(Geometry area) {
        IndexedPointInAreaLocator locator = new IndexedPointInAreaLocator(area);
        int cracks = 0;
        for (int g = 0; g < area.getNumGeometries(); g++) {
            Geometry rings = area.getGeometryN(g).getBoundary();
            for (int r = 0; r < rings.getNumGeometries(); r++) {
                Coordinate[] ring = rings.getGeometryN(r).getCoordinates();
                for (int i = 1; i < ring.length; i++) {
                    double length = ring[i].distance(ring[i - 1]);
                    if (length < 0.01) {
                        continue;
                    }
                    double nx = -(ring[i].y - ring[i - 1].y) / length;
                    double ny = (ring[i].x - ring[i - 1].x) / length;
                    for (double t : new double[] {0.3, 0.5, 0.8}) {
                        double x = ring[i - 1].x + t * (ring[i].x - ring[i - 1].x);
                        double y = ring[i - 1].y + t * (ring[i].y - ring[i - 1].y);
                        int left = locator.locate(new Coordinate(x + 0.0002 * nx, y + 0.0002 * ny));
                        int right = locator.locate(new Coordinate(x - 0.0002 * nx, y - 0.0002 * ny));
                        cracks += left == right || left == Location.BOUNDARY || right == Location.BOUNDARY ? 1 : 0;
                    }
                }
            }
        }
        return cracks;
    }

    @Test
    void noAreaHasCracks() {
        Random random = new Random(10);
        int edges = 0;
        for (int i = 0; i < 150; i++) {
            CornerTemplate template = random(random);
            Corner corner = template.corner();
            assertEquals(0, cracks(corner.pavement()), template.toString());
            assertEquals(0, cracks(corner.opposing()), template.toString());
            assertEquals(0, corner.escorted().map(CornerTemplateTest::cracks).orElse(0), template.toString());
            assertTrue(corner.pavement().isValid() && corner.pavement() instanceof Polygon, template.toString());
            edges += corner.pavement().getNumPoints();
        }
        assertTrue(edges > 3000, "edges were looked at: " + edges);
    }

    /** A right turn of 90° with a curb of 10 m, lanes of 4 m and one of 1.2 m: the place of every edge by hand. */
    @Test
    void theEdgesLieWhereTheMeasuresSay() {
        for (double turn : new double[] {-90, 90}) {
            Corner c = junction(turn, new RoadWidths(4, 3, 1.2, true), new RoadWidths(4, 3, 0, true), 10)
                    .corner();
            int hand = turn > 0 ? 1 : -1;
            // On the approach, 100 m back: own lanes and shoulder lie to the right, the opposing lanes to the left.
            assertEquals(-5.2, edge(c.pavement(), -100, -4, 0, -1), 1e-4);
            assertEquals(0, edge(c.pavement(), -100, -4, 0, 1), 1e-4);
            assertEquals(3, edge(c.escorted().orElseThrow(), -100, -4, 0, 1), 1e-4);
            assertEquals(3, edge(c.opposing(), -100, 1, 0, 1), 1e-4);
            // On the exit, 100 m on: own lanes to the right of the way out.
            double own = hand * 2;
            assertEquals(hand * 4, edge(c.pavement(), own, hand * 100, hand, 0), 1e-4);
            assertEquals(0, edge(c.pavement(), own, hand * 100, -hand, 0), 1e-4);
        }
    }

    /**
     * Roads keep their width up to a roundabout, and its curb returns are arcs that touch edge and circle: their place
     * by hand. The outermost point of a return of radius r around (a, e + r), a² + (e + r)² = (R + r)².
     */
    @Test
    void aRoundaboutsEdgesLieWhereTheMeasuresSay() {
        RoadWidths road = new RoadWidths(4, 4, 0.3, false);
        Corner c = new CornerTemplate(
                        Math.PI / 2,
                        road,
                        road,
                        new Roundabout(23, 9, 18, OptionalDouble.empty()),
                        0,
                        List.of(),
                        List.of(),
                        OptionalDouble.empty())
                .corner();
        assertEquals(-4.3, edge(c.pavement(), -60, -2, 0, -1), 1e-4);
        assertEquals(4.3, edge(c.pavement(), 2, 60, 1, 0), 1e-4);
        double ahead = Math.sqrt(41 * 41 - 22.3 * 22.3);
        // Half way along the return of the exit's right edge, drawn by its tangents: up to r (1/cos 1° - 1) inside.
        double aside = Math.PI + 0.5 * (Math.atan2(22.3, ahead) + Math.PI / 2);
        double x = 22.3 + 18 * Math.sin(aside);
        double y = ahead + 18 * Math.cos(aside);
        double free = edge(c.pavement(), 1, y, 1, 0);
        assertTrue(free <= x + 1e-4 && free > x - 0.01, free + " of " + x);
        assertEquals(-23, edge(c.pavement(), 0, -15, 0, -1), 0.004);
    }

    /** How far x or y is where a ray from a place inside an area leaves it. */
    static double edge(Geometry area, double x, double y, double dx, double dy) {
        Geometry ray = GEOMETRY.createLineString(
                new Coordinate[] {new Coordinate(x, y), new Coordinate(x + 60 * dx, y + 60 * dy)});
        Coordinate[] inside = ray.intersection(area).getGeometryN(0).getCoordinates();
        Coordinate last = inside[inside.length - 1];
        return dx != 0 ? last.x : last.y;
    }

    @Test
    void roadsGoOnFor450Meters() {
        Random random = new Random(3);
        for (int i = 0; i < 40; i++) {
            CornerTemplate t = random(random);
            Corner c = t.corner();
            for (Corner.RoadEnd end : List.of(c.approach(), c.exit())) {
                double sign = end == c.approach() ? -1 : 1;
                double aside = (end.leftM() - end.rightM()) / 2;
                Coordinate far = new Coordinate(
                        end.xM() + sign * 449.9 * Math.cos(end.headingRad()) - aside * Math.sin(end.headingRad()),
                        end.yM() + sign * 449.9 * Math.sin(end.headingRad()) + aside * Math.cos(end.headingRad()));
                assertTrue(c.pavement().contains(GEOMETRY.createPoint(far)), t + " at " + far);
            }
        }
    }

    /** The guide stays on the pavement (or, turning across, in the junction), and turns as the corner does. */
    @Test
    void theGuideIsDrivableAndTurnsAsTheCornerDoes() {
        Random random = new Random(4);
        for (int i = 0; i < 60; i++) {
            CornerTemplate t = random(random);
            Corner c = t.corner();
            LineString guide = c.guide().orElseThrow();
            double outside =
                    guide.getLength() - guide.intersection(c.pavement()).getLength();
            assertTrue(outside < 0.02 * guide.getLength(), t + " off the pavement by " + outside);
            assertEquals(t.turnRad(), turned(guide), 1e-6, t.toString());
        }
    }

    static double turned(LineString line) {
        Coordinate[] at = line.getCoordinates();
        double turned = 0;
        for (int i = 2; i < at.length; i++) {
            double before = Math.atan2(at[i - 1].y - at[i - 2].y, at[i - 1].x - at[i - 2].x);
            double after = Math.atan2(at[i].y - at[i - 1].y, at[i].x - at[i - 1].x);
            turned += Math.IEEEremainder(after - before, 2 * Math.PI);
        }
        return turned;
    }

    @Test
    void theGuidePassesAMiddleIslandCounterclockwise() {
        for (double degrees : new double[] {-140, -90, 0, 90, 150}) {
            RoadWidths road = new RoadWidths(5, 5, 0, false);
            Corner c = new CornerTemplate(
                            Math.toRadians(degrees),
                            road,
                            road,
                            CurbReturn.single(0),
                            2,
                            Optional.of(new Roundabout(25, 12, 15)),
                            List.of(),
                            List.of())
                    .corner();
            double round = 0;
            Coordinate[] at = c.guide().orElseThrow().getCoordinates();
            for (int i = 1; i < at.length; i++) {
                round += Math.IEEEremainder(
                        Math.atan2(at[i].y, at[i].x) - Math.atan2(at[i - 1].y, at[i - 1].x), 2 * Math.PI);
            }
            // From far back in the west (a half turn) to far out on the exit, to the left of the middle all the way.
            assertEquals(Math.PI + Math.toRadians(degrees), round, 0.02, "degrees " + degrees);
            assertTrue(
                    c.guide().orElseThrow().disjoint(c.ground().islands().get(0).area()));
        }
    }

    /** A splitter on the center line and the island of a turning lane: both are passed with the island on the left. */
    @Test
    void theGuidePassesIslandsOnTheirRight() {
        RoadWidths road = new RoadWidths(6, 6, 0, true);
        Median splitter = new Median(
                List.of(
                        new PlanPoint(-30, 1),
                        new PlanPoint(-30, -3.5),
                        new PlanPoint(-12, -3.5),
                        new PlanPoint(-12, 1)),
                OptionalDouble.of(0.15));
        Corner c = new CornerTemplate(
                        -Math.PI / 2,
                        road,
                        road,
                        CurbReturn.single(15),
                        0,
                        List.of(splitter),
                        List.of(),
                        OptionalDouble.of(0.12))
                .corner();
        LineString guide = c.guide().orElseThrow();
        assertTrue(guide.disjoint(c.ground().islands().get(0).area()));
        double below = guide.intersection(
                        GEOMETRY.createLineString(new Coordinate[] {new Coordinate(-20, -9), new Coordinate(-20, 9)}))
                .getCoordinate()
                .y;
        assertTrue(below < -3.5 && below > -6, "passes below the island, on its own side: " + below);
    }

    @Test
    void heightsReachTheCornerAndWhatIsNotSaidIsUnknown() {
        RoadWidths road = new RoadWidths(6, 6, 0, true);
        Median island = new Median(
                List.of(new PlanPoint(-30, 1), new PlanPoint(-30, -1), new PlanPoint(-12, -1)),
                OptionalDouble.of(0.15));
        Corner c = new CornerTemplate(
                        -Math.PI / 2,
                        road,
                        road,
                        CurbReturn.single(15),
                        0,
                        List.of(island),
                        List.of(),
                        OptionalDouble.of(0))
                .corner();
        assertEquals(OptionalDouble.of(0), c.ground().edgeHeightM());
        assertEquals(OptionalDouble.of(0.15), c.ground().islands().get(0).heightM());
        assertEquals(
                0, c.pavement().intersection(c.ground().islands().get(0).area()).getArea(), 1e-3);
        Corner unknown = junction(90, road, road, 15).corner();
        assertTrue(unknown.ground().edgeHeightM().isEmpty()
                && unknown.ground().islands().isEmpty());
    }

    /** A mountable apron is pavement: the middle island begins inside it. */
    @Test
    void anApronIsPavement() {
        RoadWidths road = new RoadWidths(5, 5, 0, false);
        Corner c = new CornerTemplate(
                        0,
                        road,
                        road,
                        new Roundabout(25, 12, 15, OptionalDouble.of(0.3)),
                        3,
                        List.of(),
                        List.of(),
                        OptionalDouble.empty())
                .corner();
        assertTrue(c.pavement().contains(GEOMETRY.createPoint(new Coordinate(0, 9.05))));
        assertTrue(c.ground().islands().get(0).area().contains(GEOMETRY.createPoint(new Coordinate(0, 8.95))));
        assertEquals(OptionalDouble.of(0.3), c.ground().islands().get(0).heightM());
    }

    private static CornerTemplate onLeft(double degrees, CornerTemplate.Layout layout) {
        RoadWidths road = new RoadWidths(4, 3, 1.2, true);
        return new CornerTemplate(
                Math.toRadians(degrees),
                road,
                road,
                layout,
                0,
                List.of(new Median(
                        List.of(new PlanPoint(-40, 0.2), new PlanPoint(-20, 0.2), new PlanPoint(-20, -0.2)),
                        OptionalDouble.of(0.1))),
                List.of(new CornerTemplate.Obstacle(List.of(new PlanPoint(-30, 9)), 0.2)),
                OptionalDouble.of(0.12),
                true);
    }

    /** Own lanes lie left of the center line, opposing ones right; places of the file stay where they are. */
    @Test
    void whereOneDrivesOnTheLeftLanesLieOnTheOtherSide() {
        for (double turn : new double[] {-90, 90}) {
            Corner c = onLeft(turn, CurbReturn.single(10)).corner();
            int hand = turn > 0 ? 1 : -1;
            assertTrue(c.onLeft() && c.turnRad() * turn > 0);
            assertEquals(5.2, edge(c.pavement(), -100, 4, 0, 1), 1e-4);
            assertEquals(0, edge(c.pavement(), -100, 4, 0, -1), 1e-4);
            assertEquals(-3, edge(c.escorted().orElseThrow(), -100, 4, 0, -1), 1e-4);
            assertEquals(-3, edge(c.opposing(), -100, -1, 0, -1), 1e-4);
            assertEquals(-hand * 5.2, edge(c.pavement(), -hand * 2, hand * 100, -hand, 0), 1e-4);
            assertEquals(5.2, c.approach().leftM(), 1e-9);
            assertEquals(0, c.approach().rightM(), 1e-9);
            assertEquals(3, c.exit().escortedRightM(), 1e-9);
            assertTrue(c.obstacles().contains(GEOMETRY.createPoint(new Coordinate(-30, 9))));
            assertTrue(c.ground().islands().get(0).area().contains(GEOMETRY.createPoint(new Coordinate(-22, 0.1))));
            assertEquals(c.turnRad(), turned(c.guide().orElseThrow()), 1e-6);
            assertEquals(2, c.guide().orElseThrow().getCoordinates()[0].y, 1e-9);
        }
    }

    /** Round a roundabout clockwise, up to a whole turn back. */
    @Test
    void whereOneDrivesOnTheLeftRoundaboutsGoClockwise() {
        for (double degrees : new double[] {-180, -90, 0, 90}) {
            Corner c = onLeft(degrees, new Roundabout(25, 12, 15)).corner();
            double round = 0;
            Coordinate[] at = c.guide().orElseThrow().getCoordinates();
            for (int i = 1; i < at.length; i++) {
                round += Math.IEEEremainder(
                        Math.atan2(at[i].y, at[i].x) - Math.atan2(at[i - 1].y, at[i - 1].x), 2 * Math.PI);
            }
            assertEquals(-Math.PI + Math.toRadians(degrees), round, 0.02, "degrees " + degrees);
        }
    }
}
