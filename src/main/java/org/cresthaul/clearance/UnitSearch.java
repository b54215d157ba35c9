package org.cresthaul.clearance;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.clearance.BendSearch.Bends;
import org.cresthaul.clearance.UnitPlaces.Placed;
import org.cresthaul.posture.CombinationShape.TrailingBooster;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.Setting;

/**
 * The gaps between coupled units for one setting with one leveling on one passage: each with the one ahead, at kingpins
 * and at a trailing booster's hinge. How far the units bend there is searched and proven ({@link BendSearch}); what
 * that leaves between them is a closed form ({@link UnitGaps}). Not safe to share between threads.
 */
public final class UnitSearch {
    /** How far above the true minimum the answer may lie for the bend's sake, meters. */
    private static final double WITHIN_M = 2.5e-4;
    /** Before the first coupling. */
    private static final Look NOWHERE = new Look(Optional.empty(), List.of(), Optional.empty());
    /** Halvings until the place of a bend is told to a few micrometers. */
    private static final int HALVINGS = 50;

    private final Setting setting;
    private final Passage passage;
    private final UnitPlaces places;
    private final BendLeverage leverage;

    /**
     * Places the combination at the first positions of the passage.
     *
     * @throws IllegalArgumentException when the stance does not have the setting's lift or booster state
     */
    public UnitSearch(Passage passage, Setting setting, Leveling leveling) {
        this.setting = setting;
        this.passage = passage;
        places = passage.places(setting, leveling);
        leverage = new BendLeverage(passage.stance(), setting);
    }

    /**
     * What a passage has to show.
     *
     * @param least the least gap; empty where nothing of the units can meet
     * @param spares for each demand where gap less need is least, what ground beyond the survey may add to the bend
     *     included; proven, never above the truth
     * @param undecided why the search ended without an answer: then nothing is shown
     */
    public record Look(Optional<UnitGap> least, List<UnitGap> spares, Optional<Undecided> undecided) {
        /** Index of the first demand that is met at every position, or their number when none is shown to be. */
        public int firstMet(int demands) {
            if (undecided.isPresent()) {
                return demands;
            }
            int first = 0;
            while (first < spares.size() && !(spares.get(first).valueM() >= 0)) {
                first++;
            }
            return least.isEmpty() ? 0 : first;
        }
    }

    /**
     * The least gap at any coupling, and the least of gap less need for each demand.
     *
     * @param demands its accuracy of an elevation is that of one support's height, its other accuracy that of the gap
     */
    public Look look(List<Demand> demands) {
        return lookAtHinges(lookAtKingpins(demands), demands);
    }

    /**
     * The part of {@link #look} that kingpins have in it: boosters that never carry the trailer change nothing in it.
     */
    public Look lookAtKingpins(List<Demand> demands) {
        return look(NOWHERE, demands, true, 1, places.shape.trailerIndex());
    }

    /**
     * As {@link #look}, where it is known what is left at kingpins.
     *
     * @param kingpins of this search, or of the same setting without boosters that never carry the trailer
     */
    public Look lookAtHinges(Look kingpins, List<Demand> demands) {
        return look(kingpins, demands, true, places.shape.trailerIndex() + 1, last());
    }

    /** As {@link #look(List)}, but where the steer axle stands then is not sought: some place stands for it. */
    Look lookAtSpares(List<Demand> demands) {
        return look(NOWHERE, demands, false, 1, last());
    }

    private int last() {
        return places.shape.units().size() - 1;
    }

    private Look look(Look ahead, List<Demand> demands, boolean placed, int from, int to) {
        Look look = ahead;
        for (int k = from; k <= to && look.undecided.isEmpty(); k++) {
            Coupling coupling = Coupling.aheadOf(places.shape, k);
            Optional<UnitGaps> gaps = UnitSolids.at(places.shape, setting, k);
            if (gaps.isEmpty()) {
                continue;
            }
            if (coupling.isHinge() && isFree(coupling, gaps.get(), look, demands)) {
                // Shown, even if nothing is left for what is asked next.
                passage.limit().take(gaps.get().steps());
            } else {
                look = worse(look, search(coupling, gaps.get(), demands, placed));
            }
        }
        return look;
    }

    /** Whether a booster at every bend of its hinge leaves more than the units ahead do. */
    private boolean isFree(Coupling hinge, UnitGaps gaps, Look ahead, List<Demand> demands) {
        TrailingBooster joint = places.shape.joint(hinge.unit());
        if (ahead.least.isEmpty()
                || gaps.least(-joint.downRad(), joint.upRad(), out -> 0).valueM()
                        < ahead.least.get().valueM()) {
            return false;
        }
        double factor = leverage.factor(hinge);
        for (int i = 0; i < demands.size(); i++) {
            Demand demand = demands.get(i);
            double spareM = gaps.least(-joint.downRad(), joint.upRad(), out -> demand.at(out * factor))
                    .valueM();
            if (spareM < ahead.spares.get(i).valueM()) {
                return false;
            }
        }
        return true;
    }

    private static Look worse(Look a, Look b) {
        if (a.least.isEmpty() || b.undecided.isPresent()) {
            return b;
        }
        List<UnitGap> spares = new ArrayList<>();
        for (int i = 0; i < a.spares.size(); i++) {
            spares.add(lesser(a.spares.get(i), b.spares.get(i)));
        }
        return new Look(Optional.of(lesser(a.least.get(), b.least.orElseThrow())), spares, Optional.empty());
    }

    private static UnitGap lesser(UnitGap a, UnitGap b) {
        return b.valueM() < a.valueM() ? b : a;
    }

