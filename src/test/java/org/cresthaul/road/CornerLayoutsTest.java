package org.cresthaul.road;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.cresthaul.road.CornerTemplate.CurbReturn;
import org.cresthaul.road.CornerTemplate.Layout;
import org.cresthaul.road.CornerTemplate.RoadWidths;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * U-turns, bends, forks, offset crossroads and gates: places of edges and areas by hand, and what holds of all of them.
 */
class CornerLayoutsTest {
    private static final GeometryFactory GEOMETRY = new GeometryFactory();
    private static final RoadWidths ONE_WAY = new RoadWidths(7, 0, 1, true);
    private static final RoadWidths TWO_WAY = new RoadWidths(4, 3.5, 0.5, true);

    private static Corner corner(double degrees, RoadWidths in, RoadWidths out, Layout layout) {
        return template(degrees, in, out, layout, 0, false).corner();
    }

    private static CornerTemplate template(
            double degrees, RoadWidths in, RoadWidths out, Layout layout, double apronM, boolean onLeft) {
        return new CornerTemplate(
                Math.toRadians(degrees),
                in,
                out,
                layout,
                apronM,
                List.of(),
                List.of(),
                OptionalDouble.of(0.15),
                onLeft);
    }

    private static Point at(double x, double y) {
        return GEOMETRY.createPoint(new Coordinate(x, y));
    }

    private static double edge(Geometry area, double x, double y, double dx, double dy) {
        return CornerTemplateTest.edge(area, x, y, dx, dy);
    }

    /**
     * Lanes of 7 m and a shoulder of 1 m on either side of a median of 10 m, an opening of 24 m, noses rounded by 4 m.
     */
    @Test
    void aUTurnsEdgesLieWhereTheMeasuresSay() {
        Corner c = corner(180, ONE_WAY, ONE_WAY, new UTurn(10, 24, 4, 3, 30));
        Geometry p = c.pavement();
        assertEquals(-8, edge(p, -200, -2, 0, -1), 1e-4);
        assertEquals(0, edge(p, -200, -2, 0, 1), 1e-4);
        // Through the opening, from edge to edge and into the loon.
        assertEquals(10 + 8 + 3, edge(p, 0, -2, 0, 1), 1e-4);
        assertEquals(12, edge(p, 0, 5, 1, 0), 1e-4);
        assertEquals(-12, edge(p, 0, 5, -1, 0), 1e-4);
        // Half way round a nose's corner: its center is 4 m in from both edges.
        double diagonal = 12 + 4 - 4 * Math.cos(Math.PI / 4);
        double found = edge(p, 0, 4 - 4 * Math.sin(Math.PI / 4), 1, 0);
        assertTrue(found <= diagonal + 1e-4 && found > diagonal - 4e-3, found + " of " + diagonal);
        // The other roadway upstream of the opening belongs to its traffic.
        assertEquals(12, edge(p, 0, 12, 1, 0), 0.02);
        assertTrue(
                c.opposing().contains(at(60, 14)) && c.escorted().orElseThrow().contains(at(60, 14)));
        assertTrue(p.contains(at(-300, 14)) && p.contains(at(-14.9, 20.9)) && !p.contains(at(-15.1, 20.9)));
        assertEquals(Math.PI, c.turnRad(), 0);
        assertEquals(10, c.exit().yM(), 1e-9);
        assertEquals(8, c.exit().rightM(), 1e-9);
    }

    /** Within 100 m of the middle: two roadways cut off beside the opening, the opening, its four rounded corners. */
    @Test
    void aUTurnsAreaIsThatOfItsParts() {
        Corner c = corner(180, ONE_WAY, ONE_WAY, new UTurn(10, 24, 4, 0, 0));
        Geometry near = c.pavement().intersection(PlanShapes.rectangle(0, -100, 100, -50, 50));
        double parts = 200 * 8 + 112 * 8 + 24 * 10 + 4 * (16 - Math.PI * 4);
        assertEquals(parts, near.getArea(), 0.02);
    }

