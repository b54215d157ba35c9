package org.cresthaul.paper;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.cresthaul.language.Catalog;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.paper.Paper.Block;
import org.cresthaul.paper.Paper.Cell;
import org.cresthaul.paper.Paper.Column;
import org.cresthaul.paper.Paper.Tone;
import org.cresthaul.report.HumpLadder;
import org.cresthaul.report.SketchGap;
import org.cresthaul.report.SurveyFirst;
import org.cresthaul.units.RoundedFigures;
import org.cresthaul.units.UnitSystem;

/** What to survey first on a paper: one table in order, and the range of humps that the rig clears. */
final class SurveyFirstTable {
    private final SurveyFirst first;
    private final RoundedFigures figures;
    private final Catalog catalog;

    private SurveyFirstTable(SurveyFirst first, UnitSystem units, Catalog catalog) {
        this.first = first;
        figures = new RoundedFigures(units);
        this.catalog = catalog;
    }

    /** Nothing where everything is surveyed. */
    static List<Block> of(SurveyFirst first, UnitSystem units, Catalog catalog) {
        return first.places().isEmpty() ? List.of() : new SurveyFirstTable(first, units, catalog).blocks();
    }

    private String text(Code code) {
        return catalog.text(code);
    }

    private List<Block> blocks() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Paper.Heading(2, text(Code.FIRST_SURVEY)));
        blocks.add(new Paper.Text(Tone.SMALL, text(Code.FIRST_SURVEY_NOTE)));
        List<Column> columns = new ArrayList<>(List.of(
                new Column("", 0.5, true),
                new Column(text(Code.PAPER_AT), 1.2, false),
                new Column(text(Code.FIRST_PLACE), 3.4, false),
                new Column(text(Code.FIRST_TRACKS), 1, false),
                new Column(text(Code.FIRST_SIGN), 1.4, false)));
        if (first.hasSketches()) {
            columns.add(new Column(text(Code.FIRST_SKETCH), 1.6, false));
        }
        columns.add(new Column(text(Code.FIRST_ANGLE), 1, false));
        columns.add(new Column(text(Code.FIRST_KNOWN), 3.6, false));
        blocks.add(new Paper.Table(
                "", columns, first.places().stream().map(this::row).toList()));
        if (first.hasSketches()) {
            blocks.add(new Paper.Text(Tone.SMALL, text(Code.FIRST_SKETCH_NOTE)));
        }
        first.humps().forEach(h -> blocks.add(new Paper.Text(Tone.SMALL, hump(h))));
        return blocks;
    }

    private List<Cell> row(SurveyFirst.PlaceToSurvey p) {
        boolean crossing = p.kind().isCrossedByRails();
        String unknown = text(Code.FIRST_UNKNOWN);
        Sentence origin = p.origin() == null ? Sentence.of(Code.FIRST_ROUTE_FILE) : p.origin();
        List<Cell> row = new ArrayList<>(List.of(
                new Cell("" + p.rank()),
                new Cell(catalog.figure(figures.chainage(p.chainageM()))),
                new Cell(Sentence.of(Code.FIRST_PLACE_KIND)
                        .with("place", p.id() + " " + p.name())
                        .with("kind", Sentence.word(p.kind()))
                        .in(catalog)),
                new Cell(!crossing ? "" : p.tracks() == null ? unknown : "" + p.tracks()),
                new Cell(!crossing ? "" : text(p.lowGroundSign() ? Code.FIRST_YES : Code.FIRST_NONE))));
        if (first.hasSketches()) {
            row.add(new Cell(p.mayBeSketched() ? sketch(p.sketch()) : ""));
        }
        row.add(new Cell(
                !crossing
                        ? ""
                        : p.angleRad() == null
                                ? unknown
                                : catalog.figure(Math.round(Math.toDegrees(p.angleRad())) + " deg")));
        row.add(new Cell(
                (p.reported() ? Sentence.of(Code.FIRST_REPORTED).with("origin", origin) : origin).in(catalog)));
        return row;
    }

    private String sketch(SketchGap sketch) {
        if (sketch == null) {
            return text(Code.FIRST_SKETCH_NONE);
        }
        Sentence told = sketch.tooCoarse()
                ? Sentence.of(Code.FIRST_SKETCH_COARSE)
                : sketch.gapM() == null
                        ? Sentence.of(Code.FIRST_SKETCH_UNKNOWN)
                        : Sentence.of(Code.FIRST_SKETCH_GAP).figure("gap", figures.clearance(sketch.gapM()));
        return told.figure("cells", figures.distance(sketch.spacingM()))
                .with("raster", sketch.source())
                .in(catalog);
    }

    /** Settings by how far the road may fall, those alike together, the least first as they come. */
    private String hump(HumpLadder hump) {
        Map<Sentence, Integer> settings = new LinkedHashMap<>();
        hump.rungs().stream()
                .sorted(java.util.Comparator.comparing(r -> r.clearM() == null ? -1 : r.clearM()))
                .forEach(r -> settings.merge(
                        r.clearM() == null
                                ? Sentence.of(Code.FIRST_LEVEL)
                                : Sentence.of(Code.VERBATIM).figure("text", figures.clearance(r.clearM())),
                        1,
                        Integer::sum));
        List<Sentence> told = settings.entrySet().stream()
                .map(e -> Sentence.of(Code.FIRST_SETTINGS)
                        .with("fall", e.getKey())
                        .with("count", e.getValue()))
                .toList();
        return Sentence.of(hump.tracks() == 1 ? Code.FIRST_HUMP_ONE : Code.FIRST_HUMP)
                .with("tracks", hump.tracks())
                .with("waiting", first.waiting(hump.tracks()))
                .figure("over", figures.distance(hump.overM()))
                .with("settings", Sentence.listed(told, ", "))
                .in(catalog);
    }
}
