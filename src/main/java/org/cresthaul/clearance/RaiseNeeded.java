package org.cresthaul.clearance;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.cresthaul.posture.CombinationPosture;
import org.cresthaul.posture.CombinationShape;
import org.cresthaul.posture.CoupledCombination;
import org.cresthaul.posture.Pose;
import org.cresthaul.posture.PostureSolver;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Leveling;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Setting;
import org.cresthaul.rig.Trailer;
import org.cresthaul.rig.UnitName;
import org.cresthaul.road.PiecewiseLine;
import org.cresthaul.road.Soffit;

/**
 * The least raise that meets every demand over every line: the deck front alone by the gooseneck hydraulics if that
 * will do, and only otherwise the rear by hand as well, as little of it as will do and then as little at the front.
 *
 * <p>Each spare gap (gap less what is demanded) is nearly linear in the two raises, so the spare found tightest at a
 * trial gives a cut: a plane through it that no higher raise is likely to rise above. While axles keep off their stops
 * the gap is concave and its slope here is steepest; once an axle stands on a stop a raise may open nothing at first
 * and more later, so the mean slope up to the limit counts where it is steeper. The next trial is the least raise that
 * all cuts allow. A trial counts only when the exact postures meet the demand at every position; no answer rests on the
 * linear estimate. Where the cuts leave nothing, they are not believed: {@link RaiseScan} goes through all raises,
 * leaving out only what is shown to fail. Cuts are kept, and serve every notch, since only the deck front's height over
 * the reference notch matters. Not safe to share between threads.
 */
public final class RaiseNeeded {
    private static final int MOST_TRIALS = 30;
    /** Spare asked of a trial, so that the proven bound of the search is not negative, meters. */
    private static final double SPARE_M = SpanSearch.WITHIN_M + 1e-4;

    private static final double DIFFERENCE_M = 1e-3;
    /** Spare that the cuts are aimed at, so that a trial need not be repeated for the width of the search, meters. */
    private static final double AIM_M = SPARE_M + SpanSearch.WITHIN_M;

    /**
     * One line to be passed, over the ground or under a soffit.
     *
     * @param soffit the structure whose underside is to be cleared, or empty where it is the ground
     */
    public record Lane(Passage passage, Optional<Soffit> soffit, Demand demand) {
        /** The same with a share of what is demanded left over. */
        public Lane leaving(double share) {
            return new Lane(passage, soffit, demand.leaving(share));
        }
    }

    /**
     * An answer.
     *
     * @param deckFrontOffsetM deck-front height over the reference notch, meters
     * @param rearM manual raise of the rear at the valve axle, meters
     */
    public record Raise(double deckFrontOffsetM, double rearM) {}

    /**
     * How far up a raise may go.
     *
     * @param deckFrontOffsetM deck-front height over the reference notch, meters
     * @param by what ends it
     * @param ended the line where nothing is left there, or where no more is shown; empty where the hydraulics end
     */
    public record Top(double deckFrontOffsetM, EndedBy by, Optional<Lane> ended) {}

    /** What ends a raise. */
    public enum EndedBy {
        HYDRAULICS,
        /** Nothing is left over the line, or under its soffit. */
        LINE,
        /** Nothing is left between units. */
        UNITS,
        /** A search that did not come to an end: more may be left than is shown. */
        SEARCH
    }

    /** One line with one leveling. */
    record LeveledLane(Lane lane, Leveling leveling) {}

    /** What was found from a notch. */
    private record Answer(double notchOffsetM, Raise raise) {
        /** What is the least from a lower notch is the least from a higher one too, as long as it is above that. */
        boolean holdsFrom(double higherM) {
            return notchOffsetM <= higherM && raise.deckFrontOffsetM >= higherM;
        }
    }

    /** spare ≤ constant + front · T + rear · b. */
    private record Cut(double constant, double front, double rear) {
        double at(double t, double b) {
            return constant + front * t + rear * b;
        }
    }

    private final LiftState lift;
    private final BoosterState booster;
    private final List<LeveledLane> frontWays = new ArrayList<>();
    private final List<LeveledLane> heldWays = new ArrayList<>();
    private final double highestM;
    private final double mostRearM;
    private final List<Cut> frontCuts = new ArrayList<>();
    private final List<Cut> heldCuts = new ArrayList<>();
    private final Map<Raise, Double> frontTried = new HashMap<>();
    private final Map<Raise, Double> heldTried = new HashMap<>();
    private final List<Answer> answers = new ArrayList<>();
    private final RaisedUnits units;
    private final RaiseScan frontScan;
    private final RaiseScan heldScan;

