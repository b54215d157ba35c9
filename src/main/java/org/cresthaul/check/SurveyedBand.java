package org.cresthaul.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.clearance.AcrossRoad;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.PlanDimensions;
import org.cresthaul.road.RoadProfile;

/**
 * Whether the lines of a hazard reach as far to both sides as the combination does. What lies outside of the outermost
 * lines, a crown, a shoulder, a raised edge, nobody has looked at.
 */
final class SurveyedBand {
    private SurveyedBand() {}

    /** Why nothing here may be called clear; empty where the lines reach far enough, or do not say where they run. */
    static Optional<Sentence> limit(List<RoadProfile> lines, LevelStance stance) {
        double left = Double.POSITIVE_INFINITY;
        double right = Double.NEGATIVE_INFINITY;
        for (RoadProfile line : lines) {
            if (line.offsetM().isPresent()) {
                left = Math.min(left, line.offsetM().getAsDouble());
                right = Math.max(right, line.offsetM().getAsDouble());
            }
        }
        if (left > right) {
            return Optional.empty();
        }
        if (stance.plan().isEmpty()) {
            return Optional.of(Sentence.of(Code.WHY_NO_WIDTHS));
        }
        double half = 0.5 * widestM(stance.plan().get()) + AcrossRoad.DRIVEN_OFF_M;
        return left <= -half && right >= half ? Optional.empty() : Optional.of(Sentence.of(Code.WHY_BEYOND_LINES));
    }

    /** Of all that is near the ground; the load lies on the deck. */
    private static double widestM(PlanDimensions plan) {
        List<PlanDimensions.Widths> units = new ArrayList<>(List.of(plan.tractor(), plan.trailer()));
        plan.jeep().ifPresent(units::add);
        plan.booster().ifPresent(units::add);
        return units.stream()
                .mapToDouble(u -> Math.max(u.bodyM(), u.tiresM()))
                .max()
                .orElseThrow();
    }
}
