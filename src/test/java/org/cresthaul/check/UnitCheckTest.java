package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.language.English;
import org.cresthaul.report.GapFinding;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.report.RaiseFinding;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.LimitedPlace;
import org.cresthaul.route.Route;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.JsonEdit;
import org.junit.jupiter.api.Test;

/**
 * Coupled units against each other, by hand on an invented rig: the kingpin is 1.25 m high, 5 m behind the steer axle.
 */
class UnitCheckTest {
    private static final String UNDERSIDE = "/stances/0/trailer/underside";
    private static final String TOPSIDE = "/stances/0/tractor/topside";
    private static final String ALONE = "down/none/3";
    private static final double MARGIN_M = 0.0254;
    /** What figures are rounded to, and what the deck front's height is off by for the slope standing for the angle. */
    private static final double CLOSE_M = 2e-4;

    private static Rig rig(String text) {
        try {
            return RigFile.parse(text);
        } catch (InputRejected e) {
            throw new IllegalArgumentException(e);
        }
    }

    /** The rig with its gooseneck's underside so high at the deck front and at the nose, and the nose so far ahead. */
    private static String gooseneck(double rearH, double noseX, double noseH) {
        String with = JsonEdit.edit(RigTexts.RIG, UNDERSIDE, """
                [{"x": "-15.2 m", "h": "0.5 m"}, {"x": "-10.9 m", "h": "0.45 m"}, {"x": "-10.8 m", "h": "0.3 m"},
                 {"x": "-3.4 m", "h": "0.3 m"}, {"x": "-3.3 m", "h": "%s m", "part": "gooseneck"},
                 {"x": "%s m", "h": "%s m", "part": "nose"}]""".formatted(rearH, noseX, noseH));
        return JsonEdit.edit(with, "/stances/0/trailer/topside", """
                [{"x": "-15.2 m", "h": "1 m"}, {"x": "-3.4 m", "h": "1 m"}, {"x": "-3.3 m", "h": "1.7 m"},
                 {"x": "%s m", "h": "1.7 m"}]""".formatted(noseX));
    }

    private static Report check(String points, String rigText) {
        Rig rig = rig(rigText);
        return RouteCheck.check(
                new Haul(CheckCase.crossing(points, "1 mm"), rig, rig.stances().get(0), new Margins(0, 0)),
                new Inputs("route", "rig"));
    }

    private static PlaceCheck place(String points, String rigText, Margins margins) {
        Rig rig = rig(rigText);
        return new PlaceCheck(
                new Haul(CheckCase.crossing(points, "1 mm"), rig, rig.stances().get(0), margins));
    }

    private static ReportCell cell(String points, String rigText, String configuration) {
        return place(points, rigText, new Margins(0, 0)).inTransport("H1", configuration);
    }

    private static String hump(double heightM) {
        return CheckCase.points(x -> Math.max(0, heightM * (1 - Math.abs(x) / 4)));
    }

    /** The rear drive tire, 0.7 m behind the plate, its top 0.25 m below the gooseneck's level underside. */
    @Test
    void standingLevelTheGapIsWhatATapeWouldFind() {
        GapFinding units = cell(CheckCase.LEVEL_POINTS, RigTexts.RIG, ALONE).units();

        assertEquals(0.25, units.valueM(), CLOSE_M);
        assertEquals("trailer", units.unit());
        assertEquals("tractor", units.against().unit());
        assertEquals("drive tire", units.against().part());
        assertEquals(0, units.against().bendRad(), 1e-4);
        assertEquals(Verdict.CLEAR, units.verdict());
    }

    /**
     * Steer axle and first drive axle 4.4 m apart, kingpin and first trailer axle 11.6 m: error propagation by hand.
     */
    @Test
    void theNeedIsTheMarginAndWhatTapeSurveyAndRideDoThroughTheBend() {
        double share = 5 / 4.4;
        double steer = (1 - share) / 11.6 - 1 / 4.4;
        double drive = share / 11.6 + 1 / 4.4;
        double group = -1 / 11.6;
        double perHeight = Math.sqrt(steer * steer + drive * drive + group * group);
        double out = Math.hypot(0.7, 0.75);
        double uncertainty = Math.hypot(Math.sqrt(2) * 0.010, out * perHeight * Math.hypot(0.001, 0.015));

        GapFinding units = cell(CheckCase.LEVEL_POINTS, RigTexts.RIG, ALONE).units();

        assertEquals(uncertainty, units.uncertaintyM(), 1.01e-4);
        assertEquals(MARGIN_M + uncertainty, units.requiredM(), 1.01e-4);
    }