    /**
     * The question for one lift and booster state over the lines of one hazard, at least one.
     *
     * @param between the same lines with what is demanded between coupled units; none where that is not asked
     */
    public RaiseNeeded(LiftState lift, BoosterState booster, List<Lane> lanes, List<Lane> between) {
        this.lift = lift;
        this.booster = booster;
        for (Lane lane : lanes) {
            heldWays.add(new LeveledLane(lane, Leveling.HELD));
            frontWays.add(new LeveledLane(lane, Leveling.HELD));
            frontWays.add(new LeveledLane(lane, Leveling.SETTLED));
        }
        Trailer trailer = lanes.get(0).passage().stance().trailer();
        highestM = trailer.hydraulicRaiseLimitM();
        double valveSets = trailer.lift().secondaryRiseM(lift);
        units = new RaisedUnits(lift, booster, between);
        frontScan = new RaiseScan(lift, booster, frontWays, units.rates(), SPARE_M);
        heldScan = new RaiseScan(lift, booster, heldWays, units.rates(), SPARE_M);
        mostRearM = Math.max(
                0, Math.min(trailer.manualRaiseLimitM(), trailer.axles().reboundM() - valveSets));
    }

    /** The least raise from a notch; empty when none within the limits was found. */
    public Optional<Raise> from(double notchOffsetM) {
        if (notchOffsetM > highestM) {
            return Optional.empty();
        }
        Optional<Raise> known = answers.stream()
                .filter(a -> a.holdsFrom(notchOffsetM))
                .map(Answer::raise)
                .findFirst();
        if (known.isPresent()) {
            return known;
        }
        Optional<Raise> front = search(notchOffsetM, 0, frontCuts, frontWays);
        Optional<Raise> found = front.isPresent() || mostRearM < RaiseScan.LEAST_REAR_M
                ? front
                : search(notchOffsetM, mostRearM, heldCuts, heldWays);
        found.ifPresent(raise -> answers.add(new Answer(notchOffsetM, raise)));
        return found;
    }

    /**
     * How far the deck front may go above a raise that was found, the rear as it is: every raise up to there will do.
     */
    public Top above(Raise least) {
        return new RaiseReach(lift, booster, least.rearM > 0 ? heldWays : frontWays, units).from(least, highestM);
    }

    private Optional<Raise> search(double lowestM, double mostRear, List<Cut> cuts, List<LeveledLane> ways) {
        Optional<Raise> cut = searchByCuts(lowestM, mostRear, cuts, ways);
        return cut.isPresent()
                ? cut
                : (mostRear > 0 ? heldScan : frontScan)
                        .find(lowestM, highestM, mostRear, at -> withUnits(at, mostRear, ways, cuts));
    }

    private Optional<Raise> searchByCuts(double lowestM, double mostRear, List<Cut> cuts, List<LeveledLane> ways) {
        Map<Raise, Double> tried = mostRear > 0 ? heldTried : frontTried;
        double aimM = AIM_M;
        for (int trial = 0; trial < MOST_TRIALS; trial++) {
            Optional<Raise> next = leastAllowed(lowestM, mostRear, cuts, aimM);
            if (next.isEmpty()) {
                return Optional.empty();
            }
            Double spare = tried.get(next.get());
            if (spare != null && spare < SPARE_M) {
                // The cuts no longer move the trial: aim a little higher.
                aimM += AIM_M;
                continue;
            }
            if (spare == null) {
                spare = spareAt(next.get(), mostRear, ways, cuts);
                tried.put(next.get(), spare);
            }
            if (spare >= SPARE_M) {
                // No cut can be made for what units need: then only going through all raises tells.
                return units.at(next.get(), SPARE_M).spareM() >= SPARE_M ? next : Optional.empty();
            }
        }
        return Optional.empty();
    }

    private double spareAt(Raise at, double mostRear, List<LeveledLane> ways, List<Cut> cuts) {
        RaiseScan.Answer answer = answer(at, mostRear, ways, cuts);
        if (answer.tightest().isPresent()) {
            (mostRear > 0 ? heldScan : frontScan).note(answer, at);
            cuts.add(cut(answer.tightest().get(), at, mostRear, answer.way().orElseThrow()));
        }
        return answer.spareM();
    }

    /**
     * The spare at a trial, where it matters: the tightest place of the first passage that refuses it is told, and the
     * others are then not asked; the one that refused last is asked first.
     */
    private RaiseScan.Answer answer(Raise at, double mostRear, List<LeveledLane> ways, List<Cut> cuts) {
        for (LeveledLane way : ways) {
            PassageSearch search = new PassageSearch(way.lane.passage(), setting(at), way.leveling);
            Optional<Clearance> spare = search.leastSpareBelow(way.lane.soffit(), way.lane.demand(), AIM_M);
            if (spare.isPresent() && !spare.get().proven()) {
                return new RaiseScan.Answer(
                        Double.NEGATIVE_INFINITY,
                        Optional.empty(),
                        Optional.empty(),
                        false,
                        spare.get().undecided().orElseThrow().spent());
            }
            if (spare.isPresent() && spare.get().valueM() < SPARE_M) {
                ways.remove(way);
                ways.add(0, way);
                return new RaiseScan.Answer(spare.get().valueM(), spare, Optional.of(way), false, false);
            }
        }
        return new RaiseScan.Answer(SPARE_M, Optional.empty(), Optional.empty(), false, false);
    }

