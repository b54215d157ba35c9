package org.cresthaul.turning;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.cresthaul.road.Corner;
import org.cresthaul.road.Corner.RoadEnd;
import org.cresthaul.turning.TurningCombination.AxleLine;
import org.cresthaul.turning.TurningCombination.Body;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * A passage through a corner judged without any of the program's own judging: followed by {@link ReferencePassage} from
 * all straight to all straight, every tire footprint held off everything that is not pavement and every body off
 * obstacles and off opposing lanes that are not borrowed, from {@link #BESIDE_M} before the corner to as far behind it.
 *
 * <p>The least gap is searched over the whole way by bisection: between two states a rectangle stays inside the hull of
 * both, swelled by how far a corner leaves its chord (a step squared over eight, times its largest second difference),
 * and no point goes farther than its speed lets it. What is reported was reached in a state, and the true least is at
 * most {@link #BOUND_M} below. Where something is off, its depth is good to {@link #DEPTH_BOUND_M} or a quarter of it.
 */
final class IndependentCornerJudge {
    static final double BOUND_M = 0.0005;
    static final double DEPTH_BOUND_M = 0.1;
    /** Gaps beyond this are not told apart, meters. */
    static final double FARTHEST_M = 5;
    /**
     * Everything this far before and behind the corner's ends is driven past, meters: as far as anything can be given.
     */
    static final double BESIDE_M = 152;
    /** States of the first look, in steps of the passage. */
    private static final int BLOCK = 16;
    /** Intervals shorter than this are not halved any more, meters; a point moves less than half of it unseen. */
    private static final double SHORTEST_M = 0.0006;

    /** What is thinner is left over from cutting one area out of another, meters. */
    private static final double SPIKE_M = 0.0001;

    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    private final Corner corner;
    private final Optional<LineString> guide;
    private final List<Polygon> islands;
    private final ReferenceKeepOff offPavement;
    private final List<ReferenceKeepOff> offBodies = new ArrayList<>();

    /**
     * @param leastM largest value {@link #FARTHEST_M}; negative when something is where it must not be
     * @param where what is nearest, for a person to read
     * @param stationM xM yM of the lead path and of the axle there
     * @param steerExcessRad rateExcess articulationExcessRad over the limits; zero when kept. That of the front wheels'
     *     rate as a share of the limit, infinite at a kink of the path
     * @param bentAtPathEndM how far some point was off the straight where the given path ended
     * @param drivenOnM how far beyond the given path the combination had to go straight on until it was straight
     * @param askewRad the larger angle between the path's ends and the roads there
     * @param wrongSides islands passed on another side than the guide does; zero without a guide
     */
    record Judgment(
            double leastM,
            String where,
            double stationM,
            double xM,
            double yM,
            double steerExcessRad,
            double rateExcess,
            double articulationExcessRad,
            double bentAtPathEndM,
            double drivenOnM,
            double askewRad,
            int wrongSides) {
        /** Whether all that a driver and the couplings must keep is kept; what rounding leaves is let pass. */
        boolean withinLimits() {
            return steerExcessRad < 2e-4 && rateExcess < 5e-3 && articulationExcessRad < 2e-4 && wrongSides == 0;
        }

        /** Whether the given path itself ends with everything straight and along the roads. */
        boolean whole() {
            return bentAtPathEndM <= 0.001 + 2e-4 && askewRad < 1e-6;
        }
    }

    /**
     * A rectangle of a unit: from the rear to the front of its effective axle, from the right to the left of its
     * middle.
     */
    private record Rectangle(
            String name, int unit, double rearM, double frontM, double rightM, double leftM, ReferenceKeepOff off) {}

    IndependentCornerJudge(Corner corner, boolean escorts) {
        this(corner, escorts, corner.guide());
    }

    /** With a guide of its own for a corner that has none. */
    IndependentCornerJudge(Corner corner, boolean escorts, Optional<LineString> guide) {
        this.corner = corner;
        this.guide = guide;
        Geometry area = escorts ? corner.escorted().orElse(corner.pavement()) : corner.pavement();
        islands = IslandSides.islands(corner, area);
        Geometry longer = wentOn(area, escorts);
        offPavement = ReferenceKeepOff.outside(longer);
        offBodies.add(ReferenceKeepOff.area(corner.obstacles()));
        Geometry opposing = corner.opposing();
        if (escorts && corner.escorted().isPresent() && !opposing.isEmpty()) {
            Geometry left = OverlayNGRobust.overlay(opposing, longer, OverlayNG.DIFFERENCE);
            // Slivers along a common edge are no lane, also beside a pole that stands in one or hanging on a piece of
            // it.
            opposing = IntStream.range(0, left.getNumGeometries())
                    .mapToObj(left::getGeometryN)
                    .filter(part -> !part.buffer(-0.01).isEmpty())
                    .map(IndependentCornerJudge::withoutSpikes)
                    .reduce((Geometry) GEOMETRY.createPolygon(), Geometry::union);
        }
        offBodies.add(ReferenceKeepOff.area(opposing));
        offBodies.removeIf(ReferenceKeepOff::nothing);
    }

    /** What is left of an area without strips thinner than {@link #SPIKE_M}. */
    private static Geometry withoutSpikes(Geometry area) {
        BufferParameters sharp = new BufferParameters();
        sharp.setJoinStyle(BufferParameters.JOIN_MITRE);
        Geometry core = BufferOp.bufferOp(area, -0.5 * SPIKE_M, sharp);
        return BufferOp.bufferOp(core, 0.5 * SPIKE_M, sharp);
    }

    /** The area, its roads going on straight at their width beyond what is drawn. */
    private Geometry wentOn(Geometry area, boolean escorts) {
        Geometry longer = area;
        for (int way : new int[] {-1, 1}) {
            RoadEnd end = way < 0 ? corner.approach() : corner.exit();
            double left = escorts ? end.escortedLeftM() : end.leftM();
            double right = escorts ? end.escortedRightM() : end.rightM();
            double c = Math.cos(end.headingRad());
            double s = Math.sin(end.headingRad());
            double drawn = 0;
            for (Coordinate p : area.getCoordinates()) {
                double along = way * ((p.x - end.xM()) * c + (p.y - end.yM()) * s);
                double across = -(p.x - end.xM()) * s + (p.y - end.yM()) * c;
                if (across > -right - 0.01 && across < left + 0.01) {
                    drawn = Math.max(drawn, along);
                }
            }
            // The last of a long drawn road is its end, perhaps rounded, and not the road.
            double from = way * (drawn > 150 ? drawn - 30 : drawn - 0.05);
            double to = way * (drawn + 1500);
            Coordinate[] ring = new Coordinate[5];
            double[][] at = {{from, -right}, {to, -right}, {to, left}, {from, left}, {from, -right}};
            for (int i = 0; i < 5; i++) {
                ring[i] =
                        new Coordinate(end.xM() + at[i][0] * c - at[i][1] * s, end.yM() + at[i][0] * s + at[i][1] * c);
            }
            longer = OverlayNGRobust.overlay(longer, GEOMETRY.createPolygon(ring), OverlayNG.UNION);
        }
        return longer;
    }

    Judgment of(TurningCombination combination, LeadPath path) {
        ReferencePassage passage = new ReferencePassage(combination, path);
        Search search = new Search(passage);
        for (Rectangle r : rectangles(combination)) {
            search.look(r);
        }
        double[] at = passage.at(search.stationM);
        double[] axle = passage.axle(at, search.unit);
        double[] start = passage.at(0);
        double askew = Math.max(
                Math.abs(Math.IEEEremainder(start[2] - corner.approach().headingRad(), 2 * Math.PI)),
                Math.abs(Math.IEEEremainder(
                        passage.endHeadingRad() - corner.exit().headingRad(), 2 * Math.PI)));
        // From straight to the limit over the lock distance (docs/file-formats.md).
        double mostRate = combination.steerLimitRad() / combination.lockDistanceM();
        double articulation = 0;
        for (int k = 0; k < passage.mostArticulationRad.length; k++) {
            articulation = Math.max(
                    articulation,
                    passage.mostArticulationRad[k]
                            - combination.articulationLimitRad().get(k));
        }
        return new Judgment(
                search.leastM,
                search.where,
                search.stationM,
                axle[0],
                axle[1],
                Math.max(0, passage.mostSteerRad - combination.steerLimitRad()),
                Math.max(0, passage.mostWheelRatePerM / mostRate - 1),
                articulation,
                passage.bentAtPathEndM,
                Math.max(0, passage.straightFromM - passage.pathLengthM),
                askew,
                wrongSides(passage));
    }

    private int wrongSides(ReferencePassage passage) {
        if (guide.isEmpty() || islands.isEmpty()) {
            return 0;
        }
        List<Coordinate> line = new ArrayList<>();
        // A line over an island's middle (422918: 2 mm beside it, tires astride) is on the side it is on, not its
        // chords.
        for (double s = passage.steersFromM; s <= passage.straightFromM + 0.5; s += 0.05) {
            double[] at = passage.at(s);
            line.add(new Coordinate(at[0], at[1]));
        }
        return IslandSides.wrong(corner, islands, guide.get(), line);
    }

    private List<Rectangle> rectangles(TurningCombination combination) {
        List<Rectangle> all = new ArrayList<>();
        for (int k = 0; k < combination.units().size(); k++) {
            String unit = combination.units().get(k).name().word();
            for (AxleLine a : combination.units().get(k).tires()) {
                double rear = a.aheadM() - a.contactM() / 2;
                double front = a.aheadM() + a.contactM() / 2;
                double inner = a.halfWidthM() - a.treadM();
                all.add(new Rectangle(unit + " left tires", k, rear, front, inner, a.halfWidthM(), offPavement));
                all.add(new Rectangle(unit + " right tires", k, rear, front, -a.halfWidthM(), -inner, offPavement));
            }
            for (Body b : combination.units().get(k).bodies()) {
                for (ReferenceKeepOff off : offBodies) {
                    all.add(new Rectangle(
                            unit + " " + b.part(), k, b.rearM(), b.frontM(), -b.halfWidthM(), b.halfWidthM(), off));
                }
            }
        }
        return all;
    }

    /** The least gap over the whole way, over one rectangle after the other. */
    private final class Search {
        private final ReferencePassage passage;
        private final double fromM;
        private final double toM;
        private double leastM = FARTHEST_M;
        private String where = "nothing near";
        private double stationM;
        private int unit;

        Search(ReferencePassage passage) {
            this.passage = passage;
            double[] start = passage.at(passage.steersFromM);
            double length = passage.combination.lengthM();
            RoadEnd in = corner.approach();
            RoadEnd out = corner.exit();
            double before = (start[0] - in.xM()) * Math.cos(in.headingRad())
                    + (start[1] - in.yM()) * Math.sin(in.headingRad())
                    + BESIDE_M;
            fromM = Math.min(0, passage.steersFromM - Math.max(0, before));
            double[] end = passage.at(passage.straightFromM);
            double beyond = BESIDE_M
                    + length
                    - (end[0] - out.xM()) * Math.cos(out.headingRad())
                    - (end[1] - out.yM()) * Math.sin(out.headingRad());
            toM = Math.max(passage.pathLengthM, passage.straightFromM + Math.max(0, beyond));
        }

        /** Part of the way, how far a corner leaves its chord per meter squared, and how fast one moves at most. */
        private record Part(double from, double to, double bend, double speed) {}

        private Coordinate[] outline(Rectangle r, double station) {
            double[] a = passage.axle(passage.at(station), r.unit);
            return new Coordinate[] {
                point(a, r.rearM, r.rightM),
                point(a, r.frontM, r.rightM),
                point(a, r.frontM, r.leftM),
                point(a, r.rearM, r.leftM)
            };
        }

        private static Coordinate point(double[] axle, double aheadM, double leftM) {
            return new Coordinate(
                    axle[0] + aheadM * axle[2] - leftM * axle[3], axle[1] + aheadM * axle[3] + leftM * axle[2]);
        }

        void look(Rectangle r) {
            Deque<Part> parts = new ArrayDeque<>();
            double first = passage.steersFromM;
            double last = passage.lastStateM();
            int n = passage.states();
            Coordinate[][] at = new Coordinate[n][];
            for (int i = 0; i < n; i++) {
                double[] axle = passage.axleOfState(i, r.unit);
                at[i] = new Coordinate[] {
                    point(axle, r.rearM, r.rightM),
                    point(axle, r.frontM, r.rightM),
                    point(axle, r.frontM, r.leftM),
                    point(axle, r.rearM, r.leftM)
                };
            }
            parts.add(new Part(fromM, first, 0, 1));
            parts.add(new Part(last, toM, 0, 1));
            for (int i = 0; i + 1 < n; i += BLOCK) {
                int to = Math.min(n - 1, i + BLOCK);
                double bend = 0;
                double speed = 0;
                for (int k = Math.max(1, i); k <= Math.min(n - 2, to); k++) {
                    for (int c = 0; c < 4; c++) {
                        bend = Math.max(
                                bend,
                                Math.hypot(
                                        at[k - 1][c].x - 2 * at[k][c].x + at[k + 1][c].x,
                                        at[k - 1][c].y - 2 * at[k][c].y + at[k + 1][c].y));
                    }
                }
                for (int k = i; k < to; k++) {
                    for (int c = 0; c < 4; c++) {
                        speed = Math.max(speed, at[k][c].distance(at[k + 1][c]));
                    }
                }
                double step = ReferencePassage.STEP_M;
                parts.add(new Part(first + i * step, first + to * step, 1.1 * bend / step / step, 1.01 * speed / step));
                note(r, first + i * step);
            }
            note(r, fromM);
            note(r, toM);
            while (!parts.isEmpty()) {
                Part p = parts.poll();
                if (p.to - p.from < (leastM > 0 ? SHORTEST_M : boundM() / 2) || atLeastM(r, p) >= leastM - boundM()) {
                    continue;
                }
                double middle = (p.from + p.to) / 2;
                note(r, middle);
                parts.add(new Part(p.from, middle, p.bend, p.speed));
                parts.add(new Part(middle, p.to, p.bend, p.speed));
            }
        }

        private double boundM() {
            return leastM > 0 ? BOUND_M : Math.max(DEPTH_BOUND_M, -leastM / 4);
        }

        private void note(Rectangle r, double station) {
            double room = r.off.roomM(outline(r, station), Math.max(leastM, 0.001));
            if (room < leastM) {
                leastM = room;
                where = r.name;
                stationM = station;
                unit = r.unit;
            }
        }

        /** No gap on this part of the way is smaller. */
        private double atLeastM(Rectangle r, Part p) {
            Coordinate[] a = outline(r, p.from);
            Coordinate[] b = outline(r, p.to);
            double limit = Math.max(leastM, 0.001);
            double sag = p.bend * (p.to - p.from) * (p.to - p.from) / 8;
            double d = limit + sag;
            if (r.rearM < 0 && r.frontM > 0) {
                // The side is nearest to what it turns about beside the axle: cut there, hulls hold little more.
                Rectangle rear = new Rectangle(r.name, r.unit, r.rearM, 0, r.rightM, r.leftM, r.off);
                Rectangle front = new Rectangle(r.name, r.unit, 0, r.frontM, r.rightM, r.leftM, r.off);
                d = r.off.edgeM(Hull.of(outline(rear, p.from), outline(rear, p.to)), d);
                d = d == 0 ? 0 : r.off.edgeM(Hull.of(outline(front, p.from), outline(front, p.to)), d);
            } else {
                d = r.off.edgeM(Hull.of(a, b), d);
            }
            if (d > 0 && !r.off.forbids(a[0])) {
                return d - sag;
            }
            if (leastM > 0 && d == 0) {
                return Double.NEGATIVE_INFINITY;
            }
            // Something is off already: how deep it gets is bounded by how far a point goes.
            double travel = p.speed * (p.to - p.from);
            return (r.off.roomM(a, travel + 0.01) + r.off.roomM(b, travel + 0.01) - travel) / 2;
        }
    }

    /** Convex hull of two outlines, counter-clockwise (A. M. Andrew's monotone chain). */
    private static final class Hull {
        private Hull() {}

        static Coordinate[] of(Coordinate[] a, Coordinate[] b) {
            Coordinate[] all = new Coordinate[a.length + b.length];
            System.arraycopy(a, 0, all, 0, a.length);
            System.arraycopy(b, 0, all, a.length, b.length);
            java.util.Arrays.sort(all);
            Coordinate[] hull = new Coordinate[2 * all.length];
            int n = 0;
            for (Coordinate p : all) {
                while (n > 1 && cross(hull[n - 2], hull[n - 1], p) <= 0) {
                    n--;
                }
                hull[n++] = p;
            }
            int lower = n + 1;
            for (int i = all.length - 2; i >= 0; i--) {
                while (n >= lower && cross(hull[n - 2], hull[n - 1], all[i]) <= 0) {
                    n--;
                }
                hull[n++] = all[i];
            }
            return java.util.Arrays.copyOf(hull, n - 1);
        }

        private static double cross(Coordinate o, Coordinate a, Coordinate b) {
            return (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x);
        }
    }
}
