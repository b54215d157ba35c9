package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.geometry.Finite;
import org.cresthaul.language.Code;
import org.cresthaul.language.Names;
import org.cresthaul.language.Sentence;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.UnitName;

/**
 * A combination seen from above, as it turns in one axle and booster state. The notch does not matter here.
 *
 * @param chain front to rear
 * @param units what each of them covers, in the same order
 * @param articulationLimitRad between each unit and the next, one fewer
 */
public record TurningCombination(
        List<TurningUnit> chain,
        List<PlanUnit> units,
        double steerLimitRad,
        double lockDistanceM,
        List<Double> articulationLimitRad) {
    private static final double STEERING_RESERVE_RAD = Math.toRadians(0.2);

    /**
     * Name of a unit and what it covers; places are meters ahead of its effective axle.
     *
     * @param axleXM where that axle is in the unit's own frame
     */
    public record PlanUnit(UnitName name, List<AxleLine> tires, List<Body> bodies, double axleXM) {
        /** With a frame that begins at the effective axle. */
        public PlanUnit(UnitName name, List<AxleLine> tires, List<Body> bodies) {
            this(name, tires, bodies, 0);
        }

        public PlanUnit {
            tires = List.copyOf(tires);
            bodies = List.copyOf(bodies);
        }
    }

    /**
     * Tires of one axle on the ground: on each side one rectangle, of a single tire or of a dual as a whole.
     *
     * @param aheadM of the unit's effective axle, to the middle of the contact
     * @param halfWidthM from the unit's middle to the outer face
     * @param treadM width of the rectangle, from the outer face inward
     * @param contactM its length along the unit
     * @param straightHalfM the same as the half width, were the wheels straight ahead
     */
    public record AxleLine(double aheadM, double halfWidthM, double treadM, double contactM, double straightHalfM) {
        /** Of wheels that do not turn. */
        public AxleLine(double aheadM, double halfWidthM, double treadM, double contactM) {
            this(aheadM, halfWidthM, treadM, contactM, halfWidthM);
        }

        public AxleLine {
            Finite.require("aheadM", aheadM);
            Finite.requireAtLeast("treadM", 0.05, treadM);
            Finite.requireAtLeast("halfWidthM", treadM, halfWidthM);
            Finite.requireAtLeast("contactM", 0.02, contactM);
        }

        /**
         * What they cover, turned about their own middle by anything up to an angle: the rectangle around all of that.
         */
        AxleLine turned(double mostRad) {
            if (mostRad == 0) {
                return this;
            }
            double across = spread(treadM, contactM, mostRad);
            double along = spread(contactM, treadM, mostRad);
            return new AxleLine(aheadM, halfWidthM + 0.5 * (across - treadM), across, along, halfWidthM);
        }

        /** Whether its wheels turn. */
        boolean turns() {
            return straightHalfM != halfWidthM;
        }

        /** Greatest of {@code side cos δ + other sin δ} up to an angle. */
        private static double spread(double side, double other, double mostRad) {
            double at = Math.min(mostRad, Math.atan2(other, side));
            return side * Math.cos(at) + other * Math.sin(at);
        }
    }

    /** A rectangle that something of the unit fills. */
    public record Body(PartOfUnit part, double rearM, double frontM, double halfWidthM) {}

    public TurningCombination {
        chain = List.copyOf(chain);
        units = List.copyOf(units);
        articulationLimitRad = List.copyOf(articulationLimitRad);
        if (chain.size() != units.size() || articulationLimitRad.size() != chain.size() - 1) {
            throw new IllegalArgumentException("every unit needs its plan, every coupling its limit");
        }
    }

    /** The stance in one state, driven forward; empty when its plan was not measured. */
    public static Optional<TurningCombination> of(LevelStance stance, LiftState lift, BoosterState state) {
        return stance.plan().map(plan -> new StanceFromAbove(stance, plan, lift, state, false).combination());
    }

    /** The same for backing, with castering wheels locked. */
    public static Optional<TurningCombination> backing(LevelStance stance, LiftState lift, BoosterState state) {
        return stance.plan().map(plan -> new StanceFromAbove(stance, plan, lift, state, true).combination());
    }

    /**
     * The same with the pivots of all boosters locked: trailer and boosters are one unit on all their axles. Without a
     * pivot, the combination itself.
     */
    public TurningCombination pivotLocked() {
        if (!hasPivot()) {
            return this;
        }
        int at = trailer();
        List<Double> axlesM = new ArrayList<>(List.of(chain.get(at).hitchToAxleM()));
        for (int k = at + 1; k < chain.size(); k++) {
            axlesM.add(axlesM.get(k - at - 1)
                    + chain.get(k - 1).couplingBehindM()
                    + chain.get(k).hitchToAxleM());
        }
        List<Double> behind = new ArrayList<>();
        for (int k = at; k < units.size(); k++) {
            double axleM = axlesM.get(k - at);
            units.get(k).tires().forEach(t -> behind.add(axleM - t.aheadM()));
        }
        Optional<SteeredAxles> steered = steeredFrom(at);
        double lengthM = steered.map(SteeredAxles::effectiveM).orElseGet(() -> EffectiveAxle.behindHitchM(behind));
        List<AxleLine> tires = new ArrayList<>();
        List<Body> bodies = new ArrayList<>();
        for (int k = at; k < units.size(); k++) {
            double shiftM = lengthM - axlesM.get(k - at);
            units.get(k).tires().forEach(t -> tires.add(shifted(t, shiftM)));
            units.get(k).bodies().forEach(b -> bodies.add(shifted(b, shiftM)));
        }
        TurningCombination ahead = front(at);
        List<TurningUnit> locked = new ArrayList<>(ahead.chain);
        locked.add(new TurningUnit(lengthM, 0, steered));
        List<PlanUnit> plans = new ArrayList<>(ahead.units);
        plans.add(new PlanUnit(UnitName.TRAILER, tires, bodies));
        return new TurningCombination(locked, plans, steerLimitRad, lockDistanceM, articulationLimitRad.subList(0, at));
    }

    /** Of the trailer and all boosters as one unit; empty where no wheels turn. */
    private Optional<SteeredAxles> steeredFrom(int at) {
        if (chain.subList(at, chain.size()).stream().allMatch(u -> u.steered().isEmpty())) {
            return Optional.empty();
        }
        SteeredAxles all = axles(at);
        double hitchM = chain.get(at).reachM();
        for (int k = at + 1; k < chain.size(); k++) {
            all = all.with(axles(k), hitchM);
            hitchM += chain.get(k).reachM();
        }
        return Optional.of(all);
    }

    private SteeredAxles axles(int unit) {
        TurningUnit of = chain.get(unit);
        return of.steered()
                .orElseGet(() -> new SteeredAxles(
                        units.get(unit).tires().stream()
                                .map(t -> of.hitchToAxleM() - t.aheadM())
                                .toList(),
                        List.of(),
                        List.of()));
    }

    /** The place of the unit that holds the first booster, or of the last without one. */
    private int trailer() {
        int k = units.size() - 1;
        while (k > 0 && isPivot(k - 1)) {
            k--;
        }
        return k;
    }

    /** Which unit a gap is of. */
    public UnitName nameOf(CornerFit.Gap gap) {
        return units.get(gap.unit()).name();
    }

    /** "kingpin", "pivot"; with jeeps "kingpin of the jeep": what bends between a unit and the next, the first is 0. */
    public Sentence couplingWord(int coupling) {
        UnitName behind = units.get(coupling + 1).name();
        if (isPivot(coupling)) {
            return behind.number() == 1
                    ? Sentence.of(Code.COUPLING_PIVOT)
                    : Sentence.of(Code.COUPLING_PIVOT_OF).with("unit", Names.of(behind.word()));
        }
        if (units.stream().noneMatch(u -> u.name().kind() == UnitName.Kind.JEEP)) {
            return Sentence.of(Code.COUPLING_KINGPIN);
        }
        return Sentence.of(behind.number() == 1 ? Code.COUPLING_KINGPIN_OF_THE : Code.COUPLING_KINGPIN_OF)
                .with("unit", Names.of(behind.word()));
    }

    /** Whether it is a booster that bends there, the first coupling being 0. */
    boolean isPivot(int coupling) {
        return units.get(coupling + 1).name().kind() == UnitName.Kind.BOOSTER;
    }

    /** Whether boosters turn on their pivots behind the trailer. */
    public boolean hasPivot() {
        return units.size() > 1 && isPivot(units.size() - 2);
    }

    /** The same without the boosters that turn on their pivots; without one, the combination itself. */
    TurningCombination withoutBooster() {
        return hasPivot() ? front(trailer() + 1) : this;
    }

    private TurningCombination front(int count) {
        return new TurningCombination(
                chain.subList(0, count),
                units.subList(0, count),
                steerLimitRad,
                lockDistanceM,
                articulationLimitRad.subList(0, count - 1));
    }

    private static AxleLine shifted(AxleLine axle, double byM) {
        return new AxleLine(
                axle.aheadM() + byM, axle.halfWidthM(), axle.treadM(), axle.contactM(), axle.straightHalfM());
    }

    private static Body shifted(Body body, double byM) {
        return new Body(body.part(), body.rearM() + byM, body.frontM() + byM, body.halfWidthM());
    }

    /** From the front of everything to the rear of everything, standing straight, meters. */
    public double lengthM() {
        double front = 0;
        double rear = 0;
        double hitch = 0;
        for (int k = 0; k < chain.size(); k++) {
            double axle = hitch - chain.get(k).hitchToAxleM();
            for (Body body : units.get(k).bodies()) {
                front = Math.max(front, axle + body.frontM());
                rear = Math.min(rear, axle + body.rearM());
            }
            hitch = axle - chain.get(k).couplingBehindM();
        }
        return front - rear;
    }

    /** Tightest curvature of the lead path that the steering holds in a steady turn, per meter. */
    public double tightestPerM() {
        return Math.sin(Math.min(steerLimitRad, Math.PI / 2)) / chain.get(0).hitchToAxleM();
    }

    /**
     * The front wheels' limit as lines are steered: a little less, so that the wheels themselves stay within theirs.
     */
    double steeringLimitRad() {
        return Math.min(steerLimitRad, Math.toRadians(85)) - STEERING_RESERVE_RAD;
    }

    /** How fast the front wheels are turned, radians for each meter they roll. */
    double steeringRatePerM() {
        return steerLimitRad / lockDistanceM;
    }

    /** Half of the widest axle over its tires, all wheels straight ahead, meters. */
    double halfTiresM() {
        return units.stream()
                .flatMap(u -> u.tires().stream())
                .mapToDouble(AxleLine::straightHalfM)
                .max()
                .orElse(0);
    }

    /** Widest of everything, half of it, meters. */
    public double halfWidthM() {
        double most = 0;
        for (PlanUnit unit : units) {
            for (Body body : unit.bodies()) {
                most = Math.max(most, body.halfWidthM());
            }
        }
        return most;
    }
}
