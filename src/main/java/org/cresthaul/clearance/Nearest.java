package org.cresthaul.clearance;

import java.util.Optional;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.UnitName;

/** The least gap met so far and where. Mutable; lives inside one search. */
final class Nearest {
    double gapM = Double.POSITIVE_INFINITY;
    UnitName unit;
    FramePoint point;
    double distanceM;
    double steerM;
    boolean raisedTire;

    void offer(double gap, double atSteerM, UnitName onUnit, FramePoint at, double atDistanceM) {
        if (gap < gapM) {
            gapM = gap;
            steerM = atSteerM;
            unit = onUnit;
            point = at;
            distanceM = atDistanceM;
            raisedTire = false;
        }
    }

    /** The same under a raised tire. */
    void offerTire(double gap, double atSteerM, UnitName onUnit, FramePoint foot, double atDistanceM) {
        boolean nearer = gap < gapM;
        offer(gap, atSteerM, onUnit, foot, atDistanceM);
        raisedTire |= nearer;
    }

    void offer(Nearest other) {
        if (other.raisedTire) {
            offerTire(other.gapM, other.steerM, other.unit, other.point, other.distanceM);
        } else if (other.unit != null) {
            offer(other.gapM, other.steerM, other.unit, other.point, other.distanceM);
        }
    }

    /** As a value; empty when nothing was ever offered. */
    Optional<Clearance> asClearance(double provenWithinM, Optional<Undecided> undecided) {
        return unit == null
                ? Optional.empty()
                : Optional.of(
                        new Clearance(gapM, provenWithinM, unit, point, raisedTire, distanceM, steerM, undecided));
    }
}
