package org.cresthaul.clearance;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import org.cresthaul.posture.BruteForcePosture;
import org.cresthaul.posture.BruteForcePosture.Frame;
import org.cresthaul.posture.BruteForcePosture.Standing;
import org.cresthaul.posture.RaisedAxles;
import org.cresthaul.posture.RandomCase;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.Booster;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Jeep;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Outline;
import org.cresthaul.rig.Trailer;
import org.locationtech.jts.algorithm.RayCrossingCounter;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * The gap between coupled units from the definitions of docs/model.md, section 8a, for checking the engine: every
 * unit's filled outlines are placed in the world by plain rotation at many positions, and the library of planar
 * geometry that the engine's vertical part does not use says how far they are apart. Written without the engine's idea
 * that the bend alone decides.
 */
final class BruteForceUnits {
    private static final GeometryFactory PLANE = new GeometryFactory();
    private static final double COARSE_M = 0.05;
    private static final double FINE_M = 0.0005;
    /** How many of the closest looks are looked at more closely. */
    private static final int CLOSEST = 8;

    private final BruteForcePosture posture;
    private final LevelStance stance;
    private final boolean trailing;
    private final List<Jeep> jeeps;
    /** Under the trailer's kingpin. */
    private final FramePoint plate;

    private final FramePoint deckFront;
    private final double drawnGooseneckRad;
    private final double drawnKingpinXM;
    private final List<Polygon> tractor;
    private final List<Polygon> gooseneck;
    private final List<Polygon> deck;
    /** Of each trailing booster, front to rear. */
    private final List<List<Polygon>> boosters;

    private final List<Axle> driveTires;
    private final List<RaisedAxles.Tire> raisedTires;

    /** The least gap found; negative when units overlap, by how much is not said. */
    record Least(double valueM, double steerM, boolean touches) {}

    BruteForceUnits(RandomCase c) {
        posture = new BruteForcePosture(c.stance(), c.setting(), c.leveling(), c.profile());
        stance = c.stance();
        trailing = c.setting().booster() == BoosterState.TRAILING;
        jeeps = stance.jeeps();
        plate = jeeps.isEmpty()
                ? stance.tractor().fifthWheel()
                : jeeps.get(jeeps.size() - 1).fifthWheel();
        Trailer trailer = stance.trailer();
        deckFront = trailer.deckFront();
        drawnKingpinXM = trailer.kingpinXM();
        drawnGooseneckRad = Math.atan2(plate.hM() - deckFront.hM(), drawnKingpinXM - deckFront.xM());
        tractor = List.of(polygon(stance.tractor().underside(), stance.tractor().topside()));
        driveTires = stance.tractor().drive().axles();
        Polygon whole = polygon(sagged(trailer), trailer.topside());
        deck = new ArrayList<>(pieces(part(whole, false)));
        gooseneck = new ArrayList<>(pieces(part(whole, true)));
        List<Outline> loads = new ArrayList<>(trailer.load());
        if (c.setting().booster() == BoosterState.CARRIED) {
            loads.add(stance.booster().orElseThrow().carried().orElseThrow());
        }
        for (Outline load : loads) {
            (load.rearXM() >= deckFront.xM() ? gooseneck : deck).add(filled(load, trailer.topside()));
        }
        boosters = trailing
                ? stance.boosters().stream()
                        .map(b -> List.of(polygon(b.underside(), b.topside())))
                        .toList()
                : List.of();
        raisedTires = RaisedAxles.tires(trailer, c.setting().lift());
    }

    /** Over positions from one to another. */
    Least least(double fromM, double toM) {
        List<Least> looks = new ArrayList<>();
        for (double s = fromM; s < toM; s += COARSE_M) {
            Least at = at(s);
            if (at.touches()) {
                return at;
            }
            looks.add(at);
        }
        looks.sort(Comparator.comparingDouble(Least::valueM));
        Least least = looks.get(0);
        TreeSet<Double> done = new TreeSet<>();
        for (Least look : looks) {
            if (done.size() >= CLOSEST) {
                break;
            }
            Double below = done.floor(look.steerM());
            Double above = done.ceiling(look.steerM());
            if (below != null && look.steerM() - below < COARSE_M
                    || above != null && above - look.steerM() < COARSE_M) {
                continue;
            }
            done.add(look.steerM());
            for (double s = look.steerM() - 2 * COARSE_M; s <= look.steerM() + 2 * COARSE_M; s += 20 * FINE_M) {
                Least at = at(s);
                least = at.touches() || at.valueM() < least.valueM() ? at : least;
            }
        }
        double middle = least.steerM();
        for (double s = middle - 20 * FINE_M; s <= middle + 20 * FINE_M && !least.touches(); s += FINE_M) {
            Least at = at(s);
            least = at.touches() || at.valueM() < least.valueM() ? at : least;
        }
        return least;
    }

