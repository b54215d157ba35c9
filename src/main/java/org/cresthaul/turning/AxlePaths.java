package org.cresthaul.turning;

import java.util.List;

/** Where every unit's effective axle is at the states of a track, and any other place of a unit. */
final class AxlePaths {
    /** Of the axle, meters, by unit and state. */
    final double[][] xM;

    final double[][] yM;
    private final Track track;

    AxlePaths(Track track) {
        this.track = track;
        List<TurningUnit> chain = track.chain();
        int units = chain.size();
        int states = track.size();
        xM = new double[units][states];
        yM = new double[units][states];
        for (int k = 0; k < units; k++) {
            double axle = chain.get(k).hitchToAxleM();
            double hitch = k == 0 ? 0 : chain.get(k - 1).couplingBehindM();
            for (int i = 0; i < states; i++) {
                double x = k == 0 ? track.leadXM(i) : xM[k - 1][i] - hitch * track.cosine[k - 1][i];
                double y = k == 0 ? track.leadYM(i) : yM[k - 1][i] - hitch * track.sine[k - 1][i];
                xM[k][i] = x - axle * track.cosine[k][i];
                yM[k][i] = y - axle * track.sine[k][i];
            }
        }
    }

    /** Of a place of a unit, meters ahead of its effective axle and to the left of it. */
    double xM(int unit, int state, double aheadM, double leftM) {
        return xM[unit][state] + aheadM * track.cosine[unit][state] - leftM * track.sine[unit][state];
    }

    double yM(int unit, int state, double aheadM, double leftM) {
        return yM[unit][state] + aheadM * track.sine[unit][state] + leftM * track.cosine[unit][state];
    }
}
