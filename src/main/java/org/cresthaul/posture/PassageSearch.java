package org.cresthaul.posture;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.geometry.Interval;
import org.cresthaul.posture.CombinationShape.TrailingBooster;
import org.cresthaul.posture.PostureSolver.PlacedBooster;
import org.cresthaul.rig.Levelling;
import org.cresthaul.rig.Setting;
import org.cresthaul.road.Soffit;

/**
 * The clearances of one setting with one levelling on one passage. Trailer and booster are searched here, the tractor's
 * part comes from {@link TractorSearch}. Not safe to share between threads.
 */
public final class PassageSearch {
    private final Passage passage;
    private final CombinationShape shape;
    private final CoupledCombination combination;
    private final PostureSolver solver;
    private final Leverage leverage;
    private final List<Placed> firstPlaces;

    /** Trailer and booster at one steer position. */
    private record Placed(PlacedUnit trailer, PlacedBooster booster) {}

    /**
     * Places the combination at the first positions of the passage.
     *
     * @throws IllegalArgumentException when the stance does not have the setting's lift or booster state
     */
    public PassageSearch(Passage passage, Setting setting, Levelling levelling) {
        this.passage = passage;
        shape = passage.shape(setting.lift(), setting.booster());
        combination = new CoupledCombination(shape, setting, levelling);
        solver = new PostureSolver(combination, passage.ground());
        leverage = new Leverage(passage.stance(), setting);
        List<Passage.Span> spans = passage.spans();
        firstPlaces = new ArrayList<>(spans.size() + 1);
        PlacedUnit level = spans.get(0).start;
        Placed last = place(level, level.pose.pitchRad(), level.pose.pitchRad());
        firstPlaces.add(last);
        for (Passage.Span span : spans) {
            last = between(span.end, last, last);
            firstPlaces.add(last);
        }
    }

    private Placed between(PlacedUnit tractor, Placed a, Placed b) {
        double trailerGuess = 0.5 * (a.trailer.pose.pitchRad() + b.trailer.pose.pitchRad());
        double boosterGuess = a.booster == null
                ? 0
                : 0.5 * (a.booster.unit().pose.pitchRad() + b.booster.unit().pose.pitchRad());
        return place(tractor, trailerGuess, boosterGuess);
    }

    private Placed place(PlacedUnit tractor, double trailerGuess, double boosterGuess) {
        PlacedUnit trailer = solver.trailerAt(tractor, trailerGuess);
        return new Placed(trailer, shape.trailing().isPresent() ? solver.boosterAt(trailer, boosterGuess) : null);
    }

    /** The least ground clearance over all positions. */
    public Clearance leastOverGround() {
        return least(passage.over(shape), null).orElseThrow();
    }

    /** The least overhead clearance; empty when no part of the combination passes under the soffit. */
    public Optional<Clearance> leastUnder(Soffit soffit) {
        return least(passage.under(shape, soffit), null);
    }

    /** Whether the demand on ground clearance is met at every position; false when that cannot be shown. */
    public boolean meetsOverGround(Demand demand) {
        return meets(passage.over(shape), demand);
    }

    /** The same for overhead clearance. */
    public boolean meetsUnder(Soffit soffit, Demand demand) {
        return meets(passage.under(shape, soffit), demand);
    }

    /** Where ground clearance less what is demanded there is least; the value is that difference. */
    public Clearance leastSpareOverGround(Demand demand) {
        return least(passage.over(shape), demand).orElseThrow();
    }

    /** The same for overhead clearance. */
    public Optional<Clearance> leastSpareUnder(Soffit soffit, Demand demand) {
        return least(passage.under(shape, soffit), demand);
    }

    /** Ground clearance at one position. */
    public Clearance overGroundAt(double steerM) {
        return at(passage.over(shape), steerM).orElseThrow();
    }

    /** Overhead clearance at one position; empty when nothing is under the soffit then. */
    public Optional<Clearance> underAt(Soffit soffit, double steerM) {
        return at(passage.under(shape, soffit), steerM);
    }

    public CombinationPosture postureAt(double steerM) {
        return solver.at(steerM);
    }

    /** What a clearance stands on. */
    public Footing footingOf(Clearance clearance, Demand demand) {
        PlacedUnit tractor = solver.tractorAt(clearance.steerM(), 0);
        Placed placed = place(tractor, tractor.pose.pitchRad(), tractor.pose.pitchRad());
        return Footing.of(
                passage.line(),
                demand,
                leverage,
                clearance,
                tractor,
                placed.trailer,
                placed.booster == null ? Optional.empty() : Optional.of(placed.booster.unit()));
    }

    private Optional<Clearance> at(Target target, double steerM) {
        PlacedUnit tractor = solver.tractorAt(steerM, 0);
        Placed placed = place(tractor, tractor.pose.pitchRad(), tractor.pose.pitchRad());
        Run run = new Run(target, null, false);
        target.tractor().measure(tractor.pose, UnitName.TRACTOR, steerM, null, run.nearest);
        run.measure(steerM, tractor, placed);
        return run.nearest.asClearance(0, true);
    }

