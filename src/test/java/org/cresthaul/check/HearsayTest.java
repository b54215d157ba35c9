package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.WeightsTexts;
import org.cresthaul.route.Candidate;
import org.cresthaul.route.LimitsTexts;
import org.cresthaul.route.Route;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.JsonEdit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What others report is never clear, in no configuration and by no number. */
class HearsayTest {
    private static final String CANDIDATE = "\"candidate\": {\"source\": \"map\", \"object\": \"way 7\","
            + " \"date\": \"2026-01-02\", \"license\": \"ODbL 1.0\", \"raw\": \"maxheight=10\", \"state\": \"%s\"}";
    private static final String HEIGHT = "\"hazard\": \"low-structure\", \"clearance\": \"%s\","
            + " \"extent\": [\"-3 m\", \"5 m\"], \"measured\": \"%s\"%s";
    private static final String BY = ", \"reportedBy\": \"the map, way 7, maxheight=10\"";

    private static Report checked(Route route) throws Exception {
        Rig rig = RigFile.parse(Files.readAllBytes(Path.of("sample-routes/lowbed-loaded.rig.json")));
        return RouteCheck.check(
                new Haul(route, rig, rig.stances().get(0), Margins.defaults()),
                new Inputs("0".repeat(64), "0".repeat(64)));
    }

    private static Set<Verdict> verdicts(Report report) {
        return report.hazards().get(0).cells().stream().map(ReportCell::verdict).collect(Collectors.toSet());
    }

    /** The load of the sample is 13 ft 4 in high; ten and thirty meters leave more than twice that. */
    @ParameterizedTest
    @ValueSource(strings = {"10 m", "30 m"})
    void aReportedHeightIsTightWhateverTheNumber(String height) throws Exception {
        Report reported = checked(CheckCase.route(HEIGHT.formatted(height, "reported", BY)));

        assertTrue(
                reported.configurations().size() >= 30,
                reported.configurations().size() + " configurations");
        assertEquals(Set.of(Verdict.TIGHT), verdicts(reported));
        assertTrue(reported.configurations().stream().noneMatch(c -> c.verdict() == Verdict.CLEAR));
        assertTrue(reported.hazards().get(0).cells().stream().allMatch(c -> c.raise() == null));
        String reasons = reported.hazards().get(0).cells().get(0).reasons().toString();
        assertTrue(reasons.contains("reported") && reasons.contains("way 7"), reasons);
        // The same number read from a sign is another matter.
        assertEquals(Set.of(Verdict.CLEAR), verdicts(checked(CheckCase.route(HEIGHT.formatted(height, "posted", "")))));
    }

