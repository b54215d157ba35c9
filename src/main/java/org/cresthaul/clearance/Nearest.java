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

    void offer(double gap, double atSteerM, UnitName onUnit, FramePoint at, double atDistanceM) {
        if (gap < gapM) {
            gapM = gap;
            steerM = atSteerM;
            unit = onUnit;
            point = at;
            distanceM = atDistanceM;
        }
    }

    void offer(Nearest other) {
        if (other.unit != null) {
            offer(other.gapM, other.steerM, other.unit, other.point, other.distanceM);
        }
    }

    /** As a value; empty when nothing was ever offered. */
    Optional<Clearance> asClearance(double provenWithinM, Optional<Undecided> undecided) {
        return unit == null
                ? Optional.empty()
                : Optional.of(new Clearance(gapM, provenWithinM, unit, point, distanceM, steerM, undecided));
    }
}