    private Optional<Clearance> least(Target target, Demand demand) {
        TractorSearch tractor = passage.tractorSearch();
        Run run = new Run(target, demand, false);
        boolean tractorProven;
        if (demand == null) {
            run.nearest.offer(tractor.least(target.tractor()));
            tractorProven = tractor.proven(target.tractor());
        } else {
            run.nearest.offer(tractor.leastSpare(target.tractor(), demand, leverage));
            tractorProven = tractor.spareProven(target.tractor(), demand, leverage);
        }
        run.search(passage.spans(), firstPlaces);
        return run.nearest.asClearance(SpanSearch.WITHIN_M, tractorProven && run.proven());
    }

    private boolean meets(Target target, Demand demand) {
        if (!passage.tractorSearch().meets(target.tractor(), demand, leverage)) {
            return false;
        }
        Run run = new Run(target, demand, true);
        run.search(passage.spans(), firstPlaces);
        return run.met();
    }

    private final class Run extends SpanSearch<Placed> {
        private final Target target;
        private final Demand demand;
        private final Need trailerNeed;
        private final Need boosterNeed;
        private final MotionBounds trailerMotion = new MotionBounds();
        private final MotionBounds boosterMotion = new MotionBounds();
        private final Interval hingeForward = new Interval();
        private final Interval hingeRise = new Interval();
        private final OutlineGaps.Scratch scratch = new OutlineGaps.Scratch();

        Run(Target target, Demand demand, boolean onlyWhetherMet) {
            super(onlyWhetherMet);
            this.target = target;
            this.demand = demand;
            trailerNeed = need(UnitName.TRAILER, target.trailer());
            boosterNeed = target.booster().map(g -> need(UnitName.BOOSTER, g)).orElse(null);
        }

        private Need need(UnitName unit, OutlineGaps gaps) {
            return demand == null ? null : new Need(demand, passage.line(), leverage, unit, gaps);
        }

        @Override
        Placed place(PlacedUnit tractor, Placed before, Placed after) {
            return between(tractor, before, after);
        }

        @Override
        void measure(double steerM, PlacedUnit tractor, Placed placed) {
            setStray(steerM, steerM, tractor, tractor, placed, placed);
            target.trailer().measure(placed.trailer.pose, UnitName.TRAILER, steerM, trailerNeed, nearest);
            if (placed.booster != null) {
                Pose pose = placed.booster.unit().pose;
                target.booster().orElseThrow().measure(pose, UnitName.BOOSTER, steerM, boosterNeed, nearest);
            }
        }

        private void setStray(
                double fromM, double toM, PlacedUnit tractorA, PlacedUnit tractorB, Placed a, Placed b) {
            if (demand == null) {
                return;
            }
            double[] stray = Stray.of(passage.line(), demand, fromM, toM, tractorA, tractorB);
            stray[Leverage.TRAILER] = Stray.under(passage.line(), demand, a.trailer, b.trailer);
            trailerNeed.setStray(stray);
            if (a.booster != null) {
                stray[Leverage.BOOSTER] =
                        Stray.under(passage.line(), demand, a.booster.unit(), b.booster.unit());
                boosterNeed.setStray(stray);
            }
        }

        @Override
        double lowerBound(Passage.Span span, Placed a, Placed b, double enough) {
            if (!span.motion.known) {
                return Double.NEGATIVE_INFINITY;
            }
            setStray(span.startM, span.endM, span.start, span.end, a, b);
            trailerMotion.compute(
                    combination.trailer(),
                    solver.trailerPaths(),
                    a.trailer,
                    b.trailer,
                    span.lengthM(),
                    span.kingpinForward,
                    span.kingpinRise);
            double bound = target.trailer().lowerBound(
                    a.trailer.pose, b.trailer.pose, trailerMotion, null, trailerNeed, enough, scratch);
            return bound < enough || a.booster == null ? bound : Math.min(bound, boosterBound(span, a, b, enough));
        }

        private double boosterBound(Passage.Span span, Placed a, Placed b, double enough) {
            TrailingBooster joint = shape.trailing().orElseThrow();
            PlacedUnit unitA = a.booster.unit();
            PlacedUnit unitB = b.booster.unit();
            hingeForward.clear();
            hingeRise.clear();
            trailerMotion.addPoint(a.trailer.pose, b.trailer.pose, joint.hinge(), hingeForward, hingeRise);
            boosterMotion.compute(
                    combination.booster().orElseThrow(),
                    solver.boosterPaths(),
                    unitA,
                    unitB,
                    span.lengthM(),
                    hingeForward,
                    hingeRise);
            double bendMost = Math.max(a.booster.bendRad(), b.booster.bendRad());
            double bendLeast = Math.min(a.booster.bendRad(), b.booster.bendRad());
            double reach = boosterMotion.known
                    ? 0.5 * span.lengthM() * (boosterMotion.turn.magnitude() + trailerMotion.turn.magnitude())
                    : Double.POSITIVE_INFINITY;
            // Fixed to the trailer by its hinge limit, free, or either in turn.
            boolean free = bendMost + reach < joint.upRad() && bendLeast - reach > -joint.downRad();
            return target.booster().orElseThrow().lowerBound(
                    unitA.pose, unitB.pose, boosterMotion, free ? null : trailerMotion, boosterNeed, enough, scratch);
        }
    }
}
