package org.cresthaul.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.turning.CornerFit;

/** Why a corner is not clear in one configuration, in words. */
final class CornerReasons {
    private final CornerCheck check;
    private final CornerCheck.Judged judged;
    private final CornerFinding finding;
    private final Optional<String> noLine;

    /** @param noLine why no line can exist, where that is shown */
    CornerReasons(CornerCheck check, CornerCheck.Judged judged, CornerFinding finding, Optional<String> noLine) {
        this.noLine = noLine;
        this.check = check;
        this.judged = judged;
        this.finding = finding;
    }

    /** @param would states that get round, for where this one does not */
    List<String> list(List<String> would) {
        CornerFit fit = judged.fit();
        CornerFit.Gap tightest = fit.tightest();
        List<String> reasons = new ArrayList<>();
        if (judged.escorts()) {
            reasons.add("corner: only by using the oncoming lane; escorts must hold the traffic, as the permit says");
        }
        if (finding.backing() != null) {
            reasons.add(
                    "corner: backed into: what folds by itself is held by the driver, not by a line; with a spotter,"
                            + " at a walk, and the road held"
                            + (finding.backing().pivot() == null
                                    ? ""
                                    : "; the booster's pivot "
                                            + finding.backing().pivot()));
        }
        if (judged.verdict() == Verdict.TIGHT) {
            check.unknownNeighbor()
                    .ifPresent(
                            u -> reasons.add(
                                    "corner: " + u
                                            + " is closer than the combination is long and not surveyed: what it asks of the line is not known"));
        }
        if (judged.verdict() == Verdict.CONTACT) {
            contact(reasons, would);
        } else if (judged.verdict() == Verdict.TIGHT) {
            tight(reasons, tightest);
        }
        for (CornerFinding.Overhang over : finding.overhangs()) {
            if (over.heightM() == null) {
                reasons.add("corner: the " + over.unit() + " passes over " + over.ground()
                        + " whose height is unknown: measure it");
            } else if (over.gapM() < over.requiredM()) {
                reasons.add("corner: the " + over.unit() + " passes over " + over.ground()
                        + " with less than the required margin");
            }
        }
        return reasons;
    }

    private void contact(List<String> reasons, List<String> would) {
        CornerFit fit = judged.fit();
        reasons.add(noLine.map(p -> "corner: there is no line: " + p)
                .orElse("corner: no line was found by this search; that is not a proof that there is none"));
        CornerFit.Gap tightest = fit.tightest();
        if (!fit.withinLimits()) {
            reasons.add("corner: the best line found needs more than steering or couplings allow");
        } else if (!fit.keepsSides()) {
            reasons.add("corner: every line found passes an island on the wrong side");
        } else if (tightest.valueM() < 0) {
            reasons.add("corner: on the best line found, " + words(tightest) + " goes over "
                    + tightest.against().word());
        } else {
            reasons.add(
                    "corner: on the best line found the room is smaller than its uncertainty: cannot rule out contact");
        }
        reasons.add(
                would.isEmpty()
                        ? "corner: no configuration of this rig makes the turn"
                        : "corner: would make the turn: " + String.join("; ", would));
    }

    private void tight(List<String> reasons, CornerFit.Gap tightest) {
        if (tightest.valueM() < check.requiredM()) {
            reasons.add("corner: no contact, but less than the required margin");
        } else if (judged.fit().roomM() < check.requiredM()) {
            reasons.add("corner: on the line itself the margin is kept, with the wheel turned "
                    + (judged.fit().lateM() > 0 ? "late" : "early") + " it is not: use a spotter");
        } else if (check.unknownNeighbor().isEmpty() && !judged.escorts() && finding.backing() == null) {
            reasons.add(
                    "corner: beside the margin is kept; no line was found that also keeps every underside clear of curbs"
                            + " and islands by its margin");
        }
    }

    private String words(CornerFit.Gap gap) {
        String unit = judged.fit().combination().units().get(gap.unit()).name().word();
        return "the " + unit + (gap.part().equals(unit) ? "" : "'s " + gap.part()) + " on the " + gap.side();
    }
}
