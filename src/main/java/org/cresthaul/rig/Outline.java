package org.cresthaul.rig;

import java.util.List;

/**
 * A polyline fixed to one unit, from its rear end to its front end: x never decreases, and two neighbors may share an
 * x (a vertical face). Used for the underside, the topside and the load.
 *
 * @param points at least two, rear to front
 */
public record Outline(List<FramePoint> points) {
    public Outline {
        points = List.copyOf(points);
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
