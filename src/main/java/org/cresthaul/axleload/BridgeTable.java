package org.cresthaul.axleload;

import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What consecutive axles may carry by their number and by how far the outer ones are apart, as somebody's table has it:
 * a bridge formula given as figures.
 *
 * @param name what people call it
 * @param mostKg by number of axles, then by length in meters
 */
public record BridgeTable(String name, SortedMap<Integer, SortedMap<Double, Double>> mostKg) {
    /** A length that is that of an entry but for noise is that of the entry. */
    private static final double NOISE_M = 1e-6;

    public BridgeTable {
        SortedMap<Integer, SortedMap<Double, Double>> copy = new TreeMap<>();
        mostKg.forEach((axles, rows) -> copy.put(axles, Collections.unmodifiableSortedMap(new TreeMap<>(rows))));
        if (name.isBlank()
                || copy.isEmpty()
                || copy.firstKey() < 2
                || copy.values().stream().anyMatch(SortedMap::isEmpty)) {
            throw new IllegalArgumentException("a table needs a name, and rows for two axles and more");
        }
        mostKg = Collections.unmodifiableSortedMap(copy);
    }

    /**
     * Most for a run. The entry of the next smaller number of axles and of the next shorter length counts, nothing is
     * read between entries; below the least number or the least length that is listed, the least in proportion.
     *
     * @param axles at least two
     * @param lengthM between the outer ones
     */
    public double mostKg(int axles, double lengthM) {
        SortedMap<Integer, SortedMap<Double, Double>> upTo = mostKg.headMap(axles + 1);
        int listed = upTo.isEmpty() ? mostKg.firstKey() : upTo.lastKey();
        double share = listed > axles ? (double) axles / listed : 1;
        SortedMap<Double, Double> rows = mostKg.get(listed);
        SortedMap<Double, Double> shorter = rows.headMap(lengthM + NOISE_M);
        return share
                * (shorter.isEmpty()
                        ? rows.get(rows.firstKey()) * lengthM / rows.firstKey()
                        : shorter.get(shorter.lastKey()));
    }
}
