package org.cresthaul.plan;

import java.util.List;
import java.util.Optional;
import org.cresthaul.check.RaisedCheck;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.plan.Admission.Raise;
import org.cresthaul.report.GapFinding;
import org.cresthaul.report.RaiseEnd;
import org.cresthaul.units.Rounded;
import org.cresthaul.units.Rounding;

/**
 * From which to which raise of the deck front every place that is passed on one raise is clear, the rear as it is told.
 *
 * @param fromM the least that will do, over the notch
 * @param toM the most, rounded down; what is in between is clear as well
 * @param endsAt what ends it there
 * @param endsWhere the place where one of the others does; null for the hydraulics
 * @param aimM the middle, to aim at
 * @param gapM of the gap that governs of all at any of the places, raised by {@code aimM}
 * @param requiredM its need
 * @param wide whether there is room to aim at for a deck that is set by the tape: 1/4 in or more
 */
public record RaiseBand(
        double fromM,
        double toM,
        RaiseEnd endsAt,
        String endsWhere,
        double aimM,
        @Rounded(Rounding.LENGTH_DOWN) double gapM,
        @Rounded(Rounding.LENGTH_UP) double requiredM,
        boolean wide) {
    /** Less than this between both ends is no room to aim at, meters: 1/4 in. */
    private static final double LEAST_WIDE_M = 0.00635;

    /**
     * For the places of a cluster in one configuration; empty where one of them is not clear at the raise itself.
     *
     * @param share of what is required that is left over everywhere in the band; 0 where any will do
     */
    static Optional<RaiseBand> find(
            List<PlanPlace> places, int configuration, Raise raise, RaiseJudge judge, double share) {
        double toM = Double.POSITIVE_INFINITY;
        RaiseEnd endsAt = null;
        String endsWhere = null;
        List<PlanPlace> raisable = places.stream().filter(PlanPlace::raisable).toList();
        for (PlanPlace place : raisable) {
            String key = place.cells().get(configuration).configuration();
            Optional<RaisedCheck.Top> top = judge.above(place.id(), key, raise.frontM(), raise.rearM(), share);
            if (top.isEmpty()) {
                return Optional.empty();
            }
            if (top.get().frontM() < toM) {
                toM = top.get().frontM();
                endsAt = top.get().endsAt();
                endsWhere = endsAt == RaiseEnd.HYDRAULICS ? null : place.id();
            }
        }
        if (endsAt == null) {
            return Optional.empty();
        }
        toM = Math.max(raise.frontM(), Rounding.LENGTH_DOWN.of(toM));
        double aimM = Rounding.LENGTH_NEAR.of((raise.frontM() + toM) / 2);
        GapFinding least = null;
        for (PlanPlace place : raisable) {
            Optional<RaisedCheck.Raised> at =
                    judge.at(place.id(), place.cells().get(configuration).configuration(), aimM, raise.rearM());
            if (at.filter(RaisedCheck.Raised::isClear).isEmpty()) {
                // Proven clear by a bound and not by the search itself: nobody is told to go there.
                return Optional.empty();
            }
            GapFinding gap = at.get().governing();
            least = least == null || gap.share() < least.share() ? gap : least;
        }
        return Optional.of(new RaiseBand(
                raise.frontM(),
                toM,
                endsAt,
                endsWhere,
                aimM,
                least.valueM(),
                least.requiredM(),
                toM - raise.frontM() >= LEAST_WIDE_M));
    }

    /** What ends it, in words. */
    public Sentence end() {
        return switch (endsAt) {
            case HYDRAULICS -> Sentence.of(Code.RAISE_END_HYDRAULICS);
            case STRUCTURE -> Sentence.of(Code.RAISE_END_STRUCTURE).with("place", endsWhere);
            case UNITS -> Sentence.of(Code.RAISE_END_UNITS).with("place", endsWhere);
            case GROUND -> Sentence.of(Code.RAISE_END_GROUND).with("place", endsWhere);
            case NOT_SHOWN -> Sentence.of(Code.RAISE_END_NOT_SHOWN).with("place", endsWhere);
        };
    }
}
