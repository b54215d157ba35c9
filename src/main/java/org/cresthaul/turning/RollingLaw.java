package org.cresthaul.turning;

import java.util.List;
import java.util.Optional;

/**
 * How fast a unit turns when its hitch moves: the side forces of its tires, each growing with its slip across the
 * wheel, have no moment about the hitch (docs/model.md, section 13, "Steered axles"). Without wheels that turn it is
 * the effective axle's ω = b / L.
 */
final class RollingLaw {
    private final double lengthM;
    private final double sumM;
    private final double squaresM2;
    private final SteeredAxles.Commanded[] commanded;
    private final double[] casterM;
    private final double[] stopCos;
    private final double[] stopSin;

    RollingLaw(TurningUnit unit) {
        lengthM = unit.hitchToAxleM();
        Optional<SteeredAxles> axles = unit.steered();
        double sum = 0;
        double squares = 0;
        for (double x : axles.map(SteeredAxles::fixedM).orElse(List.of())) {
            sum += x;
            squares += x * x;
        }
        sumM = sum;
        squaresM2 = squares;
        commanded = axles.map(a -> a.commanded().toArray(new SteeredAxles.Commanded[0]))
                .orElse(null);
        int casters = axles.map(a -> a.castering().size()).orElse(0);
        casterM = new double[casters];
        stopCos = new double[casters];
        stopSin = new double[casters];
        for (int j = 0; j < casters; j++) {
            SteeredAxles.Castering c = axles.get().castering().get(j);
            casterM[j] = c.behindM();
            stopCos[j] = Math.cos(c.limitRad());
            stopSin[j] = Math.sin(c.limitRad());
        }
    }

    /**
     * How fast it turns, radians for each meter that the lead point goes, positive to the left.
     *
     * @param along the hitch's velocity in the direction of the unit, for each meter of the lead point
     * @param across the same, to its left
     * @param bendRad how far the unit ahead is turned to the left of this one
     */
    double turn(double along, double across, double bendRad) {
        if (commanded == null) {
            return across / lengthM;
        }
        double pull = sumM * across;
        double hold = squaresM2;
        for (SteeredAxles.Commanded c : commanded) {
            double wheels = -Math.max(-c.limitRad(), Math.min(c.limitRad(), c.ratio() * bendRad));
            double cos = Math.cos(wheels);
            pull += c.behindM() * cos * (across * cos - along * Math.sin(wheels));
            hold += c.behindM() * c.behindM() * cos * cos;
        }
        if (along <= 0) {
            // Rolling backward they would turn about: they count as locked.
            for (double x : casterM) {
                pull += x * across;
                hold += x * x;
            }
            return pull / hold;
        }
        double free = pull / hold;
        for (int j = 0; j < casterM.length; j++) {
            if (side(j, along, across, free) != 0) {
                return stopped(along, across, pull, hold);
            }
        }
        return free;
    }

    /** At which stop a castering wheel is: 1 for the left, -1 for the right, 0 for none. */
    private int side(int j, double along, double across, double turn) {
        double slip = (across - turn * casterM[j]) * stopCos[j];
        double most = along * stopSin[j];
        return slip > most ? 1 : slip < -most ? -1 : 0;
    }

    /**
     * With castering wheels at their stops, which then slip like wheels that are held at that angle. The moment falls
     * as the unit turns faster, on straight pieces from where one wheel meets its stop to where another does: between
     * two such places its zero is that of a straight line.
     */
    private double stopped(double along, double across, double pull, double hold) {
        double from = Double.NEGATIVE_INFINITY;
        double to = Double.POSITIVE_INFINITY;
        for (int j = 0; j < casterM.length; j++) {
            for (int stop = -1; stop <= 1; stop += 2) {
                double at = (across - stop * along * stopSin[j] / stopCos[j]) / casterM[j];
                if (moment(along, across, pull, hold, at) > 0) {
                    from = Math.max(from, at);
                } else {
                    to = Math.min(to, at);
                }
            }
        }
        double between = Double.isInfinite(from) ? to - 1 : Double.isInfinite(to) ? from + 1 : 0.5 * (from + to);
        double allPull = pull;
        double allHold = hold;
        for (int j = 0; j < casterM.length; j++) {
            int stop = side(j, along, across, between);
            if (stop != 0) {
                double arm = casterM[j] * stopCos[j];
                allPull += arm * (across * stopCos[j] - stop * along * stopSin[j]);
                allHold += arm * arm;
            }
        }
        return allPull / allHold;
    }

    private double moment(double along, double across, double pull, double hold, double turn) {
        double moment = pull - hold * turn;
        for (int j = 0; j < casterM.length; j++) {
            int stop = side(j, along, across, turn);
            if (stop != 0) {
                moment += casterM[j]
                        * stopCos[j]
                        * ((across - turn * casterM[j]) * stopCos[j] - stop * along * stopSin[j]);
            }
        }
        return moment;
    }
}
