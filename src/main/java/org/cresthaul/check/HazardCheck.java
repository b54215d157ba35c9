package org.cresthaul.check;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.cresthaul.check.SideCheck.JudgedSide;
import org.cresthaul.clearance.Demand;
import org.cresthaul.clearance.Passage;
import org.cresthaul.clearance.RaiseNeeded;
import org.cresthaul.geometry.WorkLimit;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.GapFinding;
import org.cresthaul.report.Margins;
import org.cresthaul.report.RaiseFinding;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.Setting;
import org.cresthaul.rig.Trailer;
import org.cresthaul.route.Hazard;
import org.cresthaul.units.Rounding;

/** Judges every configuration at one hazard. Not safe to share between threads. */
public final class HazardCheck {
    private final Surroundings surroundings;
    private final Optional<SideCheck> ground;
    private final Optional<SideCheck> overhead;
    /** Where there is a line to pass. */
    private final Optional<UnitCheck> units;

    private final Map<String, RaiseNeeded> raises = new HashMap<>();
    private final Map<Setting, Judgment> transports = new HashMap<>();
    /** By setting with the raise counted into the notch: a raise that several notches need is judged once. */
    private final Map<Setting, Judgment> raised = new HashMap<>();

    private final boolean mayGoAlone;
    /**
     * Whether what is shown of a booster over the ground and under the structure is shown where units are looked at.
     */
    private final boolean unitsPassJudgedWays;

    private final List<Passage> passages;
    private final long points;
    private final Trailer trailer;
    private final boolean sped;

    /** Everything that one setting meets here. */
    public record Judgment(
            Verdict verdict,
            Optional<JudgedSide> ground,
            Optional<JudgedSide> overhead,
            Optional<UnitCheck.Judged> units,
            List<Sentence> reasons) {
        /** The least gap between units, or null. */
        GapFinding between() {
            return units.flatMap(UnitCheck.Judged::gap).orElse(null);
        }
    }

    public HazardCheck(Hazard hazard, Rig rig, LevelStance stance, Margins margins) {
        sped = hazard.kind().isSped();
        surroundings = Surroundings.of(hazard, stance);
        trailer = stance.trailer();
        mayGoAlone = stance.boosterStates().contains(BoosterState.NONE);
        double rigM = Math.hypot(rig.measurement().valueM(), rig.ride().valueM());
        double surveyM = surroundings.surveyM();
        Demand overGround = new Demand(margins.groundM(), surveyM, rigM, true);
        double overheadM = Math.max(margins.overheadM(), surroundings.keptM());
        Demand underSoffit =
                new Demand(overheadM + surroundings.sagM(), surveyM, Math.hypot(rigM, surroundings.structureM()), true);
        List<RaiseNeeded.Lane> below = new ArrayList<>();
        List<RaiseNeeded.Lane> above = new ArrayList<>();
        List<RaiseNeeded.Lane> between = new ArrayList<>();
        Demand betweenUnits = UnitCheck.demand(rig, margins, surveyM);
        List<Passage> all = new ArrayList<>();
        Map<Double, Passage> ways = new HashMap<>();
        Set<Double> bent = new HashSet<>();
        boolean overGroundAnywhere = surroundings.lanes().stream().anyMatch(surroundings::judgesGroundOn);
        for (Surroundings.Lane lane : surroundings.lanes()) {
            Passage passage = lane.place().isEmpty()
                    ? surroundings.passage(stance, lane)
                    : ways.computeIfAbsent(lane.place().get().drivenRightM(), d -> surroundings.passage(stance, lane))
                            .at(lane.place().get());
            all.add(passage);
            // Units bend alike wherever across the road they are looked at: one place of each way of driving will do.
            boolean counts = !overGroundAnywhere || surroundings.judgesGroundOn(lane);
            if (counts && (lane.place().isEmpty() || bent.add(lane.place().get().drivenRightM()))) {
                between.add(new RaiseNeeded.Lane(passage, Optional.empty(), betweenUnits));
            }
            if (surroundings.judgesGroundOn(lane)) {
                below.add(new RaiseNeeded.Lane(passage, Optional.empty(), overGround));
            }
            if (lane.soffit().isPresent()) {
                above.add(new RaiseNeeded.Lane(passage, lane.soffit(), underSoffit));
            }
        }
        passages = List.copyOf(all);
        int apart = (int) passages.stream().filter(p -> p.place().isEmpty()).count() + ways.size();
        Stream.concat(passages.stream(), ways.values().stream()).forEach(p -> p.keepAmong(passages.size(), apart));
        points = surroundings.points();
        double chainageM = hazard.place().chainageM();
        ground = below.isEmpty()
                ? Optional.empty()
                : Optional.of(new SideCheck(chainageM, below, margins.groundM(), 0, Code.AT_GROUND));
        overhead = above.isEmpty()
                ? Optional.empty()
                : Optional.of(new SideCheck(chainageM, above, overheadM, surroundings.sagM(), Code.AT_OVERHEAD));
        units = unitCheck(chainageM, between);
        unitsPassJudgedWays = between.stream()
                .allMatch(
                        lane -> sides().flatMap(s -> s.lanes().stream()).anyMatch(l -> l.passage() == lane.passage()));
    }

