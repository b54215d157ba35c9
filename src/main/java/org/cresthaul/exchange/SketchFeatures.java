package org.cresthaul.exchange;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.cresthaul.exchange.raster.ElevationRaster;
import org.cresthaul.exchange.raster.RasterSource;
import org.cresthaul.geometry.StopSignal;
import org.cresthaul.road.PiecewiseLine;
import org.cresthaul.road.SurveyedPoint;
import org.cresthaul.route.Candidate;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.LonLat;
import org.cresthaul.route.Route;
import org.cresthaul.route.RouteLine;
import org.cresthaul.route.Sketch;
import org.cresthaul.units.InputRejected;

/**
 * Draws the road at open candidates as elevation rasters have it: heights along the route line at the raster's own
 * spacing. A sketch orders what to survey first; it is no survey, and no height of a structure.
 */
final class SketchFeatures {
    /** How far to either side, meters: longer than a combination. At most that many cells. */
    private static final double REACH_M = 60;
    /** So much of the road must be known on both sides of a place, meters: where a combination may hang up. */
    private static final double LEAST_REACH_M = 15;
    /** Finer cells are drawn at this spacing, meters: a wheel is about as long. */
    private static final double FINEST_M = 1;

    private final RouteDocument document;
    private final Route route;

    SketchFeatures(RouteDocument document, Route route) {
        this.document = document;
        this.route = route;
    }

    /** What is known of a place until a finer raster comes. */
    private record Drawn(int raster, double spacingM, ObjectNode sketch) {}

    /**
     * Draws what the rasters have, one after the other: what is held at a time is bounded by one. Of several at one
     * place the finest counts.
     *
     * @throws InputRejected when one cannot be tied down, or turns out to be damaged
     */
    List<ImportPreview.RasterUse> add(List<RasterSource> rasters) throws InputRejected {
        List<Hazard> places = route.hazards().stream().filter(this::isSketched).toList();
        Map<String, Drawn> drawn = new LinkedHashMap<>();
        List<String> told = new ArrayList<>();
        int[] without = new int[rasters.size()];
        for (int i = 0; i < rasters.size(); i++) {
            try (ElevationRaster raster = rasters.get(i).open()) {
                told.add(raster.told());
                for (Hazard hazard : places) {
                    StopSignal.current().poll();
                    double spacingM = raster.spacingM(hazard.place().position());
                    List<SurveyedPoint> points =
                            spacingM > 0 ? points(raster, hazard.place().chainageM(), spacingM) : List.of();
                    Drawn before = drawn.get(hazard.place().id());
                    if (points.isEmpty()) {
                        without[i]++;
                    } else if (before == null || spacingM < before.spacingM) {
                        drawn.put(hazard.place().id(), new Drawn(i, spacingM, node(raster, spacingM, points)));
                    }
                }
            }
        }
        drawn.forEach((id, d) -> document.putSketch(id, d.sketch));
        List<ImportPreview.RasterUse> all = new ArrayList<>();
        for (int i = 0; i < rasters.size(); i++) {
            int k = i;
            double[] spacings = drawn.values().stream()
                    .filter(d -> d.raster == k)
                    .mapToDouble(Drawn::spacingM)
                    .toArray();
            double widestM = Arrays.stream(spacings).max().orElse(0);
            all.add(new ImportPreview.RasterUse(
                    rasters.get(i).name(),
                    told.get(i),
                    spacings.length == 0 ? null : (Double) widestM,
                    widestM > Sketch.COARSEST_M,
                    spacings.length,
                    without[i]));
        }
        return List.copyOf(all);
    }

    private boolean isSketched(Hazard hazard) {
        return hazard.kind().isOverGround()
                && route.findCandidate(hazard.place().id())
                        .filter(c -> c.state() == Candidate.State.OPEN)
                        .isPresent();
    }

    /** From the middle out to either side, as far as there are heights; empty where that is not far enough. */
    private List<SurveyedPoint> points(ElevationRaster raster, double chainageM, double spacingM) throws InputRejected {
        double step = Math.max(FINEST_M, spacingM);
        int steps = (int) Math.max(1, Math.floor(REACH_M / step));
        LinkedList<SurveyedPoint> points = new LinkedList<>();
        for (int side : new int[] {1, -1}) {
            for (int k = side < 0 ? 1 : 0; k <= steps; k++) {
                double s = side * k * step;
                double heightM = heightM(raster, chainageM + s);
                if (Double.isNaN(heightM)) {
                    break;
                }
                if (side > 0) {
                    points.addLast(new SurveyedPoint(s, heightM));
                } else {
                    points.addFirst(new SurveyedPoint(s, heightM));
                }
            }
        }
        boolean reaches = points.size() > 2
                && points.getFirst().distanceM() <= -LEAST_REACH_M
                && points.getLast().distanceM() >= LEAST_REACH_M;
        return reaches && isRoad(points) ? List.copyOf(points) : List.of();
    }

    private double heightM(ElevationRaster raster, double chainageM) throws InputRejected {
        RouteLine line = route.line();
        if (chainageM < 0 || chainageM > line.lengthM()) {
            return Double.NaN;
        }
        LonLat at = line.frameAt(chainageM).origin();
        return raster.heightM(at);
    }

    /** No road is as steep as a cliff or an error beside it. */
    private static boolean isRoad(List<SurveyedPoint> points) {
        for (int i = 1; i < points.size(); i++) {
            double rise = points.get(i).elevationM() - points.get(i - 1).elevationM();
            double run = points.get(i).distanceM() - points.get(i - 1).distanceM();
            if (Math.abs(rise / run) > PiecewiseLine.STEEPEST * 0.99) {
                return false;
            }
        }
        return true;
    }

    private static ObjectNode node(ElevationRaster raster, double spacingM, List<SurveyedPoint> points) {
        ObjectNode sketch = JsonNodeFactory.instance.objectNode();
        sketch.put("raster", raster.name()).put("spacing", text(spacingM, 2));
        raster.date().ifPresent(d -> sketch.put("date", d.toString()));
        ArrayNode all = sketch.putArray("points");
        points.forEach(p -> all.addArray().add(text(p.distanceM(), 2)).add(text(p.elevationM(), 3)));
        return sketch;
    }

    private static String text(double meters, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f m", meters);
    }
}
