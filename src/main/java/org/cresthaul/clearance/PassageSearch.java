package org.cresthaul.clearance;

import java.util.AbstractList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.cresthaul.clearance.UnitMotions.UnitMotion;
import org.cresthaul.clearance.UnitPlaces.Placed;
import org.cresthaul.clearance.bound.Floors;
import org.cresthaul.clearance.bound.GapBounds;
import org.cresthaul.clearance.bound.OutlineGaps;
import org.cresthaul.clearance.bound.PlacedOutlines;
import org.cresthaul.posture.CombinationPosture;
import org.cresthaul.posture.CombinationShape;
import org.cresthaul.posture.CoupledCombination;
import org.cresthaul.posture.PlacedUnit;
import org.cresthaul.posture.PostureSolver;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.Setting;
import org.cresthaul.rig.UnitName;
import org.cresthaul.road.Soffit;

/**
 * The clearances of one setting with one leveling on one passage. The units behind the tractor are searched here; its
 * own part comes from {@link TractorSearch}. Not safe to share between threads.
 */
public final class PassageSearch {
    /** Positions looked at where a search ended before it met a structure. */
    private static final int LOOKS = 500;
    /** What sums of lengths may be off by, and far more. */
    private static final double ROUNDING_M = 1e-9;

    private final Passage passage;
    private final UnitPlaces places;
    private final CombinationShape shape;
    private final CoupledCombination combination;
    private final PostureSolver solver;
    private final Leverage leverage;
    private final Map<Target, List<Spot>> firstSpots = new HashMap<>(4);
    /** How the combination rolls over the ground and under a structure; null where all wheels run on one line. */
    private final Roll rollOver;

    private final Roll rollUnder;

    /**
     * Places the combination at the first positions of the passage.
     *
     * @throws IllegalArgumentException when the stance does not have the setting's lift or booster state
     */
    public PassageSearch(Passage passage, Setting setting, Leveling leveling) {
        this.passage = passage;
        places = passage.places(setting, leveling);
        shape = places.shape;
        combination = places.combination;
        solver = places.solver;
        leverage = new Leverage(passage.stance(), setting);
        Optional<RoadPlace> beside = passage.place().filter(p -> p.side() != 0);
        rollOver = beside.map(p -> new Roll(p, combination, true)).orElse(null);
        rollUnder = beside.map(p -> new Roll(p, combination, false)).orElse(null);
    }

    /**
     * The least clearance over all positions: over the ground, or under a soffit when there is one.
     *
     * @param under the soffit, or empty for the ground
     */
    public Clearance least(Optional<Soffit> under) {
        // A passage leads every part over its line and under its soffit, so there always is one.
        return leastBelow(under, Double.POSITIVE_INFINITY).orElseThrow();
    }

    /** The same where it matters only below a ceiling; empty when no gap lies below that, less the search's width. */
    public Optional<Clearance> leastBelow(Optional<Soffit> under, double ceilingM) {
        return look(under, ceilingM, List.of()).below;
    }

    /**
     * What a passage has to show.
     *
     * @param below the least gap, where it lies below the ceiling asked about
     * @param firstMet index of the first demand that is met at every position, or their number when none is shown to be
     * @param undecided why the search ended without an answer: then no demand is shown to be met, and {@code below}
     *     holds some gap that was met
     */
    public record Look(Optional<Clearance> below, int firstMet, Optional<Undecided> undecided) {}

    /**
     * The least gap below a ceiling and the demands that are met, in one search.
     *
     * @param demands the strictest first, none asking more anywhere than the one before
     */
    public Look look(Optional<Soffit> under, double ceilingM, List<Demand> demands) {
        Target target = target(under);
        int first = 0;
        Optional<SpanSearch<?>> tractor = Optional.empty();
        if (!rolls()) {
            tractor = Optional.of(passage.tractorSearch().least(target.tractor(), leverage));
            while (first < demands.size()
                    && !passage.tractorSearch().meets(target.tractor(), demands.get(first), leverage)) {
                first++;
            }
        }
        Run run = new Run(target, SpanSearch.Seeks.GAP, ceilingM, demands.subList(first, demands.size()));
        tractor.ifPresent(t -> run.nearest.offer(t.nearest));
        run.search(passage.spans(), spots(target));
        Optional<Undecided> undecided = tractor.flatMap(SpanSearch::undecided).or(run::undecided);
        if (undecided.isPresent() && run.nearest.unit == null && ceilingM < Double.POSITIVE_INFINITY) {
            // Below the ceiling nothing was found, but nothing was proven either: that must not pass for "none".
            return look(under, Double.POSITIVE_INFINITY, demands);
        }
        offerAny(undecided, target, run.nearest);
        return new Look(
                run.nearest.asClearance(SpanSearch.WITHIN_M, undecided),
                undecided.isPresent() ? demands.size() : first + run.firstMet(),
                undecided);
    }

