package org.cresthaul.posture;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.geometry.Interval;
import org.cresthaul.posture.CoupledCombination.UnitOutlines;
import org.cresthaul.rig.Levelling;
import org.cresthaul.rig.Setting;
import org.cresthaul.road.Soffit;

/**
 * Branch and bound over steer positions for one setting on one passage.
 *
 * <p>Each stretch of positions gets a lower bound on the gap from the exact postures at its ends and {@link
 * MotionBounds} in between; a stretch that cannot hold a gap below the least found so far, less {@value
 * #WITHIN_M} m, is dropped, any other is halved. So what is returned is within that of the true minimum.
 */
final class PassageSearch {
    /** How far above the true minimum the answer may lie, metres. */
    static final double WITHIN_M = 5e-4;

    /** A stretch this short that still cannot be bounded ends the search unproven, metres. */
    private static final double SHORTEST_M = 1e-4;

    private final Passage passage;
    private final PostureSolver solver;
    private final CoupledCombination combination;
    private final Leverage leverage;
    private final List<Placed> firstPlaces;
    private final MotionBounds trailerMotion = new MotionBounds();
    private final MotionBounds boosterMotion = new MotionBounds();
    private final Interval hingeForward = new Interval();
    private final Interval hingeRise = new Interval();
    private final OutlineGaps.Scratch scratch = new OutlineGaps.Scratch();

    /** Trailer and booster at one steer position. */
    private record Placed(PlacedUnit trailer, PostureSolver.PlacedBooster booster) {}

    PassageSearch(Passage passage, Setting setting, Levelling levelling) {
        this.passage = passage;
        combination = new CoupledCombination(passage.stance(), setting, levelling);
        solver = new PostureSolver(combination, passage.ground());
        leverage = new Leverage(passage.stance(), setting);
        List<Passage.Span> spans = passage.spans();
        firstPlaces = new ArrayList<>(spans.size() + 1);
        firstPlaces.add(place(spans.get(0).start, null, null));
        for (Passage.Span span : spans) {
            firstPlaces.add(place(span.end, firstPlaces.get(firstPlaces.size() - 1), null));
        }
    }

    Leverage leverage() {
        return leverage;
    }

    private Placed place(PlacedUnit tractor, Placed near, Placed alsoNear) {
        double guess = near == null ? 0 : near.trailer.pose.pitchRad();
        double boosterGuess = near == null || near.booster == null ? 0 : near.booster.unit().pose.pitchRad();
        if (alsoNear != null) {
            guess = 0.5 * (guess + alsoNear.trailer.pose.pitchRad());
            if (alsoNear.booster != null) {
                boosterGuess = 0.5 * (boosterGuess + alsoNear.booster.unit().pose.pitchRad());
            }
        }
        PlacedUnit trailer = solver.trailerAt(tractor, guess);
        return new Placed(trailer, combination.booster.isPresent() ? solver.boosterAt(trailer, boosterGuess) : null);
    }

    /** What is searched: ground under the undersides, or a soffit over the topsides. */
    final class Target {
        private final OutlineGaps tractorGaps;
        private final OutlineGaps trailerGaps;
        private final Optional<OutlineGaps> boosterGaps;

        private Target(OutlineGaps tractorGaps, OutlineGaps trailerGaps, Optional<OutlineGaps> boosterGaps) {
            this.tractorGaps = tractorGaps;
            this.trailerGaps = trailerGaps;
            this.boosterGaps = boosterGaps;
        }
    }

    Target ground() {
        var line = passage.line();
        return new Target(
                OutlineGaps.over(line, combination.tractorOutlines.undersides(), null, null),
                OutlineGaps.over(
                        line,
                        combination.trailerOutlines.undersides(),
                        combination.liftedTyre.orElse(null),
                        solver.liftedPath().orElse(null)),
                combination.boosterOutlines.map(o -> OutlineGaps.over(line, o.undersides(), null, null)));
    }

    Target under(Soffit soffit) {
        return new Target(
                OutlineGaps.under(soffit, combination.tractorOutlines.topsides()),
                OutlineGaps.under(soffit, combination.trailerOutlines.topsides()),
                combination.boosterOutlines.map(UnitOutlines::topsides).map(t -> OutlineGaps.under(soffit, t)));
    }

    /** One run: either the least gap (no demand) or whether a demand is met everywhere. */
    private final class Run {
        final Target target;
        final Demand demand;
        final Need tractorNeed;
        final Need trailerNeed;
        final Need boosterNeed;
        final Nearest nearest = new Nearest();
        boolean proven = true;
        boolean met = true;

        Run(Target target, Demand demand) {
            this.target = target;
            this.demand = demand;
            tractorNeed = need(UnitName.TRACTOR, target.tractorGaps);
            trailerNeed = need(UnitName.TRAILER, target.trailerGaps);
            boosterNeed = target.boosterGaps.map(g -> need(UnitName.BOOSTER, g)).orElse(null);
        }

        private Need need(UnitName unit, OutlineGaps gaps) {
            return demand == null ? null : new Need(demand, passage.line(), leverage, unit, gaps);
        }

        /** What a stretch must be bounded above to be dropped. */
        double enough() {
            return demand == null ? nearest.gapM - WITHIN_M : 0;
        }

