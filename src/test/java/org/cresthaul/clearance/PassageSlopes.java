package org.cresthaul.clearance;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.cresthaul.posture.PlainGround;
import org.cresthaul.rig.Axle;
import org.cresthaul.rig.Booster;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.Jeep;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Outline;
import org.cresthaul.rig.Setting;
import org.cresthaul.rig.Tractor;
import org.cresthaul.rig.Trailer;

/**
 * How far a passage reaches, and how fast a gap can change along it.
 *
 * <p>The bound: take one straight grade m away from the ground. Over straight ground every gap is constant, so a gap
 * changes only by what the ground under the wheels and under the gap strays from m, at most ε per meter. A point of a
 * unit moves by the weighted sum of its wheels' movements, the weights being the levers; their absolute values add up
 * to W. So the gap to the ground changes by at most (W + 1) ε per meter, that to a soffit by W ε and the soffit's own
 * slope against m. A quarter is added for the exact rotation that the levers leave out, and the search that uses the
 * bound checks it wherever it looks.
 */
final class PassageSlopes {
    private static final double SAFETY = 1.25;
    /** Covers wheel radii and how far a high point swings along the road when its unit pitches. */
    private static final double PAD_M = 2;

    private final PlainGround ground;
    private final PlainGround soffit;
    /**
     * Reach of tractor, trailer, booster, jeeps and boosters behind along the road from the steer axle, on level
     * ground; rear is negative.
     */
    private final double[] rearM;

    private final double[] frontM;
    private final double[] weights;
    private final double fromM;
    private final double toM;
    private final double[] mostAnywhere;

    PassageSlopes(LevelStance stance, Setting setting, PlainGround ground, PlainGround soffit) {
        this.ground = ground;
        this.soffit = soffit;
        boolean trailing = setting.booster() == BoosterState.TRAILING;
        int behind = trailing ? stance.boostersBehind().size() : 0;
        int units = 3 + stance.jeeps().size() + behind;
        rearM = new double[units];
        frontM = new double[units];
        weights = new double[units];
        mostAnywhere = new double[units];
        Tractor tractor = stance.tractor();
        Trailer trailer = stance.trailer();

        double steerX = tractor.steer().xM();
        List<Axle> tractorAxles = new ArrayList<>(tractor.drive().axles());
        tractorAxles.add(tractor.steer());
        reach(0, -steerX, List.of(tractor.underside(), tractor.topside()), tractorAxles);
        double driveX = tractor.drive().axles().get(0).xM();
        double fifthWheelX = tractor.fifthWheel().xM();
        weights[0] =
                Math.max(lever(steerX, driveX, 1, steerX + rearM[0]), lever(steerX, driveX, 1, steerX + frontM[0]));
        double atFifthWheel = lever(steerX, driveX, 1, fifthWheelX);
        double carrierToRoad = fifthWheelX - steerX;
        for (int j = 0; j < stance.jeeps().size(); j++) {
            Jeep jeep = stance.jeeps().get(j);
            double toRoad = carrierToRoad - jeep.kingpinXM();
            reach(
                    3 + j,
                    toRoad,
                    List.of(jeep.underside(), jeep.topside()),
                    jeep.axles().axles());
            double firstX = jeep.axles().axles().get(0).xM();
            for (double end : new double[] {rearM[3 + j], frontM[3 + j]}) {
                weights[3 + j] = Math.max(weights[3 + j], lever(jeep.kingpinXM(), firstX, atFifthWheel, end - toRoad));
            }
            weights[3 + j] = Math.max(weights[3 + j], atFifthWheel);
            atFifthWheel = lever(
                    jeep.kingpinXM(), firstX, atFifthWheel, jeep.fifthWheel().xM());
            carrierToRoad = toRoad + jeep.fifthWheel().xM();
        }

        double trailerToRoad = carrierToRoad - trailer.kingpinXM();
        List<Outline> outlines = new ArrayList<>(trailer.load());
        outlines.add(trailer.underside());
        outlines.add(trailer.topside());
        List<Axle> axles = new ArrayList<>(trailer.axles().axles());
        stance.booster().ifPresent(b -> {
            if (setting.booster() == BoosterState.CLOSE_COUPLED) {
                double shift =
                        b.closeCoupledAxleXM().orElseThrow() - b.onlyAxle().xM();
                outlines.add(b.underside().shiftedBy(shift));
                outlines.add(b.topside().shiftedBy(shift));
                axles.add(new Axle(
                        b.closeCoupledAxleXM().orElseThrow(), b.onlyAxle().radiusM()));
            } else if (setting.booster() == BoosterState.CARRIED) {
                outlines.add(b.carried().orElseThrow());
            }
        });
        reach(1, trailerToRoad, outlines, axles);
        double kingpinX = trailer.kingpinXM();
        double groupX = axles.get(0).xM();
        weights[1] = Math.max(
                atFifthWheel,
                Math.max(
                        lever(kingpinX, groupX, atFifthWheel, rearM[1] - trailerToRoad),
                        lever(kingpinX, groupX, atFifthWheel, frontM[1] - trailerToRoad)));

        if (trailing) {
            boosters(stance, new Beam(kingpinX + trailerToRoad, groupX + trailerToRoad, atFifthWheel), trailerToRoad);
        } else {
            rearM[2] = rearM[1];
            frontM[2] = frontM[1];
        }

        double start = ground.startM();
        double end = ground.endM();
        if (soffit != null) {
            start = Math.min(start, soffit.startM());
            end = Math.max(end, soffit.endM());
        }
        fromM = start - Arrays.stream(frontM).max().orElseThrow() - PAD_M;
        toM = end - Arrays.stream(rearM).min().orElseThrow() + PAD_M;
        for (int unit = 0; unit < units; unit++) {
            mostAnywhere[unit] = bound(unit, fromM, toM);
        }
    }

