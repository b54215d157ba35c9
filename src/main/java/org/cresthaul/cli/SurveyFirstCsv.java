package org.cresthaul.cli;

import java.math.RoundingMode;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.Report;
import org.cresthaul.report.SketchGap;
import org.cresthaul.report.SurveyFirst;
import org.cresthaul.units.RoundedRecords;
import org.cresthaul.units.UnitSystem;

/**
 * What to survey first as a table: one line for each place, in the order to go there. Units and rounding as in
 * {@link ReportCsv}; what is not known is empty.
 */
final class SurveyFirstCsv {
    private static final double INCH_M = 0.0254;
    private static final double MILE_M = 1609.344;

    private final boolean us;

    SurveyFirstCsv(UnitSystem units) {
        us = units == UnitSystem.US_CUSTOMARY;
    }

    String of(Report found) {
        Report report = RoundedRecords.of(found);
        Map<String, HazardFindings> hazards =
                report.hazards().stream().collect(Collectors.toMap(HazardFindings::id, Function.identity()));
        String length = us ? "_in" : "_m";
        CsvTable table = new CsvTable();
        table.line(List.of(
                "order",
                "hazard",
                "name",
                "kind",
                "chainage" + (us ? "_mi" : "_km"),
                "longitude",
                "latitude",
                "landmark",
                "tracks",
                "low_ground_sign",
                "angle_deg",
                "sketch_gap" + length,
                "sketch_spacing" + length,
                "sketch_raster",
                "figure_reported",
                "known_from",
                "route_sha256",
                "rig_sha256",
                "version"));
        report.surveyFirst().places().forEach(p -> table.line(row(report, hazards.get(p.id()), p)));
        return table.text();
    }

    private List<String> row(Report report, HazardFindings hazard, SurveyFirst.PlaceToSurvey place) {
        SketchGap sketch = place.sketch();
        return List.of(
                "" + place.rank(),
                CsvTable.written(place.id()),
                CsvTable.written(place.name()),
                place.kind().word(),
                PrintedFigures.fixed(place.chainageM() / (us ? MILE_M : 1000), 3, RoundingMode.HALF_UP),
                degrees(hazard.lonLat().get(0)),
                degrees(hazard.lonLat().get(1)),
                place.landmark() == null ? "" : CsvTable.written(place.landmark()),
                place.tracks() == null ? "" : "" + place.tracks(),
                !place.kind().isCrossedByRails() ? "" : place.lowGroundSign() ? "yes" : "none recorded",
                place.angleRad() == null
                        ? ""
                        : PrintedFigures.fixed(Math.toDegrees(place.angleRad()), 0, RoundingMode.HALF_UP),
                sketch == null || sketch.gapM() == null ? "" : length(sketch.gapM(), RoundingMode.FLOOR),
                sketch == null ? "" : length(sketch.spacingM(), RoundingMode.HALF_UP),
                sketch == null ? "" : CsvTable.written(sketch.source()) + (sketch.tooCoarse() ? " (too coarse)" : ""),
                place.reported() ? "yes" : "no",
                CsvTable.written(SurveyFirstText.knownFrom(place)),
                report.route().sha256(),
                report.rig().sha256(),
                report.version());
    }

    /** About a tenth of a meter. */
    private static String degrees(double value) {
        return PrintedFigures.fixed(value, 6, RoundingMode.HALF_UP);
    }

    private String length(double meters, RoundingMode rounding) {
        return PrintedFigures.fixed(Math.rint(meters / (us ? INCH_M : 1) * 1e9) / 1e9, us ? 2 : 4, rounding);
    }
}