    /** A road of 4.5 m and 3.5 m round 180 degrees on an inner edge of 15 m, in the bend 10 m wide. */
    @Test
    void aBendsEdgesLieWhereTheMeasuresSay() {
        Corner c = corner(180, TWO_WAY, TWO_WAY, new Bend(15, 10));
        Geometry all = c.escorted().orElseThrow();
        // A left bend: the opposing lane is inside. The arc's middle is 15 m beyond the approach's left edge.
        double middle = 3.5 + 15;
        assertEquals(15 + 10, edge(all, 16, middle, 1, 0), 15e-4 + 25 / 6000.0);
        assertEquals(15, edge(all, 16, middle, -1, 0), 3e-3);
        assertEquals(15 + 3.5, edge(c.pavement(), 20, middle, -1, 0), 4e-3);
        assertEquals(2 * middle, c.exit().yM(), 1e-9);
        assertEquals(0, c.exit().xM(), 1e-9);
        assertEquals(2 * middle + 4.5, edge(c.pavement(), -100, 2 * middle + 2, 0, 1), 1e-4);
        assertEquals(2 * middle - 3.5, edge(all, -100, 2 * middle + 2, 0, -1), 1e-4);
        // The arc between its edges, by Pappus; edges drawn inside it by up to 1/6000.
        Geometry arc = all.intersection(PlanShapes.rectangle(0, 0.01, 100, -50, 100));
        assertEquals(Math.PI / 2 * (25 * 25 - 15 * 15) - 0.2, arc.getArea(), 0.5);
        // A right bend has its own lane inside.
        Corner right = corner(-90, TWO_WAY, TWO_WAY, new Bend(15, 10));
        assertEquals(15 + 4.5, right.exit().xM(), 1e-9);
        assertEquals(-15 - 4.5, right.exit().yM(), 1e-9);
    }

    /** A one-way road of 8 m that forks at 30 degrees into two: the nose is where the inner edges meet. */
    @Test
    void aForksNoseLiesWhereTheEdgesMeet() {
        RoadWidths road = new RoadWidths(8, 0, 0, true);
        // The exit bears right by 30 degrees; straight on leads the third road.
        Corner c = corner(-30, road, road, new Fork(road, 0, CurbReturn.single(20), 0));
        Geometry all = c.escorted().orElseThrow();
        // The exit's left edge runs through the point; the third road's right edge at y = -8 meets it at x = 8 / tan
        // 30.
        double tip = 8 / Math.tan(Math.toRadians(30));
        assertTrue(all.contains(at(tip - 0.05, -8)) && !all.contains(at(tip + 0.2, -8.03)));
        assertTrue(all.contains(at(300, -7.9)) && !c.pavement().contains(at(300, -7.9)));
        assertTrue(c.opposing().contains(at(300, -4)));
        // With a nose of 1 m the pavement reaches on to the arc: its center is 1 m from both edges.
        Geometry round = corner(-30, road, road, new Fork(road, 0, CurbReturn.single(20), 1))
                .escorted()
                .orElseThrow();
        double ahead = 1 / Math.sin(Math.toRadians(15)) - 1;
        double bisector = Math.toRadians(-15);
        assertTrue(round.contains(
                at(tip + (ahead - 0.01) * Math.cos(bisector), -8 + (ahead - 0.01) * Math.sin(bisector))));
        assertTrue(!round.contains(
                at(tip + (ahead + 0.01) * Math.cos(bisector), -8 + (ahead + 0.01) * Math.sin(bisector))));
    }

    /** From one branch round the nose into the other: 150 degrees to the right. */
    @Test
    void roundTheNoseOfAFork() {
        RoadWidths road = new RoadWidths(4, 4, 0, true);
        Corner c = corner(-150, road, road, new Fork(road, Math.toRadians(15), CurbReturn.single(6), 2));
        // The return touches the right edges of both: as far from their meeting as 6 m times tan 75.
        double cornerX = -4 / Math.tan(Math.toRadians(15));
        assertTrue(c.pavement().contains(at(cornerX - 3, -4.3)), "behind the curb's tip is pavement");
        assertTrue(!c.pavement().contains(at(cornerX - 6 * Math.tan(Math.toRadians(75)) - 0.5, -4.05)));
        assertEquals(Math.toRadians(-150), CornerTemplateTest.turned(c.guide().orElseThrow()), 1e-6);
    }

