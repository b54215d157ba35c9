package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.turning.TurningCombination.AxleLine;
import org.cresthaul.turning.TurningCombination.Body;
import org.cresthaul.turning.TurningCombination.PlanUnit;

/**
 * A rectangle of a unit and what it keeps off: tires off everything but pavement, bodies off obstacles and opposing
 * lanes, low parts off raised ground.
 *
 * @param unit index into the chain
 * @param rearM frontM meters ahead of the unit's effective axle
 * @param rightM leftM from the unit's middle, positive to the left
 */
record PassingPart(int unit, PartOfUnit part, double rearM, double frontM, double rightM, double leftM, KeepOff off) {
    /** Tires of one side within this are on one strip of ground, meters. */
    private static final double SAME_M = 0.05;
    /** Tires this close behind each other roll over the same ground, meters. */
    private static final double CLOSE_M = 1.6;

    /** Everything of a combination that has something to keep off in a space. */
    static List<PassingPart> listOf(CornerSpace space, TurningCombination combination, List<LowPart> low) {
        List<PassingPart> parts = new ArrayList<>();
        for (int k = 0; k < combination.units().size(); k++) {
            PlanUnit unit = combination.units().get(k);
            PartOfUnit tires = UnitPart.TIRES.of(unit.name());
            for (AxleLine a : unit.tires()) {
                double rear = a.aheadM() - 0.5 * a.contactM();
                double front = a.aheadM() + 0.5 * a.contactM();
                double inner = a.halfWidthM() - a.treadM();
                parts.add(new PassingPart(k, tires, rear, front, inner, a.halfWidthM(), space.tires));
                parts.add(new PassingPart(k, tires, rear, front, -a.halfWidthM(), -inner, space.tires));
            }
            for (Body b : unit.bodies()) {
                add(parts, k, b.part(), b.rearM(), b.frontM(), b.halfWidthM(), space.obstacles);
                add(parts, k, b.part(), b.rearM(), b.frontM(), b.halfWidthM(), space.opposing);
            }
        }
        for (LowPart l : low) {
            add(parts, l.unit(), l.part(), l.rearM(), l.frontM(), l.halfWidthM(), space.raised(l.island()));
        }
        return List.copyOf(parts);
    }

    /**
     * The same parts with tires that roll close behind each other as one, over the ground between them too: for a first
     * look. Whatever lies there, the one behind rolls over a moment after.
     */
    static List<PassingPart> rough(List<PassingPart> parts) {
        List<PassingPart> rough = new ArrayList<>();
        for (PassingPart part : parts) {
            int like = part.isTires() ? closeTo(part, rough) : -1;
            if (like < 0) {
                rough.add(part);
            } else {
                PassingPart other = rough.get(like);
                rough.set(
                        like,
                        new PassingPart(
                                part.unit,
                                part.part,
                                Math.min(part.rearM, other.rearM),
                                Math.max(part.frontM, other.frontM),
                                Math.min(part.rightM, other.rightM),
                                Math.max(part.leftM, other.leftM),
                                part.off));
            }
        }
        return List.copyOf(rough);
    }

    private static int closeTo(PassingPart tires, List<PassingPart> among) {
        for (int i = 0; i < among.size(); i++) {
            PassingPart other = among.get(i);
            boolean sameSide =
                    Math.abs(other.rightM - tires.rightM) < SAME_M && Math.abs(other.leftM - tires.leftM) < SAME_M;
            double apart = Math.max(other.rearM - tires.frontM, tires.rearM - other.frontM);
            if (other.isTires() && other.unit == tires.unit && sameSide && apart < CLOSE_M) {
                return i;
            }
        }
        return -1;
    }

    private static void add(
            List<PassingPart> into, int unit, PartOfUnit part, double rear, double front, double half, KeepOff off) {
        if (!off.isEmpty()) {
            into.add(new PassingPart(unit, part, rear, front, -half, half, off));
        }
    }

    /** The same, longer by as much at both ends: it then covers what it passes over between two states. */
    PassingPart longerBy(double m) {
        return new PassingPart(unit, part, rearM - m, frontM + m, rightM, leftM, off);
    }

    boolean isTires() {
        return part.isTires();
    }

    double middleAheadM() {
        return 0.5 * (rearM + frontM);
    }

    double middleLeftM() {
        return 0.5 * (rightM + leftM);
    }

    /** Farthest of its places from its middle, meters. */
    double reachM() {
        return 0.5 * Hypotenuse.of(frontM - rearM, leftM - rightM);
    }

    /** Farthest of its places from the unit's effective axle, meters. */
    double leverM() {
        return Hypotenuse.of(Math.max(Math.abs(rearM), Math.abs(frontM)), Math.max(Math.abs(rightM), Math.abs(leftM)));
    }

    double aheadM(int corner) {
        return corner < 2 ? rearM : frontM;
    }

    /** Corners go rear left, rear right, front right, front left. */
    double leftM(int corner) {
        return corner == 0 || corner == 3 ? leftM : rightM;
    }

    /**
     * Distance of a place of the unit's frame, ahead and to the left, from the part; negative inside, by the nearest
     * side.
     */
    double outsideM(double placeAheadM, double placeLeftM) {
        double beyond = Math.max(rearM - placeAheadM, placeAheadM - frontM);
        double beside = Math.max(rightM - placeLeftM, placeLeftM - leftM);
        return beyond > 0 && beside > 0 ? Hypotenuse.of(beyond, beside) : Math.max(beyond, beside);
    }
}
