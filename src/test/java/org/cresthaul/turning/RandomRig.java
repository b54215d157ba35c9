package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.cresthaul.rig.UnitName;
import org.cresthaul.turning.TurningCombination.AxleLine;
import org.cresthaul.turning.TurningCombination.Body;
import org.cresthaul.turning.TurningCombination.PlanUnit;

/**
 * Random combinations of usual proportions (common practice): a tractor alone, a lowbed, one with its booster trailing
 * on a pivot or close-coupled; wide loads, loads that overhang the rear.
 */
final class RandomRig {
    private RandomRig() {}

    static TurningCombination of(SplittableRandom random) {
        double steer = Math.toRadians(random.nextDouble(32, 46));
        double lockM = random.nextDouble(3.5, 9);
        double spread = random.nextDouble(1.25, 1.45);
        double driveM = random.nextDouble(4.6, 6.8);
        List<Double> drive = new ArrayList<>();
        int driven = random.nextInt(2, 4);
        for (int i = 0; i < driven; i++) {
            drive.add(driveM + (i - (driven - 1) / 2.0) * spread);
        }
        double tractorM = length(drive);
        double tractorHalf = random.nextDouble(1.2, 1.3);
        List<AxleLine> tractorTires = new ArrayList<>();
        tractorTires.add(new AxleLine(tractorM, tractorHalf - 0.02, random.nextDouble(0.28, 0.42), 0.25));
        drive.forEach(
                x -> tractorTires.add(new AxleLine(tractorM - x, tractorHalf, random.nextDouble(0.55, 0.7), 0.22)));
        PlanUnit tractor = new PlanUnit(
                UnitName.TRACTOR,
                tractorTires,
                List.of(new Body(
                        UnitPart.BODY.of(UnitName.TRACTOR),
                        tractorM - driveM - random.nextDouble(1.2, 2.2),
                        tractorM + random.nextDouble(0.7, 1.5),
                        tractorHalf + 0.02)));
        int kind = random.nextInt(10);
        if (kind == 0) {
            return new TurningCombination(
                    List.of(new TurningUnit(tractorM, 0)), List.of(tractor), steer, lockM, List.of());
        }
        double trailerM = random.nextDouble(9, 15);
        List<Double> group = new ArrayList<>();
        int axles = random.nextInt(2, 5);
        for (int i = 0; i < axles; i++) {
            group.add(trailerM + (i - (axles - 1) / 2.0) * 1.38);
        }
        double lastM = group.get(axles - 1);
        boolean close = kind == 1 || kind == 2;
        boolean trailing = kind >= 3 && kind <= 5;
        if (close) {
            group.add(lastM + random.nextDouble(1.4, 3));
        }
        double effectiveM = length(group);
        double trailerHalf = random.nextDouble(1.22, 1.55);
        List<AxleLine> tires = new ArrayList<>();
        group.forEach(x -> tires.add(new AxleLine(effectiveM - x, trailerHalf, random.nextDouble(0.5, 0.75), 0.22)));
        double rearM = group.get(group.size() - 1) + random.nextDouble(0.6, 1.5);
        List<Body> bodies = new ArrayList<>(List.of(new Body(
                UnitPart.BODY.of(UnitName.TRAILER),
                effectiveM - rearM,
                effectiveM + random.nextDouble(0.5, 1.4),
                trailerHalf + 0.02)));
        if (random.nextInt(3) == 0) {
            double loadRearM = rearM + random.nextDouble(-5, 3.5);
            bodies.add(new Body(
                    UnitPart.LOAD.of(UnitName.TRAILER),
                    effectiveM - loadRearM,
                    effectiveM - random.nextDouble(2.5, 4.5),
                    random.nextDouble(1.3, 2.3)));
        }
        List<TurningUnit> chain = new ArrayList<>();
        List<PlanUnit> units = new ArrayList<>(List.of(tractor, new PlanUnit(UnitName.TRAILER, tires, bodies)));
        chain.add(new TurningUnit(tractorM, -random.nextDouble(0, 0.7)));
        List<Double> limits = new ArrayList<>(List.of(Math.toRadians(random.nextDouble(55, 95))));
        if (trailing) {
            double pivotM = lastM + random.nextDouble(0.6, 1.8);
            double boosterM = random.nextDouble(2.2, 5);
            chain.add(new TurningUnit(effectiveM, pivotM - effectiveM));
            chain.add(new TurningUnit(boosterM, 0));
            limits.add(Math.toRadians(random.nextDouble(20, 45)));
            units.add(new PlanUnit(
                    UnitName.BOOSTER,
                    List.of(new AxleLine(0, trailerHalf, 0.6, 0.22)),
                    List.of(new Body(
                            UnitPart.BODY.of(UnitName.BOOSTER),
                            -random.nextDouble(0.5, 1),
                            boosterM - 0.1,
                            trailerHalf))));
        } else {
            chain.add(new TurningUnit(effectiveM, 0));
        }
        return new TurningCombination(chain, units, steer, lockM, limits);
    }