    /**
     * The gooseneck is held by the plate and turns with the deck front, 3.4 m behind the kingpin and 0.65 m below it.
     */
    @Test
    void aNotchTurnsTheGooseneckAboutTheKingpin() {
        Report report = check(CheckCase.LEVEL_POINTS, RigTexts.RIG);
        for (Object[] notch : new Object[][] {{"1", -1.25}, {"2", -0.625}, {"4", 0.625}}) {
            double down = -(double) notch[1] * 0.0254;
            double bend = Math.atan2(0.65 + down, 3.4) - Math.atan2(0.65, 3.4);
            GapFinding units = CheckCase.cell(report, "down/none/" + notch[0]).units();
            assertEquals(
                    0.75 * Math.cos(bend) - 0.7 * Math.sin(bend) - 0.5, units.valueM(), CLOSE_M, "notch " + notch[0]);
        }
    }

    @Test
    void aCrestThatTheDeckClearsCanStillBeContactBetweenUnits() {
        // Up at 3.5 % and down again: the deck keeps off the top, the gooseneck comes down on the frame behind the
        // plate.
        String crest = CheckCase.points(x -> Math.max(0, 0.35 - 0.035 * Math.abs(x)));
        String low = gooseneck(0.7, 0.6, 1.25);
        ReportCell level = cell(CheckCase.LEVEL_POINTS, low, ALONE);
        ReportCell contact = cell(crest, low, ALONE);

        assertEquals(Verdict.CLEAR, level.verdict(), level.reasons().toString());
        assertTrue(level.units().valueM() > 0.05, level.units().toString());
        assertEquals(Verdict.CLEAR, contact.ground().verdict());
        assertEquals(Verdict.CLEAR, cell(crest, RigTexts.RIG, ALONE).verdict(), "with more room there");
        assertTrue(contact.units().against().bendRad() > 0.03, "the trailer's nose is up against the tractor");
        assertEquals(Verdict.CONTACT, contact.verdict());
        assertTrue(contact.units().valueM() < 0, contact.units().toString());
        assertTrue(
                contact.reasons().stream()
                        .anyMatch(r -> r.toString().equals("between tractor and trailer: they touch")),
                contact.reasons().toString());
    }

    @Test
    void lessThanTheMarginIsTight() {
        // 4 cm on level ground, where 4.1 are needed.
        String box = JsonEdit.edit(RigTexts.RIG, TOPSIDE, """
                [{"x": "-6.5 m", "h": "0.9 m"}, {"x": "-6.2 m", "h": "0.9 m"}, {"x": "-6.2 m", "h": "1.21 m", "part": "box"},
                 {"x": "-6 m", "h": "1.21 m", "part": "box"}, {"x": "-6 m", "h": "0.9 m"}, {"x": "-2.2 m", "h": "0.9 m"},
                 {"x": "-2.2 m", "h": "3.1 m"}, {"x": "0.9 m", "h": "3.1 m"}]""");
        ReportCell cell = cell(CheckCase.LEVEL_POINTS, box, ALONE);

        assertEquals(0.04, cell.units().valueM(), CLOSE_M);
        assertEquals(Verdict.TIGHT, cell.verdict());
        assertEquals("box", cell.units().against().part());
        assertEquals(
                List.of("between tractor and trailer: no contact, but less than the required margin"),
                English.of(cell.reasons()));
        assertEquals(Verdict.CLEAR, cell.ground().verdict());
    }

