package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.report.Haul;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.report.SketchGap;
import org.cresthaul.report.SurveyFirst;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.TwoWheels;
import org.cresthaul.route.Route;
import org.cresthaul.units.InputRejected;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The gap over a sketch is what the engine says, by closed forms; it orders what to survey first and nothing else. */
class SketchGapTest {
    private static final double WHEELBASE_M = 36 * 0.3048;
    private static final double UNDERSIDE_M = 5 * 0.0254;
    /** What the engine promises of a least gap that decides nothing (docs/model.md, 9). */
    private static final double PROMISED_M = 0.001;

    private static final Margins NONE = new Margins(0, 0, 0, 0, 0, 0);

    /** A road that rises to the place and falls from it, its cells so far apart. */
    static String tent(double grade, double spacingM) {
        StringBuilder points = new StringBuilder();
        for (int k = -6; k <= 6; k++) {
            points.append(k == -6 ? "" : ",")
                    .append("[\"" + k * spacingM + " m\", \"" + (200 - grade * Math.abs(k) * spacingM) + " m\"]");
        }
        return ", \"sketch\": {\"raster\": \"land.tif\", \"spacing\": \"" + spacingM + " m\", \"points\": [" + points
                + "]}";
    }

    private static String crossing(String more) {
        return "\"hazard\": \"rail-crossing\", \"candidate\": {\"source\": \"map\", \"object\": \"node 1\","
                + " \"state\": \"open\"" + more + "}";
    }

    private static Route route(String... properties) throws InputRejected {
        StringBuilder text = new StringBuilder("""
                {"type": "FeatureCollection", "cresthaul": "route/1", "name": "Sketched", "note": "Invented.",
                 "features": [
                  {"type": "Feature", "properties": {"route": "Straight"},
                   "geometry": {"type": "LineString", "coordinates": [[-93.1, 44.6], [-93.08, 44.6]]}}""");
        for (int i = 0; i < properties.length; i++) {
            text.append(",{\"type\": \"Feature\", \"geometry\": {\"type\": \"Point\", \"coordinates\": [")
                    .append(-93.099 + i * 0.001)
                    .append(", 44.6]}, \"properties\": {\"id\": \"H" + i + "\", \"name\": \"Place\", ")
                    .append(properties[i])
                    .append("}}");
        }
        return RouteFile.parse(text.append("]}").toString());
    }

    private static Report check(Route route) {
        Rig rig = TwoWheels.of(WHEELBASE_M, UNDERSIDE_M);
        return RouteCheck.check(new Haul(route, rig, rig.stances().get(0), NONE), new Inputs("route", "rig"));
    }

    private static List<String> order(Report report) {
        return report.surveyFirst().places().stream()
                .map(SurveyFirst.PlaceToSurvey::id)
                .toList();
    }

    /**
     * Over a peak between two grades g a wheelbase L loses g L / 2 in its middle: 36 ft at 2 % 109.7 mm of 127 mm, at 3
     * % 164.6 mm. What standing on a grade itself takes of the wheels' 0.1 m is less than 0.1 mm.
     */
    @ParameterizedTest
    @CsvSource({"0, 0.1270", "0.01, 0.0721", "0.02, 0.0173", "0.03, -0.0376"})
    void overAPeakItIsTheClosedForm(double grade, double gapM) throws Exception {
        SketchGap gap = check(route(crossing(tent(grade, 10))))
                .surveyFirst()
                .places()
                .get(0)
                .sketch();

        assertEquals(gapM, gap.gapM(), PROMISED_M);
        assertEquals("land.tif", gap.source());
        assertEquals(10, gap.spacingM());
        assertFalse(gap.tooCoarse());
    }

    @Test
    void aCoarseRasterShowsNothing() throws Exception {
        // A third of an arc second counts; what is wider does not.
        assertFalse(check(route(crossing(tent(0.03, 10.31))))
                .surveyFirst()
                .places()
                .get(0)
                .sketch()
                .tooCoarse());
        SketchGap coarse = check(route(crossing(tent(0.03, 30))))
                .surveyFirst()
                .places()
                .get(0)
                .sketch();
        assertTrue(coarse.tooCoarse());
        assertNull(coarse.gapM());
        assertNull(coarse.configuration());
    }

