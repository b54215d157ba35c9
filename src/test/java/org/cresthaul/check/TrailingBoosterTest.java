package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.report.GapFinding;
import org.cresthaul.report.Margins;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.LimitedPlace;
import org.cresthaul.route.Route;
import org.cresthaul.route.RouteCorner;
import org.cresthaul.units.InputRejected;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A trailing booster that neither carries nor comes closest is judged by what was found without one. The same rig with
 * no other way to go than trailing has nothing to lean on: both must say the same, whatever the hinge allows.
 */
class TrailingBoosterTest {
    private static final String STATES = "\"states\": [\"none\", \"trailing\", \"close-coupled\"]";
    /** Both searches stop within half a millimeter of the truth, from either side. */
    private static final double WITHIN_M = 0.0006;

    // A booster that stands on its limit makes long searches: two places show those.
    @ParameterizedTest(name = "hinge limits {0}, hazards {1}")
    @CsvSource({"10 deg, H, 150", "0.7 deg, H04, 10", "0.2 deg, H02, 10"})
    void saysTheSameWhetherOrNotItMayGoAlone(String hinge, String among, int atLeast) throws Exception {
        Route route = RouteFile.parse(Files.readAllBytes(Path.of("sample-routes/alder-county.route.geojson")));
        String text = Files.readString(Path.of("sample-routes/lowbed-loaded.rig.json"))
                .replace("\"hingeUp\": \"10 deg\"", "\"hingeUp\": \"" + hinge + "\"")
                .replace("\"hingeDown\": \"10 deg\"", "\"hingeDown\": \"" + hinge + "\"");
        assertTrue(text.contains(STATES));
        Rig leaning = rig(text);
        Rig own = rig(text.replace(STATES, "\"states\": [\"trailing\"]"));
        int compared = 0;
        for (Hazard hazard : route.hazards()) {
            if (hazard instanceof LimitedPlace
                    || hazard instanceof RouteCorner
                    || !hazard.isSurveyed()
                    || !hazard.place().id().startsWith(among)) {
                continue;
            }
            HazardCheck found =
                    new HazardCheck(hazard, leaning, leaning.stances().get(0), Margins.defaults());
            HazardCheck expected = new HazardCheck(hazard, own, own.stances().get(0), Margins.defaults());
            for (CheckedConfiguration c :
                    CheckedConfiguration.listOf(own, own.stances().get(0))) {
                String where = hazard.place().id() + " " + c.key();
                HazardCheck.Judgment one = found.judge(c.transport());
                HazardCheck.Judgment other = expected.judge(c.transport());
                assertEquals(other.verdict(), one.verdict(), where);
                near(other.ground(), one.ground(), where);
                near(other.overhead(), one.overhead(), where);
                // What is left at the kingpin was found without the booster, if at all, and is the very same.
                assertEquals(between(other), between(one), where);
                compared++;
            }
        }
        assertTrue(compared >= atLeast, compared + " judgments");
    }

    private static void near(
            Optional<SideCheck.JudgedSide> expected, Optional<SideCheck.JudgedSide> found, String where) {
        assertEquals(expected.isPresent(), found.isPresent(), where);
        found.ifPresent(f -> assertEquals(expected.get().gap().valueM(), f.gap().valueM(), WITHIN_M, where));
    }

    /** Gap, need, place and verdict between units. */
    private static List<Object> between(HazardCheck.Judgment judgment) {
        GapFinding gap = judgment.between();
        return gap == null
                ? List.of()
                : List.of(gap.valueM(), gap.requiredM(), gap.distanceM(), gap.line(), gap.leveling(), gap.verdict());
    }

    private static Rig rig(String text) throws InputRejected, IOException {
        return RigFile.parse(text.getBytes(StandardCharsets.UTF_8));
    }
}
