package org.cresthaul.axleload;

import java.util.Optional;
import java.util.OptionalDouble;
import org.cresthaul.geometry.Finite;

/**
 * A gauge reading against what the declared load gives: a mis-declared machine shows here first.
 *
 * @param readKg load of one axle that the reading stands for
 * @param declaredKg load of one axle that the declared weights give
 * @param toleranceKg how far the two may be apart and still agree
 */
public record Reading(double readKg, double declaredKg, double toleranceKg) {
    public Reading {
        Finite.require("readKg", readKg);
        Finite.require("declaredKg", declaredKg);
        Finite.requireAtLeast("toleranceKg", 0, toleranceKg);
    }

    /**
     * Compares; empty when the reading is beyond the chart.
     *
     * @param declaredAccuracy of the declared weights, as a share of a load
     */
    public static Optional<Reading> of(
            GaugeChart chart, double pressurePa, double declaredKg, double declaredAccuracy) {
        OptionalDouble readKg = chart.loadKg(pressurePa);
        if (readKg.isEmpty()) {
            return Optional.empty();
        }
        double tolerance = Math.hypot(chart.accuracy() * readKg.getAsDouble(), declaredAccuracy * Math.abs(declaredKg));
        return Optional.of(new Reading(readKg.getAsDouble(), declaredKg, tolerance));
    }

    public double differenceKg() {
        return readKg - declaredKg;
    }

    public boolean agrees() {
        return Math.abs(differenceKg()) <= toleranceKg;
    }
}