    @Test
    void aReportedHeightThatIsTooLowIsContactAllTheSame() throws Exception {
        assertEquals(
                Set.of(Verdict.CONTACT), verdicts(checked(CheckCase.route(HEIGHT.formatted("3 m", "reported", BY)))));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "\"hazard\": \"rail-crossing\"",
                "\"hazard\": \"crest\"",
                "\"hazard\": \"dip\"",
                "\"hazard\": \"corner\"",
                "\"hazard\": \"posted-bridge\"",
                "\"hazard\": \"stretch\", \"extent\": [\"-5 m\", \"5 m\"]",
                "\"hazard\": \"low-structure\", \"measured\": \"unknown\"",
                "\"hazard\": \"overhead-wire\", \"measured\": \"unknown\", \"carries\": \"power\"",
                "\"hazard\": \"overhead-wire\", \"measured\": \"reported\", \"reportedBy\": \"the map\","
                        + " \"carries\": \"communication\", \"clearance\": \"20 m\", \"extent\": [\"-3 m\", \"5 m\"]",
                "\"hazard\": \"low-structure\", \"measured\": \"reported\", \"reportedBy\": \"the map\","
                        + " \"clearance\": \"10 m\", \"extent\": [\"-3 m\", \"5 m\"]"
            })
    void anOpenCandidateOfAnyKindIsNeverClear(String properties) throws Exception {
        Report report = checked(CheckCase.route(properties + ", " + CANDIDATE.formatted("open")));

        assertEquals(1, report.hazards().size());
        for (Verdict verdict : verdicts(report)) {
            assertTrue(verdict == Verdict.NOT_SURVEYED || verdict == Verdict.TIGHT, verdict.word());
        }
        assertTrue(report.configurations().stream().noneMatch(c -> c.verdict() == Verdict.CLEAR));
        assertTrue(report.hazards().get(0).notes().toString().contains("way 7"));
        assertTrue(
                report.cautions().toString().contains("hearsay"),
                report.cautions().toString());
        // Every paper has these: who reports is thanked as the license asks.
        assertTrue(
                report.cautions().toString().contains("ODbL 1.0"),
                report.cautions().toString());
    }

    @Test
    void aDismissedCandidateIsNotJudgedButTold() throws Exception {
        Route route = CheckCase.route("\"hazard\": \"rail-crossing\", "
                + CANDIDATE.formatted("dismissed\", \"by\": \"J. Doe\", \"why\": \"track lifted, seen 2026-11-02"));

        Report report = checked(route);

        assertEquals(List.of(), report.hazards());
        assertEquals(
                Candidate.State.DISMISSED, route.candidates().get(0).candidate().state());
        String cautions = report.cautions().toString();
        assertTrue(cautions.contains("J. Doe") && cautions.contains("track lifted"), cautions);
    }

    private static String refusal(String properties) {
        IllegalArgumentException refused =
                assertThrows(IllegalArgumentException.class, () -> CheckCase.route(properties));
        return ((InputRejected) refused.getCause()).problems().get(0).code();
    }

    @Test
    void aCandidateIsHeldToItsState() {
        assertEquals(
                "open-but-surveyed",
                refusal(HEIGHT.formatted("10 m", "posted", "") + ", " + CANDIDATE.formatted("open")));
        assertEquals(
                "open-but-surveyed",
                refusal(CheckCase.crossingProperties(CheckCase.LEVEL_POINTS, "10 mm") + ", "
                        + CANDIDATE.formatted("open")));
        assertEquals(
                "surveyed-without-survey",
                refusal("\"hazard\": \"rail-crossing\", " + CANDIDATE.formatted("surveyed")));
        assertEquals(
                "surveyed-without-survey",
                refusal(HEIGHT.formatted("10 m", "reported", BY) + ", " + CANDIDATE.formatted("surveyed")));
        assertEquals("missing", refusal("\"hazard\": \"dip\", " + CANDIDATE.formatted("dismissed")));
        assertEquals("missing", refusal(HEIGHT.formatted("10 m", "reported", "")));
        assertEquals("not-reported", refusal(HEIGHT.formatted("10 m", "posted", BY)));
    }

    @Test
    void aSurveyedCandidateIsJudgedByItsSurvey() throws Exception {
        Report report = checked(CheckCase.route(CheckCase.crossingProperties(CheckCase.LEVEL_POINTS, "10 mm")
                + ", \"approachBefore\": {\"grade\": \"0 %\", \"accuracy\": \"0 %\"},"
                + " \"approachAfter\": {\"grade\": \"0 %\", \"accuracy\": \"0 %\"}, "
                + CANDIDATE.formatted("surveyed")));
        assertTrue(verdicts(report).contains(Verdict.CLEAR), verdicts(report).toString());
    }

    /**
     * The small rig weighs 83,900 lb; a bridge that carries 300,000 lb by hearsay is tight, by its sign within limits.
     */
    @Test
    void reportedWeightLimitsAreTightAtBest() throws Exception {
        String limits = "{\"source\": \"the map, way 7\", \"date\": \"2026-10-01\", \"gross\": \"300,000 lb\"%s}";
        String route = JsonEdit.edit(
                LimitsTexts.ROUTE,
                "/limits",
                "{\"name\": \"road\", \"source\": \"road\", \"date\": \"2026-10-01\", \"gross\": \"400,000 lb\"}");
        Rig rig = RigFile.parse(WeightsTexts.RIG);
        for (String origin : List.of(", \"origin\": \"reported\"", ", \"origin\": \"posted\"")) {
            Report report = RouteCheck.check(
                    new Haul(
                            RouteFile.parse(
                                    JsonEdit.edit(route, "/features/0/properties/limits", limits.formatted(origin))),
                            rig,
                            rig.stances().get(0),
                            Margins.defaults()),
                    new Inputs("0".repeat(64), "0".repeat(64)));
            List<ReportCell> cells = report.hazards().stream()
                    .filter(h -> h.id().equals("B01"))
                    .flatMap(h -> h.cells().stream())
                    .toList();
            boolean reported = origin.contains("reported");
            assertTrue(!cells.isEmpty());
            assertEquals(!reported, cells.stream().anyMatch(c -> c.verdict() == Verdict.CLEAR), origin);
            assertEquals(
                    reported,
                    cells.stream().anyMatch(c -> c.reasons().toString().contains("way 7")),
                    origin);
        }
    }
}
