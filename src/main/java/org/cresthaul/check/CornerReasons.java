package org.cresthaul.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.language.Code;
import org.cresthaul.language.Names;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.CornerFinding;
import org.cresthaul.report.PivotState;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.UnitName;
import org.cresthaul.turning.CornerFit;

/** Why a corner is not clear in one configuration. */
final class CornerReasons {
    private final CornerCheck check;
    private final CornerCheck.JudgedCorner judged;
    private final CornerFinding finding;
    private final Optional<Sentence> noLine;

    /** @param noLine why no line can exist, where that is shown */
    CornerReasons(
            CornerCheck check, CornerCheck.JudgedCorner judged, CornerFinding finding, Optional<Sentence> noLine) {
        this.noLine = noLine;
        this.check = check;
        this.judged = judged;
        this.finding = finding;
    }

    /** @param would states that get round, for where this one does not */
    List<Sentence> list(List<Sentence> would) {
        CornerFit fit = judged.fit();
        CornerFit.Gap tightest = fit.tightest();
        List<Sentence> reasons = new ArrayList<>();
        if (judged.escorts()) {
            reasons.add(corner(Code.CORNER_ONCOMING));
        }
        if (finding.backing() != null) {
            reasons.add(corner(backed(finding.backing().pivot())));
        }
        if (judged.verdict() == Verdict.TIGHT) {
            check.unknownNeighbor()
                    .ifPresent(u ->
                            reasons.add(corner(Sentence.of(Code.CORNER_NEIGHBOR).with("corner", u))));
        }
        if (judged.verdict() == Verdict.CONTACT) {
            contact(reasons, would);
        } else if (judged.verdict() == Verdict.TIGHT) {
            tight(reasons, tightest);
        }
        for (CornerFinding.Overhang over : finding.overhangs()) {
            if (over.heightM() == null) {
                reasons.add(over(Code.CORNER_OVER_NO_HEIGHT, over));
            } else if (over.gapM() < over.requiredM()) {
                reasons.add(over(Code.CORNER_OVER_SHORT, over));
            }
        }
        return reasons;
    }

    private static Code backed(PivotState pivot) {
        return pivot == null
                ? Code.CORNER_BACKED
                : pivot == PivotState.FREE ? Code.CORNER_BACKED_FREE : Code.CORNER_BACKED_LOCKED;
    }

    private static Sentence over(Code code, CornerFinding.Overhang over) {
        return corner(Sentence.of(code).with("unit", over.unit()).with("ground", over.ground()));
    }

    private static Sentence corner(Code why) {
        return corner(Sentence.of(why));
    }

    private static Sentence corner(Sentence why) {
        return Sentence.of(Code.CORNER_REASON).with("why", why);
    }

    private void contact(List<Sentence> reasons, List<Sentence> would) {
        CornerFit fit = judged.fit();
        reasons.add(noLine.map(p -> corner(Sentence.of(Code.CORNER_NO_LINE).with("proof", p)))
                .orElse(corner(Code.CORNER_NOT_FOUND)));
        CornerFit.Gap tightest = fit.tightest();
        if (!fit.withinLimits()) {
            reasons.add(corner(Code.CORNER_LIMITS));
        } else if (!fit.keepsSides()) {
            reasons.add(corner(Code.CORNER_WRONG_SIDE));
        } else if (tightest.valueM() < 0) {
            reasons.add(corner(goesOver(tightest)));
        } else {
            reasons.add(corner(Code.CORNER_UNCERTAIN));
        }
        reasons.add(
                would.isEmpty()
                        ? corner(Code.CORNER_NONE_TURNS)
                        : corner(Sentence.of(Code.CORNER_WOULD_TURN).with("states", Sentence.listed(would, "; "))));
    }

    private void tight(List<Sentence> reasons, CornerFit.Gap tightest) {
        if (tightest.valueM() < check.requiredM()) {
            reasons.add(corner(Code.WHY_MARGIN));
        } else if (judged.fit().roomM() < check.requiredM()) {
            reasons.add(corner(judged.fit().lateM() > 0 ? Code.CORNER_LATE : Code.CORNER_EARLY));
        } else if (check.unknownNeighbor().isEmpty() && !judged.escorts() && finding.backing() == null) {
            reasons.add(corner(Code.CORNER_UNDERSIDES));
        }
    }

    private Sentence goesOver(CornerFit.Gap gap) {
        UnitName unit = judged.fit().combination().nameOf(gap);
        boolean whole = gap.part().isBodyOf(unit);
        Sentence said = Sentence.of(whole ? Code.CORNER_GOES_OVER : Code.CORNER_PART_GOES_OVER)
                .with("unit", Names.of(unit.word()))
                .with("side", Sentence.word(gap.side()))
                .with("against", Sentence.word(gap.against()));
        return whole ? said : said.with("part", Names.of(gap.part().word()));
    }
}
