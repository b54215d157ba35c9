package org.cresthaul.plan;

import java.util.List;
import org.cresthaul.rig.PlanTimes;

/**
 * What the planner allows.
 *
 * @param times of changes and passages
 * @param forbid configurations not to be used, keys of the report
 * @param fix the one configuration to keep all the way, or null
 * @param avoidRaising whether hazards must be passed in transport stance
 * @param acceptTight hazards that may be passed though tight
 * @param setAside hazards that are passed over undecided; the plan does not hold until they are settled
 */
public record PlanOptions(
        PlanTimes times,
        List<String> forbid,
        String fix,
        boolean avoidRaising,
        List<String> acceptTight,
        List<String> setAside) {
    public PlanOptions {
        forbid = List.copyOf(forbid);
        acceptTight = List.copyOf(acceptTight);
        setAside = List.copyOf(setAside);
    }

    public static PlanOptions defaults() {
        return new PlanOptions(PlanTimes.defaults(), List.of(), null, false, List.of(), List.of());
    }
}
