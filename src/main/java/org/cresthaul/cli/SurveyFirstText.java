package org.cresthaul.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.cresthaul.report.HumpLadder;
import org.cresthaul.report.Report;
import org.cresthaul.report.SketchGap;
import org.cresthaul.report.SurveyFirst;

/** What to survey first: one table in order, and how high a rail crossing the combination clears. */
final class SurveyFirstText {
    private static final int SKETCH_COLUMN = 7;
    private static final String SKETCH_NOTE =
            "Sketch gap: the least gap to the ground over the land as an elevation raster has it, at the highest notch of"
                    + " the first axle and booster state. No survey and no verdict: a raster smooths what is shorter than"
                    + " its cells, and a real hump may be worse.";

    private final PrintedFigures figures;

    SurveyFirstText(PrintedFigures figures) {
        this.figures = figures;
    }

    /** Empty where everything is surveyed. */
    String of(Report report) {
        SurveyFirst first = report.surveyFirst();
        if (first.places().isEmpty()) {
            return "";
        }
        StringBuilder text = new StringBuilder(Words.wrapped(
                (first.places().size() == 1
                                ? "This place is"
                                : "These " + first.places().size() + " places are")
                        + " not surveyed, or known only by report. None is clear until it is surveyed.",
                "  ",
                ReportText.WIDTH));
        text.append('\n').append(table(first.places()));
        if (first.hasSketches()) {
            text.append(Words.wrapped(SKETCH_NOTE, "  ", ReportText.WIDTH));
        }
        for (HumpLadder hump : first.humps()) {
            text.append('\n').append(ladder(hump, first.waiting(hump.tracks()), ConfigurationState.listOf(report)));
        }
        return text.toString();
    }

    private String table(List<SurveyFirst.PlaceToSurvey> places) {
        boolean sketched = places.stream().anyMatch(p -> p.sketch() != null);
        TextTable table = new TextTable("  ");
        table.add(row(
                sketched,
                "",
                "",
                "place",
                "kind",
                "at",
                "tracks",
                "low-ground sign",
                "sketch gap",
                "angle",
                "known from"));
        for (SurveyFirst.PlaceToSurvey p : places) {
            boolean crossing = p.kind().isCrossedByRails();
            table.add(row(
                    sketched,
                    "" + p.rank(),
                    p.id(),
                    p.name(),
                    p.kind().spoken(),
                    figures.chainage(p.chainageM()),
                    !crossing ? "" : p.tracks() == null ? "unknown" : "" + p.tracks(),
                    !crossing ? "" : p.lowGroundSign() ? "yes" : "none recorded",
                    p.mayBeSketched() ? sketch(p.sketch()) : "",
                    !crossing ? "" : p.angleRad() == null ? "unknown" : wholeDegrees(p.angleRad()),
                    knownFrom(p)));
        }
        return table.text();
    }

    /** Without the column of sketches where there is none. */
    private static List<String> row(boolean sketched, String... cells) {
        List<String> row = new ArrayList<>(List.of(cells));
        if (!sketched) {
            row.remove(SKETCH_COLUMN);
        }
        return row;
    }

    private String sketch(SketchGap sketch) {
        if (sketch == null) {
            return "no sketch";
        }
        String cells = figures.distance(sketch.spacingM()) + " cells";
        return sketch.tooCoarse()
                ? "too coarse, " + cells
                : (sketch.gapM() == null ? "unknown" : figures.clearance(sketch.gapM())) + ", " + cells;
    }

    private static String wholeDegrees(double radians) {
        return Math.round(Math.toDegrees(radians)) + " deg";
    }

    /** Who says that there is something, and what else is known. */
    static String knownFrom(SurveyFirst.PlaceToSurvey p) {
        List<String> parts = new ArrayList<>();
        parts.add(p.origin() == null ? "the route file" : p.origin().toString());
        if (p.reported()) {
            parts.add("figure reported, not measured");
        }
        if (p.known() != null) {
            parts.add(p.known());
        }
        if (p.sketch() != null) {
            parts.add("sketch from " + p.sketch().source()
                    + (p.sketch().date() == null ? "" : ", " + p.sketch().date()));
        }
        if (p.landmark() != null) {
            parts.add("landmark: " + p.landmark());
        }
        return String.join("; ", parts);
    }

    private String ladder(HumpLadder hump, long waiting, List<ConfigurationState> states) {
        String tracks = hump.tracks() + (hump.tracks() == 1 ? " track" : " tracks");
        StringBuilder text = new StringBuilder(Words.wrapped(
                "Rail crossing of " + tracks + ", " + waiting + " to survey: how far the road may fall within "
                        + figures.distance(hump.overM())
                        + " on both sides, rails and road level over "
                        + figures.distance(hump.planeM())
                        + " between. To compare with; no verdict on any place, and before the error of a survey.",
                "  ",
                ReportText.WIDTH));
        Map<String, List<String>> settings = new LinkedHashMap<>();
        for (ConfigurationState state : states) {
            settings.computeIfAbsent(rungs(hump, state), a -> new ArrayList<>()).add(state.label());
        }
        settings.forEach(
                (rungs, labels) -> text.append(Words.wrapped(String.join("; ", labels), "    ", ReportText.WIDTH))
                        .append(rungs));
        return text.toString();
    }

    private String rungs(HumpLadder hump, ConfigurationState state) {
        List<HumpLadder.Rung> rungs = state.of(hump.rungs());
        TextTable table = new TextTable("      ");
        table.add(row("notch", state.notches(), n -> n));
        table.add(
                row("clear up to", rungs, r -> r.clearM() == null ? "not even level" : figures.clearance(r.clearM())));
        table.add(
                row("contact possible from", rungs, r -> r.contactM() == null ? "-" : figures.clearance(r.contactM())));
        return table.text();
    }

    private static <T> List<String> row(String heading, List<T> values, Function<T, String> cell) {
        List<String> row = new ArrayList<>(List.of(heading));
        values.forEach(v -> row.add(cell.apply(v)));
        return row;
    }
}
