package org.cresthaul.rig;

import java.util.ArrayList;
import java.util.List;

/**
 * A polyline fixed to one unit, from its rear end to its front end: x never decreases, and two neighbors may share an x
 * (a vertical face); a point given twice in a row is one. Used for the underside, the topside and the load.
 *
 * @param points at least two, rear to front
 */
public record Outline(List<FramePoint> points) {
    public Outline {
        points = withoutRepeats(points);
        if (points.size() < 2) {
            throw new IllegalArgumentException("an outline needs at least two points, has " + points.size());
        }
        for (int i = 1; i < points.size(); i++) {
            if (points.get(i).xM() < points.get(i - 1).xM()) {
                throw new IllegalArgumentException("an outline runs from rear to front: x falls from "
                        + points.get(i - 1).xM() + " to " + points.get(i).xM() + " m at point " + (i + 1));
            }
        }
        if (points.get(points.size() - 1).xM() <= points.get(0).xM()) {
            throw new IllegalArgumentException("an outline must have a length");
        }
    }

    /**
     * Of a point given twice in a row one is left, with the part that either names: between the two there is no
     * direction.
     */
    private static List<FramePoint> withoutRepeats(List<FramePoint> points) {
        List<FramePoint> kept = new ArrayList<>(points.size());
        for (FramePoint p : points) {
            int last = kept.size() - 1;
            if (last < 0 || kept.get(last).xM() != p.xM() || kept.get(last).hM() != p.hM()) {
                kept.add(p);
            } else if (kept.get(last).part().isEmpty()) {
                kept.set(last, p);
            }
        }
        return List.copyOf(kept);
    }

    public double rearXM() {
        return points.get(0).xM();
    }

    public double frontXM() {
        return points.get(points.size() - 1).xM();
    }

    public double highestM() {
        return points.stream().mapToDouble(FramePoint::hM).max().orElseThrow();
    }

    public double lowestM() {
        return points.stream().mapToDouble(FramePoint::hM).min().orElseThrow();
    }

    /** The same outline moved along the unit by {@code dxM} meters. */
    public Outline shiftedBy(double dxM) {
        return new Outline(points.stream().map(p -> p.shiftedBy(dxM)).toList());
    }
}
