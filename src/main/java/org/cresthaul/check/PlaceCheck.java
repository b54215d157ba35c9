package org.cresthaul.check;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.cresthaul.check.SideCheck.JudgedSide;
import org.cresthaul.geometry.StopSignal;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.Haul;
import org.cresthaul.report.RaiseFinding;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.Setting;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.LimitedPlace;
import org.cresthaul.route.RouteCorner;

/**
 * The check of single places in single configurations, for whoever asks what becomes of a verdict when the route, the
 * rig or a raise is another: the same engines as {@link RouteCheck}, one cell at a time. Not safe to share between
 * threads.
 */
public final class PlaceCheck {
    private final Haul haul;
    private final RouteLoads loads;
    private final LevelUnits level;
    private final Map<String, CheckedConfiguration> configurations = new LinkedHashMap<>();
    private final Map<String, HazardCheck> gaps = new HashMap<>();
    private final Map<String, CornerCells> corners = new HashMap<>();
    private final Map<Asked, Optional<RaiseFinding>> raises = new HashMap<>();

    private record Asked(String hazard, String configuration) {}

    public PlaceCheck(Haul haul) {
        this.haul = haul;
        loads = new RouteLoads(haul.route(), haul.stance());
        level = new LevelUnits(haul.rig(), haul.stance(), haul.margins());
        CheckedConfiguration.listOf(haul.rig(), haul.stance()).forEach(c -> configurations.put(c.key(), c));
    }

    /**
     * As in the report: in transport, with the raise that would do.
     *
     * @throws UnknownNameException when the route or rig has no such hazard or configuration
     */
    public ReportCell inTransport(String hazardId, String configurationKey) {
        StopSignal.current().poll();
        Hazard hazard = hazard(hazardId);
        CheckedConfiguration c = configuration(configurationKey);
        return level.under(judged(hazard, c), c);
    }

    /** Whether {@link #inTransport} calls it clear; what else it would tell is not found out. */
    public boolean isClear(String hazardId, String configurationKey) {
        StopSignal.current().poll();
        Hazard hazard = hazard(hazardId);
        CheckedConfiguration c = configuration(configurationKey);
        return isPlain(hazard)
                ? level.verdict(c) == Verdict.CLEAR && gap(hazard).isClear(c.transport())
                : inTransport(hazardId, configurationKey).verdict() == Verdict.CLEAR;
    }

    /**
     * Whether a place of gaps is clear in transport for a rig with one more notch.
     *
     * @param notchOffsetM of it; below the lowest as well
     */
    public boolean isClearAt(String hazardId, String configurationKey, double notchOffsetM) {
        StopSignal.current().poll();
        CheckedConfiguration c = configuration(configurationKey);
        return gap(hazard(hazardId)).isClear(new Setting(c.lift(), c.booster(), notchOffsetM, 0, 0));
    }

    /**
     * The raise of {@link #inTransport}, where another check of the same gaps has told what they are in transport.
     *
     * @param verdict of that
     */
    public Optional<RaiseFinding> raise(String hazardId, String configurationKey, Verdict verdict) {
        StopSignal.current().poll();
        Hazard hazard = hazard(hazardId);
        CheckedConfiguration c = configuration(configurationKey);
        if (!isPlain(hazard) || level.verdict(c) != Verdict.CLEAR) {
            // What the verdict is of cannot be told from it.
            return Optional.ofNullable(inTransport(hazardId, configurationKey).raise());
        }
        return verdict == Verdict.CLEAR
                ? Optional.empty()
                : raises.computeIfAbsent(
                        new Asked(hazardId, configurationKey),
                        a -> gap(hazard).raise(c.transport()).filter(r -> r.frontM() == 0 || loads.raisesFront(c)));
    }

    /** Whether it is all gaps. */
    private static boolean isPlain(Hazard hazard) {
        return !(hazard instanceof RouteCorner) && !(hazard instanceof LimitedPlace);
    }

    private ReportCell judged(Hazard hazard, CheckedConfiguration c) {
        if (hazard instanceof RouteCorner corner) {
            return corners.computeIfAbsent(
                            hazard.place().id(),
                            id -> new CornerCells(
                                    new JoinedCorners(haul.route(), haul.stance()).of(corner),
                                    haul.rig(),
                                    haul.stance(),
                                    haul.margins()))
                    .cells(List.of(c))
                    .get(0);
        }
        return hazard instanceof LimitedPlace place
                ? loads.cell(place, c)
                : RouteCheck.deliverable(gap(hazard).cell(c), c, loads);
    }

    /**
     * At a raise, which changes nothing in corners and for loads. Whether the rig reaches it is not asked, but a front
     * that the power take-off cannot raise stays down.
     *
     * @param frontM of the deck front over the notch, meters; negative stands for a notch so much lower
     * @param rearM of the rear by hand, meters
     * @throws UnknownNameException when the route or rig has no such hazard or configuration
     */
    public ReportCell raised(String hazardId, String configurationKey, double frontM, double rearM) {
        Hazard hazard = hazard(hazardId);
        CheckedConfiguration c = configuration(configurationKey);
        if (hazard instanceof RouteCorner
                || hazard instanceof LimitedPlace
                || Surroundings.of(hazard).lanes().isEmpty()) {
            return inTransport(hazardId, configurationKey);
        }
        boolean held = frontM > 0 && !loads.raisesFront(c);
        HazardCheck.Judgment judgment = gap(hazard)
                .judge(new Setting(c.lift(), c.booster(), c.notch().offsetM() + (held ? 0 : frontM), 0, rearM));
        List<Sentence> reasons = new ArrayList<>(judgment.reasons());
        if (held) {
            reasons.add(Sentence.of(Code.WHY_TAKE_OFF));
        }
        return new ReportCell(
                        c.key(),
                        judgment.verdict(),
                        judgment.ground().map(JudgedSide::gap).orElse(null),
                        judgment.overhead().map(JudgedSide::gap).orElse(null),
                        null,
                        null,
                        List.copyOf(reasons))
                .withUnits(judgment.between());
    }

    /** Under the limits of the whole route and the rig's own. */
    public ReportCell wholeRoute(String configurationKey) {
        return loads.baseCell(configuration(configurationKey));
    }

    private Hazard hazard(String id) {
        return haul.route()
                .findHazard(id)
                .orElseThrow(() -> new UnknownNameException("the route has no hazard " + id, "hazard"));
    }

    private CheckedConfiguration configuration(String key) {
        return Optional.ofNullable(configurations.get(key))
                .orElseThrow(() -> new UnknownNameException("the rig has no configuration " + key, "configuration"));
    }

    private HazardCheck gap(Hazard hazard) {
        return gaps.computeIfAbsent(
                hazard.place().id(), id -> new HazardCheck(hazard, haul.rig(), haul.stance(), haul.margins()));
    }
}
