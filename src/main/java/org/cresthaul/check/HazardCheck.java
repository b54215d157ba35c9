package org.cresthaul.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.cresthaul.posture.Clearance;
import org.cresthaul.posture.Demand;
import org.cresthaul.posture.Footing;
import org.cresthaul.posture.Passage;
import org.cresthaul.posture.PassageSearch;
import org.cresthaul.posture.RaiseNeeded;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Levelling;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.Setting;
import org.cresthaul.road.Soffit;
import org.cresthaul.route.Hazard;

/** Judges every configuration at one hazard. Not safe to share between threads. */
final class HazardCheck {
    private final Hazard hazard;
    private final Surroundings surroundings;
    private final Margins margins;
    private final List<LaneDemands> lanes = new ArrayList<>();
    private final Map<String, RaiseNeeded> raises = new HashMap<>();

    /** A lane with what is asked on it. */
    private record LaneDemands(
            Passage passage, Optional<Soffit> soffit, Optional<Demand> ground, Optional<Demand> overhead) {}

    /**
     * The least gap of one line and levelling, and its verdict.
     *
     * @param reason why it is not clear, or empty
     */
    private record Judged(Verdict verdict, Report.GapFinding gap, String reason) {
        /** Worst first: by verdict, then by gap. */
        static final Comparator<Judged> WORST_FIRST = Comparator.comparing(Judged::verdict)
                .reversed()
                .thenComparingDouble(j -> j.gap.valueM());
    }

    /** Everything that one setting meets here. */
    private record Judgement(Verdict verdict, Judged ground, Judged overhead, Set<String> reasons) {}

    HazardCheck(Hazard hazard, Rig rig, LevelStance stance, Margins margins) {
        this.hazard = hazard;
        this.margins = margins;
        surroundings = Surroundings.of(hazard);
        double rigM = Math.hypot(rig.measurement().valueM(), rig.ride().valueM());
        double survey = surroundings.surveyM();
        for (Surroundings.Lane lane : surroundings.lanes()) {
            lanes.add(new LaneDemands(
                    surroundings.passage(stance, lane),
                    lane.soffit(),
                    surroundings.judgesGround()
                            ? Optional.of(new Demand(margins.groundM(), survey, rigM, true))
                            : Optional.empty(),
                    lane.soffit().map(s -> new Demand(
                            margins.overheadM() + surroundings.sagM(),
                            survey,
                            Math.hypot(rigM, surroundings.structureM()),
                            true))));
        }
    }

    Surroundings surroundings() {
        return surroundings;
    }

    Report.Cell cell(CheckedConfiguration configuration) {
        if (lanes.isEmpty()) {
            return new Report.Cell(
                    configuration.key(),
                    Verdict.NOT_SURVEYED.word(),
                    null,
                    null,
                    null,
                    null,
                    List.of("no survey data: nothing can be said about this place"));
        }
        Judgement transport = judge(configuration.transport());
        Report.RaiseFinding raise = null;
        String raiseNote = null;
        if (transport.verdict != Verdict.CLEAR) {
            Optional<Report.RaiseFinding> found =
                    surroundings.limits().isEmpty() ? findRaise(configuration) : Optional.empty();
            raise = found.orElse(null);
            if (raise == null) {
                raiseNote = surroundings.limits().isEmpty()
                        ? "no raise within the limits makes it clear"
                        : "no raise can make it clear: more must be known about this place first";
            }
        }
        return new Report.Cell(
                configuration.key(),
                transport.verdict.word(),
                transport.ground == null ? null : transport.ground.gap,
                transport.overhead == null ? null : transport.overhead.gap,
                raise,
                raiseNote,
                List.copyOf(transport.reasons));
    }

    private Optional<Report.RaiseFinding> findRaise(CheckedConfiguration configuration) {
        Setting transport = configuration.transport();
        RaiseNeeded needed = raises.computeIfAbsent(
                transport.lift().word() + "/" + transport.booster().word(),
                k -> new RaiseNeeded(
                        transport.lift(),
                        transport.booster(),
                        lanes.stream()
                                .map(l -> new RaiseNeeded.Lane(
                                        l.passage,
                                        l.ground,
                                        l.soffit,
                                        l.overhead.orElse(new Demand(0, 0, 0, true))))
                                .toList()));
        Optional<RaiseNeeded.Raise> raise = needed.from(transport.notchOffsetM());
        if (raise.isEmpty()) {
            return Optional.empty();
        }
        double front = Math.max(0, raise.get().deckFrontOffsetM() - transport.notchOffsetM());
        Judgement raised = judge(transport.raised(front, raise.get().rearM()));
        if (raised.verdict != Verdict.CLEAR) {
            return Optional.empty();
        }
        double left = raised.ground != null ? raised.ground.gap.valueM() : Double.POSITIVE_INFINITY;
        if (raised.overhead != null) {
            left = Math.min(left, raised.overhead.gap.valueM());
        }
        return Optional.of(new Report.RaiseFinding(
                Figures.up(front), Figures.up(raise.get().rearM()), left));
    }

