package org.cresthaul.clearance;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.cresthaul.posture.CombinationShape;
import org.cresthaul.posture.CombinationShape.TrailingBooster;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.AxleGroup;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Jeep;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Outline;
import org.cresthaul.rig.Setting;
import org.cresthaul.rig.Tractor;
import org.cresthaul.rig.Trailer;

/**
 * What of the coupled units can strike each other, about kingpins and hinge.
 *
 * <p>The gooseneck, all of the trailer ahead of the deck front, stays on the fifth wheel when notch or hydraulics move
 * the deck front: it turns about the kingpin, so far that its rear end stays at the deck front. Everything behind goes
 * with the trailer's frame. A load is filled down to the trailer's topside; where it reaches beyond the trailer's end,
 * down to the lowest point drawn there if its end is drawn as a vertical face, and otherwise to the topside's end if
 * that is lower.
 */
final class UnitSolids {
    private UnitSolids() {}

    /**
     * A unit of a shape and the one ahead of it; empty where nothing of either lies beyond the coupling's reach.
     *
     * @param unit the place of the one behind in the chain, from 1
     */
    static Optional<UnitGaps> at(CombinationShape shape, Setting setting, int unit) {
        return switch (shape.units().get(unit).name().kind()) {
            case TRACTOR -> throw new IllegalArgumentException("nothing is ahead of the tractor");
            case JEEP -> gaps(ahead(shape, unit), jeep(shape, unit));
            case TRAILER -> gaps(ahead(shape, unit), trailer(shape, setting));
            case BOOSTER -> atHinge(shape, unit);
        };
    }

    /** The tractor or a jeep under the kingpin that it carries. */
    private static UnitSolid ahead(CombinationShape shape, int unit) {
        LevelStance stance = shape.stance();
        if (unit == 1) {
            Tractor tractor = stance.tractor();
            return onFifthWheel(
                    new UnitSolid.Builder(tractor.plateReachM()),
                    around(tractor.underside(), tractor.topside()),
                    tractor.drive(),
                    "drive tire",
                    tractor.fifthWheel());
        }
        Jeep jeep = stance.jeeps().get(unit - 2);
        return onFifthWheel(
                new UnitSolid.Builder(jeep.plateReachM()),
                around(jeep.underside(), jeep.topside()),
                jeep.axles(),
                "jeep tire",
                jeep.fifthWheel());
    }

    private static UnitSolid onFifthWheel(
            UnitSolid.Builder solid, List<FramePoint> outline, AxleGroup group, String tire, FramePoint fifthWheel) {
        solid.outline(outline, fifthWheel, 0);
        for (Axle axle : group.axles()) {
            solid.tire(new FramePoint(axle.xM(), axle.radiusM(), tire), axle.radiusM(), fifthWheel);
        }
        return solid.build();
    }

    /** A jeep about its own kingpin. */
    private static UnitSolid jeep(CombinationShape shape, int unit) {
        Jeep jeep = shape.stance().jeeps().get(unit - 1);
        FramePoint kingpin = new FramePoint(
                jeep.kingpinXM(), shape.units().get(unit).heldAt().hM());
        return onFifthWheel(
                new UnitSolid.Builder(reachAheadM(shape.stance(), unit)),
                around(jeep.underside(), jeep.topside()),
                jeep.axles(),
                "jeep tire",
                kingpin);
    }

    private static double reachAheadM(LevelStance stance, int unit) {
        return unit == 1
                ? stance.tractor().plateReachM()
                : stance.jeeps().get(unit - 2).plateReachM();
    }

    /** Trailer and load about the kingpin. */
    private static UnitSolid trailer(CombinationShape shape, Setting setting) {
        Trailer trailer = shape.stance().trailer();
        FramePoint drawn = new FramePoint(
                trailer.kingpinXM(), shape.stance().trailerFifthWheel().hM());
        double drop = kingpinDropM(trailer, setting);
        FramePoint set = new FramePoint(drawn.xM(), drawn.hM() - drop);
        double turn = gooseneckTurnRad(trailer, drawn.hM(), drop);
        double front = trailer.deckFront().xM();
        UnitSolid.Builder behind = new UnitSolid.Builder(shape.stance().trailerPlateReachM());
        Outline underside = shape.trailer().undersides().get(0);
        add(
                behind,
                between(underside, front, underside.frontXM()),
                between(trailer.topside(), front, trailer.topside().frontXM()),
                drawn,
                turn);
        add(
                behind,
                between(underside, underside.rearXM(), front),
                between(trailer.topside(), trailer.topside().rearXM(), front),
                set,
                0);
        for (Outline load : onTop(shape)) {
            boolean onGooseneck = load.rearXM() >= front;
            behind.outline(filled(load, trailer.topside()), onGooseneck ? drawn : set, onGooseneck ? turn : 0);
        }
        return behind.build();
    }

    /** A trailing booster and the unit that holds it. */
    private static Optional<UnitGaps> atHinge(CombinationShape shape, int unit) {
        TrailingBooster booster = shape.joint(unit);
        double reachM = shape.stance().boosterReachM(unit - shape.trailerIndex() - 1);
        UnitSolid.Builder ahead = new UnitSolid.Builder(reachM);
        if (unit - 1 == shape.trailerIndex()) {
            Trailer trailer = shape.stance().trailer();
            ahead.outline(around(shape.trailer().undersides().get(0), trailer.topside()), booster.hinge(), 0);
            for (Outline load : onTop(shape)) {
                ahead.outline(filled(load, trailer.topside()), booster.hinge(), 0);
            }
            shape.raisedTires()
                    .forEach(t ->
                            ahead.tire(new FramePoint(t.xM(), t.hM(), "raised tire"), t.radiusM(), booster.hinge()));
        } else {
            ahead.outline(around(shape.joint(unit - 1)), booster.hinge(), 0);
        }
        UnitSolid.Builder behind = new UnitSolid.Builder(reachM)
                .outline(
                        around(booster),
                        new FramePoint(booster.hingeXM(), booster.hinge().hM()),
                        0);
        return gaps(ahead.build(), behind.build());
    }

