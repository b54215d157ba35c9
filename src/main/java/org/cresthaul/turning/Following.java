package org.cresthaul.turning;

import java.util.Arrays;
import java.util.List;
import org.cresthaul.geometry.Finite;

/**
 * How a chain of units follows a lead path at low speed, without side slip at its effective axles: θ' = sin(φ − θ) v /
 * L.
 *
 * <p>With the half angle's direction U = (cos θ/2, sin θ/2) and the hitch's velocity w that is linear: U' = A(w) U / 2L
 * with A = [[wx, wy], [wy, −wx]], up to a length of U that means nothing. So over any hitch path the heading changes by
 * one 2 × 2 matrix, whatever it was before. The matrix of one step is the exponential of A(D) / 2L + α [[0, −1], [1,
 * 0]] of the hitch's chord D, and α = S / 2L² of the signed area S between hitch path and chord: the Magnus series (W.
 * Magnus, Comm. Pure Appl. Math. 7, 1954) up to its second term, hence of fourth order. On a straight hitch segment α =
 * 0 and the step is exact: tan(ψ/2) shrinks by e^{−Δs/L}, the tractrix. Nothing here divides by a speed or a cosine:
 * reversing, jackknifed and overturned units are steps like any other.
 *
 * <p>Unit after unit goes over many steps at once: all of a step but two products is then free of what was before it.
 * Steps are no longer than wanted for states, and shorter where {@link FollowingBound} asks for it.
 */
public final class Following {
    /** States are within this of the exact ones, meters, unless {@link Track#errorBoundM()} says otherwise. */
    public static final double TOLERANCE_M = 0.002;
    /** How far apart states are by default, meters of lead path. */
    public static final double STATE_M = 0.25;

    private static final double LONGEST_M = 0.5;
    private static final double LONGEST_OF_UNIT = 0.4;
    private static final int MOST_HALVINGS = 6;
    private static final int MOST_STATES = 2_000_000;

    private Following() {}

    /** Follows a path from its start, every unit straight behind, with states every {@link #STATE_M}. */
    public static Track along(List<TurningUnit> chain, LeadPath path) {
        return along(chain, path, STATE_M);
    }

    /** The same with states at most so far apart, meters. */
    public static Track along(List<TurningUnit> chain, LeadPath path, double stateM) {
        double[] headings = new double[chain.size()];
        Arrays.fill(headings, path.at(0)[2]);
        return along(chain, path, headings, stateM, false);
    }

    /**
     * Follows a path.
     *
     * @param headingsRad of every unit at the start
     * @param stateM farthest apart two states may be, meters
     * @param reversing the lead point is pushed back along the path: only what counts as straight steering differs
     */
    public static Track along(
            List<TurningUnit> chain, LeadPath path, double[] headingsRad, double stateM, boolean reversing) {
        if (chain.isEmpty() || headingsRad.length != chain.size()) {
            throw new IllegalArgumentException("as many headings as units, at least one: " + headingsRad.length);
        }
        Finite.requireAtLeast("stateM", 1e-4, stateM);
        double longest = LONGEST_M;
        for (TurningUnit unit : chain) {
            longest = Math.min(longest, LONGEST_OF_UNIT * unit.hitchToAxleM());
        }
        int parts = (int) Math.ceil(stateM / longest);
        if (chain.stream().anyMatch(unit -> unit.steered().isPresent())) {
            return steered(chain, path, headingsRad, stateM, parts, reversing);
        }
        return rolling(chain, path, headingsRad, stateM, parts, reversing);
    }

    /** Of units whose wheels do not turn: every one rolls at its effective axle. */
    private static Track rolling(
            List<TurningUnit> chain, LeadPath path, double[] headingsRad, double stateM, int parts, boolean reversing) {
        for (int halvings = 0; ; halvings++) {
            int most = Math.min(parts << halvings, FollowingSteps.BLOCK);
            double apart = stateM / (parts << halvings) * most;
            Run run = new Run(chain, path, headingsRad, apart, most, reversing);
            run.go();
            if (run.track.errorBoundM() <= TOLERANCE_M || halvings == MOST_HALVINGS) {
                return run.track;
            }
        }
    }

    private static Track steered(
            List<TurningUnit> chain, LeadPath path, double[] headingsRad, double stateM, int parts, boolean reversing) {
        if (!reversing && chain.stream().noneMatch(TurningUnit::isCommanded)) {
            // Castering wheels that never meet their stops guide nothing.
            Track free = rolling(chain, path, headingsRad, stateM, parts, false);
            if (CasterAngles.areWithinStops(free)) {
                return free;
            }
        }
        requireStates(path, stateM);
        int[] states = new int[path.pieces()];
        for (int piece = 0; piece < states.length; piece++) {
            states[piece] = states(path, piece, stateM);
        }
        for (int halvings = 0; ; halvings++) {
            int steps = parts << halvings;
            Track track = SteeredFollowing.along(
                    chain, path, headingsRad, states, steps == 1 ? 1 : steps + steps % 2, reversing);
            if (track.errorBoundM() <= TOLERANCE_M || halvings == MOST_HALVINGS) {
                return track;
            }
        }
    }

