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
 * The third sample haul: eleven axles with a jeep. Loads are worked by hand from the figures of the rig file, in feet
 * and pounds, from the rear on; how postures and corners of such chains come out is held by the random ones.
 */
class TernFlatsTest {
    private static final double LB = 0.45359237;
    private static final SampleHaul HAUL = SampleHaul.of("tern-flats", "lowbed-with-jeep");
    private static final String KEY = "down/trailing/3";

    /**
     * Booster at 55 psi: 12,400 + 10/45 · 11,400. Trailer: five bodies behind the kingpin, moments over the levers of
     * its axles, 45, 49.54 and 54.08 ft, less the booster's at 64.5 ft. Jeep: 13,000 lb at 13 ft and the kingpin's load
     * at 11 ft, over the mean of its axles, 16.5 ft. Tractor: 25,500 lb at 10.5 ft and the jeep's kingpin at 20.5 ft,
     * over the mean of its drive axles, 21 ft.
     */
    @Test
    void theAxlesCarryWhatLeversSay() {
        double boosterLb = 12_400 + 10.0 / 45 * 11_400;
        double moment = 17_500 * 41 + 8_500 * 7 + 91_000 * 27 + 1_200 * 13.5 + 5_200 * 63.5;
        double trailerLb = (moment - boosterLb * 64.5) / (45 + 49 + 6.5 / 12 + 54 + 1.0 / 12);
        double onJeepLb = 17_500 + 8_500 + 91_000 + 1_200 + 5_200 - 3 * trailerLb - boosterLb;
        double jeepLb = (13_000 * 13 + onJeepLb * 11) / 16.5;
        double onTractorLb = 13_000 + onJeepLb - jeepLb;
        double driveLb = (25_500 * 10.5 + onTractorLb * 20.5) / 21;
        double steerLb = 25_500 + onTractorLb - driveLb;
        LoadSheet sheet = HAUL.report().loads().states().stream()
                .filter(s -> s.label().contains("3 axles") && s.label().contains("trailing"))
                .findFirst()
                .orElseThrow()
                .sheet();
        List<Double> expected = Stream.of(
                        List.of(steerLb),
                        List.of(driveLb / 3, driveLb / 3, driveLb / 3),
                        List.of(jeepLb / 3, jeepLb / 3, jeepLb / 3),
                        List.of(trailerLb, trailerLb, trailerLb),
                        List.of(boosterLb))
                .flatMap(List::stream)
                .toList();
        assertEquals(expected.size(), sheet.axles().size());
        for (int i = 0; i < expected.size(); i++) {
            LoadSheet.AxleLine axle = sheet.axles().get(i);
            assertEquals(expected.get(i) * LB, axle.loadKg(), 0.05, axle.label());
        }
        assertEquals(
                List.of("tractor", "jeep"),
                sheet.fifthWheels().stream().map(LoadSheet.FifthWheel::unit).toList());
        assertEquals(onTractorLb * LB, sheet.fifthWheels().get(0).loadKg(), 0.05);
        assertEquals(onJeepLb * LB, sheet.fifthWheels().get(1).loadKg(), 0.05);
    }

    @Test
    void thereIsAWayThrough() {
        Plan plan = RoutePlan.of(HAUL.whole(), HAUL.report(), PlanOptions.defaults());
        assertEquals(Outcome.THROUGH, plan.outcome());
        assertTrue(plan.blocking().isEmpty());
    }

    @Test
    void everyPlaceIsJudgedWithTheJeep() {
        HAUL.report()
                .hazards()
                .forEach(h -> h.cells().stream()
                        .filter(c -> c.configuration().equals(KEY))
                        .forEach(c -> assertEquals(Verdict.CLEAR, c.verdict(), h.id())));
    }
}
