package org.cresthaul.plan;

import java.util.List;
import org.cresthaul.check.BounceAllowance;
import org.cresthaul.check.RegulatorRange;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.CheckedRig;
import org.cresthaul.report.CheckedRoute;
import org.cresthaul.report.Margins;
import org.cresthaul.report.RaiseFinding;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LiftState;
import org.cresthaul.route.HazardKind;
import org.cresthaul.units.Rounded;
import org.cresthaul.units.Rounding;
import org.cresthaul.units.RoundsItself;

/**
 * Which configuration where, in driving order, ready to be shown: the component names are the keys of the plan's JSON
 * form, lengths are meters, times seconds, null stands for "none" or "not known". The same inputs give an equal plan.
 *
 * @param stopsAtBlocks whether the steps are what would be driven if what blocks were resolved: not for driving
 * @param conditions what a person must settle before the plan holds; empty only with an unconditional way through
 * @param seconds of all changes and slow passages together, beyond driving at road speed
 * @param changes how often the configuration changes on the way
 * @param trades this way first, then others that are quicker, leave more or need fewer conditions; empty when there is
 *     no way through
 * @param least the least that is left at any place; where places block, at the others
 * @param steps in driving order, from departure to arrival
 * @param blocking a smallest set of places without which there is a way through; empty when there is one
 * @param crossings every rail crossing in time
 * @param robustness how the plan's margins shrink; null without a plan
 */
