package org.cresthaul.clearance;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.cresthaul.clearance.RaiseNeeded.Lane;
import org.cresthaul.clearance.RaiseNeeded.LeveledLane;
import org.cresthaul.clearance.RaiseNeeded.Raise;
import org.cresthaul.geometry.WorkLimit;
import org.cresthaul.posture.CoupledCombination;
import org.cresthaul.posture.PostureSolver;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Setting;
import org.cresthaul.rig.UnitName;
import org.cresthaul.road.PiecewiseLine;

/**
 * Looks for a raise row by row, the least rear first and in each row the least front, leaving out only what is shown to
 * fail. A place found too tight at one raise is a witness: its gap at any other raise takes one posture, and can open
 * by no more than {@link RaiseRates} per meter, so that all raises nearer than that fail as well. Where no witness
 * speaks against a raise the whole passage is searched, which finds the raise or another witness.
 *
 * <p>A raise that leaves {@link #closesWithinM()} more than is asked cannot be missed while the work allowed lasts. Not
 * safe to share between threads.
 */
final class RaiseScan {
    /** Steps are no shorter than this, meters. */
    private static final double LEAST_FRONT_M = 2.5e-4;

    /** The same by hand; and less than this is no raise by hand. */
    static final double LEAST_REAR_M = 5e-4;

    /**
     * The same where it is for the gap between units: a raise that only just keeps it is not worth going through them
     * all.
     */
    private static final double LEAST_FOR_UNITS_M = 0.003;

    private final LiftState lift;
    private final BoosterState booster;
    private final double askedM;
    private final RaiseRates rates;
    private final RaiseRates unitRates;
    private final List<Witness> witnesses = new ArrayList<>();
    private final Supplier<WorkLimit> limit;

    /** A place that was too tight at some raise. */
    private record Witness(LeveledLane way, Clearance place, double needM) {}

    /** How a trial is answered in full: the spare, never more than it is, and where it is least, if it fails. */
    interface Trial {
        Answer at(Raise raise);
    }

    /**
     * @param tightest empty where it does not fail, or where the search could not be closed
     * @param byUnits whether it fails for what is left between coupled units
     * @param spent whether the work allowed ran out: nothing more can be answered then
     */
    record Answer(
            double spareM, Optional<Clearance> tightest, Optional<LeveledLane> way, boolean byUnits, boolean spent) {
        /** One that fails between units. */
        static Answer betweenUnits(RaisedUnits.Left left) {
            return new Answer(
                    left.spareM(),
                    Optional.empty(),
                    Optional.empty(),
                    left.spareM() > Double.NEGATIVE_INFINITY,
                    left.spent());
        }
    }

    /** @param unitRates how fast what is left between units can change */
    RaiseScan(LiftState lift, BoosterState booster, List<LeveledLane> ways, RaiseRates unitRates, double askedM) {
        this.lift = lift;
        this.booster = booster;
        this.askedM = askedM;
        limit = ways.get(0).lane().passage()::limit;
        this.unitRates = unitRates;
        double front = 0;
        double rear = 0;
        for (LeveledLane way : ways) {
            RaiseRates r = rates(way, lift, booster);
            front = Math.max(front, r.front());
            rear = Math.max(rear, r.rear());
        }
        rates = new RaiseRates(front, rear);
    }

    static RaiseRates rates(LeveledLane way, LiftState lift, BoosterState booster) {
        Lane lane = way.lane();
        double steepest = lane.soffit()
                .map(PiecewiseLine::steepest)
                .orElse(lane.passage().line().steepest());
        for (UnitName unit : lane.passage().stance().units()) {
            steepest = Math.max(steepest, lane.passage().lineUnder(unit).steepest());
        }
        return RaiseRates.of(lane.passage().shape(lift, booster), steepest);
    }

    /** How much more than asked a raise has to leave, to ground and structure, so that it cannot be missed, meters. */
    double closesWithinM() {
        return LEAST_FRONT_M * rates.front() + LEAST_REAR_M * rates.rear();
    }

    /** The first raise that is confirmed; empty when there is none. */
    Optional<Raise> find(double lowestM, double highestM, double mostRearM, Trial trial) {
        double rear = mostRearM > 0 ? LEAST_REAR_M : 0;
        while (true) {
            double covered = Double.POSITIVE_INFINITY;
            double front = lowestM;
            while (true) {
                if (!limit.get().take(1 + witnesses.size())) {
                    return Optional.empty();
                }
                Raise at = new Raise(front, rear);
                double lacking = lackingM(at);
                RaiseRates opens = rates;
                if (lacking <= 0) {
                    Answer answer = trial.at(at);
                    if (answer.spareM >= askedM) {
                        return Optional.of(at);
                    }
                    if (answer.spent) {
                        return Optional.empty();
                    }
                    lacking = Math.max(0, askedM - answer.spareM);
                    if (answer.tightest.isPresent()) {
                        note(answer, at);
                    } else if (answer.byUnits) {
                        opens = unitRates;
                    } else {
                        lacking = 0;
                    }
                }
                if (lacking == Double.POSITIVE_INFINITY) {
                    return Optional.empty();
                }
                // Half of what lacks is left to the rows between this one and the next.
                double half = mostRearM > 0 ? 0.5 * lacking : lacking;
                double leastM = opens == unitRates ? LEAST_FOR_UNITS_M : 0;
                covered = Math.min(covered, Math.max(leastM, half / opens.rear()));
                if (front >= highestM) {
                    break;
                }
                front = Math.min(highestM, front + Math.max(Math.max(leastM, LEAST_FRONT_M), half / opens.front()));
            }
            if (rear >= mostRearM) {
                return Optional.empty();
            }
            rear = Math.min(mostRearM, rear + Math.max(LEAST_REAR_M, covered));
        }
    }

    /** Keeps what a trial found. */
    void note(Answer failed, Raise at) {
        LeveledLane way = failed.way.orElseThrow();
        Clearance place = failed.tightest.orElseThrow();
        Map<LeveledLane, PostureSolver> solvers = new HashMap<>();
        witnesses.add(0, new Witness(way, place, gapM(way, place, at, solvers) - failed.spareM));
    }

    /**
     * How much the first witness that speaks against a raise lacks; nothing where none does, no end where no raise
     * helps.
     */
    private double lackingM(Raise at) {
        Map<LeveledLane, PostureSolver> solvers = new HashMap<>();
        for (int i = 0; i < witnesses.size(); i++) {
            Witness w = witnesses.get(i);
            double lacking = askedM - (gapM(w.way, w.place, at, solvers) - w.needM);
            if (lacking > 0) {
                witnesses.remove(i);
                witnesses.add(0, w);
                return w.place.unit().isAheadOfTrailer() ? Double.POSITIVE_INFINITY : lacking;
            }
        }
        return 0;
    }

    private double gapM(LeveledLane way, Clearance place, Raise at, Map<LeveledLane, PostureSolver> solvers) {
        Passage passage = way.lane().passage();
        PostureSolver solver = solvers.computeIfAbsent(
                way,
                w -> new PostureSolver(
                        new CoupledCombination(
                                passage.shape(lift, booster),
                                new Setting(lift, booster, at.deckFrontOffsetM(), 0, at.rearM()),
                                w.leveling()),
                        passage.ground()));
        return RaiseNeeded.gapM(solver, way.lane(), passage.shape(lift, booster), place);
    }
}
