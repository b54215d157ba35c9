package org.cresthaul.cli;

import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.cresthaul.check.Cautions;
import org.cresthaul.language.Sentence;
import org.cresthaul.report.ConfigurationVerdict;
import org.cresthaul.report.CornerFinding;
import org.cresthaul.report.GapFinding;
import org.cresthaul.report.HazardFindings;
import org.cresthaul.report.HumpLadder;
import org.cresthaul.report.LoadFinding;
import org.cresthaul.report.Report;
import org.cresthaul.report.ReportCell;
import org.cresthaul.report.SketchGap;
import org.cresthaul.report.SurveyFirst;
import org.cresthaul.report.Verdict;
import org.cresthaul.units.RoundedRecords;
import org.cresthaul.units.UnitSystem;

/**
 * The report as a table (RFC 4180): one line for each hazard and configuration, with what the report was made from on
 * every line. Lengths are meters, or inches; chainage is kilometers, or miles. Gaps are rounded down, needs and raises
 * up.
 */
final class ReportCsv {
    private static final double INCH_M = 0.0254;
    private static final double POUND_KG = 0.45359237;
    private static final double MILE_M = 1609.344;

    private final boolean us;

    ReportCsv(UnitSystem units) {
        us = units == UnitSystem.US_CUSTOMARY;
    }

    String of(Report found) {
        Report report = RoundedRecords.of(found);
        CsvTable table = new CsvTable();
        table.line(header());
        for (HazardFindings hazard : report.hazards()) {
            for (int i = 0; i < hazard.cells().size(); i++) {
                table.line(row(
                        report,
                        hazard,
                        report.configurations().get(i),
                        hazard.cells().get(i)));
            }
        }
        return table.text();
    }

    private List<String> header() {
        String length = us ? "_in" : "_m";
        String weight = us ? "_lb" : "_kg";
        List<String> names = new ArrayList<>(List.of(
                "hazard",
                "name",
                "kind",
                "chainage" + (us ? "_mi" : "_km"),
                "configuration",
                "axles",
                "booster",
                "notch",
                "verdict",
                "verdict_whole_route"));
        for (String side : new String[] {"ground", "overhead", "units"}) {
            names.addAll(List.of(
                    side + "_verdict",
                    side + "_gap" + length,
                    side + "_needed" + length,
                    side + "_margin" + length,
                    side + "_uncertainty" + length,
                    side + "_unit",
                    side + "_part",
                    side + "_distance" + length,
                    side + "_steer" + length,
                    side + "_line",
                    side + "_beside" + length,
                    side + "_driven" + length,
                    side + "_leveling",
                    side + "_beyond_survey" + length));
        }
        names.addAll(List.of("units_against_unit", "units_against_part"));
        names.addAll(List.of(
                "corner_verdict",
                "corner_room" + length,
                "corner_needed" + length,
                "corner_unit",
                "corner_part",
                "corner_side",
                "corner_against",
                "corner_escorts",
                "corner_radius" + length,
                "corner_offtracking" + length,
                "corner_swept_width" + length,
                "corner_tail_swing" + length,
                "corner_frontal_swing" + length,
                "corner_trails_wide" + length));
        names.addAll(List.of(
                "raise_front" + length,
                "raise_rear" + length,
                "raise_gap" + length,
                "raise_needed" + length,
                "raise_note",
                "speed_at_most" + (us ? "_mph" : "_kmh"),
                "load_rule",
                "load_source",
                "load_axles",
                "load" + weight,
                "load_limit" + weight,
                "load_left" + weight,
                "loads_whole_route",
                "reasons",
                "limits",
                "cautions",
                "survey_rank",
                "survey_tracks",
                "survey_low_ground_sign",
                "survey_angle_deg",
                "survey_sketch_gap" + length,
                "survey_sketch_spacing" + length,
                "survey_sketch_raster",
                "survey_known_from",
                "hump_clear_to" + length,
                "hump_contact_from" + length,
                "stance",
                "route_sha256",
                "limits_sha256",
                "rig_sha256",
                "version"));
        return names;
    }

    private List<String> row(Report report, HazardFindings hazard, ConfigurationVerdict c, ReportCell cell) {
        List<String> row = new ArrayList<>(List.of(
                CsvTable.written(hazard.id()),
                CsvTable.written(hazard.name()),
                hazard.kind().word(),
                PrintedFigures.fixed(hazard.chainageM() / (us ? MILE_M : 1000), 3, RoundingMode.HALF_UP),
                CsvTable.written(c.key()),
                Integer.toString(c.axles()),
                c.booster().word(),
                CsvTable.written(c.notch()),
                cell.verdict().word(),
                c.verdict().word()));
        addGap(row, cell.ground());
        addGap(row, cell.overhead());
        addGap(row, cell.units());
        row.add(cell.units() == null ? "" : cell.units().against().unit());
        row.add(
                cell.units() == null
                        ? ""
                        : CsvTable.written(cell.units().against().part()));
        addCorner(row, cell.corner());
        row.add(cell.raise() == null ? "" : up(cell.raise().frontM()));
        row.add(cell.raise() == null ? "" : up(cell.raise().rearM()));
        row.add(cell.raise() == null ? "" : down(cell.raise().clearanceM()));
        row.add(cell.raise() == null ? "" : up(cell.raise().requiredM()));
        row.add(cell.raiseNote() == null ? "" : CsvTable.written(cell.raiseNote()));
        row.add(speed(hazard, cell));
        addLoad(row, cell.load());
        row.add(c.loads().word());
        row.add(said("; ", cell.reasons()));
        row.add(said("; ", hazard.limits()));
        row.add(said(" ", Cautions.of(hazard, cell)));
        addSurvey(row, report.surveyFirst(), hazard, c);
        row.addAll(List.of(
                CsvTable.written(report.rig().stance()),
                report.route().sha256(),
                Objects.requireNonNullElse(report.route().limitsSha256(), ""),
                report.rig().sha256(),
                report.version()));
        return row;
    }

