package org.cresthaul.posture;

import java.util.List;
import java.util.Optional;
import org.cresthaul.rig.UnitName;

/**
 * The whole combination at one position.
 *
 * @param steerM distance of the steer axle's center along the road, meters
 * @param units front to rear; a close-coupled booster is part of the trailer
 * @param poses of each of them
 * @param wheels every wheel, front to rear within each unit
 */
public record CombinationPosture(double steerM, List<UnitName> units, List<Pose> poses, List<WheelPosture> wheels) {
    public CombinationPosture {
        units = List.copyOf(units);
        poses = List.copyOf(poses);
        wheels = List.copyOf(wheels);
        if (units.size() != poses.size()) {
            throw new IllegalArgumentException("every unit has its pose");
        }
    }

    /**
     * Of one unit.
     *
     * @throws IllegalArgumentException for a unit that is not part of the combination
     */
    public Pose of(UnitName unit) {
        int k = units.indexOf(unit);
        if (k < 0) {
            throw new IllegalArgumentException("no " + unit.word() + " in this combination");
        }
        return poses.get(k);
    }

    public Pose tractor() {
        return of(UnitName.TRACTOR);
    }

    public Pose trailer() {
        return of(UnitName.TRAILER);
    }

    /** Only of a trailing booster, the first where there are several. */
    public Optional<Pose> booster() {
        return units.contains(UnitName.BOOSTER) ? Optional.of(of(UnitName.BOOSTER)) : Optional.empty();
    }
}
