package org.cresthaul.exchange.routefile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.cresthaul.road.Corner;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.LonLat;
import org.cresthaul.route.RoadFrame;
import org.cresthaul.route.RouteCorner;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.JsonEdit;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * U-turns, bends, forks, offset crossroads and gates in route files: read, fitted to their line, and refused with a
 * reason.
 */
public class CornerLayoutFileTest {
    private static final String LANES = "\"own\": \"4 m\", \"opposing\": \"4 m\"";
    private static final String ONE_WAY = "\"own\": \"8 m\", \"opposing\": \"0 m\"";
    private static final String T = "/features/1/properties/template";

    /** A route along the given places of the corner's frame, x to the east and y to the north. */
    static String route(String template, double[]... line) {
        RoadFrame frame = new RoadFrame(new LonLat(-93.1, 44.6), Math.PI / 2);
        String positions = Stream.of(line)
                .map(p -> frame.at(p[0], -p[1]))
                .map(p -> String.format(Locale.ROOT, "[%.8f, %.8f]", p.lonDeg(), p.latDeg()))
                .collect(Collectors.joining(", "));
        return """
                {"type": "FeatureCollection", "cresthaul": "route/1", "name": "A turn", "note": "Invented for the tests.",
                 "features": [
                  {"type": "Feature", "properties": {"route": "Road"}, "geometry": {"type": "LineString", "coordinates": [%s]}},
                  {"type": "Feature", "geometry": {"type": "Point", "coordinates": [-93.1, 44.6]},
                   "properties": {"hazard": "corner", "id": "C1", "name": "Turn",
                    "survey": {"accuracy": "50 mm", "source": "tape"}, "template": {%s}}}]}""".formatted(positions, template);
    }

    public static final String U_TURN = route(
            "\"turn\": \"left\", \"angle\": \"180 deg\", \"approach\": {" + ONE_WAY + "}, \"exit\": {" + ONE_WAY + "},"
                    + "\"borrow\": [\"exit\"], \"uTurn\": {\"median\": \"30 ft\", \"opening\": \"80 ft\", \"nose\": \"4 ft\","
                    + " \"loon\": {\"depth\": \"12 ft\", \"length\": \"120 ft\"}}",
            new double[] {-300, 0},
            new double[] {10, 0},
            new double[] {10, 9},
            new double[] {-300, 9});
    public static final String U_TURN_WIDE = route(
            "\"turn\": \"left\", \"angle\": \"180 deg\", \"approach\": {" + ONE_WAY + "}, \"exit\": {" + ONE_WAY + "},"
                    + "\"uTurn\": {\"median\": \"45 m\", \"opening\": \"30 m\"}",
            new double[] {-300, 0},
            new double[] {10, 0},
            new double[] {10, 45},
            new double[] {-300, 45});
    static final String BEND = route(
            "\"turn\": \"right\", \"angle\": \"180 deg\", \"approach\": {" + LANES + "}, \"exit\": {" + LANES + "},"
                    + "\"bend\": {\"radius\": \"20 m\", \"width\": \"11 m\"}",
            new double[] {-300, 0},
            new double[] {0, 0},
            new double[] {17, -7},
            new double[] {24, -24},
            new double[] {17, -41},
            new double[] {0, -48},
            new double[] {-300, -48});
    static final String FORK = route(
            "\"turn\": \"right\", \"angle\": \"30 deg\", \"approach\": {" + LANES + "}, \"exit\": {" + LANES + "},"
                    + "\"curb\": {\"radius\": \"15 m\"}, \"borrow\": [\"third\"], \"fork\": {\"nose\": \"3 ft\","
                    + " \"third\": {\"turn\": \"left\", \"angle\": \"10 deg\", " + LANES + "}}",
            new double[] {-300, 0},
            new double[] {0, 0},
            new double[] {260, -150});
    static final String CROSSING = route(
            "\"turn\": \"right\", \"angle\": \"90 deg\", \"approach\": {" + LANES + "}, \"exit\": {" + LANES + "},"
                    + "\"curb\": {\"radius\": \"12 m\"}, \"crossing\": {\"offset\": \"40 m\", " + LANES
                    + ", \"curb\": {\"radius\": \"9 m\"}}",
            new double[] {-300, 0},
            new double[] {0, 0},
            new double[] {0, -40},
            new double[] {300, -40});
    public static final String GATE = route(
            "\"turn\": \"left\", \"angle\": \"90 deg\", \"approach\": {" + LANES + "}, \"borrow\": [\"approach\"],"
                    + "\"gate\": {\"width\": \"24 ft\", \"near\": \"10 ft\", \"far\": \"15 ft\"}",
            new double[] {-300, 0},
            new double[] {0, 0},
            new double[] {0, 60});

