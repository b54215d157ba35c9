package org.cresthaul.turning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import org.cresthaul.road.Corner;
import org.cresthaul.road.CornerTemplate;
import org.cresthaul.road.CornerTemplate.RoadWidths;
import org.cresthaul.road.Gate;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A pull-out from a gate, driven backward: pushed along its own line, every unit is where it was going out. By
 * Hipparchus' Dormand–Prince 8(5,3), with time running the other way: the lead point is pushed back, every effective
 * axle rolls without slipping. Backward small bends grow instead of dying away, so it starts anew every
 * {@value #PIECE_M} m from the bends on the way out, as a driver would correct them.
 */
class BackwardRollTest {
    private static final double PIECE_M = 8;
    /** Of a millimeter at the end of the longest unit. */
    private static final double SAME_RAD = 1e-4;

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void rollsBackTheWayItCame(boolean locked) {
        TurningCombination free = CornerCases.lowbed(11, 4.5);
        TurningCombination combination = locked ? free.pivotLocked() : free;
        RoadWidths road = new RoadWidths(6, 6, 1, true);
        Corner gate = new CornerTemplate(
                        Math.toRadians(90),
                        road,
                        road,
                        new Gate(9, 6, 6),
                        0,
                        List.of(),
                        List.of(),
                        OptionalDouble.of(0))
                .corner();
        CornerFit out =
                CornerFit.of(new CornerSpace(gate, true), combination, List.of(), new CornerFit.Wanted(0.4, 0.1, 0));
        List<TurningUnit> chain = combination.chain();
        Track track = Following.along(chain, out.path(), 0.1);
        int states = track.size();
        double mostBend = 0;
        int pieces = 0;
        int from = states - 1;
        while (from > 0) {
            int to = from;
            while (to > 0 && track.stationM(from) - track.stationM(to) < PIECE_M) {
                to--;
            }
            double[] headings =
                    pushedBack(chain, out.path(), headings(track, from), track.stationM(from), track.stationM(to));
            for (int k = 0; k < chain.size(); k++) {
                double off =
                        Math.IEEEremainder(headings[k] - Math.atan2(track.sin(to, k), track.cos(to, k)), 2 * Math.PI);
                assertEquals(0, off, SAME_RAD, "unit " + k + " at " + track.stationM(to) + " m");
                mostBend = k > 0 ? Math.max(mostBend, Math.abs(track.articulationRad(to, k - 1))) : mostBend;
            }
            pieces++;
            from = to;
        }
        assertTrue(pieces > 15 && mostBend > 0.5, pieces + " pieces, bent up to " + mostBend);
    }

    private static double[] headings(Track track, int state) {
        double[] headings = new double[track.chain().size()];
        for (int k = 0; k < headings.length; k++) {
            headings[k] = Math.atan2(track.sin(state, k), track.cos(state, k));
        }
        return headings;
    }

    /** Over the way pushed, from nothing: the lead point goes back along its path from one station to a lower one. */
    private static double[] pushedBack(
            List<TurningUnit> chain, LeadPath path, double[] start, double fromM, double toM) {
        OrdinaryDifferentialEquation pushing = new OrdinaryDifferentialEquation() {
            @Override
            public int getDimension() {
                return chain.size();
            }

            @Override
            public double[] computeDerivatives(double pushed, double[] heading) {
                double direction = path.at(Math.max(toM, fromM - pushed))[2];
                double vx = -Math.cos(direction);
                double vy = -Math.sin(direction);
                double[] turning = new double[chain.size()];
                for (int k = 0; k < turning.length; k++) {
                    double length = chain.get(k).hitchToAxleM();
                    double ahead = vx * Math.cos(heading[k]) + vy * Math.sin(heading[k]);
                    turning[k] = (vy * Math.cos(heading[k]) - vx * Math.sin(heading[k])) / length;
                    // The next hitch lies behind the axle, which has no speed aside; it swings the other way.
                    double aside = -chain.get(k).couplingBehindM() * turning[k];
                    vx = ahead * Math.cos(heading[k]) - aside * Math.sin(heading[k]);
                    vy = ahead * Math.sin(heading[k]) + aside * Math.cos(heading[k]);
                }
                return turning;
            }
        };
        return new DormandPrince853Integrator(1e-9, 0.1, 1e-11, 1e-11)
                .integrate(pushing, new ODEState(0, start), fromM - toM)
                .getPrimaryState();
    }
}
