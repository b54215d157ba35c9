package org.cresthaul.turning;

import java.util.List;

/**
 * A followed path: where every unit stands and how it is turned, state by state. Read only once it has been handed out.
 */
public final class Track {
    private final List<TurningUnit> chain;
    private final boolean reversing;
    final double[] station;
    final PathNodes lead;
    /** Cosine and sine of a unit's heading, by unit and state. */
    final double[][] cosine;

    final double[][] sine;
    private final double[] reachM;
    private final int size;
    private double errorBoundM;

    /** Room for states that {@link Following} fills. */
    Track(List<TurningUnit> chain, int states, boolean reversing) {
        this.chain = List.copyOf(chain);
        this.reversing = reversing;
        size = states;
        station = new double[states];
        lead = new PathNodes(states);
        cosine = new double[chain.size()][states];
        sine = new double[chain.size()][states];
        reachM = new double[chain.size()];
        for (int k = 0; k < reachM.length; k++) {
            reachM[k] = chain.get(k).hitchToAxleM() + chain.get(k).couplingBehindM();
        }
    }

    void bound(double boundM) {
        errorBoundM = boundM;
    }

    public List<TurningUnit> chain() {
        return chain;
    }

    /** How many states. */
    public int size() {
        return size;
    }

    /** No position of a state is off by more than this, meters. It can be large after a long way in reverse. */
    public double errorBoundM() {
        return errorBoundM;
    }

    public double stationM(int state) {
        return station[state];
    }

    public double leadXM(int state) {
        return lead.x[state];
    }

    public double leadYM(int state) {
        return lead.y[state];
    }

    public double leadCos(int state) {
        return lead.c[state];
    }

    public double leadSin(int state) {
        return lead.s[state];
    }

    public double cos(int state, int unit) {
        return cosine[unit][state];
    }

    public double sin(int state, int unit) {
        return sine[unit][state];
    }

    /** Heading of a unit, radians, -π to π. */
    public double headingRad(int state, int unit) {
        return Math.atan2(sin(state, unit), cos(state, unit));
    }

    /** Where a unit is pulled: the lead point for the first, a coupling for the others. */
    public double hitchXM(int state, int unit) {
        double x = leadXM(state);
        for (int k = 0; k < unit; k++) {
            x -= reachM[k] * cos(state, k);
        }
        return x;
    }

    public double hitchYM(int state, int unit) {
        double y = leadYM(state);
        for (int k = 0; k < unit; k++) {
            y -= reachM[k] * sin(state, k);
        }
        return y;
    }

    public double axleXM(int state, int unit) {
        return hitchXM(state, unit) - chain.get(unit).hitchToAxleM() * cos(state, unit);
    }

    public double axleYM(int state, int unit) {
        return hitchYM(state, unit) - chain.get(unit).hitchToAxleM() * sin(state, unit);
    }

    /** How far the front wheels are turned out of the first unit's heading, radians, positive to the left. */
    public double steerRad(int state) {
        double sign = reversing ? -1 : 1;
        double along = sign * (leadCos(state) * cos(state, 0) + leadSin(state) * sin(state, 0));
        double across = sign * (leadSin(state) * cos(state, 0) - leadCos(state) * sin(state, 0));
        return Math.atan2(across, along);
    }

    /** Heading of a unit less that of the next, radians, -π to π. */
    public double articulationRad(int state, int unit) {
        double along = cos(state, unit) * cos(state, unit + 1) + sin(state, unit) * sin(state, unit + 1);
        double across = sin(state, unit) * cos(state, unit + 1) - cos(state, unit) * sin(state, unit + 1);
        return Math.atan2(across, along);
    }

    /** Largest absolute articulation behind a unit at any state, radians. */
    public double mostArticulationRad(int unit) {
        int most = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < size; i++) {
            // The angle grows as its cosine falls.
            double along = cosine[unit][i] * cosine[unit + 1][i] + sine[unit][i] * sine[unit + 1][i];
            if (along < least) {
                least = along;
                most = i;
            }
        }
        return Math.abs(articulationRad(most, unit));
    }

    /** Largest absolute steer angle at any state, radians. */
    public double mostSteerRad() {
        int most = 0;
        double least = Double.POSITIVE_INFINITY;
        double sign = reversing ? -1 : 1;
        for (int i = 0; i < size; i++) {
            double along = sign * (lead.c[i] * cosine[0][i] + lead.s[i] * sine[0][i]);
            if (along < least) {
                least = along;
                most = i;
            }
        }
        return Math.abs(steerRad(most));
    }
}
