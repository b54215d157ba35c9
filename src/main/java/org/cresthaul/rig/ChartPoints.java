package org.cresthaul.rig;

import java.util.List;
import org.cresthaul.geometry.Finite;

/**
 * A chart of gauge pressure against the load of one axle, straight between its points.
 *
 * @param points pressure and load both strictly rising, at least two
 * @param accuracy how far a load read from it may be off, as a share of it (95 %)
 */
public record ChartPoints(List<Point> points, double accuracy) {
    public record Point(double pressurePa, double loadKg) {
        public Point {
            Finite.requireAtLeast("pressurePa", 0, pressurePa);
            Finite.requireAtLeast("loadKg", 0, loadKg);
        }
    }

    public ChartPoints {
        points = List.copyOf(points);
        Finite.requireAtLeast("accuracy", 0, accuracy);
        if (points.size() < 2) {
            throw new IllegalArgumentException("a chart needs at least two points");
        }
        for (int i = 1; i < points.size(); i++) {
            if (!(points.get(i).pressurePa() > points.get(i - 1).pressurePa()
                    && points.get(i).loadKg() > points.get(i - 1).loadKg())) {
                throw new IllegalArgumentException(
                        "a chart rises: point " + (i + 1) + " is not above point " + i + ": " + points);
            }
        }
    }
}
