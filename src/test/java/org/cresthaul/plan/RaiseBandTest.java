package org.cresthaul.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.cresthaul.check.RaisedCheck;
import org.cresthaul.check.RouteCheck;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.language.English;
import org.cresthaul.plan.Admission.Raise;
import org.cresthaul.report.ConfigurationVerdict;
import org.cresthaul.report.GapFinding;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.report.RaiseEnd;
import org.cresthaul.report.Report;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.HazardKind;
import org.cresthaul.route.Route;
import org.cresthaul.sheet.RunSheet;
import org.cresthaul.units.UnitSystem;
import org.cresthaul.whatif.CompletePlan;
import org.junit.jupiter.api.Test;

/**
 * The band of a raise: where those of all its places overlap, and in the sample told with what ends it and where to
 * aim.
 */
class RaiseBandTest {
    /** A place that is clear from the raise up to {@code topM}, leaving so much in the middle. */
    private record Known(double topM, RaiseEnd endsAt, double leftM) {}

    private static RaiseJudge judge(List<Known> known) {
        return new RaiseJudge() {
            @Override
            public Optional<RaisedCheck.Raised> at(String hazard, String configuration, double frontM, double rearM) {
                Known k = known.get(Integer.parseInt(hazard.substring(1)));
                GapFinding gap = new GapFinding(
                        0.05 + k.leftM,
                        0.05,
                        0.05,
                        0,
                        Verdict.CLEAR,
                        "trailer",
                        0,
                        0,
                        "",
                        0,
                        0,
                        0,
                        "center",
                        "held",
                        0,
                        true,
                        0);
                return Optional.of(
                        new RaisedCheck.Raised(frontM <= k.topM ? Verdict.CLEAR : Verdict.TIGHT, gap, null, null));
            }

            @Override
            public Optional<RaisedCheck.Top> above(
                    String hazard, String configuration, double frontM, double rearM, double share) {
                Known k = known.get(Integer.parseInt(hazard.substring(1)));
                return frontM <= k.topM ? Optional.of(new RaisedCheck.Top(k.topM, k.endsAt)) : Optional.empty();
            }
        };
    }

    private static Optional<RaiseBand> find(Known... known) {
        Rig rig = PlanCase.rig("none");
        List<ConfigurationVerdict> all = PlanCase.configurations(rig, List.of());
        List<PlanPlace> places = new java.util.ArrayList<>();
        for (int i = 0; i < known.length; i++) {
            places.add(new PlanPlace(
                    "H" + i,
                    HazardKind.DIP,
                    "d",
                    null,
                    500,
                    500,
                    500,
                    true,
                    true,
                    false,
                    Optional.of(PlanCase.dip("H" + i, 500)),
                    List.of(PlanCase.cell(all.get(0), "contact", null))));
        }
        return RaiseBand.find(places, 0, new Raise(0.05, 0), judge(List.of(known)), 0);
    }

    @Test
    void ofAClusterIsWhereThoseOfItsPlacesOverlap() {
        RaiseBand band = find(new Known(0.20, RaiseEnd.HYDRAULICS, 0.04), new Known(0.12, RaiseEnd.STRUCTURE, 0.01))
                .orElseThrow();
        assertEquals(0.05, band.fromM());
        assertEquals(0.12, band.toM(), 1e-9);
        assertEquals(RaiseEnd.STRUCTURE, band.endsAt());
        assertEquals("H1", band.endsWhere());
        assertEquals(0.085, band.aimM(), 1e-9);
        assertEquals(0.06, band.gapM(), 1e-9);
        assertTrue(band.wide());
    }

    /** What is not shown is neither ground nor hydraulics, and the page has words for every end. */
    @Test
    void aSearchThatEndsUndecidedIsTold() throws Exception {
        RaiseBand band = find(new Known(0.20, RaiseEnd.HYDRAULICS, 0.04), new Known(0.12, RaiseEnd.NOT_SHOWN, 0.01))
                .orElseThrow();
        assertEquals("H1", band.endsWhere());
        assertEquals(
                "no more is shown to be clear at H1",
                English.of(List.of(band.end())).get(0));
        String page = Files.readString(Path.of("web/panels/plan/plansteps.js"));
        for (RaiseEnd end : RaiseEnd.values()) {
            String word = end.word().contains(" ") ? "'" + end.word() + "'" : end.word();
            assertTrue(page.contains("\n  " + word + ": "), word);
        }
    }

    @Test
    void isNoneWhereOnePlaceIsNotClearAndNarrowWhereItEndsAtOnce() {
        assertTrue(find(new Known(0.20, RaiseEnd.HYDRAULICS, 0.04), new Known(0.04, RaiseEnd.GROUND, 0))
                .isEmpty());
        assertTrue(!find(new Known(0.056, RaiseEnd.GROUND, 0)).orElseThrow().wide());
    }

