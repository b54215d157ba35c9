package org.cresthaul.view;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.cresthaul.road.PiecewiseLine;
import org.cresthaul.road.RoadProfile;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.LowStructure;
import org.cresthaul.route.Overhead;

/**
 * Heights that somebody has measured, posted or declared at a hazard, for a drawing: points of distance along the road
 * from the hazard and height above the road there, meters. Nothing that is reported, sketched or unknown.
 *
 * @param ground the surveyed line nearest to the middle of the road; null where none is surveyed
 * @param over the underside of what hangs over the road; null where its height is not known
 */
public record SpotHeights(List<List<Double>> ground, List<List<Double>> over) {
    private static final Set<LowStructure.Measured> KNOWN =
            EnumSet.of(LowStructure.Measured.SURVEYED, LowStructure.Measured.POSTED, LowStructure.Measured.DECLARED);

    /** Null where no height is known. */
    public static SpotHeights of(Hazard hazard) {
        Optional<RoadProfile> middle =
                hazard.lines().stream().min(Comparator.comparingDouble(SpotHeights::fromMiddleM));
        double roadM = middle.map(line -> line.heightAt(0)).orElse(0.0);
        List<List<Double>> ground = middle.map(line -> points(line, roadM)).orElse(null);
        List<List<Double>> over = hazard instanceof Overhead overhead ? over(overhead.height(), roadM) : null;
        return ground == null && over == null ? null : new SpotHeights(ground, over);
    }

    /** A line without an offset that is called the center is the middle; any other one comes after it. */
    private static double fromMiddleM(RoadProfile line) {
        return Math.abs(line.offsetM().orElse(line.name().equals("center") ? 0 : Double.MAX_VALUE));
    }

    private static List<List<Double>> over(LowStructure structure, double roadM) {
        if (!KNOWN.contains(structure.measured())) {
            return null;
        }
        if (structure.soffit().isPresent()) {
            return points(structure.soffit().get(), roadM);
        }
        if (structure.clearanceM().isEmpty()) {
            return null;
        }
        LowStructure.Extent extent = structure.extent().orElseThrow();
        double heightM = structure.clearanceM().getAsDouble();
        return List.of(List.of(extent.fromM(), heightM), List.of(extent.toM(), heightM));
    }

    private static List<List<Double>> points(PiecewiseLine line, double roadM) {
        List<List<Double>> points = new ArrayList<>();
        for (int i = 0; i < line.size(); i++) {
            points.add(List.of(line.distanceM(i), line.elevationM(i) - roadM));
        }
        return points;
    }
}
