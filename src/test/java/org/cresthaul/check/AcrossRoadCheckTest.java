package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.DoubleBinaryOperator;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.report.GapFinding;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.route.Route;
import org.cresthaul.units.InputRejected;
import org.junit.jupiter.api.Test;

/** What a check says where lines tell how they run across the road; the rig is 2.6 m wide. */
class AcrossRoadCheckTest {
    private static final double[] FIVE = {-1.6, -0.4, 0, 0.4, 1.6};

    /** A rail 10 cm high at the hazard's point, between the wheels, which run on level ground. */
    private static double rail(double distanceM, double rightM) {
        return rightM == 0 && distanceM == 0 ? 0.1 : 0;
    }

    private static Route road(DoubleBinaryOperator surface, boolean offsets, double... rightM) {
        StringBuilder lines = new StringBuilder();
        for (double y : rightM) {
            lines.append(lines.isEmpty() ? "" : ", ")
                    .append(String.format(
                            Locale.ROOT,
                            "{\"line\": \"line %.1f\", %s\"points\": [%s]}",
                            y,
                            offsets ? "\"offset\": \"" + y + " m\", " : "",
                            CheckCase.points(s -> surface.applyAsDouble(s, y))));
        }
        return CheckCase.route("\"hazard\": \"dip\", \"survey\": {\"accuracy\": \"5 mm\", \"source\": \"level\"},"
                + "\"approachBefore\": {\"grade\": \"0 %\", \"accuracy\": \"0 %\"},"
                + "\"approachAfter\": {\"grade\": \"0 %\", \"accuracy\": \"0 %\"},"
                + "\"profile\": [" + lines + "]");
    }

    private static ReportCell firstCell(Report report) {
        return report.hazards().get(0).cells().get(0);
    }

    @Test
    void aRailBetweenTheWheelsCountsWhereItWasSurveyed() {
        Report level = CheckCase.check(road((s, y) -> 0, true, FIVE), Margins.defaults());
        Report rail = CheckCase.check(road(AcrossRoadCheckTest::rail, true, FIVE), Margins.defaults());
        GapFinding before = firstCell(level).ground();
        GapFinding after = firstCell(rail).ground();
        assertEquals(0.1, before.valueM() - after.valueM(), 2e-4);
        assertEquals(0.0, after.besideM());
        assertEquals(0.0, after.distanceM(), 1e-9);
        assertTrue(after.line().startsWith("line 0.0"), after.line());
        assertEquals("trailer", after.unit());
    }

    /** Only where a tire is does a place beside lie on the track; the deck's is half of its width to the side. */
    @Test
    void aPartOfTheDeckIsNoTireWhateverItIsCalled() throws InputRejected {
        Route route = road((s, y) -> y > 1 && s == 0 ? 0.1 : 0, true, FIVE);
        Rig named = RigFile.parse(
                RigTexts.RIG.replace("\"deck front\"", "\"raised tire\"").replace("\"deck rear\"", "\"raised tire\""));
        Haul haul = new Haul(route, named, named.stances().get(0), Margins.defaults());
        GapFinding tire =
                firstCell(RouteCheck.check(haul, new Inputs("route", "rig"))).ground();
        GapFinding deck = firstCell(CheckCase.check(route, Margins.defaults())).ground();
        assertTrue(tire.part().toString().contains("raised tire"), tire.toString());
        // The rig's deck is 2.6 m wide.
        assertEquals(1.3, Math.abs(deck.besideM()), 1e-9);
        assertEquals(deck.besideM(), tire.besideM());
        assertEquals(deck.valueM(), tire.valueM());
    }

    @Test
    void theNeedBesideTheMiddleGrowsByWhatARollErrs() {
        // The narrowest track is that of the duals of the drive axles. √(f² + ½ (half width / half track)²) against f,
        // times
        // 5 mm, and what rig and ride add in quadrature is the same. f is that of a line without offset.
        Report across = CheckCase.check(road((s, y) -> 0, true, -1.6, 1.6), Margins.defaults());
        Report along = CheckCase.check(road((s, y) -> 0, false, -1.6, 1.6), Margins.defaults());
        GapFinding edge = firstCell(across).ground();
        GapFinding middle = firstCell(along).ground();
        assertNotNull(edge.besideM());
        assertEquals(middle.valueM(), edge.valueM(), 1e-4);
        assertEquals(middle.unit(), edge.unit());
        double halfM = edge.unit().equals("tractor") ? 1.25 : 1.3;
        double share = halfM / halfTrackM();
        double more = 0.5 * 0.005 * 0.005 * share * share;
        assertEquals(Math.sqrt(middle.uncertaintyM() * middle.uncertaintyM() + more), edge.uncertaintyM(), 2e-4);
    }

