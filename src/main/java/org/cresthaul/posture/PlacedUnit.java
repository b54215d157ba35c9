package org.cresthaul.posture;

import org.cresthaul.road.WheelPath;

/** A unit standing on the road, with what the position search needs of it. Not changed after construction. */
public final class PlacedUnit {
    /** A pinned wheel this near its path may stand on it: the solver leaves less. */
    public static final double TOUCHES_M = 1e-6;

    private static final double[] NONE = {};

    public final Pose pose;
    public final double pivotX;
    public final double pivotZ;
    /** World place and travel of each down axle; a hanging axle is at its rebound limit. */
    public final double[] wheelX;

    public final double[] wheelZ;
    /** Travel the ground asks for: below -rebound the axle hangs. */
    public final double[] travel;
    /**
     * Least free height under the pinned wheels of boosters, each at no travel, meters: while it is positive none of
     * them carries; infinite when there are none.
     */
    public final double fixedGap;

    /** False when no posture was found here: the search then stays unproven. */
    public final boolean solved;

    /** World places of the pinned wheels of boosters, each at no travel. */
    public final double[] fixedX;

    public final double[] fixedZ;
    private final double[] gaps;

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
        int count = rolled.length - n;
        fixedX = count == 0 ? NONE : new double[count];
        fixedZ = count == 0 ? NONE : new double[count];
        gaps = count == 0 ? NONE : new double[count];
        double least = Double.POSITIVE_INFINITY;
        int j = 0;
        for (int k = 0; k < group.pinned.size(); k++) {
            PinnedWheels wheels = group.pinned.get(k);
            for (int i = 0; i < wheels.size(); i++) {
                fixedX[j] = pose.worldXM(wheels.xM[i], wheels.hM[i]);
                fixedZ[j] = pose.worldZM(wheels.xM[i], wheels.hM[i]);
                gaps[j] = fixedZ[j] - rolled[n + j].heightAt(fixedX[j]);
                least = Math.min(least, gaps[j]);
                j++;
            }
        }
        fixedGap = least;
    }

    /** Free height under one pinned wheel at no travel, meters. */
    public double fixedGapM(int wheel) {
        return gaps[wheel];
    }
}
