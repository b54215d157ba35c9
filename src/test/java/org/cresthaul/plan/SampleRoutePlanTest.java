package org.cresthaul.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.cresthaul.check.SampleHaul;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.report.ConfigurationVerdict;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.Report;
import org.cresthaul.report.Verdict;
import org.cresthaul.route.Route;
import org.cresthaul.route.StoppingPlace;
import org.cresthaul.units.InputRejected;
import org.cresthaul.whatif.CompletePlan;
import org.junit.jupiter.api.Test;

/**
 * The plans of the sample hauls are those they were drawn for: in Sorrel Valley the loaded rig gets through with one
 * change of the lift axle, one of the booster, one of the notch and one raise, the empty one as it departs; in Alder
 * County there is no way through.
 */
class SampleRoutePlanTest {
    private static final Path FOLDER = Path.of("sample-routes");
    private static final Haul LOADED = Haul.of("sorrel-valley", "lowbed-loaded");

    /** A sample haul and the plans that were asked of it, each made once. */
    private record Haul(SampleHaul sample, Map<PlanOptions, Plan> plans) {
        static Haul of(String routeName, String rigName) {
            return new Haul(SampleHaul.of(routeName, rigName), new HashMap<>());
        }

        Route route() {
            return sample.route();
        }

        Report report() {
            return sample.report();
        }

        /** The way alone, without what is told beside it. */
        Plan way(PlanOptions options) {
            return RoutePlan.of(sample.whole(), report(), options);
        }

        Plan plan(PlanOptions options) {
            return plans.computeIfAbsent(options, o -> CompletePlan.of(sample.whole(), report(), o));
        }
    }

    private static PlanOptions options(List<String> forbid, String fix, boolean avoidRaising) {
        PlanOptions usual = PlanOptions.defaults();
        return new PlanOptions(usual.times(), forbid, fix, avoidRaising, List.of(), List.of());
    }

    /** Stops and changes in driving order, as a driver would tell them. */
    private static List<String> changes(Plan plan) {
        return plan.steps().stream()
                .map(Plan.Step::change)
                .filter(Objects::nonNull)
                .map(c -> c.stop() + ": " + c.from().configuration() + " to " + c.to().configuration())
                .toList();
    }

    private static List<Plan.HazardPassage> passages(Plan plan) {
        return plan.steps().stream()
                .map(Plan.Step::passage)
                .filter(Objects::nonNull)
                .toList();
    }

    private static List<String> raised(Plan plan) {
        return passages(plan).stream()
                .filter(p -> p.raise() != null)
                .map(Plan.HazardPassage::hazard)
                .toList();
    }

    @Test
    void theLoadedRigGetsThroughSorrelValleyWithThreeChangesAndOneRaise() {
        Plan plan = LOADED.plan(PlanOptions.defaults());

        assertEquals(Outcome.THROUGH, plan.outcome());
        assertEquals(List.of(), plan.conditions());
        assertEquals(List.of(), plan.blocking());
        assertEquals(
                List.of(
                        "P01: up/trailing/4 to down/trailing/4",
                        "P02: down/trailing/4 to down/close-coupled/4",
                        "P03: down/close-coupled/4 to down/close-coupled/6"),
                changes(plan));
        assertEquals(3, plan.changes());
        assertEquals(List.of("H02", "H03"), raised(plan));
        // One raise for both: the front is up from before the main line until after the hump.
        assertEquals(
                1,
                passages(plan).stream()
                        .map(Plan.HazardPassage::raise)
                        .filter(Objects::nonNull)
                        .map(r -> r.frontM() + " " + r.rearM())
                        .distinct()
                        .count());
        assertTrue(passages(plan).stream().allMatch(p -> p.verdict() == Verdict.CLEAR));
    }

    /** The booster is close-coupled on the valley road: the sign at its beginning is not there a second time. */
    @Test
    void whereAStretchGoesOnNothingStandsThatStandsAtItsBeginning() {
        assertEquals(
                List.of("sign at the first cattle guard", "none"),
                LOADED.plan(PlanOptions.defaults()).steps().stream()
                        .filter(s -> s.passage() != null && s.passage().hazard().equals("S01"))
                        .map(s -> Objects.toString(s.landmark(), "none"))
                        .toList());
    }