    /** Where it stands among what to survey first, and at a rail crossing how high a hump this configuration clears. */
    private void addSurvey(List<String> row, SurveyFirst first, HazardFindings hazard, ConfigurationVerdict c) {
        Optional<SurveyFirst.PlaceToSurvey> found =
                first.places().stream().filter(p -> p.id().equals(hazard.id())).findFirst();
        if (found.isEmpty()) {
            row.addAll(Collections.nCopies(10, ""));
            return;
        }
        SurveyFirst.PlaceToSurvey place = found.get();
        row.add("" + place.rank());
        row.add(place.tracks() == null ? "" : "" + place.tracks());
        row.add(!hazard.kind().isCrossedByRails() ? "" : place.lowGroundSign() ? "yes" : "none recorded");
        row.add(
                place.angleRad() == null
                        ? ""
                        : PrintedFigures.fixed(Math.toDegrees(place.angleRad()), 0, RoundingMode.HALF_UP));
        SketchGap sketch = place.sketch();
        row.add(sketch == null || sketch.gapM() == null ? "" : down(sketch.gapM()));
        row.add(sketch == null ? "" : near(sketch.spacingM()));
        row.add(sketch == null ? "" : CsvTable.written(sketch.source()) + (sketch.tooCoarse() ? " (too coarse)" : ""));
        row.add(place.origin() == null ? "" : CsvTable.written(place.origin().toString()));
        Optional<HumpLadder.Rung> rung = first.humps().stream()
                .filter(h -> place.tracks() != null && h.tracks() == place.tracks())
                .flatMap(h -> h.rungs().stream())
                .filter(r -> r.configuration().equals(c.key()))
                .findFirst();
        row.add(rung.map(HumpLadder.Rung::clearM).map(this::down).orElse(""));
        row.add(rung.map(HumpLadder.Rung::contactM).map(this::down).orElse(""));
    }

    /** Rounded down; "crawl" where what is clear is only so at a crawl, empty where speed has no bearing. */
    private String speed(HazardFindings hazard, ReportCell cell) {
        if (!hazard.kind().isSped() || cell.verdict() != Verdict.CLEAR) {
            return "";
        }
        return cell.mostMps() == null
                ? "crawl"
                : PrintedFigures.fixed(cell.mostMps() / (us ? MILE_M : 1000) * 3600, 1, RoundingMode.DOWN);
    }

    private void addGap(List<String> row, GapFinding gap) {
        if (gap == null) {
            row.addAll(Collections.nCopies(14, ""));
        } else {
            row.addAll(List.of(
                    gap.verdict().word(),
                    down(gap.valueM()),
                    up(gap.requiredM()),
                    up(gap.marginM()),
                    up(gap.uncertaintyM()),
                    gap.unit(),
                    CsvTable.written(gap.part()),
                    near(gap.distanceM()),
                    near(gap.steerM()),
                    CsvTable.written(gap.line()),
                    across(gap.besideM()),
                    across(gap.drivenM()),
                    gap.leveling(),
                    up(gap.beyondSurveyM())));
        }
    }

    private String across(Double rightM) {
        return rightM == null ? "" : near(rightM);
    }

    private void addCorner(List<String> row, CornerFinding corner) {
        if (corner == null) {
            row.addAll(Collections.nCopies(14, ""));
            return;
        }
        row.addAll(List.of(
                corner.verdict().word(),
                down(corner.valueM()),
                up(corner.requiredM()),
                corner.unit().word(),
                CsvTable.written(corner.part().word()),
                String.valueOf(corner.side()),
                String.valueOf(corner.against()),
                corner.escorts() ? "needed" : "no",
                near(corner.line().radiusM()),
                up(corner.offtrackingM()),
                up(corner.sweptWidthM()),
                up(corner.tailSwingM()),
                up(corner.frontalSwingM()),
                corner.trailsWideM() == null ? "" : up(corner.trailsWideM())));
    }

    private static String said(String between, List<Sentence> all) {
        return CsvTable.written(all.stream().map(Sentence::toString).collect(Collectors.joining(between)));
    }

    private void addLoad(List<String> row, LoadFinding load) {
        if (load == null) {
            row.addAll(List.of("", "", "", "", "", ""));
        } else {
            row.addAll(List.of(
                    CsvTable.written(load.rule().toString()),
                    CsvTable.written(load.source().toString()),
                    CsvTable.written(load.axles().toString()),
                    weight(load.loadKg(), RoundingMode.HALF_UP),
                    weight(load.limitKg(), RoundingMode.HALF_UP),
                    weight(load.marginKg(), RoundingMode.FLOOR)));
        }
    }

    private String weight(double kilograms, RoundingMode rounding) {
        return PrintedFigures.fixed(Math.rint(kilograms / (us ? POUND_KG : 1) * 1e6) / 1e6, 0, rounding);
    }

    private String down(double meters) {
        return figure(meters, RoundingMode.FLOOR);
    }

    private String up(double meters) {
        return figure(meters, RoundingMode.CEILING);
    }

    private String near(double meters) {
        return figure(meters, RoundingMode.HALF_UP);
    }

    /** To 0.1 mm or 0.01 in, after the noise of binary fractions is off. */
    private String figure(double meters, RoundingMode rounding) {
        double value = Math.rint(meters / (us ? INCH_M : 1) * 1e9) / 1e9;
        return PrintedFigures.fixed(value, us ? 2 : 4, rounding);
    }
}
