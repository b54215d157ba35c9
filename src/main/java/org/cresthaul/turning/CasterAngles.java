package org.cresthaul.turning;

import java.util.List;

/** How far castering wheels turn on a track of a chain that is guided by its other axles alone. */
final class CasterAngles {
    private CasterAngles() {}

    /**
     * Whether none met its stop: at no state, and as far again as it turns from a state to the next is left to it.
     *
     * @param track of units that roll at their effective axles
     */
    static boolean areWithinStops(Track track) {
        List<TurningUnit> chain = track.chain();
        double[] alongs = track.lead.c.clone();
        double[] acrosses = track.lead.s.clone();
        for (int k = 0; k < chain.size(); k++) {
            TurningUnit unit = chain.get(k);
            double swerve = unit.couplingBehindM() / unit.hitchToAxleM();
            List<SteeredAxles.Castering> casters =
                    unit.steered().map(SteeredAxles::castering).orElse(List.of());
            double[] before = new double[casters.size()];
            for (int i = 0; i < track.size(); i++) {
                double c = track.cosine[k][i];
                double s = track.sine[k][i];
                double along = alongs[i] * c + acrosses[i] * s;
                double across = acrosses[i] * c - alongs[i] * s;
                for (int j = 0; j < before.length; j++) {
                    SteeredAxles.Castering caster = casters.get(j);
                    double angle = Math.atan2(across * (1 - caster.behindM() / unit.hitchToAxleM()), along);
                    double moved = i == 0 ? 0 : Math.abs(angle - before[j]);
                    if (Math.abs(angle) + moved > caster.limitRad()) {
                        return false;
                    }
                    before[j] = angle;
                }
                // The velocity of the next coupling.
                alongs[i] = along * c + swerve * across * s;
                acrosses[i] = along * s - swerve * across * c;
            }
        }
        return true;
    }
}
