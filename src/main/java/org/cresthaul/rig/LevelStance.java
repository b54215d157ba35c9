package org.cresthaul.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The combination as a person with a tape measures it: coupled, on level ground, at the reference notch, every axle
 * down.
 *
 * @param name "loaded" or "empty"
 * @param jeeps between tractor and trailer, front to rear
 * @param booster the booster, when the rig has one; the trailer then has a hinge
 * @param boostersBehind behind the booster, one behind another, front to rear; with them it only trails, and so do they
 * @param weights what it weighs; without them its loads are not known
 * @param plan widths and turning limits, when they were measured; without them no corner can be judged
 */
public record LevelStance(
        String name,
        Tractor tractor,
        List<Jeep> jeeps,
        Trailer trailer,
        Optional<Booster> booster,
        List<Booster> boostersBehind,
        Optional<Weights> weights,
        Optional<PlanDimensions> plan) {
    /** A stance with one booster at most. */
    public LevelStance(
            String name,
            Tractor tractor,
            List<Jeep> jeeps,
            Trailer trailer,
            Optional<Booster> booster,
            Optional<Weights> weights,
            Optional<PlanDimensions> plan) {
        this(name, tractor, jeeps, trailer, booster, List.of(), weights, plan);
    }

    /** A stance without jeeps whose loads are not known, and of which only the side view was measured. */
    public LevelStance(String name, Tractor tractor, Trailer trailer, Optional<Booster> booster) {
        this(name, tractor, List.of(), trailer, booster, Optional.empty(), Optional.empty());
    }

    public LevelStance {
        jeeps = List.copyOf(jeeps);
        boostersBehind = List.copyOf(boostersBehind);
        requireBehind(booster, boostersBehind);
        if (plan.isPresent() && plan.get().jeep().isPresent() == jeeps.isEmpty()) {
            throw new IllegalArgumentException("plan and stance must both have jeeps, or neither");
        }
        if (plan.isPresent() && plan.get().booster().isPresent() != booster.isPresent()) {
            throw new IllegalArgumentException("plan and stance must both have a booster, or neither");
        }
        if (booster.isPresent() && trailer.boosterHinge().isEmpty()) {
            throw new IllegalArgumentException("a booster needs a hinge on the trailer");
        }
        booster.ifPresent(b -> b.closeCoupledAxleXM().ifPresent(x -> {
            double last = trailer.axles()
                    .axles()
                    .get(trailer.axles().axles().size() - 1)
                    .xM();
            if (x >= last) {
                throw new IllegalArgumentException("the close-coupled axle must be behind the trailer's axles");
            }
        }));
    }

    private static void requireBehind(Optional<Booster> booster, List<Booster> behind) {
        Optional<Booster> ahead = booster;
        for (Booster b : behind) {
            if (ahead.isEmpty() || ahead.get().nextHinge().isEmpty()) {
                throw new IllegalArgumentException("a booster behind needs a hinge on the one ahead");
            }
            if (!b.states().contains(BoosterState.TRAILING)
                    || b.states().stream().anyMatch(s -> s != BoosterState.TRAILING && s != BoosterState.NONE)) {
                throw new IllegalArgumentException("a booster behind another trails, or is left off: " + b.states());
            }
            ahead = Optional.of(b);
        }
        if (!behind.isEmpty() && !booster.orElseThrow().states().contains(BoosterState.TRAILING)) {
            throw new IllegalArgumentException("with another behind it a booster trails");
        }
    }

    /** The booster and those behind it, front to rear. */
    public List<Booster> boosters() {
        List<Booster> all = new ArrayList<>();
        booster.ifPresent(all::add);
        all.addAll(boostersBehind);
        return List.copyOf(all);
    }

    /** Where a trailing booster is held, in the frame of the unit ahead; the first booster is 0. */
    public FramePoint boosterHeldAt(int index) {
        return index == 0
                ? trailer.boosterHinge().orElseThrow()
                : boosters().get(index - 1).nextHinge().orElseThrow().at();
    }

    /** How far the joint reaches there: see {@link Booster.Hinge}. */
    public double boosterReachM(int index) {
        return index == 0
                ? trailer.hingeReachM()
                : boosters().get(index - 1).nextHinge().orElseThrow().reachM();
    }

    /** Where a trailing booster's frame has its zero in the trailer's frame, meters; the first booster is 0. */
    public double boosterShiftM(int index) {
        double shiftM = 0;
        for (int j = 0; j <= index; j++) {
            shiftM += boosterHeldAt(j).xM() - boosters().get(j).hingeXM();
        }
        return shiftM;
    }

    /**
     * The booster states this stance can run in; only {@link BoosterState#NONE} without a booster, and only
     * {@link BoosterState#TRAILING} with others behind it.
     */
    public List<BoosterState> boosterStates() {
        return !boostersBehind.isEmpty()
                ? List.of(BoosterState.TRAILING)
                : booster.map(Booster::states).orElse(List.of(BoosterState.NONE));
    }

    /** The lift-axle states this stance can run in, all down first; only {@link LiftState#DOWN} without a lift axle. */
    public List<LiftState> liftStates() {
        return trailer.lift().states();
    }

    /** How many trailer axles carry, without the booster. */
    public int axlesDown(LiftState lift) {
        return trailer.down(lift).size();
    }

    /** Every unit the stance can run with, front to rear. */
    public List<UnitName> units() {
        List<UnitName> units = new ArrayList<>(List.of(UnitName.TRACTOR));
        for (int i = 1; i <= jeeps.size(); i++) {
            units.add(UnitName.jeep(i));
        }
        units.add(UnitName.TRAILER);
        for (int i = 1; i <= boosters().size(); i++) {
            units.add(UnitName.booster(i));
        }
        return List.copyOf(units);
    }

    /** The fifth wheel that carries the trailer's kingpin, in the frame of the last unit ahead of it. */
    public FramePoint trailerFifthWheel() {
        return jeeps.isEmpty()
                ? tractor.fifthWheel()
                : jeeps.get(jeeps.size() - 1).fifthWheel();
    }

    /** What reaches around that fifth wheel: see {@link Tractor#plateReachM}. */
    public double trailerPlateReachM() {
        return jeeps.isEmpty()
                ? tractor.plateReachM()
                : jeeps.get(jeeps.size() - 1).plateReachM();
    }

    /** Where a jeep's frame has its zero in the tractor's frame, meters; the first jeep is 0. */
    public double jeepShiftM(int jeep) {
        return fifthWheelXM(jeep) - jeeps.get(jeep).kingpinXM();
    }

    /** Where the trailer's kingpin stands in the tractor's frame, meters. */
    public double trailerKingpinXM() {
        return fifthWheelXM(jeeps.size());
    }

    /** Where the trailer's frame has its zero in the tractor's frame, meters. */
    public double trailerShiftM() {
        return trailerKingpinXM() - trailer.kingpinXM();
    }

    /**
     * The fifth wheel that carries a jeep's kingpin, or behind the last of them the trailer's, in the tractor's frame.
     */
    private double fifthWheelXM(int coupled) {
        double xM = tractor.fifthWheel().xM();
        for (Jeep jeep : jeeps.subList(0, coupled)) {
            xM += jeep.fifthWheel().xM() - jeep.kingpinXM();
        }
        return xM;
    }

    /** The same with another trailer. */
    public LevelStance withTrailer(Trailer other) {
        return new LevelStance(name, tractor, jeeps, other, booster, boostersBehind, weights, plan);
    }

    /** The same with a booster. */
    public LevelStance withBooster(Booster other) {
        return new LevelStance(name, tractor, jeeps, trailer, Optional.of(other), boostersBehind, weights, plan);
    }

    /** The same with boosters behind the booster. */
    public LevelStance withBoostersBehind(List<Booster> others) {
        return new LevelStance(name, tractor, jeeps, trailer, booster, others, weights, plan);
    }

    /** The same with other weights. */
    public LevelStance withWeights(Weights others) {
        return new LevelStance(name, tractor, jeeps, trailer, booster, boostersBehind, Optional.of(others), plan);
    }

    /** The same without its weights. */
    public LevelStance withoutWeights() {
        return new LevelStance(name, tractor, jeeps, trailer, booster, boostersBehind, Optional.empty(), plan);
    }

    /** The same with widths and turning limits. */
    public LevelStance withPlan(PlanDimensions measured) {
        return new LevelStance(name, tractor, jeeps, trailer, booster, boostersBehind, weights, Optional.of(measured));
    }
}