public record Plan(
        String cresthaul,
        String version,
        CheckedRoute route,
        CheckedRig rig,
        Margins margins,
        Outcome outcome,
        boolean stopsAtBlocks,
        List<Condition> conditions,
        PlanOptions options,
        long seconds,
        int changes,
        List<Trade> trades,
        LeastReserve least,
        List<Step> steps,
        List<Block> blocking,
        List<CrossingTime> crossings,
        Robustness robustness,
        List<Sentence> cautions) {
    public static final String FORM = "plan/1";

    /** Identifies the start of the route among stops: no stop of a file is called so. */
    public static final String START = "start of the route";

    /** Identifies the limits of the whole route among hazards. */
    public static final String WHOLE_ROUTE = "whole route";

    public Plan {
        conditions = List.copyOf(conditions);
        trades = List.copyOf(trades);
        steps = List.copyOf(steps);
        blocking = List.copyOf(blocking);
        crossings = List.copyOf(crossings);
        cautions = List.copyOf(cautions);
    }

    /**
     * A way through as a point of the trade between cost and reserve.
     *
     * @param conditions how many places its configurations pass under a condition: accepted as tight, or a rail
     *     crossing not shown to be cleared in time or without room shown beyond
     * @param leastReserve the least reserve at any place, as a share of what is required or allowed there; null where
     *     none of them has figures
     * @param leastAt the place that has it
     * @param unknownAt places without figures: what is left there is not known
     * @param configurations in the order in which they are used
     */
    public record Trade(
            long seconds,
            int changes,
            int conditions,
            Double leastReserve,
            String leastAt,
            List<String> unknownAt,
            List<String> configurations) {
        public Trade {
            unknownAt = List.copyOf(unknownAt);
            configurations = List.copyOf(configurations);
        }
    }

    /**
     * What must be settled at one place, by whom the text says.
     *
     * @param settled who settled it, when, and what was agreed; null while nobody has
     */
    public record Condition(
            String hazard, String name, ConditionKind what, Sentence text, PlanOptions.Settled settled) {
        /** Nobody has settled it. */
        public Condition(String hazard, String name, ConditionKind what, Sentence text) {
            this(hazard, name, what, text, null);
        }

        /** Whether it is settled where the deck goes up or down, not at a place. */
        public boolean isOfLift() {
            return what == ConditionKind.UP || what == ConditionKind.DOWN;
        }

        public boolean isOpen() {
            return settled == null;
        }

        /** With what somebody settled, where it is this condition. */
        public Condition settledBy(List<PlanOptions.Settled> all) {
            return all.stream()
                    .filter(s -> s.hazard().equals(hazard) && s.what() == what)
                    .findFirst()
                    .map(s -> new Condition(hazard, name, what, text, s))
                    .orElse(this);
        }

        /** The text, and what was agreed. */
        public Sentence told() {
            return settled == null
                    ? text
                    : Sentence.of(Code.CONDITION_SETTLED)
                            .with("by", settled.by())
                            .with("date", settled.date())
                            .with("agreed", settled.agreed())
                            .with("text", text);
        }
    }

    /**
     * One step of the drive; of {@code set}, {@code change}, {@code lift} and {@code passage} one is there.
     *
     * @param set configuration at departure and at arrival
     * @param change at departure as well, where a plate has to be changed before it; then of the stop {@link #START}
     * @param regulator what a trailing booster's regulator may be set to from a departure or change to the next; null
     *     where no booster trails then, or it is not known
     */
    public record Step(
            StepKind step,
            @Rounded(Rounding.LENGTH_NEAR) double chainageM,
            String place,
            String landmark,
            SetUp set,
            Change change,
            Lift lift,
            HazardPassage passage,
            RegulatorRange regulator) {}

    /**
     * A configuration with everything there is to set.
     *
     * @param configuration key in the report
     * @param lengthM from the foremost to the rearmost point of the combination, on level ground
     * @param regulatorPa of the booster; null unless it trails or the weights do not tell
     * @param shim what is fitted at the booster joint; null likewise
     */
    public record SetUp(
            String configuration,
            String label,
            LiftState lift,
            int axles,
            BoosterState booster,
            String notch,
            double lengthM,
            Double regulatorPa,
            Shim shim) {
        SetUp withShim(Shim other) {
            return new SetUp(configuration, label, lift, axles, booster, notch, lengthM, regulatorPa, other);
        }
    }

    /**
     * What is fitted at the booster joint.
     *
     * @param name in the rig file
     * @param thicknessM nought where the name stands for no plate
     */
    public record Shim(String name, double thicknessM) {
        public boolean hasThickness() {
            return thicknessM > 0;
        }
    }

    /** A change of configuration at a stopping place or set-up area. */
    public record Change(
            String stop, boolean setUpArea, double roomM, SetUp from, SetUp to, List<Action> actions, long seconds) {}

    /**
     * One action of a change.
     *
     * @param text what to do: "notch 3 to notch 5"
     */
    public record Action(ActionKind action, Sentence text, long seconds) {}

    /**
     * The deck goes up before places that are passed on one raise, or back on the transport stops after them.
     *
     * @param raise front, rear, and the gap that governs of all at any of those places
     * @param band from which to which raise of the front all of them are clear, the rear as it is; null where nobody
     *     can tell
     * @param hazards passed on it, in the order in which the front meets them
     * @param lastLeft the one of them that the rear leaves last
     * @param fromChainageM where the front may stand for it, at the earliest: no part of the combination is at a place
     *     then
     * @param toChainageM at the latest
     * @param lacks why nothing shows that it may stand here, or null; then a condition says so too
     */
    public record Lift(
            RaiseFinding raise,
            RaiseBand band,
            List<String> hazards,
            String lastLeft,
            @Rounded(Rounding.LENGTH_NEAR) double fromChainageM,
            @Rounded(Rounding.LENGTH_NEAR) double toChainageM,
            Sentence lacks,
            long seconds) {
        public Lift {
            hazards = List.copyOf(hazards);
        }
    }

    /**
     * One hazard in the configuration the plan has there.
     *
     * @param chainageM of its point: the one that every document names it by
     * @param fromChainageM where the front is when it comes to it
     * @param toChainageM where the front is when the rear has left it
     * @param frontFromM the first of them, from the point: negative before it
     * @param frontToM the second
     * @param verdict of the check: in transport stance, or "clear" when {@code raise} makes it so
     * @param raise how far it is raised here, or null in transport stance. Places close together are passed on one
     *     raise; at one that a raise does nothing for, its clearance is the least of the others'
     * @param raises whether the deck goes up just before this place; false where it is up already
     * @param lowers whether the deck goes down once the rear has left this place; false where it stays up for another
     * @param condition {@link ConditionKind#TIGHT} or {@link ConditionKind#SET_ASIDE}, or null
     * @param blocked whether this is one of the plan's blocking places
     * @param crawls whether it is passed at crawling speed
     * @param mostMps over a dip or crest and under a structure that are clear, the speed up to which a bounce leaves
     *     what is required ({@link BounceAllowance}); null where it crawls, and where speed has no bearing
     * @param gaps over the ground and under a structure, as it is passed, whichever are judged here
     * @param spare the governing spare of the check: what is left beyond what is required; null when not known
     */
    public record HazardPassage(
            String hazard,
            HazardKind kind,
            String name,
            @Rounded(Rounding.LENGTH_NEAR) double chainageM,
            @Rounded(Rounding.LENGTH_NEAR) double fromChainageM,
            @Rounded(Rounding.LENGTH_NEAR) double toChainageM,
            @Rounded(Rounding.LENGTH_NEAR) double frontFromM,
            @Rounded(Rounding.LENGTH_NEAR) double frontToM,
            SetUp set,
            Verdict verdict,
            RaiseFinding raise,
            boolean raises,
            boolean lowers,
            ConditionKind condition,
            boolean blocked,
            boolean crawls,
            @Rounded(Rounding.SPEED_DOWN) Double mostMps,
            long seconds,
            Spare spare,
            List<Spare> gaps,
            List<Sentence> reasons,
            List<Sentence> cautions) {
        /** Whether it is a place at a point, and not limits along the road. */
        public boolean standsAtPoint() {
            return kind.standsAtPoint();
        }
    }

    /**
     * What is left at a hazard.
     *
     * @param kind tells the unit of the figures
     * @param value found: meters, or kilograms of load
     * @param required or allowed, in the same unit
     * @param left beyond what is required, in the same unit; negative when short
     * @param at where on the combination, in words
     */
    public record Spare(SpareKind kind, double value, double required, double left, Sentence at)
            implements RoundsItself {
        /** What is left as a share of what is required or allowed. */
        public double share() {
            return kind.share(left, required);
        }

        @Override
        public Spare rounded() {
            return kind.isWeight()
                    ? new Spare(
                            kind,
                            Rounding.MASS_NEAR.of(value),
                            Rounding.MASS_NEAR.of(required),
                            kind.leftAsWritten(left),
                            at)
                    : new Spare(
                            kind,
                            Rounding.LENGTH_DOWN.of(value),
                            Rounding.LENGTH_UP.of(required),
                            kind.leftAsWritten(left),
                            at);
        }
    }

    /** A place that blocks, why, and what would open it. */
    public record Block(
            String hazard,
            HazardKind kind,
            String name,
            @Rounded(Rounding.LENGTH_NEAR) double chainageM,
            Sentence why,
            List<Relaxation> relaxations) {}

    /**
     * What would open a blocking place in one configuration.
     *
     * @param configuration in which, or null when in any
     * @param amount meters or kilograms, or null
     * @param enough whether the check confirms that it opens the place; false when it is only what to find out
     */
    public record Relaxation(RelaxationKind kind, String configuration, Double amount, boolean enough, Sentence text) {}
}
