package org.cresthaul.axleload;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.cresthaul.geometry.Finite;

/**
 * A bound and the load it meets.
 *
 * @param chartKg how far the load may be off because what the booster's regulator sets is read from a chart (95 %)
 */
public record LoadTest(LoadBound bound, double loadKg, double chartKg) {
    /** A load at its limit but for rounding noise is at its limit. */
    public static final double NOISE_KG = 1e-6;

    public LoadTest {
        Finite.requireAtLeast("chartKg", 0, chartKg);
    }

    /** A load that no chart has a part in. */
    public LoadTest(LoadBound bound, double loadKg) {
        this(bound, loadKg, 0);
    }

    public double marginKg() {
        return bound.marginKg(loadKg);
    }

    public boolean isKept() {
        return marginKg() >= -NOISE_KG;
    }

    /**
     * Whether it would be kept as well if the load were off to the worse side, by {@code accuracy} of itself and by
     * what the chart may be off; independent of each other, so that the root of the squares counts.
     */
    public boolean isKeptWithin(double accuracy) {
        double off = Math.hypot(loadKg * accuracy, chartKg);
        return bound.marginKg(loadKg + (bound.least() ? -off : off)) >= -NOISE_KG;
    }

    public double relativeMargin() {
        return bound.relativeMargin(loadKg);
    }

    /** @param charted the same axles with what the regulator sets at both ends of its chart's accuracy */
    public static List<LoadTest> all(List<LoadBound> bounds, AxleLoads loads, List<AxleLoads> charted) {
        return bounds.stream()
                .map(b -> new LoadTest(
                        b,
                        b.loadKg(loads),
                        charted.stream()
                                .mapToDouble(c -> Math.abs(b.loadKg(c) - b.loadKg(loads)))
                                .max()
                                .orElse(0)))
                .toList();
    }

    /** The one with the least margin for its size: the rule that governs. Among equals the first. */
    public static LoadTest governing(Stream<LoadTest> tests) {
        return tests.min(Comparator.comparingDouble(LoadTest::relativeMargin))
                .orElseThrow(() -> new IllegalArgumentException("nothing was tested"));
    }
}
