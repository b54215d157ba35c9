package org.cresthaul.check;

import org.cresthaul.road.Corner;
import org.cresthaul.road.Corner.RoadEnd;
import org.cresthaul.turning.CornerFit;

/**
 * How far a judged passage reaches onto the roads beyond a corner's ends, where they are taken to go on straight.
 *
 * @param beforeM from the rear of everything at the start to the approach's point
 * @param behindM from the exit's point to the front of everything at the end
 */
public record Passed(double beforeM, double behindM) {
    static Passed of(Corner corner, CornerFit fit) {
        double lengthM = fit.combination().lengthM();
        double[] first = fit.path().at(0);
        double[] last = fit.path().at(fit.path().lengthM());
        return new Passed(
                Math.max(0, lengthM - along(corner.approach(), first[0], first[1])),
                Math.max(0, along(corner.exit(), last[0], last[1])));
    }

    /** Distance of a place along the direction of travel from an end's point. */
    public static double along(RoadEnd end, double xM, double yM) {
        return (xM - end.xM()) * Math.cos(end.headingRad()) + (yM - end.yM()) * Math.sin(end.headingRad());
    }

    /** Distance of a place to the left of the line of travel through an end's point. */
    public static double left(RoadEnd end, double xM, double yM) {
        return (yM - end.yM()) * Math.cos(end.headingRad()) - (xM - end.xM()) * Math.sin(end.headingRad());
    }
}
