package org.cresthaul.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import org.cresthaul.check.SampleHaul;
import org.cresthaul.report.LoadSheet;
import org.cresthaul.report.Verdict;
import org.junit.jupiter.api.Test;

/**
 * The fourth sample haul: thirteen axles, a jeep ahead and two boosters behind, the first on two axles. Loads are
 * worked by hand from the figures of the rig file, in feet and pounds, from the rear on; how postures and corners of
 * such chains come out is held by the random ones.
 */
class HeronBendTest {
    private static final double LB = 0.45359237;
    private static final SampleHaul HAUL = SampleHaul.of("heron-bend", "lowbed-with-two-boosters");
    private static final String KEY = "down/trailing/4";

    private static LoadSheet sheet() {
        return HAUL.report().loads().states().stream()
                .filter(s -> s.label().contains("3 axles") && s.label().contains("trailing"))
                .findFirst()
                .orElseThrow()
                .sheet();
    }

    /**
     * Boosters: the first at 55 psi, 12,400 + 10/45 · 11,400 on each of two axles, 64.5 and 69 ft behind the kingpin
     * (its hinge at 56.5 ft); the second at 48 psi, 12,400 + 3/45 · 11,400, its hinge 15.25 ft behind the first's and
     * its axle 8 ft behind that. Trailer: six bodies behind the kingpin, moments over the levers of its axles, 45,
     * 49.54 and 54.08 ft, less the boosters'. Jeep: 13,000 lb at 13 ft and the kingpin's load at 11 ft, over the mean
     * of its axles, 16.5 ft. Tractor: 27,500 lb at 10.5 ft and the jeep's kingpin at 20.5 ft, over the mean of its
     * drive axles, 21 ft.
     */
    @Test
    void theAxlesCarryWhatLeversSay() {
        double firstLb = 12_400 + 10.0 / 45 * 11_400;
        double secondLb = 12_400 + 3.0 / 45 * 11_400;
        double moment = 17_500 * 41 + 8_500 * 7 + 112_000 * 28 + 1_200 * 13.5 + 9_800 * 65.5 + 5_200 * 78.75;
        double byBoosters = firstLb * (64.5 + 69) + secondLb * 79.75;
        double trailerLb = (moment - byBoosters) / (45 + 49 + 6.5 / 12 + 54 + 1.0 / 12);
        double behindLb = 17_500 + 8_500 + 112_000 + 1_200 + 9_800 + 5_200;
        double onJeepLb = behindLb - 3 * trailerLb - 2 * firstLb - secondLb;
        double jeepLb = (13_000 * 13 + onJeepLb * 11) / 16.5;
        double onTractorLb = 13_000 + onJeepLb - jeepLb;
        double driveLb = (27_500 * 10.5 + onTractorLb * 20.5) / 21;
        double steerLb = 27_500 + onTractorLb - driveLb;
        LoadSheet sheet = sheet();
        List<Double> expected = Stream.of(
                        List.of(steerLb),
                        List.of(driveLb / 3, driveLb / 3, driveLb / 3),
                        List.of(jeepLb / 3, jeepLb / 3, jeepLb / 3),
                        List.of(trailerLb, trailerLb, trailerLb),
                        List.of(firstLb, firstLb, secondLb))
                .flatMap(List::stream)
                .toList();
        assertEquals(13, sheet.axles().size());
        for (int i = 0; i < expected.size(); i++) {
            LoadSheet.AxleLine axle = sheet.axles().get(i);
            assertEquals(expected.get(i) * LB, axle.loadKg(), 0.05, axle.label());
        }
        assertEquals(onJeepLb * LB, sheet.fifthWheels().get(1).loadKg(), 0.05);
    }

    @Test
    void everyBoosterIsAGroupWithAGaugeOfItsOwn() {
        assertEquals(
                List.of("booster axle 1", "booster axle 2", "booster axle 3"),
                sheet().axles().stream()
                        .map(LoadSheet.AxleLine::label)
                        .filter(l -> l.contains("booster"))
                        .toList());
        assertEquals(
                List.of(
                        "steer axle",
                        "drive group, 3 axles",
                        "jeep group, 3 axles",
                        "trailer group, 3 axles",
                        "booster group, 2 axles",
                        "booster 2 axle"),
                sheet().groups().stream().map(LoadSheet.GroupLine::label).toList());
        assertEquals(
                List.of("trailer", "booster", "booster 2"),
                sheet().gauges().stream().map(g -> g.gauge().word()).toList());
        // 6,894.757 Pa to the pound on a square inch; the file sets 48.
        assertEquals(48 * 6894.757, sheet().gauges().get(2).pressurePa(), 1);
    }

    @Test
    void thereIsAWayThrough() {
        Plan plan = RoutePlan.of(HAUL.whole(), HAUL.report(), PlanOptions.defaults());
        assertEquals(Outcome.THROUGH, plan.outcome());
        assertTrue(plan.blocking().isEmpty());
    }

    @Test
    void everyPlaceIsJudgedWithEveryUnit() {
        HAUL.report()
                .hazards()
                .forEach(h -> h.cells().stream()
                        .filter(c -> c.configuration().equals(KEY))
                        .forEach(c -> assertEquals(Verdict.CLEAR, c.verdict(), h.id())));
    }
}
