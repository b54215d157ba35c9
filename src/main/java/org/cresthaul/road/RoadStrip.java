package org.cresthaul.road;

import org.cresthaul.geometry.Areas;
import org.cresthaul.road.CornerTemplate.RoadWidths;
import org.locationtech.jts.geom.Geometry;

/** One road of a template, straight through the origin, in a frame where offsets grow to the left of its heading. */
final class RoadStrip {
    final double headingRad;
    final double ownFrom;
    final double ownTo;
    final double opposingFrom;
    final double opposingTo;
    /** The edge on the left. */
    final double innerM;
    /** The edge on the right. */
    final double outerM;

    private final RoadWidths widths;
    private final double reachM;

    /** @param ownLeft whether the own lanes lie left of the center line: they do in a mirrored frame */
    RoadStrip(double headingRad, RoadWidths widths, boolean ownLeft, double reachM) {
        this.headingRad = headingRad;
        this.widths = widths;
        this.reachM = reachM;
        double own = widths.ownM() + widths.shoulderM();
        ownFrom = ownLeft ? 0 : -own;
        ownTo = ownLeft ? own : 0;
        opposingFrom = ownLeft ? -widths.opposingM() : 0;
        opposingTo = ownLeft ? 0 : widths.opposingM();
        innerM = Math.max(ownTo, opposingTo);
        outerM = Math.min(ownFrom, opposingFrom);
    }

    /** The middle of the own lanes, without the shoulder. */
    double middleM() {
        return (ownTo > 0 ? 1 : -1) * widths.ownM() / 2;
    }

    /** Between two offsets, both ways. */
    Geometry strip(double from, double to) {
        return strip(from, to, -reachM, reachM);
    }

    Geometry before(double from, double to) {
        return strip(from, to, -reachM, 0);
    }

    Geometry beyond(double from, double to) {
        return strip(from, to, 0, reachM);
    }

    private Geometry strip(double from, double to, double start, double end) {
        return to > from ? PlanShapes.rectangle(headingRad, start, end, from, to) : Areas.none();
    }

    /** Everything to the left of an offset. */
    Geometry side(double offset) {
        return PlanShapes.rectangle(headingRad, -3 * reachM, 3 * reachM, offset, 3 * reachM);
    }

    Corner.RoadEnd end(boolean mirror) {
        return end(mirror, 0, 0);
    }

    /** With its point elsewhere than in the origin; {@code mirror} turns the heading only. */
    Corner.RoadEnd end(boolean mirror, double xM, double yM) {
        double own = widths.ownM() + widths.shoulderM();
        double left = widths.borrow() ? widths.opposingM() : 0;
        return new Corner.RoadEnd(xM, yM, mirror ? -headingRad : headingRad, 0, own, left, own);
    }
}
