package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.cresthaul.road.Corner;
import org.cresthaul.road.Corner.RoadEnd;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.geom.util.PolygonExtracter;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.UnaryUnionNG;

/**
 * A corner as a survey might give it: an outline of jittered points along a road that turns once or twice, wider on the
 * inside of the bends, with grates, slots and thin tongues in it, islands on the center line and poles beside it.
 */
final class RandomOutline {
    private static final GeometryFactory GEOMETRY = new GeometryFactory();
    private static final PrecisionModel GRID = new PrecisionModel(100_000);
    private static final double DRAWN_M = 470;

    private final SplittableRandom random;
    /**
     * Places every meter: x, y, heading, and a bend's share (0 straight, ±1 in the middle of a bend, its sign its
     * hand).
     */
    private final List<double[]> middle = new ArrayList<>();

    private RandomOutline(SplittableRandom random) {
        this.random = random;
    }

    static RandomCorners.Case of(
            long seed, SplittableRandom random, TurningCombination rig, double ease, boolean escorts) {
        return new RandomOutline(random).draw(seed, rig, ease, escorts);
    }

    private RandomCorners.Case draw(long seed, TurningCombination rig, double ease, boolean escorts) {
        double hand = random.nextBoolean() ? 1 : -1;
        boolean twice = random.nextInt(4) == 0;
        double first = hand * Math.toRadians(random.nextDouble(30, twice ? 100 : 150));
        double second =
                twice ? (random.nextInt(4) == 0 ? 1 : -1) * hand * Math.toRadians(random.nextDouble(30, 100)) : 0;
        double[] at = {0, 0, 0};
        int straight = 70;
        run(at, straight, 0);
        bend(at, first, 11 + 16 * ease + random.nextDouble(0, 8));
        if (twice) {
            run(at, random.nextInt(5, 45), 0);
            bend(at, second, 11 + 16 * ease + random.nextDouble(0, 8));
        }
        run(at, straight, 0);
        boolean opposed = escorts || random.nextBoolean();
        double own = 3.2 + 1.5 * ease + random.nextDouble(0, 1.5) + Math.max(0, 2 * rig.halfWidthM() - 3);
        double other = opposed ? random.nextDouble(3, 4.5) : random.nextDouble(0.3, 1.5);
        double widened = 0.5 + 4.5 * ease + random.nextDouble(0, 2.5);
        int every = random.nextInt(2, 6);
        double jitter = random.nextDouble(0, 0.3);
        // The edges: meters to the left of the center line, jittered where a point of the survey lies.
        int n = middle.size();
        double[] right = new double[n];
        double[] left = new double[n];
        for (int i = 0; i < n; i++) {
            double inside = middle.get(i)[3];
            boolean ends = i < 8 || i >= n - 8;
            right[i] = -own - Math.max(0, -inside) * widened + (ends ? 0 : random.nextDouble(-jitter, jitter));
            left[i] = other + Math.max(0, inside) * widened + (ends ? 0 : random.nextDouble(-jitter, jitter));
        }
        Geometry all = band(right, left, every);
        Geometry opposing = GEOMETRY.createPolygon();
        if (opposed) {
            opposing = band(new double[n], left, every);
        }
        RoadEnd in = end(middle.get(0), own, other, opposed && !opposing.isEmpty());
        RoadEnd out = end(middle.get(n - 1), own, other, opposed && !opposing.isEmpty());
        all = area(all, road(in, -1, in.escortedLeftM()), OverlayNG.UNION);
        all = area(all, road(out, 1, out.escortedLeftM()), OverlayNG.UNION);
        if (!opposing.isEmpty()) {
            opposing = area(area(opposing, lane(in, -1), OverlayNG.UNION), lane(out, 1), OverlayNG.UNION);
        }
        String kind = "surveyed" + (twice ? ", two bends" : "") + (opposing.isEmpty() ? "" : ", opposing");
        List<Geometry> off = new ArrayList<>();
        int holes = random.nextInt(4);
        for (int i = 0; i < holes; i++) {
            off.add(hole(right, left));
        }
        List<Corner.Island> islands = new ArrayList<>();
        if (random.nextInt(4) == 0) {
            Geometry island = island(own);
            off.add(island);
            islands.add(new Corner.Island(island, OptionalDouble.empty()));
            kind += ", island";
        }
        Geometry obstacles = GEOMETRY.createPolygon();
        int poles = random.nextInt(3);
        for (int i = 0; i < poles; i++) {
            int k = random.nextInt(40, n - 40);
            double outside = random.nextDouble(-0.1, 2);
            double beside = random.nextBoolean() ? left[k] + outside : right[k] - outside;
            Geometry pole = GEOMETRY.createPoint(xy(k, beside)).buffer(random.nextDouble(0.08, 0.4), 8);
            obstacles = area(obstacles, pole, OverlayNG.UNION);
        }
        off.add(obstacles);
        for (Geometry o : off) {
            all = o.isEmpty() ? all : area(all, o, OverlayNG.DIFFERENCE);
        }
        all = largest(all);
        Geometry pavement = opposing.isEmpty() ? all : largest(area(all, opposing, OverlayNG.DIFFERENCE));
        Coordinate[] guide = new Coordinate[n];
        for (int i = 0; i < n; i++) {
            guide[i] = xy(i, -own / 2);
        }
        Corner corner = new Corner(
                pavement,
                opposing.isEmpty() || !escorts ? Optional.empty() : Optional.of(all),
                opposing,
                obstacles,
                in,
                out,
                first + second,
                new Corner.Ground(OptionalDouble.empty(), islands),
                Optional.of(GEOMETRY.createLineString(guide)));
        return new RandomCorners.Case(
                seed,
                kind,
                corner,
                corner.guide().orElseThrow(),
                rig,
                escorts && corner.escorted().isPresent());
    }

