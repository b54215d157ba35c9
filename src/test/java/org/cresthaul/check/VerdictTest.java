package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.cresthaul.language.English;
import org.cresthaul.report.ConfigurationVerdict;
import org.cresthaul.report.GapFinding;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What is called clear, tight, contact and not surveyed. Level road makes every clearance a tape measurement of the rig
 * file, so the expected numbers are sums done by hand beside the case.
 */
class VerdictTest {
    private static final String REFERENCE = "down/none/3";
    private static final double INCH = 0.0254;
    /** Lowest point on level ground at the reference notch: the bumper at 280 mm (the deck: 300 − 12.7 sag = 287.3). */
    private static final double BUMPER_M = 0.280;

    /**
     * Bumper 0.9 m ahead of the steer axle, drives 4.4 and 5.7 m behind it: lever weights 1 + 0.9/4.4 and 0.9/4.4 (the
     * nearer drive axle weighs heavier), hence survey factor √(1 + 1.204545² + 0.204545²) = 1.578804.
     */
    private static final double BUMPER_FACTOR =
            Math.sqrt(1 + (1 + 0.9 / 4.4) * (1 + 0.9 / 4.4) + (0.9 / 4.4) * (0.9 / 4.4));

    @Test
    void uncertaintyCarriesTheSurveyThroughTheLevers() {
        GapFinding gap = CheckCase.cell(
                        CheckCase.check(CheckCase.crossing(CheckCase.LEVEL_POINTS, "10 mm"), Margins.defaults()),
                        REFERENCE)
                .ground();
        assertEquals(BUMPER_M, gap.valueM(), 1e-4);
        assertEquals("tractor", gap.unit());
        assertEquals("bumper", gap.part());
        // survey 10 mm, rig 10 mm, ride 15 mm
        double expected = Math.sqrt(Math.pow(0.010 * BUMPER_FACTOR, 2) + 0.010 * 0.010 + 0.015 * 0.015);
        assertEquals(expected, gap.uncertaintyM(), 1e-4);
        assertEquals(2 * INCH + expected, gap.requiredM(), 1e-4);
    }

    /** u is 23.97 mm with a 10 mm survey and 316.3 mm with a 200 mm one; the gap is 280 mm. */
    @ParameterizedTest
    @CsvSource({
        "10 mm, 0.0508, clear",
        "10 mm, 0.2555, clear",
        "10 mm, 0.2570, tight",
        "10 mm, 1.0000, tight",
        "170 mm, 0, clear",
        "170 mm, 0.0508, tight",
        "180 mm, 0, contact",
        "200 mm, 0.0508, contact",
    })
    void marginAndUncertaintyDecide(String accuracy, double marginM, String verdict) {
        Report report =
                CheckCase.check(CheckCase.crossing(CheckCase.LEVEL_POINTS, accuracy), new Margins(marginM, 0.0762));
        assertEquals(verdict, CheckCase.cell(report, REFERENCE).verdict().word());
    }

    @Test
    void aCoarseSurveyIsNamedAsTheReason() {
        Report report = CheckCase.check(CheckCase.crossing(CheckCase.LEVEL_POINTS, "200 mm"), Margins.defaults());
        assertEquals(
                List.of("ground clearance: the survey is too coarse to rule out contact"),
                English.of(CheckCase.cell(report, REFERENCE).reasons()));
    }

    /**
     * The level line keeps 280 mm of a margin of 270 mm and 16 mm uncertainty; on the other the deck is on the hump.
     */
    @Test
    void noMilderReasonStandsBesideContact() {
        String level = CheckCase.LEVEL_POINTS;
        String hump = CheckCase.points(s -> Math.max(0, 0.35 - 0.05 * Math.abs(s)));
        Margins margins = new Margins(0.27, 0);
        Report alone = CheckCase.check(CheckCase.crossing(level, "1 mm"), margins);
        Report both = CheckCase.check(
                CheckCase.crossing(level + "]}, {\"line\": \"right\", \"points\": [" + hump, "1 mm"), margins);
        assertEquals(
                List.of("ground clearance: no contact, but less than the required margin"),
                English.of(CheckCase.cell(alone, REFERENCE).reasons()));
        assertEquals(
                List.of("ground clearance: it touches"),
                English.of(CheckCase.cell(both, REFERENCE).reasons()));
    }

