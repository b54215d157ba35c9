package org.cresthaul.check;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.stream.Stream;
import org.cresthaul.check.SideCheck.JudgedSide;
import org.cresthaul.clearance.RaiseNeeded;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.Caution;
import org.cresthaul.report.GapFinding;
import org.cresthaul.report.Haul;
import org.cresthaul.report.RaiseEnd;
import org.cresthaul.report.RaiseFinding;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.Setting;
import org.cresthaul.route.Hazard;
import org.cresthaul.units.Rounding;

/**
 * Judges hazards at raises that are given, with the engine that makes the report: for several hazards that are passed
 * on one raise, which none of them alone would have asked for. Keeps what it has judged; safe to share, each hazard
 * being judged by one thread at a time.
 */
public final class RaisedCheck {
    /** The report's raises are rounded up to this, meters: such a one may be so much beyond a limit. */
    private static final double ROUNDED_M = 1e-4;

    private final Haul haul;
    private final RouteLoads loads;
    private final Map<String, CheckedConfiguration> configurations = new HashMap<>();
    private final Map<String, HazardCheck> checks = new ConcurrentHashMap<>();
    private final Map<Asked, Optional<Raised>> judged = new ConcurrentHashMap<>();
    private final Map<String, Optional<Least>> least = new ConcurrentHashMap<>();

    /** What a raise comes to: the verdict, and the governing gaps, null where not judged. */
    public record Raised(Verdict verdict, GapFinding ground, GapFinding overhead, GapFinding units) {
        public boolean isClear() {
            return verdict == Verdict.CLEAR;
        }

        /** As of a cell. */
        public GapFinding governing() {
            return ReportCell.governing(ground, overhead, units).orElseThrow();
        }

        /** Every gap that is judged. */
        private Stream<GapFinding> gaps() {
            return Stream.of(ground, overhead, units).filter(Objects::nonNull);
        }

        /** The least gap of any, meters. */
        public double clearanceM() {
            return gaps().mapToDouble(GapFinding::valueM).min().orElseThrow();
        }
    }

    /**
     * How far the deck front may go above a raise, the rear as it is.
     *
     * @param frontM over the notch: every raise of the front up to there is clear as well
     */
    public record Top(double frontM, RaiseEnd endsAt) {}

    /** A raise over the notch, meters. */
    public record Least(double frontM, double rearM) {}

    private record Asked(String hazard, String configuration, double frontM, double rearM) {}

    public RaisedCheck(Haul haul) {
        this.haul = haul;
        loads = new RouteLoads(haul.route(), haul.stance());
        CheckedConfiguration.listOf(haul.rig(), haul.stance()).forEach(c -> configurations.put(c.key(), c));
    }

    /**
     * One hazard in one configuration at one raise.
     *
     * @param frontM of the deck front over the notch, meters
     * @param rearM of the rear by hand, meters
     * @return empty when the rig cannot be raised so far from this notch, or nothing was surveyed here
     * @throws UnknownNameException when the route or rig has no such hazard or configuration
     */
    public Optional<Raised> at(String hazardId, String configurationKey, double frontM, double rearM) {
        return judged.computeIfAbsent(new Asked(hazardId, configurationKey, frontM, rearM), this::judge);
    }

    private Optional<Raised> judge(Asked asked) {
        Hazard hazard = haul.route()
                .findHazard(asked.hazard)
                .filter(h -> h.kind().isRaisable())
                .orElseThrow(() -> new UnknownNameException("no hazard " + asked.hazard + " to raise over", "hazard"));
        CheckedConfiguration c = Optional.ofNullable(configurations.get(asked.configuration))
                .orElseThrow(() -> new UnknownNameException(
                        "the rig has no configuration " + asked.configuration, "configuration"));
        double mostFrontM = mostFrontM(c);
        boolean reached = asked.frontM >= 0
                && asked.frontM <= mostFrontM + ROUNDED_M
                && asked.rearM >= 0
                && asked.rearM <= haul.stance().trailer().manualRaiseLimitM() + ROUNDED_M
                && (asked.frontM == 0 || loads.raisesFront(c));
        if (!reached || Surroundings.of(hazard).lanes().isEmpty()) {
            return Optional.empty();
        }
        HazardCheck.Judgment judgment = with(hazard, check -> check.judge(setting(c, asked)));
        return Optional.of(new Raised(
                judgment.verdict(),
                judgment.ground().map(JudgedSide::gap).orElse(null),
                judgment.overhead().map(JudgedSide::gap).orElse(null),
                judgment.between()));
    }

