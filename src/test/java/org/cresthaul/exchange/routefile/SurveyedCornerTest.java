package org.cresthaul.exchange.routefile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.cresthaul.road.Corner;
import org.cresthaul.route.LonLat;
import org.cresthaul.route.RoadFrame;
import org.cresthaul.route.RouteCorner;
import org.cresthaul.units.InputRejected;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * A surveyed corner, a road 10 m wide that comes from the west and turns north at the origin: measured in meters east
 * and north of the corner's point, written as longitude and latitude. The expected places are those measures.
 */
class SurveyedCornerTest {
    private static final LonLat POINT = new LonLat(-93.1, 44.6);
    private static final RoadFrame EAST = new RoadFrame(POINT, Math.PI / 2);
    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    private static String at(double x, double y) {
        LonLat p = EAST.at(x, -y);
        return String.format(Locale.ROOT, "[%.12f, %.12f]", p.lonDeg(), p.latDeg());
    }

    private static String ring(double... xy) {
        StringBuilder ring = new StringBuilder("[");
        for (int i = 0; i <= xy.length; i += 2) {
            ring.append(i == 0 ? "" : ", ").append(at(xy[i % xy.length], xy[(i + 1) % xy.length]));
        }
        return ring.append("]").toString();
    }

    private static String polygon(String... rings) {
        return "{\"type\": \"Polygon\", \"coordinates\": [" + String.join(", ", rings) + "]}";
    }

    /** Pavement from 60 m before to 60 m beyond; more of the corner's members behind it. */
    private static Corner corner(List<String> holes, String more) throws InputRejected {
        String[] rings = new String[1 + holes.size()];
        rings[0] = ring(-60, -5, 5, -5, 5, 60, -5, 60, -5, 5, -60, 5);
        for (int i = 0; i < holes.size(); i++) {
            rings[i + 1] = holes.get(i);
        }
        String route =
                "{\"type\": \"FeatureCollection\", \"cresthaul\": \"route/1\", \"name\": \"One turn\", \"features\": ["
                        + "{\"type\": \"Feature\", \"properties\": {\"route\": \"Road\"}, \"geometry\": {\"type\": \"LineString\","
                        + " \"coordinates\": [" + at(-400, -2) + ", " + at(2, -2) + ", " + at(2, 400) + "]}},"
                        + "{\"type\": \"Feature\", \"geometry\": {\"type\": \"Point\", \"coordinates\": " + at(2, -2)
                        + "},"
                        + " \"properties\": {\"hazard\": \"corner\", \"id\": \"C1\", \"name\": \"Turn\","
                        + " \"survey\": {\"accuracy\": \"20 mm\", \"source\": \"tape\"}, \"pavement\": "
                        + polygon(rings) + more + "}}]}";
        return ((RouteCorner) RouteFile.parse(route).hazards().get(0)).shape().orElseThrow();
    }

    /** A place of the survey in the corner's frame, whose origin is the corner's point at (2, -2). */
    private static Coordinate local(double x, double y) {
        return new Coordinate(x - 2, y + 2);
    }

    private static boolean holds(Geometry area, double x, double y) {
        return area.contains(GEOMETRY.createPoint(local(x, y)));
    }

    @Test
    void theRoadGoesOn450MetersAtTheWidthOfItsEdgeAndNoWider() throws Exception {
        Corner c = corner(List.of(), "");
        for (double far : new double[] {70, 300, 509.9}) {
            // The frame lies along the route line 35 to 75 m before the point, which turns with the earth: 0.03 mrad.
            assertTrue(holds(c.pavement(), -far, -4.97) && holds(c.pavement(), -far, 4.97), "back " + far);
            assertTrue(holds(c.pavement(), -4.97, far) && holds(c.pavement(), 4.97, far), "on " + far);
            assertTrue(!holds(c.pavement(), -far, -5.03) && !holds(c.pavement(), 5.03, far), "wider at " + far);
        }
        assertEquals(10 * (515 + 505), c.pavement().getArea(), 0.5);
        assertEquals(8, c.pavement().getNumPoints() - 1 - 2, "no seam where survey and straight road meet");
    }

    @Test
    void opposingLanesGoOnAsOpposingLanes() throws Exception {
        Corner c = corner(
                List.of(), ", \"opposing\": [" + polygon(ring(-60, 0, 0, 0, 0, 60, -5, 60, -5, 5, -60, 5)) + "]");
        assertTrue(!holds(c.pavement(), -200, 2) && holds(c.opposing(), -200, 2) && holds(c.pavement(), -200, -2));
        assertTrue(!holds(c.pavement(), -2, 200) && holds(c.opposing(), -2, 200) && holds(c.pavement(), 2, 200));
        assertTrue(
                holds(c.escorted().orElseThrow(), -200, 2) && holds(c.escorted().orElseThrow(), -2, 200));
        assertEquals(2, c.approach().leftM(), 0.02);
        assertEquals(3, c.approach().rightM(), 0.02);
        assertEquals(7, c.approach().escortedLeftM(), 0.02);
        assertEquals(3, c.exit().rightM(), 0.02);
    }

    @Test
    void islandsHaveTheirHeightsAndHolesWithoutOneAreUnknown() throws Exception {
        Corner c = corner(
                List.of(ring(-40, 1, -40, 2, -30, 2, -30, 1), ring(1, 30, 2, 30, 2, 40, 1, 40)),
                ", \"curbHeight\": \"150 mm\", \"islands\": [{\"name\": \"splitter\", \"height\": \"100 mm\", \"outline\": "
                        + polygon(ring(-41, 0.9, -41, 2.1, -29, 2.1, -29, 0.9)) + "}]");
        assertEquals(OptionalDouble.of(0.15), c.ground().edgeHeightM());
        assertEquals(2, c.ground().islands().size());
        assertEquals(OptionalDouble.of(0.1), c.ground().islands().get(0).heightM());
        assertEquals(OptionalDouble.empty(), c.ground().islands().get(1).heightM());
        assertEquals(10, c.ground().islands().get(1).area().getArea(), 0.01);
        assertTrue(!holds(c.pavement(), -40.5, 1.5) && holds(c.pavement(), -40.5, 0.5));
    }

    /** The route line runs over an island: it is passed on its right. Elsewhere the guide is the route line. */
    @Test
    void theGuideIsTheRouteLineLedPastIslands() throws Exception {
        Corner plain = corner(List.of(), "");
        for (double[] at : new double[][] {{-500, -2}, {-30, -2}, {2, 30}, {2, 500}}) {
            assertEquals(0, plain.guide().orElseThrow().distance(GEOMETRY.createPoint(local(at[0], at[1]))), 0.06);
        }
        Corner c = corner(List.of(ring(-40, -2.8, -40, 0, -30, 0, -30, -2.8)), "");
        Geometry guide = c.guide().orElseThrow();
        assertTrue(guide.disjoint(c.ground().islands().get(0).area()));
        assertEquals(0, guide.distance(GEOMETRY.createPoint(local(-35, -3.3))), 0.02);
    }
}