    private void run(double[] at, double lengthM, double curvature) {
        for (int i = 0; i < lengthM; i++) {
            middle.add(new double[] {at[0], at[1], at[2], 0});
            step(at, 1, curvature);
        }
    }

    private void bend(double[] at, double turn, double radius) {
        int steps = (int) Math.ceil(Math.abs(turn) * radius);
        double each = Math.abs(turn) * radius / steps;
        for (int i = 0; i < steps; i++) {
            middle.add(new double[] {at[0], at[1], at[2], Math.signum(turn) * Math.sin(Math.PI * (i + 0.5) / steps)});
            step(at, each, turn / steps / each);
        }
    }

    private static void step(double[] at, double m, double curvature) {
        double mid = at[2] + curvature * m / 2;
        at[0] += m * Math.cos(mid);
        at[1] += m * Math.sin(mid);
        at[2] += curvature * m;
    }

    private Coordinate xy(int i, double leftM) {
        double[] m = middle.get(i);
        return new Coordinate(m[0] - leftM * Math.sin(m[2]), m[1] + leftM * Math.cos(m[2]));
    }

    private static double[] filled(int n, double value) {
        double[] all = new double[n];
        java.util.Arrays.fill(all, value);
        return all;
    }

    /** Between two offsets, drawn through every so many places. */
    private Geometry band(double[] right, double[] left, int every) {
        List<Geometry> parts = new ArrayList<>();
        int n = middle.size();
        for (int i = 0; i < n - 1; i += every) {
            int j = Math.min(n - 1, i + every);
            Coordinate a = xy(i, right[i]);
            Geometry part =
                    GEOMETRY.createPolygon(new Coordinate[] {a, xy(j, right[j]), xy(j, left[j]), xy(i, left[i]), a});
            parts.add(part.isValid() ? part : part.convexHull());
        }
        return areal(UnaryUnionNG.union(parts, GEOMETRY, GRID));
    }

    private static RoadEnd end(double[] at, double own, double other, boolean opposed) {
        return new RoadEnd(at[0], at[1], at[2], opposed ? 0 : other, own, other, own);
    }

    private static Geometry road(RoadEnd end, int way, double leftM) {
        return strip(end, way, -end.rightM(), leftM);
    }

    private static Geometry lane(RoadEnd end, int way) {
        return strip(end, way, 0, end.escortedLeftM());
    }

    private static Geometry strip(RoadEnd end, int way, double fromM, double toM) {
        double c = Math.cos(end.headingRad());
        double s = Math.sin(end.headingRad());
        Coordinate[] ring = new Coordinate[5];
        double[][] at = {{-way * 0.02, fromM}, {way * DRAWN_M, fromM}, {way * DRAWN_M, toM}, {-way * 0.02, toM}};
        for (int i = 0; i < 4; i++) {
            ring[i] = new Coordinate(end.xM() + at[i][0] * c - at[i][1] * s, end.yM() + at[i][0] * s + at[i][1] * c);
        }
        ring[4] = ring[0];
        return GEOMETRY.createPolygon(ring);
    }

    /** A grate near an edge, a slot across part of the lane or a thin tongue from the edge. */
    private Geometry hole(double[] right, double[] left) {
        int k = random.nextInt(50, middle.size() - 50);
        boolean onRight = random.nextBoolean();
        double edge = onRight ? right[k] : left[k];
        double inward = onRight ? 1 : -1;
        double from = edge + inward * (random.nextInt(2) == 0 ? -0.3 : random.nextDouble(0.1, 0.8));
        double wide = random.nextDouble(0.1, 0.9);
        double lengthM = random.nextInt(2) == 0 ? random.nextDouble(0.01, 0.1) : random.nextDouble(0.3, 1.2);
        double[] m = middle.get(k);
        Coordinate a = xy(k, from);
        Coordinate b = xy(k, from + inward * wide);
        double dx = lengthM * Math.cos(m[2]);
        double dy = lengthM * Math.sin(m[2]);
        return GEOMETRY.createPolygon(
                new Coordinate[] {a, b, new Coordinate(b.x + dx, b.y + dy), new Coordinate(a.x + dx, a.y + dy), a});
    }

    /** A narrow one along the center line, or off the lane on its left. */
    private Geometry island(double own) {
        int k = random.nextInt(45, middle.size() - 60);
        int to = k + random.nextInt(2, 12);
        double[] right = filled(middle.size(), random.nextDouble(0.1, 0.5));
        double[] left = filled(middle.size(), random.nextDouble(0.7, 1.6));
        List<Geometry> parts = new ArrayList<>();
        for (int i = k; i < to; i++) {
            Coordinate a = xy(i, right[i]);
            parts.add(GEOMETRY.createPolygon(
                    new Coordinate[] {a, xy(i + 1, right[i]), xy(i + 1, left[i]), xy(i, left[i]), a}));
        }
        return largest(areal(UnaryUnionNG.union(parts, GEOMETRY, GRID)));
    }

    private static Geometry area(Geometry a, Geometry b, int operation) {
        return areal(OverlayNG.overlay(a, b, operation, GRID));
    }

    private static Geometry areal(Geometry g) {
        List<Polygon> parts = new ArrayList<>();
        PolygonExtracter.getPolygons(g, parts);
        return parts.size() == 1 ? parts.get(0) : GEOMETRY.createMultiPolygon(parts.toArray(new Polygon[0]));
    }

    private static Geometry largest(Geometry area) {
        Geometry most = area.getGeometryN(0);
        for (int i = 1; i < area.getNumGeometries(); i++) {
            most = area.getGeometryN(i).getArea() > most.getArea() ? area.getGeometryN(i) : most;
        }
        return most;
    }
}