    /** At one position. */
    Least at(double steerM) {
        Standing standing = posture.at(steerM);
        double plateX = standing.aheadOfTrailer().worldXM(plate.xM(), plate.hM());
        double plateZ = standing.aheadOfTrailer().worldZM(plate.xM(), plate.hM());
        double gooseneckRad = Math.atan2(
                        plateZ - standing.trailer().worldZM(deckFront.xM(), deckFront.hM()),
                        plateX - standing.trailer().worldXM(deckFront.xM(), deckFront.hM()))
                - drawnGooseneckRad;
        Frame neck = Frame.through(drawnKingpinXM, plate.hM(), plateX, plateZ, gooseneckRad);
        List<Geometry> behind = placed(gooseneck, neck);
        behind.addAll(placed(deck, standing.trailer()));
        double gap = Double.POSITIVE_INFINITY;
        Frame carrying = standing.tractor();
        List<Polygon> carrier = tractor;
        List<Axle> tires = driveTires;
        FramePoint wheel = stance.tractor().fifthWheel();
        double reachM = stance.tractor().plateReachM();
        for (int j = 0; j < jeeps.size(); j++) {
            Jeep jeep = jeeps.get(j);
            List<Polygon> drawn = List.of(polygon(jeep.underside(), jeep.topside()));
            Frame frame = standing.jeeps().get(j);
            Reach pin = new Reach(
                    new Coordinate(carrying.worldXM(wheel.xM(), wheel.hM()), carrying.worldZM(wheel.xM(), wheel.hM())),
                    reachM);
            gap = Math.min(gap, gap(carrying, carrier, tires, placed(drawn, frame), pin));
            for (Axle axle : jeep.axles().axles()) {
                gap = Math.min(
                        gap, gap(frame, axle.xM(), axle.radiusM(), axle.radiusM(), placed(carrier, carrying), pin));
            }
            carrying = frame;
            carrier = drawn;
            tires = jeep.axles().axles();
            wheel = jeep.fifthWheel();
            reachM = jeep.plateReachM();
        }
        Reach reach = new Reach(new Coordinate(plateX, plateZ), reachM);
        gap = Math.min(gap, gap(carrying, carrier, tires, behind, reach));
        if (trailing) {
            FramePoint hinge = stance.trailer().boosterHinge().orElseThrow();
            Reach joint = new Reach(
                    new Coordinate(
                            standing.trailer().worldXM(hinge.xM(), hinge.hM()),
                            standing.trailer().worldZM(hinge.xM(), hinge.hM())),
                    stance.trailer().hingeReachM());
            List<Geometry> rear = placed(deck, standing.trailer());
            rear.addAll(placed(gooseneck, standing.trailer()));
            List<Geometry> last = placed(boosters.get(0), standing.boosters().get(0));
            gap = Math.min(gap, gap(rear, last, joint));
            for (int i = 1; i < boosters.size(); i++) {
                Booster holder = stance.boosters().get(i - 1);
                Frame held = standing.boosters().get(i - 1);
                FramePoint next = holder.nextHinge().orElseThrow().at();
                Reach pivot = new Reach(
                        new Coordinate(held.worldXM(next.xM(), next.hM()), held.worldZM(next.xM(), next.hM())),
                        holder.nextHinge().orElseThrow().reachM());
                gap = Math.min(
                        gap,
                        gap(
                                placed(boosters.get(i - 1), held),
                                placed(boosters.get(i), standing.boosters().get(i)),
                                pivot));
            }
            for (RaisedAxles.Tire tire : raisedTires) {
                gap = Math.min(
                        gap,
                        gap(
                                standing.trailer(),
                                tire.axle().xM(),
                                tire.axle().radiusM() + tire.gapM(),
                                tire.axle().radiusM(),
                                last,
                                joint));
            }
        }
        return new Least(gap, steerM, gap <= 0);
    }

    /** A unit with the tires of its group under the one behind it. */
    private static double gap(Frame frame, List<Polygon> drawn, List<Axle> tires, List<Geometry> behind, Reach reach) {
        double gap = gap(placed(drawn, frame), behind, reach);
        for (Axle axle : tires) {
            gap = Math.min(gap, gap(frame, axle.xM(), axle.radiusM(), axle.radiusM(), behind, reach));
        }
        return gap;
    }

