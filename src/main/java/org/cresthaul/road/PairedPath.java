package org.cresthaul.road;

import org.cresthaul.geometry.Bow;
import org.cresthaul.geometry.Interval;

/**
 * The path of the middle of an axle whose wheels roll along two lines: halfway between both. Slopes and bows of both
 * add up, so the bounds hold, though not always as close as those of one path. Immutable.
 */
public final class PairedPath implements WheelPath {
    private final RolledProfile left;
    private final RolledProfile right;

    public PairedPath(RolledProfile left, RolledProfile right) {
        this.left = left;
        this.right = right;
    }

    @Override
    public double heightAt(double distanceM) {
        return 0.5 * (left.heightAt(distanceM) + right.heightAt(distanceM));
    }

    @Override
    public void locate(double distanceM, double[] heightThenSlope) {
        left.locate(distanceM, heightThenSlope);
        double height = heightThenSlope[0];
        double slope = heightThenSlope[1];
        right.locate(distanceM, heightThenSlope);
        heightThenSlope[0] = 0.5 * (height + heightThenSlope[0]);
        heightThenSlope[1] = 0.5 * (slope + heightThenSlope[1]);
    }

    @Override
    public void addSlopes(double fromM, double toM, Interval into) {
        Interval one = new Interval();
        Interval other = new Interval();
        left.addSlopes(fromM, toM, one);
        right.addSlopes(fromM, toM, other);
        into.add(0.5 * (one.lo + other.lo));
        into.add(0.5 * (one.hi + other.hi));
    }

    @Override
    public void addBow(double fromM, double toM, Interval into) {
        Interval one = new Interval();
        Interval other = new Interval();
        left.addBow(fromM, toM, one);
        right.addBow(fromM, toM, other);
        into.add(0.5 * (one.lo + other.lo));
        into.add(0.5 * (one.hi + other.hi));
    }

    @Override
    public void bow(double fromM, double toM, Bow into) {
        Bow other = new Bow();
        right.bow(fromM, toM, other);
        left.bow(fromM, toM, into);
        into.add(1, other);
        into.scale(0.5);
    }
}