    /** A unit on a front support of a weight and a rear one, at places along the road. */
    private record Beam(double frontM, double rearM, double front) {
        double at(double roadM) {
            return lever(frontM, rearM, front, roadM);
        }
    }

    /** Each booster rides, or is a piece of the one ahead, or of all up to the trailer. */
    private void boosters(LevelStance stance, Beam trailer, double trailerToRoad) {
        List<Beam> beams = new ArrayList<>(List.of(trailer));
        List<Integer> all = new ArrayList<>(List.of(1));
        double hingeRoadM = stance.trailer().boosterHinge().orElseThrow().xM() + trailerToRoad;
        for (int i = 0; i < stance.boosters().size(); i++) {
            Booster booster = stance.boosters().get(i);
            int unit = i == 0 ? 2 : 2 + stance.jeeps().size() + i;
            double toRoad = hingeRoadM - booster.hingeXM();
            reach(
                    unit,
                    toRoad,
                    List.of(booster.underside(), booster.topside()),
                    booster.axles().axles());
            double hinge = hingeRoadM;
            double atHinge = beams.stream().mapToDouble(b -> b.at(hinge)).max().orElseThrow();
            beams.add(new Beam(hinge, booster.axles().axles().get(0).xM() + toRoad, atHinge));
            for (Beam beam : beams) {
                weights[unit] = Math.max(weights[unit], Math.max(beam.at(rearM[unit]), beam.at(frontM[unit])));
            }
            // At a hinge stop the booster's wheels move whatever is ahead of it too.
            for (int ahead : all) {
                rearM[ahead] = Math.min(rearM[ahead], rearM[unit]);
            }
            all.add(unit);
            hingeRoadM = booster.nextHinge().map(h -> h.at().xM() + toRoad).orElse(Double.NaN);
        }
    }

    private void reach(int unit, double toRoad, List<Outline> outlines, List<Axle> axles) {
        rearM[unit] = Double.POSITIVE_INFINITY;
        frontM[unit] = Double.NEGATIVE_INFINITY;
        for (Outline outline : outlines) {
            rearM[unit] = Math.min(rearM[unit], outline.rearXM() + toRoad);
            frontM[unit] = Math.max(frontM[unit], outline.frontXM() + toRoad);
        }
        for (Axle axle : axles) {
            rearM[unit] = Math.min(rearM[unit], axle.xM() - axle.radiusM() + toRoad);
            frontM[unit] = Math.max(frontM[unit], axle.xM() + axle.radiusM() + toRoad);
        }
    }

    /** Sum of absolute weights at {@code x} of a beam on a front support (of weight {@code front}) and a rear one. */
    private static double lever(double frontX, double rearX, double front, double x) {
        double share = (frontX - x) / (frontX - rearX);
        return Math.abs(1 - share) * front + Math.abs(share);
    }

    /** Steer position with every part still before the first point of every line. */
    double fromM() {
        return fromM;
    }

    /** Steer position with every part past the last point of every line. */
    double toM() {
        return toM;
    }

    /** The largest bound of a unit anywhere on the passage. */
    double boundAnywhere(int unit) {
        return mostAnywhere[unit];
    }

    /**
     * Most that a gap of a unit (0 tractor, 1 trailer, 2 booster, then jeeps, then boosters behind) changes per meter
     * between two steer positions.
     */
    double bound(int unit, double fromSteerM, double toSteerM) {
        double rear = Math.min(rearM[0], rearM[unit]);
        double front = Math.max(frontM[0], frontM[unit]);
        double least = ground.leastSlope(fromSteerM + rear - PAD_M, toSteerM + front + PAD_M);
        double most = ground.mostSlope(fromSteerM + rear - PAD_M, toSteerM + front + PAD_M);
        double stray = (most - least) / 2;
        if (soffit == null) {
            return SAFETY * (weights[unit] + 1) * stray;
        }
        double from = Math.max(soffit.startM(), fromSteerM + rearM[unit] - PAD_M);
        double to = Math.min(soffit.endM(), toSteerM + frontM[unit] + PAD_M);
        if (from > to) {
            return 0;
        }
        // At the very end of a soffit the segment looked up lies outside it, level: that only widens the bound.
        double grade = (most + least) / 2;
        double against =
                Math.max(Math.abs(soffit.mostSlope(from, to) - grade), Math.abs(soffit.leastSlope(from, to) - grade));
        return SAFETY * (weights[unit] * stray + against);
    }
}
