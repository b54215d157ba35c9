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
 * <p>Each spare gap (gap less what is demanded) is nearly linear in the two raises, so the spare found tightest at a
 * trial gives a cut: a plane through it that no higher raise is likely to rise above. While axles keep off their stops
 * the gap is concave and its slope here is steepest; once an axle stands on a stop a raise may open nothing at first and
 * more later, so the mean slope up to the limit counts where it is steeper. The next trial is the least raise that all
 * cuts allow. A trial counts only when the exact postures meet the demand at every position; no answer
 * rests on the linear estimate. Cuts are kept, and serve every notch, since only the deck front's height over the
 * reference notch matters. Not safe to share between threads.
 */
public final class RaiseNeeded {
    private static final int MOST_TRIALS = 30;
    /** Spare asked of a trial, so that the proven bound of the search is not negative, metres. */
    private static final double SPARE_M = SpanSearch.WITHIN_M + 1e-4;

    private static final double DIFFERENCE_M = 1e-3;
    private static final double NUDGE_M = 2e-4;
    /** A raise this near the least is taken for it, metres: what trials are nudged by until they meet. */
    private static final double SAME_M = 3 * NUDGE_M;

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

    /** What the searches of one kind have found so far: cuts, and raises that meet every demand. */
    private static final class Known {
        final List<Cut> cuts = new ArrayList<>();
        final List<Raise> met = new ArrayList<>();
    }

    private final LiftState lift;
    private final BoosterState booster;
    private final List<Lane> lanes;
    private final double highestM;
    private final double mostRearM;
    private final Known front = new Known();
    private final Known held = new Known();

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
        Optional<Raise> frontAlone = search(notchOffsetM, 0, front, List.of(Levelling.HELD, Levelling.SETTLED));
        return frontAlone.isPresent() || mostRearM == 0
                ? frontAlone
                : search(notchOffsetM, mostRearM, held, List.of(Levelling.HELD));
    }

    private Optional<Raise> search(double lowestM, double mostRear, Known known, List<Levelling> levellings) {
        double frontNudge = 0;
        double rearNudge = 0;
        Raise last = null;
        Tightest tightest = null;
        for (int trial = 0; trial < MOST_TRIALS; trial++) {
            Optional<Raise> next = leastAllowed(lowestM, mostRear, known.cuts);
            if (next.isEmpty()) {
                return Optional.empty();
            }
            Raise at = next.get();
            // The least raise is the same from every notch below it.
            for (Raise met : known.met) {
                if (met.deckFrontOffsetM >= lowestM
                        && Math.abs(met.deckFrontOffsetM - at.deckFrontOffsetM) <= SAME_M
                        && Math.abs(met.rearM - at.rearM) <= SAME_M) {
                    return Optional.of(met);
                }
            }
            if (last != null && Math.abs(at.deckFrontOffsetM - last.deckFrontOffsetM) + Math.abs(at.rearM - last.rearM)
                    < NUDGE_M) {
                // The cuts no longer move the trial: go on by hand, but only where that opens the tightest gap.
                frontNudge += tightest.cut.front > 0 ? NUDGE_M : 0;
                rearNudge += tightest.cut.rear > 0 ? NUDGE_M : 0;
            }
            last = at;
            at = new Raise(
                    Math.min(highestM, at.deckFrontOffsetM + frontNudge), Math.min(mostRear, at.rearM + rearNudge));
            tightest = tightest(at, mostRear, levellings, known.cuts);
            if (tightest.spareM >= SPARE_M) {
                known.met.add(at);
                return Optional.of(at);
            }
        }
        return Optional.empty();
    }

    /** The tightest place of a trial: what is spare there, and its cut. */
    private record Tightest(double spareM, Cut cut) {}

    /** The tightest place of a trial; every line, levelling and kind of gap leaves a cut. */
    private Tightest tightest(Raise at, double mostRear, List<Levelling> levellings, List<Cut> cuts) {
        List<Tightest> all = new ArrayList<>();
        for (Lane lane : lanes) {
            for (Levelling levelling : levellings) {
                PassageSearch search = new PassageSearch(lane.passage(), setting(at), levelling);
                if (lane.ground().isPresent()) {
                    Clearance spare = search.leastSpareOverGround(lane.ground().get());
                    all.add(cutAt(spare, at, mostRear, levelling, lane, lane.passage().line(), 1));
                }
                if (lane.soffit().isPresent()) {
                    search.leastSpareUnder(lane.soffit().get(), lane.overhead())
                            .ifPresent(s -> all.add(cutAt(s, at, mostRear, levelling, lane, lane.soffit().get(), -1)));
                }
            }
        }
        all.forEach(t -> cuts.add(t.cut));
        return all.stream().min(Comparator.comparingDouble(Tightest::spareM)).orElseThrow();
    }

    private Tightest cutAt(
            Clearance spare, Raise at, double mostRear, Levelling levelling, Lane lane, PiecewiseLine line, int side) {
        double front = Double.NEGATIVE_INFINITY;
        double rear = Double.NEGATIVE_INFINITY;
        for (double rearM : new double[] {at.rearM, mostRear}) {
            double here = gap(spare, new Raise(at.deckFrontOffsetM, rearM), levelling, lane, line, side);
            for (double more : new double[] {DIFFERENCE_M, highestM - at.deckFrontOffsetM}) {
                if (more >= DIFFERENCE_M) {
                    Raise higher = new Raise(at.deckFrontOffsetM + more, rearM);
                    front = Math.max(front, (gap(spare, higher, levelling, lane, line, side) - here) / more);
                }
            }
        }
        double here = gap(spare, at, levelling, lane, line, side);
        for (double more : new double[] {DIFFERENCE_M, mostRear - at.rearM}) {
            if (more >= DIFFERENCE_M) {
                Raise higher = new Raise(at.deckFrontOffsetM, at.rearM + more);
                rear = Math.max(rear, (gap(spare, higher, levelling, lane, line, side) - here) / more);
            }
        }
        double constant = spare.valueM() - SPARE_M - front * at.deckFrontOffsetM - rear * at.rearM;
        return new Tightest(
                spare.proven() ? spare.valueM() : Double.NEGATIVE_INFINITY, new Cut(constant, front, rear));
    }

    private Setting setting(Raise at) {
        return new Setting(lift, booster, at.deckFrontOffsetM, 0, at.rearM);
    }

    private double gap(
            Clearance place, Raise at, Levelling levelling, Lane lane, PiecewiseLine line, int side) {
        Passage passage = lane.passage();
        CoupledCombination combination =
                new CoupledCombination(passage.shape(lift, booster), setting(at), levelling);
        // On the passage's own wheel paths: rolling them anew would cost more than the posture.
        CombinationPosture posture = new PostureSolver(combination, passage.ground()).at(place.steerM());
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
