package org.cresthaul.axleload;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SplittableRandom;
import org.cresthaul.rig.AxleKind;
import org.junit.jupiter.api.Test;

/** Which axles stand on a bridge together, by hand and by driving over it step by step. */
class OnBridgeTest {
    private static final double FOOT = 0.3048;

    /** Steer, two drive axles 4 ft apart, three trailer axles 5 ft apart. */
    private static final List<AxlePlace> PLACES = places(0, -15, -19, -55, -60, -65);

    private static List<AxlePlace> places(double... feet) {
        List<AxlePlace> places = new ArrayList<>();
        for (int i = 0; i < feet.length; i++) {
            places.add(new AxlePlace(AxleKind.TRAILER, AxleKind.TRAILER, i + 1, feet[i] * FOOT));
        }
        return places;
    }

    private static List<String> together(double feet, List<AxlePlace> places) {
        return OnBridge.overLength(feet * FOOT).together(places).stream()
                .map(r -> r.first() + "-" + r.last())
                .toList();
    }

    @Test
    void axlesStandOnItTogetherByTheirSpacing() {
        assertEquals(List.of("0-0", "1-2", "3-4", "4-5"), together(5, PLACES));
        assertEquals(List.of("0-0", "1-2", "3-5"), together(12, PLACES));
        assertEquals(List.of("0-2", "3-5"), together(20, PLACES));
        assertEquals(List.of("0-3", "1-5"), together(55, PLACES));
        assertEquals(List.of("0-5"), together(65, PLACES));
    }

    @Test
    void aFootMoreThanTheBridgeCountsAsOnItAndNoMore() {
        assertEquals(List.of("0-0", "1-2", "3-5"), together(9, PLACES));
        assertEquals(List.of("0-0", "1-2", "3-4", "4-5"), together(8.99, PLACES));
    }

    @Test
    void aWeightNeedsALength() {
        assertThrows(
                IllegalArgumentException.class,
                () -> new OnBridge(OptionalDouble.empty(), OptionalDouble.of(1000), List.of()));
    }

    /** 2,000 random combinations driven over in steps of 1 cm: the sets of axles that are on it at one time. */
    @Test
    void drivingOverItStepByStepFindsTheSameAxles() {
        SplittableRandom random = new SplittableRandom(11);
        int runs = 0;
        for (int k = 0; k < 2_000; k++) {
            // On whole decimeters, with a bridge between them: no axle stands just at an end.
            double[] atM = new double[2 + random.nextInt(8)];
            for (int i = 1; i < atM.length; i++) {
                atM[i] = atM[i - 1] - 0.1 * random.nextInt(10, 90);
            }
            List<AxlePlace> places = new ArrayList<>();
            for (int i = 0; i < atM.length; i++) {
                places.add(new AxlePlace(AxleKind.TRAILER, AxleKind.TRAILER, i + 1, atM[i]));
            }
            double reachM = 0.1 * random.nextInt(10, 400) + 0.05;
            Set<List<Integer>> stood = new LinkedHashSet<>();
            for (int step = 0; step * 0.01 <= reachM - atM[atM.length - 1] + 0.1; step++) {
                List<Integer> on = new ArrayList<>();
                for (int i = 0; i < atM.length; i++) {
                    double s = step * 0.01 + atM[i];
                    if (s >= 0 && s <= reachM) {
                        on.add(i);
                    }
                }
                stood.add(on);
            }
            Set<List<Integer>> largest = new LinkedHashSet<>();
            stood.stream()
                    .filter(on ->
                            !on.isEmpty() && stood.stream().noneMatch(o -> o.size() > on.size() && o.containsAll(on)))
                    .forEach(largest::add);
            Set<List<Integer>> told = new LinkedHashSet<>();
            for (OnBridge.Run r :
                    OnBridge.overLength(reachM - OnBridge.ALLOWANCE_M).together(places)) {
                List<Integer> on = new ArrayList<>();
                for (int i = r.first(); i <= r.last(); i++) {
                    on.add(i);
                }
                told.add(on);
                runs++;
            }
            assertEquals(largest, told, "case " + k);
        }
        assertTrue(runs > 4_000, runs + " runs");
    }
}
