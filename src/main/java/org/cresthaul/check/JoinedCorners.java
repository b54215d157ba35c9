package org.cresthaul.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.cresthaul.geometry.Areas;
import org.cresthaul.geometry.Uncertainty;
import org.cresthaul.rig.CombinationLength;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.road.Corner;
import org.cresthaul.road.Corner.RoadEnd;
import org.cresthaul.route.Route;
import org.cresthaul.route.RouteCorner;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * Corners closer than the combination is long, as one: the trailer is still in the first when the tractor is in the
 * next, so that one line has to lead through both. The road between them is that of the first up to the middle and that
 * of the second from there on.
 */
public final class JoinedCorners {
    /** Roads are cut away this far beyond the middle between two corners, and this far to either side, meters. */
    private static final double CUT_M = 600;

    private static final double ASIDE_M = 60;
    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    private final List<RouteCorner> corners;
    private final double longestM;

    public JoinedCorners(Route route, LevelStance stance) {
        corners = route.hazards().stream()
                .filter(h -> h instanceof RouteCorner)
                .map(h -> (RouteCorner) h)
                .sorted(Comparator.comparingDouble(c -> c.place().chainageM()))
                .toList();
        longestM = stance.boosterStates().stream()
                .mapToDouble(b -> CombinationLength.meters(stance, b))
                .max()
                .orElse(0);
    }

    /**
     * A corner as it is judged.
     *
     * @param corner itself, or it and its neighbors as one, at its own place
     * @param with the others' names, in the order of travel
     * @param unknown a neighbor that nobody surveyed, whatever leads into or out of which cannot be called clear
     */
    public record Judging(RouteCorner corner, List<String> with, Optional<String> unknown) {
        public Judging {
            with = List.copyOf(with);
        }

        static Judging alone(RouteCorner corner) {
            return new Judging(corner, List.of(), Optional.empty());
        }
    }

    public Judging of(RouteCorner corner) {
        int at = corners.indexOf(corner);
        if (at < 0 || corner.shape().isEmpty()) {
            return Judging.alone(corner);
        }
        int from = at;
        while (from > 0
                && isNear(from - 1, from)
                && corners.get(from - 1).shape().isPresent()) {
            from--;
        }
        int to = at;
        while (to + 1 < corners.size()
                && isNear(to, to + 1)
                && corners.get(to + 1).shape().isPresent()) {
            to++;
        }
        Optional<String> unknown = Optional.empty();
        if (from > 0 && isNear(from - 1, from)) {
            unknown = Optional.of(corners.get(from - 1).place().name());
        }
        if (to + 1 < corners.size() && isNear(to, to + 1)) {
            unknown = Optional.of(corners.get(to + 1).place().name());
        }
        if (from == to) {
            return new Judging(corner, List.of(), unknown);
        }
        RouteCorner joined = corners.get(from);
        List<String> with = new ArrayList<>();
        for (int i = from; i <= to; i++) {
            joined = i == from ? joined : joined(joined, corners.get(i - 1), corners.get(i));
            if (i != at) {
                with.add(corners.get(i).place().name());
            }
        }
        return new Judging(
                new RouteCorner(
                        corner.place(),
                        joined.shape(),
                        joined.survey(),
                        joined.frame(),
                        joined.source(),
                        Optional.empty()),
                with,
                unknown);
    }

    private static boolean isBackedInto(RouteCorner corner) {
        return corner.shape().map(Corner::backing).orElse(false);
    }

    private boolean isNear(int first, int second) {
        if (isBackedInto(corners.get(first)) || isBackedInto(corners.get(second))) {
            // One stops between them.
            return false;
        }
        double apart = corners.get(second).place().chainageM()
                - corners.get(first).place().chainageM();
        return apart < longestM;
    }