    private double mostFrontM(CheckedConfiguration c) {
        return Math.max(
                0, haul.stance().trailer().hydraulicRaiseLimitM() - c.notch().offsetM());
    }

    /** As the report's own raise: counted into the notch, which holds the deck front the same way. */
    private static Setting setting(CheckedConfiguration c, Asked asked) {
        return new Setting(c.lift(), c.booster(), c.notch().offsetM() + asked.frontM, 0, asked.rearM);
    }

    private <T> T with(Hazard hazard, Function<HazardCheck, T> question) {
        HazardCheck check = checks.computeIfAbsent(
                hazard.place().id(), id -> new HazardCheck(hazard, haul.rig(), haul.stance(), haul.margins()));
        synchronized (check) {
            return question.apply(check);
        }
    }

    /**
     * The least raise that leaves a share of what is required over at every position, rounded up; judged by
     * {@link #at}.
     *
     * @return empty when no raise within the limits does, or nothing was surveyed here
     */
    public Optional<Least> least(String hazardId, String configurationKey, double share) {
        return least.computeIfAbsent(hazardId + " " + configurationKey + " " + share, k -> {
            Hazard hazard = haul.route().findHazard(hazardId).orElseThrow();
            CheckedConfiguration c = configurations.get(configurationKey);
            if (Surroundings.of(hazard).lanes().isEmpty()) {
                return Optional.empty();
            }
            double mostRearM = haul.stance().trailer().manualRaiseLimitM();
            return with(hazard, check -> check.leastLeaving(c.transport(), share))
                    .map(r -> new Least(
                            Math.min(
                                    mostFrontM(c),
                                    Rounding.LENGTH_UP.of(Math.max(
                                            0, r.deckFrontOffsetM() - c.notch().offsetM()))),
                            Math.min(mostRearM, Rounding.LENGTH_UP.of(r.rearM()))));
        });
    }

    /**
     * As {@link #at}: how far up it may go from there; empty where the raise itself is not clear.
     *
     * @param share of what is required that is left over all the way; 0 where any will do
     */
    public Optional<Top> above(String hazardId, String configurationKey, double frontM, double rearM, double share) {
        if (at(hazardId, configurationKey, frontM, rearM)
                .filter(Raised::isClear)
                .isEmpty()) {
            return Optional.empty();
        }
        CheckedConfiguration c = configurations.get(configurationKey);
        Setting raised = setting(c, new Asked(hazardId, configurationKey, frontM, rearM));
        RaiseNeeded.Top top =
                with(haul.route().findHazard(hazardId).orElseThrow(), check -> check.above(raised, share));
        double upM = Math.max(
                frontM,
                Math.min(mostFrontM(c), top.deckFrontOffsetM() - c.notch().offsetM()));
        return Optional.of(new Top(upM, end(top)));
    }

    private static RaiseEnd end(RaiseNeeded.Top top) {
        return switch (top.by()) {
            case HYDRAULICS -> RaiseEnd.HYDRAULICS;
            case UNITS -> RaiseEnd.UNITS;
            case SEARCH -> RaiseEnd.NOT_SHOWN;
            case LINE -> top.ended().orElseThrow().soffit().isPresent() ? RaiseEnd.STRUCTURE : RaiseEnd.GROUND;
        };
    }

    /** By configuration, whether the power take-off raises its front. */
    public List<Boolean> raisesFront() {
        return CheckedConfiguration.listOf(haul.rig(), haul.stance()).stream()
                .map(loads::raisesFront)
                .toList();
    }

    /** The usual cautions at a hazard for a combination that passes it so; a null raise is transport stance. */
    public static List<Sentence> cautions(Hazard hazard, ReportCell cell, RaiseFinding raise) {
        return Cautions.at(hazard, List.of(cell.withRaise(raise))).stream()
                .map(Caution::text)
                .toList();
    }
}
