package org.cresthaul.clearance;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.clearance.UnitMotions.UnitMotion;
import org.cresthaul.clearance.UnitPlaces.Placed;
import org.cresthaul.geometry.Interval;
import org.cresthaul.posture.CoupledCombination;
import org.cresthaul.posture.PlacedUnit;
import org.cresthaul.posture.WheelPaths;
import org.cresthaul.rig.AxleKind;
import org.cresthaul.road.RolledProfile;

/**
 * How far a combination may roll at one position, toward one side: every unit's roll lies between the least and the
 * greatest of what the axles stand at, however stiff springs, frames and couplings are, since it is a mean of those
 * with weights that are not negative. So at one place beside the middle its part rises by no less than the least of
 * them over its arm, and under a structure by no more than the greatest.
 *
 * <p>Of a stretch it gives bounds: between both ends each axle's tilt is that of its two paths, taken in bows over the
 * way it passes. The least of several even motions lies nowhere below even between its ends. For one search at a time.
 */
final class Roll {
    private final Tilt steer;
    /** Of the axles of each unit. */
    private final List<List<Tilt>> units = new ArrayList<>();

    private final int side;
    /** +1 for what must stay above the ground: the least rise counts; -1 for tops: the greatest. */
    private final int above;

    private final Interval leftBow = new Interval();
    private final Interval rightBow = new Interval();
    private double least;
    private double uneven;

    /** Both wheels of an axle, {@code trackM} apart. */
    private record Tilt(RolledProfile left, RolledProfile right, double trackM) {
        static Tilt of(WheelPaths ground, AxleKind kind, double radiusM) {
            return new Tilt(
                    ground.side(radiusM, kind, -1),
                    ground.side(radiusM, kind, 1),
                    2 * ground.tracks().halfM(kind));
        }

        /** Positive with the right side higher. */
        double atRad(double x) {
            return (right.heightAt(x) - left.heightAt(x)) / trackM;
        }
    }

    /** Toward the side on which a place lies; of what is over the ground, or else under a structure. */
    Roll(RoadPlace place, CoupledCombination combination, boolean overGround) {
        side = place.side();
        above = overGround ? 1 : -1;
        WheelPaths ground = place.ground();
        steer = Tilt.of(ground, AxleKind.STEER, combination.steerRadiusM());
        for (int k = 0; k < combination.groups().size(); k++) {
            List<AxleKind> kinds = combination.shape().axleKinds(k);
            List<Tilt> tilts = new ArrayList<>();
            for (int i = 0; i < kinds.size(); i++) {
                tilts.add(Tilt.of(ground, kinds.get(i), combination.groups().get(k).radiusM[i]));
            }
            units.add(tilts);
        }
    }

    /** At one position: the rise that counts per meter beside the middle, toward the side, radians. */
    double atRad(Placed at) {
        least = Double.POSITIVE_INFINITY;
        add(steer, at.unit(0).pivotX);
        for (int k = 0; k < units.size(); k++) {
            add(units.get(k), at.unit(k).wheelX);
        }
        return above * least;
    }

    private void add(List<Tilt> tilts, double[] x) {
        for (int i = 0; i < tilts.size(); i++) {
            add(tilts.get(i), x[i]);
        }
    }

    private void add(Tilt tilt, double x) {
        least = Math.min(least, above * side * tilt.atRad(x));
    }

    /** How much less than even the roll that counts can be anywhere between two positions, radians. */
    double unevenRad(Passage.Span span, Placed a, Placed b, UnitMotion[] ways) {
        uneven = 0;
        // The steer axle is what advances evenly.
        pass(steer, span.startM, span.endM, 0);
        for (int k = 0; k < ways.length; k++) {
            double speedOff = ways[k].motion().speedOff;
            // Where a booster reaches its hinge's limits, how its wheel moves in between is open, but for its way.
            pass(units.get(k), a.unit(k), b.unit(k), ways[k].free() ? speedOff : Math.max(1, speedOff));
        }
        return uneven;
    }

    private void pass(List<Tilt> tilts, PlacedUnit a, PlacedUnit b, double speedOff) {
        for (int i = 0; i < tilts.size(); i++) {
            pass(tilts.get(i), a.wheelX[i], b.wheelX[i], speedOff);
        }
    }

    /**
     * One axle from one place to another, its rate off one by no more than {@code speedOff}: then it is off even by
     * half of that times the way, and its tilt by its mean slope times that and by the bows of both paths.
     */
    private void pass(Tilt tilt, double fromX, double toX, double speedOff) {
        // Where a wheel may go back it may leave the way between both places.
        if (!(toX > fromX) || speedOff > 1) {
            uneven = Double.POSITIVE_INFINITY;
            return;
        }
        leftBow.clear();
        rightBow.clear();
        tilt.left.addBow(fromX, toX, leftBow);
        tilt.right.addBow(fromX, toX, rightBow);
        double bow = side * above > 0 ? rightBow.lo - leftBow.hi : leftBow.lo - rightBow.hi;
        double turned = Math.abs(tilt.atRad(toX) - tilt.atRad(fromX));
        double share = speedOff < 0.5 ? 0.5 * speedOff / (1 - speedOff) : 1;
        uneven = Math.max(uneven, -bow / tilt.trackM + share * turned);
    }
}
