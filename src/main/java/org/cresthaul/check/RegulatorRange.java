package org.cresthaul.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.axleload.GaugeChart;
import org.cresthaul.axleload.LoadWindow;
import org.cresthaul.axleload.WeightLimits;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Weights;
import org.cresthaul.route.LimitedPlace;
import org.cresthaul.route.Route;

/**
 * What a trailing booster's regulator may be set to on a part of a route, so that every limit that any part of the
 * combination meets there is kept, and the rig's own.
 *
 * @param leastPa null where no setting keeps them all
 * @param mostPa likewise
 * @param note why there is none, or null
 */
public record RegulatorRange(Double leastPa, Double mostPa, String note) {
    /**
     * @param fromM where the front is when the part begins
     * @param toM where it is when it ends
     * @param lengthM of the combination
     * @return empty where no booster trails, its regulator is not described, or its loads or a limit are not known
     */
    public static Optional<RegulatorRange> find(
            Route route, LevelStance stance, LiftState lift, double fromM, double toM, double lengthM) {
        LoadCase loadCase = LoadCase.of(stance, lift, BoosterState.TRAILING);
        Optional<Weights.Regulator> regulator = loadCase.weights().flatMap(Weights::regulator);
        if (!loadCase.isKnown() || regulator.isEmpty()) {
            return Optional.empty();
        }
        List<LimitedPlace> met = new LimitsCoverage(route).touching(fromM, toM, lengthM);
        List<WeightLimits> sets = new ArrayList<>();
        if (!new LimitsCoverage(route).replaced(fromM, toM, lengthM)) {
            sets.add(route.limits().orElseGet(WeightLimits::federal));
        }
        met.forEach(p -> p.limits().ifPresent(sets::add));
        LoadJudge judge = new LoadJudge(loadCase);
        if (met.stream().anyMatch(p -> p.limits().isEmpty())
                || judge.unknownUnder(sets).isPresent()) {
            return Optional.empty();
        }
        LoadWindow window = LoadSheets.regulatorWindow(loadCase, judge, sets);
        GaugeChart chart = new GaugeChart(
                loadCase.weights().orElseThrow().gauges().booster().orElseThrow());
        return Optional.of(window.allowed()
                .map(r -> new RegulatorRange(
                        LoadSheets.pressure(chart, r.from()), LoadSheets.pressure(chart, r.to()), null))
                .orElseGet(() -> new RegulatorRange(
                        null,
                        null,
                        window.conflict()
                                .map(c -> LoadSheets.conflict(judge, c, "on the booster"))
                                .orElseThrow())));
    }

    /** Whether a setting keeps every limit; a hair of rounding is kept. */
    public boolean holds(double setPa) {
        return leastPa != null && setPa >= leastPa - 1 && setPa <= mostPa + 1;
    }
}