    /** Whether the tractor's gaps hang on how the units behind it roll, so that they are searched with theirs. */
    private boolean rolls() {
        return rollOver != null;
    }

    private Roll roll(Target target) {
        return target.tractor().endless ? rollOver : rollUnder;
    }

    /**
     * Whoever asks an undecided search must find out: it has a gap to tell, if only that of some position looked at.
     */
    private void offerAny(Optional<Undecided> undecided, Target target, Nearest nearest) {
        double first = passage.firstSteerM();
        double last = passage.lastSteerM();
        OutlineGaps gaps = target.tractor();
        if (undecided.isPresent() && nearest.unit == null) {
            passage.limit().take(LOOKS);
        }
        for (int i = 0; undecided.isPresent() && nearest.unit == null && i <= LOOKS; i++) {
            double steerM = first + (last - first) * i / LOOKS;
            new OutlineMeasure(gaps, UnitName.TRACTOR)
                    .at(placeUnit(target, placedAt(steerM), 0), steerM, null, nearest, null);
        }
        if (undecided.isPresent() && nearest.unit == null) {
            // A structure too short to be met by that: as if it went on level.
            PlacedOutlines at = placeUnit(target, placedAt(first), 0);
            int i = gaps.frame.rearmost;
            nearest.offer(at.gap[i], first, UnitName.TRACTOR, gaps.frame.vertex[i], at.x[i]);
        }
    }

    /**
     * Whether a trailing booster changes nothing: it never carries the trailer, none of its gaps is below a floor, and
     * it meets a demand everywhere. False also where that cannot be shown.
     */
    public boolean boosterKeeps(Optional<Soffit> under, double floorM, Optional<Demand> demand) {
        if (rolls()) {
            // Its axle has a part in the roll of all units.
            return false;
        }
        Target target = target(under);
        Run run = new Run(
                target,
                SpanSearch.Seeks.GAP,
                floorM + SpanSearch.WITHIN_M,
                demand.stream().toList(),
                true);
        run.search(passage.spans(), spotsOf(p -> boosterSpot(target, p)));
        return run.proven() && run.nearest.unit == null && run.firstMet() == 0;
    }

    /**
     * Where clearance less what is demanded there is least, when that is below a ceiling; the value is the difference.
     */
    public Optional<Clearance> leastSpareBelow(Optional<Soffit> under, Demand demand, double ceilingM) {
        Target target = target(under);
        Optional<SpanSearch<?>> tractor = rolls()
                ? Optional.empty()
                : Optional.of(passage.tractorSearch().leastSpare(target.tractor(), demand, leverage));
        Run run = new Run(target, SpanSearch.Seeks.SPARE, ceilingM, List.of(demand));
        tractor.ifPresent(t -> run.nearest.offer(t.nearest));
        run.search(passage.spans(), spots(target));
        Optional<Undecided> undecided = tractor.flatMap(SpanSearch::undecided).or(run::undecided);
        if (undecided.isPresent() && run.nearest.unit == null && ceilingM < Double.POSITIVE_INFINITY) {
            return leastSpareBelow(under, demand, Double.POSITIVE_INFINITY);
        }
        offerAny(undecided, target, run.nearest);
        return run.nearest.asClearance(SpanSearch.WITHIN_M, undecided);
    }

    /**
     * Whether some position is found at which a demand is not met, by more than rounding: then no search can show that
     * it is. False says nothing.
     */
    public boolean fallsShort(Optional<Soffit> under, Demand demand) {
        Target target = target(under);
        Run run = new Run(target, SpanSearch.Seeks.SHORT, -ROUNDING_M, List.of(demand));
        if (!rolls()) {
            run.nearest.offer(passage.tractorSearch().leastSpare(target.tractor(), demand, leverage).nearest);
        }
        if (run.nearest.unit == null) {
            run.search(passage.spans(), spots(target));
        }
        return run.nearest.unit != null;
    }

    /** Clearance at one position; empty when no part is under the soffit then. */
    public Optional<Clearance> at(Optional<Soffit> under, double steerM) {
        Target target = target(under);
        Placed at = placedAt(steerM);
        Run run = new Run(target, SpanSearch.Seeks.GAP, Double.POSITIVE_INFINITY, List.of());
        new OutlineMeasure(target.tractor(), UnitName.TRACTOR)
                .at(placeUnit(target, at, 0), steerM, null, run.nearest, null);
        run.measure(steerM, at.unit(0), spot(target, at), null, run.nearest, null);
        return run.nearest.asClearance(0, Optional.empty());
    }

