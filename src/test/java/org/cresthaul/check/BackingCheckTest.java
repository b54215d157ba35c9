package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.CornerLayoutFileTest;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.language.English;
import org.cresthaul.report.BackingLine;
import org.cresthaul.report.CornerFinding;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.report.PivotState;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.road.Corner;
import org.cresthaul.road.CornerTemplate;
import org.cresthaul.road.CornerTemplate.RoadWidths;
import org.cresthaul.road.Gate;
import org.cresthaul.route.Route;
import org.cresthaul.turning.CornerFit;
import org.cresthaul.turning.CornerSpace;
import org.cresthaul.turning.TurningCombination;
import org.cresthaul.units.JsonEdit;
import org.cresthaul.view.CornerView;
import org.cresthaul.view.MarkKind;
import org.junit.jupiter.api.Test;

/** A gate that is backed into: judged as the pull-out, told in the terms of backing, never clear. */
class BackingCheckTest {
    private static final String GATE = "/features/1/properties/template/gate";

    private static List<ReportCell> cells(String route) throws Exception {
        Route read = RouteFile.parse(route);
        Rig rig = RigFile.parse(RigTexts.RIG);
        return RouteCheck.check(new Haul(read, rig, rig.stances().get(0), Margins.defaults()), new Inputs("0", "0"))
                .hazards()
                .get(0)
                .cells();
    }

    @Test
    void aGateIsNeverBetterThanTightAndSaysWhereToStop() throws Exception {
        // 60 ft of gate on a road held by escorts: a pull-out with more than its margin.
        String wide = JsonEdit.edit(CornerLayoutFileTest.GATE, GATE + "/width", "\"60 ft\"");
        int tight = 0;
        for (ReportCell cell : cells(wide)) {
            assertNotEquals(Verdict.CLEAR, cell.verdict());
            CornerFinding c = cell.corner();
            assertNotNull(c.backing(), cell.configuration());
            BackingLine line = c.backing();
            if (cell.verdict() != Verdict.TIGHT) {
                continue;
            }
            tight++;
            assertTrue(c.onLineM() > c.requiredM(), "the pull-out alone would be clear: " + c.onLineM());
            assertTrue(line.stopM() >= line.wheelM(), line.toString());
            assertTrue(line.wheelM() > 0, "the tractor is past the gate when the wheel goes over: " + line);
            assertTrue(
                    String.join("; ", English.of(cell.reasons())).contains("spotter"),
                    cell.reasons().toString());
            assertEquals(cell.configuration().contains("trailing"), line.pivot() != null, cell.configuration());
        }
        assertTrue(tight > 0, "some get in");
        for (ReportCell cell : cells(JsonEdit.edit(CornerLayoutFileTest.GATE, GATE + "/width", "\"9 ft\""))) {
            assertEquals(Verdict.CONTACT, cell.verdict(), cell.configuration());
        }
        for (ReportCell cell : cells(CornerLayoutFileTest.U_TURN)) {
            assertNull(cell.corner().backing());
        }
    }

    /** The edge that is told is the one along which is driven: on the left where one drives on the left. */
    @Test
    void theEdgeIsOnTheSideOnWhichOneDrives() throws Exception {
        for (String side : List.of("right", "left")) {
            String route = JsonEdit.edit(
                    CornerLayoutFileTest.GATE, "/features/1/properties/template/drives", "\"" + side + "\"");
            for (ReportCell cell : cells(route)) {
                assertEquals(side, cell.corner().backing().edgeSide().word(), cell.configuration());
                assertEquals(side, cell.corner().line().edgeSide().word(), cell.configuration());
            }
        }
    }

