package org.cresthaul.posture;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.posture.CombinationShape.TrailingBooster;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.AxleGroup;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.road.WheelPath;

/**
 * The wheels of a booster while every hinge from a unit to it stands at its lower stop: fixed to that unit's frame, but
 * for the travel that several axles have against each other. On them the unit comes to stand where the ground is too
 * high for its own group. Immutable.
 */
public final class PinnedWheels {
    /** Wheel centers in the unit's frame, at no travel. */
    public final double[] xM;

    public final double[] hM;
    final double[] radiusM;
    /** How far an axle can be from there, meters; nothing where a single axle is fixed to its frame. */
    public final double mostTravelM;
    /** How far the booster's frame is turned nose down against the unit's. */
    public final double tiltRad;

    private final double jounceM;
    private final double reboundM;
    private final double tiltCos;
    private final double tiltSin;

    private PinnedWheels(Frame frame, AxleGroup axles) {
        int n = axles.axles().size();
        xM = new double[n];
        hM = new double[n];
        radiusM = new double[n];
        for (int i = 0; i < n; i++) {
            Axle axle = axles.axles().get(i);
            xM[i] = frame.x(axle.xM(), axle.radiusM());
            hM[i] = frame.h(axle.xM(), axle.radiusM());
            radiusM[i] = axle.radiusM();
        }
        jounceM = axles.jounceM();
        reboundM = axles.reboundM();
        mostTravelM = n == 1 ? 0 : Math.max(jounceM, reboundM);
        tiltRad = frame.tiltRad;
        tiltCos = Math.cos(tiltRad);
        tiltSin = Math.sin(tiltRad);
    }

    /** A booster's frame in that of a unit ahead, all hinges between at their lower stops. */
    private static final class Frame {
        final double originX;
        final double originH;
        final TrailingBooster booster;
        final double tiltRad;
        final double c;
        final double s;

        Frame(double originX, double originH, TrailingBooster booster, double tiltRad) {
            this.originX = originX;
            this.originH = originH;
            this.booster = booster;
            this.tiltRad = tiltRad;
            c = Math.cos(-tiltRad);
            s = Math.sin(-tiltRad);
        }

        double x(double ownX, double ownH) {
            return originX
                    + (ownX - booster.hingeXM()) * c
                    - (ownH - booster.hinge().hM()) * s;
        }

        double h(double ownX, double ownH) {
            return originH
                    + (ownX - booster.hingeXM()) * s
                    + (ownH - booster.hinge().hM()) * c;
        }
    }

    /**
     * Of every booster behind a unit.
     *
     * @param boosters behind it, front to rear, the first held by the unit itself
     */
    static List<PinnedWheels> behind(List<TrailingBooster> boosters) {
        List<PinnedWheels> all = new ArrayList<>();
        Frame frame = null;
        for (TrailingBooster b : boosters) {
            FramePoint hinge = b.hinge();
            frame = frame == null
                    ? new Frame(hinge.xM(), hinge.hM(), b, b.downRad())
                    : new Frame(
                            frame.x(hinge.xM(), hinge.hM()),
                            frame.h(hinge.xM(), hinge.hM()),
                            b,
                            frame.tiltRad + b.downRad());
            all.add(new PinnedWheels(frame, b.axles()));
        }
        return all;
    }

    public int size() {
        return xM.length;
    }

    /**
     * How far the unit is too low for several wheels, meters, negative where they do not carry; and how fast that grows
     * with the unit's pitch. It is what {@link PivotedGroup} holds a group to: the mean of their travels, or what an
     * axle is beyond its jounce. (Of one wheel it is its depth, which is found there.)
     *
     * @param unit the pose of the unit, given by its pivot and pitch
     * @param rolled paths, of which these wheels' begin at {@code first}
     */
    Excess excess(Turned unit, WheelPath[] rolled, int first) {
        double[] heightThenSlope = new double[2];
        double sum = 0;
        double sumRate = 0;
        double largest = Double.NEGATIVE_INFINITY;
        double largestRate = 0;
        double openGap = 0;
        double acrossCos = unit.c * tiltCos + unit.s * tiltSin;
        double acrossSin = unit.s * tiltCos - unit.c * tiltSin;
        for (int i = 0; i < size(); i++) {
            double atX = unit.x(xM[i], hM[i]);
            double atZ = unit.z(xM[i], hM[i]);
            double d = 0;
            double gap = 0;
            for (int k = 0; k < PivotedGroup.TRAVEL_STEPS; k++) {
                rolled[first + i].locate(atX - d * acrossSin, heightThenSlope);
                gap = atZ + d * acrossCos - heightThenSlope[0];
                d -= gap / (acrossCos + heightThenSlope[1] * acrossSin);
                if (Math.abs(gap) < 1e-12) {
                    break;
                }
            }
            openGap = Math.max(openGap, Math.abs(gap));
            double q = heightThenSlope[1];
            double rate = -((atX - d * acrossSin - unit.pivotX) + q * (atZ + d * acrossCos - unit.pivotZ))
                    / (acrossCos + q * acrossSin);
            if (d > -reboundM) {
                sum += d;
                sumRate += rate;
            } else {
                sum -= reboundM;
            }
            if (d > largest) {
                largest = d;
                largestRate = rate;
            }
        }
        double excess = sum / size();
        double rate = sumRate / size();
        if (largest + reboundM < excess) {
            excess = largest + reboundM;
            rate = largestRate;
        }
        if (largest - jounceM > excess) {
            excess = largest - jounceM;
            rate = largestRate;
        }
        return new Excess(excess, rate, openGap);
    }

    /**
     * See {@link #excess}.
     *
     * @param openM what the travels are off, meters
     */
    record Excess(double m, double perRad, double openM) {}

    /** A unit held at its pivot and turned. */
    record Turned(double pivotXM, double pivotHM, double pivotX, double pivotZ, double c, double s) {
        double x(double xM, double hM) {
            return pivotX + (xM - pivotXM) * c - (hM - pivotHM) * s;
        }

        double z(double xM, double hM) {
            return pivotZ + (xM - pivotXM) * s + (hM - pivotHM) * c;
        }
    }
}
