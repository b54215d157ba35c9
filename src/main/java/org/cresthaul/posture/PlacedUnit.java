package org.cresthaul.posture;

import org.cresthaul.road.WheelPath;

/** A unit standing on the road, with what the position search needs of it. Not changed after construction. */
public final class PlacedUnit {
    /** A fixed wheel this near its path may stand on it: the solver leaves less. */
    public static final double TOUCHES_M = 1e-6;

    public final Pose pose;
    public final double pivotX;
    public final double pivotZ;
    /** World place and travel of each down axle; a hanging axle is at its rebound limit. */
    public final double[] wheelX;

    public final double[] wheelZ;
    /** Travel the ground asks for: below -rebound the axle hangs. */
    public final double[] travel;
    /** Free height under the fixed wheel of a carrying booster, meters; infinite when there is none. */
    public final double fixedGap;

    /** False when no posture was found here: the search then stays unproven. */
    public final boolean solved;

    public final double fixedX;
    public final double fixedZ;

    PlacedUnit(
            PivotedGroup group,
            WheelPath[] rolled,
            double pivotX,
            double pivotZ,
            double pitch,
            double[] travel,
            boolean solved) {
        this.solved = solved;
        this.pivotX = pivotX;
        this.pivotZ = pivotZ;
        this.travel = travel;
        pose = Pose.holding(group.pivotXM, group.pivotHM, pivotX, pivotZ, pitch);
        int n = travel.length;
        wheelX = new double[n];
        wheelZ = new double[n];
        for (int i = 0; i < n; i++) {
            double h = group.radiusM[i] + Math.max(travel[i], -group.reboundM);
            wheelX[i] = pose.worldXM(group.xM[i], h);
            wheelZ[i] = pose.worldZM(group.xM[i], h);
        }
        if (group.hasFixedWheel()) {
            fixedX = pose.worldXM(group.fixedXM, group.fixedHM);
            fixedZ = pose.worldZM(group.fixedXM, group.fixedHM);
            fixedGap = fixedZ - rolled[n].heightAt(fixedX);
        } else {
            fixedX = Double.NaN;
            fixedZ = Double.NaN;
            fixedGap = Double.POSITIVE_INFINITY;
        }
    }
}
