package org.cresthaul.whatif;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import org.cresthaul.plan.CellSpares;
import org.cresthaul.plan.Plan;
import org.cresthaul.plan.Robustness;
import org.cresthaul.plan.SpareKind;
import org.cresthaul.report.ReportCell;

/**
 * One place as the checks with something altered have it.
 *
 * @param alone with each assumption alone, in their order; null where it was not asked
 * @param together with all of them
 * @param exact with an exact survey; null where it was not asked
 */
record AlteredCells(List<ReportCell> alone, ReportCell together, ReportCell exact) {
    AlteredCells {
        // A null stands for "not asked": List.copyOf would refuse it.
        alone = Collections.unmodifiableList(new ArrayList<>(alone));
    }

    /**
     * The row of one kind of spare.
     *
     * @param declared the spare with everything as declared
     * @param bears whether each assumption has a bearing on it
     * @param survey which of the assumptions is the survey's
     */
    Robustness.Row row(String hazard, Plan.Spare declared, List<Boolean> bears, int survey) {
        List<Double> left = new ArrayList<>();
        for (int i = 0; i < alone.size(); i++) {
            left.add(bears.get(i) ? orNull(left(alone.get(i), declared)) : null);
        }
        return new Robustness.Row(
                hazard,
                declared.kind(),
                declared.left(),
                bears,
                left,
                bears.get(survey) ? orNull(exactLeft(declared)) : null,
                worst(left, left(together, declared)),
                together.verdict());
    }

    /**
     * With everything off no more is left than with one thing: where searches told it millimeters apart, the least
     * counts.
     */
    private static Double worst(List<Double> alone, OptionalDouble together) {
        if (together.isEmpty()) {
            return null;
        }
        return alone.stream().filter(l -> l != null).reduce(together.getAsDouble(), Math::min);
    }

    /**
     * Empty where the altered check has no figure of this kind: what is left is not known then, and neither zero nor as
     * declared. The search round a corner stops when it has found room enough, and so finds more room when more is
     * asked for: being off never counts as a gain.
     */
    private static OptionalDouble left(ReportCell cell, Plan.Spare declared) {
        return CellSpares.find(cell, declared.kind())
                .map(s -> OptionalDouble.of(Math.min(declared.left(), s.left())))
                .orElse(OptionalDouble.empty());
    }

    /** For the same reason the way round a corner that was found already counts when less is asked for. */
    private OptionalDouble exactLeft(Plan.Spare declared) {
        return CellSpares.find(exact, declared.kind())
                .map(s -> OptionalDouble.of(
                        declared.kind() == SpareKind.CORNER
                                ? Math.max(s.value(), declared.value()) - s.required()
                                : s.left()))
                .orElse(OptionalDouble.empty());
    }

    private static Double orNull(OptionalDouble value) {
        return value.isPresent() ? (Double) value.getAsDouble() : null;
    }
}
