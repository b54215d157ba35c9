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
 * @param leastReserve least reserve at every place that is judged by figures, as a share of what is required or
 *     allowed; null when any will do. The deck is raised as far as that takes. Places that are accepted as tight or set
 *     aside are left out of it
 * @param fewestConditions whether a way with fewer places under conditions goes before a quicker one; otherwise each
 *     counts as {@link WayCosts#CONDITION_SECONDS}
 * @param settled conditions that a person has settled
 */
public record PlanOptions(
        PlanTimes times,
        List<String> forbid,
        String fix,
        boolean avoidRaising,
        List<String> acceptTight,
        List<String> setAside,
        Double leastReserve,
        boolean fewestConditions,
        List<Settled> settled) {
    /**
     * A condition that was settled.
     *
     * @param hazard where
     * @param what which condition
     * @param by who settled it
     * @param date when, ISO 8601
     * @param agreed what was agreed, in words
     */
    public record Settled(String hazard, ConditionKind what, String by, String date, String agreed) {
        public Settled {
            if (by.isBlank() || date.isBlank() || agreed.isBlank()) {
                throw new IllegalArgumentException("who, when and what belong to a settled condition");
            }
        }
    }

    public PlanOptions {
        forbid = List.copyOf(forbid);
        acceptTight = List.copyOf(acceptTight);
        setAside = List.copyOf(setAside);
        settled = List.copyOf(settled);
        if (leastReserve != null && !(leastReserve >= 0 && leastReserve <= 10)) {
            throw new IllegalArgumentException("a least reserve of " + leastReserve);
        }
    }

    /** Any reserve, least cost first, nothing settled. */
    public PlanOptions(
            PlanTimes times,
            List<String> forbid,
            String fix,
            boolean avoidRaising,
            List<String> acceptTight,
            List<String> setAside) {
        this(times, forbid, fix, avoidRaising, acceptTight, setAside, null, false, List.of());
    }

    public static PlanOptions defaults() {
        return new PlanOptions(PlanTimes.defaults(), List.of(), null, false, List.of(), List.of());
    }

    PlanOptions with(Double otherReserve, boolean fewest, List<Settled> otherSettled) {
        return new PlanOptions(
                times, forbid, fix, avoidRaising, acceptTight, setAside, otherReserve, fewest, otherSettled);
    }
}
