package org.cresthaul.turning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.cresthaul.rig.UnitName;
import org.cresthaul.road.Corner;
import org.cresthaul.road.Corner.RoadEnd;
import org.cresthaul.turning.IndependentCornerJudge.Judgment;
import org.cresthaul.turning.TurningCombination.AxleLine;
import org.cresthaul.turning.TurningCombination.Body;
import org.cresthaul.turning.TurningCombination.PlanUnit;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * The judge of corners held to closed forms: plane geometry, the steady turn (every point on its own circle) and the
 * tractrix. No number here comes from the program.
 */
class IndependentCornerJudgeTest {
    private static final GeometryFactory GEOMETRY = new GeometryFactory();
    private static final Geometry NONE = GEOMETRY.createPolygon();
    private static final double WHEELBASE_M = 5.8;
    private static final double TRAILER_M = 11;
    private static final double HITCH_AHEAD_M = 0.3;
    private static final double RADIUS_M = 20;
    /** Laid by the builder: 6 m of clothoid, then arc. */
    private static final double RAMP_M = 6;

    private static Geometry box(double x0, double y0, double x1, double y1) {
        return GEOMETRY.createPolygon(new Coordinate[] {
            new Coordinate(x0, y0),
            new Coordinate(x1, y0),
            new Coordinate(x1, y1),
            new Coordinate(x0, y1),
            new Coordinate(x0, y0)
        });
    }

    /** A circle by 1440 corners: 0.06 mm inside at 25 m. */
    private static Geometry disk(double x, double y, double r) {
        Coordinate[] ring = new Coordinate[1441];
        for (int i = 0; i < 1440; i++) {
            ring[i] = new Coordinate(x + r * Math.cos(i * Math.PI / 720), y + r * Math.sin(i * Math.PI / 720));
        }
        ring[1440] = ring[0];
        return GEOMETRY.createPolygon(ring);
    }

    private static Geometry field() {
        return box(-600, -600, 600, 600);
    }

    private static Corner corner(Geometry pavement, Geometry opposing, Geometry obstacles, double exitRad) {
        RoadEnd in = new RoadEnd(0, 0, 0, 300, 300, 300, 300);
        RoadEnd out = new RoadEnd(0, 0, exitRad, 300, 300, 300, 300);
        return new Corner(pavement, Optional.empty(), opposing, obstacles, in, out, exitRad);
    }

    private static TurningCombination tractor(double rearM, double frontM, double halfM) {
        return new TurningCombination(
                List.of(new TurningUnit(WHEELBASE_M, 0)),
                List.of(new PlanUnit(
                        UnitName.TRACTOR,
                        List.of(new AxleLine(WHEELBASE_M, 1.2, 0.3, 0.2), new AxleLine(0, 1.2, 0.6, 0.2)),
                        List.of(new Body(UnitPart.BODY.of(UnitName.TRACTOR), rearM, frontM, halfM)))),
                Math.toRadians(40),
                6,
                List.of());
    }

    private static TurningCombination combination() {
        PlanUnit trailer = new PlanUnit(
                UnitName.TRAILER,
                List.of(new AxleLine(0.9, 1.3, 0.7, 0.24)),
                List.of(new Body(UnitPart.BODY.of(UnitName.TRAILER), -2, 12, 1.6)));
        TurningCombination t = tractor(-1, 7, 1.25);
        return new TurningCombination(
                List.of(new TurningUnit(WHEELBASE_M, -HITCH_AHEAD_M), new TurningUnit(TRAILER_M, 0)),
                List.of(t.units().get(0), trailer),
                t.steerLimitRad(),
                6,
                List.of(Math.toRadians(60)));
    }

    private static final LeadPath STRAIGHT =
            LeadPath.from(-200, 0.4, 0).line(400).build();