    /** The same with a jeep behind its tractor; a tractor alone stays so. */
    static TurningCombination withJeep(TurningCombination any, SplittableRandom random) {
        if (any.chain().size() < 2) {
            return any;
        }
        double spread = random.nextDouble(1.25, 1.45);
        double middleM = random.nextDouble(3.6, 5.2);
        int axles = random.nextInt(2, 4);
        List<Double> group = new ArrayList<>();
        for (int i = 0; i < axles; i++) {
            group.add(middleM + (i - (axles - 1) / 2.0) * spread);
        }
        double effectiveM = length(group);
        double half = random.nextDouble(1.22, 1.4);
        List<AxleLine> tires = new ArrayList<>();
        group.forEach(x -> tires.add(new AxleLine(effectiveM - x, half, random.nextDouble(0.5, 0.75), 0.22)));
        PlanUnit jeep = new PlanUnit(
                UnitName.jeep(1),
                tires,
                List.of(new Body(
                        UnitPart.BODY.of(UnitName.jeep(1)),
                        effectiveM - group.get(axles - 1) - random.nextDouble(0.5, 0.9),
                        effectiveM + random.nextDouble(0.4, 0.8),
                        half + 0.02)));
        List<TurningUnit> chain = new ArrayList<>(any.chain());
        chain.add(1, new TurningUnit(effectiveM, -random.nextDouble(0, 2)));
        List<PlanUnit> units = new ArrayList<>(any.units());
        units.add(1, jeep);
        List<Double> limits = new ArrayList<>(any.articulationLimitRad());
        limits.add(0, Math.toRadians(random.nextDouble(45, 85)));
        return new TurningCombination(chain, units, any.steerLimitRad(), any.lockDistanceM(), limits);
    }

    /**
     * The same with one booster or two more behind it, each on a pivot and on one to three axles; a tractor alone stays
     * so.
     */
    static TurningCombination withBoosters(TurningCombination any, SplittableRandom random) {
        if (any.chain().size() < 2) {
            return any;
        }
        List<TurningUnit> chain = new ArrayList<>(any.chain());
        List<PlanUnit> units = new ArrayList<>(any.units());
        List<Double> limits = new ArrayList<>(any.articulationLimitRad());
        int more = random.nextInt(1, 3);
        for (int i = 0; i < more; i++) {
            int last = chain.size() - 1;
            double rearM = units.get(last).bodies().stream()
                    .filter(b -> b.part().part() != UnitPart.LOAD)
                    .mapToDouble(Body::rearM)
                    .min()
                    .orElseThrow();
            chain.set(last, new TurningUnit(chain.get(last).hitchToAxleM(), random.nextDouble(0, 0.4) - rearM));
            List<Double> group = new ArrayList<>(List.of(random.nextDouble(2.2, 3.5)));
            for (int axles = random.nextInt(1, 4); group.size() < axles; ) {
                group.add(group.get(group.size() - 1) + 1.38);
            }
            double effectiveM = length(group);
            double half = random.nextDouble(1.22, 1.4);
            double lastM = group.get(group.size() - 1);
            int number = (int) units.stream()
                            .filter(u -> u.name().kind() == UnitName.Kind.BOOSTER)
                            .count()
                    + 1;
            chain.add(new TurningUnit(effectiveM, 0));
            limits.add(Math.toRadians(random.nextDouble(20, 45)));
            units.add(new PlanUnit(
                    UnitName.booster(number),
                    group.stream()
                            .map(x -> new AxleLine(effectiveM - x, half, 0.6, 0.22))
                            .toList(),
                    List.of(new Body(
                            UnitPart.BODY.of(UnitName.booster(number)),
                            effectiveM - lastM - random.nextDouble(0.5, 1),
                            effectiveM - 0.1,
                            half))));
        }
        return new TurningCombination(chain, units, any.steerLimitRad(), any.lockDistanceM(), limits);
    }

