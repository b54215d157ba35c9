package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.turning.TurningCombination.AxleLine;
import org.cresthaul.turning.TurningCombination.Body;
import org.cresthaul.turning.TurningCombination.PlanUnit;

/**
 * What a turn of up to 180° comes to, in the words of the handbooks. The path starts and ends straight, every unit
 * straight behind the other at its start. Offsets are taken square to the lead path, at states, from the part of it
 * that a unit is beside. Definitions: the low-speed standards of the Australian performance-based standards scheme
 * (swept path, frontal swing, tail swing), taken from its prescribed right-angled turn to any; offtracking as in
 * AASHTO's design guide.
 *
 * @param offtrackingM by unit: the farthest its effective axle is from the lead path, meters
 * @param sweptWidthM widest cross-section of what all bodies pass over
 * @param tailSwing the largest of {@code swings}: how far a rear corner swings out past the line that its side follows
 *     on the straight before the turn
 * @param frontalSwing the largest of {@code swings}: how far a front corner swings out past the line that its side
 *     follows on the straight after the turn
 * @param trailsWide how far the last unit's tires run outside the path of the tires of the unit before it; with three
 *     units and more
 * @param pivotSwing how far the last coupling runs outside the path of the effective axle before it; with three units
 *     and more
 * @param swings tail and frontal swing of every unit, outside of the turn and inside apart
 * @param trails how far every unit's tires but the first's run beside those of the unit before it, outside of the turn
 *     and inside apart
 */