    private static double gap(List<Geometry> a, List<Geometry> b, Reach reach) {
        double least = Double.POSITIVE_INFINITY;
        for (Geometry one : a) {
            Geometry lines = beyond(one, reach);
            for (Geometry other : b) {
                Geometry others = beyond(other, reach);
                if (lines.isEmpty() || others.isEmpty()) {
                    continue;
                }
                if (lines.intersects(others) || holds(one, others) || holds(other, lines)) {
                    return -1;
                }
                least = Math.min(least, lines.distance(others));
            }
        }
        return least;
    }

    private static double gap(Frame frame, double xM, double hM, double radiusM, List<Geometry> others, Reach reach) {
        Geometry center = PLANE.createPoint(new Coordinate(frame.worldXM(xM, hM), frame.worldZM(xM, hM)));
        double least = Double.POSITIVE_INFINITY;
        for (Geometry other : others) {
            Geometry lines = beyond(other, reach);
            if (!lines.isEmpty()) {
                least = Math.min(least, holds(other, center) ? -1 : lines.distance(center) - radiusM);
            }
        }
        return least;
    }

    /** The outline outside of a coupling's reach, a circle cut exactly. */
    private static Geometry beyond(Geometry drawn, Reach reach) {
        List<LineString> parts = new ArrayList<>();
        Coordinate[] ring = drawn.getCoordinates();
        for (int i = 1; i < ring.length; i++) {
            LineSegment side = new LineSegment(ring[i - 1], ring[i]);
            double length = side.getLength();
            double foot = side.projectionFactor(reach.pivot) * length;
            double off = side.distancePerpendicular(reach.pivot);
            double half = off < reach.radiusM ? Math.sqrt(reach.radiusM * reach.radiusM - off * off) : 0;
            add(side, 0, Math.min(length, half == 0 ? length : foot - half), length, parts);
            add(side, half == 0 ? length : Math.max(0, foot + half), length, length, parts);
        }
        return PLANE.createMultiLineString(parts.toArray(new LineString[0]));
    }

    private static void add(LineSegment side, double fromM, double toM, double length, List<LineString> to) {
        if (length > 0 && fromM < toM) {
            to.add(PLANE.createLineString(
                    new Coordinate[] {side.pointAlong(fromM / length), side.pointAlong(toM / length)}));
        }
    }

    /**
     * Whether any point of some lines lies in a filled outline, which may cross itself where a load dips below the
     * deck.
     */
    private static boolean holds(Geometry drawn, Geometry points) {
        for (Coordinate c : points.getCoordinates()) {
            if (RayCrossingCounter.locatePointInRing(c, drawn.getCoordinates()) == Location.INTERIOR) {
                return true;
            }
        }
        return false;
    }

    /** Where a coupling is and how far it reaches. */
    private record Reach(Coordinate pivot, double radiusM) {}

    private static List<Geometry> placed(List<Polygon> drawn, Frame frame) {
        AffineTransformation place = new AffineTransformation(
                frame.cos(), -frame.sin(), frame.originXM(), frame.sin(), frame.cos(), frame.originZM());
        List<Geometry> placed = new ArrayList<>();
        drawn.forEach(p -> placed.add(place.transform(p)));
        return placed;
    }

    private Geometry part(Polygon whole, boolean ahead) {
        return OverlayNGRobust.overlay(
                GeometryFixer.fix(whole), halfPlane(deckFront.xM(), ahead), OverlayNG.INTERSECTION);
    }

    private static Polygon halfPlane(double xM, boolean ahead) {
        double far = ahead ? 1000 : -1000;
        return PLANE.createPolygon(new Coordinate[] {
            new Coordinate(xM, -100),
            new Coordinate(far, -100),
            new Coordinate(far, 100),
            new Coordinate(xM, 100),
            new Coordinate(xM, -100)
        });
    }

    private static List<Polygon> pieces(Geometry geometry) {
        List<Polygon> pieces = new ArrayList<>();
        for (int i = 0; i < geometry.getNumGeometries(); i++) {
            if (geometry.getGeometryN(i) instanceof Polygon p && !p.isEmpty()) {
                pieces.add(p);
            }
        }
        return pieces;
    }

