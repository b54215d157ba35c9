package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import java.util.function.DoubleBinaryOperator;
import java.util.function.DoubleUnaryOperator;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.report.GapFinding;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.route.Route;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.JsonEdit;
import org.junit.jupiter.api.Test;

/** Gaps between units where a hazard is driven in several ways, and where nothing is known of the road. */
class UnitsAtPlacesTest {
    private static final String ALONE = "down/none/3";
    private static final double[] RIGHT_M = {-1.6, 0, 1.6};
    /** A driver keeps within half a foot of the line. */
    private static final double DRIVEN_OFF_M = 0.1524;
    /** A search's width, and what figures are rounded to. */
    private static final double CLOSE_M = 4e-4;

    private static Rig rig(String text) {
        try {
            return RigFile.parse(text);
        } catch (InputRejected e) {
            throw new IllegalArgumentException(e);
        }
    }

    /** The gooseneck's underside 20 cm above the frame, so that a crest brings it down on it. */
    private static Rig lowGooseneck() {
        return rig(JsonEdit.edit(RigTexts.RIG, "/stances/0/trailer/underside", """
                [{"x": "-15.2 m", "h": "0.5 m"}, {"x": "-10.9 m", "h": "0.45 m"}, {"x": "-10.8 m", "h": "0.3 m"},
                 {"x": "-3.4 m", "h": "0.3 m"}, {"x": "-3.3 m", "h": "1.1 m", "part": "gooseneck"},
                 {"x": "0.6 m", "h": "1.25 m", "part": "nose"}]"""));
    }

    /** The rear drive tire up into the gooseneck: they touch wherever they stand. */
    private static Rig touching() {
        return rig(JsonEdit.edit(RigTexts.RIG, "/stances/0/trailer/underside", """
                [{"x": "-15.2 m", "h": "0.5 m"}, {"x": "-10.9 m", "h": "0.45 m"}, {"x": "-10.8 m", "h": "0.3 m"},
                 {"x": "-3.4 m", "h": "0.3 m"}, {"x": "-3.3 m", "h": "0.5 m", "part": "gooseneck"},
                 {"x": "0.6 m", "h": "1.25 m", "part": "nose"}]"""));
    }

    private static Route road(DoubleBinaryOperator surface) {
        StringBuilder lines = new StringBuilder();
        for (double y : RIGHT_M) {
            lines.append(lines.isEmpty() ? "" : ", ")
                    .append(String.format(
                            Locale.ROOT,
                            "{\"line\": \"line %.1f\", \"offset\": \"%.1f m\", \"points\": [%s]}",
                            y,
                            y,
                            CheckCase.points(s -> surface.applyAsDouble(s, y))));
        }
        return CheckCase.route("\"hazard\": \"dip\", \"survey\": {\"accuracy\": \"1 mm\", \"source\": \"level\"},"
                + "\"approachBefore\": {\"grade\": \"0 %\", \"accuracy\": \"0 %\"},"
                + "\"approachAfter\": {\"grade\": \"0 %\", \"accuracy\": \"0 %\"}, \"profile\": [" + lines + "]");
    }

    private static GapFinding units(Route route, Rig rig) {
        return new PlaceCheck(new Haul(route, rig, rig.stances().get(0), new Margins(0, 0)))
                .inTransport("H1", ALONE)
                .units();
    }

    private static double crest(double distanceM) {
        return Math.max(0, 0.35 - 0.035 * Math.abs(distanceM));
    }

    private static GapFinding onOneLine(DoubleUnaryOperator surface, Rig rig) {
        return units(CheckCase.crossing(CheckCase.points(surface::applyAsDouble), "1 mm"), rig);
    }

    /**
     * A crest that is flat on the left and whole on the right, straight across between: an axle's middle, driven d to
     * the right, stands on (d + 1.6) / 3.2 of it. It is most for who keeps half a foot to the right.
     */
    @Test
    void theWorstOfAllWaysOfDrivingIsTold() {
        Rig rig = lowGooseneck();
        GapFinding across = units(road((s, y) -> crest(s) * (y + 1.6) / 3.2), rig);
        double share = (DRIVEN_OFF_M + 1.6) / 3.2;
        GapFinding alone = onOneLine(s -> share * crest(s), rig);
        GapFinding middle = onOneLine(s -> 0.5 * crest(s), rig);
        assertEquals(alone.valueM(), across.valueM(), CLOSE_M);
        assertTrue(middle.valueM() > across.valueM() + 5 * CLOSE_M, middle.valueM() + ", across " + across.valueM());
        assertEquals(DRIVEN_OFF_M, across.drivenM(), 1e-4);
        assertEquals(alone.against().bendRad(), across.against().bendRad(), 2e-4);
    }

    /** The other way round it is the way half a foot to the left. */
    @Test
    void theOtherSideCountsAlike() {
        Rig rig = lowGooseneck();
        GapFinding right = units(road((s, y) -> crest(s) * (1.6 + y) / 3.2), rig);
        GapFinding left = units(road((s, y) -> crest(s) * (1.6 - y) / 3.2), rig);
        assertEquals(right.valueM(), left.valueM(), 1.01e-4);
        assertEquals(-DRIVEN_OFF_M, left.drivenM(), 1e-4);
    }

    /**
     * A road that falls across alike everywhere does not bend units: what a tape finds standing level is found there.
     */
    @Test
    void aCrossfallBendsNothing() {
        GapFinding fall = units(road((s, y) -> 0.02 * y), rig(RigTexts.RIG));
        assertEquals(0.25, fall.valueM(), CLOSE_M);
        assertEquals(0, fall.against().bendRad(), 1e-4);
    }

    /** Ways between which the road changes ask for more: what lies between two of them is not looked at. */
    @Test
    void whatLiesBetweenTwoWaysIsCountedIn() {
        Rig rig = lowGooseneck();
        GapFinding even = units(road((s, y) -> crest(s)), rig);
        GapFinding uneven = units(road((s, y) -> crest(s) * (y == 0 ? 1 : 0.8)), rig);
        assertTrue(
                uneven.uncertaintyM() > even.uncertaintyM(), uneven.uncertaintyM() + ", even " + even.uncertaintyM());
    }

    private static final List<String> NOTHING_KNOWN = List.of(
            "\"hazard\": \"rail-crossing\"",
            "\"hazard\": \"dip\"",
            "\"hazard\": \"crest\"",
            "\"hazard\": \"low-structure\", \"measured\": \"unknown\"",
            "\"hazard\": \"corner\"");

    /** Units that have all the room in the world are no reason to call a place clear of which nothing is known. */
    @Test
    void unitsMakeNoPlaceClearThatIsNotSurveyed() {
        for (String hazard : NOTHING_KNOWN) {
            Report report = CheckCase.check(CheckCase.route(hazard), new Margins(0, 0));
            assertEquals(List.of(Verdict.NOT_SURVEYED.word()), CheckCase.verdicts(report), hazard);
        }
    }

    /** Nor do units that touch wherever they stand pass for clear there. */
    @Test
    void unitsThatTouchAreClearAtNoPlaceThatIsNotSurveyed() {
        Rig rig = touching();
        for (String hazard : NOTHING_KNOWN) {
            Report report = RouteCheck.check(
                    new Haul(CheckCase.route(hazard), rig, rig.stances().get(0), new Margins(0, 0)),
                    new Inputs("route", "rig"));
            for (String verdict : CheckCase.verdicts(report)) {
                assertNotEquals("clear", verdict, hazard);
                assertNotEquals("tight", verdict, hazard);
            }
        }
    }
}