    private static Optional<UnitCheck> unitCheck(double chainageM, List<RaiseNeeded.Lane> lanes) {
        return lanes.isEmpty() ? Optional.empty() : Optional.of(new UnitCheck(chainageM, lanes));
    }

    Surroundings surroundings() {
        return surroundings;
    }

    ReportCell cell(CheckedConfiguration configuration) {
        return cell(configuration, true);
    }

    /** @param raised whether a raise is looked for; not where it is known that none will do */
    ReportCell cell(CheckedConfiguration configuration, boolean raised) {
        if (ground.isEmpty() && overhead.isEmpty()) {
            return new ReportCell(
                    configuration.key(),
                    Verdict.NOT_SURVEYED,
                    null,
                    null,
                    null,
                    null,
                    List.of(Sentence.of(Code.WHY_NO_SURVEY)));
        }
        Judgment transport = judge(configuration.transport());
        RaiseFinding raise = null;
        String raiseNote = null;
        if (transport.verdict != Verdict.CLEAR) {
            boolean known = surroundings.limits().isEmpty();
            raise = known && raised ? findRaise(configuration.transport()).orElse(null) : null;
            if (raise == null) {
                raiseNote = known
                        ? "no raise within the limits was found to make it clear"
                        : "no raise can make it clear: more must be known about this place first";
            }
        }
        ReportCell cell = new ReportCell(
                        configuration.key(),
                        transport.verdict,
                        transport.ground.map(JudgedSide::gap).orElse(null),
                        transport.overhead.map(JudgedSide::gap).orElse(null),
                        raise,
                        raiseNote,
                        transport.reasons)
                .withUnits(transport.between());
        return sped ? BounceAllowance.told(cell) : cell;
    }

    /** Whatever is asked next may take so much work and no more, over all lines together. */
    private void allowWork() {
        allow(Passage.limit(points));
    }

    private void allow(WorkLimit limit) {
        passages.forEach(p -> p.share(limit));
    }

    /** Whether a setting is clear here, as {@link #judge} has it: nothing else is found out where it is not. */
    boolean isClear(Setting setting) {
        if (ground.isEmpty() && overhead.isEmpty() || !surroundings.limits().isEmpty()) {
            return false;
        }
        Judgment known = transports.get(setting);
        if (known == null) {
            allowWork();
            if (sides().anyMatch(s -> s.fallsShort(setting))) {
                return false;
            }
        }
        return judge(setting).verdict == Verdict.CLEAR;
    }

    /** The raise of a cell of which it is known that transport is not clear. */
    Optional<RaiseFinding> raise(Setting transport) {
        return surroundings.limits().isEmpty() && !(ground.isEmpty() && overhead.isEmpty())
                ? findRaise(transport)
                : Optional.empty();
    }

    private Optional<RaiseFinding> findRaise(Setting transport) {
        allowWork();
        Optional<RaiseNeeded.Raise> raise = leastRaise(transport);
        if (raise.isEmpty()) {
            return Optional.empty();
        }
        double frontEndM = Math.max(0, trailer.hydraulicRaiseLimitM() - transport.notchOffsetM());
        double rearEndM = trailer.manualRaiseLimitM();
        // A setting, in steps up from the least that will do, but never farther than the hydraulics go.
        double frontM = Math.min(
                frontEndM,
                Rounding.LENGTH_UP.of(Math.max(0, raise.get().deckFrontOffsetM() - transport.notchOffsetM())));
        double rearM = Math.min(rearEndM, Rounding.LENGTH_UP.of(raise.get().rearM()));
        // JudgedSide as it is told: what is a little higher may come too near to a structure, or close a gap between
        // units.
        Judgment judgment =
                judge(new Setting(transport.lift(), transport.booster(), transport.notchOffsetM() + frontM, 0, rearM));
        if (judgment.verdict != Verdict.CLEAR) {
            return Optional.empty();
        }
        GapFinding governing = ReportCell.governing(
                        judgment.ground.map(JudgedSide::gap).orElse(null),
                        judgment.overhead.map(JudgedSide::gap).orElse(null),
                        judgment.between())
                .orElseThrow();
        return Optional.of(RaiseFinding.leaving(frontM, rearM, governing).endingAt(frontEndM, rearEndM));
    }

    /** A booster that trails without touching anything can only be raised for the trailer's sake. */
    private Optional<RaiseNeeded.Raise> leastRaise(Setting transport) {
        if (isTrailed(transport)) {
            Setting alone = withoutBooster(transport);
            Optional<RaiseNeeded.Raise> raise = leastRaise(alone);
            if (raise.isPresent()) {
                Setting reached = reached(transport, raise.get());
                Judgment judgment = raised(reached(alone, raise.get()));
                if (isUnchangedBy(reached, judgment)) {
                    Judgment trailed = withUnits(judgment, reached);
                    raised.put(reached, trailed);
                    if (trailed.verdict == Verdict.CLEAR) {
                        return raise;
                    }
                }
            }
            // A booster that carries the trailer may open what does not open without it.
        }
        return needed(transport, 0).from(transport.notchOffsetM());
    }