        void measure(double steerM, PlacedUnit tractor, Placed placed) {
            if (demand != null) {
                setStray(stray(steerM, steerM, tractor, tractor, placed, placed, demand));
            }
            target.tractorGaps.measure(tractor.pose, UnitName.TRACTOR, steerM, tractorNeed, nearest);
            target.trailerGaps.measure(placed.trailer.pose, UnitName.TRAILER, steerM, trailerNeed, nearest);
            if (target.boosterGaps.isPresent()) {
                Pose pose = placed.booster.unit().pose;
                target.boosterGaps.get().measure(pose, UnitName.BOOSTER, steerM, boosterNeed, nearest);
            }
            met = demand == null || nearest.gapM >= 0;
        }

        private void setStray(double[] bySupportM) {
            tractorNeed.setStray(bySupportM);
            trailerNeed.setStray(bySupportM);
            if (boosterNeed != null) {
                boosterNeed.setStray(bySupportM);
            }
        }

        void search() {
            List<Passage.Span> spans = passage.spans();
            measure(spans.get(0).startM, spans.get(0).start, firstPlaces.get(0));
            for (int i = 0; i < spans.size() && met; i++) {
                measure(spans.get(i).endM, spans.get(i).end, firstPlaces.get(i + 1));
            }
            for (int i = 0; i < spans.size() && met; i++) {
                searchSpan(spans.get(i), firstPlaces.get(i), firstPlaces.get(i + 1));
            }
        }

        private void searchSpan(Passage.Span span, Placed a, Placed b) {
            if (!met || lowerBound(span, a, b) >= enough()) {
                return;
            }
            if (span.lengthM() < SHORTEST_M) {
                proven = false;
                return;
            }
            Passage.Span first = span.first();
            Placed middle = place(first.end, a, b);
            measure(first.endM, first.end, middle);
            searchSpan(first, a, middle);
            searchSpan(span.second(), middle, b);
        }

        private double lowerBound(Passage.Span span, Placed a, Placed b) {
            double enough = enough();
            if (demand != null) {
                setStray(stray(span.startM, span.endM, span.start, span.end, a, b, demand));
            }
            double bound = target.tractorGaps.lowerBound(
                    span.start.pose, span.end.pose, span.motion, null, tractorNeed, enough, scratch);
            if (bound < enough) {
                return bound;
            }
            trailerMotion.known = false;
            if (span.motion.known) {
                trailerMotion.compute(
                        combination.trailer,
                        solver.trailerPaths(),
                        a.trailer,
                        b.trailer,
                        span.lengthM(),
                        span.kingpinForward,
                        span.kingpinRise);
            }
            bound = Math.min(
                    bound,
                    target.trailerGaps.lowerBound(
                            a.trailer.pose, b.trailer.pose, trailerMotion, null, trailerNeed, enough, scratch));
            if (bound < enough || target.boosterGaps.isEmpty()) {
                return bound;
            }
            return Math.min(bound, boosterBound(span, a, b, enough));
        }

        private double boosterBound(Passage.Span span, Placed a, Placed b, double enough) {
            hingeForward.clear();
            hingeRise.clear();
            trailerMotion.addPoint(
                    a.trailer.pose, b.trailer.pose, combination.hinge, hingeForward, hingeRise);
            PlacedUnit unitA = a.booster.unit();
            PlacedUnit unitB = b.booster.unit();
            boosterMotion.compute(
                    combination.booster.orElseThrow(),
                    solver.boosterPaths(),
                    unitA,
                    unitB,
                    span.lengthM(),
                    hingeForward,
                    hingeRise);
            double reach = boosterMotion.known
                    ? 0.5 * span.lengthM() * (boosterMotion.turn.magnitude() + trailerMotion.turn.magnitude())
                    : Double.POSITIVE_INFINITY;
            boolean free = Math.max(a.booster.bendRad(), b.booster.bendRad()) + reach < combination.hingeUpRad
                    && Math.min(a.booster.bendRad(), b.booster.bendRad()) - reach > -combination.hingeDownRad;
            return target.boosterGaps.orElseThrow().lowerBound(
                    unitA.pose, unitB.pose, boosterMotion, free ? null : trailerMotion, boosterNeed, enough, scratch);
        }
    }

    private double[] stray(
            double fromM, double toM, PlacedUnit tractorA, PlacedUnit tractorB, Placed a, Placed b, Demand demand) {
        double[] stray = new double[Leverage.SUPPORTS];
        var line = passage.line();
        boolean undeclared = demand.allowUndeclared();
        stray[Leverage.STEER] = Need.strayOf(line, fromM, toM, undeclared);
        stray[Leverage.DRIVE] = strayUnder(tractorA, tractorB, undeclared);
        stray[Leverage.TRAILER] = strayUnder(a.trailer, b.trailer, undeclared);
        if (a.booster != null) {
            stray[Leverage.BOOSTER] = strayUnder(a.booster.unit(), b.booster.unit(), undeclared);
        }
        return stray;
    }

    private double strayUnder(PlacedUnit a, PlacedUnit b, boolean undeclared) {
        double most = 0;
        for (int i = 0; i < a.wheelX.length; i++) {
            most = Math.max(most, Need.strayOf(passage.line(), a.wheelX[i], b.wheelX[i], undeclared));
        }
        return most;
    }

    /** The least gap to a target over all positions; empty when no part of the combination ever meets it. */
    Optional<Clearance> least(Target target) {
        Run run = new Run(target, null);
        run.search();
        Nearest n = run.nearest;
        if (n.unit == null) {
            return Optional.empty();
        }
        return Optional.of(
                new Clearance(n.gapM, WITHIN_M, n.unit, n.point, n.distanceM, n.steerM, run.proven));
    }

    /** Whether a demand is met at every position; false when that cannot be shown. */
    boolean meets(Target target, Demand demand) {
        Run run = new Run(target, demand);
        run.search();
        return run.met && run.proven;
    }
}