    private static Schema schema() {
        try (InputStream text = CornerLayoutFileTest.class.getResourceAsStream("/schema/route-1.schema.json")) {
            return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                    .getSchema(text);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Corner read(String document) {
        try {
            assertEquals(List.of(), schema().validate(document, InputFormat.JSON));
            List<Hazard> hazards = RouteFile.parse(document).hazards();
            assertEquals(1, hazards.size(), "the turn of the line is the corner's own: " + hazards);
            return ((RouteCorner) hazards.get(0)).shape().orElseThrow();
        } catch (InputRejected e) {
            throw new AssertionError(e.problems().toString(), e);
        }
    }

    private static boolean has(Corner c, double x, double y) {
        return c.pavement().contains(new GeometryFactory().createPoint(new Coordinate(x, y)));
    }

    @Test
    void everyLayoutIsReadWithItsMeasures() {
        Corner back = read(U_TURN);
        assertEquals(Math.PI, back.turnRad(), 0);
        assertEquals(30 * 0.3048, back.exit().yM(), 1e-9);
        assertTrue(has(back, 12.1, 4) && !has(back, 12.3, 4) && back.escorted().isPresent());
        assertTrue(has(back, 18, 9.144 + 8 + 3.6) && !has(back, 18, 9.144 + 8 + 3.7));
        Corner bend = read(BEND);
        assertEquals(-Math.PI, bend.turnRad(), 1e-9);
        assertEquals(-2 * 24, bend.exit().yM(), 1e-9);
        assertTrue(has(bend, 20.1, -24) && !has(bend, 19.9, -24));
        Corner fork = read(FORK);
        assertEquals(Math.toRadians(-30), fork.turnRad(), 1e-9);
        assertTrue(fork.escorted().isPresent());
        Corner crossing = read(CROSSING);
        assertEquals(0, crossing.turnRad(), 0);
        assertEquals(-40, crossing.exit().yM(), 1e-9);
        Corner gate = read(GATE);
        assertTrue(gate.backing() && has(gate, 3.65, 40) && !has(gate, 3.67, 40));
        assertEquals(24 * 0.3048 / 2, gate.approach().leftM(), 1e-9);
    }

    private static void refused(String document, String pointer, String value, String code, String at, boolean shape) {
        String bad = JsonEdit.edit(document, pointer, value);
        List<InputProblem> problems =
                assertThrows(InputRejected.class, () -> RouteFile.parse(bad)).problems();
        assertEquals(
                List.of(code + " " + at),
                problems.stream().map(p -> p.code() + " " + p.pointer()).toList());
        assertEquals(shape, !schema().validate(bad, InputFormat.JSON).isEmpty(), code);
    }

    @Test
    void mistakesAreToldOnceAtTheirPlace() {
        refused(U_TURN, T + "/turn", "\"right\"", "wrong-side", T + "/turn", false);
        refused(U_TURN, T + "/angle", "\"150 deg\"", "out-of-range", T + "/angle", false);
        refused(U_TURN, T + "/uTurn/nose", "\"16 ft\"", "order", T + "/uTurn/nose", false);
        refused(U_TURN, T + "/uTurn/opening", "absent", "missing", T + "/uTurn/opening", true);
        refused(U_TURN, T + "/exit/opposing", "\"4 m\"", "opposing-on-u-turn", T + "/exit", false);
        refused(U_TURN, T + "/curb", "{\"radius\": \"9 m\"}", "curb-elsewhere", T + "/curb", true);
        refused(BEND, T + "/bend/width", "\"6 m\"", "order", T + "/bend/width", false);
        refused(BEND, T + "/angle", "\"181 deg\"", "out-of-range", T + "/angle", false);
        refused(BEND, T + "/angle", "\"120 deg\"", "legs-off-route", T, false);
        refused(FORK, T + "/fork/third/angle", "\"170 deg\"", "out-of-range", T + "/fork/third/angle", false);
        refused(
                JsonEdit.edit(FORK, T + "/fork/third/turn", "\"right\""),
                T + "/fork/third/angle",
                "\"20 deg\"",
                "third-on-exit",
                T + "/fork/third/angle",
                false);
        refused(FORK, T + "/fork/third/own", "absent", "missing", T + "/fork/third/own", true);
        refused(FORK, T + "/borrow", "[\"crossing\"]", "unknown-word", T + "/borrow/0", false);
        refused(CROSSING, T + "/crossing/offset", "\"0 m\"", "out-of-range", T + "/crossing/offset", false);
        refused(CROSSING, T + "/crossing/offset", "\"90 m\"", "legs-off-route", T, false);
        refused(CROSSING, T + "/crossing/speed", "9", "unknown-key", T + "/crossing/speed", true);
        refused(GATE, T + "/exit", "{" + LANES + "}", "exit-at-gate", T + "/exit", true);
        refused(GATE, T + "/gate/width", "\"3 ft\"", "out-of-range", T + "/gate/width", false);
        refused(U_TURN, T + "/bend", "{\"radius\": \"9 m\", \"width\": \"9 m\"}", "two-layouts", T + "/bend", true);
    }
}
