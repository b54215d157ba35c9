package org.cresthaul.turning;

import java.util.List;
import org.cresthaul.road.Corner;

/**
 * What the program says of a corner, as far as it is held against the independent judge: the one place where the
 * judge's tests touch the engine.
 *
 * @param lines of the whole passage, the best one first; then those that a driver's tolerance shifts it to, where the
 *     program tells a gap of them
 * @param passes whether the program finds that it goes: within all limits and with no gap below zero
 */
record CornerAnswer(List<Line> lines, boolean passes) {
    /**
     * The margin of a side by default and a usual uncertainty; no driver's tolerance, so that lines are as tight as can
     * be.
     */
    static final CornerFit.Wanted WANTED = new CornerFit.Wanted(0.3, 0.05, 0);

    /** A lead line, and the least gap that the program tells of it. */
    record Line(LeadPath path, double reportedM) {}

    static CornerAnswer of(Corner corner, TurningCombination combination, boolean escorts) {
        CornerFit fit = CornerFit.of(new CornerSpace(corner, escorts), combination, List.of(), WANTED);
        double least = fit.tightest().valueM();
        return new CornerAnswer(List.of(new Line(fit.path(), least)), fit.canBeDriven() && least >= 0);
    }
}
