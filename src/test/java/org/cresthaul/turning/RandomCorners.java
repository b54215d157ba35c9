package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.cresthaul.road.Corner;
import org.cresthaul.road.CornerTemplate;
import org.cresthaul.road.CornerTemplate.CurbReturn;
import org.cresthaul.road.CornerTemplate.Obstacle;
import org.cresthaul.road.CornerTemplate.PlanPoint;
import org.cresthaul.road.CornerTemplate.RoadWidths;
import org.cresthaul.road.CornerTemplate.Roundabout;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;

/**
 * Random corners with a random combination each, the same for a seed everywhere: rights and lefts of 30 to 150 degrees,
 * simple and three-centered returns, aprons, islands, poles, roundabouts, and outlines as a survey gives them.
 */
final class RandomCorners {
    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    private RandomCorners() {}

    /** A corner and who drives through; the guide is the corner's own where it has one. */
    record Case(
            long seed, String kind, Corner corner, LineString guide, TurningCombination combination, boolean escorts) {
        /** The same corner for the same combination with a jeep. */
        Case withJeep() {
            return new Case(
                    seed,
                    kind + ", jeep",
                    corner,
                    guide,
                    RandomRig.withJeep(combination, new SplittableRandom(seed)),
                    escorts);
        }

        /** The same corner for the same combination with more boosters. */
        Case withBoosters() {
            return new Case(
                    seed,
                    kind + ", boosters",
                    corner,
                    guide,
                    RandomRig.withBoosters(combination, new SplittableRandom(seed)),
                    escorts);
        }

        /** The same corner for the same combination with wheels that turn behind its tractor. */
        Case withSteering() {
            return new Case(
                    seed,
                    kind + ", steered",
                    corner,
                    guide,
                    RandomRig.withSteering(combination, new SplittableRandom(seed)),
                    escorts);
        }

        @Override
        public String toString() {
            return "seed " + seed + " (" + kind + (escorts ? ", escorts" : "") + ", "
                    + Math.round(Math.toDegrees(corner.turnRad())) + " degrees, "
                    + combination.units().size() + " units, " + Math.round(combination.lengthM()) + " m)";
        }
    }

    static Case of(long seed) {
        SplittableRandom random = new SplittableRandom(1_000_003 * seed + 17);
        TurningCombination rig = RandomRig.of(random);
        // From hopeless to easy.
        double ease = random.nextDouble();
        boolean escorts = random.nextInt(3) == 0;
        int kind = random.nextInt(10);
        if (kind < 4) {
            return RandomOutline.of(seed, random, rig, ease, escorts);
        }
        return kind < 8 ? junction(seed, random, rig, ease, escorts) : roundabout(seed, random, rig, ease, escorts);
    }

    private static RoadWidths road(SplittableRandom random, double ease, boolean escorts, double loadHalfM) {
        double own = 3 + 1.2 * ease + random.nextDouble(0, 1.8) + Math.max(0, 2 * loadHalfM - 3);
        double opposing = random.nextInt(5) == 0 && !escorts ? 0 : random.nextDouble(3, 5);
        double shoulder = random.nextBoolean() ? 0 : random.nextDouble(0, 0.5 + 2 * ease);
        return new RoadWidths(own, opposing, shoulder, escorts);
    }

    private static Case junction(
            long seed, SplittableRandom random, TurningCombination rig, double ease, boolean escorts) {
        double hand = random.nextBoolean() ? 1 : -1;
        double turn = hand * Math.toRadians(random.nextDouble(30, 150));
        RoadWidths in = road(random, ease, escorts, rig.halfWidthM());
        RoadWidths out = road(random, ease, escorts, rig.halfWidthM());
        double radius = 5 + 32 * ease * ease + random.nextDouble(0, 12);
        CurbReturn curb = CurbReturn.single(radius);
        String kind = "junction";
        if (random.nextInt(3) == 0) {
            kind += ", three-centered";
            curb = new CurbReturn(
                    radius * random.nextDouble(2, 3) + 2,
                    radius,
                    radius * random.nextDouble(2, 4) + 2,
                    random.nextDouble(0.3, 2));
        }
        double apron = random.nextInt(4) == 0 ? random.nextDouble(0.5, 4) : 0;
        List<List<PlanPoint>> islands = new ArrayList<>();
        List<Obstacle> obstacles = new ArrayList<>();
        // Lanes are to the right of the center lines: a way through the middle of both.
        double inM = -(in.ownM() / 2);
        double outM = -(out.ownM() / 2);
        if (random.nextInt(4) == 0) {
            kind += ", island";
            // A small one in the throat of the turn, beside the way.
            double along = random.nextDouble(2, 16);
            double aside = hand * random.nextDouble(2.5, 6);
            islands.add(box(random, place(inM, outM, turn, along, aside), random.nextDouble(0.3, 1.5)));
        }
        int poles = random.nextInt(3);
        for (int i = 0; i < poles; i++) {
            PlanPoint at = place(
                    inM,
                    outM,
                    turn,
                    random.nextDouble(-25, 25),
                    (random.nextBoolean() ? 1 : -1) * (in.ownM() / 2 + in.shoulderM() + random.nextDouble(0.2, 3)));
            obstacles.add(new Obstacle(List.of(at), random.nextDouble(0.08, 0.4)));
        }
        Corner corner = new CornerTemplate(turn, in, out, curb, apron, Optional.empty(), islands, obstacles).corner();
        List<Coordinate> guide = new ArrayList<>();
        guide.add(xy(place(inM, outM, turn, -300, 0)));
        guide.add(xy(place(inM, outM, turn, 0, 0)));
        guide.add(xy(place(inM, outM, turn, 300, 0)));
        return new Case(seed, kind + (apron > 0 ? ", apron" : ""), corner, line(corner, guide), rig, escorts);
    }