    private RaiseNeeded needed(Setting transport, double share) {
        return raises.computeIfAbsent(
                transport.lift().word() + "/" + transport.booster().word() + "/" + share,
                k -> new RaiseNeeded(
                        transport.lift(),
                        transport.booster(),
                        sides().flatMap(s -> s.lanes().stream())
                                .map(l -> l.leaving(share))
                                .toList(),
                        units.stream()
                                .flatMap(u -> u.lanes().stream())
                                .map(l -> l.leaving(share))
                                .toList()));
    }

    /** The least raise that leaves a share of what is demanded over at every position, counted into the notch. */
    Optional<RaiseNeeded.Raise> leastLeaving(Setting transport, double share) {
        allowWork();
        return needed(transport, share).from(transport.notchOffsetM());
    }

    /**
     * How far up a raise that is clear may go, counted into the notch: every raise up to there is clear as well, and
     * leaves that share over.
     */
    RaiseNeeded.Top above(Setting raised, double share) {
        allowWork();
        return needed(raised, share).above(new RaiseNeeded.Raise(raised.notchOffsetM(), raised.rearRaiseM()));
    }

    private static Setting reached(Setting transport, RaiseNeeded.Raise raise) {
        return new Setting(transport.lift(), transport.booster(), raise.deckFrontOffsetM(), 0, raise.rearM());
    }

    /** The search for this raise has shown the margin at every position; what is left to find is how much there is. */
    private Judgment raised(Setting reached) {
        return raised.computeIfAbsent(
                reached,
                s -> judgment(
                        ground.map(side -> side.judgeSpared(s)),
                        overhead.map(side -> side.judgeSpared(s)),
                        betweenUnits(s)));
    }

    /** What was found without the booster, where a trailing one changes nothing. */
    private Optional<Judgment> foundAlone(Setting setting) {
        if (!isTrailed(setting)) {
            return Optional.empty();
        }
        Judgment alone = judge(withoutBooster(setting));
        return isUnchangedBy(setting, alone) ? Optional.of(withUnits(alone, setting)) : Optional.empty();
    }

    private boolean isTrailed(Setting setting) {
        return mayGoAlone && setting.booster() == BoosterState.TRAILING;
    }

    private static Setting withoutBooster(Setting setting) {
        return new Setting(
                setting.lift(), BoosterState.NONE, setting.notchOffsetM(), setting.frontRaiseM(), setting.rearRaiseM());
    }

    private boolean isUnchangedBy(Setting trailing, Judgment alone) {
        return (ground.isEmpty() || ground.get().isUnchangedBy(trailing, alone.ground.orElseThrow()))
                && (overhead.isEmpty() || overhead.get().isUnchangedBy(trailing, alone.overhead.orElseThrow()));
    }

    private Stream<SideCheck> sides() {
        return Stream.of(ground, overhead).flatMap(Optional::stream);
    }

    /** The verdict on one setting; only where something is judged here. */
    public Judgment judge(Setting setting) {
        return judge(setting, Passage.limit(points));
    }

    /** With so much work allowed. */
    public Judgment judge(Setting setting, WorkLimit limit) {
        Judgment known = transports.get(setting);
        if (known == null) {
            allow(limit);
            known = foundAlone(setting)
                    .orElseGet(() -> judgment(
                            ground.map(s -> s.judge(setting)),
                            overhead.map(s -> s.judge(setting)),
                            betweenUnits(setting)));
            transports.put(setting, known);
        }
        return known;
    }

    private Optional<UnitCheck.Judged> betweenUnits(Setting setting) {
        return units.map(u -> u.judge(setting));
    }

    /** What was found without the booster, with the gaps between the units that there are with it. */
    private Judgment withUnits(Judgment alone, Setting setting) {
        Setting ahead = unitsPassJudgedWays ? withoutBooster(setting) : setting;
        return judgment(alone.ground, alone.overhead, units.map(u -> u.judge(setting, ahead)));
    }

    private Judgment judgment(
            Optional<JudgedSide> below, Optional<JudgedSide> above, Optional<UnitCheck.Judged> between) {
        Verdict worst = Stream.concat(
                        Stream.of(below, above).flatMap(Optional::stream).map(JudgedSide::verdict),
                        between.map(UnitCheck.Judged::verdict).stream())
                .reduce(Verdict::orWorse)
                .orElseThrow();
        List<Sentence> reasons = new ArrayList<>();
        Stream.concat(
                        Stream.of(below, above).flatMap(Optional::stream).map(JudgedSide::reason),
                        between.map(UnitCheck.Judged::reason).stream())
                .flatMap(Optional::stream)
                .forEach(reasons::add);
        if (!surroundings.limits().isEmpty()) {
            worst = worst.orWorse(Verdict.TIGHT);
            reasons.addAll(surroundings.limits());
        }
        return new Judgment(worst, below, above, between, List.copyOf(reasons));
    }
}