    /**
     * A search leaves half a millimeter open, and the verdict counts it: the bumper's 280 mm against its uncertainty,
     * less 0.3 mm.
     */
    @Test
    void theReasonIsMadeWithTheFigureOfTheVerdict() {
        double otherM = Math.hypot(0.010, 0.015);
        double survey = Math.sqrt(Math.pow(BUMPER_M - 0.0003, 2) - otherM * otherM) / BUMPER_FACTOR;
        Report report = CheckCase.check(CheckCase.crossing(CheckCase.LEVEL_POINTS, survey + " m"), new Margins(0, 0));
        ReportCell cell = CheckCase.cell(report, REFERENCE);
        assertEquals(Verdict.CONTACT, cell.verdict());
        assertEquals(
                List.of("ground clearance: the survey is too coarse to rule out contact"), English.of(cell.reasons()));
    }

    /**
     * check-values G7: independent elevations of σ = 10 cm (a QL2 lidar survey, value from memory of the USGS 3DEP
     * specification), 95 % half-width 1.96 σ = 196 mm, cannot decide a clearance of 5 in at mid-span. Error
     * propagation.
     */
    @Test
    void lidarNeverMakesAFiveInchClearanceClear() {
        // A hump that leaves the deck about 5 in: 287.3 mm under the deck on the level, less 160 mm.
        Report report = CheckCase.check(
                CheckCase.crossing(CheckCase.points(s -> Math.max(0, 0.16 - 0.02 * Math.abs(s))), "196 mm"),
                new Margins(0, 0));
        assertEquals(List.of("contact"), CheckCase.verdicts(report));
    }

    @Test
    void withoutASurveyNothingIsClear() {
        Report report = CheckCase.check(CheckCase.route("\"hazard\": \"rail-crossing\""), new Margins(0, 0));
        assertEquals(List.of("not surveyed"), CheckCase.verdicts(report));
        assertTrue(report.configurations().stream().allMatch(c -> c.verdict() == Verdict.NOT_SURVEYED));
        assertTrue(report.configurations().stream().allMatch(c -> c.notSurveyed() == 1 && c.clear() == 0));
        assertTrue(report.hazards().get(0).least().stream().allMatch(l -> l.notch() == null));
    }

    @Test
    void anUndeclaredApproachIsAtBestTight() {
        // Surveyed for 30 m each way: the tightest position, the bumper, is met first on ground nobody surveyed.
        Report report = CheckCase.check(
                CheckCase.route(CheckCase.crossingProperties(CheckCase.LEVEL_POINTS, "10 mm")), new Margins(0, 0));
        assertEquals(List.of("tight"), CheckCase.verdicts(report));
        assertFalse(CheckCase.cell(report, REFERENCE).reasons().isEmpty());
    }

    @Test
    void anUncertainApproachGradeTakesFromTheMarginByLengthAndLever() {
        // A wheelbase of 4.4 m at ±5 % may tilt the nose by far more than the 2 in of margin.
        Report sure = CheckCase.check(approach("0.1 %"), Margins.defaults());
        Report unsure = CheckCase.check(approach("5 %"), Margins.defaults());
        assertEquals(Verdict.CLEAR, CheckCase.cell(sure, REFERENCE).verdict());
        assertFalse(CheckCase.cell(unsure, REFERENCE).verdict() == Verdict.CLEAR);
    }

    private static org.cresthaul.route.Route approach(String accuracy) {
        return CheckCase.route(CheckCase.crossingProperties(CheckCase.LEVEL_POINTS, "10 mm")
                + ", \"approachBefore\": {\"grade\": \"0 %\", \"accuracy\": \"" + accuracy
                + "\"}, \"approachAfter\": {\"grade\": \"0 %\", \"accuracy\": \"" + accuracy + "\"}");
    }

    @ParameterizedTest
    @CsvSource({"4, tight", "3, clear", "2, clear"})
    void pointsFartherApartThanTenFeetNearATrackLimitTheVerdict(double gapM, String verdict) {
        StringBuilder points = new StringBuilder();
        for (int i = -12; i <= 12; i++) {
            points.append(points.isEmpty() ? "" : ",").append("[\"" + i * gapM + " m\",\"0 m\"]");
        }
        Report report = CheckCase.check(CheckCase.crossing(points.toString(), "1 mm"), new Margins(0, 0));
        assertEquals(verdict, CheckCase.cell(report, REFERENCE).verdict().word());
    }

