package org.cresthaul.exchange.rigfile;

import java.util.Optional;
import java.util.OptionalDouble;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.rig.PlanDimensions;
import org.cresthaul.units.LengthLimits;

/** Reads the optional "plan" of a stance: the combination seen from above. */
final class PlanReader {
    static final LengthLimits WIDTH = new LengthLimits(0.5, 12);
    static final LengthLimits LOCK_DISTANCE = new LengthLimits(0.5, 50);
    static final LengthLimits TREAD = new LengthLimits(0.1, 1.5);
    static final LengthLimits CONTACT = new LengthLimits(0.05, 1);
    static final double LEAST_LIMIT_RAD = Math.toRadians(5);
    static final double MOST_STEER_RAD = Math.toRadians(70);
    static final double MOST_BEND_RAD = Math.toRadians(120);

    private PlanReader() {}

    /** The plan; empty after a problem. */
    static Optional<PlanDimensions> read(JsonFields plan, boolean jeepGiven, boolean boosterGiven) {
        int before = plan.problems().count();
        JsonFields tractor = plan.object("tractor");
        double tractorM = tractor.lengthM("width", WIDTH);
        double tractorTiresM = tractor.lengthM("overTires", WIDTH);
        double steerRad = tractor.angleRad("steerLimit", LEAST_LIMIT_RAD, MOST_STEER_RAD);
        double lockM = tractor.lengthM("lockDistance", LOCK_DISTANCE);
        PlanDimensions.Tires steerTires = tires(tractor, "steerTires", PlanDimensions.Tires.STEER);
        PlanDimensions.Tires driveTires = tires(tractor, "driveTires", PlanDimensions.Tires.DUAL);
        tractor.refuseOthers();
        Optional<JsonFields> jeep = plan.findObject("jeep");
        double jeepM = jeep.map(j -> j.lengthM("width", WIDTH)).orElse(Double.NaN);
        double jeepTiresM = jeep.map(j -> j.lengthM("overTires", WIDTH)).orElse(Double.NaN);
        double jeepRad = jeep.map(j -> j.angleRad("kingpinLimit", LEAST_LIMIT_RAD, MOST_BEND_RAD))
                .orElse(Double.NaN);
        PlanDimensions.Tires jeepTires =
                jeep.map(j -> tires(j, "tires", PlanDimensions.Tires.DUAL)).orElse(null);
        jeep.ifPresent(JsonFields::refuseOthers);
        requireBoth(plan, "jeep", jeepGiven, jeep.isPresent());
        JsonFields trailer = plan.object("trailer");
        double trailerM = trailer.lengthM("width", WIDTH);
        double trailerTiresM = trailer.lengthM("overTires", WIDTH);
        OptionalDouble loadM = trailer.findLengthM("loadWidth", WIDTH);
        double kingpinRad = trailer.angleRad("kingpinLimit", LEAST_LIMIT_RAD, MOST_BEND_RAD);
        PlanDimensions.Tires trailerTires = tires(trailer, "tires", PlanDimensions.Tires.DUAL);
        trailer.refuseOthers();
        Optional<JsonFields> booster = plan.findObject("booster");
        double boosterM = booster.map(b -> b.lengthM("width", WIDTH)).orElse(Double.NaN);
        double boosterTiresM = booster.map(b -> b.lengthM("overTires", WIDTH)).orElse(Double.NaN);
        double pivotRad = booster.map(b -> b.angleRad("pivotLimit", LEAST_LIMIT_RAD, MOST_BEND_RAD))
                .orElse(Double.NaN);
        PlanDimensions.Tires boosterTires =
                booster.map(b -> tires(b, "tires", PlanDimensions.Tires.DUAL)).orElse(null);
        booster.ifPresent(JsonFields::refuseOthers);
        requireBoth(plan, "booster", boosterGiven, booster.isPresent());
        plan.refuseOthers();
        if (!plan.isThere() || plan.problems().count() > before) {
            return Optional.empty();
        }
        return Optional.of(new PlanDimensions(
                new PlanDimensions.Widths(tractorM, tractorTiresM, driveTires),
                steerRad,
                lockM,
                steerTires,
                jeep.map(j -> new PlanDimensions.Widths(jeepM, jeepTiresM, jeepTires)),
                jeep.isPresent() ? OptionalDouble.of(jeepRad) : OptionalDouble.empty(),
                new PlanDimensions.Widths(trailerM, trailerTiresM, trailerTires),
                loadM,
                kingpinRad,
                booster.map(b -> new PlanDimensions.Widths(boosterM, boosterTiresM, boosterTires)),
                booster.isPresent() ? OptionalDouble.of(pivotRad) : OptionalDouble.empty()));
    }

    private static void requireBoth(JsonFields plan, String unit, boolean given, boolean measured) {
        if (given != measured) {
            plan.problem(
                    unit,
                    given ? "missing" : "no-" + unit,
                    given ? "The rig has a " + unit + ", but its plan has none." : "The rig has no " + unit + ".",
                    given ? "Add \"" + unit + "\" with its widths and its limit." : "Leave \"" + unit + "\" out here.");
        }
    }

    /** Tires of one side as {"across": ..., "contact": ...}; what is left out has the documented size. */
    private static PlanDimensions.Tires tires(JsonFields unit, String key, PlanDimensions.Tires usual) {
        Optional<JsonFields> given = unit.findObject(key);
        if (given.isEmpty()) {
            return usual;
        }
        double treadM = given.get().findLengthM("across", TREAD).orElse(usual.treadM());
        double contactM = given.get().findLengthM("contact", CONTACT).orElse(usual.contactM());
        given.get().refuseOthers();
        return Double.isNaN(treadM) || Double.isNaN(contactM) ? usual : new PlanDimensions.Tires(treadM, contactM);
    }
}
