package org.cresthaul.turning;

/**
 * How fast a unit turns, from the balance of its tires alone: every tire pushes against its slip across the wheel, and
 * the turn at which all of them have no moment about the hitch is searched by false position. A castering wheel stands
 * where it slips least, within its stops. It shares no formula with the law it is there to check.
 */
final class ReferenceRolling {
    private ReferenceRolling() {}

    /** A unit without wheels that turn rolls at its effective axle, as always. */
    static double turn(TurningUnit unit, double along, double across, double bendRad) {
        if (unit.steered().isEmpty()) {
            return across / unit.hitchToAxleM();
        }
        SteeredAxles axles = unit.steered().get();
        double low = -5;
        double high = 5;
        double ofLow = moment(axles, along, across, bendRad, low);
        double ofHigh = moment(axles, along, across, bendRad, high);
        int kept = 0;
        // False position, halving the value of an end that stays (Illinois).
        while (high - low > 1e-14) {
            double at = (low * ofHigh - high * ofLow) / (ofHigh - ofLow);
            double of = moment(axles, along, across, bendRad, at);
            if (Math.abs(of) < 1e-13) {
                return at;
            }
            if (of > 0) {
                low = at;
                ofLow = of;
                ofHigh = kept > 0 ? 0.5 * ofHigh : ofHigh;
                kept = 1;
            } else {
                high = at;
                ofHigh = of;
                ofLow = kept < 0 ? 0.5 * ofLow : ofLow;
                kept = -1;
            }
        }
        return 0.5 * (low + high);
    }

    private static double moment(SteeredAxles axles, double along, double across, double bendRad, double turn) {
        double sum = 0;
        for (double x : axles.fixedM()) {
            sum += moment(x, 0, along, across, turn);
        }
        for (SteeredAxles.Commanded c : axles.commanded()) {
            double turned = -Math.signum(bendRad) * Math.min(c.limitRad(), c.ratio() * Math.abs(bendRad));
            sum += moment(c.behindM(), turned, along, across, turn);
        }
        for (SteeredAxles.Castering c : axles.castering()) {
            double free = along <= 0 ? 0 : Math.atan2(across - turn * c.behindM(), along);
            sum += moment(c.behindM(), Math.max(-c.limitRad(), Math.min(c.limitRad(), free)), along, across, turn);
        }
        return sum;
    }

    /** Of one axle: the ground under it goes aside in the unit's frame, slips across the wheel, and is pushed back. */
    private static double moment(double behindM, double turned, double along, double across, double turn) {
        double slip = (across - turn * behindM) * Math.cos(turned) - along * Math.sin(turned);
        return behindM * slip * Math.cos(turned);
    }
}
