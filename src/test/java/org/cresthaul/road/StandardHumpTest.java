package org.cresthaul.road;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The hump by hand: 56.5 in of gauge, two heads of 2.75 in and 2 ft on either side are 110 in, or 9.1667 ft; every
 * further track adds 13 ft. The rule is that of AASHTO, read in TxDOT, Roadway Design Manual 13.11.2 (check value G3):
 * no more than 3 in lower at 30 ft from the rail.
 */
class StandardHumpTest {
    private static final double FOOT_M = 0.3048;
    private static final double EXACT_M = 1e-12;

    @ParameterizedTest
    @CsvSource({"1, 9.166666666666667", "2, 22.166666666666667", "3, 35.166666666666667", "4, 48.166666666666667"})
    void theRoadLiesInThePlaneOfTheRailsAndFallsFromThere(int tracks, double planeFt) {
        StandardHump hump = new StandardHump(tracks, 3 * 0.0254);
        RoadProfile road = hump.profile();
        double halfFt = planeFt / 2;

        assertEquals(planeFt * FOOT_M, hump.planeM(), EXACT_M);
        for (int side : new int[] {-1, 1}) {
            assertEquals(0, road.heightAt(side * halfFt * FOOT_M), EXACT_M);
            assertEquals(0, road.heightAt(side * halfFt * FOOT_M * 0.4), EXACT_M);
            // Half the fall half the way, all of it 30 ft from the rail, which is 2 ft inside the plane.
            assertEquals(-1.5 * 0.0254, road.heightAt(side * (halfFt + 14) * FOOT_M), EXACT_M);
            assertEquals(-3 * 0.0254, road.heightAt(side * (halfFt - 2 + 30) * FOOT_M), EXACT_M);
            // It goes on: twice as far, twice the fall.
            assertEquals(-6 * 0.0254, road.heightAt(side * (halfFt + 56) * FOOT_M), EXACT_M);
        }
        assertEquals(0, road.before().gradeAccuracy());
        assertEquals(0, road.after().gradeAccuracy());
    }

    @Test
    void refusesWhatNoRuleDraws() {
        assertThrows(IllegalArgumentException.class, () -> new StandardHump(0, 0.1));
        assertThrows(IllegalArgumentException.class, () -> new StandardHump(5, 0.1));
        assertThrows(IllegalArgumentException.class, () -> new StandardHump(1, -0.1));
    }
}
