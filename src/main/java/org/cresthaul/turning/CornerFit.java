package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.cresthaul.geometry.Areas;
import org.cresthaul.road.Corner;
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
        return new CornerSearch(space, combination, enoughM).best(hopelessM);
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
}
