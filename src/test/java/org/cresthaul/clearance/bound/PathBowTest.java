package org.cresthaul.clearance.bound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.DoubleUnaryOperator;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.cresthaul.geometry.Bow;
import org.cresthaul.geometry.Interval;
import org.cresthaul.posture.RandomCase;
import org.cresthaul.posture.RandomProfiles;
import org.cresthaul.road.PairedPath;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.road.RolledProfile;
import org.junit.jupiter.api.Test;

/** Bows of ground and wheel paths against the lines themselves, looked at every few millimeters of many windows. */
class PathBowTest {
    private static final int WINDOWS = 600;
    private static final int PLACES = 401;
    private static final double ROUNDING_M = 1e-9;

    @Test
    void noPlaceLeavesItsBow() {
        double narrowed = 0;
        double all = 0;
        for (int i = 0; i < WINDOWS; i++) {
            RandomGenerator random =
                    RandomGeneratorFactory.of("L64X128MixRandom").create(RandomCase.SEED + i);
            RoadProfile ground = RandomProfiles.profile(random);
            RolledProfile path = new RolledProfile(ground, random.nextDouble(0.3, 0.6));
            double from = random.nextDouble(ground.startM() - 3, ground.endM());
            double to = from + Math.pow(10, random.nextDouble(-2, 1));
            Bow bow = new Bow();
            ground.bow(from, to, bow);
            assertInside(bow, from, to, ground::heightAt, "ground, window " + i);
            path.bow(from, to, bow);
            assertInside(bow, from, to, path::heightAt, "path, window " + i);
            PairedPath paired = new PairedPath(path, new RolledProfile(RandomProfiles.profile(random), path.radiusM()));
            paired.bow(from, to, bow);
            assertInside(bow, from, to, paired::heightAt, "paired path, window " + i);
            assertSlopes(paired, from, to);
            narrowed += Math.min(bow.rest.width(), bow.whole.width());
            all += bow.whole.width();
        }
        assertTrue(narrowed < 0.9 * all, "parabolas must be of use: " + narrowed + " of " + all);
    }

    private static void assertInside(Bow bow, double from, double to, DoubleUnaryOperator height, String what) {
        double a = height.applyAsDouble(from);
        double b = height.applyAsDouble(to);
        for (int k = 0; k < PLACES; k++) {
            double t = k / (PLACES - 1.0);
            double above = height.applyAsDouble(from + t * (to - from)) - a - t * (b - a);
            double off = above - 4 * bow.peak * t * (1 - t);
            assertTrue(
                    above >= bow.whole.lo - ROUNDING_M && above <= bow.whole.hi + ROUNDING_M,
                    () -> what + " at " + t + ": " + above + " of " + bow.whole.lo + " to " + bow.whole.hi);
            assertTrue(
                    off >= bow.rest.lo - ROUNDING_M && off <= bow.rest.hi + ROUNDING_M,
                    () -> what + " at " + t + ": off by " + off + " of " + bow.rest.lo + " to " + bow.rest.hi);
        }
    }

    private static void assertSlopes(PairedPath path, double from, double to) {
        Interval slopes = new Interval();
        path.addSlopes(from, to, slopes);
        double[] heightThenSlope = new double[2];
        for (int k = 0; k < PLACES; k++) {
            double s = from + k / (PLACES - 1.0) * (to - from);
            path.locate(s, heightThenSlope);
            assertEquals(path.heightAt(s), heightThenSlope[0], ROUNDING_M);
            assertTrue(heightThenSlope[1] >= slopes.lo - ROUNDING_M && heightThenSlope[1] <= slopes.hi + ROUNDING_M);
        }
    }

    @Test
    void theLeastOverAParabolaIsItsLowestPoint() {
        // 1 + 2t − 4·2t(1 − t) = 8t² − 6t + 1: lowest, −1/8, at 3/8.
        assertEquals(-0.125, Bow.least(1, 3, -2, 0, 1), 1e-12);
        // Only from 1/2 on: 0 at 1/2.
        assertEquals(0, Bow.least(1, 3, -2, 0.5, 1), 1e-12);
        // Bulging upward the ends are lowest: at 1/4 it is 1 + 1/2 + 3/2.
        assertEquals(1, Bow.least(1, 3, 2, 0, 1), 1e-12);
        assertEquals(3, Bow.least(1, 3, 2, 0.25, 1), 1e-12);
    }
}