    private Judgement judge(Setting setting) {
        List<Judged> ground = new ArrayList<>();
        List<Judged> overhead = new ArrayList<>();
        for (LaneDemands lane : lanes) {
            for (Levelling levelling : setting.levellings()) {
                PassageSearch search = new PassageSearch(lane.passage, setting, levelling);
                if (lane.ground.isPresent()) {
                    Demand demand = lane.ground.get();
                    Clearance least = search.leastOverGround();
                    ground.add(judge(search, lane, levelling, demand, margins.groundM(), least, Optional.empty()));
                }
                if (lane.soffit.isPresent()) {
                    // The passage leads every part under the structure, so there always is one.
                    Clearance least = search.leastUnder(lane.soffit.get()).orElseThrow();
                    Demand demand = lane.overhead.orElseThrow();
                    overhead.add(judge(search, lane, levelling, demand, margins.overheadM(), least, lane.soffit));
                }
            }
        }
        ground.sort(Judged.WORST_FIRST);
        overhead.sort(Judged.WORST_FIRST);
        Verdict worst = Verdict.CLEAR;
        Set<String> reasons = new LinkedHashSet<>();
        for (List<Judged> gaps : List.of(ground, overhead)) {
            if (!gaps.isEmpty()) {
                worst = worst.orWorse(gaps.get(0).verdict);
                reasons.addAll(reasonsOf(gaps));
            }
        }
        if (!surroundings.limits().isEmpty()) {
            worst = worst.orWorse(Verdict.TIGHT);
            reasons.addAll(surroundings.limits());
        }
        return new Judgement(
                worst,
                ground.isEmpty() ? null : ground.get(0),
                overhead.isEmpty() ? null : overhead.get(0),
                reasons);
    }

    /**
     * What stands in the way of clear: where contact cannot be excluded, the worst line's reason alone (a milder one
     * beside it would contradict it), otherwise every reason there is.
     */
    private static List<String> reasonsOf(List<Judged> worstFirst) {
        Judged worst = worstFirst.get(0);
        return worst.verdict == Verdict.CONTACT
                ? List.of(worst.reason)
                : worstFirst.stream()
                        .map(Judged::reason)
                        .filter(r -> !r.isEmpty())
                        .distinct()
                        .toList();
    }

    private Judged judge(
            PassageSearch search,
            LaneDemands lane,
            Levelling levelling,
            Demand demand,
            double marginM,
            Clearance least,
            Optional<Soffit> soffit) {
        // Ground nobody declared can keep a passage from being clear; it is no evidence of contact.
        Demand freeOfContact = new Demand(0, demand.surveyM(), demand.otherM(), false);
        Footing footing = search.footingOf(least, demand);
        double excluded = search.footingOf(least, freeOfContact).uncertaintyM();
        double low = least.valueM() - least.provenWithinM();
        String where = soffit.isPresent() ? "overhead" : "ground clearance";
        Verdict verdict;
        String reason = "";
        if (!least.proven()) {
            verdict = Verdict.CONTACT;
            reason = where + ": the road is too rough here for the search to prove its answer";
        } else if (low >= demand.marginM() + footing.uncertaintyM() && meets(search, demand, soffit)) {
            verdict = Verdict.CLEAR;
        } else if (low >= excluded && meets(search, freeOfContact, soffit)) {
            verdict = Verdict.TIGHT;
        } else {
            verdict = Verdict.CONTACT;
        }
        if (verdict == Verdict.CLEAR && footing.undeclared() && footing.beyondSurveyM() > 0) {
            verdict = Verdict.TIGHT;
            reason = where + ": the tightest position stands on ground beyond the survey whose grade is not declared";
        } else if (verdict != Verdict.CLEAR && least.proven()) {
            reason = where + ": " + Reasons.of(verdict, low, footing, excluded, demand, surroundings.sagM());
        }
        Report.GapFinding gap = new Report.GapFinding(
                Figures.down(least.valueM()),
                Figures.up(marginM + surroundingsSag(soffit) + footing.uncertaintyM()),
                Figures.near(marginM + surroundingsSag(soffit)),
                Figures.up(footing.uncertaintyM()),
                verdict.word(),
                least.unit().word(),
                Figures.near(least.point().xM()),
                Figures.near(least.point().hM()),
                least.point().part(),
                Figures.near(least.distanceM()),
                Figures.near(hazard.place().chainageM() + least.distanceM()),
                Figures.near(least.steerM()),
                lane.passage.line().name(),
                levelling.word(),
                Figures.near(footing.beyondSurveyM()),
                !footing.undeclared(),
                least.provenWithinM());
        return new Judged(verdict, gap, reason);
    }

    private double surroundingsSag(Optional<Soffit> soffit) {
        return soffit.isPresent() ? surroundings.sagM() : 0;
    }

    private static boolean meets(PassageSearch search, Demand demand, Optional<Soffit> soffit) {
        return soffit.isPresent() ? search.meetsUnder(soffit.get(), demand) : search.meetsOverGround(demand);
    }
}
