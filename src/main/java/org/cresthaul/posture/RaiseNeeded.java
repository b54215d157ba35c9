package org.cresthaul.posture;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Levelling;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Setting;
import org.cresthaul.rig.Trailer;
import org.cresthaul.road.PiecewiseLine;
import org.cresthaul.road.Soffit;

/**
 * The least raise that meets every demand over every line: the deck front alone by the gooseneck hydraulics if that will
 * do, and only otherwise the rear by hand as well, as little of it as will do and then as little at the front.
 *
 * <p>Each spare gap (gap less what is demanded) is concave and nearly linear in the two raises, so the spare found
 * tightest at a trial gives a cut: a linear upper bound through its exact posture and slope. The next trial is the least
 * raise that all cuts allow. A trial counts only when the exact postures meet the demand at every position; no answer
 * rests on the linear estimate. Cuts are kept, and serve every notch, since only the deck front's height over the
 * reference notch matters. Not safe to share between threads.
 */
public final class RaiseNeeded {
    private static final int MOST_TRIALS = 30;
    /** Spare asked of a trial, so that the proven bound of the search is not negative, metres. */
    private static final double SPARE_M = SpanSearch.WITHIN_M + 1e-4;

    private static final double DIFFERENCE_M = 1e-3;
    private static final double NUDGE_M = 2e-4;

    /**
     * One line to be passed.
     *
     * @param ground demand on ground clearance, when ground is judged
     * @param soffit structure overhead, when there is one
     * @param overhead demand under it
     */
    public record Lane(Passage passage, Optional<Demand> ground, Optional<Soffit> soffit, Demand overhead) {}

    /**
     * An answer.
     *
     * @param deckFrontOffsetM deck-front height over the reference notch, metres
     * @param rearM manual raise of the rear at the valve axle, metres
     */
    public record Raise(double deckFrontOffsetM, double rearM) {}

    /** spare ≤ constant + front · T + rear · b. */
    private record Cut(double constant, double front, double rear) {
        double at(double t, double b) {
            return constant + front * t + rear * b;
        }
    }

    private final LiftState lift;
    private final BoosterState booster;
    private final List<Lane> lanes;
    private final double highestM;
    private final double mostRearM;
    private final List<Cut> frontCuts = new ArrayList<>();
    private final List<Cut> heldCuts = new ArrayList<>();

    /** The question for one lift and booster state over the lines of one hazard, at least one. */
    public RaiseNeeded(LiftState lift, BoosterState booster, List<Lane> lanes) {
        this.lift = lift;
        this.booster = booster;
        this.lanes = List.copyOf(lanes);
        Trailer trailer = lanes.get(0).passage().stance().trailer();
        highestM = trailer.hydraulicRaiseLimitM();
        double valveSets = lift == LiftState.UP ? trailer.liftAxle().orElseThrow().secondaryRiseM() : 0;
        mostRearM = Math.max(0, Math.min(trailer.manualRaiseLimitM(), trailer.axles().reboundM() - valveSets));
    }

    /** The least raise from a notch; empty when none within the limits was found. */
    public Optional<Raise> from(double notchOffsetM) {
        if (notchOffsetM > highestM) {
            return Optional.empty();
        }
        Optional<Raise> front = search(notchOffsetM, 0, frontCuts, List.of(Levelling.HELD, Levelling.SETTLED));
        return front.isPresent() || mostRearM == 0
                ? front
                : search(notchOffsetM, mostRearM, heldCuts, List.of(Levelling.HELD));
    }

    private Optional<Raise> search(double lowestM, double mostRear, List<Cut> cuts, List<Levelling> levellings) {
        double frontNudge = 0;
        double rearNudge = 0;
        Raise last = null;
        for (int trial = 0; trial < MOST_TRIALS; trial++) {
            Optional<Raise> next = leastAllowed(lowestM, mostRear, cuts);
            if (next.isEmpty()) {
                return Optional.empty();
            }
            Raise at = next.get();
            if (last != null && Math.abs(at.deckFrontOffsetM - last.deckFrontOffsetM) + Math.abs(at.rearM - last.rearM)
                    < NUDGE_M) {
                // The cuts no longer move the trial: go on by hand, but only where that opens the tightest gap.
                Raise stuck = at;
                Cut tightest = cuts.stream()
                        .min(Comparator.comparingDouble(c -> c.at(stuck.deckFrontOffsetM, stuck.rearM)))
                        .orElseThrow();
                frontNudge += tightest.front > 0 ? NUDGE_M : 0;
                rearNudge += tightest.rear > 0 ? NUDGE_M : 0;
            }
            last = at;
            at = new Raise(
                    Math.min(highestM, at.deckFrontOffsetM + frontNudge), Math.min(mostRear, at.rearM + rearNudge));
            if (leastSpare(at, levellings, cuts) >= SPARE_M) {
                return Optional.of(at);
            }
        }
        return Optional.empty();
    }