    /**
     * Two corners in the first one's frame.
     *
     * @param last the corner that {@code first} ends with
     */
    private static RouteCorner joined(RouteCorner first, RouteCorner last, RouteCorner next) {
        Corner a = first.shape().orElseThrow();
        double[] lastAt = first.frame().alongRightM(last.frame().origin());
        double[] nextAt = first.frame().alongRightM(next.frame().origin());
        double turned = first.frame().azimuthRad() - next.frame().azimuthRad();
        AffineTransformation move =
                AffineTransformation.rotationInstance(turned).translate(nextAt[0], -nextAt[1]);
        Corner b = next.shape().orElseThrow();
        RoadEnd start = moved(b.approach(), move, turned);
        double midX = 0.5 * (lastAt[0] + nextAt[0]);
        double midY = -0.5 * (lastAt[1] + nextAt[1]);
        Geometry beyond = cut(midX, midY, a.exit().headingRad(), 1);
        Geometry before = cut(midX, midY, start.headingRad(), -1);
        double turn = a.turnRad()
                + b.turnRad()
                + Math.IEEEremainder(start.headingRad() - a.exit().headingRad(), 2 * Math.PI);
        Geometry pavement = both(a.pavement(), b.pavement(), move, beyond, before);
        Geometry opposing = Areas.without(both(a.opposing(), b.opposing(), move, beyond, before), pavement);
        Optional<Geometry> escorted = a.escorted().isEmpty() && b.escorted().isEmpty()
                ? Optional.empty()
                : Optional.of(Areas.union(
                        pavement,
                        both(
                                a.escorted().orElse(a.pavement()),
                                b.escorted().orElse(b.pavement()),
                                move,
                                beyond,
                                before)));
        Geometry obstacles = Areas.union(a.obstacles(), move.transform(b.obstacles()));
        List<Corner.Island> islands = new ArrayList<>(a.ground().islands());
        b.ground().islands().forEach(i -> islands.add(new Corner.Island(move.transform(i.area()), i.heightM())));
        OptionalDouble edge =
                a.ground().edgeHeightM().isPresent() && b.ground().edgeHeightM().isPresent()
                        ? OptionalDouble.of(Math.max(
                                a.ground().edgeHeightM().getAsDouble(),
                                b.ground().edgeHeightM().getAsDouble()))
                        : OptionalDouble.empty();
        Corner shape = new Corner(
                pavement,
                escorted,
                opposing,
                obstacles,
                a.approach(),
                moved(b.exit(), move, turned),
                turn,
                new Corner.Ground(edge, islands),
                guide(a, b, move, midX, midY),
                a.onLeft());
        Uncertainty survey = first.survey().orElseThrow().valueM()
                        >= next.survey().orElseThrow().valueM()
                ? first.survey().get()
                : next.survey().get();
        return new RouteCorner(
                first.place(),
                Optional.of(shape),
                Optional.of(survey),
                first.frame(),
                first.source(),
                Optional.empty());
    }

    private static Geometry both(Geometry a, Geometry b, AffineTransformation move, Geometry beyond, Geometry before) {
        return Areas.union(Areas.without(a, beyond), Areas.without(move.transform(b), before));
    }

    /** The road on one side of a place: {@code way} 1 for what lies ahead along a heading, -1 for what lies behind. */
    private static Geometry cut(double xM, double yM, double headingRad, int way) {
        double c = Math.cos(headingRad);
        double s = Math.sin(headingRad);
        Coordinate[] ring = new Coordinate[5];
        // A hair of both roads is left where they meet, so that they are one.
        double near = way * 0.005;
        double far = way * CUT_M;
        double[][] at = {{near, -ASIDE_M}, {far, -ASIDE_M}, {far, ASIDE_M}, {near, ASIDE_M}};
        for (int i = 0; i < 4; i++) {
            ring[i] = new Coordinate(xM + at[i][0] * c - at[i][1] * s, yM + at[i][0] * s + at[i][1] * c);
        }
        ring[4] = ring[0];
        return GEOMETRY.createPolygon(ring);
    }

    private static RoadEnd moved(RoadEnd end, AffineTransformation move, double turned) {
        Coordinate at = move.transform(new Coordinate(end.xM(), end.yM()), new Coordinate());
        return new RoadEnd(
                at.x,
                at.y,
                end.headingRad() + turned,
                end.leftM(),
                end.rightM(),
                end.escortedLeftM(),
                end.escortedRightM());
    }

    /** The first way up to the middle, then the second from there. */
    private static Optional<LineString> guide(Corner a, Corner b, AffineTransformation move, double midX, double midY) {
        if (a.guide().isEmpty() || b.guide().isEmpty()) {
            return Optional.empty();
        }
        Coordinate[] in = a.guide().get().getCoordinates();
        Coordinate[] out = move.transform(b.guide().get()).getCoordinates();
        List<Coordinate> line = new ArrayList<>();
        double heading = a.exit().headingRad();
        int last = in.length - 1;
        while (last > 0 && along(in[last], midX, midY, heading) > -1 && along(in[last - 1], midX, midY, heading) > -1) {
            last--;
        }
        for (int i = 0; i < last; i++) {
            line.add(in[i]);
        }
        double onward = b.approach().headingRad() + heading(move);
        int next = 0;
        while (next + 1 < out.length && along(out[next + 1], midX, midY, onward) < 1) {
            next++;
        }
        for (int i = next + 1; i < out.length; i++) {
            line.add(out[i]);
        }
        return line.size() < 2
                ? Optional.empty()
                : Optional.of(GEOMETRY.createLineString(line.toArray(new Coordinate[0])));
    }

    private static double heading(AffineTransformation move) {
        Coordinate zero = move.transform(new Coordinate(0, 0), new Coordinate());
        Coordinate one = move.transform(new Coordinate(1, 0), new Coordinate());
        return Math.atan2(one.y - zero.y, one.x - zero.x);
    }

    private static double along(Coordinate at, double midX, double midY, double headingRad) {
        return (at.x - midX) * Math.cos(headingRad) + (at.y - midY) * Math.sin(headingRad);
    }
}