    /** Onto a circle to the left, once and a quarter round, and off it. */
    private static LeadPath circle() {
        return LeadPath.from(-60, 0, 0)
                .line(60)
                .clothoid(RAMP_M, 0, 1 / RADIUS_M)
                .arc(2.5 * Math.PI * RADIUS_M, 1 / RADIUS_M)
                .clothoid(RAMP_M, 1 / RADIUS_M, 0)
                .build();
    }

    private static double[] center(LeadPath path) {
        double[] at = path.at(60 + RAMP_M + 1);
        return new double[] {at[0] - RADIUS_M * Math.sin(at[2]), at[1] + RADIUS_M * Math.cos(at[2])};
    }

    private static double exitRad(LeadPath path) {
        return path.at(path.lengthM())[2];
    }

    private static Judgment judged(Corner corner, TurningCombination combination, LeadPath path) {
        return new IndependentCornerJudge(corner, false).of(combination, path);
    }

    @Test
    void aStripLeavesWhatIsBesideTheOuterFace() {
        Corner strip = corner(box(-600, -2.5, 600, 4), NONE, NONE, 0);
        // 4 − 0.4 − 1.3 to the left, 2.5 + 0.4 − 1.3 to the right.
        assertEquals(1.6, judged(strip, combination(), STRAIGHT).leastM(), 1e-9);
        assertEquals(0, judged(strip, combination(), STRAIGHT).drivenOnM());
        assertTrue(judged(strip, combination(), STRAIGHT).whole());
    }

    @Test
    void aHoleBetweenTheTiresIsSeenFromTheirInnerFaces() {
        Geometry hole = box(30, 0.3, 31, 0.5);
        Corner strip = corner(field().difference(hole), NONE, NONE, 0);
        // Inner faces of the drive tires at 0.4 ± 0.6, of the trailer's at 0.4 ± 0.6 too: 0.1 less each side.
        assertEquals(0.5, judged(strip, combination(), STRAIGHT).leastM(), 1e-9);
    }

    @Test
    void aPoleIsAsFarAsItStandsBesideTheWidestBody() {
        Corner strip = corner(field(), NONE, box(17.003, 2.345, 17.004, 3), 0);
        assertEquals(2.345 - 0.4 - 1.6, judged(strip, combination(), STRAIGHT).leastM(), 1e-9);
        Corner opposing = corner(field(), box(-600, 2.2, 600, 9), NONE, 0);
        assertEquals(0.2, judged(opposing, combination(), STRAIGHT).leastM(), 1e-9);
        Corner in = corner(field(), NONE, box(17, 1.7, 17.2, 3), 0);
        assertEquals(-0.3, judged(in, combination(), STRAIGHT).leastM(), 1e-9);
    }

    @Test
    void whatStandsFarBeforeOrBehindTheGivenPathIsSeenToo() {
        LeadPath shorter = LeadPath.from(-20, 0.4, 0).line(40).build();
        for (double x : new double[] {-150, 150}) {
            assertEquals(
                    0.345,
                    judged(corner(field(), NONE, box(x, 2.345, x + 0.001, 3), 0), combination(), shorter)
                            .leastM(),
                    1e-9,
                    "at " + x);
        }
    }

    /**
     * Every point runs on its circle: r² of the axle = R² − L², of the hitch + e², of the trailer's axle − L² again.
     */
    @Test
    void aSteadyTurnLeavesWhatItsCirclesLeave() {
        LeadPath path = circle();
        double[] c = center(path);
        double axle = Math.sqrt(RADIUS_M * RADIUS_M - WHEELBASE_M * WHEELBASE_M);
        double trailer = Math.sqrt(axle * axle + HITCH_AHEAD_M * HITCH_AHEAD_M - TRAILER_M * TRAILER_M);
        // The trailer's inner tire: nearest to the center at the rear of its contact, 0.9 − 0.12 ahead of its axle.
        double inner = Math.hypot(trailer - 1.3, 0.78);
        Corner island = corner(field().difference(disk(c[0], c[1], 12)), NONE, NONE, exitRad(path));
        assertEquals(inner - 12, judged(island, combination(), path).leastM(), 0.0006);
        // The deck is nearest beside its axle.
        Corner pole = corner(field(), NONE, disk(c[0], c[1], 11), exitRad(path));
        assertEquals(trailer - 1.6 - 11, judged(pole, combination(), path).leastM(), 0.0006);
        Judgment limits = judged(island, combination(), path);
        assertTrue(limits.withinLimits(), limits.toString());
        assertTrue(limits.drivenOnM() > 50 && limits.bentAtPathEndM() > 1, limits.toString());
    }

