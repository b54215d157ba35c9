package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.cresthaul.check.CornerFinding;
import org.cresthaul.check.LoadSheet;
import org.cresthaul.check.RaisedCheck;
import org.cresthaul.check.Report;

/** What a cell of the report leaves, by its governing finding. */
final class Spares {
    private static final double STEPS_PER_M = 10_000;

    private Spares() {}

    /** In transport stance; null when nothing is judged by a number there. */
    static Plan.Spare of(Report.Cell cell) {
        if (cell.load() != null) {
            LoadSheet.Finding load = cell.load();
            return new Plan.Spare("load", load.loadKg(), load.limitKg(), load.marginKg(),
                    load.rule() + ", " + load.axles());
        }
        if (cell.corner() != null) {
            CornerFinding corner = cell.corner();
            String part = corner.part().equals(corner.unit()) ? corner.unit() : corner.unit() + " " + corner.part();
            return new Plan.Spare("corner", corner.valueM(), corner.requiredM(),
                    meters(corner.valueM() - corner.requiredM()), part + ", " + corner.side() + ", to " + corner.against());
        }
        if (cell.ground() == null && cell.overhead() == null) {
            return null;
        }
        Report.GapFinding ground = decisive(cell.ground());
        Report.GapFinding overhead = decisive(cell.overhead());
        Report.GapFinding gap = ground == null || overhead != null
                && overhead.valueM() - overhead.requiredM() < ground.valueM() - ground.requiredM()
                ? overhead
                : ground;
        return spare(gap, gap == ground ? "ground" : "overhead", gap.valueM(), gap.requiredM());
    }

    /** A gap alone, where it is judged. */
    static Optional<Plan.Spare> of(Report.GapFinding gap, String kind) {
        return Optional.ofNullable(decisive(gap)).map(g -> spare(g, kind, g.valueM(), g.requiredM()));
    }

    /** The gap told, or that which decides where that one leaves less of what is required: whatever the verdict is. */
    private static Report.GapFinding decisive(Report.GapFinding gap) {
        boolean elsewhere = gap != null && gap.deciding() != null
                && gap.deciding().valueM() - gap.deciding().requiredM() < gap.valueM() - gap.requiredM();
        return elsewhere ? gap.deciding() : gap;
    }

    /**
     * Raised.
     *
     * @param judged the check at that raise
     * @param finding the raise as the plan tells it; its clearance is the least gap of all, its need that gap's
     */
    static Plan.Spare of(RaisedCheck.Raised judged, Report.RaiseFinding finding) {
        Report.GapFinding gap = judged.governing();
        String kind = gap == judged.ground() ? "ground" : "overhead";
        return gap == least(judged)
                ? spare(gap, kind, finding.clearanceM(), finding.requiredM())
                : spare(gap, kind, gap.valueM(), gap.requiredM());
    }

    /** Every gap that is judged, the governing one as {@code governing} has it. */
    static List<Plan.Spare> gaps(Report.GapFinding ground, Report.GapFinding overhead, Plan.Spare governing) {
        List<Plan.Spare> gaps = new ArrayList<>();
        if (ground != null) {
            gaps.add(governing != null && governing.kind().equals("ground")
                    ? governing
                    : spare(ground, "ground", ground.valueM(), ground.requiredM()));
        }
        if (overhead != null) {
            gaps.add(governing != null && governing.kind().equals("overhead")
                    ? governing
                    : spare(overhead, "overhead", overhead.valueM(), overhead.requiredM()));
        }
        return gaps;
    }

    /** The least gap of any. */
    static Report.GapFinding least(RaisedCheck.Raised judged) {
        return Stream.of(Optional.ofNullable(judged.ground()), Optional.ofNullable(judged.overhead()))
                .flatMap(Optional::stream)
                .min(Comparator.comparingDouble(Report.GapFinding::valueM))
                .orElseThrow();
    }

    private static Plan.Spare spare(Report.GapFinding gap, String kind, double valueM, double requiredM) {
        return new Plan.Spare(kind, valueM, requiredM, meters(valueM - requiredM),
                gap.part().isEmpty() ? gap.unit() : gap.unit() + ", " + gap.part());
    }

    /** The difference of two figures of the report, to the step that both have. */
    static double meters(double difference) {
        return Math.rint(difference * STEPS_PER_M) / STEPS_PER_M;
    }
}
