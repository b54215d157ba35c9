package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.cresthaul.check.CornerFinding;
import org.cresthaul.check.LoadSheet;
import org.cresthaul.check.RaisedCheck;
import org.cresthaul.check.Report;
import org.cresthaul.check.Verdict;

/** What a cell of the report leaves, by its governing finding. */
final class Spares {
    private Spares() {}

    /** In transport stance; null when nothing is judged by a number there. */
    static Plan.Spare of(Report.Cell cell) {
        if (cell.load() != null) {
            LoadSheet.Finding load = cell.load();
            return new Plan.Spare(
                    SpareKind.LOAD, load.loadKg(), load.limitKg(), load.marginKg(), load.rule() + ", " + load.axles());
        }
        if (cell.corner() != null) {
            CornerFinding corner = cell.corner();
            String part = corner.part().equals(corner.unit()) ? corner.unit() : corner.unit() + " " + corner.part();
            return new Plan.Spare(
                    SpareKind.CORNER,
                    corner.valueM(),
                    corner.requiredM(),
                    corner.valueM() - corner.requiredM(),
                    part + ", " + corner.side() + ", to " + corner.against());
        }
        return Stream.of(
                        of(cell.ground(), SpareKind.GROUND),
                        of(cell.overhead(), SpareKind.OVERHEAD),
                        of(cell.units(), SpareKind.UNITS).filter(s -> !isClear(cell.units())))
                .flatMap(Optional::stream)
                .min(Comparator.comparingDouble(Plan.Spare::left))
                .orElse(null);
    }

    /** Between units that is nothing to look for on the road; only what is not clear governs a place. */
    private static boolean isClear(Report.GapFinding gap) {
        return gap.verdict() == Verdict.CLEAR;
    }

    /** A gap alone, where it is judged. */
    static Optional<Plan.Spare> of(Report.GapFinding gap, SpareKind kind) {
        return Optional.ofNullable(decisive(gap)).map(g -> spare(g, kind, g.valueM(), g.requiredM()));
    }

    /** The gap told, or that which decides where that one leaves less of what is required: whatever the verdict is. */
    private static Report.GapFinding decisive(Report.GapFinding gap) {
        boolean elsewhere = gap != null
                && gap.deciding() != null
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
        SpareKind kind = gap == judged.ground()
                ? SpareKind.GROUND
                : gap == judged.overhead() ? SpareKind.OVERHEAD : SpareKind.UNITS;
        return gap == least(judged)
                ? spare(gap, kind, finding.clearanceM(), finding.requiredM())
                : spare(gap, kind, gap.valueM(), gap.requiredM());
    }

    /**
     * Every gap that is judged, the governing one as {@code governing} has it; that between units only where it
     * governs, for it is nothing that anybody looks for on the road.
     */
    static List<Plan.Spare> gaps(
            Report.GapFinding ground, Report.GapFinding overhead, Report.GapFinding units, Plan.Spare governing) {
        List<Plan.Spare> gaps = new ArrayList<>();
        add(gaps, ground, SpareKind.GROUND, governing);
        add(gaps, overhead, SpareKind.OVERHEAD, governing);
        if (governing != null && governing.kind() == SpareKind.UNITS) {
            add(gaps, units, SpareKind.UNITS, governing);
        }
        return gaps;
    }

    private static void add(List<Plan.Spare> to, Report.GapFinding gap, SpareKind kind, Plan.Spare governing) {
        if (gap != null) {
            to.add(
                    governing != null && governing.kind() == kind
                            ? governing
                            : spare(gap, kind, gap.valueM(), gap.requiredM()));
        }
    }

    /** The least gap to the ground or a structure, which a raise is told with. */
    static Report.GapFinding least(RaisedCheck.Raised judged) {
        return Stream.of(judged.ground(), judged.overhead())
                .filter(Objects::nonNull)
                .min(Comparator.comparingDouble(Report.GapFinding::valueM))
                .orElseThrow();
    }

    private static Plan.Spare spare(Report.GapFinding gap, SpareKind kind, double valueM, double requiredM) {
        return new Plan.Spare(
                kind,
                valueM,
                requiredM,
                valueM - requiredM,
                named(gap.unit(), gap.part())
                        + (gap.against() == null
                                ? ""
                                : ", to "
                                        + named(
                                                gap.against().unit(),
                                                gap.against().part())));
    }

    private static String named(String unit, String part) {
        return part.isEmpty() ? unit : unit + ", " + part;
    }
}