    /** Right, 40 m along a road of 4 + 3 m, and left: both turns' returns of 12 m. */
    @Test
    void anOffsetCrossroadsEdgesLieWhereTheMeasuresSay() {
        for (int hand = -1; hand <= 1; hand += 2) {
            RoadWidths crossing = new RoadWidths(4, 3, 0, false);
            Corner c = corner(
                    hand * 90,
                    TWO_WAY,
                    TWO_WAY,
                    new OffsetCrossroads(crossing, 40, CurbReturn.single(12), CurbReturn.single(12)));
            Geometry p = c.pavement();
            double y = hand * 20;
            // Driven south the crossing road's own lane lies west of its center line, driven north east of it.
            assertEquals(hand > 0 ? 4 : 0, edge(p, hand * 2, y, 1, 0), 1e-4);
            assertEquals(hand > 0 ? 0 : -4, edge(p, hand * 2, y, -1, 0), 1e-4);
            assertEquals(hand * 40 - 4.5, edge(p, 100, hand * 40 - 2, 0, -1), 1e-4);
            assertEquals(hand * 40, c.exit().yM(), 1e-9);
            assertEquals(0, c.exit().headingRad(), 1e-9);
            assertEquals(0, c.turnRad(), 0);
            assertTrue(c.opposing().contains(at(hand * -1.5, hand * 17)));
            // The crossing road ends with the exit and begins with the approach: neither beyond is the truck's.
            assertTrue(!p.contains(at(hand * 2, hand * 60)) && !p.contains(at(hand * 2, -hand * 30)));
        }
    }

    /** A gate of 9 m on either side of a road of 4.5 + 3.5 m. */
    @Test
    void aGatesEdgesLieWhereTheMeasuresSay() {
        for (int hand = -1; hand <= 1; hand += 2) {
            Corner c = corner(hand * 90, TWO_WAY, TWO_WAY, new Gate(9, 3, 5));
            Geometry p = c.pavement();
            assertEquals(4.5, edge(p, 0, hand * 50, 1, 0), 1e-4);
            assertEquals(-4.5, edge(p, 0, hand * 50, -1, 0), 1e-4);
            assertEquals(-4.5, edge(p, 100, -2, 0, -1), 1e-4);
            assertEquals(0, edge(p, 100, -2, 0, 1), 1e-4);
            assertEquals(3.5, edge(c.escorted().orElseThrow(), 100, -2, 0, 1), 1e-4);
            // The far return's arc half way: its center is 5 m from the gate's side and from the road's edge.
            double roadEdge = hand > 0 ? 3.5 : -4.5;
            double y = roadEdge + hand * 5 * (1 - Math.sin(Math.PI / 4));
            double x = 4.5 + 5 * (1 - Math.cos(Math.PI / 4));
            double found = edge(p, 0, y, 1, 0);
            assertTrue(found <= x + 1e-4 && found > x - 4e-3, found + " of " + x);
            assertTrue(c.backing() && c.turnRad() * hand > 0);
            assertEquals(Math.toRadians(hand * 90), c.turnRad(), 1e-12);
            // Out of the gate and along the road.
            assertEquals(-hand, Math.sin(c.approach().headingRad()), 1e-12);
            assertEquals(0, c.exit().headingRad(), 0);
            assertEquals(4.5, c.approach().leftM(), 0);
        }
    }

