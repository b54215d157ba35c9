package org.cresthaul.clearance.bound;

import org.cresthaul.geometry.Range;
import org.cresthaul.posture.PivotedGroup;
import org.cresthaul.posture.PlacedUnit;
import org.cresthaul.road.WheelPath;

/** One unit on its group between two placements, a stretch of steer travel apart. Immutable. */
public final class Stretch {
    final PivotedGroup group;
    /** In the order of {@link PivotedGroup#rolledOn}. */
    final WheelPath[] rolled;

    final PlacedUnit a;
    final PlacedUnit b;
    /** h, meters. */
    final double lengthM;

    public Stretch(PivotedGroup group, WheelPath[] rolled, PlacedUnit a, PlacedUnit b, double lengthM) {
        this.group = group;
        this.rolled = rolled;
        this.a = a;
        this.b = b;
        this.lengthM = lengthM;
    }

    /** X − X_K of something at one place at the first position and at another at the last. */
    Range along(double xA, double xB) {
        return Range.between(xA - a.pivotX, xB - b.pivotX);
    }

    /** Z − Z_K, likewise. */
    Range above(double zA, double zB) {
        return Range.between(zA - a.pivotZ, zB - b.pivotZ);
    }

    /** The pitch at both ends, radians. */
    Range pitchAtEnds() {
        return Range.between(a.pose.pitchRad(), b.pose.pitchRad());
    }

    /** The path under a pinned wheel, the wheels of all boosters behind counted from 0. */
    WheelPath fixedPath(int wheel) {
        return rolled[group.size() + wheel];
    }
}
