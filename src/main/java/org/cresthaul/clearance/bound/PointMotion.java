package org.cresthaul.clearance.bound;

import org.cresthaul.geometry.Range;

/** How a point moves over a stretch, per meter of steer travel: v along the road and w up. */
public record PointMotion(Range forward, Range rise) {
    PointMotion hull(PointMotion other) {
        return new PointMotion(forward.hull(other.forward), rise.hull(other.rise));
    }

    /** The same of a point that a roll raises besides. */
    PointMotion rising(double more) {
        return new PointMotion(forward, rise.plus(more));
    }
}
