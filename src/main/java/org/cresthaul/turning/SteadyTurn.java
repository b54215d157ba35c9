package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a combination settles to on a circle: right angles at every effective axle give r² of the axle = r² of the hitch
 * − L², and r² of the next coupling = r² of the axle + e².
 *
 * @param axleRadiusM of the effective axles, front to rear, meters
 * @param couplingRadiusM of the couplings behind them, one fewer, meters
 * @param articulationRad between each unit and the next, positive into the turn, radians
 */
public record SteadyTurn(List<Double> axleRadiusM, List<Double> couplingRadiusM, List<Double> articulationRad) {
    public SteadyTurn {
        axleRadiusM = List.copyOf(axleRadiusM);
        couplingRadiusM = List.copyOf(couplingRadiusM);
        articulationRad = List.copyOf(articulationRad);
    }

    /**
     * The steady turn of a chain whose lead point runs on a circle.
     *
     * @return empty when there is none: some unit is as long as its hitch's circle, and folds up instead
     */
    public static Optional<SteadyTurn> of(List<TurningUnit> chain, double leadRadiusM) {
        List<Double> axles = new ArrayList<>();
        List<Double> couplings = new ArrayList<>();
        List<Double> bends = new ArrayList<>();
        double hitch2 = leadRadiusM * leadRadiusM;
        // Angle at the center from a unit's axle forward to its hitch, and from the next coupling forward to the axle.
        double behindAxle = Double.NaN;
        for (int i = 0; i < chain.size(); i++) {
            TurningUnit unit = chain.get(i);
            double axle2 = hitch2 - unit.hitchToAxleM() * unit.hitchToAxleM();
            if (!(axle2 > 0)) {
                return Optional.empty();
            }
            double axle = Math.sqrt(axle2);
            if (i > 0) {
                bends.add(behindAxle + Math.atan2(unit.hitchToAxleM(), axle));
            }
            axles.add(axle);
            if (i + 1 < chain.size()) {
                hitch2 = axle2 + unit.couplingBehindM() * unit.couplingBehindM();
                couplings.add(Math.sqrt(hitch2));
                behindAxle = Math.atan2(unit.couplingBehindM(), axle);
            }
        }
        return Optional.of(new SteadyTurn(axles, couplings, bends));
    }

    /** How far inside the lead point's circle an effective axle runs, meters. */
    public double offtrackingM(int unit, double leadRadiusM) {
        return leadRadiusM - axleRadiusM.get(unit);
    }
}
