package org.cresthaul.road;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeout;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.Test;

/** The rolled path against its definition, the highest circle that any point of the line holds up. */
class RolledProfileTest {
    @Test
    void isTheHighestCircleThatAnyPointHoldsUp() {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(20_261_128L);
        double worst = 0;
        int looked = 0;
        for (int i = 0; i < 600; i++) {
            RoadProfile line = line(random, random.nextInt(2, 60), Math.pow(10, random.nextDouble(-3, 0.7)));
            double radiusM = random.nextDouble(0.2, 1.2);
            RolledProfile path = new RolledProfile(line, radiusM);
            for (int k = 0; k < 40; k++) {
                double s = random.nextDouble(line.startM() - 3, line.endM() + 3);
                worst = Math.max(worst, Math.abs(path.heightAt(s) - highest(line, s, radiusM)));
                looked++;
            }
        }
        assertEquals(24_000, looked);
        assertTrue(worst < 1e-9, "off by " + worst);
    }

    /** On each segment the height is concave in the point stood on: greatest at the tangent point, or at an end. */
    private static double highest(RoadProfile line, double s, double radiusM) {
        double highest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i <= line.size(); i++) {
            double from = i == 0 ? s - radiusM : Math.max(s - radiusM, line.distanceM(i - 1));
            double to = i == line.size() ? s + radiusM : Math.min(s + radiusM, line.distanceM(i));
            if (from <= to) {
                double m = line.slopeBefore(i);
                double t = Math.max(from, Math.min(to, s + radiusM * m / Math.sqrt(1 + m * m)));
                int anchor = Math.max(0, i - 1);
                double ground = line.elevationM(anchor) + m * (t - line.distanceM(anchor));
                highest = Math.max(highest, ground + Math.sqrt(Math.max(0, radiusM * radiusM - (t - s) * (t - s))));
            }
        }
        return highest;
    }

    /** Before, 4,000 such points took a minute, and the 10,000 that a file may hold took no end. */
    @Test
    void takesWorkInProportionToThePoints() {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(1);
        RoadProfile line = line(random, 10_000, 0.001);
        assertTimeout(Duration.ofSeconds(2), () -> new RolledProfile(line, 1.2));
    }

    private static RoadProfile line(RandomGenerator random, int n, double stepM) {
        List<SurveyedPoint> points = new ArrayList<>();
        double s = random.nextDouble(-10, 10);
        double z = 0;
        double steepest = random.nextDouble(0.01, 0.5);
        for (int i = 0; i < n; i++) {
            points.add(new SurveyedPoint(s, z));
            double length = stepM * random.nextDouble(0.2, 1.8);
            s += length;
            z += 0.999 * length * random.nextDouble(-steepest, steepest);
        }
        return RoadProfile.of("random", points, Approach.undeclared(), Approach.undeclared());
    }
}