    /**
     * Drawn in the order it is driven: from straight on the road, backward, to straight in the drive, which lies north.
     */
    @Test
    void isDrawnAsItIsBacked() throws Exception {
        Route route = RouteFile.parse(CornerLayoutFileTest.GATE);
        Rig rig = RigFile.parse(RigTexts.RIG);
        String key = CheckedConfiguration.listOf(rig, rig.stances().get(0)).stream()
                .map(CheckedConfiguration::key)
                .filter(k -> k.contains("none"))
                .findFirst()
                .orElseThrow();
        CornerView view = CornerView.of(new Haul(route, rig, rig.stances().get(0), Margins.defaults()), "C1", key);
        assertTrue(view.backing());
        CornerView.PositionView first = view.positions().get(0);
        CornerView.PositionView last = view.positions().get(view.positions().size() - 1);
        assertEquals(0, first.stationM(), 0);
        assertEquals(0, first.poses().get(1).get(2), 1e-3);
        assertTrue(first.poses().get(0).get(0) > 50 && last.poses().get(1).get(1) > 10, "from the road into the drive");
        assertEquals(-1, Math.sin(last.poses().get(1).get(2)), 1e-3);
        for (int i = 1; i < view.positions().size(); i++) {
            assertTrue(view.positions().get(i).stationM()
                    > view.positions().get(i - 1).stationM());
        }
        CornerView.PositionView over = view.positions().stream()
                .filter(p -> Math.abs(p.steerRad()) > Math.toRadians(1))
                .findFirst()
                .orElseThrow();
        CornerView.MarkView mark = view.marks().stream()
                .filter(m -> m.kind() == MarkKind.WHEEL_OVER)
                .findFirst()
                .orElseThrow();
        assertEquals(view.positions().indexOf(over), mark.position());
        assertTrue(mark.words().toString().endsWith(over.steerRad() > 0 ? "left" : "right"));
        // The returns' ends, by hand: 4 m of opposing lane, a gate of 24 ft, returns of 10 and 15 ft.
        List<List<Double>> places = view.marks().stream()
                .filter(m -> m.kind() == MarkKind.LANDMARK)
                .map(m -> m.place())
                .toList();
        assertEquals(2, places.size());
        assertTrue(
                places.stream()
                        .anyMatch(p -> Math.abs(p.get(0) - (3.6576 + 4.572)) < 0.1 && Math.abs(p.get(1) - 4) < 0.01),
                places.toString());
        assertTrue(
                places.stream()
                        .anyMatch(p -> Math.abs(p.get(0) - 3.6576) < 0.01 && Math.abs(p.get(1) - 4 - 4.572) < 0.1),
                places.toString());
    }

    /** Locked or free, the one that leaves more room is told. */
    @Test
    void thePivotIsTheOneThatLeavesMoreRoom() throws Exception {
        Rig rig = RigFile.parse(RigTexts.RIG);
        LevelStance stance = rig.stances().get(0);
        TurningCombination free = TurningCombination.of(stance, LiftState.DOWN, BoosterState.TRAILING)
                .orElseThrow();
        RoadWidths road = new RoadWidths(6, 6, 1, true);
        Corner corner = new CornerTemplate(
                        Math.toRadians(90),
                        road,
                        road,
                        new Gate(9, 6, 6),
                        0,
                        List.of(),
                        List.of(),
                        OptionalDouble.of(0))
                .corner();
        double[] rooms = new double[2];
        CornerFit.Wanted wanted = new CornerFit.Wanted(0.4, 0.1, 0);
        for (int i = 0; i < 2; i++) {
            TurningCombination t = i == 0 ? free : free.pivotLocked();
            CornerFit fit = CornerFit.of(new CornerSpace(corner, true), t, List.of(), wanted);
            rooms[i] = fit.tightest().valueM();
            assertEquals(
                    i == 0 ? PivotState.FREE : PivotState.LOCKED,
                    BackingLines.of(corner, fit, BoosterState.TRAILING).pivot());
            assertNull(BackingLines.of(corner, fit, BoosterState.NONE).pivot());
        }
        assertNotEquals(rooms[0], rooms[1], 1e-6);
    }
}
