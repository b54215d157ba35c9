package org.cresthaul.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.cresthaul.plan.PlanOptions;
import org.cresthaul.plan.RoadCase;
import org.cresthaul.units.UnitSystem;
import org.junit.jupiter.api.Test;

/** What a statement says of rail crossings in time: on what the time is based. */
class CrossingsOnStatementTest {
    private static Map<String, String> crossings() {
        RoadCase haul = RoadCase.sample("sorrel-valley", "lowbed-loaded");
        return Statement.of(
                        haul.plan(PlanOptions.defaults()),
                        haul.report(),
                        haul.route(),
                        haul.rig(),
                        haul.stance(),
                        UnitSystem.US_CUSTOMARY)
                .crossings()
                .stream()
                .collect(Collectors.toMap(
                        r -> r.label().substring(0, 3), r -> r.value().text()));
    }

    /**
     * By hand, after the formula in docs/model.md: 77.75 ft long, at 3 mph (4.4 ft/s) from a stop over one track, T = 2
     * + 4.4/1.47 + (77.75 + 30 + 5 - 4.4²/2.94)/4.4 = 29.1 s. A train of 10 mph, 1.47 ft/s each, goes 10 x 1.47 x (29.1
     * + 5) = 502 ft meanwhile. The file has 800 ft of sight.
     */
    @Test
    void withSignsAloneTheTimeIsThatOfATrainOverWhatIsSeenOfTheTrack() {
        String spur = crossings().get("H06");
        Matcher told = Pattern.compile("; signs only, see along the track (\\d+) ft.*, seen (\\d+) ft.*; reserve ")
                .matcher(spur);
        assertTrue(told.find(), spur);
        assertEquals(502, Integer.parseInt(told.group(1)), 1);
        assertEquals(800, Integer.parseInt(told.group(2)));
        assertFalse(spur.contains("least warning"), spur);
    }

    /** The sample's main line has lights that warn for 45 s. */
    @Test
    void withDevicesItIsTheWarning() {
        String mainLine = crossings().get("H02");
        assertTrue(mainLine.contains("; least warning 45 s; reserve "), mainLine);
        assertFalse(mainLine.contains("signs only"), mainLine);
    }
}
