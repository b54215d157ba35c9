package org.cresthaul.check;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ForkJoinTask;
import org.cresthaul.geometry.Uncertainty;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Margins;
import org.cresthaul.report.SketchGap;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Rig;
import org.cresthaul.road.Approach;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.road.SurveyedPoint;
import org.cresthaul.route.HazardPlace;
import org.cresthaul.route.LonLat;
import org.cresthaul.route.RailCrossing;
import org.cresthaul.route.Sketch;

/** Finds the least gap over sketches of a road, as if they had been surveyed. */
final class SketchGaps {
    private SketchGaps() {}

    /** For every hazard whose sketch orders a survey. */
    static Map<String, ForkJoinTask<SketchGap>> tasks(Haul haul) {
        Map<String, ForkJoinTask<SketchGap>> tasks = new LinkedHashMap<>();
        SurveyOrder.sketches(haul.route())
                .forEach((id, s) ->
                        tasks.put(id, ForkJoinTask.adapt(() -> of(s, haul.rig(), haul.stance(), haul.margins()))));
        return tasks;
    }

    static Map<String, SketchGap> done(Map<String, ForkJoinTask<SketchGap>> tasks) {
        Map<String, SketchGap> gaps = new LinkedHashMap<>();
        tasks.forEach((id, task) -> gaps.put(id, task.join()));
        return gaps;
    }

    private static SketchGap of(Sketch sketch, Rig rig, LevelStance stance, Margins margins) {
        String date = sketch.date().map(LocalDate::toString).orElse(null);
        if (sketch.isTooCoarse()) {
            return new SketchGap(sketch.source(), sketch.spacingM(), date, true, null, null);
        }
        CheckedConfiguration highest = highest(CheckedConfiguration.listOf(rig, stance));
        Optional<SideCheck.JudgedSide> ground = new HazardCheck(drawn(sketch), rig, stance.withoutWeights(), margins)
                .judge(highest.transport())
                .ground()
                // What a search that had to end has met is no least gap.
                .filter(g -> g.least().proven());
        return new SketchGap(
                sketch.source(),
                sketch.spacingM(),
                date,
                false,
                ground.map(g -> g.gap().valueM()).orElse(null),
                ground.isPresent() ? highest.key() : null);
    }

    /** The highest notch of the first axle and booster state; the first of those that are equal. */
    private static CheckedConfiguration highest(List<CheckedConfiguration> all) {
        CheckedConfiguration best = all.get(0);
        for (CheckedConfiguration one : all) {
            if (one.lift().equals(best.lift())
                    && one.booster() == best.booster()
                    && one.notch().offsetM() > best.notch().offsetM()) {
                best = one;
            }
        }
        return best;
    }

    /** The road as if it had been surveyed so without an error, going on as it ends. */
    private static RailCrossing drawn(Sketch sketch) {
        List<SurveyedPoint> points = sketch.points();
        int last = points.size() - 1;
        RoadProfile road = RoadProfile.of(
                "sketch",
                points,
                Approach.declared(grade(points.get(0), points.get(1)), 0),
                Approach.declared(grade(points.get(last - 1), points.get(last)), 0));
        return new RailCrossing(
                new HazardPlace("sketch", "sketch", Optional.empty(), new LonLat(0, 0), 0, 0),
                Optional.empty(),
                List.of(road),
                Optional.of(new Uncertainty(0, "a sketch, not surveyed")),
                List.of(),
                List.of());
    }

    private static double grade(SurveyedPoint a, SurveyedPoint b) {
        return (b.elevationM() - a.elevationM()) / (b.distanceM() - a.distanceM());
    }
}
