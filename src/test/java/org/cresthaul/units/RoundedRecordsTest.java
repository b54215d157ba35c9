package org.cresthaul.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** How figures are written, each by its own rule; expected figures are counted in steps by hand. */
class RoundedRecordsTest {
    private record Gap(
            @Rounded(Rounding.LENGTH_DOWN) double valueM,
            @Rounded(Rounding.LENGTH_UP) double requiredM,
            @Rounded(Rounding.LENGTH_DOWN) Double leftM,
            double exactM) {}

    private record Place(
            String name,
            List<Gap> gaps,
            @Rounded(Rounding.LENGTH_NEAR) List<List<Double>> points,
            Map<String, Gap> byName,
            Gap none) {}

    private record Load(boolean down, double kg) implements RoundsItself {
        @Override
        public Load rounded() {
            return new Load(down, (down ? Rounding.MASS_DOWN : Rounding.MASS_NEAR).of(kg));
        }
    }

    @ParameterizedTest
    @CsvSource({
        // 1.99996 m is 19999.6 steps of 0.1 mm
        "LENGTH_DOWN, 1.99996, 1.9999",
        "LENGTH_DOWN, -0.00001, -0.0001",
        // Ten steps but for the noise of 0.3 - 0.299
        "LENGTH_DOWN, 0.00099999999999997, 0.001",
        "LENGTH_UP, 0.05001, 0.0501",
        "LENGTH_UP, -0.00001, 0",
        "LENGTH_UP, 0.05000000000000001, 0.05",
        "LENGTH_NEAR, 0.05004, 0.05",
        "LENGTH_NEAR, 0.05006, 0.0501",
        "LIMIT_NEAR, 0.12345678, 0.123457",
        "SIGHT_UP, 100.01, 100.1",
        "MASS_NEAR, 9071.84, 9071.8",
        "MASS_DOWN, 9071.89, 9071.8",
        "MASS_DOWN, -0.01, -0.1",
        "ANGLE_NEAR, 0.017453, 0.01745",
        "BEND_NEAR, 0.017453, 0.0175",
        "SPEED_DOWN, 4.4704, 4.47",
        "TIME_UP, 12.01, 12.1",
        "TIME_DOWN, 12.09, 12",
    })
    void goesToItsSide(Rounding rounding, double value, double written) {
        assertEquals(written, rounding.of(value));
    }

    /** What was written is written again alike, so that a figure may pass through two hands. */
    @ParameterizedTest
    @EnumSource(Rounding.class)
    void roundingTwiceChangesNothing(Rounding rounding) {
        SplittableRandom random = new SplittableRandom(7);
        for (int i = 0; i < 100_000; i++) {
            double once = rounding.of(random.nextDouble(-50, 50_000));
            assertEquals(once, rounding.of(once));
        }
    }

    /** 200.04 mm beside 150.04 mm leaves 50.00 mm; of the written figures it would be 49.9 mm. */
    @Test
    void everyFigureOfATreeIsRoundedFromItselfAlone() {
        Gap gap = new Gap(0.20004, 0.15004, 0.20004 - 0.15004, 0.20004);
        Place written = RoundedRecords.of(
                new Place("H1", List.of(gap, gap), List.of(List.of(0.00004, 0.00006)), Map.of("a", gap), null));
        Gap expected = new Gap(0.2, 0.1501, 0.05, 0.20004);
        assertEquals(List.of(expected, expected), written.gaps());
        assertEquals(List.of(List.of(0.0, 0.0001)), written.points());
        assertEquals(Map.of("a", expected), written.byName());
        assertNull(written.none());
    }

    @Test
    void aRecordMayRoundByWhatItHolds() {
        List<Load> loads = Arrays.asList(new Load(true, 10.09), null, new Load(false, 10.09));
        assertEquals(Arrays.asList(new Load(true, 10.0), null, new Load(false, 10.1)), RoundedRecords.of(loads));
    }

    @Test
    void whatNeedsNoRoundingStaysTheSame() {
        Gap gap = new Gap(0.2, 0.15, null, 0.123456789);
        Place place = new Place("H1", List.of(gap), List.of(), null, gap);
        assertEquals(place, RoundedRecords.of(place));
        List<String> words = List.of("clear", "tight");
        assertSame(words, RoundedRecords.of(words));
    }
}