    @Test
    void whatCannotBeIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> new UTurn(4, 20, 2.5, 0, 0));
        assertThrows(IllegalArgumentException.class, () -> corner(-180, ONE_WAY, ONE_WAY, new UTurn(4, 20, 2, 0, 0)));
        assertThrows(IllegalArgumentException.class, () -> corner(170, ONE_WAY, ONE_WAY, new UTurn(4, 20, 2, 0, 0)));
        assertThrows(IllegalArgumentException.class, () -> corner(180, TWO_WAY, ONE_WAY, new UTurn(4, 20, 2, 0, 0)));
        assertThrows(
                IllegalArgumentException.class,
                () -> corner(30, TWO_WAY, TWO_WAY, new Fork(TWO_WAY, Math.toRadians(20), CurbReturn.single(5), 1)));
        assertThrows(IllegalArgumentException.class, () -> new Fork(TWO_WAY, Math.PI, CurbReturn.single(5), 1));
    }

    /** Valid, in one piece, without cracks, without rings that hold nothing; roads go on; the guide is drivable. */
    @Test
    void areasAreClosedAndRoadsGoOn() {
        Random random = new Random(8);
        int[] kinds = new int[5];
        for (int i = 0; i < 200; i++) {
            CornerTemplate t = RandomLayouts.of(random, i % 4 == 3);
            Corner c = t.corner();
            kinds[
                    List.of(UTurn.class, Bend.class, Fork.class, OffsetCrossroads.class, Gate.class)
                            .indexOf(t.layout().getClass())]++;
            List<Geometry> areas = c.escorted().isPresent()
                    ? List.of(c.pavement(), c.opposing(), c.escorted().get())
                    : List.of(c.pavement(), c.opposing());
            for (Geometry area : areas) {
                assertTrue(area.isValid(), t.toString());
                assertEquals(0, CornerTemplateTest.cracks(area), t.toString());
                for (int g = 0; g < area.getNumGeometries(); g++) {
                    Polygon polygon = (Polygon) area.getGeometryN(g);
                    for (int h = 0; h < polygon.getNumInteriorRing(); h++) {
                        assertTrue(
                                GEOMETRY.createPolygon(polygon.getInteriorRingN(h))
                                                .getArea()
                                        > 1e-3,
                                t.toString());
                    }
                }
            }
            assertTrue(c.pavement() instanceof Polygon, t.toString());
            // The grid of 0.01 mm along roads of 600 m.
            assertEquals(0, c.pavement().intersection(c.opposing()).getArea(), 0.01, t.toString());
            c.escorted()
                    .ifPresent(e -> assertEquals(0, c.pavement().difference(e).getArea(), 0.02, t.toString()));
            for (Corner.RoadEnd end : List.of(c.approach(), c.exit())) {
                double sign = end == c.approach() ? -1 : 1;
                double aside = (end.leftM() - end.rightM()) / 2;
                assertTrue(
                        c.pavement()
                                .contains(at(
                                        end.xM()
                                                + sign * 449.9 * Math.cos(end.headingRad())
                                                - aside * Math.sin(end.headingRad()),
                                        end.yM()
                                                + sign * 449.9 * Math.sin(end.headingRad())
                                                + aside * Math.cos(end.headingRad()))),
                        t.toString());
            }
            LineString guide = c.guide().orElseThrow();
            assertEquals(c.turnRad(), CornerTemplateTest.turned(guide), 1e-6, t.toString());
            double outside = guide.getLength()
                    - guide.intersection(c.escorted().orElse(c.pavement())).getLength();
            // Turning across, the nominal way cuts over the opposing lanes beside the junction.
            assertTrue(outside < 0.03 * guide.getLength(), t + " off the pavement by " + outside);
        }
        for (int kind : kinds) {
            assertTrue(kind > 20, "every kind is among them");
        }
    }

    /** Where one drives on the left everything is the mirror image of where one drives on the right. */
    @Test
    void onTheLeftAllIsMirrored() {
        AffineTransformation flip = AffineTransformation.scaleInstance(1, -1);
        for (int seed = 0; seed < 60; seed++) {
            CornerTemplate right = RandomLayouts.of(new Random(seed), false);
            CornerTemplate left = new CornerTemplate(
                    -right.turnRad(),
                    right.approach(),
                    right.exit(),
                    right.layout().mirrored(),
                    right.apronM(),
                    List.of(),
                    List.of(),
                    right.curbHeightM(),
                    true);
            Corner a = right.corner();
            Corner b = left.corner();
            assertEquals(
                    0, flip.transform(a.pavement()).symDifference(b.pavement()).getArea(), 0.02, right.toString());
            assertEquals(
                    0, flip.transform(a.opposing()).symDifference(b.opposing()).getArea(), 0.02, right.toString());
            assertEquals(-a.turnRad(), b.turnRad(), 1e-12);
            assertEquals(a.approach().rightM(), b.approach().leftM(), 1e-12);
            assertEquals(a.backing(), b.backing());
            assertTrue(b.onLeft());
        }
    }
}
