package org.cresthaul.turning;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.cresthaul.road.Corner;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;

/**
 * What no line can get round in a turn, as docs/model.md, section 13, derives it ("Where no line can exist"). The
 * frame: x along the approach, the turn θ to the left (a right is mirrored). Two walls hold all pavement: {@code y ≥ 0}
 * beside the approach, {@code d ≥ 0} beside the exit. A point P of the inside edge has nothing but unpaved ground
 * behind it, so that the inner tire of every axle passes on the road's side of it. One heading ψ of the axle after
 * another is shown to be none that it can have there.
 */
final class TurnBound {
    /** Headings are taken in steps; what an axle's place changes within half of one is allowed for. */
    private static final double STEP_RAD = Math.toRadians(0.02);
    /** Edges and figures are known to less than this, meters: a proof has to leave more. */
    static final double SLACK_M = 0.01;

    private static final double FAR_M = 10_000;
    /** Turns for which walls and inside are what they are called. */
    private static final double LEAST_TURN_RAD = Math.toRadians(15);

    private static final double MOST_TURN_RAD = Math.toRadians(165);
    /** No unit is ever turned farther past the direction of approach or exit. */
    private static final double PAST_ROAD_RAD = Math.toRadians(60);

    private static final int INSIDE_POINTS = 8;
    private static final double NEAR_M = 200;

    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    /** How much of what is known is used: each stage all of the ones before it. */
    enum Stage {
        /** Both tires of an axle are on the pavement. */
        GAP,
        /** Its unit turns no tighter than its hitch lets it. */
        LIMIT,
        /** A trailer's front is led by a tractor that is on the pavement. */
        LED
    }

    private final double turnRad;
    private final double approachWall;
    private final double exitWall;
    private final double hand;
    private final double headingRad;
    private final PreparedGeometry prepared;
    private final IndexedFacetDistance edges;
    private final List<Coordinate> inside;

    /** One axle of a unit: where it is ahead of the unit's effective axle, and how wide over its tires. */
    record Stand(double aheadM, double halfM, double tightestM, Optional<Led> led) {}

    /**
     * What a trailer is led by.
     *
     * @param hitchM from its kingpin to its effective axle
     * @param offM from the kingpin to the nearest axle of the tractor, as far as it may be beyond a wall
     * @param halfM half of that axle over its tires: its middle is no farther from pavement
     */
    record Led(double hitchM, double offM, double halfM) {}

    private TurnBound(Geometry pavement, Corner corner, double turn) {
        hand = Math.signum(turn);
        turnRad = Math.abs(turn);
        headingRad = corner.approach().headingRad();
        double toY = Double.POSITIVE_INFINITY;
        double toD = Double.POSITIVE_INFINITY;
        Coordinate[] all = pavement.getCoordinates();
        Coordinate[] own = new Coordinate[all.length];
        for (int i = 0; i < all.length; i++) {
            own[i] = own(all[i]);
            toY = Math.min(toY, own[i].y);
            toD = Math.min(toD, outOfExit(own[i].x, own[i].y));
        }
        approachWall = toY;
        exitWall = toD;
        prepared = PreparedGeometryFactory.prepare(pavement);
        edges = new IndexedFacetDistance(pavement);
        inside = insideOf(corner, all, own);
    }

    /** The bound of a corner; empty where the turn is too slight or too sharp for walls, or has no inside. */
    static Optional<TurnBound> of(CornerSpace space) {
        double turn = Math.abs(space.turnRad);
        if (!(turn > LEAST_TURN_RAD && turn < MOST_TURN_RAD)) {
            return Optional.empty();
        }
        TurnBound bound = new TurnBound(space.pavement, space.corner, space.turnRad);
        return bound.inside.isEmpty() ? Optional.empty() : Optional.of(bound);
    }

    private Coordinate own(Coordinate c) {
        double cos = Math.cos(headingRad);
        double sin = Math.sin(headingRad);
        return new Coordinate(c.x * cos + c.y * sin, hand * (c.y * cos - c.x * sin));
    }

    /** From the exit's outer edge inward, square to it. */
    private double outOfExit(double x, double y) {
        return y * Math.cos(turnRad) - x * Math.sin(turnRad);
    }

    /** Farther off the pavement is drawn to an end, where the road goes on: that is no edge. */
    private static boolean isNear(Coordinate at, Corner.RoadEnd end) {
        return Math.hypot(at.x - end.xM(), at.y - end.yM()) < NEAR_M;
    }

    /**
     * Points of the edge behind which, straight inward, nothing is paved: those that stand out farthest into the turn.
     */
    private List<Coordinate> insideOf(Corner corner, Coordinate[] all, Coordinate[] own) {
        double inX = -Math.sin(turnRad / 2);
        double inY = Math.cos(turnRad / 2);
        double c = Math.cos(headingRad);
        double s = Math.sin(headingRad);
        double alongX = c * inX - s * hand * inY;
        double alongY = s * inX + c * hand * inY;
        return IntStream.range(0, all.length)
                .filter(i -> isNear(all[i], corner.approach()) && isNear(all[i], corner.exit()))
                .filter(i -> !prepared.intersects(GEOMETRY.createLineString(new Coordinate[] {
                    new Coordinate(all[i].x + 0.001 * alongX, all[i].y + 0.001 * alongY),
                    new Coordinate(all[i].x + FAR_M * alongX, all[i].y + FAR_M * alongY)
                })))
                .mapToObj(i -> own[i])
                .sorted(Comparator.comparingDouble(p -> p.x * inX + p.y * inY))
                .limit(INSIDE_POINTS)
                .toList();
    }

