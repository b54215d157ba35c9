package org.cresthaul.axleload;

import java.util.List;
import java.util.OptionalDouble;
import org.cresthaul.rig.ChartPoints;
import org.cresthaul.rig.ChartPoints.Point;

/**
 * Pressure on a gauge against the load of one axle, read both ways, straight between the chart's points. Beyond the
 * chart there is no answer: an extrapolated gauge reading would look like one the maker gave.
 */
public final class GaugeChart {
    private final List<Point> points;
    private final double accuracy;

    public GaugeChart(ChartPoints chart) {
        points = chart.points();
        accuracy = chart.accuracy();
    }

    /** How far a load read from it may be off, as a share of it. */
    public double accuracy() {
        return accuracy;
    }

    public double leastKg() {
        return points.get(0).loadKg();
    }

    public double mostKg() {
        return points.get(points.size() - 1).loadKg();
    }

    /** Load of one axle at a pressure, kilograms; empty beyond the chart. */
    public OptionalDouble loadKg(double pressurePa) {
        for (int i = 1; i < points.size(); i++) {
            Point a = points.get(i - 1);
            Point b = points.get(i);
            if (pressurePa >= a.pressurePa() && pressurePa <= b.pressurePa()) {
                return OptionalDouble.of(between(pressurePa, a.pressurePa(), b.pressurePa(), a.loadKg(), b.loadKg()));
            }
        }
        return OptionalDouble.empty();
    }

    /** Pressure at which one axle carries a load, pascals; empty beyond the chart. */
    public OptionalDouble pressurePa(double loadKg) {
        for (int i = 1; i < points.size(); i++) {
            Point a = points.get(i - 1);
            Point b = points.get(i);
            if (loadKg >= a.loadKg() && loadKg <= b.loadKg()) {
                return OptionalDouble.of(between(loadKg, a.loadKg(), b.loadKg(), a.pressurePa(), b.pressurePa()));
            }
        }
        return OptionalDouble.empty();
    }

    private static double between(double at, double a, double b, double fromA, double fromB) {
        // Exact at both points.
        return at == b ? fromB : fromA + (at - a) / (b - a) * (fromB - fromA);
    }
}
