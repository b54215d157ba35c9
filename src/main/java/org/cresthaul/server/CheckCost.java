package org.cresthaul.server;

import org.cresthaul.rig.Booster;
import org.cresthaul.rig.Jeep;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Outline;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.Tractor;
import org.cresthaul.rig.Trailer;
import org.cresthaul.road.CrossSection;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.road.StandardHump;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.Overhead;
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
    /**
     * One corner of a coupled unit against one piece of the other's outline, over one line, both levelings and needs.
     */
    private static final double UNIT_PAIR_MS = 5e-5;
    /** One axle and booster state round one corner; the notch does not matter there. */
    private static final double CORNER_MS = 500;

    /** So many humps are looked at for each number of tracks and configuration. */
    private static final double HUMPS = 16;

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
            double sides = hazard instanceof Overhead ? 2 : 1;
            double places =
                    stance.plan().isPresent() && CrossSection.of(hazard.lines()).isPresent() ? PLACES : 1;
            // Each line is a way of its own to bend; the road between lines is driven in some ways more.
            double ways = Math.max(1, hazard.lines().size()) + (places > 1 ? PLACES : 0);
            sumMs += configurations
                    * (CELL_MS + sides * places * POINT_MS * points + ways * UNIT_PAIR_MS * unitPairs(stance));
        }
        double sketched = route.candidates().stream()
                .flatMap(c -> c.candidate().sketch().stream())
                .mapToDouble(k -> CELL_MS + POINT_MS * k.points().size())
                .sum();
        return sumMs
                + sketched
                + waitingTracks(route) * configurations * (CELL_MS + unitPairs(stance) * UNIT_PAIR_MS) * HUMPS;
    }

    /** Numbers of tracks for which humps are looked at: at most as many as there are crossings that nobody surveyed. */
    private static long waitingTracks(Route route) {
        return Math.min(
                StandardHump.MOST_TRACKS,
                route.hazards().stream()
                        .filter(h -> h.kind().isCrossedByRails() && !h.isSurveyed())
                        .count());
    }

    /** Corners of outlines times pieces of outlines that may meet, at kingpins and at hinges. */
    private static double unitPairs(LevelStance stance) {
        Tractor tractor = stance.tractor();
        Trailer trailer = stance.trailer();
        double ahead = size(tractor.underside()) + size(tractor.topside());
        double middle = size(trailer.underside()) + size(trailer.topside());
        for (Outline load : trailer.load()) {
            middle += size(load);
        }
        double boosters = 0;
        double holding = middle;
        for (Booster booster : stance.boosters()) {
            double size = size(booster.underside()) + size(booster.topside());
            boosters += holding * size;
            holding = size;
        }
        double jeeps = 0;
        double carrying = ahead;
        for (Jeep jeep : stance.jeeps()) {
            double size = size(jeep.underside()) + size(jeep.topside());
            jeeps += carrying * size;
            carrying = size;
        }
        return middle * carrying + boosters + jeeps;
    }

    private static double size(Outline outline) {
        return outline.points().size();
    }
}
