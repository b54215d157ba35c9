package org.cresthaul.posture;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.road.RolledProfile;

/** One line of ground with the rolled path of every wheel radius asked for so far. Safe to share. */
final class WheelPaths {
    private final RoadProfile line;
    private final Map<Double, RolledProfile> byRadius = new ConcurrentHashMap<>();

    WheelPaths(RoadProfile line) {
        this.line = line;
    }

    RoadProfile line() {
        return line;
    }

    RolledProfile rolled(double radiusM) {
        return byRadius.computeIfAbsent(radiusM, r -> new RolledProfile(line, r));
    }
}
