package org.cresthaul.whatif;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.cresthaul.language.Sentence;
import org.cresthaul.plan.LeastReserve;
import org.cresthaul.plan.Outcome;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.PlanOptions;
import org.cresthaul.report.CheckedRig;
import org.cresthaul.report.CheckedRoute;
import org.cresthaul.report.Margins;
import org.cresthaul.report.RaiseFinding;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LiftState;
import org.cresthaul.route.HazardKind;
import org.cresthaul.units.Rounded;
import org.cresthaul.units.Rounding;

/**
 * Every configuration of a rig held all the way, side by side, ready to be shown: the component names are the keys of
 * the JSON form, lengths are meters, masses kilograms, times seconds, null stands for "none" or "not known".
 *
 * @param options as asked, but for the configurations that they keep or forbid: all are compared
 * @param best key of the configuration that fewest places block, then the one that takes the least time, then the first
 */
public record Comparison(
        String cresthaul,
        String version,
        CheckedRoute route,
        CheckedRig rig,
        Margins margins,
        PlanOptions options,
        String best,
        List<Compared> configurations,
        List<Sentence> cautions) {
    public static final String FORM = "comparison/1";

    public Comparison {
        configurations = List.copyOf(configurations);
        cautions = List.copyOf(cautions);
    }

    /**
     * One configuration.
     *
     * @param outcome of the plan that keeps it
     * @param blocking ids of the places that block
     * @param seconds of slow passages; where places block, as if they were settled
     * @param raised how many places are passed raised
     * @param grossKg all axles together
     * @param groups axles that share a suspension; empty when loads are not known
     * @param least the least of all kinds, as a plan has it
     * @param worst for each kind the place that leaves the least for what it requires
     * @param along every place in driving order
     */
    public record Compared(
            String configuration,
            String label,
            LiftState lift,
            int axles,
            BoosterState booster,
            String notch,
            double lengthM,
            Outcome outcome,
            List<String> blocking,
            long seconds,
            int raised,
            @Rounded(Rounding.MASS_NEAR) Double grossKg,
            List<GroupLoad> groups,
            LeastReserve least,
            List<Worst> worst,
            List<Along> along) {
        public Compared {
            blocking = List.copyOf(blocking);
            groups = List.copyOf(groups);
            worst = List.copyOf(worst);
            along = List.copyOf(along);
        }

        Optional<Along> find(String hazard) {
            return along.stream().filter(a -> a.hazard().equals(hazard)).findFirst();
        }
    }

    /** What a group of axles carries. */
    public record GroupLoad(
            String group,
            String label,
            int axles,
            @Rounded(Rounding.MASS_NEAR) double loadKg,
            @Rounded(Rounding.MASS_NEAR) double perAxleKg) {}

    /** Where a kind of spare is least for what is required. */
    public record Worst(String hazard, Plan.Spare spare) {}

    /**
     * One place.
     *
     * @param chainageM of the place
     * @param verdict at {@code raise}, or in transport
     * @param raise or null in transport
     * @param blocked whether it blocks
     * @param spare what governs there, or null when nothing is judged by a number
     */
    public record Along(
            String hazard,
            HazardKind kind,
            String name,
            @Rounded(Rounding.LENGTH_NEAR) double chainageM,
            Verdict verdict,
            RaiseFinding raise,
            boolean blocked,
            Plan.Spare spare) {}

    /** A place at which two configurations fare differently; null where one does not come by it. */
    public record Difference(String hazard, Along first, Along second) {}

    /**
     * Where two configurations differ in verdict, raise or spare, in driving order.
     *
     * @throws IllegalArgumentException when one of them is not among those compared
     */
    public List<Difference> difference(String firstKey, String secondKey) {
        Compared first = compared(firstKey);
        Compared second = compared(secondKey);
        List<Difference> differences = new ArrayList<>();
        for (Along a : first.along) {
            Along b = second.find(a.hazard).orElse(null);
            if (b == null || !faresAlike(a, b)) {
                differences.add(new Difference(a.hazard, a, b));
            }
        }
        second.along.stream()
                .filter(b -> first.find(b.hazard).isEmpty())
                .forEach(b -> differences.add(new Difference(b.hazard, null, b)));
        return List.copyOf(differences);
    }

    private static boolean faresAlike(Along a, Along b) {
        return a.verdict.equals(b.verdict) && Objects.equals(a.raise, b.raise) && Objects.equals(a.spare, b.spare);
    }

    private Compared compared(String key) {
        return configurations.stream()
                .filter(c -> c.configuration.equals(key))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no configuration " + key + " was compared"));
    }
}
