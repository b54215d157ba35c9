package org.cresthaul.plan;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.cresthaul.report.RaiseFinding;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;

/** Which configuration may pass which place, in transport or raised, with what the planner allows. */
final class Admission {
    private final List<PlanPlace> places;
    private final Set<String> acceptTight;
    private final Set<String> setAside;
    private final RaiseJudge raised;
    private final double leastReserve;
    /** Places with figures in some configuration. */
    private final Set<String> figured;

    /** Less than any figure. */
    private static final double UNKNOWN = -Double.MAX_VALUE;

    /** A share that is less by so little is the same share: the noise of binary fractions. */
    private static final double NOISE = 1e-9;

    /** A raise, meters; {@link #NONE} is transport stance. */
    record Raise(double frontM, double rearM) {
        static final Raise NONE = new Raise(0, 0);

        static Raise of(RaiseFinding finding) {
            return new Raise(finding.frontM(), finding.rearM());
        }

        Raise atLeast(Raise other) {
            return new Raise(Math.max(frontM, other.frontM), Math.max(rearM, other.rearM));
        }

        boolean covers(Raise other) {
            return frontM >= other.frontM && rearM >= other.rearM;
        }
    }

    /** @param leastReserve null when any will do */
    Admission(
            List<PlanPlace> places,
            List<String> acceptTight,
            List<String> setAside,
            RaiseJudge raised,
            Double leastReserve) {
        this(places, acceptTight, setAside, raised, leastReserve, figured(places));
    }

    private Admission(
            List<PlanPlace> places,
            List<String> acceptTight,
            List<String> setAside,
            RaiseJudge raised,
            Double leastReserve,
            Set<String> figured) {
        this.figured = figured;
        this.leastReserve = leastReserve == null ? Double.NEGATIVE_INFINITY : leastReserve;
        this.places = places;
        this.acceptTight = Set.copyOf(acceptTight);
        this.setAside = Set.copyOf(setAside);
        this.raised = raised;
    }

    /** Who is asked whether a raise is enough. */
    RaiseJudge raised() {
        return raised;
    }

    /** The same with more places set aside. */
    Admission with(List<String> moreSetAside) {
        Set<String> all = new HashSet<>(setAside);
        all.addAll(moreSetAside);
        return new Admission(
                places,
                List.copyOf(acceptTight),
                List.copyOf(all),
                raised,
                leastReserve == Double.NEGATIVE_INFINITY ? null : leastReserve,
                figured);
    }

    private static Set<String> figured(List<PlanPlace> places) {
        Set<String> figured = new HashSet<>();
        for (PlanPlace place : places) {
            for (ReportCell cell : place.cells()) {
                if (hasFigures(cell)) {
                    figured.add(place.id());
                    break;
                }
            }
        }
        return figured;
    }

    private static boolean hasFigures(ReportCell c) {
        return c.ground() != null
                || c.overhead() != null
                || c.load() != null
                || c.corner() != null
                || c.raise() != null;
    }

    boolean isSetAside(PlanPlace place) {
        return setAside.contains(place.id());
    }

    /** Whether a verdict lets a combination through: clear, or tight where that was accepted. */
    boolean lets(PlanPlace place, Verdict verdict) {
        return verdict == Verdict.CLEAR || verdict == Verdict.TIGHT && acceptTight.contains(place.id());
    }

    /** Whether a configuration may pass a place in transport stance. */
    boolean inTransport(PlanPlace place, int configuration) {
        return isSetAside(place)
                || lets(place, place.cells().get(configuration).verdict())
                        && hasReserve(place, configuration, Raise.NONE);
    }

    /** Whether a verdict lets a configuration through, but the reserve that is asked for does not, raised or not. */
    boolean asksMore(PlanPlace place, int configuration) {
        ReportCell cell = place.cells().get(configuration);
        boolean transport = lets(place, cell.verdict()) && hasReserve(place, configuration, Raise.NONE);
        Raise wanted = wanted(place, configuration, true);
        boolean raises = !wanted.equals(Raise.NONE) && at(place, configuration, wanted);
        return !transport && !raises && (lets(place, cell.verdict()) || cell.raise() != null);
    }

