package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * The least room of every part on a whole passage, between states as well as at them.
 *
 * <p>What moves past something first comes near to it, and least far from it, with a corner of one at a side of the
 * other. So between two states the paths of the part's corners are held against the edges of what is kept off, and the
 * paths of its corners, as the part sees them, against the part's sides; both paths are taken as straight, from a state
 * to the farthest of the next from which that hides less than {@link #CHORD_M}: on the straight {@value #MOST_STRIDE}
 * of them, in tight turns one. Where something is entered, the depth is searched between the states as well. A stretch
 * is passed over only when no place of the part can come nearer there than the least found.
 */
final class PassageRoom {
    /** A chord between two states hides less than this, meters. */
    static final double CHORD_M = 0.001;

    static final double STATE_M = 0.0625;
    private static final int MOST_STRIDE = 8;
    /** The first look takes every so manyth state. */
    private static final int LOOK_STRIDE = 16;
    /** What states passed over may lie off a chord; the rest of {@link #CHORD_M} is for what lies between states. */
    private static final double OFF_CHORD_M = 7e-4;
    /** Ground farther than this from a part is not what is tightest, meters. */
    private static final double BESIDE_M = 2;
    /** A place that is so much farther away than the nearest may be told as anything beyond, meters. */
    private static final double FAR_M = 5;
    /** How exactly depths are searched, meters; deep ones to a fiftieth of them. */
    private static final double DEPTH_M = 5e-4;

    private static final double DEPTH_SHARE = 0.02;
    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    private final Track track;
    private final boolean enteredOnly;
    private final AxlePaths axles;
    /** By unit: farthest that its effective axle moves between two states, and its largest turn. */
    private final double[] axleStepM;

    private final double[] turnStepRad;
    /**
     * By unit, farthest of its parts' places from its effective axle; by unit and state, zero until it is asked for.
     */
    private final double[] leverM;

    private final byte[][] stride;

    /** The least of one part so far. */
    private static final class Least {
        PassingPart part;
        double valueM = Double.POSITIVE_INFINITY;
        int state;
        double aheadM;
        double leftM;
    }

    private PassageRoom(Track track, List<PassingPart> parts, boolean enteredOnly) {
        this.track = track;
        this.enteredOnly = enteredOnly;
        int units = track.chain().size();
        int states = track.size();
        axles = new AxlePaths(track);
        axleStepM = new double[units];
        turnStepRad = new double[units];
        leverM = new double[units];
        stride = new byte[units][states];
        parts.forEach(p -> leverM[p.unit()] = Math.max(leverM[p.unit()], p.leverM() + BESIDE_M));
        for (int k = 0; k < units; k++) {
            double mostSine = 0;
            for (int i = 1; i < states; i++) {
                double sine = track.cosine[k][i - 1] * track.sine[k][i] - track.sine[k][i - 1] * track.cosine[k][i];
                mostSine = Math.max(mostSine, Math.abs(sine));
                axleStepM[k] = Math.max(
                        axleStepM[k],
                        Hypotenuse.of(axles.xM[k][i] - axles.xM[k][i - 1], axles.yM[k][i] - axles.yM[k][i - 1]));
            }
            turnStepRad[k] = Math.asin(Math.min(1, mostSine));
        }
    }

    /**
     * The least room of every unit's tires, bodies and low parts against each thing they keep off, in the parts' order.
     */
    static List<CornerFit.Gap> of(Track track, List<PassingPart> parts) {
        return new PassageRoom(track, parts, false).gaps(parts);
    }

    /** Whether any part enters anything. */
    static boolean isEntered(Track track, List<PassingPart> parts) {
        return new PassageRoom(track, parts, true).gaps(parts).stream().anyMatch(g -> g.valueM() < 0);
    }

    /**
     * For every part, each by itself and in the parts' order, where it comes over what it keeps off; empty where it
     * never does.
     */
    static List<Optional<CornerFit.Gap>> entered(Track track, List<PassingPart> parts) {
        PassageRoom room = new PassageRoom(track, parts, true);
        List<Optional<CornerFit.Gap>> entered = new ArrayList<>();
        for (PassingPart part : parts) {
            Least least = new Least();
            room.pass(part, least);
            entered.add(Optional.of(room.gap(least)).filter(g -> g.valueM() < 0));
        }
        return entered;
    }

    /** The least room of all parts alone; empty without parts. */
    static Optional<CornerFit.Gap> least(Track track, List<PassingPart> parts) {
        if (parts.isEmpty()) {
            return Optional.empty();
        }
        PassageRoom room = new PassageRoom(track, parts, false);
        Least least = new Least();
        for (PassingPart part : parts) {
            room.lookAtNearest(part, least);
        }
        for (PassingPart part : parts) {
            room.pass(part, least);
        }
        return Optional.of(room.gap(least));
    }

    /** Parts of which one gap is told. */
    private record Alike(int unit, PartOfUnit part, Against against) {
        static Alike of(PassingPart part) {
            return new Alike(part.unit(), part.part(), part.off().against);
        }
    }

    private List<CornerFit.Gap> gaps(List<PassingPart> parts) {
        Map<Alike, Least> groups = new LinkedHashMap<>();
        for (PassingPart part : parts) {
            Least least = groups.computeIfAbsent(Alike.of(part), k -> new Least());
            if (!enteredOnly) {
                lookAtNearest(part, least);
            }
        }
        for (PassingPart part : parts) {
            pass(part, groups.get(Alike.of(part)));
        }
        return groups.values().stream().map(this::gap).toList();
    }

    private CornerFit.Gap gap(Least l) {
        int k = l.part.unit();
        double x = axles.xM(k, l.state, l.aheadM, l.leftM);
        double y = axles.yM(k, l.state, l.aheadM, l.leftM);
        return new CornerFit.Gap(
                k,
                l.part.part(),
                l.leftM > 0 ? Side.LEFT : Side.RIGHT,
                l.part.off().against,
                l.valueM,
                x,
                y,
                track.stationM(l.state));
    }

    /**
     * Begins with the state where a part seems nearest to what it keeps off: the less is known, the more is passed
     * over.
     */
    private void lookAtNearest(PassingPart p, Least least) {
        int nearest = 0;
        double room = Double.POSITIVE_INFINITY;
        for (int i = 0; i < track.size(); i += LOOK_STRIDE) {
            double free = p.off()
                    .roughM(
                            axles.xM(p.unit(), i, p.middleAheadM(), p.middleLeftM()),
                            axles.yM(p.unit(), i, p.middleAheadM(), p.middleLeftM()));
            if (free < room) {
                room = free;
                nearest = i;
            }
        }
        if (least.part == null) {
            least.part = p;
        }
        if (room - p.reachM() < least.valueM) {
            at(p, nearest, nearest, 0, least);
        }
    }

    private void pass(PassingPart p, Least least) {
        if (least.part == null) {
            least.part = p;
            // Whatever keeps clear of it need not be looked at when only entering is asked for.
            least.valueM = enteredOnly ? CHORD_M : Double.POSITIVE_INFINITY;
        }
        int k = p.unit();
        double step = axleStepM[k] + p.leverM() * turnStepRad[k] + 1e-9;
        double reach = p.reachM();
        startsFree(p, least);
        int last = track.size() - 1;
        for (int i = 0; i < last && !(enteredOnly && least.valueM < 0); ) {
            double mx = axles.xM(k, i, p.middleAheadM(), p.middleLeftM());
            double my = axles.yM(k, i, p.middleAheadM(), p.middleLeftM());
            double spare = p.off().roughM(mx, my) - reach - least.valueM;
            if (spare < step) {
                spare = at(p, i, i, 0, least) - least.valueM;
            }
            if (spare >= step) {
                i += (int) Math.min(last, Math.floor(spare / step));
                continue;
            }
            int next = i + stride(k, i);
            between(p, i, next, step, least);
            i = next;
        }
        at(p, last, last, 0, least);
    }

    /** How many states on a chord still shows all of them, for every part of a unit, and everything beside it. */
    private int stride(int k, int i) {
        if (stride[k][i] == 0) {
            int most = Math.min(MOST_STRIDE, track.size() - 1 - i);
            while (most > 1 && offChordM(k, i, i + most) > OFF_CHORD_M) {
                most /= 2;
            }
            stride[k][i] = (byte) most;
        }
        return stride[k][i];
    }

    /**
     * How far any place of a unit, or anything beside it as it sees it, is off the chord between two states: what axle
     * and direction are off by, and what both together bend the way that is seen.
     */
    private double offChordM(int k, int i, int j) {
        double turned = Hypotenuse.of(track.cosine[k][j] - track.cosine[k][i], track.sine[k][j] - track.sine[k][i]);
        double rolled = Hypotenuse.of(axles.xM[k][j] - axles.xM[k][i], axles.yM[k][j] - axles.yM[k][i]);
        double off = 0;
        for (int m = i + 1; m < j; m++) {
            double t = (double) (m - i) / (j - i);
            double turnOff = Hypotenuse.of(
                    between(track.cosine[k], i, j, t) - track.cosine[k][m],
                    between(track.sine[k], i, j, t) - track.sine[k][m]);
            double axleOff = Hypotenuse.of(
                    between(axles.xM[k], i, j, t) - axles.xM[k][m], between(axles.yM[k], i, j, t) - axles.yM[k][m]);
            off = Math.max(off, axleOff + leverM[k] * turnOff);
        }
        return off + 0.25 * turned * rolled;
    }

    private static double between(double[] of, int i, int j, double t) {
        return of[i] + t * (of[j] - of[i]);
    }

    /**
     * A part that straddles something from the beginning meets it with no corner: the first state is looked at as
     * areas.
     */
    private void startsFree(PassingPart p, Least least) {
        Coordinate[] ring = new Coordinate[5];
        for (int q = 0; q < 4; q++) {
            ring[q] = new Coordinate(
                    axles.xM(p.unit(), 0, p.aheadM(q), p.leftM(q)), axles.yM(p.unit(), 0, p.aheadM(q), p.leftM(q)));
        }
        ring[4] = ring[0];
        Geometry area = GEOMETRY.createPolygon(ring);
        if (!p.off().isFree(area) && least.valueM > 0) {
            least.part = p;
            least.valueM = Math.min(-CHORD_M, at(p, 0, 0, 0, least));
            least.state = 0;
            least.aheadM = p.middleAheadM();
            least.leftM = p.middleLeftM();
        }
    }

    /** Room at a state, or a share of the way to another; values well above the least are not told apart. */
    private double at(PassingPart p, int i, int j, double t, Least least) {
        int k = p.unit();
        double cos = track.cosine[k][i];
        double sin = track.sine[k][i];
        double x = axles.xM[k][i];
        double y = axles.yM[k][i];
        if (t > 0) {
            cos += t * (track.cosine[k][j] - cos);
            sin += t * (track.sine[k][j] - sin);
            double size = Hypotenuse.of(cos, sin);
            cos /= size;
            sin /= size;
            x += t * (axles.xM[k][j] - x);
            y += t * (axles.yM[k][j] - y);
        }
        double found = least.valueM + FAR_M;
        double ahead = 0;
        double left = 0;
        for (int q = 0; q < 4; q++) {
            double free = p.off()
                    .freeM(x + p.aheadM(q) * cos - p.leftM(q) * sin, y + p.aheadM(q) * sin + p.leftM(q) * cos, found);
            if (free < found) {
                found = free;
                ahead = p.aheadM(q);
                left = p.leftM(q);
            }
        }
        double[] nearest = {found, ahead, left};
        double fx = x;
        double fy = y;
        double fc = cos;
        double fs = sin;
        AreaField field = p.off().field;
        double mx = x + p.middleAheadM() * cos - p.middleLeftM() * sin;
        double my = y + p.middleAheadM() * sin + p.middleLeftM() * cos;
        field.jutting.around(mx, my, p.reachM() + Math.max(0, Math.min(found, least.valueM + 1)), (vx, vy) -> {
            double px = vx - fx;
            double py = vy - fy;
            double along = px * fc + py * fs;
            double beside = py * fc - px * fs;
            double gap = p.outsideM(along, beside);
            if (gap < nearest[0]) {
                nearest[0] = gap;
                nearest[1] = Math.max(p.rearM(), Math.min(p.frontM(), along));
                nearest[2] = Math.max(p.rightM(), Math.min(p.leftM(), beside));
            }
        });
        if (nearest[0] < least.valueM) {
            least.part = p;
            least.valueM = nearest[0];
            least.state = (int) Math.rint(i + t * (j - i));
            least.aheadM = nearest[1];
            least.leftM = nearest[2];
        }
        return nearest[0];
    }

    private void between(PassingPart p, int i, int j, double step, Least least) {
        if (least.valueM > 0 && !crosses(p, i, j, least)) {
            return;
        }
        double here = at(p, i, j, 0, least);
        double next = at(p, i, j, 1, least);
        if (!enteredOnly) {
            depth(p, i, j, new Part(0, here, 1, next), step * (j - i), least);
        }
        if (least.valueM > 0) {
            // A chord touches and no state does: thinner than what can be told.
            least.part = p;
            least.valueM = -DEPTH_M;
            least.state = i;
        }
    }

    /** A part of the way between two states, with the gap at its ends. */
    private record Part(double from, double gapM, double to, double gapThereM) {
        /** No gap within it is less, where none changes by more than {@code stepM} all the way. */
        double leastM(double stepM) {
            return 0.5 * (gapM + gapThereM - stepM * (to - from));
        }

        double middle() {
            return 0.5 * (from + to);
        }
    }

    private void depth(PassingPart p, int i, int j, Part part, double step, Least least) {
        double within = Math.max(DEPTH_M, DEPTH_SHARE * Math.abs(Math.min(0, least.valueM)));
        if (part.leastM(step) >= least.valueM - within) {
            return;
        }
        double t = part.middle();
        double g = at(p, i, j, t, least);
        depth(p, i, j, new Part(part.from(), part.gapM(), t, g), step, least);
        depth(p, i, j, new Part(t, g, part.to(), part.gapThereM()), step, least);
    }

    /** Takes the least distance along the chords; whether one touches. */
    private boolean crosses(PassingPart p, int i, int j, Least least) {
        int k = p.unit();
        AreaField field = p.off().field;
        for (int q = 0; q < 4; q++) {
            double ax = axles.xM(k, i, p.aheadM(q), p.leftM(q));
            double ay = axles.yM(k, i, p.aheadM(q), p.leftM(q));
            double bx = axles.xM(k, j, p.aheadM(q), p.leftM(q));
            double by = axles.yM(k, j, p.aheadM(q), p.leftM(q));
            if (p.off().freeM(ax, ay) <= 0) {
                return true;
            }
            double chord = field.chordM(ax, ay, bx, by, least.valueM);
            if (chord <= 0) {
                return true;
            }
            if (chord < least.valueM) {
                take(p, i, chord, p.aheadM(q), p.leftM(q), least);
            }
        }
        double mx = axles.xM(k, i, p.middleAheadM(), p.middleLeftM());
        double my = axles.yM(k, i, p.middleAheadM(), p.middleLeftM());
        boolean[] touched = new boolean[1];
        double step = (j - i) * (axleStepM[k] + (p.leverM() + 1) * turnStepRad[k]);
        field.jutting.around(mx, my, p.reachM() + least.valueM + step, (vx, vy) -> {
            if (!touched[0]) {
                touched[0] = cornerPasses(p, i, j, vx, vy, least);
            }
        });
        return touched[0];
    }

    private static void take(PassingPart p, int i, double value, double ahead, double left, Least least) {
        least.part = p;
        least.valueM = value;
        least.state = i;
        least.aheadM = ahead;
        least.leftM = left;
    }

    /** One corner of the ground on its way past the part, as the part sees it; whether it touches it. */
    private boolean cornerPasses(PassingPart p, int i, int j, double x, double y, Least least) {
        int k = p.unit();
        double px = x - axles.xM[k][i];
        double py = y - axles.yM[k][i];
        double a0 = px * track.cosine[k][i] + py * track.sine[k][i];
        double l0 = py * track.cosine[k][i] - px * track.sine[k][i];
        double qx = x - axles.xM[k][j];
        double qy = y - axles.yM[k][j];
        double a1 = qx * track.cosine[k][j] + qy * track.sine[k][j];
        double l1 = qy * track.cosine[k][j] - qx * track.sine[k][j];
        double here = p.outsideM(a0, l0);
        double next = p.outsideM(a1, l1);
        if (here <= 0 || next <= 0) {
            return true;
        }
        if (0.5 * (here + next - Hypotenuse.of(a1 - a0, l1 - l0)) >= least.valueM) {
            return false;
        }
        double nearest = Double.POSITIVE_INFINITY;
        for (int q = 0; q < 4; q++) {
            nearest = Math.min(
                    nearest,
                    Segments.distance2(
                            a0, l0, a1, l1, p.aheadM(q), p.leftM(q), p.aheadM((q + 1) % 4), p.leftM((q + 1) % 4)));
        }
        nearest = Math.sqrt(nearest);
        if (nearest <= 0) {
            return true;
        }
        if (nearest < least.valueM) {
            take(
                    p,
                    i,
                    nearest,
                    Math.max(p.rearM(), Math.min(p.frontM(), a0)),
                    Math.max(p.rightM(), Math.min(p.leftM(), l0)),
                    least);
        }
        return false;
    }
}
