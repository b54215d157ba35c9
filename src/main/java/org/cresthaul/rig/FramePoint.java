package org.cresthaul.rig;

import org.cresthaul.geometry.Finite;

/**
 * A point fixed to one unit, in that unit's own frame.
 *
 * @param xM forward along the unit, meters, from the unit's own origin
 * @param hM height above the level ground of the level stance, meters
 * @param part what sits there in the words of the rig file ("deck front", "battery box"), or empty
 */
public record FramePoint(double xM, double hM, String part) {
    public FramePoint {
        Finite.require("xM", xM);
        Finite.require("hM", hM);
        if (part == null) {
            throw new IllegalArgumentException("part must not be null; use an empty text");
        }
    }

    public FramePoint(double xM, double hM) {
        this(xM, hM, "");
    }

    /** The same part moved along the unit by {@code dxM} meters. */
    public FramePoint shiftedBy(double dxM) {
        return new FramePoint(xM + dxM, hM, part);
    }

    /** The point a share {@code t} of the way to another, 0 to 1. It is of the same part only when both ends are. */
    public FramePoint toward(FramePoint other, double t) {
        return new FramePoint(xM + t * (other.xM - xM), hM + t * (other.hM - hM), part.equals(other.part) ? part : "");
    }
}