    /** Whether enough is left, where it is asked for. */
    private boolean hasReserve(PlanPlace place, int configuration, Raise raise) {
        return leastReserve == Double.NEGATIVE_INFINITY
                || acceptTight.contains(place.id())
                || counted(place, configuration, raise) >= leastReserve - NOISE;
    }

    /** Whether passing a place in a configuration is a condition of the plan. */
    boolean isCondition(PlanPlace place, int configuration, Raise raise) {
        return isSetAside(place)
                || raise.equals(Raise.NONE) && place.cells().get(configuration).verdict() != Verdict.CLEAR;
    }

    /** What is left where a place is passed, of every kind that has a figure; empty where nothing is known. */
    List<Plan.Spare> left(PlanPlace place, int configuration, Raise raise) {
        if (isSetAside(place)) {
            return List.of();
        }
        ReportCell cell = place.cells().get(configuration);
        if (raise.equals(Raise.NONE) || !place.raisable()) {
            return CellSpares.of(cell);
        }
        return cell.raise() != null && Raise.of(cell.raise()).equals(raise)
                ? List.of(Reserves.leftAt(cell.raise()))
                : raised.at(place.id(), cell.configuration(), raise.frontM(), raise.rearM())
                        .map(Reserves::leftAt)
                        .orElse(List.of());
    }

    /**
     * The least of it as a share of what is required. What has no figures counts for what is known: nothing is left
     * where the verdict is clear, and not even that where it is not. A place that is set aside asks for nothing.
     */
    double counted(PlanPlace place, int configuration, Raise raise) {
        if (isSetAside(place)) {
            return Double.POSITIVE_INFINITY;
        }
        boolean clear =
                raise.equals(Raise.NONE) && place.cells().get(configuration).verdict() == Verdict.CLEAR;
        return Reserves.least(left(place, configuration, raise)).orElse(clear ? 0 : UNKNOWN);
    }

    /** As ways are compared by it: a place of which no configuration has figures does not tell one from another. */
    double ranked(PlanPlace place, int configuration, Raise raise) {
        return figured.contains(place.id()) ? counted(place, configuration, raise) : Double.POSITIVE_INFINITY;
    }

    /** What is asked to be left over at every raised place, as a share of what is required; 0 where any will do. */
    double leastShare() {
        return Math.max(0, leastReserve);
    }

    /**
     * The raise a place asks for, that of its cell; none where it may be passed without, or cannot be passed at all.
     *
     * @param leaving whether, where that leaves less than is asked for, it is the least that leaves it; also of a place
     *     that is clear without
     */
    Raise wanted(PlanPlace place, int configuration, boolean leaving) {
        ReportCell cell = place.cells().get(configuration);
        if (inTransport(place, configuration) || !place.raisable()) {
            return Raise.NONE;
        }
        Raise least = cell.raise() == null ? Raise.NONE : Raise.of(cell.raise());
        if (!leaving
                || leastShare() == 0
                || !least.equals(Raise.NONE) && hasReserve(place, configuration, least)
                || least.equals(Raise.NONE) && !lets(place, cell.verdict())) {
            return least;
        }
        return raised.least(place.id(), cell.configuration(), leastShare())
                .map(r -> new Raise(r.frontM(), r.rearM()))
                .orElse(least);
    }

    /** Whether a configuration may pass a place at a raise. A raise that its cell does not name is judged anew. */
    boolean at(PlanPlace place, int configuration, Raise raise) {
        if (raise.equals(Raise.NONE) || !place.raisable() || isSetAside(place)) {
            return inTransport(place, configuration);
        }
        ReportCell cell = place.cells().get(configuration);
        if (cell.raise() != null && Raise.of(cell.raise()).equals(raise)) {
            return hasReserve(place, configuration, raise);
        }
        return raised.at(place.id(), cell.configuration(), raise.frontM(), raise.rearM())
                .filter(r -> lets(place, r.verdict()) && hasReserve(place, configuration, raise))
                .isPresent();
    }
}