    /**
     * By hand, from the default times: at P01 3 min to stop and 3 for the axle; at P02 3, the booster 40, its air 2 and
     * its shim 10; at P03 3 and the notch 15; two stops of 3 at the main line, to raise (4) and to lower (4). And 3 mph
     * over the corners, the crossings and what is passed raised, rounded up to seconds.
     */
    @Test
    void itsTimeIsTheSumOfWhatIsDone() {
        Plan plan = LOADED.plan(PlanOptions.defaults());
        long changes = 60 * (3 + 3) + 60 * (3 + 40 + 2 + 10) + 60 * (3 + 15);
        long raise = 60 * (3 + 4 + 3 + 4);
        Set<String> crawled = Set.of("C1", "H02", "H03", "C2", "H04", "H06", "H08");
        long crawl = 0;
        for (Plan.HazardPassage p : passages(plan)) {
            assertEquals(crawled.contains(p.hazard()), p.crawls(), p.hazard());
            if (p.crawls()) {
                double seconds = (p.toChainageM() - p.fromChainageM()) / (3 * 1609.344 / 3600);
                crawl += (long) Math.ceil(seconds);
            }
        }
        // Each of the seven is rounded on its own, and chainages are rounded too.
        assertEquals(changes + raise + crawl, plan.seconds(), crawled.size());
    }

    /** Every change is needed: kept all the way, no configuration gets through. */
    @Test
    void noConfigurationKeptAllTheWayGetsThroughSorrelValley() {
        assertEquals(42, LOADED.report().configurations().size());
        for (ConfigurationVerdict c : LOADED.report().configurations()) {
            Plan plan = LOADED.way(options(List.of(), c.key(), false));
            assertEquals(Outcome.BLOCKED, plan.outcome(), c.key());
            assertFalse(plan.blocking().isEmpty(), c.key());
        }
    }

    @Test
    void withoutRaisingTheMainLineAloneBlocks() {
        Plan plan = LOADED.plan(options(List.of(), null, true));

        assertEquals(Outcome.BLOCKED, plan.outcome());
        assertEquals(
                List.of("H02"), plan.blocking().stream().map(Plan.Block::hazard).toList());
    }

    /**
     * Another notch at P03 costs 18 min and saves three raises of 14 min: without notches 6 and 7 they are made
     * instead.
     */
    @Test
    void theNotchSavesThreeRaises() {
        Plan usual = LOADED.plan(PlanOptions.defaults());
        Plan plan = LOADED.plan(options(List.of("down/close-coupled/6", "down/close-coupled/7"), null, false));

        assertEquals(Outcome.THROUGH, plan.outcome());
        assertEquals(List.of("H02", "H03", "H06", "H07", "H08"), raised(plan));
        assertEquals(
                List.of("P01: up/trailing/4 to down/trailing/4", "P02: down/trailing/4 to down/close-coupled/4"),
                changes(plan));
        // Three raises for the notch, and Ambermoor rise at crawling speed.
        assertTrue(plan.seconds() - usual.seconds() > 3 * 840 - 1080, plan.seconds() + " " + usual.seconds());
    }

    /** S01 runs over P02: seven axles are wanted on both sides of it, so the booster cannot be left off there. */
    @Test
    void aStretchRunsOverTheSetUpArea() {
        Plan plan = LOADED.plan(PlanOptions.defaults());
        StoppingPlace area = stop(LOADED.route(), "P02");
        List<Plan.HazardPassage> stretch =
                passages(plan).stream().filter(p -> p.hazard().equals("S01")).toList();

        assertTrue(stretch.get(0).fromChainageM() < area.place().chainageM());
        assertTrue(stretch.get(stretch.size() - 1).toChainageM() > area.place().chainageM());
        assertEquals(
                List.of("down/trailing/4", "down/close-coupled/4"),
                stretch.stream().map(p -> p.set().configuration()).toList());
    }

