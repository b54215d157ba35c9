package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.cresthaul.turning.TurningCombination.AxleLine;
import org.cresthaul.turning.TurningCombination.Body;
import org.cresthaul.turning.TurningCombination.PlanUnit;

/**
 * What a turn comes to, in the words of the handbooks. Offsets are taken square to the lead path, at states.
 *
 * @param offtrackingM by unit: the farthest its effective axle is from the lead path, metres
 * @param sweptWidthM widest cross-section of what all bodies pass over
 * @param tailSwing how far a rear corner swings out past where that side of its unit stood on the straight before the
 *     turn, away from the way it first turns
 * @param frontalSwing how far a front corner swings out past the line its side follows on the straight after the turn,
 *     away from the way it last turns
 * @param trailsWide how far the last unit's tyres run outside the path of the tyres of the unit before it; with three
 *     units and more
 * @param pivotSwing how far the last coupling runs outside the path of the effective axle before it; with three units and
 *     more
 */
public record TurningFigures(
        List<Double> offtrackingM,
        double sweptWidthM,
        Swing tailSwing,
        Swing frontalSwing,
        Optional<Swing> trailsWide,
        Optional<Swing> pivotSwing) {
    /**
     * How far something swings out, and where.
     *
     * @param unit index into the chain
     * @param stationM where the lead point is then, along its path
     */
    public record Swing(double valueM, int unit, double xM, double yM, double stationM) {
        static Swing none() {
            return new Swing(0, 0, 0, 0, 0);
        }
    }

    /** Width of a cross-section's bin, metres. */
    private static final double BIN_M = 0.25;

    public TurningFigures {
        offtrackingM = List.copyOf(offtrackingM);
    }

    /** Offtracking alone, by unit. */
    static List<Double> offtrackingM(Track track) {
        List<Double> most = new ArrayList<>();
        for (int k = 0; k < track.chain().size(); k++) {
            PathFrame frame = new PathFrame(track);
            double farthest = 0;
            for (int i = 0; i < track.size(); i++) {
                frame.project(track.axleXM(i, k), track.axleYM(i, k));
                farthest = Math.max(farthest, Math.abs(frame.offsetM()));
            }
            most.add(farthest);
        }
        return most;
    }

    /** The figures of a followed path that starts straight and ends straight enough. */
    public static TurningFigures of(Track track, TurningCombination combination) {
        Band all = new Band(track);
        double firstHand = hand(track, 1);
        double lastHand = hand(track, -1);
        double startCos = track.leadCos(0);
        double startSin = track.leadSin(0);
        Swing tail = Swing.none();
        Swing front = Swing.none();
        int out = straightOut(track);
        double endX = track.leadXM(out);
        double endY = track.leadYM(out);
        double endCos = track.leadCos(track.size() - 1);
        double endSin = track.leadSin(track.size() - 1);
        for (int k = 0; k < combination.units().size(); k++) {
            PlanUnit unit = combination.units().get(k);
            for (Body body : unit.bodies()) {
                for (int side = -1; side <= 1; side += 2) {
                    double half = side * body.halfWidthM();
                    all.addPath(track, k, body.frontM(), half);
                    all.addPath(track, k, Math.max(body.rearM(), Math.min(body.frontM(), 0)), half);
                    all.addPath(track, k, body.rearM(), half);
                    for (int i = 0; i < track.size(); i++) {
                        double[] rear = place(track, i, k, body.rearM(), half);
                        double along = startCos * (rear[0] - track.leadXM(0)) + startSin * (rear[1] - track.leadYM(0));
                        double swing = side * (startCos * (rear[1] - track.leadYM(0))
                                - startSin * (rear[0] - track.leadXM(0))) - body.halfWidthM();
                        // Only as long as the corner is still beside the straight that the turn leaves.
                        if (side * firstHand < 0 && along < 0 && swing > tail.valueM) {
                            tail = new Swing(swing, k, rear[0], rear[1], track.stationM(i));
                        }
                        double[] nose = place(track, i, k, body.frontM(), half);
                        double past = side * (endCos * (nose[1] - endY) - endSin * (nose[0] - endX)) - body.halfWidthM();
                        boolean beyond = endCos * (nose[0] - endX) + endSin * (nose[1] - endY) > 0;
                        if (side * lastHand < 0 && beyond && past > front.valueM) {
                            front = new Swing(past, k, nose[0], nose[1], track.stationM(i));
                        }
                    }
                }
            }
        }
        int last = combination.units().size() - 1;
        Optional<Swing> wide = Optional.empty();
        Optional<Swing> pivot = Optional.empty();
        if (last >= 2) {
            Band tyres = new Band(track);
            for (AxleLine axle : combination.units().get(last - 1).tyres()) {
                tyres.addPath(track, last - 1, axle.aheadM(), axle.halfWidthM());
                tyres.addPath(track, last - 1, axle.aheadM(), -axle.halfWidthM());
            }
            Swing most = Swing.none();
            for (AxleLine axle : combination.units().get(last).tyres()) {
                most = larger(most, tyres.outside(track, last, axle.aheadM(), axle.halfWidthM()));
                most = larger(most, tyres.outside(track, last, axle.aheadM(), -axle.halfWidthM()));
            }
            wide = Optional.of(most);
            Band axle = new Band(track);
            axle.addPath(track, last - 1, 0, 0);
            pivot = Optional.of(axle.outside(track, last - 1, -track.chain().get(last - 1).couplingBehindM(), 0));
        }
        return new TurningFigures(offtrackingM(track), all.widest(), tail, front, wide, pivot);
    }

    /** Which way the path turns first ({@code way} 1) or last (-1): positive to the left. */
    private static double hand(Track track, int way) {
        for (int i = way > 0 ? 1 : track.size() - 1; i > 0 && i < track.size(); i += way) {
            double turn = track.leadCos(i - 1) * track.leadSin(i) - track.leadSin(i - 1) * track.leadCos(i);
            if (Math.abs(turn) > 1e-9) {
                return turn;
            }
        }
        return 0;
    }

    /** The state at which the last straight begins. */
    private static int straightOut(Track track) {
        int last = track.size() - 1;
        int i = last;
        while (i > 0
                && track.leadCos(i - 1) * track.leadCos(last) + track.leadSin(i - 1) * track.leadSin(last)
                        > 1 - 1e-10) {
            i--;
        }
        return i;
    }

    /** Which way the path turns on the whole: positive to the left. */
    private static double turnHand(Track track) {
        double sum = 0;
        for (int i = 1; i < track.size(); i++) {
            sum += track.leadCos(i - 1) * track.leadSin(i) - track.leadSin(i - 1) * track.leadCos(i);
        }
        return sum;
    }

    private static Swing larger(Swing a, Swing b) {
        return b.valueM > a.valueM ? b : a;
    }

    private static double[] place(Track track, int state, int unit, double aheadM, double leftM) {
        double c = track.cos(state, unit);
        double s = track.sin(state, unit);
        return new double[] {
            track.axleXM(state, unit) + aheadM * c - leftM * s, track.axleYM(state, unit) + aheadM * s + leftM * c
        };
    }

    /** Least and greatest offset from the lead path, by station. */
    private static final class Band {
        final double firstM;
        final double[] least;
        final double[] most;
        final double hand;

        Band(Track track) {
            double before = 80;
            firstM = -before;
            int bins = (int) ((track.stationM(track.size() - 1) + 2 * before) / BIN_M) + 2;
            least = new double[bins];
            most = new double[bins];
            Arrays.fill(least, Double.POSITIVE_INFINITY);
            Arrays.fill(most, Double.NEGATIVE_INFINITY);
            hand = turnHand(track);
        }

        void addPath(Track track, int unit, double aheadM, double leftM) {
            PathFrame frame = new PathFrame(track);
            double lastStation = Double.NaN;
            double lastOffset = 0;
            for (int i = 0; i < track.size(); i++) {
                double[] at = place(track, i, unit, aheadM, leftM);
                frame.project(at[0], at[1]);
                double station = frame.stationM();
                double offset = frame.offsetM();
                add(station, offset);
                if (Math.abs(station - lastStation) < 4) {
                    int parts = (int) (Math.abs(station - lastStation) / BIN_M);
                    for (int j = 1; j <= parts; j++) {
                        double t = j / (parts + 1.0);
                        add(lastStation + t * (station - lastStation), lastOffset + t * (offset - lastOffset));
                    }
                }
                lastStation = station;
                lastOffset = offset;
            }
        }

        private void add(double station, double offset) {
            int bin = (int) Math.floor((station - firstM) / BIN_M);
            if (bin >= 0 && bin < least.length) {
                least[bin] = Math.min(least[bin], offset);
                most[bin] = Math.max(most[bin], offset);
            }
        }

        double widest() {
            double widest = 0;
            for (int b = 0; b < least.length; b++) {
                widest = Math.max(widest, most[b] - least[b]);
            }
            return widest;
        }

        /** How far a point's path leaves this band on the outside of the turn. */
        Swing outside(Track track, int unit, double aheadM, double leftM) {
            return beyond(track, unit, aheadM, leftM, hand >= 0 ? -1 : 1);
        }

        /** How far a point's path leaves this band on one side: 1 for the left, -1 for the right. */
        Swing beyond(Track track, int unit, double aheadM, double leftM, int side) {
            PathFrame frame = new PathFrame(track);
            Swing worst = Swing.none();
            for (int i = 0; i < track.size(); i++) {
                double[] at = place(track, i, unit, aheadM, leftM);
                frame.project(at[0], at[1]);
                double place = (frame.stationM() - firstM) / BIN_M - 0.5;
                int bin = (int) Math.floor(place);
                if (bin < 0 || bin + 1 >= least.length || !(least[bin] <= most[bin])
                        || !(least[bin + 1] <= most[bin + 1])) {
                    continue;
                }
                double t = place - bin;
                double out = side < 0
                        ? (1 - t) * least[bin] + t * least[bin + 1] - frame.offsetM()
                        : frame.offsetM() - (1 - t) * most[bin] - t * most[bin + 1];
                if (out > worst.valueM) {
                    worst = new Swing(out, unit, at[0], at[1], track.stationM(i));
                }
            }
            return worst;
        }
    }
}
