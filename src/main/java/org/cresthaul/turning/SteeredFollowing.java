package org.cresthaul.turning;

import java.util.List;

/**
 * Follows a chain some of whose wheels turn. Its headings go by the classical Runge–Kutta method of fourth order, all
 * units together, in pairs of steps; the same way in single steps of twice the length goes beside, and what the two are
 * apart at most is the bound: halved, a step of any order loses at least half, so that the finer way is no farther from
 * the true one.
 */
final class SteeredFollowing {
    private final LeadPath path;
    private final RollingLaw[] laws;
    private final double[] reachM;
    private final double[] axleM;
    private final boolean reversing;
    private final Track track;
    private final double[] fine;
    private final double[] coarse;
    private final double[][] slopes;
    private final double[] between;
    private final double[] place = new double[4];
    private int state;
    private double boundM;

    private SteeredFollowing(
            List<TurningUnit> chain, LeadPath path, double[] headingsRad, int states, boolean reversing) {
        this.path = path;
        this.reversing = reversing;
        int units = chain.size();
        laws = new RollingLaw[units];
        reachM = new double[units];
        axleM = new double[units];
        for (int k = 0; k < units; k++) {
            laws[k] = new RollingLaw(chain.get(k));
            reachM[k] = chain.get(k).reachM();
            axleM[k] = chain.get(k).hitchToAxleM();
        }
        track = new Track(chain, states, reversing);
        fine = headingsRad.clone();
        coarse = headingsRad.clone();
        slopes = new double[4][units];
        between = new double[units];
    }

    /**
     * Follows a path.
     *
     * @param statesOfPiece in how many equal ways from state to state each piece of the path is cut
     * @param parts steps from one state to the next, 1 or an even number
     */
    static Track along(
            List<TurningUnit> chain,
            LeadPath path,
            double[] headingsRad,
            int[] statesOfPiece,
            int parts,
            boolean reversing) {
        int states = 1;
        for (int n : statesOfPiece) {
            states += n;
        }
        SteeredFollowing run = new SteeredFollowing(chain, path, headingsRad, states, reversing);
        run.go(statesOfPiece, parts);
        return run.track;
    }

    private void go(int[] statesOfPiece, int parts) {
        for (int piece = 0; piece < path.pieces(); piece++) {
            int states = statesOfPiece[piece];
            double start = path.stationM(piece);
            // Where the direction jumps a state has that ahead.
            keep(piece, start);
            double every = (path.stationM(piece + 1) - start) / states;
            int pairs = (parts + 1) / 2;
            if (parts == 1) {
                // Two states a pair; what is left over is one state of two half steps.
                for (int i = 0; i + 1 < states; i += 2) {
                    pair(piece, start + i * every, every, true);
                }
            }
            for (int i = parts == 1 ? states / 2 * 2 : 0; i < states; i++) {
                double h = every / (2 * pairs);
                for (int p = 0; p < pairs; p++) {
                    pair(piece, start + i * every + 2 * p * h, h, false);
                }
                state++;
                keep(piece, start + (i + 1) * every);
            }
        }
        for (double heading : fine) {
            // Whatever is no number stays so to the end; it must never pass for room.
            if (!Double.isFinite(heading)) {
                throw new IllegalStateException("a unit was lost on the way");
            }
        }
        track.bound(boundM);
    }

    /** Two fine steps of {@code h} and a coarse one over both. */
    private void pair(int piece, double station, double h, boolean kept) {
        double d0 = path.headingAt(piece, station);
        double d2 = path.headingAt(piece, station + h);
        double d4 = path.headingAt(piece, station + 2 * h);
        step(fine, d0, path.headingAt(piece, station + 0.5 * h), d2, h);
        if (kept) {
            state++;
            keep(piece, station + h);
        }
        step(fine, d2, path.headingAt(piece, station + 1.5 * h), d4, h);
        if (kept) {
            state++;
            keep(piece, station + 2 * h);
        }
        step(coarse, d0, d2, d4, 2 * h);
        double hitch = 0;
        for (int k = 0; k < fine.length; k++) {
            double off = Math.abs(fine[k] - coarse[k]);
            boundM = Math.max(boundM, hitch + axleM[k] * off);
            hitch += Math.abs(reachM[k]) * off;
        }
        boundM = Math.max(boundM, hitch);
    }

    private void step(double[] heading, double from, double middle, double to, double h) {
        slopes(heading, from, slopes[0]);
        slopes(moved(heading, slopes[0], 0.5 * h), middle, slopes[1]);
        slopes(moved(heading, slopes[1], 0.5 * h), middle, slopes[2]);
        slopes(moved(heading, slopes[2], h), to, slopes[3]);
        for (int k = 0; k < heading.length; k++) {
            heading[k] += h / 6 * (slopes[0][k] + 2 * (slopes[1][k] + slopes[2][k]) + slopes[3][k]);
        }
    }

    private double[] moved(double[] heading, double[] slope, double h) {
        for (int k = 0; k < heading.length; k++) {
            between[k] = heading[k] + h * slope[k];
        }
        return between;
    }

    /** Ahead of the first unit is whatever keeps to the path. */
    private void slopes(double[] heading, double directionRad, double[] slope) {
        double wx = Math.cos(directionRad);
        double wy = Math.sin(directionRad);
        double aheadCos = reversing ? -wx : wx;
        double aheadSin = reversing ? -wy : wy;
        for (int k = 0; k < heading.length; k++) {
            double c = Math.cos(heading[k]);
            double s = Math.sin(heading[k]);
            double bend = Math.atan2(aheadSin * c - aheadCos * s, aheadCos * c + aheadSin * s);
            double turn = laws[k].turn(wx * c + wy * s, wy * c - wx * s, bend);
            slope[k] = turn;
            wx += reachM[k] * turn * s;
            wy -= reachM[k] * turn * c;
            aheadCos = c;
            aheadSin = s;
        }
    }

    private void keep(int piece, double station) {
        path.locate(piece, station, place);
        track.station[state] = station;
        track.lead.x[state] = place[0];
        track.lead.y[state] = place[1];
        track.lead.c[state] = place[2];
        track.lead.s[state] = place[3];
        for (int k = 0; k < fine.length; k++) {
            track.cosine[k][state] = Math.cos(fine[k]);
            track.sine[k][state] = Math.sin(fine[k]);
        }
    }
}
