package org.cresthaul.posture;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.cresthaul.geometry.Bow;
import org.cresthaul.geometry.Interval;
import org.cresthaul.rig.Axle;
import org.cresthaul.road.WheelPath;
import org.junit.jupiter.api.Test;

/** What it takes to find that a unit has no posture; counted in looks at the ground, not timed. */
class ReluctantUnitTest {
    private static final int AXLES = 12;
    /** Before the trial pitches were bounded some units took 200,000 looks, and a road of them 18 s. */
    private static final int MOST_LOOKS = 6_000;

    /** Ground as steep as may be, up and down again every {@code halfM} meters, that counts who looks. */
    private static final class Saw implements WheelPath {
        private final double halfM;
        private int looks;

        Saw(double halfM) {
            this.halfM = halfM;
        }

        @Override
        public double heightAt(double distanceM) {
            double share = distanceM / halfM - 2 * Math.floor(distanceM / (2 * halfM));
            return 0.5 * halfM * (share < 1 ? share : 2 - share);
        }

        @Override
        public void locate(double distanceM, double[] heightThenSlope) {
            looks++;
            double share = distanceM / halfM - 2 * Math.floor(distanceM / (2 * halfM));
            heightThenSlope[0] = heightAt(distanceM);
            heightThenSlope[1] = share < 1 ? 0.5 : -0.5;
        }

        @Override
        public void addSlopes(double fromM, double toM, Interval into) {
            into.add(-0.5);
            into.add(0.5);
        }

        @Override
        public void addBow(double fromM, double toM, Interval into) {
            throw new UnsupportedOperationException("nobody asks for a bow here");
        }

        @Override
        public void bow(double fromM, double toM, Bow into) {
            throw new UnsupportedOperationException("nobody asks for a bow here");
        }
    }

    @Test
    void aUnitThatStandsOnItsEndIsGivenUpSoon() {
        int unsolved = 0;
        int most = 0;
        for (double halfM : new double[] {0.05, 0.3, 1, 4}) {
            for (double pivotZ = -12; pivotZ <= 12; pivotZ += 0.5) {
                List<Axle> axles = new ArrayList<>();
                for (int i = 0; i < AXLES; i++) {
                    axles.add(new Axle(-8 - 0.3 * i, 0.5));
                }
                PivotedGroup group = PivotedGroup.held(0, 1.2, axles, 0.1, 0.1, 0);
                Saw saw = new Saw(halfM);
                WheelPath[] under = new WheelPath[AXLES];
                Arrays.fill(under, saw);
                PlacedUnit placed = group.place(under, 0.37, pivotZ, 0);
                unsolved += placed.solved ? 0 : 1;
                most = Math.max(most, saw.looks);
                // Whoever is within the pitch at which anything is judged has a posture.
                assertTrue(placed.solved || Math.abs(pivotZ) > 3, "pivot at " + pivotZ + ", saw of " + halfM);
            }
        }
        assertTrue(unsolved > 5, unsolved + " without a posture");
        assertTrue(most <= MOST_LOOKS, most + " looks at the ground");
        assertFalse(most < AXLES * 12, "some were reluctant");
    }
}
