package org.cresthaul.exchange.routefile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.cresthaul.exchange.json.JsonText;
import org.cresthaul.geometry.Uncertainty;
import org.cresthaul.road.Approach;
import org.cresthaul.road.SurveyedPoint;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.HazardKind;
import org.cresthaul.route.Leg;
import org.cresthaul.route.LonLat;
import org.cresthaul.route.LowStructure;
import org.cresthaul.route.RailCrossing;
import org.cresthaul.route.RoadHump;
import org.cresthaul.route.Route;
import org.cresthaul.route.RouteTexts;
import org.cresthaul.route.StoppingPlace;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.JsonEdit;
import org.cresthaul.units.Mistake;
import org.cresthaul.units.MutatedJson;
import org.cresthaul.units.Problems;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class RouteFileTest {
    static List<Mistake> mistakes() {
        return RouteMistakes.ALL;
    }

    private static List<InputProblem> problemsOf(String document) {
        return assertThrows(InputRejected.class, () -> RouteFile.parse(document))
                .problems();
    }

    @Test
    void readsLegsIntoOneLine() throws Exception {
        Route route = RouteFile.parse(RouteTexts.ROUTE.getBytes(StandardCharsets.UTF_8));
        assertEquals("Two legs", route.name());
        assertEquals("Invented for the tests.", route.note());
        assertEquals(
                List.of("County road", "Mill road"),
                route.legs().stream().map(Leg::name).toList());
        Leg first = route.legs().get(0);
        Leg second = route.legs().get(1);
        assertEquals(0, first.startChainageM());
        assertEquals(new LonLat(-93.08, 44.601), route.line().position(first.lastPoint()));
        assertEquals(new LonLat(-93.08, 44.6011), route.line().position(second.firstPoint()));
        // The gap of 0.0001° of latitude between the legs is driven as well: 11.11 m at this latitude.
        assertEquals(11.11, second.startChainageM() - first.endChainageM(), 0.01);
        assertEquals(route.lengthM(), second.endChainageM());
    }

    @Test
    void readsEveryKindOfHazardInTheOrderOfTravel() throws Exception {
        Route route = RouteFile.parse(RouteTexts.ROUTE);
        assertEquals(
                List.of("H01 rail-crossing", "H05 corner", "H02 low-structure", "H03 low-structure", "H04 dip"),
                route.hazards().stream()
                        .map(h -> h.place().id() + " " + h.kind().word())
                        .toList());
        RailCrossing crossing = (RailCrossing) route.findHazard("H01").orElseThrow();
        assertEquals("Quarry spur", crossing.place().name());
        assertEquals(Optional.of("grain silo"), crossing.place().landmark());
        assertEquals(0, crossing.place().offsetM(), 0.001);
        // Half of 0.01° of the parallel: a cos(44.6°) radians(0.005) / sqrt(1 - e² sin²(44.6°)), by hand
        assertEquals(396.97, crossing.place().chainageM(), 0.02);
        assertEquals(Optional.of("123456A"), crossing.crossingNumber());
        assertEquals(Optional.of("800-555-0100"), crossing.emergencyPhone());
        assertEquals(List.of(0.0, 4.3), crossing.tracksM());
        assertEquals(List.of("W10-5"), crossing.signs());
        assertEquals(Optional.of(new Uncertainty(0.01, "level and tape")), crossing.survey());
        assertEquals("right", crossing.lines().get(1).name());
        assertEquals(
                new SurveyedPoint(-12, 0.1), crossing.lines().get(0).points().get(0));
        assertEquals(Approach.declared(0.015, 0.002), crossing.lines().get(0).before());
        assertEquals(Approach.declared(-0.01, 0.002), crossing.lines().get(0).after());

        LowStructure bridge = (LowStructure) route.findHazard("H02").orElseThrow();
        assertEquals(104.2, bridge.soffit().orElseThrow().elevationM(0));
        assertEquals(LowStructure.Measured.SURVEYED, bridge.measured());
        assertFalse(bridge.lines().get(0).before().isDeclared());

        LowStructure rack = (LowStructure) route.findHazard("H03").orElseThrow();
        assertEquals(4.318, rack.clearanceM().orElseThrow(), 1e-9);
        assertEquals(Optional.of(new LowStructure.Extent(-3, 5)), rack.extent());
        assertEquals(LowStructure.Measured.POSTED, rack.measured());
        assertTrue(rack.isSurveyed());

        assertEquals(HazardKind.DIP, ((RoadHump) route.hazards().get(4)).kind());
    }

    @Test
    void takesHazardsThatNobodySurveyed() throws Exception {
        String unknown = RouteTexts.ROUTE;
        for (String field : List.of("profile", "approachBefore", "approachAfter", "survey")) {
            unknown = JsonEdit.edit(unknown, "/features/3/properties/" + field, "absent");
        }
        for (String field : List.of("clearance", "extent")) {
            unknown = JsonEdit.edit(unknown, "/features/4/properties/" + field, "absent");
        }
        Route route = RouteFile.parse(unknown);
        for (String id : List.of("H01", "H03", "H04")) {
            Hazard hazard = route.findHazard(id).orElseThrow();
            assertFalse(hazard.isSurveyed(), id);
            assertEquals(List.of(), hazard.lines());
        }
        assertEquals(
                OptionalDouble.empty(), ((LowStructure) route.findHazard("H03").orElseThrow()).clearanceM());
        assertTrue(route.findHazard("H02").orElseThrow().isSurveyed());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("mistakes")
    void tellsAMistakeOnceAndAtItsPlace(Mistake mistake) {
        List<InputProblem> problems = problemsOf(mistake.in(RouteTexts.ROUTE));
        assertEquals(1, problems.size(), () -> problems.toString());
        assertEquals(mistake.code(), problems.get(0).code(), () -> problems.toString());
        assertEquals(mistake.at(), problems.get(0).pointer(), () -> problems.toString());
    }

    @Test
    void tellsAllMistakesOfAFileTogether() {
        String bad = RouteTexts.ROUTE;
        bad = JsonEdit.edit(bad, "/features/2/properties/soffit/1/0", "\"-5 m\"");
        bad = JsonEdit.edit(bad, "/features/3/properties/profile/1/points/2/1", "0.3");
        bad = JsonEdit.edit(bad, "/features/4/geometry/coordinates", "[-93.2, 44.615]");
        bad = JsonEdit.edit(bad, "/features/5/properties/id", "\"H01\"");
        bad = JsonEdit.edit(bad, "/crs", "{}");
        assertEquals(
                List.of(
                        "/crs",
                        "/features/2/properties/soffit/1/0",
                        "/features/3/properties/profile/1/points/2/1",
                        "/features/4/geometry/coordinates",
                        "/features/5/properties/id"),
                problemsOf(bad).stream().map(InputProblem::pointer).sorted().toList());
    }

    @Test
    void readsStoppingPlacesInTheOrderOfTheRoute() throws Exception {
        Route route = RouteFile.parse(RouteTexts.ROUTE);

        assertEquals(
                List.of("P01", "P02"),
                route.stops().stream().map(s -> s.place().id()).toList());
        StoppingPlace pit = route.stops().get(0);
        assertTrue(pit.setUpArea());
        assertEquals("set-up-area", pit.word());
        assertEquals(76.2, pit.roomM(), 1e-9, "250 ft of 0.3048 m");
        assertEquals("weigh house", pit.place().landmark().orElseThrow());
        // 0.0001 degrees of longitude at 44.6 degrees: 111320 m cos 44.6 / 10000.
        assertEquals(7.93, pit.place().chainageM(), 0.05);
        assertFalse(route.stops().get(1).setUpArea());
    }

    @Test
    void asksForOneHeightOfAStructure() {
        List<InputProblem> problems =
                problemsOf(JsonEdit.edit(RouteTexts.ROUTE, "/features/2/properties/clearance", "\"4.2 m\""));
        assertEquals(
                List.of("missing", "both-heights"),
                problems.stream().map(InputProblem::code).toList());
        assertEquals("/features/2/properties/extent", problems.get(0).pointer());
    }

    @Test
    void asksWhichPassageIsMeantWhereTheRouteComesByTwice() throws Exception {
        String outAndBack = JsonEdit.edit(
                RouteTexts.ROUTE,
                "/features/1/geometry/coordinates",
                "[[-93.08, 44.6011], [-93.08, 44.62], [-93.08, 44.6011]]");
        List<InputProblem> problems = problemsOf(outAndBack);
        assertEquals(
                List.of("passed-twice", "passed-twice", "passed-twice", "passed-twice", "passed-twice"),
                problems.stream().map(InputProblem::code).toList());
        for (int feature : new int[] {2, 4, 6, 8}) {
            outAndBack = JsonEdit.edit(outAndBack, "/features/" + feature + "/properties/passage", "1");
        }
        outAndBack = JsonEdit.edit(outAndBack, "/features/5/properties/passage", "2");
        Route route = RouteFile.parse(outAndBack);
        Leg leg = route.legs().get(1);
        double top = 0.5 * (leg.startChainageM() + leg.endChainageM());
        assertTrue(route.findHazard("H03").orElseThrow().place().chainageM() < top);
        assertTrue(route.findHazard("H04").orElseThrow().place().chainageM() > top);
    }

    @Test
    void joinsTheLinesOfAMultiLineString() throws Exception {
        Route whole = RouteFile.parse(RouteTexts.ROUTE);
        String parted = JsonEdit.edit(
                RouteTexts.ROUTE,
                "/features/1/geometry",
                "{\"type\": \"MultiLineString\", \"coordinates\": [[[-93.08, 44.6011], [-93.08, 44.605]],"
                        + " [[-93.08, 44.605], [-93.08, 44.62]]]}");
        assertEquals(whole.lengthM(), RouteFile.parse(parted).lengthM(), 0.001);
        assertEquals(2, RouteFile.parse(parted).legs().size());
        InputProblem gap = problemsOf(parted.replace("44.605],[-93.08,44.62]", "44.6055],[-93.08,44.62]"))
                .get(0);
        assertEquals("leg-gap", gap.code());
        assertEquals("/features/1/geometry/coordinates/1/0", gap.pointer());
    }

    @Test
    void hintsThatLongitudeComesFirst() {
        InputProblem swapped = problemsOf(
                        JsonEdit.edit(RouteTexts.ROUTE, "/features/0/geometry/coordinates/1", "[44.6, -93.09]"))
                .get(0);
        assertEquals("Longitude comes first: write [-93.09, 44.6]?", swapped.remedy());
    }

    @Test
    void takesStandardMembersThatSayNothingNew() throws Exception {
        String more = JsonEdit.edit(RouteTexts.ROUTE, "/bbox", "[-93.1, 44.6, -93.08, 44.62]");
        more = JsonEdit.edit(more, "/features/5/id", "5");
        more = JsonEdit.edit(more, "/features/5/geometry/bbox", "[-93.08, 44.618, -93.08, 44.618]");
        assertEquals(5, RouteFile.parse(more).hazards().size());
    }

    @Test
    void refusesARouteOfTwoMillionPositions() {
        String positions = IntStream.range(0, 2_000_000)
                .mapToObj(i -> "[-93.1," + (44 + i * 1e-7) + "]")
                .collect(Collectors.joining(","));
        InputProblem problem = problemsOf("{\"features\":[{\"geometry\":{\"coordinates\":[" + positions + "]}}]}")
                .get(0);
        assertEquals("too-many", problem.code());
        assertEquals("/features/0/geometry/coordinates/1000000", problem.pointer());
        assertEquals("The document has more than 1000000 positions.", problem.message());
    }

    @Test
    void refusesMoreThanTenThousandPointsOnALine() {
        String points = IntStream.rangeClosed(-5_000, 5_000)
                .mapToObj(i -> "[\"" + i + " cm\",\"0 m\"]")
                .collect(Collectors.joining(",", "[", "]"));
        InputProblem problem = problemsOf(
                        JsonEdit.edit(RouteTexts.ROUTE, "/features/3/properties/profile/0/points", points))
                .get(0);
        assertEquals("wrong-count", problem.code());
        assertEquals("points has 10001 entries.", problem.message());
    }

    @Test
    void refusesMoreSurveyedPointsThanACheckCanCarry() {
        String points = IntStream.rangeClosed(-4_999, 5_000)
                .mapToObj(i -> "[\"" + i + " cm\",\"0 m\"]")
                .collect(Collectors.joining(",", "[", "]"));
        String lines = IntStream.range(0, 7)
                .mapToObj(i -> "{\"line\":\"" + i + "\",\"points\":" + points + "}")
                .collect(Collectors.joining(",", "[", "]"));
        String many = RouteTexts.ROUTE;
        for (int feature : new int[] {2, 3, 5}) {
            many = JsonEdit.edit(many, "/features/" + feature + "/properties/profile", lines);
        }
        many = JsonEdit.edit(many, "/features/5/properties/survey", "{\"accuracy\":\"1 cm\",\"source\":\"x\"}");
        many = JsonEdit.edit(many, "/features/2/properties/soffit", "[[\"-3 m\",\"5 m\"],[\"5 m\",\"5 m\"]]");
        List<InputProblem> problems = problemsOf(many);
        assertEquals(
                List.of("too-many"), problems.stream().map(InputProblem::code).toList());
    }

    @Test
    void refusesWhatIsNotARoute() {
        assertEquals("wrong-type", problemsOf("[]").get(0).code());
        assertEquals("not-json", problemsOf("<gpx/>").get(0).code());
        assertEquals(
                "too-large", problemsOf("{\"features\":".repeat(500_000)).get(0).code());
        assertEquals("missing", problemsOf("{}").get(0).code());
        assertEquals(
                "no-route",
                problemsOf(IntStream.of(1, 0)
                                .boxed()
                                .reduce(
                                        RouteTexts.ROUTE,
                                        (d, i) -> JsonEdit.edit(d, "/features/" + i, "absent"),
                                        (a, b) -> b))
                        .get(0)
                        .code());
    }

    @Test
    void readsAPartOfALargerDocument() {
        Problems problems = new Problems();
        assertEquals(
                Optional.empty(),
                RouteFile.read(
                        JsonText.read(JsonEdit.edit(RouteTexts.ROUTE, "/features/5/properties/id", "7"), problems),
                        "/route",
                        problems));
        assertEquals("/route/features/5/properties/id", problems.list().get(0).pointer());
    }

    @Test
    void readsTheSameUnderADecimalCommaLocale() throws Exception {
        Route expected = RouteFile.parse(RouteTexts.ROUTE);
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.GERMANY);
            Route route = RouteFile.parse(RouteTexts.ROUTE);
            assertEquals(expected.lengthM(), route.lengthM());
            assertEquals(
                    expected.hazards().stream().map(Hazard::place).toList(),
                    route.hazards().stream().map(Hazard::place).toList());
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void answersAnyMangledFileWithARouteOrWithProblemsInIt() throws Exception {
        long seed = 20260211;
        System.out.println("mangled route files, seed " + seed);
        MutatedJson mutated = new MutatedJson(RouteTexts.ROUTE, seed);
        ObjectMapper mapper = new ObjectMapper();
        int taken = 0;
        int refused = 0;
        for (int i = 0; i < 5_000; i++) {
            String document = mutated.next();
            try {
                Route route = RouteFile.parse(document);
                assertFalse(route.legs().isEmpty());
                taken++;
            } catch (InputRejected e) {
                refused++;
                for (InputProblem problem : e.problems()) {
                    MutatedJson.requireParentExists(mapper.readTree(document), problem.pointer());
                }
            }
        }
        assertTrue(taken > 100 && refused > 2_500, taken + " taken, " + refused + " refused");
    }
}
