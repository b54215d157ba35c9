package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.cresthaul.geometry.Areas;
import org.cresthaul.road.Corner;
import org.cresthaul.road.Corner.RoadEnd;
import org.cresthaul.turning.TurningCombination.AxleLine;
import org.cresthaul.turning.TurningCombination.Body;
import org.cresthaul.turning.TurningCombination.PlanUnit;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;

/**
 * The best way round a corner: of the lines of {@link CornerLine}, the one that leaves the most room between tyres and
 * the edge of the pavement, and between bodies and what they must miss. More room than {@code enoughM} is not looked for.
 * The same question gives the same answer: a fixed grid over the family, then from its best places a search that moves
 * one or two of the five measures at a time with ever smaller steps.
 *
 * @param line the best line
 * @param path that line laid out
 * @param track the combination on it, every {@link Following#STATE_M}
 * @param combination what was driven round
 * @param gaps the least room of every unit's tyres and bodies; negative: it encroaches
 * @param escorts whether opposing lanes were free to use
 * @param withinLimits whether steering and couplings allow it
 * @param usesOpposing whether some tyre or body is on an opposing lane; only with escorts
 * @param offsetOutM of the line on the exit, from its centre point, positive to the left
 */
public record CornerFit(
        CornerLine line,
        LeadPath path,
        Track track,
        TurningCombination combination,
        List<Gap> gaps,
        boolean escorts,
        boolean withinLimits,
        boolean usesOpposing,
        double offsetOutM) {
    /** What a gap is measured to. */
    public enum Against {
        PAVEMENT("the edge of the pavement"),
        OBSTACLE("an obstacle"),
        OPPOSING("the opposing lane");

        private final String word;

        Against(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    /**
     * The least room of one unit's tyres or bodies.
     *
     * @param unit index into the chain
     * @param part "tyres", or what body
     * @param side "left" or "right"
     * @param valueM negative: so far it is where it must not be
     * @param xM yM the place, in the corner's frame
     * @param state of the track
     */
    public record Gap(
            int unit, String part, String side, Against against, double valueM, double xM, double yM, int state) {}

    private static final GeometryFactory GEOMETRY = new GeometryFactory();
    /** How many of the grid's places are looked into. */
    private static final int SEEDS = 5;

    private static final double LAST_STEP = 0.04;
    /** Sideways steps between states hide less than this, metres: half a step, squared, over a 3 m curve. */
    static final double SAMPLING_M = 0.003;

    public CornerFit {
        gaps = List.copyOf(gaps);
    }

    /**
     * The best way round.
     *
     * @param escorts whether opposing lanes are held free
     * @param enoughM room beyond which no better line is looked for, metres
     */
    public static CornerFit of(Corner corner, TurningCombination combination, boolean escorts, double enoughM) {
        return of(corner, combination, escorts, enoughM, Double.NEGATIVE_INFINITY);
    }

    /**
     * As {@link #of(Corner, TurningCombination, boolean, double)}, for an answer that has another beside it.
     *
     * @param hopelessM when not even this room is in sight on the grid over the family, the best line of the grid is taken
     *     as it is
     */
    public static CornerFit of(
            Corner corner, TurningCombination combination, boolean escorts, double enoughM, double hopelessM) {
        return of(new CornerSpace(corner, escorts), combination, enoughM, hopelessM);
    }

    /** The same in a space that several combinations are tried in. */
    public static CornerFit of(
            CornerSpace space, TurningCombination combination, double enoughM, double hopelessM) {
        return new Search(space, combination, enoughM).best(hopelessM);
    }

    /** A given line judged as it is. */
    static CornerFit judge(CornerSpace space, TurningCombination combination, CornerLine line) {
        LeadPath path = line.path(space.corner, combination);
        Track track = Following.along(combination.chain(), path);
        List<Gap> gaps = new ArrayList<>();
        boolean borrows = false;
        for (int k = 0; k < combination.units().size(); k++) {
            PlanUnit unit = combination.units().get(k);
            gaps.add(tyreGap(space, track, k, unit));
            Optional<Gap> body = bodyGap(space, track, k, unit);
            body.ifPresent(gaps::add);
            borrows |= space.escorts && borrows(space, track, k, unit);
        }
        return new CornerFit(
                line,
                path,
                track,
                combination,
                gaps,
                space.escorts,
                LineTrial.limitLossM(track, combination) == 0,
                borrows,
                CornerLine.offsetOutM(
                        space.corner, track.leadXM(track.size() - 1), track.leadYM(track.size() - 1)));
    }

    /** The least room of all. */
    public Gap tightest() {
        return gaps.stream().min(Comparator.comparingDouble(Gap::valueM)).orElseThrow();
    }

    private static Gap tyreGap(CornerSpace space, Track track, int k, PlanUnit unit) {
        Gap least = null;
        for (AxleLine axle : unit.tyres()) {
            for (int side = -1; side <= 1; side += 2) {
                Coordinate[] path = new Coordinate[track.size()];
                for (int i = 0; i < track.size(); i++) {
                    path[i] = SweptArea.place(track, i, k, axle.aheadM(), side * axle.halfWidthM());
                    double of = least == null ? Double.POSITIVE_INFINITY : least.valueM();
                    double room = space.tyres.insideM(path[i].x, path[i].y, Double.NEGATIVE_INFINITY, of);
                    least = closer(least, k, "tyres", side, Against.PAVEMENT, room, path[i].x, path[i].y, i);
                }
                least = cornersNearPath(space.tyres, path, least, k, side);
                if (least.valueM() > 0 && least.valueM() <= 0.5 * longest(path) && !space.pavement.covers(GEOMETRY.createLineString(path))) {
                    // A strip thinner than a step is crossed between two states.
                    Coordinate at = space.pavement.getBoundary().intersection(GEOMETRY.createLineString(path))
                            .getCoordinate();
                    least = new Gap(k, "tyres", side > 0 ? "left" : "right", Against.PAVEMENT, -SAMPLING_M,
                            at == null ? path[0].x : at.x, at == null ? path[0].y : at.y, least.state());
                }
            }
        }
        return least;
    }

    private static double longest(Coordinate[] path) {
        double longest = 0;
        for (int i = 1; i < path.length; i++) {
            longest = Math.max(longest, path[i].distance(path[i - 1]));
        }
        return longest;
    }

    private static Gap closer(
            Gap least, int k, String part, int side, Against against, double room, double x, double y, int state) {
        return least != null && least.valueM() <= room
                ? least
                : new Gap(k, part, side > 0 ? "left" : "right", against, room, x, y, state);
    }

    /** Corners of the pavement's edge beside the straight pieces between states. */
    private static Gap cornersNearPath(AreaField field, Coordinate[] path, Gap soFar, int k, int side) {
        Gap least = soFar;
        if (least.valueM() <= 0) {
            return least;
        }
        double step = longest(path);
        for (int v = 0; v < field.corners(); v++) {
            double x = field.cornerX(v);
            double y = field.cornerY(v);
            for (int i = 1; i < path.length; i++) {
                double gx = x - path[i].x;
                double gy = y - path[i].y;
                double spare = Math.sqrt(gx * gx + gy * gy) - least.valueM() - step;
                if (spare > 0) {
                    // Too far, and so are the next ones: a step brings it no nearer than its length.
                    i += (int) Math.min(path.length, spare / step);
                    continue;
                }
                double ux = path[i].x - path[i - 1].x;
                double uy = path[i].y - path[i - 1].y;
                double px = x - path[i - 1].x;
                double py = y - path[i - 1].y;
                double square = ux * ux + uy * uy;
                double t = square > 0 ? Math.max(0, Math.min(1, (px * ux + py * uy) / square)) : 0;
                double d = Math.sqrt((px - t * ux) * (px - t * ux) + (py - t * uy) * (py - t * uy));
                least = closer(least, k, "tyres", side, Against.PAVEMENT, d, path[i].x, path[i].y, i);
            }
        }
        return least;
    }

    private static Optional<Gap> bodyGap(CornerSpace space, Track track, int k, PlanUnit unit) {
        Gap least = null;
        for (Body body : unit.bodies()) {
            for (int i = 0; i < track.size(); i++) {
                for (Against against : List.of(Against.OBSTACLE, Against.OPPOSING)) {
                    AreaField field = against == Against.OBSTACLE ? space.obstacles : space.opposing;
                    if (field.isEmpty()) {
                        continue;
                    }
                    double of = least == null ? Double.POSITIVE_INFINITY : least.valueM();
                    double room = LineTrial.bodyM(field, track.axleXM(i, k), track.axleYM(i, k), track.cos(i, k),
                            track.sin(i, k), body.rearM(), body.frontM(), body.halfWidthM(), Double.NEGATIVE_INFINITY, of);
                    if (room < of) {
                        least = placed(field, track, i, k, body, against, room);
                    }
                }
            }
        }
        if (least != null && least.valueM() > 0 && least.valueM() <= halfStepM(track, k, unit)) {
            // What no state touches may be passed over between two.
            Geometry swept = SweptArea.ofBodies(track, k, unit);
            Geometry touched = Areas.common(swept, space.keepOut);
            if (!touched.isEmpty()) {
                Coordinate at = touched.getCoordinate();
                least = new Gap(k, least.part(), least.side(), least.against(), -SAMPLING_M, at.x, at.y, least.state());
            }
        }
        return Optional.ofNullable(least);
    }

    /** No place of a unit's bodies is, between two states, farther than this from where it is at one of them. */
    private static double halfStepM(Track track, int k, PlanUnit unit) {
        double most = 0;
        for (Body body : unit.bodies()) {
            Coordinate[] last = SweptArea.corners(track, 0, k, body);
            for (int i = 1; i < track.size(); i++) {
                Coordinate[] now = SweptArea.corners(track, i, k, body);
                for (int q = 0; q < 4; q++) {
                    most = Math.max(most, now[q].distance(last[q]));
                }
                last = now;
            }
        }
        return 0.5 * most;
    }

    private static Gap placed(
            AreaField field, Track track, int i, int k, Body body, Against against, double room) {
        Coordinate[] corners = SweptArea.corners(track, i, k, body);
        Coordinate at = corners[0];
        int side = 1;
        double nearest = Double.POSITIVE_INFINITY;
        for (int q = 0; q < 4; q++) {
            double d = Math.abs(-field.insideM(corners[q].x, corners[q].y) - room);
            if (d < nearest) {
                nearest = d;
                at = corners[q];
                side = q == 0 || q == 3 ? 1 : -1;
            }
        }
        for (int v = 0; v < field.corners(); v++) {
            double px = field.cornerX(v) - track.axleXM(i, k);
            double py = field.cornerY(v) - track.axleYM(i, k);
            double along = px * track.cos(i, k) + py * track.sin(i, k);
            double left = py * track.cos(i, k) - px * track.sin(i, k);
            double across = Math.abs(left) - body.halfWidthM();
            double beyond = Math.max(body.rearM() - along, along - body.frontM());
            double gap = across > 0 && beyond > 0
                    ? Math.sqrt(across * across + beyond * beyond)
                    : Math.max(across, beyond);
            if (Math.abs(gap - room) < nearest) {
                nearest = Math.abs(gap - room);
                at = new Coordinate(field.cornerX(v), field.cornerY(v));
                side = left > 0 ? 1 : -1;
            }
        }
        return new Gap(k, body.part(), side > 0 ? "left" : "right", against, room, at.x, at.y, i);
    }

    private static boolean borrows(CornerSpace space, Track track, int k, PlanUnit unit) {
        AreaField field = new AreaField(space.corner.opposing());
        if (field.isEmpty()) {
            return false;
        }
        for (int i = 0; i < track.size(); i++) {
            for (Body body : unit.bodies()) {
                if (LineTrial.bodyM(field, track.axleXM(i, k), track.axleYM(i, k), track.cos(i, k), track.sin(i, k),
                        body.rearM(), body.frontM(), body.halfWidthM(), Double.NEGATIVE_INFINITY, 1) < 0) {
                    return true;
                }
            }
        }
        return false;
    }

    /** The path of the lead point as a line. */
    public LineString leadLine() {
        Coordinate[] at = new Coordinate[track.size()];
        for (int i = 0; i < at.length; i++) {
            at[i] = new Coordinate(track.leadXM(i), track.leadYM(i));
        }
        return GEOMETRY.createLineString(at);
    }

    /** What is searched: radius, swing in, swing out, offset in, and the fifth that lays the line along the road. */
    static final class Search {
        private final CornerSpace space;
        private final TurningCombination combination;
        private final double enoughM;
        private final double[] least;
        private final double[] most;
        /** Whether the fifth measure is the offset on the exit; on a nearly parallel exit it is the start instead. */
        private final boolean byExit;

        private final double turnSin;

        private record Found(double[] at, double clearanceM) {}

        Search(CornerSpace space, TurningCombination combination, double enoughM) {
            this.space = space;
            this.combination = combination;
            this.enoughM = enoughM;
            Corner corner = space.corner;
            turnSin = Math.sin(corner.exit().headingRad() - corner.approach().headingRad());
            byExit = Math.abs(turnSin) > CornerLine.NEARLY_PARALLEL;
            double tightest = 1.02 / combination.tightestPerM();
            double[] in = offsets(corner.approach());
            double[] out = offsets(corner.exit());
            boolean round = Math.abs(corner.turnRad()) < Math.toRadians(20)
                    || Math.abs(corner.turnRad()) > Math.toRadians(150)
                    || corner.pavement().getNumGeometries() == 1
                            && corner.pavement() instanceof org.locationtech.jts.geom.Polygon p
                            && p.getNumInteriorRing() > 0;
            double swing = Math.toRadians(round ? 75 : 30);
            least = new double[] {tightest, 0, 0, in[0], byExit ? out[0] : -45};
            most = new double[] {Math.max(60, 2.5 * tightest), swing, swing, in[1], byExit ? out[1] : 5};
        }

        private double[] offsets(RoadEnd end) {
            double half = combination.units().get(0).tyres().get(0).halfWidthM();
            double lo = -space.rightM(end) + half;
            double hi = space.leftM(end) - half;
            return lo <= hi ? new double[] {lo, hi} : new double[] {0.5 * (lo + hi), 0.5 * (lo + hi)};
        }

        CornerFit best(double hopelessM) {
            List<Found> seeds = new ArrayList<>();
            double bar = Double.NEGATIVE_INFINITY;
            for (double radius : radii()) {
                // Gentle lines come first: the first that leaves enough room is taken.
                for (double in : steps(least[1], most[1], 4)) {
                    for (double out : steps(least[2], most[2], 4)) {
                        double[] shape = {radius, in, out, 0, 0};
                        if (bar >= enoughM) {
                            break;
                        }
                        LineTrial trial = trial(shape);
                        Found found = bestPlace(trial, shape, bar - 1.0);
                        if (found != null) {
                            seeds.add(found);
                            seeds.sort(Comparator.comparingDouble(f -> -f.clearanceM));
                            if (seeds.size() > SEEDS) {
                                seeds.remove(SEEDS);
                            }
                            bar = seeds.get(0).clearanceM;
                        }
                    }
                }
            }
            Found best = seeds.isEmpty() || seeds.get(0).clearanceM >= hopelessM ? null : seeds.get(0);
            boolean hopeless = best != null;
            for (Found seed : seeds) {
                if (!hopeless && (best == null || best.clearanceM < enoughM)) {
                    Found near = climb(seed, 1, 0.25);
                    Found found = best == null || near.clearanceM > best.clearanceM - 0.05 ? climb(near, 0.25, LAST_STEP) : near;
                    best = best == null || found.clearanceM > best.clearanceM ? found : best;
                }
            }
            double[] at = best != null
                    ? best.at
                    : new double[] {least[0], 0, 0, 0.5 * (least[3] + most[3]), 0.5 * (least[4] + most[4])};
            CornerLine line = line(trial(at), at);
            return judge(space, combination, line);
        }

        private double[] radii() {
            double[] radii = new double[7];
            for (int i = 0; i < radii.length; i++) {
                radii[i] = most[0] * Math.pow(least[0] / most[0], i / (radii.length - 1.0));
            }
            return radii;
        }

        private static double[] steps(double from, double to, int count) {
            double[] steps = new double[to > from ? count : 1];
            for (int i = 0; i < steps.length; i++) {
                steps[i] = steps.length == 1 ? from : from + (to - from) * i / (steps.length - 1);
            }
            return steps;
        }

        private LineTrial trial(double[] at) {
            return new LineTrial(space, combination, new CornerLine(at[0], at[1], at[2], 0, 0));
        }

        private Found bestPlace(LineTrial trial, double[] shape, double bar) {
            double[] best = null;
            double most4 = bar;
            double reach = byExit ? 0.6 : 4;
            int across = (int) Math.max(3, Math.min(9, (most[3] - least[3]) / 0.6 + 1));
            int along = (int) Math.max(3, Math.min(byExit ? 9 : 24, (most[4] - least[4]) / reach + 1));
            for (double in : steps(least[3], most[3], across)) {
                for (double place : steps(least[4], most[4], along)) {
                    double[] at = {shape[0], shape[1], shape[2], in, place};
                    double clearance = clearance(trial, at, most4);
                    if (clearance > most4) {
                        most4 = clearance;
                        best = at;
                    }
                }
            }
            return best == null ? null : new Found(best, most4);
        }

        /** Lays the trial's shape so that it has the offsets wanted. */
        private CornerLine line(LineTrial trial, double[] at) {
            double start = at[4];
            if (byExit) {
                CornerLine zero = new CornerLine(at[0], at[1], at[2], at[3], 0);
                double out = offsetOut(trial, zero);
                // Moving the start on by one moves the exit's offset by the sine between the roads.
                start = (out - at[4]) / turnSin;
            }
            return new CornerLine(at[0], at[1], at[2], at[3], start);
        }

        private double offsetOut(LineTrial trial, CornerLine line) {
            double[] from = from(line);
            return CornerLine.offsetOutM(space.corner, from[0] + trial.endXM, from[1] + trial.endYM);
        }

        private double[] from(CornerLine line) {
            RoadEnd in = space.corner.approach();
            double c = Math.cos(in.headingRad());
            double s = Math.sin(in.headingRad());
            return new double[] {
                in.xM() + line.startM() * c - line.offsetInM() * s, in.yM() + line.startM() * s + line.offsetInM() * c
            };
        }

        private double clearance(LineTrial trial, double[] at, double enough) {
            double[] from = from(line(trial, at));
            return Math.min(enoughM, trial.clearanceM(from[0], from[1], enough));
        }

        /** Moves one measure, or two together, as long as that gains room; then halves the steps. */
        private Found climb(Found seed, double from, double until) {
            double[] at = seed.at.clone();
            double reached = seed.clearanceM;
            double[] step = {
                0.12 * at[0], (most[1] - least[1]) / 6, (most[2] - least[2]) / 6, 0.3, byExit ? 0.3 : 2
            };
            LineTrial here = trial(at);
            for (double size = from; size >= until && reached < enoughM; size /= 2) {
                boolean moved = true;
                for (int round = 0; moved && round < 12 && reached < enoughM; round++) {
                    moved = false;
                    for (int[] way : WAYS) {
                        double[] next = at.clone();
                        boolean shape = false;
                        for (int d = 0; d < 5; d++) {
                            if (way[d] != 0) {
                                next[d] = Math.max(least[d], Math.min(most[d], next[d] + way[d] * size * step[d]));
                                shape |= d < 3 && next[d] != at[d];
                            }
                        }
                        if (Arrays.equals(next, at)) {
                            continue;
                        }
                        LineTrial trial = shape ? trial(next) : here;
                        double clearance = clearance(trial, next, reached);
                        if (clearance > reached + 1e-4) {
                            at = next;
                            reached = clearance;
                            here = trial;
                            moved = true;
                        }
                    }
                }
            }
            return new Found(at, reached);
        }

        private static final int[][] WAYS = ways();

        private static int[][] ways() {
            List<int[]> ways = new ArrayList<>();
            // Places first: they need no following.
            for (int a : new int[] {3, 4, 0, 1, 2}) {
                for (int sign = -1; sign <= 1; sign += 2) {
                    int[] way = new int[5];
                    way[a] = sign;
                    ways.add(way);
                }
            }
            int[][] pairs = {{3, 4}, {0, 4}, {0, 3}, {1, 3}, {2, 4}, {1, 2}};
            for (int[] pair : pairs) {
                for (int signs = 0; signs < 4; signs++) {
                    int[] way = new int[5];
                    way[pair[0]] = (signs & 1) == 0 ? 1 : -1;
                    way[pair[1]] = (signs & 2) == 0 ? 1 : -1;
                    ways.add(way);
                }
            }
            return ways.toArray(new int[0][]);
        }
    }
}
