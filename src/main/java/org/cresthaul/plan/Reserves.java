package org.cresthaul.plan;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.cresthaul.check.RaisedCheck;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.RaiseFinding;

/** What is left at a raise, and the least of what is left as a share of what is required or allowed. */
public final class Reserves {
    private Reserves() {}

    /** At the raise that a cell names: about nothing, since it is the least that will do. */
    static Plan.Spare leftAt(RaiseFinding raise) {
        return new Plan.Spare(
                SpareKind.RAISED,
                raise.clearanceM(),
                raise.requiredM(),
                raise.clearanceM() - raise.requiredM(),
                Sentence.of(Code.SPARE_RAISED));
    }

    /** At another raise, over the ground, under a structure and between units, whichever are judged. */
    static List<Plan.Spare> leftAt(RaisedCheck.Raised raised) {
        return Stream.of(
                        Spares.of(raised.ground(), SpareKind.GROUND),
                        Spares.of(raised.overhead(), SpareKind.OVERHEAD),
                        Spares.of(raised.units(), SpareKind.UNITS))
                .flatMap(s -> s.stream())
                .toList();
    }

    /** As a share, so that gaps and loads compare; empty where there is no figure. */
    public static OptionalDouble least(List<Plan.Spare> left) {
        if (left.isEmpty()) {
            return OptionalDouble.empty();
        }
        double least = Double.POSITIVE_INFINITY;
        for (Plan.Spare spare : left) {
            least = Math.min(least, spare.share());
        }
        return OptionalDouble.of(least);
    }
}
