package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.road.Corner.RoadEnd;

/**
 * Lines to begin a search with: a driver who keeps the front wheels pointed at a place some way ahead on the way the
 * corner is driven, shifted to one side before, in and behind the turn. The same corner gives the same lines in the
 * same order.
 */
final class LineSeeds {
    /** How far before and behind the turn of the way steering may begin and end, meters. */
    static final double BEFORE_M = 35;

    static final double BEHIND_M = 45;
    private static final double FINEST_M = 2.5;
    private static final int MOST_ANGLES = 56;
    private static final double STEP_M = 0.5;
    /** Over this much of the way one shift goes over into the next. */
    private static final double RAMP_M = 15;

    private static final double[] AHEAD_M = {6, 11};
    /** Shifts within the turn, to the outside of it, meters. */
    private static final double[] WIDER_M = {0, 2, -1.5, 4};
    /** The same in turns of more than this. */
    private static final double[] FAR_WIDER_M = {8, 14};

    private static final double SHARP_RAD = Math.toRadians(105);

    /** Shifts to the outside of every bend of a way that bends to both sides, meters. */
    private static final double[] BEND_WIDER_M = {1.5, 3};

    /**
     * So much of the way before and behind a place is looked at for its bend, meters; one of this angle is shifted in
     * full.
     */
    private static final int BEND_M = 12;

    private static final double FULL_BEND_RAD = Math.toRadians(15);

    private final CornerSpace space;
    private final TurningCombination combination;
    private final SteppedWay way;

    LineSeeds(CornerSpace space, TurningCombination combination) {
        this.space = space;
        this.combination = combination;
        way = space.way;
    }

    /**
     * Over what length of the path the front wheels may be turned: enough for the whole turn at their limit, and more.
     */
    double steeringM() {
        double least = Math.abs(space.turnRad)
                        * combination.chain().get(0).hitchToAxleM()
                        / Math.sin(combination.steeringLimitRad())
                + 2 * combination.lockDistanceM();
        return BEFORE_M + Math.max(way.turnTo - way.turnFrom, least) + BEHIND_M;
    }

    /** By how wide they turn. */
    List<List<SteeredLine>> families() {
        double length = steeringM();
        double spacing = Math.max(FINEST_M, length / MOST_ANGLES);
        int angles = (int) Math.ceil(length / spacing) + 1;
        double in = roomAside(space.corner.approach());
        double out = roomAside(space.corner.exit());
        double outside = space.turnRad > 0 ? -1 : 1;
        List<List<SteeredLine>> families = new ArrayList<>();
        for (double wider : WIDER_M) {
            List<SteeredLine> lines = new ArrayList<>();
            for (double before : new double[] {0, 1, -1}) {
                for (double ahead : AHEAD_M) {
                    for (double after : wider == 0 && before == 0 ? new double[] {0, 1, -1} : new double[] {0}) {
                        driven(spacing, angles, ahead, before * in, outside * wider, after * out, false)
                                .ifPresent(lines::add);
                    }
                }
            }
            families.add(lines);
        }
        // Two roads at a sharp angle leave room far ahead, between both.
        for (double wider : Math.abs(space.turnRad) > SHARP_RAD ? FAR_WIDER_M : new double[0]) {
            List<SteeredLine> lines = new ArrayList<>();
            for (double ahead : AHEAD_M) {
                driven(spacing, angles, ahead, 0, outside * wider, 0, false).ifPresent(lines::add);
            }
            families.add(lines);
        }
        // Where a way bends to both sides, the outside of the whole turn is that of one bend only.
        for (double wider : bendsBothWays() ? BEND_WIDER_M : new double[0]) {
            List<SteeredLine> lines = new ArrayList<>();
            for (double ahead : AHEAD_M) {
                for (double before : new double[] {0, 1, -1}) {
                    driven(spacing, angles, ahead, before * in, wider, 0, true).ifPresent(lines::add);
                }
            }
            families.add(lines);
        }
        return families;
    }

