package org.cresthaul.clearance;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.cresthaul.clearance.BendProof.Kept;
import org.cresthaul.clearance.BendSearch.Bends;
import org.cresthaul.clearance.UnitPlaces.Placed;
import org.cresthaul.geometry.Range;
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
    /** Halvings until the place of a bend is told to a few micrometers. */
    private static final int HALVINGS = 50;

    /** How far beyond first looks bends may be shown to keep to, radians: the widest that is harmless is taken. */
    private static final double[] ROOMS_RAD = {0.06, 0.02, 0.005};

    private static final Range EVERY_BEND = new Range(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);

    private final Passage passage;
    private final UnitPlaces places;
    private final BendLeverage leverage;
    private final List<CoupledGaps> couplings;
    /** Whether couplings may be shown to leave more, instead of being searched. */
    private boolean byProof = true;

    /**
     * Places the combination at the first positions of the passage.
     *
     * @throws IllegalArgumentException when the stance does not have the setting's lift or booster state
     */
    public UnitSearch(Passage passage, Setting setting, Leveling leveling) {
        this.passage = passage;
        places = passage.places(setting, leveling);
        leverage = new BendLeverage(passage.stance(), setting);
        couplings = CoupledGaps.of(places.shape, setting);
    }

    private UnitSearch(UnitSearch other, Passage passage, Setting setting, Leveling leveling) {
        this.passage = passage;
        places = passage.places(setting, leveling);
        leverage = other.leverage;
        couplings = other.couplings;
    }

    /** One for each way, in both levelings where both count, of one setting of one combination. */
    public static List<UnitSearch> onAll(List<Passage> ways, Setting setting) {
        List<UnitSearch> all = new ArrayList<>();
        for (Passage way : ways) {
            for (Leveling leveling : setting.levelings()) {
                all.add(
                        all.isEmpty()
                                ? new UnitSearch(way, setting, leveling)
                                : all.get(0).on(way, setting, leveling));
            }
        }
        return all;
    }

    /** The same setting on another way or in the other leveling. */
    UnitSearch on(Passage way, Setting setting, Leveling leveling) {
        return new UnitSearch(this, way, setting, leveling);
    }

    List<CoupledGaps> couplings() {
        return couplings;
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
        return look(demands, true);
    }

    /** As {@link #look(List)}, but where the steer axle stands then is not sought: some place stands for it. */
    Look lookAtSpares(List<Demand> demands) {
        return look(demands, false);
    }

    /** The same by searches alone, hinges that leave more at every bend excepted: it always takes the same work. */
    Look searchSpares(List<Demand> demands) {
        byProof = false;
        return look(demands, false);
    }

    private Look look(List<Demand> demands, boolean placed) {
        Look look = new Look(Optional.empty(), List.of(), Optional.empty());
        for (CoupledGaps at : couplings) {
            if (look.least.isPresent() && isFree(at, look, demands)) {
                // Shown, even if nothing is left for what is asked next.
                passage.limit().take(at.gaps().steps());
            } else {
                look = worse(look, search(at, demands, placed));
            }
            if (look.undecided.isPresent()) {
                return look;
            }
        }
        return look;
    }

    /**
     * Whether a coupling leaves no less anywhere than those ahead of it do: a booster's at every bend of its hinge, or
     * any at all bends that it is shown to keep to, of units that stay apart there.
     */
    private boolean isFree(CoupledGaps at, Look ahead, List<Demand> demands) {
        if (at.coupling().isHinge() && leavesMore(at, hinge(at.coupling()), ahead, demands)) {
            return true;
        }
        if (!byProof) {
            return false;
        }
        Optional<Range> plain = roomsAround(at.coupling(), firstBends(at.coupling(), null))
                .filter(r -> isApart(at.least(r.lo(), r.hi()), ahead.least.get().valueM()))
                .findFirst();
        List<Kept> kept = new ArrayList<>();
        for (int i = 0; plain.isPresent() && i < demands.size(); i++) {
            kept(at, demands.get(i), ahead.spares.get(i).valueM()).ifPresent(kept::add);
        }
        return plain.isPresent() && kept.size() == demands.size() && keepsTo(at, plain.get(), kept);
    }

    /** Bends at which a demand is left with so much, if they can be had cheaply. */
    private Optional<Kept> kept(CoupledGaps at, Demand demand, double spareM) {
        return roomsAround(at.coupling(), firstBends(at.coupling(), demand))
                .map(r -> new Kept(demand, r))
                .filter(k -> isApart(leastSpare(at, k), spareM))
                .findFirst();
    }

    /** Only of outlines that stay apart: how deep they overlap is told of some bends, so that fewer may tell less. */
    private static boolean isApart(UnitGaps.Nearest least, double withM) {
        return least.gapM() > 0 && least.valueM() >= withM;
    }

    private boolean leavesMore(CoupledGaps at, Range bends, Look ahead, List<Demand> demands) {
        if (at.least(bends.lo(), bends.hi()).valueM() < ahead.least.get().valueM()) {
            return false;
        }
        for (int i = 0; i < demands.size(); i++) {
            if (leastSpare(at, new Kept(demands.get(i), bends)).valueM()
                    < ahead.spares.get(i).valueM()) {
                return false;
            }
        }
        return true;
    }

    /** The least gap less need over a demand's bends. */
    UnitGaps.Nearest leastSpare(CoupledGaps at, Kept kept) {
        Range bends = kept.within();
        return at.leastSpare(bends.lo(), bends.hi(), kept.demand(), leverage.factor(at.coupling()));
    }

    /** Bends at the first positions of the passage, with what a demand's uncertain ground may add; or null. */
    Range firstBends(Coupling coupling, Demand demand) {
        BendBounds bounds = bounds(coupling);
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < places.first.size(); i++) {
            Placed at = places.first.get(i);
            double steerM = i == 0 ? passage.firstSteerM() : passage.spans().get(i - 1).endM;
            double stray = bounds.strayRad(demand, steerM, steerM, at, at);
            least = Math.min(least, at.bendRad(coupling.unit()) - stray);
            most = Math.max(most, at.bendRad(coupling.unit()) + stray);
        }
        return new Range(least, most);
    }

    /** With some room for what lies between positions, up to a hinge's limits; the widest first. */
    Stream<Range> roomsAround(Coupling coupling, Range bends) {
        return DoubleStream.of(ROOMS_RAD).mapToObj(room -> withinHinge(coupling, bends.widened(room)));
    }

    private Range withinHinge(Coupling coupling, Range bends) {
        if (!coupling.isHinge()) {
            return bends;
        }
        Range whole = hinge(coupling);
        return new Range(
                Math.min(whole.hi(), Math.max(bends.lo(), whole.lo())),
                Math.max(whole.lo(), Math.min(bends.hi(), whole.hi())));
    }

    private Range hinge(Coupling coupling) {
        TrailingBooster joint = places.shape.joint(coupling.unit());
        return new Range(-joint.downRad(), joint.upRad());
    }

    private BendBounds bounds(Coupling coupling) {
        return new BendBounds(passage, places, coupling, leverage);
    }

    /**
     * Whether a coupling is shown to keep to a range of bends, and for each demand to a range of its own; to that by as
     * much as a search counts its range wider than it is, so that what is shown is what a search would show.
     */
    boolean keepsTo(CoupledGaps at, Range plain, List<Kept> kept) {
        double widerRad = WITHIN_M / at.gaps().reachM();
        return new BendProof(
                        bounds(at.coupling()),
                        beyondHinge(at.coupling(), plain),
                        kept.stream()
                                .map(k -> new Kept(
                                        k.demand(),
                                        beyondHinge(at.coupling(), k.within()).widened(-widerRad)))
                                .toList())
                .holds();
    }

    /** Nothing bends a booster beyond its hinge's limits: what reaches them is no limit to anything. */
    private Range beyondHinge(Coupling coupling, Range bends) {
        if (!coupling.isHinge()) {
            return bends;
        }
        Range whole = hinge(coupling);
        return new Range(
                bends.lo() <= whole.lo() ? Double.NEGATIVE_INFINITY : bends.lo(),
                bends.hi() >= whole.hi() ? Double.POSITIVE_INFINITY : bends.hi());
    }

    /** Whether every coupling is shown to leave so much more than a demand asks; false says nothing. */
    boolean leaves(Demand demand, double spareM) {
        for (CoupledGaps at : couplings) {
            Optional<Kept> kept = kept(at, demand, spareM);
            if (kept.isEmpty() || !keepsTo(at, EVERY_BEND, List.of(kept.get()))) {
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

    private Look search(CoupledGaps at, List<Demand> demands, boolean placed) {
        Coupling coupling = at.coupling();
        UnitGaps gaps = at.gaps();
        BendSearch search = new BendSearch(bounds(coupling), demands, WITHIN_M / gaps.reachM());
        search.search();
        List<Bends> ranges = search.ranges();
        Bends plain = ranges.get(0);
        UnitGaps.Nearest nearest = at.least(plain.leastRad(), plain.mostRad());
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
            UnitGaps.Nearest spare = at.leastSpare(range.provenLeastRad(), range.provenMostRad(), demand, factor);
            undecided = spent(gaps, plain);
            if (undecided.isPresent()) {
                return new Look(Optional.of(least), List.of(), undecided);
            }
            spares.add(gap(
                    spare,
                    0,
                    coupling,
                    placed ? steerM(coupling, spare.bendRad(), plain, range) : range.leastSteerM()));
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
        return couplings.stream().map(c -> at(c, steerM)).reduce(UnitSearch::lesser);
    }

    /** The same at one coupling, of which something can meet. */
    public UnitGap at(Coupling coupling, double steerM) {
        return at(
                couplings.stream()
                        .filter(c -> c.coupling().equals(coupling))
                        .findFirst()
                        .orElseThrow(),
                steerM);
    }

    /** Where on the road the nearest place of the unit behind is, meters along the line. */
    public double distanceM(UnitGap gap) {
        return placedAt(gap.steerM()).unit(gap.coupling().unit()).pose.worldXM(gap.behind());
    }

    private UnitGap at(CoupledGaps coupled, double steerM) {
        double bendRad = bendRadAt(coupled.coupling(), steerM);
        return gap(coupled.least(bendRad, bendRad), 0, coupled.coupling(), steerM);
    }

    /** What a gap stands on. */
    public Footing footingOf(UnitGap gap, Demand demand) {
        Placed placed = placedAt(gap.steerM());
        double[] stray = BendBounds.stray(passage, demand, gap.steerM(), gap.steerM(), placed, placed);
        double uncertaintyM = demand.withoutMargin().at(gap.outM() * leverage.factor(gap.coupling()))
                + gap.outM() * leverage.strayRad(gap.coupling(), stray);
        List<double[]> wheels = new ArrayList<>(List.of(new double[] {gap.steerM()}));
        for (int k = 0; k <= gap.coupling().unit(); k++) {
            wheels.add(placed.unit(k).wheelX);
        }
        return Footing.of(passage.line(), uncertaintyM, wheels);
    }
}