    /**
     * A reserve that is asked for raises more, and then the whole band leaves it: H02 alone leaves 1 % at its least
     * raise.
     */
    @Test
    void aReserveThatIsAskedForIsLeftAllOverTheBand() throws Exception {
        Route route = RouteFile.parse(Files.readAllBytes(Path.of("sample-routes/sorrel-valley.route.geojson")));
        Rig rig = RigFile.parse(Files.readAllBytes(Path.of("sample-routes/lowbed-loaded.rig.json")));
        RaisedCheck check = new RaisedCheck(new Haul(route, rig, rig.stances().get(0), Margins.defaults()));
        RaiseJudge judge = RaiseJudge.of(check);
        String key = "down/trailing/4";
        int bands = 0;
        for (String hazard : List.of("H02", "H03")) {
            RaisedCheck.Least plain = check.least(hazard, key, 0).orElseThrow();
            for (double share : new double[] {0.1, 0.3}) {
                RaisedCheck.Least least = check.least(hazard, key, share).orElseThrow();
                assertTrue(least.frontM() > plain.frontM(), hazard);
                double topM = judge.above(hazard, key, least.frontM(), least.rearM(), share)
                        .orElseThrow()
                        .frontM();
                for (int i = 0; i <= 12; i++) {
                    double front = least.frontM() + (topM - least.frontM()) * i / 12;
                    GapFinding gap = check.at(hazard, key, front, least.rearM())
                            .orElseThrow()
                            .governing();
                    assertTrue(
                            gap.valueM() >= (1 + share) * gap.requiredM() - 1e-4,
                            hazard + " " + share + " front " + front);
                }
                // Half an inch less leaves less.
                GapFinding less = check.at(
                                hazard, key, Math.max(plain.frontM(), least.frontM() - 0.0127), least.rearM())
                        .orElseThrow()
                        .governing();
                assertTrue(less.valueM() < (1 + share) * less.requiredM(), hazard + " " + share);
                bands++;
            }
        }
        assertEquals(4, bands);
    }

    @Test
    void aPlannerWhoAsksForAReserveIsRaisedMoreAndNotTurnedAway() throws Exception {
        Route route = RouteFile.parse(Files.readAllBytes(Path.of("sample-routes/sorrel-valley.route.geojson")));
        Rig rig = RigFile.parse(Files.readAllBytes(Path.of("sample-routes/lowbed-loaded.rig.json")));
        Report report = RouteCheck.check(
                new Haul(route, rig, rig.stances().get(0), Margins.defaults()),
                new Inputs("0".repeat(64), "0".repeat(64)));
        PlanOptions asked = PlanOptions.defaults().with(0.02, false, List.of());
        Plan plan = RoutePlan.of(new Haul(route, rig, rig.stances().get(0), Margins.defaults()), report, asked);
        Plan before = RoutePlan.of(
                new Haul(route, rig, rig.stances().get(0), Margins.defaults()), report, PlanOptions.defaults());
        assertTrue(
                before.least().share() < 0.02
                        && before.least().shareKind().word().equals("raised"),
                before.least().toString());
        assertEquals(Outcome.THROUGH, plan.outcome());
        assertTrue(plan.least().share() >= 0.02, plan.least().toString());
        assertEquals(before.seconds(), plan.seconds());
    }

    @Test
    void inSorrelValleyEveryRaiseOfTheBandIsClearAndAimingLeavesMore() throws Exception {
        Route route = RouteFile.parse(Files.readAllBytes(Path.of("sample-routes/sorrel-valley.route.geojson")));
        Rig rig = RigFile.parse(Files.readAllBytes(Path.of("sample-routes/lowbed-loaded.rig.json")));
        Report report = RouteCheck.check(
                new Haul(route, rig, rig.stances().get(0), Margins.defaults()),
                new Inputs("0".repeat(64), "0".repeat(64)));
        Plan plan = CompletePlan.of(
                new Haul(route, rig, rig.stances().get(0), Margins.defaults()), report, PlanOptions.defaults());
        Plan.Lift lift = plan.steps().stream()
                .filter(s -> s.step() == StepKind.RAISE)
                .findFirst()
                .orElseThrow()
                .lift();
        RaiseBand band = lift.band();
        assertNotNull(band);
        assertTrue(band.fromM() == lift.raise().frontM() && band.toM() > band.fromM(), band.toString());
        assertTrue(
                band.gapM() - band.requiredM()
                        > lift.raise().clearanceM() - lift.raise().requiredM(),
                band + " " + lift.raise());
        RaisedCheck check = new RaisedCheck(new Haul(route, rig, rig.stances().get(0), Margins.defaults()));
        String key = plan.steps().stream()
                .filter(s -> s.passage() != null && s.passage().raise() != null)
                .findFirst()
                .orElseThrow()
                .passage()
                .set()
                .configuration();
        for (String hazard : List.of("H02", "H03")) {
            for (int i = 0; i <= 12; i++) {
                double front = band.fromM() + (band.toM() - band.fromM()) * i / 12;
                assertEquals(
                        Verdict.CLEAR,
                        check.at(hazard, key, front, lift.raise().rearM())
                                .orElseThrow()
                                .verdict(),
                        hazard + " front " + front);
            }
        }
        String sheet = RunSheet.of(plan, report, route, rig.stances().get(0), UnitSystem.US_CUSTOMARY)
                .legs()
                .toString();
        assertTrue(sheet.contains("aim at") && sheet.contains("Aimed right it leaves"), "the driver is told the band");
    }
}
