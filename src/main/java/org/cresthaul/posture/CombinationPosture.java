package org.cresthaul.posture;

import java.util.List;
import java.util.Optional;

/**
 * The whole combination at one position.
 *
 * @param steerM distance of the steer axle's center along the road, meters
 * @param booster only for a trailing booster; close-coupled it is part of the trailer
 * @param wheels every wheel, front to rear within each unit
 */
public record CombinationPosture(
        double steerM, Pose tractor, Pose trailer, Optional<Pose> booster, List<WheelPosture> wheels) {
    public CombinationPosture {
        wheels = List.copyOf(wheels);
    }
}
