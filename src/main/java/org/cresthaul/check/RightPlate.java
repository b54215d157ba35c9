package org.cresthaul.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.cresthaul.axleload.BoosterBeam;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.Report;
import org.cresthaul.rig.BoosterState;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.LiftState;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.Weights;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.LimitedPlace;
import org.cresthaul.route.Route;

/**
 * The plate to change to where the fitted one is not made for what the regulator sets on the booster, and the stance
 * with it.
 *
 * @param stance with the right plate fitted
 * @param fitted what the rig file says is in
 * @param wanted what must be in; of those whose range holds the load within its accuracy, else at all, the one that
 *     leaves the beams most nearly parallel
 */
public record RightPlate(LevelStance stance, Weights.ShimPlate fitted, Weights.ShimPlate wanted) {
    /** Empty where the fitted plate will do, where no other would, and where nothing is known of it. */
    public static Optional<RightPlate> find(LevelStance stance) {
        Optional<Weights.ShimSet> shims = stance.weights().flatMap(Weights::shims);
        if (shims.isEmpty() || !stance.boosterStates().contains(BoosterState.TRAILING)) {
            return Optional.empty();
        }
        LoadCase loadCase = LoadCase.of(stance, LiftState.DOWN, BoosterState.TRAILING);
        if (!loadCase.isKnown()) {
            return Optional.empty();
        }
        Weights weights = loadCase.weights().orElseThrow();
        double accuracy = Math.hypot(
                weights.accuracy(),
                weights.gauges().booster().map(c -> c.accuracy()).orElse(0.0));
        double kg = loadCase.boosterKg();
        Weights.ShimPlate fitted = shims.get().find(shims.get().fitted()).orElseThrow();
        BoosterBeam beam = new BoosterBeam(shims.get());
        Optional<Weights.ShimPlate> best = shims.get().shims().stream()
                .filter(p -> fit(p, kg, accuracy) > fit(fitted, kg, accuracy))
                .max(Comparator.<Weights.ShimPlate>comparingInt(p -> fit(p, kg, accuracy))
                        .thenComparingDouble(p -> -Math.abs(beam.angleRad(p, kg))));
        return best.map(p -> new RightPlate(with(stance, weights, p), fitted, p));
    }

    /** 2 within its accuracy, 1 at all, 0 not. */
    private static int fit(Weights.ShimPlate plate, double kg, double accuracy) {
        if (kg < plate.leastKg() || kg > plate.mostKg()) {
            return 0;
        }
        return kg * (1 - accuracy) >= plate.leastKg() && kg * (1 + accuracy) <= plate.mostKg() ? 2 : 1;
    }

    private static LevelStance with(LevelStance stance, Weights w, Weights.ShimPlate plate) {
        Weights.ShimSet s = w.shims().orElseThrow();
        Weights changed = new Weights(
                w.accuracy(),
                w.source(),
                w.tractor(),
                w.jeeps(),
                w.trailer(),
                w.gooseneck(),
                w.booster(),
                w.boostersBehind(),
                w.pieces(),
                w.tracks(),
                w.ratings(),
                w.leastBrakedKg(),
                w.gauges(),
                w.regulator(),
                Optional.of(new Weights.ShimSet(plate.name(), s.shims(), s.armM(), s.foldRad(), s.foldKg())),
                w.frontLift());
        return stance.withWeights(changed);
    }

    /** A report as it is with the right plate in: gaps and corners do not depend on it. */
    public Report in(Report report, Route route, Rig rig) {
        RouteLoads loads = new RouteLoads(route, stance);
        List<CheckedConfiguration> configurations = CheckedConfiguration.listOf(rig, stance);
        LevelUnits level = new LevelUnits(rig, stance, report.margins());
        List<HazardFindings> hazards = new ArrayList<>();
        for (HazardFindings h : report.hazards()) {
            Hazard hazard = route.findHazard(h.id()).orElseThrow();
            hazards.add(
                    hazard instanceof LimitedPlace place
                            ? RouteCheck.findings(place, loads, configurations, level)
                            : h);
        }
        return new Report(
                report.cresthaul(),
                report.version(),
                report.route(),
                report.rig(),
                report.margins(),
                report.tape(),
                report.uncertainties(),
                RouteCheck.routeVerdicts(configurations, hazards, loads),
                hazards,
                loads.report(),
                report.reversing(),
                report.cautions(),
                report.surveyFirst());
    }
}