    private Look search(Coupling coupling, UnitGaps gaps, List<Demand> demands, boolean placed) {
        BendSearch search = new BendSearch(passage, places, coupling, leverage, demands, WITHIN_M / gaps.reachM());
        search.search();
        List<Bends> ranges = search.ranges();
        Bends plain = ranges.get(0);
        UnitGaps.Nearest nearest = gaps.least(plain.leastRad(), plain.mostRad(), out -> 0);
        // Counted in any case: a search that ended undecided has looked at them all the same.
        Optional<Undecided> spent = spent(gaps, plain);
        Optional<Undecided> undecided = search.undecided().or(() -> spent);
        double strays = Math.max(plain.leastRad() - plain.provenLeastRad(), plain.provenMostRad() - plain.mostRad());
        double withinM = strays * gaps.reachM();
        UnitGap least = gap(
                nearest,
                withinM,
                coupling,
                placed ? steerM(coupling, nearest.bendRad(), plain, plain) : plain.leastSteerM());
        if (undecided.isPresent()) {
            return new Look(Optional.of(least), List.of(), undecided);
        }
        List<UnitGap> spares = new ArrayList<>();
        double factor = leverage.factor(coupling);
        for (int i = 0; i < demands.size(); i++) {
            Demand demand = demands.get(i);
            Bends range = ranges.get(i + 1);
            UnitGaps.Nearest at =
                    gaps.least(range.provenLeastRad(), range.provenMostRad(), out -> demand.at(out * factor));
            undecided = spent(gaps, plain);
            if (undecided.isPresent()) {
                return new Look(Optional.of(least), List.of(), undecided);
            }
            spares.add(
                    gap(at, 0, coupling, placed ? steerM(coupling, at.bendRad(), plain, range) : range.leastSteerM()));
        }
        return new Look(Optional.of(least), spares, Optional.empty());
    }

    /** Pairs of corners and pieces count as work as well; what is found after it is spent shows nothing. */
    private Optional<Undecided> spent(UnitGaps gaps, Bends plain) {
        return passage.limit().take(gaps.steps())
                ? Optional.empty()
                : Optional.of(new Undecided(Undecided.Cause.ROUGH, true, plain.leastSteerM()));
    }

    private static UnitGap gap(UnitGaps.Nearest at, double withinM, Coupling coupling, double steerM) {
        return new UnitGap(at.valueM(), withinM, coupling, at.ahead(), at.behind(), at.bendRad(), at.outM(), steerM);
    }

    /** Where a bend is met; where only uncertain ground brings it about, where it comes nearest to it. */
    private double steerM(Coupling coupling, double bendRad, Bends plain, Bends range) {
        if (bendRad <= plain.leastRad()) {
            return range.leastSteerM();
        }
        if (bendRad >= plain.mostRad()) {
            return range.mostSteerM();
        }
        double below = plain.leastSteerM();
        double above = plain.mostSteerM();
        for (int i = 0; i < HALVINGS; i++) {
            double middle = 0.5 * (below + above);
            if (bendRadAt(coupling, middle) < bendRad) {
                below = middle;
            } else {
                above = middle;
            }
        }
        return below;
    }

    /** The bend with the steer axle at a place, nose of the unit behind up, radians. */
    public double bendRadAt(Coupling coupling, double steerM) {
        return placedAt(steerM).bendRad(coupling.unit());
    }

    private Placed placedAt(double steerM) {
        return places.behind(places.solver.tractorAt(steerM, 0));
    }

    /** The gap at one position, at whichever coupling it is least; empty where nothing of the units can meet. */
    public Optional<UnitGap> at(double steerM) {
        Optional<UnitGap> least = Optional.empty();
        for (int k = 1; k < places.shape.units().size(); k++) {
            Coupling coupling = Coupling.aheadOf(places.shape, k);
            Optional<UnitGap> at = UnitSolids.at(places.shape, setting, k).map(gaps -> at(coupling, gaps, steerM));
            least = least.isPresent() && at.isPresent()
                    ? Optional.of(lesser(least.get(), at.get()))
                    : least.or(() -> at);
        }
        return least;
    }

    /** The same at one coupling, of which something can meet. */
    public UnitGap at(Coupling coupling, double steerM) {
        return at(
                coupling, UnitSolids.at(places.shape, setting, coupling.unit()).orElseThrow(), steerM);
    }

    /** Where on the road the nearest place of the unit behind is, meters along the line. */
    public double distanceM(UnitGap gap) {
        return placedAt(gap.steerM()).unit(gap.coupling().unit()).pose.worldXM(gap.behind());
    }

    private UnitGap at(Coupling coupling, UnitGaps gaps, double steerM) {
        double bendRad = bendRadAt(coupling, steerM);
        UnitGaps.Nearest at = gaps.least(bendRad, bendRad, out -> 0);
        return new UnitGap(at.valueM(), 0, coupling, at.ahead(), at.behind(), bendRad, at.outM(), steerM);
    }

    /** What a gap stands on. */
    public Footing footingOf(UnitGap gap, Demand demand) {
        Placed placed = placedAt(gap.steerM());
        double[] stray = BendSearch.stray(passage, demand, gap.steerM(), gap.steerM(), placed, placed);
        double uncertaintyM = demand.withoutMargin().at(gap.outM() * leverage.factor(gap.coupling()))
                + gap.outM() * leverage.strayRad(gap.coupling(), stray);
        List<double[]> wheels = new ArrayList<>(List.of(new double[] {gap.steerM()}));
        for (int k = 0; k <= gap.coupling().unit(); k++) {
            wheels.add(placed.unit(k).wheelX);
        }
        return Footing.of(passage.line(), uncertaintyM, wheels);
    }
}
