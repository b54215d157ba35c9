package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.cresthaul.clearance.GroundClearance;
import org.cresthaul.clearance.Passage;
import org.cresthaul.report.GapFinding;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Leveling;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.route.Route;
import org.junit.jupiter.api.Test;

/** The gap told is the least of all, and where another decides the verdict, that one stands beside it. */
class DecidingGapTest {
    /**
     * Two wheel paths over one crest; the survey of the second ends early, and nobody declared how the road goes on.
     */
    private static Route crest(int step) {
        StringBuilder left = new StringBuilder();
        StringBuilder right = new StringBuilder();
        for (int x = -30; x <= 30; x++) {
            double z = -(0.0004 + 0.00002 * step) * x * x;
            String at = "[\"" + x + " m\",\"" + Math.round(z * 1e5) / 100.0 + " mm\"]";
            left.append(left.isEmpty() ? "" : ",").append(at);
            if (Math.abs(x) <= 7) {
                double lower = z - 0.02 * Math.max(0, 3 - Math.abs(x)) / 3;
                right.append(right.isEmpty() ? "" : ",")
                        .append("[\"" + x + " m\",\"" + Math.round(lower * 1e5) / 100.0 + " mm\"]");
            }
        }
        return CheckCase.route("\"hazard\": \"crest\", \"survey\": {\"accuracy\": \"5 mm\", \"source\": \"level\"},"
                + "\"profile\": [{\"line\": \"left\", \"points\": [" + left + "]},"
                + "{\"line\": \"right\", \"points\": [" + right + "]}]");
    }

    @Test
    void theLeastIsToldAndTheOneThatDecidesBesideIt() {
        LevelStance stance = CheckCase.rig().stances().get(0);
        int elsewhere = 0;
        int cells = 0;
        for (int step = 0; step < 24; step += 3) {
            Route route = crest(step);
            Report report = CheckCase.check(route, Margins.defaults());
            for (CheckedConfiguration c : CheckedConfiguration.listOf(CheckCase.rig(), stance)) {
                if (!c.booster().word().equals("none")) {
                    continue;
                }
                double least = Double.POSITIVE_INFINITY;
                for (RoadProfile line : route.hazards().get(0).lines()) {
                    for (Leveling leveling : c.transport().levelings()) {
                        least = Math.min(
                                least,
                                GroundClearance.least(new Passage(stance, line), c.transport(), leveling)
                                        .valueM());
                    }
                }
                ReportCell cell = CheckCase.cell(report, c.key());
                GapFinding told = cell.ground();
                cells++;
                // Both are within half a millimeter of the truth.
                assertEquals(least, told.valueM(), 0.0006, c.key() + " " + step);
                boolean falls = told.valueM() - told.provenWithinM() < told.requiredM();
                if (cell.verdict() == Verdict.TIGHT && !falls && told.gradeDeclared()) {
                    assertNotNull(told.deciding(), c.key() + " " + step + ": " + cell);
                }
                if (told.deciding() != null) {
                    elsewhere++;
                    GapFinding other = told.deciding();
                    assertTrue(other.valueM() >= told.valueM() - 0.0006, "the least gap is the one told");
                    assertTrue(
                            other.valueM() - other.provenWithinM() < other.requiredM(),
                            "what decides falls short of its own need: " + other);
                    assertTrue(
                            other.valueM() - other.requiredM() < told.valueM() - told.requiredM() + 0.0006
                                    || cell.verdict() == Verdict.CONTACT,
                            "it is nearer to its need than the one told");
                }
            }
        }
        System.out.println("deciding elsewhere: " + elsewhere + " of " + cells);
        assertTrue(elsewhere > 0 && elsewhere < cells, elsewhere + " of " + cells);
    }
}
