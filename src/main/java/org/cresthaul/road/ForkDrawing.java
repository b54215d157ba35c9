package org.cresthaul.road;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.cresthaul.geometry.Areas;
import org.cresthaul.road.CornerTemplate.CurbReturn;
import org.cresthaul.road.Mouth.Leg;
import org.locationtech.jts.geom.Geometry;

/** Three roads that lead away from one place, driven on the right. */
final class ForkDrawing {
    /** Roads that cross at less than this overlap far beyond where they meet. */
    private static final double CROSSING_RAD = Math.toRadians(30);

    private static final double WAY_RADIUS_M = 25;

    private ForkDrawing() {}

    static DrawnCorner of(CornerTemplate t, Fork fork) {
        RoadStrip in0 = new RoadStrip(0, t.approach(), false, 1);
        RoadStrip out0 = new RoadStrip(t.turnRad(), t.exit(), false, 1);
        RoadStrip third0 = new RoadStrip(fork.thirdRad(), fork.third(), false, 1);
        Leg back = new Leg(Math.PI, -in0.outerM, in0.innerM);
        Leg onward = new Leg(t.turnRad(), out0.innerM, -out0.outerM);
        Leg aside = new Leg(fork.thirdRad(), third0.innerM, -third0.outerM);
        List<Leg> legs = new ArrayList<>(List.of(back, onward, aside));
        legs.sort(Comparator.comparingDouble(l -> (l.awayRad() + 4 * Math.PI) % (2 * Math.PI)));
        double reachM = CornerTemplate.reachM(returnsM(fork, legs, aside));
        RoadStrip in = new RoadStrip(0, t.approach(), false, reachM);
        RoadStrip out = new RoadStrip(t.turnRad(), t.exit(), false, reachM);

        Geometry mouths = Areas.none();
        Geometry inside = Areas.none();
        for (int i = 0; i < 3; i++) {
            Leg a = legs.get(i);
            Leg b = legs.get((i + 1) % 3);
            Geometry mouth = Mouth.area(a, b, curb(fork, legs, i, aside), t.apronM());
            mouths = Areas.union(mouths, mouth);
            if (a != aside && b != aside && Mouth.between(a, b) < Math.PI) {
                inside = Areas.union(inside, mouth);
            }
        }
        if (t.turnRad() > 0) {
            // Outside of a turn across its own lanes go on, whether or not the third road leads away there.
            inside = Areas.union(inside, Mouth.area(back, onward, fork.inside(), 0));
        }
        Geometry thirdArea = aside.area(reachM);
        Geometry all = Areas.union(Areas.union(back.area(reachM), onward.area(reachM)), thirdArea);
        Geometry box = Areas.common(
                Areas.union(all, mouths),
                box(in, out, new RoadStrip(fork.thirdRad(), fork.third(), false, reachM), reachM));
        Geometry own = Areas.union(in.before(in.ownFrom, in.ownTo), out.beyond(out.ownFrom, out.ownTo));
        // Turning to its own side the truck has its own lanes and the return; turning across, the junction itself as
        // well.
        Geometry pavement = Areas.union(own, inside);
        if (t.turnRad() > 0) {
            pavement = Areas.union(pavement, box);
        }
        Geometry before = in.before(in.opposingFrom, in.opposingTo);
        Geometry beyond = out.beyond(out.opposingFrom, out.opposingTo);
        Geometry junction = Areas.union(Areas.union(pavement, box), mouths);
        Optional<Geometry> escorted = escorted(t, fork, junction, before, beyond, thirdArea);
        Geometry opposing =
                Areas.without(Areas.union(Areas.union(before, beyond), Areas.union(thirdArea, mouths)), pavement);
        return new DrawnCorner(
                pavement,
                escorted,
                opposing,
                List.of(),
                RoundedWay.of(
                        new RoundedWay.Line(0, in.middleM()),
                        new RoundedWay.Line(t.turnRad(), out.middleM()),
                        radiusM(t, fork, in, out),
                        reachM),
                in.end(false),
                out.end(false));
    }

    /** What escorts open: the whole junction, and the lanes of the other direction on roads that lend them. */
    private static Optional<Geometry> escorted(
            CornerTemplate t, Fork fork, Geometry junction, Geometry before, Geometry beyond, Geometry third) {
        if (!t.approach().borrow() && !t.exit().borrow() && !fork.third().borrow()) {
            return Optional.empty();
        }
        Geometry wide = t.approach().borrow() ? Areas.union(junction, before) : junction;
        wide = t.exit().borrow() ? Areas.union(wide, beyond) : wide;
        return Optional.of(fork.third().borrow() ? Areas.union(wide, third) : wide);
    }

    /** How far the farthest curb return reaches from the crossing of the lines. */
    private static double returnsM(Fork fork, List<Leg> legs, Leg aside) {
        double returns = 0;
        for (int i = 0; i < 3; i++) {
            returns = Math.max(returns, Mouth.reachM(legs.get(i), legs.get((i + 1) % 3), curb(fork, legs, i, aside)));
        }
        return returns;
    }

    private static CurbReturn curb(Fork fork, List<Leg> legs, int first, Leg aside) {
        return legs.get(first) == aside || legs.get((first + 1) % 3) == aside
                ? CurbReturn.single(fork.noseM())
                : fork.inside();
    }

    /** Where two of the roads cross. */
    private static Geometry box(RoadStrip in, RoadStrip out, RoadStrip third, double reachM) {
        Geometry box = crossing(in, true, out, false);
        box = Areas.union(box, crossing(in, true, third, false));
        return Areas.union(box, crossing(out, false, third, false));
    }

    private static Geometry crossing(RoadStrip a, boolean aBefore, RoadStrip b, boolean bBefore) {
        double sine = Math.abs(Math.sin(a.headingRad - b.headingRad));
        if (sine >= Math.sin(CROSSING_RAD)) {
            return Areas.common(a.strip(a.outerM, a.innerM), b.strip(b.outerM, b.innerM));
        }
        return Areas.common(
                aBefore ? a.before(a.outerM, a.innerM) : a.beyond(a.outerM, a.innerM),
                bBefore ? b.before(b.outerM, b.innerM) : b.beyond(b.outerM, b.innerM));
    }

    /** Of the way's arc: round the return inside the turn. */
    private static double radiusM(CornerTemplate t, Fork fork, RoadStrip in, RoadStrip out) {
        double set = fork.inside().middleM() + fork.inside().offsetM();
        boolean left = t.turnRad() > 0;
        double beside = Math.min(
                left ? in.innerM - in.middleM() : in.middleM() - in.outerM,
                left ? out.innerM - out.middleM() : out.middleM() - out.outerM);
        return Math.abs(t.turnRad()) < CROSSING_RAD ? Math.max(WAY_RADIUS_M, set + beside) : set + beside;
    }
}
