package org.cresthaul.report;

import java.util.Comparator;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.cresthaul.axleload.LoadBound;

/**
 * What was found at a place by one number, against what is required or allowed. Of several the one governs that has the
 * least left as a share of that: of a gap that must be 3 in and one that must be 6 in, an inch short weighs more on the
 * first. Nothing is called governing in another sense.
 */
public sealed interface Finding permits GapFinding, CornerFinding, LoadFinding {
    /** Of less than this a share would say nothing, meters. */
    double LEAST_REQUIRED_M = 1e-3;

    /** Left beyond what is required, or to what is allowed: meters of a gap or of room, kilograms of a load. */
    double left();

    /** Left as a share of what is required or allowed. */
    double share();

    static double shareOfLength(double leftM, double requiredM) {
        return leftM / Math.max(LEAST_REQUIRED_M, requiredM);
    }

    static double shareOfLoad(double leftKg, double allowedKg) {
        return LoadBound.share(leftKg, allowedKg);
    }

    /** The one that governs, among equals the first; null stands for what is not judged. */
    static <F extends Finding> Optional<F> governing(Stream<F> found) {
        return found.filter(Objects::nonNull).min(Comparator.comparingDouble(Finding::share));
    }
}