    /** One point passes one other in one instant: the least is between whatever states there are. */
    @Test
    void theInstantAtWhichACornerPassesASpikeIsFound() {
        LeadPath path = circle();
        double[] c = center(path);
        double axle = Math.sqrt(RADIUS_M * RADIUS_M - WHEELBASE_M * WHEELBASE_M);
        double swept = Math.hypot(axle + 1.25, 7);
        for (int i = 0; i < 8; i++) {
            double way = 0.3 + i * 0.713;
            double r = swept + 0.05;
            Coordinate tip = new Coordinate(c[0] + r * Math.cos(way), c[1] + r * Math.sin(way));
            double beyond = r + 1;
            Coordinate a = new Coordinate(c[0] + beyond * Math.cos(way + 0.001), c[1] + beyond * Math.sin(way + 0.001));
            Coordinate b = new Coordinate(c[0] + beyond * Math.cos(way - 0.001), c[1] + beyond * Math.sin(way - 0.001));
            Geometry spike = GEOMETRY.createPolygon(new Coordinate[] {tip, a, b, tip});
            double[] end = path.at(path.lengthM());
            // Only where the way off the circle does not come by.
            if (Math.hypot(tip.x - end[0], tip.y - end[1]) < 25) {
                continue;
            }
            assertEquals(
                    0.05,
                    judged(corner(field(), NONE, spike, exitRad(path)), tractor(-1, 7, 1.25), path)
                            .leastM(),
                    0.0006,
                    "way " + way);
        }
    }

    @Test
    void limitsAreHeldInBetweenAndTheirExcessIsTold() {
        LeadPath path = circle();
        Corner free = corner(field(), NONE, NONE, exitRad(path));
        TurningCombination rig = combination();
        double steer = Math.asin(WHEELBASE_M / RADIUS_M);
        double axle = Math.sqrt(RADIUS_M * RADIUS_M - WHEELBASE_M * WHEELBASE_M);
        double hitch = Math.hypot(axle, HITCH_AHEAD_M);
        double bend = Math.asin(TRAILER_M / hitch) - Math.asin(HITCH_AHEAD_M / hitch);
        TurningCombination stiff =
                new TurningCombination(rig.chain(), rig.units(), steer - 0.01, 6, List.of(bend - 0.02));
        Judgment over = judged(free, stiff, path);
        assertEquals(0.01, over.steerExcessRad(), 1e-4);
        assertEquals(0.02, over.articulationExcessRad(), 1e-4);
        assertFalse(over.withinLimits());
        // Straight onto an arc: at that instant the wheels are straight and turn by the arc's curvature for each meter.
        LeadPath jump = LeadPath.from(-60, 0, 0).line(60).arc(20, 0.05).line(30).build();
        Corner onto = corner(field(), NONE, NONE, 1);
        TurningCombination slow =
                new TurningCombination(rig.chain(), rig.units(), Math.toRadians(40), 20, rig.articulationLimitRad());
        assertEquals(
                0.05 / (Math.toRadians(40) / 20) - 1, judged(onto, slow, jump).rateExcess(), 1e-6);
        assertFalse(judged(onto, slow, jump).withinLimits());
        assertTrue(judged(onto, rig, jump).withinLimits());
        LeadPath kink = LeadPath.from(-60, 0, 0).line(60).kink(1).line(30).build();
        assertEquals(Double.POSITIVE_INFINITY, judged(onto, rig, kink).rateExcess());
    }

