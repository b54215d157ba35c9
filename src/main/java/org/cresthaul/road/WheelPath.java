package org.cresthaul.road;

import org.cresthaul.geometry.Bow;
import org.cresthaul.geometry.Interval;

/** The path of a wheel's center, or of an axle's middle, along the road. Immutable. */
public interface WheelPath {
    /** Height at {@code distanceM}, meters. */
    double heightAt(double distanceM);

    /** Puts height and slope into {@code heightThenSlope}; at a corner the slope is that of the piece ahead. */
    void locate(double distanceM, double[] heightThenSlope);

    /** Widens {@code into} by every slope of the path between two distances, {@code fromM} not after {@code toM}. */
    void addSlopes(double fromM, double toM, Interval into);

    /**
     * Widens {@code into} by how far the path lies above its chord between two distances, {@code fromM} before
     * {@code toM}: zero, which it has at both ends, and its least and greatest in between.
     */
    void addBow(double fromM, double toM, Interval into);

    /** Puts the same into {@code into}, and how far it strays from a parabola. */
    void bow(double fromM, double toM, Bow into);
}
