package org.cresthaul.road;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.Test;

/** A line that stands for a wire against the wire itself: a catenary, z = a cosh((x − x₀) / a), in closed form. */
class HangingWireTest {
    private static final int CASES = 2_000;
    private static final double NOISE_M = 1e-9;

    private record Catenary(double aM, double lowestAtM, double raisedM) {
        double at(double xM) {
            return raisedM + aM * (Math.cosh((xM - lowestAtM) / aM) - 1);
        }
    }

    /**
     * Nowhere above the wire, and nowhere lower than sixteen tangents leave (s/256 halfway) and twice what a parabola
     * may be off.
     */
    @Test
    void liesBelowTheWireAndNear() {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(20261129);
        int compared = 0;
        for (int i = 0; i < CASES; i++) {
            double spanM = random.nextDouble(5, 400);
            Catenary wireItself =
                    new Catenary(spanM * Math.exp(random.nextDouble(0.2, 4)), spanM * random.nextDouble(-0.3, 1.3), 7);
            double alongM = spanM * random.nextDouble(0, 1);
            SurveyedPoint first = new SurveyedPoint(-0.4 * alongM, wireItself.at(0));
            SurveyedPoint second = new SurveyedPoint(0.6 * alongM, wireItself.at(spanM));
            double midM = wireItself.at(spanM / 2);
            double sagM = HangingWire.sagM(first, second, midM);
            double riseM = Math.abs(second.elevationM() - first.elevationM());
            if (sagM > 0.1 * spanM || riseM > 0.5 * spanM) {
                continue;
            }
            compared++;
            HangingWire wire = new HangingWire(first, second, midM, spanM);
            double nearM = sagM / 256 + 2 * 0.55 * sagM * sagM * (riseM + 4 * sagM) / (spanM * spanM);
            Soffit soffit = wire.soffit();
            double leastM = Double.POSITIVE_INFINITY;
            for (int k = 0; k <= 400; k++) {
                double part = k / 400.0;
                double wireM = wireItself.at(part * spanM);
                leastM = Math.min(leastM, wireM);
                double standsM = soffit.heightAt(first.distanceM() + part * alongM);
                assertTrue(standsM <= wireM + NOISE_M, () -> wire + " at " + part);
                if (!wire.isLevel()) {
                    assertTrue(standsM >= wireM - nearM - NOISE_M, () -> wire + " at " + part);
                }
            }
            assertTrue(wire.lowestM() <= leastM + NOISE_M, wire.toString());
            // 400 looks may miss the lowest point by an eighth of the bend of one step.
            assertTrue(wire.lowestM() >= leastM - nearM - sagM / 160_000, wire.toString());
        }
        assertTrue(compared > CASES / 2, compared + " compared");
    }

    /**
     * 60 m between supports 9 m high, 7.5 m in the middle: by hand 0.55 · 1.5² · (0 + 4 · 1.5) / 60² = 2.0625 mm lower,
     * and a sixteenth of the way, halfway between the first tangents, 9 − 4 · 1.5 · (1/32)(31/32) − 1.5/256 −
     * 0.0020625.
     */
    @Test
    void isAsByHand() {
        HangingWire wire = new HangingWire(new SurveyedPoint(-20, 9), new SurveyedPoint(20, 9), 7.5, 60);
        assertEquals(7.5 - 0.0020625, wire.lowestM(), 1e-12);
        assertEquals(-20, wire.soffit().distanceM(0));
        assertEquals(9 - 0.0020625, wire.soffit().elevationM(0), 1e-12);
        assertEquals(-20 + 40 / 32.0, wire.soffit().distanceM(1), 1e-12);
        assertEquals(
                9 - 6 / 32.0 * 31 / 32 - 1.5 / 256 - 0.0020625, wire.soffit().elevationM(1), 1e-12);
        assertEquals(0.15, wire.steepestAlong(), 1e-12);
    }

    /** Square across the road there is no height along it: level, at its lowest, half a meter either way. */
    @Test
    void isLevelWhereItCrosses() {
        HangingWire wire = new HangingWire(new SurveyedPoint(2, 9), new SurveyedPoint(2, 10), 7.5, 60);
        assertTrue(wire.isLevel());
        assertEquals(1.5, wire.soffit().startM());
        assertEquals(2.5, wire.soffit().endM());
        // Sag 2 m, rise 1 m: lowest at 1/2 − 1/16, 9 + 7/16 − 8 · 7/16 · 9/16 = 7.46875; 0.55 · 4 · 9 / 3600 lower.
        assertEquals(7.46875 - 0.0055, wire.soffit().heightAt(2), 1e-12);
    }

    @Test
    void refusesWhatHasNoProof() {
        SurveyedPoint low = new SurveyedPoint(0, 8);
        assertThrows(IllegalArgumentException.class, () -> new HangingWire(low, new SurveyedPoint(10, 8), 8.1, 60));
        assertThrows(IllegalArgumentException.class, () -> new HangingWire(low, new SurveyedPoint(10, 8), 1.9, 60));
        assertThrows(IllegalArgumentException.class, () -> new HangingWire(low, new SurveyedPoint(61, 8), 7.5, 60));
        assertThrows(IllegalArgumentException.class, () -> new HangingWire(low, new SurveyedPoint(-1, 8), 7.5, 60));
        assertThrows(IllegalArgumentException.class, () -> new HangingWire(low, new SurveyedPoint(10, 38.1), 20, 60));
    }
}
