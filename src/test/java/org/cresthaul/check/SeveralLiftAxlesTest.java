package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.report.ConfigurationVerdict;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.LoadReport;
import org.cresthaul.report.LoadSheet;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.Route;
import org.cresthaul.turning.TurningCombination;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Several lift axles over a whole sample route. What is expected comes from rigs with one lift axle or none, whose
 * answers are held to other sources elsewhere: a state is the same whatever else the trailer could raise.
 */
class SeveralLiftAxlesTest {
    private static Route route;
    private static String text;
    /** Its third axle alone is up, as in the sample; or the second and the third. */
    private static CheckedHaul several;

    /** A rig and what the check of the route says of it. */
    private record CheckedHaul(Rig rig, LevelStance stance, Report report) {
        static CheckedHaul of(String rigText) throws Exception {
            Rig rig = RigFile.parse(rigText);
            LevelStance stance = rig.stances().get(0);
            return new CheckedHaul(
                    rig,
                    stance,
                    RouteCheck.check(new Haul(route, rig, stance, Margins.defaults()), new Inputs("0", "0")));
        }

        /** Every hazard's cell in the configurations of one lift state, by hazard, booster and notch. */
        Map<String, ReportCell> cells(String lift) {
            return report.hazards().stream()
                    .flatMap(h -> h.cells().stream()
                            .filter(c -> c.configuration().startsWith(lift + "/"))
                            .map(c -> Map.entry(h.id() + c.configuration().substring(lift.length()), c)))
                    .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
        }

        Map<String, LoadSheet> sheets(String lift) {
            return report.loads().states().stream()
                    .filter(s -> s.lift().word().equals(lift))
                    .collect(Collectors.toMap(s -> s.booster().word(), LoadReport.StateLoads::sheet));
        }
    }

    @BeforeAll
    static void checkTheRoute() throws Exception {
        route = RouteFile.parse(Files.readString(Path.of("sample-routes/alder-county.route.geojson")));
        text = Files.readString(Path.of("sample-routes/lowbed-loaded.rig.json"));
        several = CheckedHaul.of(TwoLiftAxles.of(
                "[{\"axle\": 2, \"gap\": \"4 1/4 in\"}, {\"axle\": 3, \"gap\": \"4 1/4 in\"}]",
                "[{\"up\": [3], \"secondaryRise\": \"1 1/4 in\"}, {\"up\": [2, 3], \"secondaryRise\": \"1 1/4 in\"}]"));
    }

    private static <T> Map<String, Object> each(Map<String, T> all, Function<T, Object> figure) {
        return all.entrySet().stream()
                .collect(Collectors.toMap(
                        Map.Entry::getKey, e -> figure.apply(e.getValue()).toString()));
    }

    /** Verdict, gaps with their places, corner and raise, without the configuration's own name. */
    private static Object figures(ReportCell c) {
        return List.of(
                c.verdict(),
                String.valueOf(c.ground()),
                String.valueOf(c.overhead()),
                String.valueOf(c.corner()),
                String.valueOf(c.raise()));
    }

    @Test
    void whatElseCouldBeRaisedChangesNothing() throws Exception {
        CheckedHaul one = CheckedHaul.of(text);
        for (List<String> alike : List.of(List.of("down", "down"), List.of("up-3", "up"))) {
            Map<String, ReportCell> cells = several.cells(alike.get(0));
            assertTrue(cells.size() > 100, cells.size() + " cells");
            assertEquals(
                    each(one.cells(alike.get(1)), SeveralLiftAxlesTest::figures),
                    each(cells, SeveralLiftAxlesTest::figures));
            assertEquals(
                    each(one.sheets(alike.get(1)), s -> List.of(s.axles(), s.groups(), s.gauges(), s.broken())),
                    each(several.sheets(alike.get(0)), s -> List.of(s.axles(), s.groups(), s.gauges(), s.broken())));
        }
    }

    /** With two of three axles up the one that is left carries the whole group: three axles' load on one, by levers. */
    @Test
    void theOneAxleThatIsLeftCarriesAll() {
        LoadSheet two = several.sheets("up-2-3").get("none");
        assertEquals(
                1, two.axles().stream().filter(a -> a.group().equals("trailer")).count());
        LoadSheet three = several.sheets("down").get("none");
        assertEquals(three.grossKg(), two.grossKg(), 0.1);
        LevelStance s = several.stance();
        double hitchXM = s.trailerKingpinXM();
        double shiftM = hitchXM - s.trailer().kingpinXM();
        double momentOfThree = three.axles().stream()
                .filter(a -> a.group().equals("trailer"))
                .mapToDouble(a -> a.loadKg() * (hitchXM - a.xM()))
                .sum();
        double leverOfOne = hitchXM - (s.trailer().axles().axles().get(0).xM() + shiftM);
        LoadSheet.AxleLine left = two.axles().stream()
                .filter(a -> a.group().equals("trailer"))
                .findFirst()
                .orElseThrow();
        assertEquals(momentOfThree / leverOfOne, left.loadKg(), 0.5);
    }

    @Test
    void aConfigurationTellsWhichAxlesAreUp() {
        Map<String, String> labels = several.report().configurations().stream()
                .filter(c -> c.booster().word().equals("none") && c.notch().equals("3"))
                .collect(Collectors.toMap(c -> c.lift().word(), ConfigurationVerdict::label));
        assertEquals(
                Map.of(
                        "down",
                        "3 axles · no booster · notch 3",
                        "up-3",
                        "2 axles, axle 3 up · no booster · notch 3",
                        "up-2-3",
                        "1 axle, axles 2, 3 up · no booster · notch 3"),
                labels);
        assertNotEquals(
                each(several.cells("up-3"), SeveralLiftAxlesTest::figures),
                each(several.cells("up-2-3"), SeveralLiftAxlesTest::figures));
    }

    /** The effective axle of equal axles: Σx²/Σx behind the kingpin (docs/model.md), of those on the road alone. */
    @Test
    void theTrailerTurnsAboutTheAxlesThatAreDown() {
        List<Double> behindM = several.stance().trailer().axles().axles().stream()
                .map(a -> several.stance().trailer().kingpinXM() - a.xM())
                .toList();
        Map<String, List<Double>> down =
                Map.of("down", behindM, "up-3", behindM.subList(0, 2), "up-2-3", behindM.subList(0, 1));
        for (LiftState state : several.stance().liftStates()) {
            List<Double> x = down.get(state.word());
            double byHand = x.stream().mapToDouble(v -> v * v).sum()
                    / x.stream().mapToDouble(v -> v).sum();
            assertEquals(
                    byHand,
                    TurningCombination.of(several.stance(), state, BoosterState.NONE)
                            .orElseThrow()
                            .chain()
                            .get(1)
                            .hitchToAxleM(),
                    1e-9,
                    state.word());
        }
    }
}
