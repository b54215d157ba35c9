package org.cresthaul.plan;

import java.util.Arrays;
import java.util.IdentityHashMap;
import java.util.Map;
import org.cresthaul.route.RailCrossing;

/**
 * Which configurations are shown to clear a crossing in time and to have room beyond it. By length: a hundred
 * configurations have a handful of them. Not safe to share between threads.
 */
final class CrossingsShown {
    private final double crawlMps;
    private final double[] lengthsM;
    /** By configuration: its number among the lengths. */
    private final int[] number;

    private final boolean[] nothingCrosses;
    private final Map<RailCrossing, boolean[]> known = new IdentityHashMap<>();

    /** @param lengthM by configuration */
    CrossingsShown(double[] lengthM, double crawlMps) {
        this.crawlMps = crawlMps;
        lengthsM = Arrays.stream(lengthM).distinct().sorted().toArray();
        number = Arrays.stream(lengthM)
                .mapToInt(m -> Arrays.binarySearch(lengthsM, m))
                .toArray();
        nothingCrosses = new boolean[lengthM.length];
        Arrays.fill(nothingCrosses, true);
    }

    /** By configuration, true where nothing crosses; not to be written to. */
    boolean[] at(PlanPlace place) {
        return place.hazard().orElse(null) instanceof RailCrossing crossing
                ? known.computeIfAbsent(crossing, this::shown)
                : nothingCrosses;
    }

    private boolean[] shown(RailCrossing crossing) {
        boolean[] ofLength = new boolean[lengthsM.length];
        for (int i = 0; i < ofLength.length; i++) {
            ofLength[i] = CrossingTimes.isShown(crossing, lengthsM[i], crawlMps);
        }
        boolean[] shown = new boolean[number.length];
        for (int c = 0; c < shown.length; c++) {
            shown[c] = ofLength[number[c]];
        }
        return shown;
    }
}
