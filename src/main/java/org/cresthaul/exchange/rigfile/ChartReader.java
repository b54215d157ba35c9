package org.cresthaul.exchange.rigfile;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.exchange.json.JsonQuantities;
import org.cresthaul.rig.AirSpring;
import org.cresthaul.rig.ChartPoints;
import org.cresthaul.units.Problems;

/** Reads the chart of a gauge: pressure against the load of one axle, by points or by an air spring on an arm. */
final class ChartReader {
    static final int MOST_CHART_POINTS = 100;

    private ChartReader() {}

    /** The chart; empty when a problem was added. */
    static Optional<ChartPoints> read(JsonFields chart) {
        Problems problems = chart.problems();
        int before = problems.count();
        double accuracy = chart.grade("accuracy", 0, WeightsReader.MOST_ACCURACY);
        Optional<JsonFields> spring = chart.findObject("airSpring");
        List<ChartPoints.Point> points = spring.isPresent() ? springPoints(spring.get()) : listedPoints(chart);
        if (spring.isPresent() && chart.has("points")) {
            chart.problem(
                    "points", "both-charts", "A chart has points or an air spring, not both.", "Keep the points.");
        }
        chart.refuseOthers();
        return problems.count() == before && chart.isThere()
                ? Optional.of(new ChartPoints(points, accuracy))
                : Optional.empty();
    }

    private static List<ChartPoints.Point> springPoints(JsonFields spring) {
        Problems problems = spring.problems();
        int before = problems.count();
        double loadKg = spring.massKg("load", 1, WeightsReader.MOST_KG);
        double pressurePa = spring.pressurePa("pressure");
        double toSpringM = spring.lengthM("pivotToSpring", WeightsReader.ARM);
        double toAxleM = spring.lengthM("pivotToAxle", WeightsReader.ARM);
        double unsprungKg = spring.massKg("unsprung", 0, WeightsReader.MOST_KG);
        double mostPa = spring.pressurePa("upTo");
        spring.refuseOthers();
        if (pressurePa == 0 || mostPa == 0) {
            spring.problem(
                    pressurePa == 0 ? "pressure" : "upTo",
                    "out-of-range",
                    "A pressure of nothing carries nothing.",
                    "Give the pressure of the maker's table, and the highest one of the gauge.");
        }
        if (problems.count() > before || !spring.isThere()) {
            return List.of();
        }
        AirSpring air = AirSpring.of(loadKg, pressurePa);
        return List.of(
                new ChartPoints.Point(0, unsprungKg),
                new ChartPoints.Point(mostPa, air.axleKg(mostPa, toSpringM / toAxleM, unsprungKg)));
    }

    private static List<ChartPoints.Point> listedPoints(JsonFields chart) {
        Problems problems = chart.problems();
        List<ChartPoints.Point> points = new ArrayList<>();
        List<JsonNode> items = chart.items("points", 2, MOST_CHART_POINTS);
        double lastPa = Double.NaN;
        double lastKg = Double.NaN;
        for (int i = 0; i < items.size(); i++) {
            String at = chart.pointer("points") + "/" + i;
            JsonNode item = items.get(i);
            if (!item.isArray() || item.size() != 2) {
                problems.add(
                        "wrong-type",
                        "A point of a chart is a pressure and a load.",
                        at,
                        "Write it as in [\"55 psi\", \"17,500 lb\"].");
                continue;
            }
            double pressurePa = JsonQuantities.pressurePa(item.get(0), at + "/0", "pressure", problems);
            double loadKg = JsonQuantities.massKg(item.get(1), at + "/1", "load", 0, WeightsReader.MOST_KG, problems);
            if (pressurePa <= lastPa || loadKg <= lastKg) {
                problems.add(
                        "not-monotone",
                        "The chart does not rise here: " + (pressurePa <= lastPa ? "the pressure" : "the load")
                                + " is not above that of the point before.",
                        at,
                        "List the points from the lowest pressure to the highest; the load must rise with it.");
            }
            lastPa = Double.isNaN(pressurePa) ? lastPa : pressurePa;
            lastKg = Double.isNaN(loadKg) ? lastKg : loadKg;
            if (Double.isFinite(pressurePa) && Double.isFinite(loadKg)) {
                points.add(new ChartPoints.Point(pressurePa, loadKg));
            }
        }
        return points;
    }
}
