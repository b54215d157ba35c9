package org.cresthaul.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.Test;

class RangeTest {
    /** Worked by hand. */
    @Test
    void reckonsAsIntervalsDo() {
        Range a = new Range(-1, 2);
        Range b = new Range(-5, -4);
        assertEquals(new Range(-6, -2), a.plus(b));
        assertEquals(new Range(3, 7), a.minus(b));
        assertEquals(new Range(-10, 5), a.times(b));
        assertEquals(new Range(-0.5, 0.25), a.over(b));
        assertEquals(new Range(-4, 2), a.times(-2));
        assertEquals(new Range(-5, 2), a.hull(b));
        assertEquals(new Range(-1.5, 2.5), a.widened(0.5));
        assertEquals(2, a.magnitude());
        assertEquals(new Range(-3, 1), Range.between(1, -3));
    }

    @Test
    void holdsWhatNumbersFromBothMake() {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(20_261_125L);
        for (int i = 0; i < 100_000; i++) {
            Range a = Range.between(random.nextDouble(-3, 3), random.nextDouble(-3, 3));
            Range b = Range.between(random.nextDouble(-3, 3), random.nextDouble(-3, 3));
            Range away = Range.between(-random.nextDouble(0.1, 3), -random.nextDouble(0.1, 3));
            double x = a.lo() + random.nextDouble() * a.width();
            double y = b.lo() + random.nextDouble() * b.width();
            double z = away.lo() + random.nextDouble() * away.width();
            assertIn(x + y, a.plus(b));
            assertIn(x - y, a.minus(b));
            assertIn(x * y, a.times(b));
            assertIn(x * y, a.times(y));
            assertIn(x / z, a.over(away));
        }
    }

    private static void assertIn(double value, Range range) {
        assertTrue(value >= range.lo() - 1e-12 && value <= range.hi() + 1e-12, value + " of " + range);
    }
}