    /** Whether it is shown that an axle cannot pass the inside of the turn. */
    boolean excludes(Stand stand, Stage stage) {
        return inside.stream().anyMatch(p -> excludes(p, stand, stage));
    }

    private boolean excludes(Coordinate p, Stand stand, Stage stage) {
        double from = Math.max(-PAST_ROAD_RAD, turnRad - Math.PI);
        double to = Math.min(Math.PI, turnRad + PAST_ROAD_RAD);
        double psi = from;
        while (psi < to) {
            TireContact place = new TireContact(p, stand, psi + STEP_RAD / 2, STEP_RAD / 2);
            double next = psi + STEP_RAD;
            if (!place.excluded(stage)) {
                if (stage != Stage.LED || stand.led.isEmpty()) {
                    return false;
                }
                next = psi + STEP_RAD / 2 + place.kingpinOffRoadRad(stand.led.get());
                if (next < psi + STEP_RAD) {
                    return false;
                }
            }
            psi = next;
        }
        return true;
    }

    /** From a place to the pavement, meters; zero on it. */
    private double toPavementM(double x, double y) {
        double c = Math.cos(headingRad);
        double s = Math.sin(headingRad);
        Point at = GEOMETRY.createPoint(new Coordinate(x * c - hand * y * s, x * s + hand * y * c));
        return prepared.intersects(at) ? 0 : edges.distance(at);
    }

    /** An axle whose inner tire touches P, at headings that differ from one by so much at most. */
    private final class TireContact {
        private final Stand stand;
        private final double psi;
        private final double within;
        /** Of the axle and of its unit's effective axle: over the approach's wall, and over the exit's. */
        private final double axleY;

        private final double axleD;
        private final double x;
        private final double yInFrame;
        private final double y;
        private final double d;
        /** How far a place strays within these headings, and {@link #SLACK_M}. */
        private final double axleOff;

        private final double off;

        TireContact(Coordinate p, Stand stand, double psi, double within) {
            this.stand = stand;
            this.psi = psi;
            this.within = within;
            double sin = Math.sin(psi);
            double cos = Math.cos(psi);
            double axleX = p.x + stand.halfM * sin;
            double axleAtY = p.y - stand.halfM * cos;
            axleY = axleAtY - approachWall;
            axleD = outOfExit(axleX, axleAtY) - exitWall;
            x = axleX - stand.aheadM * cos;
            yInFrame = axleAtY - stand.aheadM * sin;
            y = yInFrame - approachWall;
            d = outOfExit(x, yInFrame) - exitWall;
            axleOff = stand.halfM * within + SLACK_M;
            off = (stand.halfM + Math.abs(stand.aheadM)) * within + SLACK_M;
        }

        boolean excluded(Stage stage) {
            return gap()
                    || stage != Stage.GAP && limit()
                    || stage == Stage.LED && stand.led.isPresent() && led(stand.led.get());
        }

        private boolean gap() {
            double turned = stand.halfM * within;
            return axleY + axleOff < stand.halfM * Math.abs(Math.cos(psi)) - turned
                    || axleD + axleOff < stand.halfM * Math.abs(Math.cos(turnRad - psi)) - turned;
        }

        private boolean limit() {
            // Since it was last straight on the approach it has turned by ψ, and has to turn on to be straight on the
            // exit.
            double turned = Math.max(0, Math.min(turnRad, psi - within));
            double toTurn = Math.max(0, Math.min(turnRad, turnRad - psi - within));
            return psi - within > 0 && y + off < stand.halfM + stand.tightestM * (1 - Math.cos(turned))
                    || psi + within < turnRad && d + off < stand.halfM + stand.tightestM * (1 - Math.cos(toTurn));
        }

        /** By how much the heading may differ while the kingpin is nowhere near ground that a tractor may stand on. */
        private double kingpinOffRoadRad(Led by) {
            double far = toPavementM(x + by.hitchM * Math.cos(psi), yInFrame + by.hitchM * Math.sin(psi));
            double spare = far - by.offM - by.halfM - SLACK_M;
            return spare / (by.hitchM + stand.halfM + Math.abs(stand.aheadM));
        }

        private boolean led(Led by) {
            double reach = by.hitchM;
            double swing = reach * within;
            if (reach * Math.sin(turnRad - psi) - swing > d + off + by.offM
                    || y + off + reach * Math.sin(psi) + swing < -by.offM) {
                return true;
            }
            double from = reach * Math.sin(turnRad);
            double to = d + off + by.offM;
            if (psi - within <= 0 || to >= from) {
                return false;
            }
            double straightD = from - by.offM;
            double cos = Math.cos(turnRad);
            double sin = Math.sin(turnRad);
            double least = (stand.halfM - straightD * cos) / sin + tractrix(reach, to) - tractrix(reach, from);
            // Along the exit from where the walls meet.
            double along = (y - d * cos) / sin;
            return along + off * (1 + Math.abs(cos)) / sin < least;
        }
    }

    /**
     * How far a trailer has come along a wall when it is pulled by a point on it: of its axle, at a distance from it.
     */
    private static double tractrix(double length, double distance) {
        double share = Math.max(1e-9, Math.min(1, distance / length));
        double root = Math.sqrt(1 - share * share);
        return length * (Math.log((1 + root) / share) - root);
    }
}
