package org.cresthaul.axleload;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** A bound and the load it meets. */
public record LoadTest(LoadBound bound, double loadKg) {
    /** A load at its limit but for rounding noise is at its limit. */
    public static final double NOISE_KG = 1e-6;

    public double marginKg() {
        return bound.marginKg(loadKg);
    }

    public boolean isKept() {
        return marginKg() >= -NOISE_KG;
    }

    /** Whether it would be kept as well if the load were off by {@code accuracy} of itself, to the worse side. */
    public boolean isKeptWithin(double accuracy) {
        double off = Math.abs(loadKg) * accuracy;
        return bound.marginKg(loadKg + (bound.least() ? -off : off)) >= -NOISE_KG;
    }

    public double relativeMargin() {
        return bound.relativeMargin(loadKg);
    }

    public static List<LoadTest> all(List<LoadBound> bounds, AxleLoads loads) {
        return bounds.stream().map(b -> new LoadTest(b, b.loadKg(loads))).toList();
    }

    /** The one with the least margin for its size: the rule that governs. Among equals the first. */
    public static LoadTest governing(Stream<LoadTest> tests) {
        return tests.min(Comparator.comparingDouble(LoadTest::relativeMargin))
                .orElseThrow(() -> new IllegalArgumentException("nothing was tested"));
    }
}