    private static Polygon polygon(Outline underside, Outline topside) {
        List<Coordinate> ring = new ArrayList<>();
        underside.points().forEach(p -> ring.add(new Coordinate(p.xM(), p.hM())));
        for (int i = topside.points().size() - 1; i >= 0; i--) {
            FramePoint p = topside.points().get(i);
            ring.add(new Coordinate(p.xM(), p.hM()));
        }
        return closed(ring);
    }

    private static Polygon closed(List<Coordinate> ring) {
        ring.add(ring.get(0).copy());
        return PLANE.createPolygon(ring.toArray(new Coordinate[0]));
    }

    /** The underside with the deck hanging in a parabola, in steps of a centimeter where the tractor can come near. */
    private static Outline sagged(Trailer trailer) {
        double rear = trailer.deckRear().xM();
        double front = trailer.deckFront().xM();
        List<FramePoint> sagged = new ArrayList<>();
        List<FramePoint> points = trailer.underside().points();
        for (int i = 0; i < points.size(); i++) {
            FramePoint p = points.get(i);
            if (i > 0 && trailer.deckSagM() > 0) {
                FramePoint q = points.get(i - 1);
                for (double x = Math.max(front - 2, q.xM()) + 0.01; x < Math.min(front, p.xM()); x += 0.01) {
                    sagged.add(lowered(q.toward(p, (x - q.xM()) / (p.xM() - q.xM())), trailer, rear, front));
                }
            }
            sagged.add(lowered(p, trailer, rear, front));
        }
        return new Outline(sagged);
    }

    private static FramePoint lowered(FramePoint p, Trailer trailer, double rear, double front) {
        double t = (p.xM() - rear) / (front - rear);
        return t <= 0 || t >= 1 ? p : new FramePoint(p.xM(), p.hM() - 4 * trailer.deckSagM() * t * (1 - t), p.part());
    }

    /**
     * A load down to the topside under it; beyond the trailer's end down to its drawn face, or to the topside's end.
     */
    private static Polygon filled(Outline load, Outline topside) {
        List<Coordinate> ring = new ArrayList<>();
        List<FramePoint> points = load.points();
        int n = points.size();
        points.forEach(p -> ring.add(new Coordinate(p.xM(), p.hM())));
        double front = topside.frontXM();
        double rear = topside.rearXM();
        if (load.frontXM() > front) {
            double low = points.stream()
                    .filter(p -> p.xM() >= front)
                    .mapToDouble(FramePoint::hM)
                    .min()
                    .orElseThrow();
            boolean face = points.get(n - 1).xM() == points.get(n - 2).xM();
            double bottom = face ? low : Math.min(low, heightAt(topside, front));
            ring.add(new Coordinate(load.frontXM(), bottom));
            ring.add(new Coordinate(Math.max(front, load.rearXM()), bottom));
        }
        TreeSet<Double> under = new TreeSet<>(Comparator.reverseOrder());
        double from = Math.max(rear, load.rearXM());
        double to = Math.min(front, load.frontXM());
        if (from < to) {
            under.add(from);
            under.add(to);
            topside.points().stream()
                    .map(FramePoint::xM)
                    .filter(x -> x > from && x < to)
                    .forEach(under::add);
        }
        for (double x : under) {
            List<FramePoint> at =
                    topside.points().stream().filter(p -> p.xM() == x).toList();
            if (at.isEmpty()) {
                ring.add(new Coordinate(x, heightAt(topside, x)));
            }
            for (int i = at.size() - 1; i >= 0; i--) {
                ring.add(new Coordinate(x, at.get(i).hM()));
            }
        }
        if (load.rearXM() < rear) {
            double low = points.stream()
                    .filter(p -> p.xM() <= rear)
                    .mapToDouble(FramePoint::hM)
                    .min()
                    .orElseThrow();
            boolean face = points.get(0).xM() == points.get(1).xM();
            double bottom = face ? low : Math.min(low, topside.points().get(0).hM());
            ring.add(new Coordinate(Math.min(rear, load.frontXM()), bottom));
            ring.add(new Coordinate(load.rearXM(), bottom));
        }
        return closed(ring);
    }

    private static double heightAt(Outline line, double xM) {
        List<FramePoint> points = line.points();
        for (int i = points.size() - 1; i > 0; i--) {
            FramePoint a = points.get(i - 1);
            FramePoint b = points.get(i);
            if (xM >= a.xM() && xM <= b.xM()) {
                return a.xM() == b.xM() ? b.hM() : a.hM() + (b.hM() - a.hM()) * (xM - a.xM()) / (b.xM() - a.xM());
            }
        }
        throw new IllegalArgumentException(xM + " is off the line");
    }
}
