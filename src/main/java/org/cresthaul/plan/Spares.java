package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.check.RaisedCheck;
import org.cresthaul.language.Code;
import org.cresthaul.language.Names;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.CornerFinding;
import org.cresthaul.report.Finding;
import org.cresthaul.report.GapFinding;
import org.cresthaul.report.LoadFinding;
import org.cresthaul.report.ReportCell;

/** What a cell of the report leaves, by the finding that governs it. */
final class Spares {
    private Spares() {}

    /** In transport stance; null when nothing is judged by a number there. */
    static Plan.Spare of(ReportCell cell) {
        return cell.governing().map(f -> of(f, cell.ground(), cell.overhead())).orElse(null);
    }

    /** Raised. */
    static Plan.Spare of(RaisedCheck.Raised judged) {
        return of(judged.governing(), judged.ground(), judged.overhead());
    }

    /** @param ground overhead what was found on those sides, whichever are judged, to tell a gap's kind by */
    private static Plan.Spare of(Finding finding, GapFinding ground, GapFinding overhead) {
        if (finding instanceof LoadFinding load) {
            return new Plan.Spare(
                    SpareKind.LOAD,
                    load.loadKg(),
                    load.limitKg(),
                    load.left(),
                    Sentence.of(Code.RULE_AND_AXLES).with("rule", load.rule()).with("axles", load.axles()));
        }
        if (finding instanceof CornerFinding corner) {
            return new Plan.Spare(
                    SpareKind.CORNER,
                    corner.valueM(),
                    corner.requiredM(),
                    corner.left(),
                    Sentence.of(Code.CORNER_AT)
                            .with("part", CornerFinding.part(corner.unit(), corner.part()))
                            .with("side", Sentence.word(corner.side()))
                            .with("against", Sentence.word(corner.against())));
        }
        GapFinding gap = (GapFinding) finding;
        return spare(
                gap, isOf(ground, gap) ? SpareKind.GROUND : isOf(overhead, gap) ? SpareKind.OVERHEAD : SpareKind.UNITS);
    }

    private static boolean isOf(GapFinding side, GapFinding gap) {
        return side != null && (side == gap || side.deciding() == gap);
    }

    /** A gap alone, where it is judged: as it decides. */
    static Optional<Plan.Spare> of(GapFinding gap, SpareKind kind) {
        return Optional.ofNullable(gap).map(g -> spare(g.decisive(), kind));
    }

    /**
     * Every gap that is judged, the governing one as {@code governing} has it; that between units only where it
     * governs, for it is nothing that anybody looks for on the road.
     */
    static List<Plan.Spare> gaps(GapFinding ground, GapFinding overhead, GapFinding units, Plan.Spare governing) {
        List<Plan.Spare> gaps = new ArrayList<>();
        add(gaps, ground, SpareKind.GROUND, governing);
        add(gaps, overhead, SpareKind.OVERHEAD, governing);
        if (governing != null && governing.kind() == SpareKind.UNITS) {
            add(gaps, units, SpareKind.UNITS, governing);
        }
        return gaps;
    }

    private static void add(List<Plan.Spare> to, GapFinding gap, SpareKind kind, Plan.Spare governing) {
        if (gap != null) {
            to.add(governing != null && governing.kind() == kind ? governing : spare(gap, kind));
        }
    }

    private static Plan.Spare spare(GapFinding gap, SpareKind kind) {
        return new Plan.Spare(
                kind,
                gap.valueM(),
                gap.requiredM(),
                gap.left(),
                gap.against() == null
                        ? named(gap.unit(), gap.part())
                        : Sentence.of(Code.PART_TO)
                                .with("part", named(gap.unit(), gap.part()))
                                .with(
                                        "other",
                                        named(
                                                gap.against().unit(),
                                                gap.against().part())));
    }

    private static Sentence named(String unit, String part) {
        return part.isEmpty()
                ? Names.of(unit)
                : Sentence.of(Code.PART_OF).with("unit", Names.of(unit)).with("part", Names.of(part));
    }
}