    /**
     * The load stands 4.1 m high. Posted heights carry 3 in, and 0.30 m more is wanted where the road under the
     * structure is not known: clear from 4.1 + 3 in margin + √(76.2² + 10² + 15²) mm + 0.30 = 4.5545 m.
     */
    @ParameterizedTest
    @CsvSource({
        "posted, 16 ft, clear",
        "posted, 4.56 m, clear",
        "posted, 4.55 m, tight",
        "posted, 14 ft 6 in, tight",
        "posted, 4.15 m, contact",
        "posted, 4.05 m, contact",
        "unknown, 30 ft, tight",
        "unknown, 4.05 m, contact",
    })
    void aSingleHeightOverAnUnknownRoad(String measured, String height, String verdict) {
        Report report = CheckCase.check(
                CheckCase.route("\"hazard\": \"low-structure\", \"measured\": \"" + measured + "\", \"clearance\": \""
                        + height + "\", \"extent\": [\"-5 m\", \"5 m\"]"),
                Margins.defaults());
        assertEquals(verdict, CheckCase.cell(report, REFERENCE).verdict().word());
        assertNull(CheckCase.cell(report, REFERENCE).ground());
    }

    @Test
    void aStructureOfUnknownHeightIsNotSurveyed() {
        Report report = CheckCase.check(
                CheckCase.route("\"hazard\": \"low-structure\", \"measured\": \"unknown\""), new Margins(0, 0));
        assertEquals(List.of("not surveyed"), CheckCase.verdicts(report));
    }

    /**
     * Load 4.1 m at the reference notch; a notch is 3/4 in at the deck front, and the load's top is ahead of mid-deck.
     */
    @Test
    void aHigherNotchStrikesWhereALowerOneClears() {
        Report report = CheckCase.check(
                CheckCase.route("\"hazard\": \"low-structure\", \"measured\": \"surveyed\","
                        + " \"survey\": {\"accuracy\": \"1 mm\", \"source\": \"level\"},"
                        + " \"profile\": [{\"line\": \"center\", \"points\": [" + CheckCase.LEVEL_POINTS + "]}],"
                        + " \"approachBefore\": {\"grade\": \"0 %\", \"accuracy\": \"0 %\"},"
                        + " \"approachAfter\": {\"grade\": \"0 %\", \"accuracy\": \"0 %\"},"
                        + " \"soffit\": [[\"-5 m\", \"4.105 m\"], [\"5 m\", \"4.105 m\"]]"),
                new Margins(0, 0));
        assertTrue(CheckCase.cell(report, "down/none/1").overhead().valueM() > 0.015);
        assertTrue(CheckCase.cell(report, "down/none/4").overhead().valueM() < 0);
        assertEquals(Verdict.CONTACT, CheckCase.cell(report, "down/none/4").verdict());
    }

    /**
     * check-values O2 to O4 (Traffic Signs Manual ch. 4 §7.11; TxDOT sign manual; MUTCD 2009 §2C.27), in the report.
     */
    @ParameterizedTest
    @CsvSource({
        "14 ft 9 in, 'TxDOT rule', '14 ft 6 in', false",
        "14 ft 6 in, 'UK rules', '14 ft 3 in', false",
        "14 ft 5 in, 'TxDOT rule', '14 ft 2 in', true",
    })
    void aSurveyedStructureTellsWhatItsSignWouldRead(String measured, String rule, String sign, boolean w12) {
        Report report = CheckCase.check(
                CheckCase.route(
                        "\"hazard\": \"low-structure\", \"measured\": \"surveyed\", \"clearance\": \"" + measured
                                + "\", \"extent\": [\"-5 m\", \"5 m\"],"
                                + " \"survey\": {\"accuracy\": \"5 mm\", \"source\": \"rod\"}"),
                Margins.defaults());
        List<String> notes = report.hazards().get(0).notes();
        assertTrue(notes.stream().anyMatch(n -> n.contains(rule) && n.contains(sign)), notes.toString());
        assertEquals(w12, notes.stream().anyMatch(n -> n.contains("W12-2")), notes.toString());
    }

    @Test
    void theSameQuestionGetsTheSameAnswer() {
        var route = CheckCase.crossing(CheckCase.points(s -> Math.max(0, 0.3 - 0.03 * Math.abs(s))), "5 mm");
        assertEquals(CheckCase.check(route, Margins.defaults()), CheckCase.check(route, Margins.defaults()));
    }

    @Test
    void routeVerdictsCountEveryHazard() {
        Report report = CheckCase.check(CheckCase.crossing(CheckCase.LEVEL_POINTS, "10 mm"), Margins.defaults());
        assertEquals(32, report.configurations().size(), "4 notches, 2 lift states, 4 booster states");
        for (ConfigurationVerdict c : report.configurations()) {
            assertEquals(1, c.clear() + c.tight() + c.contact() + c.notSurveyed());
            assertNotNull(CheckCase.cell(report, c.key()));
        }
    }
}