    /** Behind a straight hitch path tan(ψ/2) falls by e to the way over the length (the tractrix). */
    @Test
    void theRunOutIsATractrix() {
        LeadPath path = circle();
        ReferencePassage passage = new ReferencePassage(tractor(-1, 7, 1.25), path);
        double end = path.lengthM();
        // From a little beyond the end: the step it lies in holds both laws.
        double on = end + 0.1;
        double from = Math.tan((passage.at(on)[2] - passage.at(on)[3]) / 2);
        for (double s = 1; s < 50; s += 7.3) {
            double[] at = passage.at(on + s);
            assertEquals(from * Math.exp(-s / WHEELBASE_M), Math.tan((at[2] - at[3]) / 2), 1e-9, "after " + s);
        }
        double[] there = path.at(end);
        assertEquals(there[0], passage.at(end)[0], 1e-8);
        assertEquals(there[1], passage.at(end)[1], 1e-8);
    }

    /**
     * The mistake this judge is there to find: the path ends, the trailer is still bent, and what it cuts lies farther
     * on.
     */
    @Test
    void whatATrailerCutsBeyondTheEndOfThePathIsFound() {
        LeadPath quarter = LeadPath.from(-60, 0, 0)
                .line(60)
                .turn(Math.PI / 2, 1 / 15.0, 1 / 15.0 / 6)
                .line(8)
                .build();
        double[] end = quarter.at(quarter.lengthM());
        // To the inside of the turn, 1.5 m beside the line, 3 m beyond the place where the path ends.
        Geometry hole = box(end[0] - 2.5, end[1] + 3, end[0] - 1.5, end[1] + 3.5);
        RoadEnd in = new RoadEnd(0, 0, 0, 300, 300, 300, 300);
        RoadEnd out = new RoadEnd(end[0], 0, Math.PI / 2, 300, 300, 300, 300);
        Corner c = new Corner(field().difference(hole), Optional.empty(), NONE, NONE, in, out, Math.PI / 2);
        Judgment judgment = judged(c, combination(), quarter);
        assertTrue(judgment.leastM() < 0, judgment.toString());
        assertFalse(judgment.whole());
        assertTrue(judgment.where().contains("trailer left tires"), judgment.where());
    }

    @Test
    void anIslandMustBePassedAsTheGuidePassesIt() {
        Geometry island = box(20, 1.5, 24, 6);
        RoadEnd road = new RoadEnd(0, 0, 0, 300, 300, 300, 300);
        for (int side : new int[] {-1, 1}) {
            double past = side < 0 ? -3 : 12;
            Optional<org.locationtech.jts.geom.LineString> guide = Optional.of(GEOMETRY.createLineString(
                    new Coordinate[] {new Coordinate(-100, 0), new Coordinate(22, past), new Coordinate(100, 0)}));
            Corner c = new Corner(
                    field().difference(island),
                    Optional.empty(),
                    NONE,
                    NONE,
                    road,
                    road,
                    0,
                    new Corner.Ground(
                            OptionalDouble.empty(), List.of(new Corner.Island(island, OptionalDouble.empty()))),
                    guide);
            LeadPath right = LeadPath.from(-200, -0.4, 0).line(400).build();
            assertEquals(
                    side < 0 ? 0 : 1, judged(c, tractor(-1, 7, 1.25), right).wrongSides());
            // The same hole without its name.
            Corner bare = new Corner(
                    field().difference(island),
                    Optional.empty(),
                    NONE,
                    NONE,
                    road,
                    road,
                    0,
                    Corner.Ground.unknown(),
                    guide);
            assertEquals(
                    side < 0 ? 0 : 1, judged(bare, tractor(-1, 7, 1.25), right).wrongSides());
        }
    }
}