    private static void requireStates(LeadPath path, double stateM) {
        if (path.lengthM() / stateM + path.pieces() > MOST_STATES) {
            throw new IllegalArgumentException("a path of " + path.lengthM() + " m has too many states");
        }
    }

    private static int states(LeadPath path, int piece, double stateM) {
        double span = path.stationM(piece + 1) - path.stationM(piece);
        return Math.max(1, (int) Math.ceil(span / stateM - 1e-9));
    }

    private static final class Run {
        private final LeadPath path;
        private final double stateM;
        /** Steps from one state to the next. */
        private final int parts;

        private final int block;
        private final Track track;
        private final FollowingBound bound;
        private final double[] halfLength;
        private final double[] u;
        private final double[] v;
        private final double[] arm;
        private final double[] swerve;
        private final FollowingSteps all = FollowingSteps.ofThread();
        private final PathNodes hitch = all.hitch;
        /** What is laid and not yet followed, behind which state. */
        private int steps;

        private int state;

        Run(List<TurningUnit> chain, LeadPath path, double[] headingsRad, double stateM, int parts, boolean reversing) {
            this.path = path;
            this.stateM = stateM;
            this.parts = parts;
            requireStates(path, stateM);
            int states = 1;
            for (int piece = 0; piece < path.pieces(); piece++) {
                states += states(path, piece, stateM);
            }
            track = new Track(chain, states, reversing);
            bound = new FollowingBound(chain);
            block = FollowingSteps.BLOCK / parts * parts;
            int units = chain.size();
            halfLength = new double[units];
            u = new double[units];
            v = new double[units];
            arm = new double[units];
            swerve = new double[units];
            for (int k = 0; k < units; k++) {
                TurningUnit unit = chain.get(k);
                halfLength[k] = 0.5 / unit.hitchToAxleM();
                arm[k] = unit.hitchToAxleM() + unit.couplingBehindM();
                swerve[k] = unit.couplingBehindM() / unit.hitchToAxleM();
                u[k] = Math.cos(0.5 * headingsRad[k]);
                v[k] = Math.sin(0.5 * headingsRad[k]);
            }
        }

        /**
         * Lays block after block. A kink ends one, as the hitch's velocity jumps there; and so do steps of quite
         * another length, as one bound holds for a block.
         */
        void go() {
            path.start(0, hitch, 0);
            for (int piece = 0; piece < path.pieces(); piece++) {
                int states = states(path, piece, stateM);
                double start = path.stationM(piece);
                double every = (path.stationM(piece + 1) - start) / states;
                double h = every / parts;
                if (path.kinkedAt(piece) || !bound.holdsFor(h)) {
                    follow();
                    path.start(piece, hitch, 0);
                }
                for (int i = 1, at = state + steps / parts; i <= states; i++) {
                    track.station[at + i] = start + i * every;
                }
                for (int done = 0; done < states * parts; ) {
                    if (steps == block) {
                        follow();
                    }
                    int now = Math.min(states * parts - done, block - steps);
                    bound.over(path, piece, h);
                    path.lay(piece, done * h, h, now, hitch, steps);
                    Arrays.fill(all.sixth, steps, steps + now, h * h / 6);
                    steps += now;
                    done += now;
                }
                path.land(piece, hitch, steps);
            }
            follow();
            for (int k = 0; k < u.length; k++) {
                // Whatever is no number stays so to the end; it must never pass for room.
                if (!Double.isFinite(u[k]) || !Double.isFinite(v[k])) {
                    throw new IllegalStateException("unit " + k + " was lost on the way");
                }
            }
            track.bound(bound.positionM());
        }

        /** Takes every unit over the steps that are laid, and leaves the hitch where the lead point is behind them. */
        private void follow() {
            double x = hitch.x[steps];
            double y = hitch.y[steps];
            double cos = hitch.c[steps];
            double sin = hitch.s[steps];
            keep(hitch.x, track.lead.x);
            keep(hitch.y, track.lead.y);
            keep(hitch.c, track.lead.c);
            keep(hitch.s, track.lead.s);
            bound.block();
            int last = halfLength.length - 1;
            for (int k = 0; k <= last; k++) {
                all.u = u[k];
                all.v = v[k];
                all.follow(steps, halfLength[k]);
                u[k] = all.u;
                v[k] = all.v;
                bound.followed(k, steps, all);
                keep(all.c, track.cosine[k]);
                keep(all.s, track.sine[k]);
                if (k < last) {
                    all.move(steps, arm[k], swerve[k]);
                    bound.coupling(k, Math.abs(swerve[k]) > 1 ? all.fastest(steps) : 1);
                }
            }
            hitch.x[0] = x;
            hitch.y[0] = y;
            hitch.c[0] = cos;
            hitch.s[0] = sin;
            state += steps / parts;
            steps = 0;
        }

        private void keep(double[] from, double[] to) {
            if (parts == 1) {
                System.arraycopy(from, 0, to, state, steps + 1);
                return;
            }
            for (int i = 0, at = state; i <= steps; i += parts, at++) {
                to[at] = from[i];
            }
        }
    }
}