    /** Least spare at a trial; every place that lacks spare leaves a cut. */
    private double leastSpare(Raise at, List<Levelling> levellings, List<Cut> cuts) {
        double least = Double.POSITIVE_INFINITY;
        for (Lane lane : lanes) {
            for (Levelling levelling : levellings) {
                PassageSearch search = new PassageSearch(lane.passage(), setting(at, 0, 0), levelling);
                if (lane.ground().isPresent()) {
                    Clearance spare = search.leastSpareOverGround(lane.ground().get());
                    least = Math.min(least, take(spare, at, levelling, lane, lane.passage().line(), 1, cuts));
                }
                if (lane.soffit().isPresent()) {
                    Optional<Clearance> spare = search.leastSpareUnder(lane.soffit().get(), lane.overhead());
                    if (spare.isPresent()) {
                        least = Math.min(least, take(spare.get(), at, levelling, lane, lane.soffit().get(), -1, cuts));
                    }
                }
            }
        }
        return least;
    }

    private double take(
            Clearance spare, Raise at, Levelling levelling, Lane lane, PiecewiseLine line, int side, List<Cut> cuts) {
        if (!spare.proven()) {
            return Double.NEGATIVE_INFINITY;
        }
        double here = gap(spare, setting(at, 0, 0), levelling, lane, line, side);
        double front = (gap(spare, setting(at, DIFFERENCE_M, 0), levelling, lane, line, side) - here) / DIFFERENCE_M;
        double rear = (gap(spare, setting(at, 0, DIFFERENCE_M), levelling, lane, line, side) - here) / DIFFERENCE_M;
        double constant = spare.valueM() - SPARE_M - front * at.deckFrontOffsetM - rear * at.rearM;
        cuts.add(new Cut(constant, front, rear));
        return spare.valueM();
    }

    private Setting setting(Raise at, double moreFrontM, double moreRearM) {
        return new Setting(lift, booster, at.deckFrontOffsetM + moreFrontM, 0, at.rearM + moreRearM);
    }

    private static double gap(
            Clearance place, Setting setting, Levelling levelling, Lane lane, PiecewiseLine line, int side) {
        CombinationPosture posture = new PostureSolver(
                        lane.passage().stance(), setting, levelling, lane.passage().line())
                .at(place.steerM());
        Pose pose =
                switch (place.unit()) {
                    case TRACTOR -> posture.tractor();
                    case TRAILER -> posture.trailer();
                    case BOOSTER -> posture.booster().orElseThrow();
                };
        FramePoint p = place.point();
        return side * (pose.worldZM(p) - line.heightAt(pose.worldXM(p)));
    }

    /** The least rear, then front, raise that every cut allows: a corner of the allowed region, or nothing. */
    private Optional<Raise> leastAllowed(double lowestM, double mostRear, List<Cut> cuts) {
        List<Cut> all = new ArrayList<>(cuts);
        all.add(new Cut(-lowestM, 1, 0));
        all.add(new Cut(highestM, -1, 0));
        all.add(new Cut(0, 0, 1));
        all.add(new Cut(mostRear, 0, -1));
        Raise best = null;
        for (int i = 0; i < all.size(); i++) {
            for (int j = i + 1; j < all.size(); j++) {
                Cut a = all.get(i);
                Cut b = all.get(j);
                double det = a.front * b.rear - b.front * a.rear;
                if (Math.abs(det) < 1e-12) {
                    continue;
                }
                double t = (-a.constant * b.rear + b.constant * a.rear) / det;
                double r = (-a.front * b.constant + b.front * a.constant) / det;
                if (all.stream().allMatch(c -> c.at(t, r) >= -1e-9)) {
                    boolean better = best == null
                            || r < best.rearM - 1e-9
                            || r < best.rearM + 1e-9 && t < best.deckFrontOffsetM;
                    best = better ? new Raise(Math.max(t, lowestM), Math.max(r, 0)) : best;
                }
            }
        }
        return Optional.ofNullable(best);
    }
}
