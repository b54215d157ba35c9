package org.cresthaul.turning;

/**
 * How the units of a tried line move when one of its measures changes: the equations of following, made linear, taken
 * from state to state. Good enough to climb by, to some percent. Measure 0 is the offset on the approach, the others
 * the front wheels' angles between the first and the last.
 */
final class LineSensitivity {
    /** What a change is tried by, for the slope of a law that is given by its values alone. */
    private static final double NUDGE = 1e-6;

    private final LineTrial trial;
    private final TurningCombination combination;
    private final int measures;
    /** Of the lead point, by state and measure. */
    private final double[][] dx;

    private final double[][] dy;
    /** Of the headings, by unit, state and measure. */
    private final double[][][] dh;

    /** Of the units some of whose wheels turn; the others' is told by their length. */
    private final RollingLaw[] laws;

    LineSensitivity(LineTrial trial, TurningCombination combination, SteeredLine line, double runInM) {
        this.trial = trial;
        this.combination = combination;
        measures = 1 + line.free();
        int states = trial.track.size();
        int units = combination.chain().size();
        dx = new double[states][measures];
        dy = new double[states][measures];
        dh = new double[units][states][measures];
        laws = combination.chain().stream()
                .map(unit -> unit.steered().isPresent() ? new RollingLaw(unit) : null)
                .toArray(RollingLaw[]::new);
        lead(line, runInM);
        for (int i = 0; i + 1 < states; i++) {
            step(i);
        }
    }

    private LineSensitivity(LineSensitivity like, LineTrial trial) {
        this.trial = trial;
        combination = like.combination;
        measures = like.measures;
        dx = like.dx;
        dy = like.dy;
        dh = like.dh;
        laws = like.laws;
    }

    /** Nearly the same for a line that was begun a little elsewhere: state for state. */
    LineSensitivity at(LineTrial other) {
        if (other.track.size() != trial.track.size()) {
            throw new IllegalArgumentException("lines of one family have the same states");
        }
        return new LineSensitivity(this, other);
    }

    /** The lead point and the first unit: what turns both is the angle of the front wheels alone. */
    private void lead(SteeredLine line, double runInM) {
        Track track = trial.track;
        double wheelbase = combination.chain().get(0).hitchToAxleM();
        int states = track.size();
        double[] turned = new double[measures];
        double[] direction = new double[measures];
        double[] before = new double[measures];
        for (int i = 0; i < states; i++) {
            double at = (track.stationM(i) - runInM) / line.spacingM;
            double last = i == 0 ? at : (track.stationM(i - 1) - runInM) / line.spacingM;
            double gain = i == 0
                    ? 0
                    : 0.5 * (track.stationM(i) - track.stationM(i - 1)) * Math.cos(angle(line, at)) / wheelbase;
            // What is steered later has moved nothing yet.
            int met = Math.max(1, Math.min(measures, (int) Math.floor(at) + 2));
            for (int m = 1; m < met; m++) {
                double hat = Math.max(0, 1 - Math.abs(at - m));
                turned[m] += gain * (hat + Math.max(0, 1 - Math.abs(last - m)));
                direction[m] = hat + turned[m];
                dh[0][i][m] = turned[m];
            }
            dx[i][0] = -Math.sin(line.headingRad);
            dy[i][0] = Math.cos(line.headingRad);
            if (i > 0) {
                double ds = track.stationM(i) - track.stationM(i - 1);
                double nx = -0.5 * (track.leadSin(i) + track.leadSin(i - 1));
                double ny = 0.5 * (track.leadCos(i) + track.leadCos(i - 1));
                for (int m = 1; m < met; m++) {
                    double mean = 0.5 * (direction[m] + before[m]);
                    dx[i][m] = dx[i - 1][m] + ds * mean * nx;
                    dy[i][m] = dy[i - 1][m] + ds * mean * ny;
                }
            }
            System.arraycopy(direction, 0, before, 0, measures);
        }
    }

    private static double angle(SteeredLine line, double at) {
        int node = (int) Math.floor(at);
        if (node < 0 || node + 1 >= line.steerRad.length) {
            return 0;
        }
        double t = at - node;
        return (1 - t) * line.steerRad[node] + t * line.steerRad[node + 1];
    }