    /** The same, every unit behind the tractor with one axle at least whose wheels turn. */
    static TurningCombination withSteering(TurningCombination any, SplittableRandom random) {
        List<TurningUnit> chain = new ArrayList<>(any.chain());
        List<PlanUnit> units = new ArrayList<>(any.units());
        for (int k = 1; k < chain.size(); k++) {
            TurningUnit unit = chain.get(k);
            double bendRad = any.articulationLimitRad().get(k - 1);
            List<Double> fixed = new ArrayList<>();
            List<SteeredAxles.Castering> castering = new ArrayList<>();
            List<SteeredAxles.Commanded> commanded = new ArrayList<>();
            List<AxleLine> tires = new ArrayList<>();
            List<AxleLine> straight = units.get(k).tires();
            int turning = random.nextInt(straight.size());
            for (int i = 0; i < straight.size(); i++) {
                double behindM = unit.hitchToAxleM() - straight.get(i).aheadM();
                double limitRad = Math.toRadians(random.nextDouble(4, 40));
                // The last of the group is the one that casters; a single axle is steered.
                if (i == straight.size() - 1 && i > 0 && random.nextBoolean()) {
                    castering.add(new SteeredAxles.Castering(behindM, limitRad));
                    tires.add(straight.get(i).turned(limitRad));
                } else if (i == turning || random.nextInt(3) == 0) {
                    SteeredAxles.Commanded axle =
                            new SteeredAxles.Commanded(behindM, random.nextDouble(0.1, 0.9), limitRad);
                    commanded.add(axle);
                    tires.add(straight.get(i).turned(axle.mostRad(bendRad)));
                } else {
                    fixed.add(behindM);
                    tires.add(straight.get(i));
                }
            }
            SteeredAxles all = new SteeredAxles(fixed, castering, commanded);
            double shiftM = all.effectiveM() - unit.hitchToAxleM();
            chain.set(k, new TurningUnit(all.effectiveM(), unit.couplingBehindM() - shiftM, Optional.of(all)));
            units.set(
                    k,
                    new PlanUnit(
                            units.get(k).name(),
                            tires.stream()
                                    .map(t -> new AxleLine(
                                            t.aheadM() + shiftM,
                                            t.halfWidthM(),
                                            t.treadM(),
                                            t.contactM(),
                                            t.straightHalfM()))
                                    .toList(),
                            units.get(k).bodies().stream()
                                    .map(b ->
                                            new Body(b.part(), b.rearM() + shiftM, b.frontM() + shiftM, b.halfWidthM()))
                                    .toList()));
        }
        return new TurningCombination(
                chain, units, any.steerLimitRad(), any.lockDistanceM(), any.articulationLimitRad());
    }

    /** Of a group of equal axles: the sum of the squares over the sum (docs/model.md, turning). */
    private static double length(List<Double> behindHitchM) {
        double squares = 0;
        double sum = 0;
        for (double x : behindHitchM) {
            squares += x * x;
            sum += x;
        }
        return squares / sum;
    }
}
