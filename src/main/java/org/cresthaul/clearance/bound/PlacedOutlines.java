package org.cresthaul.clearance.bound;

import org.cresthaul.posture.Pose;

/**
 * The outlines of one unit at one pose, over or under their line: computed once, used by the stretches on both sides.
 */
public final class PlacedOutlines {
    /** With what the roll raises counted in. */
    public final Pose pose;
    /** How far the unit rolls up where it is looked at, radians, and by how much that raises its outlines, meters. */
    final double rollRad;

    final double armM;
    final double raiseM;
    /** Place and gap of each vertex; the gap is over the line as it goes on beyond its ends. */
    public final double[] x;

    final double[] z;
    public final double[] gap;
    /** Ends and slope of each face and chord. */
    public final double[] rearX;

    final double[] rearZ;
    public final double[] frontX;
    final double[] slope;
    /** The line's first vertex past each segment's rear end. */
    public final int[] firstKink;
    /** Which nearly straight stretches have more in place than their chord. */
    final boolean[] whole;

    PlacedOutlines(Pose level, double rollRad, double armM, int vertices, int segments, int straights) {
        this.rollRad = rollRad;
        this.armM = armM;
        raiseM = rollRad * armM;
        pose = raiseM == 0 ? level : new Pose(level.originXM(), level.originZM() + raiseM, level.pitchRad());
        x = new double[vertices];
        z = new double[vertices];
        gap = new double[vertices];
        rearX = new double[segments];
        rearZ = new double[segments];
        frontX = new double[segments];
        slope = new double[segments];
        firstKink = new int[segments];
        whole = new boolean[straights];
    }

    public double tireXM(RaisedTire tire) {
        return pose.worldXM(tire.circle().xM(), tire.circle().hM());
    }

    public double tireZM(RaisedTire tire) {
        return pose.worldZM(tire.circle().xM(), tire.circle().hM()) + rollRad * tire.armM() - raiseM;
    }
}