    /** The gaps between units first, which take least to find. */
    private RaiseScan.Answer withUnits(Raise at, double mostRear, List<LeveledLane> ways, List<Cut> cuts) {
        RaisedUnits.Left left = units.at(at, SPARE_M);
        return left.spareM() >= SPARE_M ? answer(at, mostRear, ways, cuts) : RaiseScan.Answer.betweenUnits(left);
    }

    private Cut cut(Clearance spare, Raise at, double mostRear, LeveledLane way) {
        Leveling leveling = way.leveling;
        Lane lane = way.lane;
        double front = Double.NEGATIVE_INFINITY;
        for (double rearM : new double[] {at.rearM, mostRear}) {
            Raise from = new Raise(at.deckFrontOffsetM, rearM);
            for (double more : new double[] {DIFFERENCE_M, highestM - at.deckFrontOffsetM}) {
                Raise higher = new Raise(at.deckFrontOffsetM + more, rearM);
                front = Math.max(front, slope(spare, from, higher, more, leveling, lane));
            }
        }
        double rear = Double.NEGATIVE_INFINITY;
        for (double more : new double[] {DIFFERENCE_M, mostRear - at.rearM}) {
            Raise higher = new Raise(at.deckFrontOffsetM, at.rearM + more);
            rear = Math.max(rear, slope(spare, at, higher, more, leveling, lane));
        }
        return new Cut(spare.valueM() - front * at.deckFrontOffsetM - rear * at.rearM, front, rear);
    }

    /** How much the gap at a place opens per meter of raise; nothing can be said of a raise too small to tell. */
    private double slope(Clearance place, Raise from, Raise to, double raisedM, Leveling leveling, Lane lane) {
        return raisedM < DIFFERENCE_M
                ? Double.NEGATIVE_INFINITY
                : (gap(place, to, leveling, lane) - gap(place, from, leveling, lane)) / raisedM;
    }

    private Setting setting(Raise at) {
        return new Setting(lift, booster, at.deckFrontOffsetM, 0, at.rearM);
    }

    private double gap(Clearance place, Raise at, Leveling leveling, Lane lane) {
        Passage passage = lane.passage();
        CombinationShape shape = passage.shape(lift, booster);
        // On the passage's own wheel paths: rolling them anew would cost more than the posture.
        return gapM(
                new PostureSolver(new CoupledCombination(shape, setting(at), leveling), passage.ground()),
                lane,
                shape,
                place);
    }

    /** The gap at a place of the combination, with the tractor where it was found tightest. */
    static double gapM(PostureSolver solver, Lane lane, CombinationShape shape, Clearance place) {
        CombinationPosture posture = solver.at(place.steerM());
        Pose pose = posture.of(place.unit());
        FramePoint p = place.point();
        if (lane.soffit().isEmpty() && place.unit().equals(UnitName.TRAILER)) {
            for (CombinationShape.Circle tire : shape.raisedTires()) {
                if (p.xM() == tire.xM() && p.hM() <= tire.hM() - tire.radiusM() + 1e-9) {
                    // A circle meets the ground wherever it is nearest, not always at its lowest point.
                    return pose.worldZM(tire.xM(), tire.hM())
                            - solver.liftedPath(tire).heightAt(pose.worldXM(tire.xM(), tire.hM()));
                }
            }
        }
        PiecewiseLine line =
                lane.soffit().isPresent() ? lane.soffit().get() : lane.passage().lineUnder(place.unit());
        int side = lane.soffit().isPresent() ? -1 : 1;
        return side * (pose.worldZM(p) - line.heightAt(pose.worldXM(p)));
    }

    /** The least rear, then front, raise that every cut allows: a corner of the allowed region, or nothing. */
    private Optional<Raise> leastAllowed(double lowestM, double mostRear, List<Cut> cuts, double aimM) {
        List<Cut> all = new ArrayList<>();
        cuts.forEach(c -> all.add(new Cut(c.constant - aimM, c.front, c.rear)));
        all.add(new Cut(-lowestM, 1, 0));
        all.add(new Cut(highestM, -1, 0));
        // By hand or not: without any rear raise the leveling would be in auto, and be judged settled as well.
        all.add(new Cut(mostRear > 0 ? -RaiseScan.LEAST_REAR_M : 0, 0, 1));
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
                    boolean better =
                            best == null || r < best.rearM - 1e-9 || r < best.rearM + 1e-9 && t < best.deckFrontOffsetM;
                    best = better
                            ? new Raise(Math.max(t, lowestM), Math.max(r, mostRear > 0 ? RaiseScan.LEAST_REAR_M : 0))
                            : best;
                }
            }
        }
        return Optional.ofNullable(best);
    }
}
