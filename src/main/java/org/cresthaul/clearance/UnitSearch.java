package org.cresthaul.clearance;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.clearance.BendSearch.Bends;
import org.cresthaul.clearance.UnitPlaces.Placed;
import org.cresthaul.posture.CombinationShape.TrailingBooster;
import org.cresthaul.posture.PlacedUnit;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.Setting;

/**
 * The gaps between coupled units for one setting with one leveling on one passage: tractor and trailer at the kingpin,
 * trailer and trailing booster at the hinge. How far the units bend there is searched and proven ({@link BendSearch});
 * what that leaves between them is a closed form ({@link UnitGaps}). Not safe to share between threads.
 */
public final class UnitSearch {
    /** How far above the true minimum the answer may lie for the bend's sake, meters. */
    private static final double WITHIN_M = 2.5e-4;
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
     * The least gap at either coupling, and the least of gap less need for each demand.
     *
     * @param demands its accuracy of an elevation is that of one support's height, its other accuracy that of the gap
     */
    public Look look(List<Demand> demands) {
        return look(demands, true);
    }

    /** As {@link #look(List)}, but where the steer axle stands then is not sought: some place stands for it. */
    Look lookAtSpares(List<Demand> demands) {
        return look(demands, false);
    }

    private Look look(List<Demand> demands, boolean placed) {
        Look look = UnitSolids.atKingpin(places.shape, setting)
                .map(gaps -> search(Coupling.KINGPIN, gaps, demands, placed))
                .orElse(new Look(Optional.empty(), List.of(), Optional.empty()));
        Optional<UnitGaps> atHinge = UnitSolids.atHinge(places.shape);
        if (look.undecided.isPresent() || atHinge.isEmpty()) {
            return look;
        }
        if (isFree(atHinge.get(), look, demands)) {
            // Shown, even if nothing is left for what is asked next.
            passage.limit().take(atHinge.get().steps());
            return look;
        }
        return worse(look, search(Coupling.HINGE, atHinge.get(), demands, placed));
    }

    /** Whether a booster at every bend of its hinge leaves more than tractor and trailer do. */
    private boolean isFree(UnitGaps gaps, Look kingpin, List<Demand> demands) {
        TrailingBooster joint = places.shape.trailing().orElseThrow();
        if (kingpin.least.isEmpty()
                || gaps.least(-joint.downRad(), joint.upRad(), out -> 0).valueM()
                        < kingpin.least.get().valueM()) {
            return false;
        }
        double factor = leverage.factor(Coupling.HINGE);
        for (int i = 0; i < demands.size(); i++) {
            Demand demand = demands.get(i);
            double spareM = gaps.least(-joint.downRad(), joint.upRad(), out -> demand.at(out * factor))
                    .valueM();
            if (spareM < kingpin.spares.get(i).valueM()) {
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
        PlacedUnit tractor = places.solver.tractorAt(steerM, 0);
        return BendSearch.bendRad(coupling, tractor, places.behind(tractor));
    }

    /** The gap at one position, at whichever coupling it is less; empty where nothing of the units can meet. */
    public Optional<UnitGap> at(double steerM) {
        Optional<UnitGap> at =
                UnitSolids.atKingpin(places.shape, setting).map(gaps -> at(Coupling.KINGPIN, gaps, steerM));
        Optional<UnitGap> behind = UnitSolids.atHinge(places.shape).map(gaps -> at(Coupling.HINGE, gaps, steerM));
        return at.isPresent() && behind.isPresent() ? Optional.of(lesser(at.get(), behind.get())) : at.or(() -> behind);
    }

    /** The same at one coupling, of which something can meet. */
    public UnitGap at(Coupling coupling, double steerM) {
        Optional<UnitGaps> gaps = coupling == Coupling.KINGPIN
                ? UnitSolids.atKingpin(places.shape, setting)
                : UnitSolids.atHinge(places.shape);
        return at(coupling, gaps.orElseThrow(), steerM);
    }

    /** Where on the road the nearest place of the unit behind is, meters along the line. */
    public double distanceM(UnitGap gap) {
        PlacedUnit tractor = places.solver.tractorAt(gap.steerM(), 0);
        Placed placed = places.behind(tractor);
        PlacedUnit unit = gap.coupling() == Coupling.KINGPIN
                ? placed.trailer()
                : placed.booster().unit();
        return unit.pose.worldXM(gap.behind());
    }

    private UnitGap at(Coupling coupling, UnitGaps gaps, double steerM) {
        double bendRad = bendRadAt(coupling, steerM);
        UnitGaps.Nearest at = gaps.least(bendRad, bendRad, out -> 0);
        return new UnitGap(at.valueM(), 0, coupling, at.ahead(), at.behind(), bendRad, at.outM(), steerM);
    }

    /** What a gap stands on. */
    public Footing footingOf(UnitGap gap, Demand demand) {
        PlacedUnit tractor = places.solver.tractorAt(gap.steerM(), 0);
        Placed placed = places.behind(tractor);
        double[] stray =
                BendSearch.stray(passage, demand, gap.steerM(), gap.steerM(), tractor, tractor, placed, placed);
        double uncertaintyM = demand.withoutMargin().at(gap.outM() * leverage.factor(gap.coupling()))
                + gap.outM() * leverage.strayRad(gap.coupling(), stray);
        double[] boosterWheels =
                gap.coupling() == Coupling.HINGE ? placed.booster().unit().wheelX : new double[0];
        return Footing.of(
                passage.line(),
                uncertaintyM,
                new double[] {gap.steerM()},
                tractor.wheelX,
                placed.trailer().wheelX,
                boosterWheels);
    }
}
