package org.cresthaul.server;

import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Rig;
import org.cresthaul.road.CrossSection;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.LowStructure;
import org.cresthaul.route.Route;
import org.cresthaul.route.RouteCorner;

/**
 * What a check will about cost, told before it is begun. Measured on the sample (docs/api.md); a hard case costs more,
 * and is stopped by {@link WorkGate.Limits#costMs}.
 */
final class CheckCost {
    /** More than this is refused at once, milliseconds of one processor. */
    static final double MOST_MS = 60_000;

    private static final double CELL_MS = 1;
    private static final double POINT_MS = 0.03;
    /** So much more a line costs where the road between lines is judged, under all of the width. */
    private static final double PLACES = 4;
    /** One axle and booster state round one corner; the notch does not matter there. */
    private static final double CORNER_MS = 500;

    private CheckCost() {}

    /** Milliseconds of one processor. */
    static double estimatedMs(Route route, Rig rig, LevelStance stance) {
        double states =
                (double) stance.liftStates().size() * stance.boosterStates().size();
        double configurations = states * rig.notches().size();
        double sumMs = 0;
        for (Hazard hazard : route.hazards()) {
            if (hazard instanceof RouteCorner) {
                sumMs += hazard.isSurveyed() ? states * CORNER_MS : 0;
                continue;
            }
            double points = hazard.lines().stream().mapToInt(RoadProfile::size).sum();
            // Under a structure both sides are searched.
            double sides = hazard instanceof LowStructure ? 2 : 1;
            double places =
                    stance.plan().isPresent() && CrossSection.of(hazard.lines()).isPresent() ? PLACES : 1;
            sumMs += configurations * (CELL_MS + sides * places * POINT_MS * points);
        }
        return sumMs;
    }
}