    /** The units behind the first, from one state to the next. */
    private void step(int i) {
        Track track = trial.track;
        int units = combination.chain().size();
        double ds = track.stationM(i + 1) - track.stationM(i);
        if (ds <= 0) {
            for (int k = 1; k < units; k++) {
                System.arraycopy(dh[k][i], 0, dh[k][i + 1], 0, measures);
            }
            return;
        }
        double wx = (track.leadXM(i + 1) - track.leadXM(i)) / ds;
        double wy = (track.leadYM(i + 1) - track.leadYM(i)) / ds;
        double[] dwx = new double[measures];
        double[] dwy = new double[measures];
        for (int m = 0; m < measures; m++) {
            dwx[m] = (dx[i + 1][m] - dx[i][m]) / ds;
            dwy[m] = (dy[i + 1][m] - dy[i][m]) / ds;
        }
        for (int k = 0; k < units; k++) {
            TurningUnit unit = combination.chain().get(k);
            double c = 0.5 * (track.cosine[k][i] + track.cosine[k][i + 1]);
            double s = 0.5 * (track.sine[k][i] + track.sine[k][i + 1]);
            double rate = Math.asin(Math.max(
                            -1,
                            Math.min(
                                    1,
                                    track.cosine[k][i] * track.sine[k][i + 1]
                                            - track.sine[k][i] * track.cosine[k][i + 1])))
                    / ds;
            double[] here = dh[k][i];
            double[] next = dh[k][i + 1];
            if (k > 0 && laws[k] != null) {
                steered(k, i, ds, new double[] {wx * c + wy * s, wy * c - wx * s}, c, s, dwx, dwy);
            } else if (k > 0) {
                double decay = (wx * c + wy * s) / unit.hitchToAxleM();
                double keep = Math.exp(-decay * ds);
                double gain = Math.abs(decay * ds) < 1e-6 ? ds : (1 - keep) / decay;
                for (int m = 0; m < measures; m++) {
                    double source = (dwy[m] * c - dwx[m] * s) / unit.hitchToAxleM();
                    next[m] = here[m] * keep + source * gain;
                }
            }
            double arm = unit.hitchToAxleM() + unit.couplingBehindM();
            wx += arm * rate * s;
            wy -= arm * rate * c;
            for (int m = 0; m < measures; m++) {
                double mean = 0.5 * (here[m] + next[m]);
                double faster = (next[m] - here[m]) / ds;
                dwx[m] += arm * (faster * s + rate * c * mean);
                dwy[m] -= arm * (faster * c - rate * s * mean);
            }
        }
    }

    /**
     * The same of a unit some of whose wheels turn, its turn being any function of the hitch's velocity along and
     * across it and of the bend ahead.
     */
    private void steered(int k, int i, double ds, double[] velocity, double c, double s, double[] dwx, double[] dwy) {
        double along = velocity[0];
        double across = velocity[1];
        double bend = trial.track.articulationRad(i, k - 1);
        double of = laws[k].turn(along, across, bend);
        double byAlong = (laws[k].turn(along + NUDGE, across, bend) - of) / NUDGE;
        double byAcross = (laws[k].turn(along, across + NUDGE, bend) - of) / NUDGE;
        double byBend = (laws[k].turn(along, across, bend + NUDGE) - of) / NUDGE;
        double decay = byAcross * along - byAlong * across + byBend;
        double keep = Math.exp(-decay * ds);
        double gain = Math.abs(decay * ds) < 1e-6 ? ds : (1 - keep) / decay;
        double[] here = dh[k][i];
        double[] next = dh[k][i + 1];
        for (int m = 0; m < measures; m++) {
            double ahead = 0.5 * (dh[k - 1][i][m] + dh[k - 1][i + 1][m]);
            double source = byAlong * (dwx[m] * c + dwy[m] * s) + byAcross * (dwy[m] * c - dwx[m] * s) + byBend * ahead;
            next[m] = here[m] * keep + source * gain;
        }
    }

    /** How the room of a place grows by each measure. */
    void room(LineTrial.TightPlace place, double[] row) {
        Track track = trial.track;
        int i = place.state;
        for (int m = 0; m < measures; m++) {
            row[m] = place.nx * dx[i][m] + place.ny * dy[i][m];
        }
        for (int k = 0; k <= place.unit; k++) {
            double c = track.cosine[k][i];
            double s = track.sine[k][i];
            double back = combination.chain().get(k).hitchToAxleM();
            double ax;
            double ay;
            if (k < place.unit) {
                back += combination.chain().get(k).couplingBehindM();
                ax = back * s;
                ay = -back * c;
            } else {
                double ahead = place.aheadM - back;
                ax = -ahead * s - place.leftM * c;
                ay = ahead * c - place.leftM * s;
            }
            double turn = place.nx * ax + place.ny * ay;
            double[] heading = dh[k][i];
            for (int m = 0; m < measures; m++) {
                row[m] += turn * heading[m];
            }
        }
    }

    /** How the bend at a coupling grows by each measure. */
    void bend(int coupling, int state, double[] row) {
        for (int m = 0; m < measures; m++) {
            row[m] = dh[coupling][state][m] - dh[coupling + 1][state][m];
        }
    }
}
