package org.cresthaul.whatif;

import java.util.List;
import org.cresthaul.language.Sentence;
import org.cresthaul.plan.LeastReserve;
import org.cresthaul.plan.Outcome;
import org.cresthaul.plan.PlanOptions;
import org.cresthaul.report.CheckedRig;
import org.cresthaul.report.CheckedRoute;
import org.cresthaul.report.Margins;
import org.cresthaul.units.Rounded;
import org.cresthaul.units.Rounding;

/**
 * The plans of a stance with all its units and without those that may be left off, side by side, ready to be shown: the
 * component names are the keys of the JSON form, lengths are meters, masses kilograms, times seconds, null stands for
 * "none" or "not known".
 *
 * @param rig with the stance that was asked for
 * @param options as asked, without what was decided for one combination: configurations that are kept or forbidden,
 *     places that were accepted or set aside, conditions that were settled
 * @param combinations as measured first
 * @param cautions of every plan, each once
 */
public record Combinations(
        String cresthaul,
        String version,
        CheckedRoute route,
        CheckedRig rig,
        Margins margins,
        PlanOptions options,
        List<Combination> combinations,
        List<Sentence> cautions) {
    public static final String FORM = "combinations/1";

    public Combinations {
        combinations = List.copyOf(combinations);
        cautions = List.copyOf(cautions);
    }

    /**
     * One combination and its plan.
     *
     * @param stance its name, by which it is checked and planned alone
     * @param units every unit, front to rear, in words
     * @param configurations those that the plan uses, in its order, in words
     * @param blocking ids of the places that block
     * @param conditions how many a person must settle first
     * @param seconds of changes and slow passages; where places block, as if they were settled
     * @param lengthM the longest it is on the way
     * @param grossKg all axles together, the most on the way; null when loads are not known
     * @param groups what the groups of axles carry in the first configuration; empty when loads are not known
     * @param least the least that is left at any place
     */
    public record Combination(
            String stance,
            List<String> units,
            List<String> configurations,
            Outcome outcome,
            List<String> blocking,
            int conditions,
            long seconds,
            int changes,
            double lengthM,
            @Rounded(Rounding.MASS_NEAR) Double grossKg,
            List<Comparison.GroupLoad> groups,
            LeastReserve least) {
        public Combination {
            units = List.copyOf(units);
            configurations = List.copyOf(configurations);
            blocking = List.copyOf(blocking);
            groups = List.copyOf(groups);
        }
    }
}