    /** A place along the way through both lanes' middles: before their crossing negative, beside them to the left. */
    private static PlanPoint place(double inM, double outM, double turn, double alongM, double leftM) {
        double c = Math.cos(turn);
        double s = Math.sin(turn);
        // Where y = inM meets −x sin + y cos = outM.
        double x = (inM * c - outM) / s;
        return alongM < 0
                ? new PlanPoint(x + alongM, inM + leftM)
                : new PlanPoint(x + alongM * c - leftM * s, inM + alongM * s + leftM * c);
    }

    private static List<PlanPoint> box(SplittableRandom random, PlanPoint at, double halfM) {
        double way = random.nextDouble(0, Math.PI);
        double longer = halfM * random.nextDouble(1, 4);
        List<PlanPoint> ring = new ArrayList<>();
        for (double[] k : new double[][] {{-1, -1}, {1, -1}, {1, 1}, {-1, 1}}) {
            ring.add(new PlanPoint(
                    at.xM() + k[0] * longer * Math.cos(way) - k[1] * halfM * Math.sin(way),
                    at.yM() + k[0] * longer * Math.sin(way) + k[1] * halfM * Math.cos(way)));
        }
        return ring;
    }

    private static Case roundabout(
            long seed, SplittableRandom random, TurningCombination rig, double ease, boolean escorts) {
        double turn = Math.toRadians(random.nextDouble(-110, 150));
        RoadWidths in = road(random, ease, escorts, rig.halfWidthM());
        RoadWidths out = road(random, ease, escorts, rig.halfWidthM());
        double island = random.nextDouble(4, 16);
        double lane = 4 + 5 * ease + random.nextDouble(0, 5) + Math.max(0, 2 * rig.halfWidthM() - 3);
        double apron = random.nextBoolean() ? random.nextDouble(0.5, Math.min(4, island - 1)) : 0;
        Roundabout round = new Roundabout(island + lane, island, random.nextDouble(3, 8 + 20 * ease));
        List<Obstacle> obstacles = new ArrayList<>();
        if (random.nextInt(3) == 0) {
            double way = Math.PI + random.nextDouble(0, Math.PI + turn + 0.1);
            double r = island + lane + random.nextDouble(0.1, 2);
            obstacles.add(new Obstacle(List.of(new PlanPoint(r * Math.cos(way), r * Math.sin(way))), 0.2));
        }
        Corner corner = new CornerTemplate(
                        turn, in, out, CurbReturn.single(0), apron, Optional.of(round), List.of(), obstacles)
                .corner();
        List<Coordinate> guide = new ArrayList<>();
        double r = island + lane / 2;
        double inM = -in.ownM() / 2;
        double outM = -out.ownM() / 2;
        double from = Math.PI + Math.asin(Math.min(0.9, -inM / r));
        double to = 2 * Math.PI + turn - Math.asin(Math.min(0.9, -outM / r));
        guide.add(new Coordinate(-300, inM));
        for (int i = 0; i <= 40 && to > from; i++) {
            double way = from + (to - from) * i / 40;
            guide.add(new Coordinate(r * Math.cos(way), r * Math.sin(way)));
        }
        guide.add(new Coordinate(
                300 * Math.cos(turn) - outM * Math.sin(turn), 300 * Math.sin(turn) + outM * Math.cos(turn)));
        return new Case(seed, "roundabout" + (apron > 0 ? ", apron" : ""), corner, line(corner, guide), rig, escorts);
    }

    private static Coordinate xy(PlanPoint p) {
        return new Coordinate(p.xM(), p.yM());
    }

    private static LineString line(Corner corner, List<Coordinate> otherwise) {
        return corner.guide().orElseGet(() -> GEOMETRY.createLineString(otherwise.toArray(new Coordinate[0])));
    }
}
