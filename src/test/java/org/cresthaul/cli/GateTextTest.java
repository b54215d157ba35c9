package org.cresthaul.cli;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.cresthaul.check.RouteCheck;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.CornerLayoutFileTest;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.report.BackingLine;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.units.RoundedFigures;
import org.cresthaul.units.UnitSystem;
import org.junit.jupiter.api.Test;

/** The text report tells a gate in the terms of backing, with the report's own figures. */
class GateTextTest {
    @Test
    void everyFigureOfTheBackingIsInTheText() throws Exception {
        Rig rig = RigFile.parse(RigTexts.RIG);
        Report report = RouteCheck.check(
                new Haul(
                        RouteFile.parse(CornerLayoutFileTest.GATE),
                        rig,
                        rig.stances().get(0),
                        Margins.defaults()),
                new Inputs("0".repeat(64), "0".repeat(64)));
        String text = new ReportText(UnitSystem.METRIC).of(report).replaceAll("\\s+", " ");
        RoundedFigures figures = new RoundedFigures(UnitSystem.METRIC);
        for (ReportCell cell : report.hazards().get(0).cells()) {
            BackingLine b = cell.corner().backing();
            assertTrue(
                    text.contains(
                            "stop with the steer axle " + figures.distance(b.stopM()) + " past the middle of the gate, "
                                    + b.edgeSide() + " steer tire " + figures.distance(b.edgeM())),
                    cell.configuration() + b + text);
            assertTrue(
                    text.contains(
                            "wheel over to the " + b.firstWay() + " with the steer axle " + figures.distance(b.wheelM())
                                    + " past the middle of the gate; radius " + figures.distance(b.radiusM())
                                    + "; wheels straight with it "
                                    + figures.distance(Math.abs(b.straightM()))),
                    cell.configuration() + b + text);
            assertTrue(
                    b.pivot() == null || text.contains("the booster's pivot " + b.pivot()), cell.configuration() + b);
        }
    }
}