    /**
     * With three axles the main line is passed only raised, at every notch (SorrelValleyTest): no such setting passes
     * it then.
     */
    @Test
    void whatPassesOnlyRaisedIsNotSaidToPassWithoutRaising() {
        Plan plan = LOADED.plan(options(List.of(), null, true));
        Plan.Block mainLine = plan.blocking().get(0);

        assertEquals("H02", mainLine.hazard());
        assertTrue(mainLine.why().toString().contains("2 axles"), mainLine.why().toString());
        assertFalse(
                mainLine.why().toString().contains("3 axles"), mainLine.why().toString());
    }

    /**
     * At 3 mph, 4.4 ft/s, from 15 ft before the first rail to 5 ft past the last: H04 takes 78 ft of combination over
     * 25 ft, more than 23 s where 20 s is the least warning; H02 83 ft over 39 ft, some 28 s and a few to react and
     * start, with 45 s. Beyond H08 there are 60 ft.
     */
    @Test
    void theCrossingsOfSorrelValleyAreClearedInTime() {
        List<String> found = LOADED.plan(PlanOptions.defaults()).crossings().stream()
                .map(c -> c.hazard() + " in time " + c.fits() + ", room " + c.storageFits())
                .toList();
        assertEquals(
                List.of(
                        "H02 in time true, room true",
                        "H04 in time true, room true",
                        "H06 in time true, room true",
                        "H08 in time true, room true"),
                found);
    }

    @Test
    void theEmptyRigGetsThroughSorrelValleyAsItDeparts() {
        Plan plan = Haul.of("sorrel-valley", "lowbed-empty").plan(PlanOptions.defaults());

        assertEquals(Outcome.THROUGH, plan.outcome());
        assertEquals(0, plan.changes());
        assertEquals(List.of(), raised(plan));
    }

    /** Those that nobody can decide or that are tight for everybody, see SampleRouteTest, and no other. */
    @Test
    void alderCountyIsBlockedWhereNoConfigurationClears() {
        Haul haul = Haul.of("alder-county", "lowbed-loaded");
        Plan plan = haul.plan(PlanOptions.defaults());

        assertEquals(Outcome.BLOCKED, plan.outcome());
        assertTrue(plan.stopsAtBlocks());
        Set<String> nowhere = haul.report().hazards().stream()
                .filter(h -> h.cells().stream().allMatch(c -> c.verdict() != Verdict.CLEAR && c.raise() == null))
                .map(HazardFindings::id)
                .collect(Collectors.toSet());
        assertEquals(Set.of("C1", "H06", "H07", "H09", "H11", "H12", "H13"), nowhere);
        assertEquals(nowhere, plan.blocking().stream().map(Plan.Block::hazard).collect(Collectors.toSet()));
        // The Marrow River bridge wants the booster, Fernholt square does not take it trailing.
        assertEquals(
                List.of("P03"),
                changes(plan).stream().map(c -> c.substring(0, 3)).toList());
    }

    @Test
    void stopsAreSetUpAreasWhereABoosterCanBeWorkedOn() {
        assertEquals(
                List.of("P01 stopping-place", "P02 set-up-area", "P03 stopping-place", "P04 stopping-place"),
                stops(LOADED.route()));
        assertEquals(
                List.of(
                        "P01 stopping-place",
                        "P02 set-up-area",
                        "P03 set-up-area",
                        "P04 stopping-place",
                        "P05 set-up-area"),
                stops(readRoute("alder-county")));
        // 83 ft 3 in with the booster trailing, and 30 ft to work on it.
        for (Route route : List.of(LOADED.route(), readRoute("alder-county"))) {
            assertTrue(route.stops().stream().allMatch(s -> s.roomM() > 114 * 0.3048));
            assertTrue(route.stops().stream().allMatch(s -> s.place().landmark().isPresent()));
        }
    }

    private static List<String> stops(Route route) {
        return route.stops().stream().map(s -> s.place().id() + " " + s.word()).toList();
    }

    private static StoppingPlace stop(Route route, String id) {
        return route.stops().stream()
                .filter(s -> s.place().id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private static Route readRoute(String name) {
        try {
            return RouteFile.parse(Files.readAllBytes(FOLDER.resolve(name + ".route.geojson")));
        } catch (InputRejected | IOException e) {
            throw new IllegalArgumentException(e);
        }
    }
}