    /**
     * The least clearance at the first positions of the search: a quick guess, never below the least of all, or minus
     * infinity where no work is left for it.
     */
    public double firstLookM(Optional<Soffit> under) {
        Target target = target(under);
        Run run = new Run(target, SpanSearch.Seeks.GAP, Double.POSITIVE_INFINITY, List.of());
        List<Passage.Span> spans = passage.spans();
        // A look at a stretch that is searched as well counts there; finely drawn outlines are looked at twice.
        long more = SpanSearch.lookSteps(target.room(rolls())) - 1;
        if (!passage.limit().take(more * spans.size())) {
            return Double.NEGATIVE_INFINITY;
        }
        List<Spot> spots = spots(target);
        for (int i = 0; i < spots.size(); i++) {
            PlacedUnit tractor = i == 0 ? spans.get(0).start : spans.get(i - 1).end;
            run.measure(
                    i == 0 ? spans.get(0).startM : spans.get(i - 1).endM,
                    tractor,
                    spots.get(i),
                    null,
                    run.nearest,
                    null);
        }
        if (!rolls()) {
            run.nearest.offer(passage.tractorSearch().least(target.tractor(), leverage).nearest);
        }
        return run.nearest.gapM;
    }

    private List<Spot> spots(Target target) {
        List<Spot> known = firstSpots.get(target);
        if (known == null) {
            known = spotsOf(p -> spot(target, p));
            if (places.first.size() * target.room(rolls()) <= passage.mostKeptPoints()) {
                known = List.copyOf(known);
            }
            firstSpots.put(target, known);
        }
        return known;
    }

    /** Outlines at the first positions, placed whenever they are asked for. */
    private List<Spot> spotsOf(Function<Placed, Spot> with) {
        return new AbstractList<>() {
            @Override
            public Spot get(int i) {
                return with.apply(places.first.get(i));
            }

            @Override
            public int size() {
                return places.first.size();
            }
        };
    }

    private Spot spot(Target target, Placed placed) {
        double rollRad = rollRad(target, placed);
        PlacedOutlines[] outlines = new PlacedOutlines[target.size()];
        for (int k = firstSearched(); k < target.size(); k++) {
            outlines[k] = outlines(target, placed, k, rollRad);
        }
        return new Spot(placed, outlines);
    }

    /** Without the outlines of the others; nothing rolls. */
    private Spot boosterSpot(Target target, Placed placed) {
        PlacedOutlines[] outlines = new PlacedOutlines[target.size()];
        outlines[target.size() - 1] = outlines(target, placed, target.size() - 1, 0);
        return new Spot(placed, outlines);
    }

    /** The first unit whose gaps are searched here. */
    private int firstSearched() {
        return rolls() ? 0 : 1;
    }

    private UnitName name(int unit) {
        return shape.units().get(unit).name();
    }

    private PlacedOutlines outlines(Target target, Placed placed, int unit, double rollRad) {
        return target.of(unit).place(placed.unit(unit).pose, rollRad, armM(name(unit)));
    }

    private double rollRad(Target target, Placed placed) {
        return rolls() ? roll(target).atRad(placed) : 0;
    }

    private double armM(UnitName unit) {
        return passage.place().map(p -> p.armM(unit)).orElse(0.0);
    }

    private PlacedOutlines placeUnit(Target target, Placed placed, int unit) {
        return outlines(target, placed, unit, rollRad(target, placed));
    }

    private Target target(Optional<Soffit> under) {
        return under.isPresent() ? passage.under(shape, under.get()) : passage.over(shape);
    }

    public CombinationPosture postureAt(double steerM) {
        return solver.at(steerM);
    }

    /**
     * How much the roll that counts raises a unit at the place across the road that is looked at, meters; zero where
     * all wheels run on one line.
     */
    public double raiseM(Optional<Soffit> under, double steerM, UnitName unit) {
        return rollRad(target(under), placedAt(steerM)) * armM(unit);
    }

    private Placed placedAt(double steerM) {
        return places.behind(solver.tractorAt(steerM, 0));
    }

    /** What a clearance stands on. */
    public Footing footingOf(Clearance clearance, Demand demand) {
        return Footing.of(passage, demand, leverage, clearance, placedAt(clearance.steerM()));
    }

    /**
     * A place with its outlines over or under the target's line.
     *
     * @param outlines by unit; null of those that are not asked for
     */
    private record Spot(Placed placed, PlacedOutlines[] outlines) {}

