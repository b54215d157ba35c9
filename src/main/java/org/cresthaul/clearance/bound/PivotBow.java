package org.cresthaul.clearance.bound;

import org.cresthaul.geometry.Bow;
import org.cresthaul.geometry.Range;

/** How far the pivot of a unit strays from moving evenly over one stretch. */
public interface PivotBow {
    /** Upward, meters. */
    Range rise();

    /** Along the road to either side, meters. */
    double forward();

    /** Upward with its parabola; worked out only where it is asked for. Not to be changed by who asks. */
    Bow parabola();
}
