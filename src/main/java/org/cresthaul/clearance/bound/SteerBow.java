package org.cresthaul.clearance.bound;

import org.cresthaul.geometry.Bow;
import org.cresthaul.geometry.Interval;
import org.cresthaul.geometry.Range;
import org.cresthaul.road.WheelPath;

/** That of the steer axle, which itself advances evenly and stands on its own path. */
public record SteerBow(WheelPath path, double fromM, double toM, Range rise) implements PivotBow {
    /** Between two positions of the steer axle. */
    public static SteerBow of(WheelPath path, double fromM, double toM) {
        Interval bow = new Interval();
        path.addBow(fromM, toM, bow);
        return new SteerBow(path, fromM, toM, Range.of(bow));
    }

    /** How it moves over that stretch: one meter for each meter. */
    public PointMotion motion() {
        Interval slopes = new Interval();
        path.addSlopes(fromM, toM, slopes);
        return new PointMotion(Range.ONE, Range.of(slopes));
    }

    @Override
    public double forward() {
        return 0;
    }

    @Override
    public Bow parabola() {
        Bow bow = new Bow();
        path.bow(fromM, toM, bow);
        return bow;
    }
}