    private final class Run extends SpanSearch<Spot> {
        private final Target target;
        private final boolean boosterAlone;
        private final Roll roll;
        /** By demand and unit; null of units that are not searched here. */
        private final Map<Demand, UnitNeed[]> needs = new HashMap<>(4);

        private final UnitMotions motions = places.motions;

        Run(Target target, Seeks seeks, double ceilingM, List<Demand> demands) {
            this(target, seeks, ceilingM, demands, false);
        }

        /** {@code boosterAlone}: only the gaps of a trailing booster, as long as it does not carry the trailer. */
        Run(Target target, Seeks seeks, double ceilingM, List<Demand> demands, boolean boosterAlone) {
            super(seeks, ceilingM, demands, passage.limit(), target.room(rolls()));
            this.target = target;
            this.boosterAlone = boosterAlone;
            roll = roll(target);
            for (Demand demand : demands) {
                UnitNeed[] byUnit = new UnitNeed[target.size()];
                for (int k = firstSearched(); k < byUnit.length; k++) {
                    byUnit[k] = passage.need(target.of(k), name(k), demand, leverage);
                }
                needs.put(demand, byUnit);
            }
        }

        @Override
        Spot place(Passage.Span span, PlacedUnit tractor, Spot before, Spot after) {
            Placed placed = places.middle(span, tractor, before.placed, after.placed);
            return boosterAlone ? boosterSpot(target, placed) : spot(target, placed);
        }

        @Override
        void measure(double steerM, PlacedUnit tractor, Spot spot, Demand demand, Nearest gap, Nearest tightest) {
            setStray(demand, steerM, steerM, spot.placed, spot.placed);
            if (boosterAlone && carries(spot.placed)) {
                gap.offer(Double.NEGATIVE_INFINITY, steerM, name(target.size() - 1), null, Double.NaN);
                return;
            }
            for (int k = 0; k < target.size(); k++) {
                if (spot.outlines[k] != null) {
                    new OutlineMeasure(target.of(k), name(k))
                            .at(spot.outlines[k], steerM, need(demand, k), gap, tightest);
                }
            }
        }

        private boolean carries(Placed placed) {
            return placed.unit(shape.trailerIndex()).fixedGap <= PlacedUnit.TOUCHES_M;
        }

        private UnitNeed need(Demand demand, int unit) {
            return demand == null ? null : needs.get(demand)[unit];
        }

        private void setStray(Demand demand, double fromM, double toM, Placed a, Placed b) {
            if (demand == null) {
                return;
            }
            double[] stray = Stray.of(passage, demand, fromM, toM, a, b);
            for (UnitNeed need : needs.get(demand)) {
                if (need != null) {
                    need.setStray(stray);
                }
            }
        }

        @Override
        boolean staysAbove(Passage.Span span, Spot from, Spot to, Demand demand, Floors above) {
            Placed a = from.placed;
            Placed b = to.placed;
            if (!span.motion.known) {
                return false;
            }
            setStray(demand, span.startM, span.endM, a, b);
            // Only a roll needs to know how all of them move before the first is bounded.
            UnitMotion[] ways = motions.found(span);
            double unevenRad =
                    roll == null ? 0 : roll.unevenRad(span, a, b, motions.upTo(span, a, b, target.size() - 1, ways));
            for (int k = 1; k < target.size(); k++) {
                if (!staysAbove(from, to, motions.of(span, a, b, k, ways), k, demand, above, unevenRad)) {
                    return false;
                }
            }
            // The tractor's outlines, where they are not searched once for every setting.
            return roll == null || outlinesStayAbove(from, to, ways[0], 0, demand, above, unevenRad);
        }

        private boolean staysAbove(
                Spot from, Spot to, UnitMotion way, int unit, Demand demand, Floors above, double unevenRad) {
            if (boosterAlone && unit < target.size() - 1) {
                return way.motion().known && (!way.motion().mayCarry || way.bow().known);
            }
            return outlinesStayAbove(from, to, way, unit, demand, above, unevenRad);
        }

        private boolean outlinesStayAbove(
                Spot from, Spot to, UnitMotion way, int unit, Demand demand, Floors above, double unevenRad) {
            return new GapBounds(
                            target.of(unit),
                            from.outlines[unit],
                            to.outlines[unit],
                            way.way(),
                            need(demand, unit),
                            unevenRad)
                    .staysAbove(above);
        }

        @Override
        Undecided.Cause obstacle(Passage.Span span, Spot from, Spot to) {
            return motions.bound(span, from.placed, to.placed) ? Undecided.Cause.ROUGH : Undecided.Cause.STEEP;
        }
    }
}
