package org.cresthaul.clearance;

import org.cresthaul.clearance.UnitPlaces.Placed;
import org.cresthaul.posture.PlacedUnit;
import org.cresthaul.road.Approach;
import org.cresthaul.road.RoadProfile;

/**
 * How far the real ground may lie from a line extended beyond its surveyed ends: the accuracy of the approach grade
 * times the length beyond the end, as often as the demand is wanted.
 */
final class Stray {
    private Stray() {}

    /** At one place, meters. */
    static double at(RoadProfile line, Demand demand, double x) {
        double overrun = line.overrunM(x);
        if (overrun == 0) {
            return 0;
        }
        Approach approach = line.approachAt(x);
        return approach.isDeclared() || demand.allowUndeclared()
                ? demand.times() * overrun * approach.gradeAccuracy()
                : 0;
    }

    /** Anywhere between two places, meters: it falls toward the survey and grows away from it. */
    static double between(RoadProfile line, Demand demand, double xA, double xB) {
        return Math.max(at(line, demand, xA), at(line, demand, xB));
    }

    /** Under the wheels of a placed unit while it moves from one placement to another, meters. */
    static double under(RoadProfile line, Demand demand, PlacedUnit a, PlacedUnit b) {
        double most = 0;
        for (int i = 0; i < a.wheelX.length; i++) {
            most = Math.max(most, between(line, demand, a.wheelX[i], b.wheelX[i]));
        }
        return most;
    }

    /** Under every support, by {@link Leverage} index, between two placements. */
    static double[] of(Passage passage, Demand demand, double fromSteerM, double toSteerM, Placed from, Placed to) {
        RoadProfile line = passage.line();
        double[] stray = new double[passage.supports()];
        stray[Leverage.STEER] = between(line, demand, fromSteerM, toSteerM);
        for (int k = 0; k < from.size(); k++) {
            stray[Leverage.groupOf(k)] = under(line, demand, from.unit(k), to.unit(k));
        }
        return stray;
    }

    /** Under the tractor's supports alone: what weighs on the others is not asked. */
    static double[] ofTractor(
            Passage passage, Demand demand, double fromSteerM, double toSteerM, PlacedUnit from, PlacedUnit to) {
        double[] stray = new double[passage.supports()];
        stray[Leverage.STEER] = between(passage.line(), demand, fromSteerM, toSteerM);
        stray[Leverage.groupOf(0)] = under(passage.line(), demand, from, to);
        return stray;
    }
}
