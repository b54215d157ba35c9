package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.hipparchus.analysis.MultivariateFunction;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.optim.InitialGuess;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.SimpleBounds;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.nonlinear.scalar.ObjectiveFunction;
import org.hipparchus.optim.nonlinear.scalar.noderiv.CMAESOptimizer;
import org.hipparchus.random.Well19937c;

/**
 * A slow search for a lead line through a corner that shares nothing with the program's: the front wheels' angle at
 * nodes along the way and where the line starts are free (direct optimal control). A covariance-matrix evolution
 * (Hipparchus' CMA-ES; N. Hansen, A. Ostermeier, Evol. Comput. 9, 2001) moves a line that the lead point tracks, from
 * several starts; {@link RicherPolish} then moves the angles themselves, and {@link IndependentCornerJudge} has the
 * last word.
 */
final class RicherSearch {
    /** After one line has come no nearer than this, the others are not polished, meters. */
    private static final double HOPELESS_M = -2;

    private static final Comparator<RicherLine> BY_LOSS = Comparator.comparingDouble(RicherLine::lossM);

    private final RandomCorners.Case c;
    private final IndependentCornerJudge judge;
    private final RicherField field;
    private final RicherTracks tracked;
    private final int effort;

    /** What was found: the line, and what the judge says of it. */
    record Found(LeadPath path, IndependentCornerJudge.Judgment judgment) {
        double leastM() {
            return judgment.withinLimits() ? judgment.leastM() : Double.NEGATIVE_INFINITY;
        }
    }

    /** @param effort how patient: one is some thousands of lines tried */
    RicherSearch(RandomCorners.Case c, int effort) {
        this.c = c;
        this.effort = effort;
        judge = new IndependentCornerJudge(c.corner(), c.escorts(), Optional.of(c.guide()));
        field = new RicherField(c.corner(), c.escorts(), c.guide());
        tracked = new RicherTracks(c);
    }

    /** The best line found; the search ends early once one leaves more than enough. */
    Optional<Found> best(double enoughM) {
        List<RicherLine> tries = new ArrayList<>();
        List<double[]> starts = new ArrayList<>(tracked.starts());
        starts.sort(Comparator.comparingDouble(v -> lossM(tracked.line(v), 0)));
        int seed = 0;
        for (double[] start : starts.subList(0, 4)) {
            RicherLine line = tracked(start, 500 * effort, seed++);
            tries.add(line.withLoss(lossM(line, 0)));
        }
        tries.sort(BY_LOSS);
        RicherPolish polish = new RicherPolish(c.combination(), field);
        Optional<Found> best = Optional.empty();
        for (RicherLine line : tries.subList(0, 3)) {
            if (best.isPresent() && best.get().leastM() < HOPELESS_M) {
                break;
            }
            Optional<Found> found = judged(polish.better(line, 9 * effort));
            if (found.isPresent()
                    && (best.isEmpty() || found.get().leastM() > best.get().leastM())) {
                best = found;
            }
            if (best.isPresent() && best.get().leastM() > enoughM) {
                break;
            }
        }
        return best;
    }

    /** The places that a tracked line is moved aside by, moved themselves. */
    private RicherLine tracked(double[] start, int evaluations, long seed) {
        double[] low = new double[start.length];
        double[] high = new double[start.length];
        double[] spread = new double[start.length];
        for (int i = 0; i < start.length; i++) {
            low[i] = i == 0 ? 2 : -8;
            high[i] = i == 0 ? 14 : 8;
            spread[i] = 0.8;
        }
        return tracked.line(improved(start, low, high, spread, v -> lossM(tracked.line(v), 0.1), evaluations, seed));
    }

    private Optional<Found> judged(RicherLine line) {
        return line.path().map(path -> new Found(path, judge.of(c.combination(), path)));
    }

    private double lossM(RicherLine line, double softM) {
        return line.steered()
                .map(s -> -RicherPassage.leastM(RicherPassage.gapsM(c.combination(), s, field), softM))
                .orElse(1e3);
    }

    private static double[] improved(
            double[] start,
            double[] low,
            double[] high,
            double[] spread,
            ToDoubleFunction<double[]> lossM,
            int evaluations,
            long seed) {
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
            optimizer.optimize(
                    new MaxEval(evaluations),
                    new ObjectiveFunction(loss),
                    GoalType.MINIMIZE,
                    new InitialGuess(start),
                    new SimpleBounds(low, high),
                    new CMAESOptimizer.Sigma(spread),
                    new CMAESOptimizer.PopulationSize(4 + (int) (3 * Math.log(start.length))));
        } catch (MathRuntimeException spent) {
            // The evaluations are used up: the best so far counts.
        }
        return most[0];
    }
}