    private static List<FramePoint> around(TrailingBooster booster) {
        return around(
                booster.outlines().undersides().get(0),
                booster.outlines().topsides().get(0));
    }

    private static Optional<UnitGaps> gaps(UnitSolid ahead, UnitSolid behind) {
        return ahead.pieces.length == 0 || behind.pieces.length == 0
                ? Optional.empty()
                : Optional.of(new UnitGaps(ahead, behind));
    }

    /** How far notch and raise let the kingpin drop in the trailer's frame, meters. */
    private static double kingpinDropM(Trailer trailer, Setting setting) {
        double valveX = trailer.axles().axles().get(trailer.valveAxle()).xM();
        return (setting.notchOffsetM() + setting.frontRaiseM())
                / (trailer.deckFront().xM() - valveX)
                * (trailer.kingpinXM() - valveX);
    }

    /** How far the gooseneck is turned against the frame then, nose up. */
    private static double gooseneckTurnRad(Trailer trailer, double kingpinHM, double dropM) {
        double ahead = trailer.kingpinXM() - trailer.deckFront().xM();
        double above = kingpinHM - trailer.deckFront().hM();
        return Math.atan2(above - dropM, ahead) - Math.atan2(above, ahead);
    }

    /** Load and carried booster: what {@link CombinationShape} counts as topside beside the trailer's own. */
    private static List<Outline> onTop(CombinationShape shape) {
        List<Outline> topsides = shape.trailer().topsides();
        return topsides.subList(1, topsides.size());
    }

    private static void add(
            UnitSolid.Builder to,
            List<FramePoint> underside,
            List<FramePoint> topside,
            FramePoint pivot,
            double turnRad) {
        if (underside.size() > 1 && topside.size() > 1) {
            to.outline(around(underside, topside), pivot, turnRad);
        }
    }

    private static List<FramePoint> around(Outline underside, Outline topside) {
        return around(underside.points(), topside.points());
    }

    private static List<FramePoint> around(List<FramePoint> underside, List<FramePoint> topside) {
        List<FramePoint> loop = new ArrayList<>(underside);
        List<FramePoint> back = new ArrayList<>(topside);
        Collections.reverse(back);
        loop.addAll(back);
        return loop;
    }

    /** A line from one place to another along the unit; empty where it has no length there. */
    private static List<FramePoint> between(Outline line, double fromXM, double toXM) {
        List<FramePoint> part = new ArrayList<>();
        List<FramePoint> points = line.points();
        for (int i = 0; i < points.size(); i++) {
            FramePoint p = points.get(i);
            if (i > 0) {
                FramePoint q = points.get(i - 1);
                for (double x : new double[] {fromXM, toXM}) {
                    if (q.xM() < x && x < p.xM()) {
                        part.add(q.toward(p, (x - q.xM()) / (p.xM() - q.xM())));
                    }
                }
            }
            if (p.xM() >= fromXM && p.xM() <= toXM) {
                part.add(p);
            }
        }
        return part.isEmpty() || part.get(0).xM() == part.get(part.size() - 1).xM() ? List.of() : part;
    }

    private static List<FramePoint> filled(Outline load, Outline topside) {
        List<FramePoint> loop = new ArrayList<>(load.points());
        List<FramePoint> points = load.points();
        if (load.frontXM() > topside.frontXM()) {
            FramePoint end = points.get(points.size() - 1);
            double bottomM = bottomM(
                    points,
                    topside.frontXM(),
                    Double.POSITIVE_INFINITY,
                    end.xM() == points.get(points.size() - 2).xM(),
                    lastOf(topside).hM());
            loop.add(new FramePoint(end.xM(), bottomM, end.part()));
            loop.add(new FramePoint(Math.max(topside.frontXM(), load.rearXM()), bottomM, end.part()));
        }
        List<FramePoint> below = new ArrayList<>(between(topside, load.rearXM(), load.frontXM()));
        Collections.reverse(below);
        String part = points.get(0).part();
        below.forEach(p -> loop.add(new FramePoint(p.xM(), p.hM(), part)));
        if (load.rearXM() < topside.rearXM()) {
            FramePoint end = points.get(0);
            double bottomM = bottomM(
                    points,
                    Double.NEGATIVE_INFINITY,
                    topside.rearXM(),
                    end.xM() == points.get(1).xM(),
                    topside.points().get(0).hM());
            loop.add(new FramePoint(Math.min(topside.rearXM(), load.frontXM()), bottomM, end.part()));
            loop.add(new FramePoint(end.xM(), bottomM, end.part()));
        }
        return loop;
    }

    private static FramePoint lastOf(Outline outline) {
        return outline.points().get(outline.points().size() - 1);
    }

    /** How low an overhanging load reaches: what is drawn of it there counts once its end is drawn as a face. */
    private static double bottomM(
            List<FramePoint> load, double fromXM, double toXM, boolean faceDrawn, double trailerEndM) {
        double lowest = load.stream()
                .filter(p -> p.xM() >= fromXM && p.xM() <= toXM)
                .mapToDouble(FramePoint::hM)
                .min()
                .orElseThrow();
        return faceDrawn ? lowest : Math.min(lowest, trailerEndM);
    }
}
