package org.cresthaul.plan;

import java.util.List;

/**
 * How a plan's margins shrink when what was declared is off by stated amounts. Spares as in {@link Plan.Spare}.
 *
 * @param assumed the amounts, in the order of {@link Row#left}
 * @param rows every hazard of the plan that is judged by a number
 * @param weakest hazard with the least share left in the worst case, or null
 * @param resurvey the re-survey that would help most, or null when none would
 */
public record Robustness(List<Assumed> assumed, List<Row> rows, Weakest weakest, Resurvey resurvey) {
    public Robustness {
        assumed = List.copyOf(assumed);
        rows = List.copyOf(rows);
    }

    /** One thing that may be off: "survey twice as coarse", "ride 1/2 in lower", "load 1 in higher", "weights 2 % more". */
    public record Assumed(String what, double amount, String unit) {}

    /**
     * @param left spare left with each assumption alone, null where it has no bearing
     * @param worst with all together
     * @param verdict of the check with all together
     */
    public record Row(String hazard, String kind, double spare, List<Double> left, double worst, String verdict) {
        public Row {
            // A null stands for "no bearing": List.copyOf would refuse it.
            left = java.util.Collections.unmodifiableList(new java.util.ArrayList<>(left));
        }
    }

    public record Weakest(String hazard, String kind, double worst, String text) {}

    /** @param gainM how much more spare an exact survey there would show */
    public record Resurvey(String hazard, double gainM, String text) {}
}
