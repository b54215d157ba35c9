package org.cresthaul.plan;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.cresthaul.axleload.OnBridge;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.ConfigurationVerdict;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.LoadFinding;
import org.cresthaul.report.LoadReport;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.HazardKind;
import org.cresthaul.route.LimitedPlace;
import org.cresthaul.route.PostedBridge;
import org.cresthaul.route.RailCrossing;
import org.cresthaul.route.Route;
import org.cresthaul.route.RouteCorner;
import org.cresthaul.route.Stretch;

/**
 * A hazard of the report as a plan sees it, or the limits of the whole route.
 *
 * @param fromM chainage where it begins
 * @param toM chainage where it ends; the same for a point
 * @param pointLike whether it is passed in one go: no stop within reach of it can be used
 * @param raisable whether a raise changes its verdict
 * @param crawled whether it is passed at crawling speed even when it is clear
 * @param cells one for each configuration of the report, in its order
 */
record PlanPlace(
        String id,
        HazardKind kind,
        String name,
        String landmark,
        double chainageM,
        double fromM,
        double toM,
        boolean pointLike,
        boolean raisable,
        boolean crawled,
        Optional<Hazard> hazard,
        List<ReportCell> cells) {
    /** A corner reaches so far to either side of its point: 150 ft, this program's choice. */
    static final double CORNER_REACH_M = 45.72;

    /** Every hazard in the report's order, and the limits of the whole route last, where they count. */
    static List<PlanPlace> listOf(Route route, Report report) {
        Map<String, Hazard> hazards = new HashMap<>();
        route.hazards().forEach(h -> hazards.put(h.place().id(), h));
        List<PlanPlace> places = new ArrayList<>();
        for (HazardFindings findings : report.hazards()) {
            Hazard hazard = hazards.get(findings.id());
            if (hazard == null
                    || findings.cells().size() != report.configurations().size()) {
                throw new IllegalArgumentException("the report is of another route: " + findings.id());
            }
            places.add(of(hazard, findings));
        }
        if (report.loads().counts()) {
            places.add(new PlanPlace(
                    Plan.WHOLE_ROUTE,
                    HazardKind.LIMITS,
                    "limits of the whole route",
                    null,
                    0,
                    0,
                    route.lengthM(),
                    false,
                    false,
                    false,
                    Optional.empty(),
                    report.configurations().stream()
                            .map(c -> wholeRoute(report, c))
                            .toList()));
        }
        return places;
    }

    private static PlanPlace of(Hazard hazard, HazardFindings findings) {
        double at = findings.chainageM();
        double before = findings.extentM().isEmpty()
                ? 0
                : Math.min(0, findings.extentM().get(0));
        double after = findings.extentM().isEmpty()
                ? 0
                : Math.max(0, findings.extentM().get(1));
        if (hazard instanceof Stretch) {
            before = findings.extentM().get(0);
            after = findings.extentM().get(1);
        } else if (hazard instanceof RouteCorner) {
            before = -CORNER_REACH_M;
            after = CORNER_REACH_M;
        } else if (hazard instanceof RailCrossing crossing) {
            // However short the survey: nothing stands between stop line and rails, nor with its rear closer to them
            // than that.
            before = Math.min(before, CrossingTimes.nearRailM(crossing) - CrossingTimes.FREE_OF_RAIL_M);
            after = Math.max(after, CrossingTimes.farRailM(crossing) + CrossingTimes.FREE_OF_RAIL_M);
        }
        return new PlanPlace(
                findings.id(),
                findings.kind(),
                findings.name(),
                findings.landmark(),
                at,
                at + before,
                at + after,
                findings.kind().standsAtPoint(),
                findings.kind().isRaisable(),
                findings.kind().isCrawled()
                        || hazard instanceof PostedBridge bridge
                                && bridge.asked().terms().contains(OnBridge.Term.CRAWL),
                Optional.of(hazard),
                findings.cells());
    }

    private static ReportCell wholeRoute(Report report, ConfigurationVerdict c) {
        LoadReport.StateLoads state = report.loads().states().stream()
                .filter(s -> s.lift().equals(c.lift()) && s.booster() == c.booster())
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("the report has no loads for " + c.key()));
        List<Sentence> reasons = new ArrayList<>();
        if (state.unknown() != null) {
            reasons.add(state.unknown());
        }
        if (state.sheet() != null) {
            state.sheet().broken().forEach(b -> reasons.add(reason(b)));
        }
        return new ReportCell(
                c.key(),
                c.loads(),
                null,
                null,
                null,
                null,
                reasons,
                state.sheet() == null ? null : state.sheet().governing());
    }

    private static Sentence reason(LoadFinding broken) {
        return Sentence.of(Code.RULE_NOT_KEPT)
                .with(
                        "rule",
                        Sentence.of(Code.RULE_AXLES_SOURCE)
                                .with("rule", broken.rule())
                                .with("axles", broken.axles())
                                .with("source", broken.source()));
    }

    /** Whether loads decide here. */
    boolean isLimited() {
        return hazard.isEmpty() || hazard.get() instanceof LimitedPlace;
    }
}
