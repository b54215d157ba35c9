package org.cresthaul.rig;

import java.util.Optional;
import java.util.OptionalDouble;
import org.cresthaul.units.JsonFields;
import org.cresthaul.units.LengthLimits;

/** Reads the optional "plan" of a stance: the combination seen from above. */
final class PlanReader {
    static final LengthLimits WIDTH = new LengthLimits(0.5, 12);
    static final LengthLimits LOCK_DISTANCE = new LengthLimits(0.5, 50);
    static final double LEAST_LIMIT_RAD = Math.toRadians(5);
    static final double MOST_STEER_RAD = Math.toRadians(70);
    static final double MOST_BEND_RAD = Math.toRadians(120);

    private PlanReader() {}

    /** The plan; empty after a problem. */
    static Optional<PlanDimensions> read(JsonFields plan, boolean boosterGiven) {
        int before = plan.problems().count();
        JsonFields tractor = plan.object("tractor");
        double tractorM = tractor.lengthM("width", WIDTH);
        double tractorTyresM = tractor.lengthM("overTyres", WIDTH);
        double steerRad = tractor.angleRad("steerLimit", LEAST_LIMIT_RAD, MOST_STEER_RAD);
        double lockM = tractor.lengthM("lockDistance", LOCK_DISTANCE);
        tractor.refuseOthers();
        JsonFields trailer = plan.object("trailer");
        double trailerM = trailer.lengthM("width", WIDTH);
        double trailerTyresM = trailer.lengthM("overTyres", WIDTH);
        OptionalDouble loadM = trailer.findLengthM("loadWidth", WIDTH);
        double kingpinRad = trailer.angleRad("kingpinLimit", LEAST_LIMIT_RAD, MOST_BEND_RAD);
        trailer.refuseOthers();
        Optional<JsonFields> booster = plan.findObject("booster");
        double boosterM = booster.map(b -> b.lengthM("width", WIDTH)).orElse(Double.NaN);
        double boosterTyresM = booster.map(b -> b.lengthM("overTyres", WIDTH)).orElse(Double.NaN);
        double pivotRad =
                booster.map(b -> b.angleRad("pivotLimit", LEAST_LIMIT_RAD, MOST_BEND_RAD)).orElse(Double.NaN);
        booster.ifPresent(JsonFields::refuseOthers);
        if (booster.isPresent() != boosterGiven) {
            plan.problem("booster", boosterGiven ? "missing" : "no-booster",
                    boosterGiven ? "The rig has a booster, but its plan has none." : "The rig has no booster.",
                    boosterGiven ? "Add \"booster\" with its widths and pivot limit." : "Leave \"booster\" out here.");
        }
        plan.refuseOthers();
        if (!plan.isThere() || plan.problems().count() > before) {
            return Optional.empty();
        }
        return Optional.of(new PlanDimensions(
                new PlanDimensions.Widths(tractorM, tractorTyresM),
                steerRad,
                lockM,
                new PlanDimensions.Widths(trailerM, trailerTyresM),
                loadM,
                kingpinRad,
                booster.map(b -> new PlanDimensions.Widths(boosterM, boosterTyresM)),
                booster.isPresent() ? OptionalDouble.of(pivotRad) : OptionalDouble.empty()));
    }
}