    private boolean bendsBothWays() {
        double left = 0;
        double right = 0;
        for (int i = way.turnFrom; i <= way.turnTo; i++) {
            left = Math.max(left, bendRad(i));
            right = Math.min(right, bendRad(i));
        }
        return Math.min(left, -right) > FULL_BEND_RAD;
    }

    /** How far the way turns about a place of it, positive to the left. */
    private double bendRad(int at) {
        int from = Math.max(0, at - BEND_M);
        int to = Math.min(way.heading.length - 1, at + BEND_M);
        return Math.IEEEremainder(way.heading[to] - way.heading[from], 2 * Math.PI);
    }

    /** How far the middle of the way may be left to either side with all tires still on the road. */
    private double roomAside(RoadEnd end) {
        double half = 0.5 * (space.leftM(end) + space.rightM(end));
        return Math.max(0, Math.min(2.5, half - combination.halfTiresM() - 0.2));
    }

    private Optional<SteeredLine> driven(
            double spacing, int angles, double ahead, double in, double inTurn, double out, boolean byBend) {
        double heading = space.corner.approach().headingRad();
        double c = Math.cos(heading);
        double s = Math.sin(heading);
        double x = way.x[way.turnFrom] - BEFORE_M * c - in * s;
        double y = way.y[way.turnFrom] - BEFORE_M * s + in * c;
        double wheelbase = combination.chain().get(0).hitchToAxleM();
        double limit = combination.steeringLimitRad();
        double rate = combination.steeringRatePerM();
        double[] steer = new double[angles];
        double px = x;
        double py = y;
        double theta = heading;
        double delta = 0;
        int near = Math.max(0, way.turnFrom - (int) BEFORE_M);
        int each = (int) Math.round(spacing / STEP_M);
        double step = spacing / each;
        for (int i = 0; i + 1 < angles; i++) {
            steer[i] = delta;
            for (int q = 0; q < each; q++) {
                near = nearest(px, py, near);
                int to = Math.min(way.x.length - 1, near + (int) ahead);
                double aside = aside(to, in, byBend ? inTurn * outsideOfBend(to) : inTurn, out);
                double tx = way.x[to] - aside * Math.sin(way.heading[to]);
                double ty = way.y[to] + aside * Math.cos(way.heading[to]);
                double wanted = Math.IEEEremainder(Math.atan2(ty - py, tx - px) - theta, 2 * Math.PI);
                double held = Math.max(delta - rate * step, Math.min(delta + rate * step, wanted));
                delta = Math.max(-limit, Math.min(limit, held));
                theta += step * Math.sin(delta) / wheelbase;
                px += step * Math.cos(theta + delta);
                py += step * Math.sin(theta + delta);
            }
        }
        steer[0] = 0;
        SteeredLine line = new SteeredLine(x, y, heading, spacing, steer, wheelbase);
        int last = way.x.length - 1;
        double ex = way.x[last] - out * Math.sin(way.heading[last]);
        double ey = way.y[last] + out * Math.cos(way.heading[last]);
        return SteeredLine.closed(line, space.turnRad, limit, rate)
                .map(l -> l.ending(ex, ey, 1, limit, rate).orElse(l));
    }

    /** From 1, to the left, to -1: away from where a way turns. */
    private double outsideOfBend(int at) {
        return Math.max(-1, Math.min(1, -bendRad(at) / FULL_BEND_RAD));
    }

    private double aside(int at, double in, double inTurn, double out) {
        double middle = Math.max(
                0, Math.min(1, Math.min((at - way.turnFrom + RAMP_M) / RAMP_M, (way.turnTo + RAMP_M - at) / RAMP_M)));
        double end = at < 0.5 * (way.turnFrom + way.turnTo) ? in : out;
        return (1 - middle) * end + middle * inTurn;
    }

    private int nearest(double px, double py, int from) {
        int best = from;
        double least = Double.POSITIVE_INFINITY;
        for (int i = from; i < Math.min(way.x.length, from + 25); i++) {
            double d = (way.x[i] - px) * (way.x[i] - px) + (way.y[i] - py) * (way.y[i] - py);
            if (d < least) {
                least = d;
                best = i;
            }
        }
        return best;
    }
}