public record TurningFigures(
        List<Double> offtrackingM,
        double sweptWidthM,
        Swing tailSwing,
        Swing frontalSwing,
        Optional<Swing> trailsWide,
        Optional<Swing> pivotSwing,
        List<UnitSwing> swings,
        List<UnitTrail> trails) {
    /**
     * How far something swings out, and where.
     *
     * @param unit index into the chain
     * @param stationM where the lead point is then, along its path
     * @param side 1 on the left, -1 on the right, 0 when nothing swings out
     */
    public record Swing(double valueM, int unit, double xM, double yM, double stationM, int side) {
        static Swing none() {
            return new Swing(0, 0, 0, 0, 0, 0);
        }
    }

    /** Of one unit; a driver who swings away first moves all of it, which is no part of this. */
    public record UnitSwing(int unit, Swing tailOutside, Swing tailInside, Swing frontOutside, Swing frontInside) {}

    /** Of one unit, against the unit before it. */
    public record UnitTrail(int unit, Swing outside, Swing inside) {}

    public TurningFigures {
        offtrackingM = List.copyOf(offtrackingM);
        swings = List.copyOf(swings);
        trails = List.copyOf(trails);
    }

    /** Offtracking alone, by unit. */
    static List<Double> offtrackingM(Track track) {
        List<Double> most = new ArrayList<>();
        for (int k = 0; k < track.chain().size(); k++) {
            PathFrame frame = new PathFrame(track, k, 0);
            double farthest = 0;
            for (int i = 0; i < track.size(); i++) {
                frame.project(i, track.axleXM(i, k), track.axleYM(i, k));
                farthest = Math.max(farthest, Math.abs(frame.offsetM()));
            }
            most.add(farthest);
        }
        return most;
    }

    /** The figures of a followed path that starts straight and ends straight enough. */
    public static TurningFigures of(Track track, TurningCombination combination) {
        int outside = turned(track) >= 0 ? -1 : 1;
        AxlePaths axles = new AxlePaths(track);
        PathBand all = new PathBand(track, axles);
        List<UnitSwing> swings = new ArrayList<>();
        Swing tail = Swing.none();
        Swing front = Swing.none();
        for (int k = 0; k < combination.units().size(); k++) {
            Swing[] of = {Swing.none(), Swing.none(), Swing.none(), Swing.none()};
            for (Body body : combination.units().get(k).bodies()) {
                for (int side = -1; side <= 1; side += 2) {
                    double half = side * body.halfWidthM();
                    all.addPath(k, body.frontM(), half);
                    all.addPath(k, Math.max(body.rearM(), Math.min(body.frontM(), 0)), half);
                    all.addPath(k, body.rearM(), half);
                    int at = side == outside ? 0 : 1;
                    of[at] = larger(of[at], swing(track, axles, k, body.rearM(), half, 0));
                    of[2 + at] = larger(of[2 + at], swing(track, axles, k, body.frontM(), half, track.size() - 1));
                }
            }
            swings.add(new UnitSwing(k, of[0], of[1], of[2], of[3]));
            tail = larger(tail, larger(of[0], of[1]));
            front = larger(front, larger(of[2], of[3]));
        }
        List<UnitTrail> trails = new ArrayList<>();
        for (int k = 1; k < combination.units().size(); k++) {
            trails.add(trail(track, axles, combination, k, outside));
        }
        Optional<Swing> wide = Optional.empty();
        Optional<Swing> pivot = Optional.empty();
        for (int k = 1; k < combination.units().size(); k++) {
            if (combination.isPivot(k - 1)) {
                PathBand axle = new PathBand(track, axles);
                axle.addPath(k - 1, 0, 0);
                Swing swing = axle.beyond(k - 1, -track.chain().get(k - 1).couplingBehindM(), 0, outside);
                Swing out = trails.get(k - 1).outside();
                wide = Optional.of(wide.map(w -> larger(w, out)).orElse(out));
                pivot = Optional.of(pivot.map(p -> larger(p, swing)).orElse(swing));
            }
        }
        return new TurningFigures(offtrackingM(track), all.widest(), tail, front, wide, pivot, swings, trails);
    }

    /**
     * How far a corner of a body gets out past the line of its side on the straight at one end of the path, beyond what
     * the side itself, at the effective axle, gets past that line (at the front also what the driver steers past it):
     * while the unit is turned from it by less than a right angle. A tail lies behind the effective axle, a nose ahead
     * of it; what does not is followed by the axle, or follows it, and swings out nowhere.
     *
     * @param end the state that lies on that straight: the first or the last
     */
    private static Swing swing(Track track, AxlePaths axles, int unit, double aheadM, double leftM, int end) {
        int side = leftM > 0 ? 1 : -1;
        double c = track.leadCos(end);
        double s = track.leadSin(end);
        double axle = 0;
        Swing most = Swing.none();
        int step = end == 0 ? 1 : -1;
        if (aheadM * step >= 0) {
            return most;
        }
        for (int i = end; i >= 0 && i < track.size(); i += step) {
            if (c * track.cos(i, unit) + s * track.sin(i, unit) <= 0) {
                break;
            }
            double x = axles.xM(unit, i, aheadM, leftM);
            double y = axles.yM(unit, i, aheadM, leftM);
            double out = side * (c * (y - track.leadYM(end)) - s * (x - track.leadXM(end)) - leftM);
            if (out > most.valueM) {
                most = new Swing(out, unit, x, y, track.stationM(i), side);
            }
            double besideX = axles.xM(unit, i, 0, leftM);
            double besideY = axles.yM(unit, i, 0, leftM);
            if (step < 0) {
                axle = Math.max(
                        axle,
                        side * (c * (track.leadYM(i) - track.leadYM(end)) - s * (track.leadXM(i) - track.leadXM(end))));
            }
            axle = Math.max(
                    axle, side * (c * (besideY - track.leadYM(end)) - s * (besideX - track.leadXM(end)) - leftM));
        }
        return most.valueM > axle
                ? new Swing(most.valueM - axle, unit, most.xM, most.yM, most.stationM, side)
                : Swing.none();
    }

    private static UnitTrail trail(
            Track track, AxlePaths axles, TurningCombination combination, int unit, int outside) {
        PathBand before = new PathBand(track, axles);
        for (AxleLine axle : combination.units().get(unit - 1).tires()) {
            before.addPath(unit - 1, axle.aheadM(), axle.halfWidthM());
            before.addPath(unit - 1, axle.aheadM(), -axle.halfWidthM());
        }
        Swing out = Swing.none();
        Swing in = Swing.none();
        PlanUnit plan = combination.units().get(unit);
        for (AxleLine axle : plan.tires()) {
            out = larger(out, before.beyond(unit, axle.aheadM(), outside * axle.halfWidthM(), outside));
            in = larger(in, before.beyond(unit, axle.aheadM(), -outside * axle.halfWidthM(), -outside));
        }
        return new UnitTrail(unit, out, in);
    }

    /** How far the path turns on the whole: positive to the left; whole turns count. */
    private static double turned(Track track) {
        double sum = 0;
        for (int i = 1; i < track.size(); i++) {
            sum += track.leadCos(i - 1) * track.leadSin(i) - track.leadSin(i - 1) * track.leadCos(i);
        }
        return sum;
    }

    private static Swing larger(Swing a, Swing b) {
        return b.valueM > a.valueM ? b : a;
    }
}
