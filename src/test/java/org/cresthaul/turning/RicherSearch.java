package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.hipparchus.analysis.MultivariateFunction;
import org.hipparchus.optim.InitialGuess;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.SimpleBounds;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.nonlinear.scalar.ObjectiveFunction;
import org.hipparchus.optim.nonlinear.scalar.noderiv.CMAESOptimizer;
import org.hipparchus.random.Well19937c;
import org.hipparchus.exception.MathRuntimeException;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LineString;

/**
 * A slow search for a lead line through a corner that shares nothing with the program's: the curvature at nodes along the
 * way and where the line starts are free (direct optimal control), a covariance-matrix evolution (Hipparchus' CMA-ES; N.
 * Hansen, A. Ostermeier, Evol. Comput. 9, 2001) moves first a line that the lead point tracks, from several starts, then
 * the curvature itself towards the largest least gap, and {@link IndependentCornerJudge} has the last word. Curvature changes evenly between nodes, within the rate; it starts and
 * ends at zero, and turns from the approach's direction to the exit's exactly.
 */
final class RicherSearch {
    private static final Comparator<SteeredLine> BY_LOSS = Comparator.comparingDouble(SteeredLine::lossM);

    private final RandomCorners.Case c;
    private final IndependentCornerJudge judge;
    private final RoomField field;
    private final TrackedLines tracked;
    private final int effort;

    /** What was found: the line, and what the judge says of it. */
    record Found(LeadPath path, IndependentCornerJudge.Judgment judgment) {
        double leastM() {
            return judgment.withinLimits() ? judgment.leastM() : Double.NEGATIVE_INFINITY;
        }
    }

    /** @param effort how patient: one is about 10,000 lines tried */
    RicherSearch(RandomCorners.Case c, int effort) {
        this.c = c;
        this.effort = effort;
        judge = new IndependentCornerJudge(c.corner(), c.escorts(), Optional.of(c.guide()));
        field = new RoomField(c.corner(), c.escorts(), c.guide());
        tracked = new TrackedLines(c);
    }

    /** The best line found; the search ends early once one leaves more than enough. */
    Optional<Found> best(double enoughM) {
        List<SteeredLine> tries = new ArrayList<>();
        List<double[]> starts = new ArrayList<>(tracked.starts());
        starts.sort(Comparator.comparingDouble(v -> lossM(tracked.line(v))));
        int seed = 0;
        for (double[] start : starts.subList(0, 4)) {
            SteeredLine line = tracked(start, 1200 * effort, seed++);
            tries.add(line.withLoss(lossM(line)));
        }
        tries.sort(BY_LOSS);
        Optional<Found> best = Optional.empty();
        for (SteeredLine line : tries.subList(0, 2)) {
            SteeredLine better = steered(steered(line, 0.03, 2000 * effort, seed++), 0.006, 800 * effort, seed++);
            Optional<Found> found = judged(better);
            if (found.isPresent() && (best.isEmpty() || found.get().leastM() > best.get().leastM())) {
                best = found;
            }
            if (best.isPresent() && best.get().leastM() > enoughM) {
                break;
            }
        }
        return best;
    }

    /** The places that a tracked line is moved aside by, moved themselves. */
    private SteeredLine tracked(double[] start, int evaluations, long seed) {
        double[] low = new double[start.length];
        double[] high = new double[start.length];
        double[] spread = new double[start.length];
        for (int i = 0; i < start.length; i++) {
            low[i] = i == 0 ? 2 : -8;
            high[i] = i == 0 ? 14 : 8;
            spread[i] = 0.8;
        }
        return tracked.line(improved(start, low, high, spread, v -> lossM(tracked.line(v)), evaluations, seed));
    }

    /** The curvature at every node, and the start. */
    private SteeredLine steered(SteeredLine from, double sigma, int evaluations, long seed) {
        double[] start = from.values();
        double[] low = from.low();
        double[] high = from.high();
        double[] spread = new double[start.length];
        for (int i = 0; i < start.length; i++) {
            spread[i] = sigma * from.scale(i);
            start[i] = Math.max(low[i], Math.min(high[i], start[i]));
        }
        return from.withValues(
                improved(start, low, high, spread, v -> lossM(from.withValues(v)), evaluations, seed));
    }

    private Optional<Found> judged(SteeredLine line) {
        return line.path().map(path -> new Found(path, judge.of(c.combination(), path)));
    }

    private double lossM(SteeredLine line) {
        return line.steered().map(s -> new QuickPassage(c.combination(), s, field).lossM()).orElse(1e3);
    }

    private static double[] improved(double[] start, double[] low, double[] high, double[] spread,
            ToDoubleFunction<double[]> lossM, int evaluations, long seed) {
        double[][] most = {start.clone()};
        double[] least = {lossM.applyAsDouble(start)};
        MultivariateFunction loss = values -> {
            double found = lossM.applyAsDouble(values);
            if (found < least[0]) {
                least[0] = found;
                most[0] = values.clone();
            }
            return found;
        };
        CMAESOptimizer optimizer = new CMAESOptimizer(
                evaluations, Double.NEGATIVE_INFINITY, true, 0, 1, new Well19937c(seed + 1), false, null);
        try {
            optimizer.optimize(new MaxEval(evaluations), new ObjectiveFunction(loss), GoalType.MINIMIZE,
                    new InitialGuess(start), new SimpleBounds(low, high), new CMAESOptimizer.Sigma(spread),
                    new CMAESOptimizer.PopulationSize(4 + (int) (3 * Math.log(start.length))));
        } catch (MathRuntimeException spent) {
            // The evaluations are used up: the best so far counts.
        }
        return most[0];
    }
}
