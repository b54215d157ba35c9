package org.cresthaul.clearance;

import java.util.List;
import org.cresthaul.posture.WheelPaths;
import org.cresthaul.rig.UnitName;
import org.cresthaul.road.RoadProfile;

/**
 * One place across the road that is judged along the whole passage, with the combination driven so far off its line:
 * under an edge of the units, or along a surveyed line that stands out. Both sides' wheels run on lines of their own.
 * Immutable.
 */
public final class RoadPlace {
    /** Levers are those of the level stance: covers pitches and slopes, as in {@link RaiseRates}. */
    private static final double SLACK = 1.15;

    private final String name;
    private final double drivenRightM;
    private final WheelPaths ground;
    private final int side;
    private final List<UnitName> units;
    private final double[] rightM;
    private final RoadProfile[] lines;
    private final List<Double> raisedTiresRightM;
    private final Between between;

    /**
     * How much lower than straight between two neighboring ways of driving a gap can be in between
     * ({@link AcrossRoad}).
     *
     * @param perLeverM for every unit of a point's levers
     * @param perRollM for every share of a track's half that the place lies beside the middle
     * @param sidewaysM where the place keeps to the road while the combination is driven beside it
     */
    record Between(double perLeverM, double perRollM, double sidewaysM) {}

    /**
     * A unit at the place.
     *
     * @param rightM of its middle: what is left of its width there
     * @param line of the ground there
     */
    record Passed(UnitName unit, double rightM, RoadProfile line) {}

    /**
     * A place.
     *
     * @param side of the middle on which it lies: +1 right, -1 left, 0 in the middle
     * @param passed by which units, in the order of the chain
     * @param raisedTiresRightM where a raised tire is looked at
     */
    RoadPlace(
            String name,
            double drivenRightM,
            WheelPaths ground,
            int side,
            List<Passed> passed,
            List<Double> raisedTiresRightM,
            Between between) {
        this.name = name;
        this.drivenRightM = drivenRightM;
        this.ground = ground;
        this.side = side;
        units = passed.stream().map(Passed::unit).toList();
        rightM = passed.stream().mapToDouble(Passed::rightM).toArray();
        lines = passed.stream().map(Passed::line).toArray(RoadProfile[]::new);
        this.raisedTiresRightM = List.copyOf(raisedTiresRightM);
        this.between = between;
    }

    /** "left edge", "right edge", or the name of the surveyed line. */
    public String name() {
        return name;
    }

    /** The name, and how the combination is driven where that is not on its line. */
    public String label() {
        return name + off();
    }

    /** The same of the middle, between left and right wheels: what the units' pitch depends on. */
    public String middle() {
        return "middle" + off();
    }

    private String off() {
        double inches = Math.rint(Math.abs(drivenRightM) / 0.0254 * 100) / 100;
        return inches == 0
                ? ""
                : ", driven " + Double.toString(inches).replaceAll("\\.0$", "") + " in "
                        + (drivenRightM > 0 ? "right" : "left");
    }

    /** How far to the right of its line the combination is driven, meters. */
    public double drivenRightM() {
        return drivenRightM;
    }

    /** How far to the right of the combination's middle it is, meters. */
    public double rightM(UnitName unit) {
        return rightM[units.indexOf(unit)];
    }

    /** The same of a gap: a raised tire is looked at where it is, and not at the unit's edge. */
    public double rightM(Clearance at) {
        return at.raisedTire() ? side * ground.tracks().trailerM() : rightM(at.unit());
    }

    WheelPaths ground() {
        return ground;
    }

    int side() {
        return side;
    }

    /** The ground under a unit there. */
    public RoadProfile line(UnitName unit) {
        return lines[units.indexOf(unit)];
    }

    List<Double> raisedTiresRightM() {
        return raisedTiresRightM;
    }

    /** How far a unit's part there rises with a roll of one radian toward it, meters. */
    double armM(UnitName unit) {
        return Math.abs(rightM[units.indexOf(unit)]);
    }

    /**
     * How far the middle between an axle's wheels can stray from even between two neighboring ways of driving, meters.
     */
    double unevenM(Demand demand) {
        return demand.times() * SLACK * between.perLeverM;
    }

    /**
     * What is demanded there of a point of a unit, without ground beyond the survey, meters. Elevations left and right
     * err apart from each other: a roll from both by √2 of one over the track.
     */
    double wantedM(Demand demand, Leverage leverage, UnitName unit, double xM) {
        double levers = 0;
        for (double w : leverage.weights(unit, xM)) {
            levers += w;
        }
        double share = armM(unit) / ground.tracks().leastM();
        double factor = Math.hypot(leverage.surveyFactor(unit, xM), Math.sqrt(0.5) * share);
        return demand.at(factor)
                + demand.times() * SLACK * (levers * between.perLeverM + share * between.perRollM + between.sidewaysM);
    }
}
