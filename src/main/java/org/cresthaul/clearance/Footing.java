package org.cresthaul.clearance;

import java.util.Optional;
import org.cresthaul.posture.PlacedUnit;
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
    static Footing of(
            Passage passage,
            Demand demand,
            Leverage leverage,
            Clearance at,
            PlacedUnit tractor,
            PlacedUnit trailer,
            Optional<PlacedUnit> booster) {
        RoadProfile line = passage.line();
        double[] weights = leverage.weights(at.unit(), at.point().xM());
        double[] stray = Stray.of(line, demand, at.steerM(), at.steerM(), tractor, tractor);
        stray[Leverage.TRAILER] = Stray.under(line, demand, trailer, trailer);
        double[][] wheels = {
            {at.steerM()},
            tractor.wheelX,
            trailer.wheelX,
            booster.map(b -> b.wheelX).orElse(new double[0])
        };
        booster.ifPresent(b -> stray[Leverage.BOOSTER] = Stray.under(line, demand, b, b));
        double sum = passage.wantedM(
                        demand.withoutMargin(), leverage, at.unit(), at.point().xM())
                + Stray.at(line, demand, at.distanceM());
        double beyond = line.overrunM(at.distanceM());
        boolean undeclared = isUndeclared(line, at.distanceM());
        for (int k = 0; k < Leverage.SUPPORTS; k++) {
            if (weights[k] > 0) {
                sum += weights[k] * stray[k];
                for (double x : wheels[k]) {
                    beyond = Math.max(beyond, line.overrunM(x));
                    undeclared |= isUndeclared(line, x);
                }
            }
        }
        return new Footing(sum, beyond, undeclared);
    }

    /** That of a gap which does not depend on the ground under itself. */
    static Footing of(RoadProfile line, double uncertaintyM, double[]... wheels) {
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
