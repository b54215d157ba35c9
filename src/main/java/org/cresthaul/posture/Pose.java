package org.cresthaul.posture;

import org.cresthaul.rig.FramePoint;

/**
 * Where a unit's frame lies over the road: an exact rotation and shift of its level stance. Immutable.
 *
 * <p>A frame point (x, h) lies at distance X = originX + x cos θ − h sin θ and height Z = originZ + x sin θ + h cos θ;
 * θ is positive nose up.
 */
public final class Pose {
    private final double originXM;
    private final double originZM;
    private final double pitchRad;
    final double cos;
    final double sin;

    public Pose(double originXM, double originZM, double pitchRad) {
        this.originXM = originXM;
        this.originZM = originZM;
        this.pitchRad = pitchRad;
        this.cos = Math.cos(pitchRad);
        this.sin = Math.sin(pitchRad);
    }

    /** The pose that puts frame point (xM, hM) at distance {@code worldXM} and height {@code worldZM}. */
    static Pose holding(double xM, double hM, double worldXM, double worldZM, double pitchRad) {
        double c = Math.cos(pitchRad);
        double s = Math.sin(pitchRad);
        return new Pose(worldXM - xM * c + hM * s, worldZM - xM * s - hM * c, pitchRad);
    }

    public double originXM() {
        return originXM;
    }

    public double originZM() {
        return originZM;
    }

    public double pitchRad() {
        return pitchRad;
    }

    /** Distance along the road of a frame point, meters. */
    public double worldXM(double xM, double hM) {
        return originXM + xM * cos - hM * sin;
    }

    /** Height of a frame point above the profile's datum, meters. */
    public double worldZM(double xM, double hM) {
        return originZM + xM * sin + hM * cos;
    }

    public double worldXM(FramePoint p) {
        return worldXM(p.xM(), p.hM());
    }

    public double worldZM(FramePoint p) {
        return worldZM(p.xM(), p.hM());
    }
}
