package org.cresthaul.clearance.bound;

import org.cresthaul.geometry.Bow;
import org.cresthaul.geometry.Range;

/** How far one point of a unit strays from moving evenly over one stretch. */
public final class PointBow implements PivotBow {
    private final UnitBow of;
    private final double share;
    private final double slack;
    private final Range rise;
    private final double forward;
    /** Worked out when first asked for, always the same. */
    private Bow parabola;

    /** Of a point that takes a share of the wheels' bow and the rest of the pivot's, a slack besides. */
    PointBow(UnitBow of, double share, double slack, Range rise, double forward) {
        this.of = of;
        this.share = share;
        this.slack = slack;
        this.rise = rise;
        this.forward = forward;
    }

    @Override
    public Range rise() {
        return rise;
    }

    @Override
    public double forward() {
        return forward;
    }

    @Override
    public Bow parabola() {
        if (parabola == null) {
            parabola = of.parabola(share, slack);
        }
        return parabola;
    }

    /**
     * The bow of the gap between the point and a line.
     *
     * @param line its bow between both places of the point
     * @param side +1 over the line, -1 under it
     * @param zA height of the line at the first place, zB at the last
     */
    Bow over(Bow line, int side, double xA, double xB, double zA, double zB) {
        Bow gap = of.parabola(share, slack);
        if (side < 0) {
            gap.scale(-1);
        }
        gap.add(-side, line);
        gap.widen(UnitBow.slopeOf(line.peak, xA, xB, zA, zB) * forward);
        return gap;
    }
}
