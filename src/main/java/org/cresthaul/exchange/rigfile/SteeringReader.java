package org.cresthaul.exchange.rigfile;

import java.util.List;
import java.util.Optional;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.rig.AxleSteering;

/** Reads the optional "steering" of an axle behind the tractor. */
final class SteeringReader {
    static final double LEAST_LIMIT_RAD = Math.toRadians(1);
    static final double MOST_LIMIT_RAD = Math.toRadians(60);
    static final double LEAST_RATIO = 0.01;
    static final double MOST_RATIO = 1;

    static final String CASTERING = "castering";
    static final String COMMANDED = "commanded";
    private static final String LOCKED = "locked";

    private SteeringReader() {}

    /** Empty for wheels that are locked, and after a problem. */
    static Optional<AxleSteering> read(JsonFields steering) {
        int before = steering.problems().count();
        String wheels = steering.word("wheels", List.of(CASTERING, COMMANDED, LOCKED));
        boolean castering = wheels.equals(CASTERING);
        boolean commanded = wheels.equals(COMMANDED);
        // Wheels that are locked for now keep what they have otherwise.
        double limitRad = castering || commanded || steering.has("limit")
                ? steering.angleRad("limit", LEAST_LIMIT_RAD, MOST_LIMIT_RAD)
                : Double.NaN;
        double ratio = commanded || !castering && steering.has("ratio")
                ? steering.grade("ratio", LEAST_RATIO, MOST_RATIO)
                : Double.NaN;
        steering.refuseOthers();
        if (!steering.isThere() || steering.problems().count() > before || !castering && !commanded) {
            return Optional.empty();
        }
        return Optional.of(
                castering ? new AxleSteering.Castering(limitRad) : new AxleSteering.Commanded(ratio, limitRad));
    }

    /**
     * At least one axle of a unit has to guide it.
     *
     * @param always the axles that are on the road in every state
     */
    static void requireGuided(JsonFields unit, String key, List<AxleFields> always) {
        if (!always.isEmpty()
                && always.stream()
                        .allMatch(a -> a.steering()
                                .filter(AxleSteering.Castering.class::isInstance)
                                .isPresent())) {
            unit.problem(
                    key,
                    "nothing-guides",
                    "The wheels of every axle are castering: nothing guides this unit.",
                    "Write \"locked\" or \"commanded\" for one of them that always stands on the road.");
        }
    }
}
