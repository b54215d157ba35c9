package org.cresthaul.turning;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.cresthaul.geometry.Finite;

/**
 * How far a combination can be pushed straight back before a coupling is bent to its limit, when nobody steers: the
 * lead point is kept on its own line. Behind a straight push a single unit's bend grows as tan(ψ/2) → tan(ψ/2)·e^{s/L},
 * the faster the shorter the unit; a booster's pivot besides swings with the trailer it hangs on.
 *
 * <p>The bend at the start is the same size at every coupling, to whichever side of the one ahead lets the limit come
 * sooner. Mirrored bends are the same question.
 *
 * @param free with every coupling free
 * @param locked with the booster's pivot locked: trailer and booster are one unit on all their axles; empty without a
 *     pivot
 * @param lockedLight the same, the booster's axle held off the road so that only the trailer's axles guide; empty
 *     without a pivot
 */
public record Reversing(Reach free, Optional<Reach> locked, Optional<Reach> lockedLight) {
    /**
     * How far apart states are; the bend between two is taken to grow evenly, which finds the limit 1 mm or 2 too soon.
     */
    private static final double STATE_M = 0.1;
    /** What is tried first; most boosters have folded by then. */
    private static final double FIRST_M = 8;

    /**
     * How far it goes.
     *
     * @param wayM to the limit, or as far as was tried; meters
     * @param coupling which one is at its limit then, 0 is the tractor's fifth wheel and the last a booster's pivot;
     *     empty when none is
     */
    public record Reach(double wayM, OptionalInt coupling) {
        public Reach {
            Finite.requireAtLeast("wayM", 0, wayM);
        }
    }

    /**
     * Pushes a combination back.
     *
     * @param bendRad at every coupling at the start, radians, either sign, not zero and less than a right angle. A
     *     coupling whose limit is no more than that is at it at once
     * @param mostM how far to try, meters, positive
     */
    public static Reversing of(TurningCombination combination, double bendRad, double mostM) {
        if (!(Math.abs(bendRad) > 0 && Math.abs(bendRad) < Math.PI / 2)) {
            throw new IllegalArgumentException("the bend must be between 0 and a right angle, was " + bendRad);
        }
        Finite.requireAtLeast("mostM", STATE_M, mostM);
        Reach free = reach(combination, bendRad, mostM);
        if (!combination.hasPivot()) {
            return new Reversing(free, Optional.empty(), Optional.empty());
        }
        TurningCombination trailerAlone = combination.withoutBooster();
        return new Reversing(
                free,
                Optional.of(reach(combination.pivotLocked(), bendRad, mostM)),
                Optional.of(reach(trailerAlone, bendRad, mostM)));
    }

    private static Reach reach(TurningCombination combination, double bendRad, double mostM) {
        int couplings = combination.articulationLimitRad().size();
        Reach least = new Reach(mostM, OptionalInt.empty());
        if (couplings == 0) {
            return least;
        }
        // A tractor straight on its line stays so: its coupling runs along that line, and what follows begins there.
        List<TurningUnit> pushed =
                combination.chain().subList(1, combination.chain().size());
        // The first bend's side may be left out: mirrored bends go as far.
        for (int sides = 0; sides < 1 << (couplings - 1); sides++) {
            double[] headings = new double[couplings];
            headings[0] = bendRad;
            for (int k = 1; k < couplings; k++) {
                boolean other = (sides >> (k - 1) & 1) == 1;
                headings[k] = headings[k - 1] + (other ? -bendRad : bendRad);
            }
            Reach found = reach(pushed, headings, combination.articulationLimitRad(), mostM);
            least = found.wayM < least.wayM || least.coupling.isEmpty() ? found : least;
        }
        return least;
    }

    private static Reach reach(List<TurningUnit> pushed, double[] headings, List<Double> limitRad, double mostM) {
        for (double tryM = Math.min(FIRST_M, mostM); ; tryM = Math.min(2 * tryM, mostM)) {
            LeadPath back = LeadPath.from(0, 0, Math.PI).line(tryM).build();
            Track track = Following.along(pushed, back, headings.clone(), STATE_M, true);
            Optional<Reach> limit = firstLimit(track, limitRad);
            if (limit.isPresent() || tryM >= mostM) {
                return limit.orElse(new Reach(mostM, OptionalInt.empty()));
            }
        }
    }

    private static Optional<Reach> firstLimit(Track track, List<Double> limitRad) {
        for (int i = 0; i < track.size(); i++) {
            Reach first = null;
            for (int k = 0; k < limitRad.size(); k++) {
                double bend = bendRad(track, i, k);
                if (bend < limitRad.get(k)) {
                    continue;
                }
                double wayM = track.stationM(i);
                if (i > 0) {
                    double before = bendRad(track, i - 1, k);
                    wayM -= (bend - limitRad.get(k)) / (bend - before) * (wayM - track.stationM(i - 1));
                }
                first = first == null || wayM < first.wayM ? new Reach(wayM, OptionalInt.of(k)) : first;
            }
            if (first != null) {
                return Optional.of(first);
            }
        }
        return Optional.empty();
    }

    /** Of a coupling, the first of which is on the line itself. */
    private static double bendRad(Track track, int state, int coupling) {
        return Math.abs(coupling == 0 ? track.headingRad(state, 0) : track.articulationRad(state, coupling - 1));
    }
}
