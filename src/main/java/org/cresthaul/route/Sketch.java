package org.cresthaul.route;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.cresthaul.geometry.Finite;
import org.cresthaul.road.SurveyedPoint;

/**
 * The road at a candidate as an elevation raster has it: no survey, whatever its spacing. It orders what to survey
 * first, and counts nowhere else: a raster shows the land, not the pavement, and smooths whatever is shorter than its
 * cells.
 *
 * @param source the raster, as its file is called
 * @param spacingM how far apart its cells are there, meters
 * @param date as its file has it
 * @param points at the raster's own spacing, along travel from the hazard's point
 */
public record Sketch(String source, double spacingM, Optional<LocalDate> date, List<SurveyedPoint> points) {
    /**
     * From a coarser raster nothing is ordered, meters: the hump of a rail crossing is about 20 m long, and two cells
     * must fall on it. A third of an arc second, 10.3 m, still counts; this program's choice.
     */
    public static final double COARSEST_M = 10.5;

    public Sketch {
        points = List.copyOf(points);
        Finite.requireAtLeast("spacingM", 0, spacingM);
        if (source.isBlank() || points.size() < 2) {
            throw new IllegalArgumentException("a sketch needs its source and two points");
        }
    }

    /** Whether cells are too far apart to show the hump of a crossing at all. */
    public boolean isTooCoarse() {
        return spacingM > COARSEST_M;
    }
}
