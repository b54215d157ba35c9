package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.report.SurveyFirst;
import org.cresthaul.report.Verdict;
import org.cresthaul.route.Route;
import org.cresthaul.units.InputRejected;
import org.junit.jupiter.api.Test;

/** The order of what waits for a survey is the rule that docs/model.md states, and nothing of it changes a verdict. */
class SurveyFirstTest {
    private static final String MAP = "\"source\": \"map\", \"object\": \"node %d\", \"state\": \"open\"";

    /** Features one after the other, ten to a kilometer. */
    private static Route route(String... properties) throws Exception {
        StringBuilder text = new StringBuilder("""
                {"type": "FeatureCollection", "cresthaul": "route/1", "name": "Waiting", "note": "Invented.",
                 "features": [
                  {"type": "Feature", "properties": {"route": "Straight"},
                   "geometry": {"type": "LineString", "coordinates": [[-93.1, 44.6], [-93.08, 44.6]]}}""");
        for (int i = 0; i < properties.length; i++) {
            text.append(",{\"type\": \"Feature\", \"geometry\": {\"type\": \"Point\", \"coordinates\": [")
                    .append(-93.099 + i * 0.001)
                    .append(", 44.6]}, \"properties\": {\"id\": \"H")
                    .append(i)
                    .append("\", \"name\": \"Place\", ")
                    .append(properties[i])
                    .append("}}");
        }
        return RouteFile.parse(text.append("]}").toString());
    }

    private static String crossing(String more) {
        return "\"hazard\": \"rail-crossing\", \"candidate\": {" + MAP.formatted(1) + more + "}";
    }

    private static List<String> order(Route route) {
        return SurveyOrder.places(route).stream()
                .map(SurveyFirst.PlaceToSurvey::id)
                .toList();
    }

    @Test
    void crossingsComeFirstBySignThenTracksThenSkewThenTravel() throws Exception {
        Route route = route(
                "\"hazard\": \"crest\"",
                crossing(", \"tracks\": 1, \"angle\": \"80 deg\""),
                crossing(", \"tracks\": 1, \"angle\": \"30 deg\""),
                crossing(", \"tracks\": 2, \"angle\": \"80 deg\""),
                crossing(", \"tracks\": 1, \"angle\": \"80 deg\", \"lowGroundSign\": \"posted\""),
                crossing(", \"tracks\": 1, \"angle\": \"30 deg\""));

        assertEquals(List.of("H4", "H3", "H2", "H5", "H1", "H0"), order(route));
        assertEquals(
                List.of(1, 2, 3, 4, 5, 6),
                SurveyOrder.places(route).stream()
                        .map(SurveyFirst.PlaceToSurvey::rank)
                        .toList());
        assertEquals(List.of(1, 2), SurveyOrder.waitingTracks(SurveyOrder.places(route)));
    }

    @Test
    void whatNobodySaysIsNeverTakenForLittle() throws Exception {
        Route route = route(
                crossing(", \"tracks\": 4, \"angle\": \"5 deg\""),
                crossing(", \"tracks\": 4"),
                "\"hazard\": \"rail-crossing\"");

        assertEquals(List.of("H2", "H1", "H0"), order(route));
        SurveyFirst.PlaceToSurvey unknown = SurveyOrder.places(route).get(0);
        assertNull(unknown.tracks());
        assertNull(unknown.angleRad());
        assertNull(unknown.origin());
    }

    @Test
    void aSignOrTracksOfTheFileCountBeforeWhatTheMapSays() throws Exception {
        Route route = route(
                crossing(", \"tracks\": 3"),
                "\"signs\": [\"W10-5\"], \"tracks\": [\"0 m\", \"5 m\"], " + crossing(", \"tracks\": 1"));

        assertEquals(List.of("H1", "H0"), order(route));
        assertEquals(2, SurveyOrder.places(route).get(0).tracks());
        assertTrue(SurveyOrder.places(route).get(0).lowGroundSign());
        assertFalse(SurveyOrder.places(route).get(1).lowGroundSign());
    }

    @Test
    void surveyedPlacesDoNotWaitAndReportedOnesDo() throws Exception {
        String reported = "\"hazard\": \"low-structure\", \"clearance\": \"10 m\", \"extent\": [\"-3 m\", \"5 m\"],"
                + " \"measured\": \"reported\", \"reportedBy\": \"the map\", \"candidate\": {" + MAP.formatted(2) + "}";
        String posted = "\"hazard\": \"low-structure\", \"clearance\": \"10 m\", \"extent\": [\"-3 m\", \"5 m\"],"
                + " \"measured\": \"posted\"";
        String unknown = "\"hazard\": \"low-structure\", \"measured\": \"unknown\"";
        Route route = route(
                CheckCase.crossingProperties(CheckCase.LEVEL_POINTS, "10 mm"),
                posted,
                reported,
                unknown,
                "\"hazard\": \"corner\"");

        assertEquals(List.of("H3", "H2", "H4"), order(route));
        assertTrue(SurveyOrder.places(route).get(1).reported());
        assertEquals(List.of(), SurveyOrder.waitingTracks(SurveyOrder.places(route)));
    }

    @Test
    void onlyACrossingHasTracksBySomebodysWord() {
        for (String key : List.of("\"tracks\": 1", "\"angle\": \"30 deg\"", "\"lowGroundSign\": \"posted\"")) {
            InputRejected refused = assertThrows(
                    InputRejected.class,
                    () -> route("\"hazard\": \"dip\", \"candidate\": {" + MAP.formatted(3) + ", " + key + "}"));
            assertEquals("not-of-this-kind", refused.problems().get(0).code());
        }
        for (String wrong : List.of(", \"tracks\": 0", ", \"tracks\": 51", ", \"angle\": \"91 deg\"")) {
            assertThrows(InputRejected.class, () -> route(crossing(wrong)), wrong);
        }
    }

    /** Every fifth of 50 has two tracks, and every seventh a sign: 10 and 7, of which 35 has both. */
    @Test
    void fiftyCrossingsAreOneTableAndNoVerdictIsAnother() {
        Report report = CheckCase.check(ManyCrossings.route(50), Margins.defaults());
        SurveyFirst first = report.surveyFirst();

        assertEquals(50, first.places().size());
        // The one with both comes first; then the other signs, then the other nine with two tracks.
        assertEquals("map-n35", first.places().get(0).id());
        assertTrue(first.places().stream().limit(7).allMatch(SurveyFirst.PlaceToSurvey::lowGroundSign));
        assertTrue(first.places().stream().skip(7).noneMatch(SurveyFirst.PlaceToSurvey::lowGroundSign));
        assertTrue(first.places().stream().skip(7).limit(9).allMatch(p -> p.tracks() == 2));
        assertTrue(first.places().stream().skip(16).allMatch(p -> p.tracks() == 1));
        assertEquals(40, first.waiting(1));
        assertEquals(10, first.waiting(2));
        List<Verdict> all = new ArrayList<>();
        report.hazards().forEach(h -> h.cells().forEach(c -> all.add(c.verdict())));
        assertTrue(all.size() >= 50 && all.stream().allMatch(v -> v == Verdict.NOT_SURVEYED));
        assertTrue(report.configurations().stream().allMatch(c -> c.verdict() == Verdict.NOT_SURVEYED));
    }
}
