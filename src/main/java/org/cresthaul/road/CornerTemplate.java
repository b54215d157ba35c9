package org.cresthaul.road;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.cresthaul.geometry.Areas;
import org.cresthaul.geometry.Finite;
import org.cresthaul.road.Corner.Island;
import org.locationtech.jts.geom.Geometry;

/**
 * A corner built from a few measures: two roads that meet. Origin: where the roads' center lines meet (a roundabout's
 * center); x along the approach, y to its left. Curved edges are drawn so that the pavement never comes out larger than
 * it is: by less than a six-thousandth of a curve's radius smaller. Beyond the curb returns the roads go on straight
 * for {@link #REACH_M}.
 *
 * @param turnRad from approach to exit, positive to the left
 * @param layout how the two roads are joined
 * @param apronM how far tires may run up behind the return (or onto a roundabout's middle island), meters: it is
 *     pavement
 * @param islands tires keep off, bodies may overhang; in the template's frame
 * @param obstacles nothing may touch
 * @param curbHeightM of the edge of all pavement; zero where it is flush, empty when unknown
 * @param onLeft whether one drives on the left: own lanes are left of the center line, and roundabouts go clockwise
 */
public record CornerTemplate(
        double turnRad,
        RoadWidths approach,
        RoadWidths exit,
        Layout layout,
        double apronM,
        List<Median> islands,
        List<Obstacle> obstacles,
        OptionalDouble curbHeightM,
        boolean onLeft) {
    /** How far approach and exit go on straight beyond their curb returns, meters: farther than any passage needs. */
    static final double REACH_M = 450;

    /** They are drawn at least this far from where they meet, meters. */
    private static final double DRAWN_M = 600;

    private static final double ANGLE_RAD = 1e-9;

    /** How approach and exit are joined. */
    public sealed interface Layout permits CurbReturn, Roundabout, UTurn, Bend, Fork, OffsetCrossroads, Gate {
        /** The least and the most that it turns by, either way. */
        double leastRad();

        double mostRad();

        /** Seen in a mirror along the approach. */
        default Layout mirrored() {
            return this;
        }

        /** Whether the way turns back in the end, so that the exit runs like the approach. */
        default boolean turnsBack() {
            return false;
        }
    }

    /** A point of the template's frame, meters. */
    public record PlanPoint(double xM, double yM) {
        public PlanPoint {
            Finite.require("xM", xM);
            Finite.require("yM", yM);
        }
    }

    /**
     * One road.
     *
     * @param ownM from the center line to the outer edge of the lanes in the direction of travel
     * @param opposingM the lanes of the other direction; zero on a one-way road
     * @param shoulderM beside the own lanes, firm enough for tires
     * @param borrow whether the opposing lanes may be borrowed with escorts
     */
    public record RoadWidths(double ownM, double opposingM, double shoulderM, boolean borrow) {
        public RoadWidths {
            Finite.requireAtLeast("ownM", 0.5, ownM);
            Finite.requireAtLeast("opposingM", 0, opposingM);
            Finite.requireAtLeast("shoulderM", 0, shoulderM);
        }
    }

    /**
     * A curb return of one radius, or of three: first, middle, last, the middle arc set in by an offset from both
     * edges.
     */
    public record CurbReturn(double firstM, double middleM, double lastM, double offsetM) implements Layout {
        public CurbReturn {
            Finite.requireAtLeast("middleM", 0, middleM);
            Finite.requireAtLeast("offsetM", 0, offsetM);
            if (firstM < middleM + offsetM || lastM < middleM + offsetM) {
                throw new IllegalArgumentException("the outer radii must be at least the middle one and the offset");
            }
        }

        public static CurbReturn single(double radiusM) {
            return new CurbReturn(radiusM, radiusM, radiusM, 0);
        }

        @Override
        public double leastRad() {
            return Math.toRadians(20);
        }

        @Override
        public double mostRad() {
            return Math.toRadians(150);
        }
    }

    /**
     * A roundabout, driven counter-clockwise, or clockwise where one drives on the left.
     *
     * @param outerM radius of its outer edge
     * @param islandM radius of the middle island's curb, without the apron of the template
     * @param filletM radius of the curb returns between it and the roads
     * @param islandHeightM how high the middle island stands, inside its apron; empty when unknown
     */
    public record Roundabout(double outerM, double islandM, double filletM, OptionalDouble islandHeightM)
            implements Layout {
        public Roundabout(double outerM, double islandM, double filletM) {
            this(outerM, islandM, filletM, OptionalDouble.empty());
        }

        public Roundabout {
            Finite.requireAtLeast("islandM", 0.5, islandM);
            Finite.requireAtLeast("outerM", islandM + 2, outerM);
            Finite.requireAtLeast("filletM", 0, filletM);
        }

        @Override
        public double leastRad() {
            return 0;
        }

        @Override
        public double mostRad() {
            return Math.toRadians(270);
        }
    }

    /** An island with its outline; its height above the pavement beside it is empty when unknown. */
    public record Median(List<PlanPoint> outline, OptionalDouble heightM) {
        public Median {
            outline = List.copyOf(outline);
            if (outline.size() < 3) {
                throw new IllegalArgumentException("an island needs three points, not " + outline.size());
            }
        }
    }

    /** A pole (one point and a radius) or anything with an outline (three points and more). */
    public record Obstacle(List<PlanPoint> outline, double radiusM) {
        public Obstacle {
            outline = List.copyOf(outline);
            Finite.requireAtLeast("radiusM", 0, radiusM);
            if (outline.isEmpty() || outline.size() < 3 && !(radiusM > 0)) {
                throw new IllegalArgumentException("an obstacle needs three points, or a radius");
            }
        }
    }

    /** A corner whose curbs and islands are of unknown height. */
    public CornerTemplate(
            double turnRad,
            RoadWidths approach,
            RoadWidths exit,
            CurbReturn curb,
            double apronM,
            Optional<Roundabout> roundabout,
            List<List<PlanPoint>> islands,
            List<Obstacle> obstacles) {
        this(
                turnRad,
                approach,
                exit,
                roundabout.isPresent() ? roundabout.get() : curb,
                apronM,
                islands.stream().map(i -> new Median(i, OptionalDouble.empty())).toList(),
                obstacles,
                OptionalDouble.empty());
    }

    /** A corner where one drives on the right. */
    public CornerTemplate(
            double turnRad,
            RoadWidths approach,
            RoadWidths exit,
            Layout layout,
            double apronM,
            List<Median> islands,
            List<Obstacle> obstacles,
            OptionalDouble curbHeightM) {
        this(turnRad, approach, exit, layout, apronM, islands, obstacles, curbHeightM, false);
    }

    public CornerTemplate {
        islands = List.copyOf(islands);
        obstacles = List.copyOf(obstacles);
        Finite.requireAtLeast("apronM", 0, apronM);
        double turn = Math.abs(Finite.require("turnRad", turnRad));
        if (turn < layout.leastRad() - ANGLE_RAD || turn > layout.mostRad() + ANGLE_RAD) {
            throw new IllegalArgumentException("such a corner turns by " + Math.toDegrees(layout.leastRad()) + " to "
                    + Math.toDegrees(layout.mostRad()) + " degrees, not " + Math.toDegrees(turn));
        }
        if (layout instanceof UTurn && turnRad > 0 == onLeft) {
            throw new IllegalArgumentException("one turns back across the opposing side");
        }
        if (layout instanceof UTurn && approach.opposingM + exit.opposingM > 0) {
            throw new IllegalArgumentException(
                    "the roadways of a U-turn oppose each other: they have no other" + " opposing lanes");
        }
        if (layout instanceof Fork fork && !fork.isApartFrom(turnRad)) {
            throw new IllegalArgumentException("the third road lies on the exit");
        }
    }

    /** How far roads are drawn whose curb returns end that far from where they meet, meters. */
    static double reachM(double returnM) {
        return Math.max(DRAWN_M, REACH_M + returnM);
    }

    /** The areas of this template. */
    public Corner corner() {
        return onLeft ? mirrored().corner().mirrored() : onRight();
    }

    private CornerTemplate mirrored() {
        return new CornerTemplate(
                -turnRad,
                approach,
                exit,
                layout.mirrored(),
                apronM,
                islands.stream()
                        .map(i -> new Median(mirrored(i.outline), i.heightM))
                        .toList(),
                obstacles.stream()
                        .map(o -> new Obstacle(mirrored(o.outline), o.radiusM))
                        .toList(),
                curbHeightM,
                !onLeft);
    }

    private static List<PlanPoint> mirrored(List<PlanPoint> points) {
        return points.stream().map(p -> new PlanPoint(p.xM, -p.yM)).toList();
    }

    private Corner onRight() {
        DrawnCorner drawn = drawn();
        List<Island> raised = new ArrayList<>(drawn.islands());
        for (Median island : islands) {
            raised.add(new Island(PlanShapes.polygon(island.outline), island.heightM));
        }
        Geometry hard = Areas.none();
        for (Obstacle o : obstacles) {
            hard = Areas.union(
                    hard,
                    o.outline.size() >= 3
                            ? PlanShapes.polygon(o.outline)
                            : PlanShapes.pole(o.outline.get(0), o.radiusM));
        }
        Corner corner = drawn.corner(raised, hard, curbHeightM, drawnTurnRad());
        return layout instanceof Gate ? corner.backed() : corner;
    }

    private DrawnCorner drawn() {
        if (layout instanceof Roundabout round) {
            return RoundaboutDrawing.of(this, round);
        }
        if (layout instanceof UTurn back) {
            return UTurnDrawing.of(this, back);
        }
        if (layout instanceof Bend bend) {
            return BendDrawing.of(this, bend);
        }
        if (layout instanceof Fork fork) {
            return ForkDrawing.of(this, fork);
        }
        if (layout instanceof OffsetCrossroads offset) {
            return OffsetDrawing.of(this, offset);
        }
        if (layout instanceof Gate gate) {
            return GateDrawing.of(this, gate);
        }
        return JunctionDrawing.of(this, (CurbReturn) layout);
    }

    /** From the first road end of the corner to the last: of a gate, from the drive out onto the road. */
    private double drawnTurnRad() {
        return layout instanceof Gate
                ? Math.copySign(Math.PI - Math.abs(turnRad), turnRad)
                : layout.turnsBack() ? 0 : turnRad;
    }
}