    @Test
    void aWorseSketchComesFirstAndAnUnknownOneIsNeverTakenForLittle() throws Exception {
        Route route = route(
                crossing(tent(0, 10)),
                crossing(tent(0.02, 10)),
                crossing(""),
                crossing(tent(0.1, 30)),
                crossing(tent(0.03, 10)),
                crossing(tent(0.035, 10)));
        // Touching ones by how deep; those of which nothing is known; then by what is left.
        assertEquals(List.of("H5", "H4", "H2", "H3", "H1", "H0"), order(check(route)));
    }

    @Test
    void signsAndTracksCountBeforeASketchAndTheAngleAfterIt() throws Exception {
        Route route = route(
                crossing(", \"tracks\": 1, \"angle\": \"20 deg\"" + tent(0, 10)),
                crossing(", \"tracks\": 1, \"angle\": \"80 deg\"" + tent(0.03, 10)),
                crossing(", \"tracks\": 2, \"angle\": \"80 deg\"" + tent(0, 10)),
                crossing(", \"tracks\": 1, \"angle\": \"80 deg\", \"lowGroundSign\": \"posted\"" + tent(0, 10)));

        assertEquals(List.of("H3", "H2", "H1", "H0"), order(check(route)));
    }

    /** However flat a sketch is, nothing becomes clear by it, and nothing is told of the place but in that table. */
    @Test
    void aSketchIsNeverASurvey() throws Exception {
        Report with = check(route(
                crossing(tent(0, 10)),
                "\"hazard\": \"crest\", \"candidate\": {\"source\":"
                        + " \"map\", \"object\": \"node 2\", \"state\": \"open\"" + tent(0, 1) + "}"));
        Report without = check(route(
                crossing(""),
                "\"hazard\": \"crest\", \"candidate\": {\"source\":"
                        + " \"map\", \"object\": \"node 2\", \"state\": \"open\"}"));

        assertEquals(without.hazards(), with.hazards());
        assertEquals(without.configurations(), with.configurations());
        List<Verdict> all = new ArrayList<>();
        with.hazards().forEach(h -> h.cells().forEach(c -> all.add(c.verdict())));
        assertTrue(!all.isEmpty() && all.stream().allMatch(v -> v == Verdict.NOT_SURVEYED));
        assertTrue(with.hazards().stream().noneMatch(HazardFindings::surveyed));
        // A survey needs more than a sketch.
        InputRejected refused = assertThrows(
                InputRejected.class,
                () -> route("\"hazard\": \"rail-crossing\", \"candidate\": {\"source\": \"map\", \"object\":"
                        + " \"node 1\", \"state\": \"surveyed\"" + tent(0, 10) + "}"));
        assertEquals("surveyed-without-survey", refused.problems().get(0).code());
    }

    @Test
    void aSketchOfAStructureOrWithoutItsRasterIsRefused() {
        InputRejected structure = assertThrows(
                InputRejected.class,
                () -> route("\"hazard\": \"low-structure\", \"measured\": \"unknown\", \"candidate\": {\"source\":"
                        + " \"map\", \"object\": \"way 1\", \"state\": \"open\"" + tent(0, 10) + "}"));
        assertEquals("not-of-this-kind", structure.problems().get(0).code());
        for (String wrong : List.of(
                tent(0, 10).replace("\"raster\": \"land.tif\", ", ""),
                tent(0, 10).replace("\"spacing\": \"10.0 m\", ", ""),
                tent(0.6, 10),
                tent(0, 10).replace("\"raster\"", "\"date\": \"2026-13-01\", \"raster\""),
                tent(0, 10).replace("\"raster\"", "\"gap\": \"1 m\", \"raster\""))) {
            assertThrows(InputRejected.class, () -> route(crossing(wrong)), wrong);
        }
    }
}
