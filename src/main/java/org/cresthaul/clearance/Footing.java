package org.cresthaul.clearance;

import java.util.List;
import org.cresthaul.clearance.UnitPlaces.Placed;
import org.cresthaul.road.RoadProfile;

/**
 * What a clearance stands on: how far from the survey, and how sure the ground is.
 *
 * @param uncertaintyM half-width of the 95 % interval of the clearance, meters: survey, rig and ride in quadrature, and
 *     on top what ground beyond the survey may stray by its grade's accuracy
 * @param beyondSurveyM farthest that a wheel or the point itself stands beyond the surveyed ends, meters; zero when all
 *     stand on surveyed ground
 * @param undeclared whether some of that ground has no declared grade
 */
public record Footing(double uncertaintyM, double beyondSurveyM, boolean undeclared) {
    static Footing of(Passage passage, Demand demand, Leverage leverage, Clearance at, Placed placed) {
        RoadProfile line = passage.line();
        double[] weights = leverage.weights(at.unit(), at.point().xM());
        double[] stray = Stray.of(passage, demand, at.steerM(), at.steerM(), placed, placed);
        double sum = passage.wantedM(
                        demand.withoutMargin(), leverage, at.unit(), at.point().xM())
                + Stray.at(line, demand, at.distanceM());
        double beyond = line.overrunM(at.distanceM());
        boolean undeclared = isUndeclared(line, at.distanceM());
        for (int k = 0; k < weights.length; k++) {
            if (weights[k] > 0) {
                sum += weights[k] * stray[k];
                for (double x : wheels(at.steerM(), placed, k)) {
                    beyond = Math.max(beyond, line.overrunM(x));
                    undeclared |= isUndeclared(line, x);
                }
            }
        }
        return new Footing(sum, beyond, undeclared);
    }

    private static double[] wheels(double steerM, Placed placed, int support) {
        return support == Leverage.STEER ? new double[] {steerM} : placed.unit(support - 1).wheelX;
    }

    /** That of a gap which does not depend on the ground under itself. */
    static Footing of(RoadProfile line, double uncertaintyM, List<double[]> wheels) {
        double beyond = 0;
        boolean undeclared = false;
        for (double[] group : wheels) {
            for (double x : group) {
                beyond = Math.max(beyond, line.overrunM(x));
                undeclared |= isUndeclared(line, x);
            }
        }
        return new Footing(uncertaintyM, beyond, undeclared);
    }

    private static boolean isUndeclared(RoadProfile line, double x) {
        return line.overrunM(x) > 0 && !line.approachAt(x).isDeclared();
    }
}
