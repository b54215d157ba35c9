package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.cresthaul.report.Verdict;
import org.cresthaul.units.Rounded;
import org.cresthaul.units.Rounding;
import org.cresthaul.units.RoundsItself;

/**
 * How a plan's margins shrink when what was declared is off by stated amounts. Spares as in {@link Plan.Spare}.
 *
 * @param assumed the amounts, in the order of {@link Row#left}
 * @param rows every hazard of the plan that is judged by a number
 * @param weakest hazard with the least share left in the worst case, one where that is not known before all others; or
 *     null
 * @param resurvey the re-survey that would help most of those whose help is known, or null when none would
 * @param notKnown what of the rows an altered check had no figure for, in words
 */
public record Robustness(
        List<Assumed> assumed, List<Row> rows, Weakest weakest, Resurvey resurvey, List<NotKnown> notKnown) {
    public Robustness {
        assumed = List.copyOf(assumed);
        rows = List.copyOf(rows);
        notKnown = List.copyOf(notKnown);
    }

    /**
     * One thing that may be off: "survey twice as coarse", "ride 1/2 in lower", "load 1 in higher", "weights 2 % more".
     */
    public record Assumed(String what, double amount, String unit) {}

    /**
     * @param bears whether each assumption has a bearing on this kind of spare
     * @param left spare left with each assumption alone; null where it has no bearing, and where it has one but what is
     *     left is not known
     * @param exact spare with an exact survey; null where surveys have no bearing, and where it is not known
     * @param worst with all together; null where not known
     * @param verdict of the check with all together
     */
    public record Row(
            String hazard,
            SpareKind kind,
            double spare,
            List<Boolean> bears,
            List<Double> left,
            Double exact,
            Double worst,
            Verdict verdict)
            implements RoundsItself {
        public Row {
            bears = List.copyOf(bears);
            // List.copyOf would refuse a null.
            left = Collections.unmodifiableList(new ArrayList<>(left));
            if (bears.size() != left.size()) {
                throw new IllegalArgumentException(bears.size() + " bearings of " + left.size() + " spares");
            }
        }

        @Override
        public Row rounded() {
            return new Row(
                    hazard,
                    kind,
                    kind.leftAsWritten(spare),
                    bears,
                    left.stream()
                            .map(l -> l == null ? null : (Double) kind.leftAsWritten(l))
                            .toList(),
                    exact == null ? null : (Double) kind.leftAsWritten(exact),
                    worst == null ? null : (Double) kind.leftAsWritten(worst),
                    verdict);
        }

        /** Whether an assumption has a bearing and what it leaves is not known. */
        public boolean isNotKnown(int assumption) {
            return bears.get(assumption) && left.get(assumption) == null;
        }
    }

    /** @param worst what is left with all together, null where not known */
    public record Weakest(String hazard, SpareKind kind, Double worst, String text) implements RoundsItself {
        @Override
        public Weakest rounded() {
            return new Weakest(hazard, kind, worst == null ? null : (Double) kind.leftAsWritten(worst), text);
        }
    }

    /** @param gainM how much more spare an exact survey there would show */
    public record Resurvey(
            String hazard, @Rounded(Rounding.LENGTH_DOWN) double gainM, String text) {}

    /** A row with something not known; the text names place and side. */
    public record NotKnown(String hazard, SpareKind kind, String text) {}
}