    private static double halfTrackM() {
        return 0.5 * 2.5 - 0.33;
    }

    @Test
    void whatARaiseMustClearIsUnderAllOfTheWidth() {
        Route route = road((s, y) -> 2 * rail(s, y), true, FIVE);
        Report report = CheckCase.check(route, Margins.defaults());
        ReportCell raised = report.hazards().get(0).cells().stream()
                .filter(c -> c.raise() != null)
                .findFirst()
                .orElseThrow();
        RaisedCheck check = new RaisedCheck(
                new Haul(route, CheckCase.rig(), CheckCase.rig().stances().get(0), Margins.defaults()));
        double frontM = raised.raise().frontM();
        double rearM = raised.raise().rearM();
        Optional<RaisedCheck.Raised> there = check.at("H1", raised.configuration(), frontM, rearM);
        assertTrue(there.orElseThrow().isClear(), there.toString());
        assertEquals(0.0, there.orElseThrow().ground().besideM());
        assertFalse(check.at("H1", raised.configuration(), frontM - 0.005, rearM)
                .orElseThrow()
                .isClear());
    }

    @Test
    void linesWithoutOffsetsSayThatNothingBesideThemWasLookedAt() {
        Report report = CheckCase.check(road(AcrossRoadCheckTest::rail, false, -1.6, 1.6), Margins.defaults());
        assertTrue(report.hazards().get(0).notes().stream().anyMatch(n -> n.contains("between and beside")));
        assertNull(firstCell(report).ground().besideM());
        assertNull(firstCell(report).ground().drivenM());
    }

    @Test
    void withoutWidthsTheLinesAreJudgedOneByOneAndNothingIsClear() throws InputRejected {
        Rig narrow = RigFile.parse(RigTexts.RIG.replaceFirst("(?s),\\s*\"plan\": \\{.*?\\}\\}(?=\\s*[,}])", ""));
        assertTrue(narrow.stances().get(0).plan().isEmpty());
        Report report = RouteCheck.check(
                new Haul(road((s, y) -> 0, true, FIVE), narrow, narrow.stances().get(0), Margins.defaults()),
                new Inputs("route", "rig"));
        assertEquals(List.of("tight"), CheckCase.verdicts(report));
        assertTrue(
                firstCell(report).reasons().stream().anyMatch(r -> r.toString().contains("give its widths")));
    }

    @Test
    void aRoadOfManyPointsIsNotJudgedBetweenItsLinesAndNothingIsClear() {
        StringBuilder points = new StringBuilder("[\"-30 m\", \"0 m\"]");
        for (int i = -299; i < 220; i++) {
            points.append(String.format(Locale.ROOT, ", [\"%.1f m\", \"0 m\"]", 0.1 * i));
        }
        StringBuilder lines = new StringBuilder();
        for (String y : List.of("-1.6 m", "0 m", "1.6 m")) {
            lines.append(lines.isEmpty() ? "" : ", ")
                    .append("{\"line\": \"at " + y + "\", \"offset\": \"" + y + "\", \"points\": [" + points + "]}");
        }
        Report report = CheckCase.check(
                CheckCase.route("\"hazard\": \"dip\", \"survey\": {\"accuracy\": \"5 mm\","
                        + " \"source\": \"level\"}, \"approachBefore\": {\"grade\": \"0 %\", \"accuracy\": \"0 %\"},"
                        + "\"approachAfter\": {\"grade\": \"0 %\", \"accuracy\": \"0 %\"}, \"profile\": [" + lines
                        + "]"),
                Margins.defaults());
        assertEquals(List.of("tight"), CheckCase.verdicts(report));
        assertTrue(report.hazards().get(0).limits().stream()
                .anyMatch(l -> l.toString().contains("more than 1500 points")));
        assertNull(firstCell(report).ground().besideM());
    }
}