    /** What overlaps as it is drawn is clear nowhere, whatever is judged there. */
    @Test
    void unitsDrawnIntoEachOtherAreContactAtEveryPlace() throws Exception {
        ReportCell level = cell(CheckCase.LEVEL_POINTS, gooseneck(0.5, 0.6, 1.25), ALONE);
        assertEquals(Verdict.CONTACT, level.verdict());
        assertTrue(
                level.reasons()
                        .get(0)
                        .toString()
                        .startsWith("between tractor and trailer: they touch standing level, as they are drawn"),
                level.reasons().toString());
        assertNull(level.raise(), "no raise parts them");

        Route route = RouteFile.parse(Files.readAllBytes(Path.of("sample-routes/alder-county.route.geojson")));
        String sample = Files.readString(Path.of("sample-routes/lowbed-loaded.rig.json"));
        Rig drawn = rig(JsonEdit.edit(sample, TOPSIDE + "/0/h", "\"4 ft 6 in\""));
        PlaceCheck check = new PlaceCheck(new Haul(route, drawn, drawn.stances().get(0), Margins.defaults()));
        int bridges = 0;
        for (Hazard hazard : route.hazards()) {
            if (hazard instanceof LimitedPlace) {
                ReportCell cell = check.inTransport(hazard.place().id(), "down/trailing/4");
                assertEquals(Verdict.CONTACT, cell.verdict(), hazard.place().id());
                assertTrue(
                        cell.reasons().toString().contains("they touch standing level"),
                        cell.reasons().toString());
                bridges++;
            }
        }
        assertEquals(3, bridges);
    }

    /** A box on the tractor ahead of the plate: the nose comes down on it as the front goes up. */
    @Test
    void noRaiseBringsTheNoseDownOnTheTractor() {
        String free = gooseneck(1.25, 1.1, 1.25);
        String boxed = JsonEdit.edit(free, TOPSIDE, """
                [{"x": "-6.5 m", "h": "0.9 m"}, {"x": "-4.3 m", "h": "0.9 m"}, {"x": "-4.3 m", "h": "1.13 m", "part": "box"},
                 {"x": "-3.9 m", "h": "1.13 m", "part": "box"}, {"x": "-3.9 m", "h": "0.9 m"}, {"x": "-2.2 m", "h": "0.9 m"},
                 {"x": "-2.2 m", "h": "3.1 m"}, {"x": "0.9 m", "h": "3.1 m"}]""");
        int told = 0;
        int refused = 0;
        for (double height = 0.2; height < 0.42; height += 0.02) {
            ReportCell without = cell(hump(height), free, ALONE);
            ReportCell with = cell(hump(height), boxed, ALONE);
            if (without.raise() == null) {
                continue;
            }
            if (with.raise() == null) {
                refused++;
                assertNotNull(with.raiseNote());
            } else {
                told++;
                ReportCell raised = raised(hump(height), boxed, with.raise());
                assertTrue(
                        raised.units().valueM() >= raised.units().requiredM() - 1e-4, height + ": " + raised.units());
            }
        }
        assertTrue(told > 0 && refused > 0, told + " told, " + refused + " refused");
    }

    private static ReportCell raised(String points, String rigText, RaiseFinding raise) {
        return place(points, rigText, new Margins(0, 0)).raised("H1", ALONE, raise.frontM(), raise.rearM());
    }

    @Test
    void theMarginIsAskedFor() {
        Margins wide = new Margins(0, 0, 0.15, 0.15, 0.6, 0.3);
        ReportCell cell = place(CheckCase.LEVEL_POINTS, RigTexts.RIG, wide).inTransport("H1", ALONE);
        assertEquals(Verdict.TIGHT, cell.verdict());
        assertEquals(0.3, cell.units().marginM(), 1e-9);
    }

    @Test
    void theReachOfTheCouplingIsReadAndBounded() throws Exception {
        Rig rig = rig(JsonEdit.edit(
                RigTexts.RIG,
                "/stances/0/tractor/fifthWheel",
                "{\"x\": \"-5 m\", \"h\": \"1.25 m\", \"reach\": \"0.75 m\"}"));
        assertEquals(0.75, rig.stances().get(0).tractor().plateReachM(), 1e-9);
        assertEquals(0.6096, rig(RigTexts.RIG).stances().get(0).tractor().plateReachM(), 1e-9);
        assertEquals(0.3048, rig(RigTexts.RIG).stances().get(0).trailer().hingeReachM(), 1e-9);
        InputRejected refused = assertThrows(
                InputRejected.class,
                () -> RigFile.parse(JsonEdit.edit(
                        RigTexts.RIG,
                        "/stances/0/trailer/boosterHinge",
                        "{\"x\": \"-15.2 m\", \"h\": \"0.8 m\", \"reach\": \"1 m\"}")));
        assertEquals(
                "/stances/0/trailer/boosterHinge/reach",
                refused.problems().get(0).pointer());
    }
}
