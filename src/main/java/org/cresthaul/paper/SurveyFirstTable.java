package org.cresthaul.paper;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.cresthaul.check.HumpLadder;
import org.cresthaul.check.SurveyFirst;
import org.cresthaul.paper.Paper.Block;
import org.cresthaul.paper.Paper.Cell;
import org.cresthaul.paper.Paper.Column;
import org.cresthaul.paper.Paper.Tone;
import org.cresthaul.units.RoundedFigures;
import org.cresthaul.units.UnitSystem;

/** What to survey first on a paper: one table in order, and the range of humps that the rig clears. */
final class SurveyFirstTable {
    private SurveyFirstTable() {}

    /** Nothing where everything is surveyed. */
    static List<Block> of(SurveyFirst first, UnitSystem units) {
        if (first.places().isEmpty()) {
            return List.of();
        }
        RoundedFigures figures = new RoundedFigures(units);
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Paper.Heading(2, "Survey first"));
        blocks.add(
                new Paper.Text(
                        Tone.SMALL,
                        "Not surveyed, or known only by report; none is clear until it is surveyed. In the order to go there."));
        blocks.add(new Paper.Table(
                "",
                List.of(
                        new Column("", 0.5, true),
                        new Column("At", 1.2, false),
                        new Column("Place", 3.4, false),
                        new Column("Tracks", 1, false),
                        new Column("Low-ground sign", 1.4, false),
                        new Column("Angle", 1, false),
                        new Column("Known from", 3.6, false)),
                first.places().stream().map(p -> row(p, figures)).toList()));
        first.humps().forEach(h -> blocks.add(new Paper.Text(Tone.SMALL, hump(h, first, figures))));
        return blocks;
    }

    private static List<Cell> row(SurveyFirst.Place p, RoundedFigures figures) {
        boolean crossing = p.kind().isCrossedByRails();
        return List.of(
                new Cell("" + p.rank()),
                new Cell(figures.chainage(p.chainageM())),
                new Cell(p.id() + " " + p.name() + ", " + p.kind().spoken()),
                new Cell(!crossing ? "" : p.tracks() == null ? "unknown" : "" + p.tracks()),
                new Cell(!crossing ? "" : p.lowGroundSign() ? "yes" : "none recorded"),
                new Cell(
                        !crossing
                                ? ""
                                : p.angleRad() == null ? "unknown" : Math.round(Math.toDegrees(p.angleRad())) + " deg"),
                new Cell((p.origin() == null ? "the route file" : p.origin())
                        + (p.reported() ? "; figure reported, not measured" : "")));
    }

    /** Settings by how far the road may fall, those alike together, the least first as they come. */
    private static String hump(HumpLadder hump, SurveyFirst first, RoundedFigures figures) {
        Map<String, Integer> settings = new LinkedHashMap<>();
        hump.rungs().stream()
                .sorted(java.util.Comparator.comparing(r -> r.clearM() == null ? -1 : r.clearM()))
                .forEach(r -> settings.merge(
                        r.clearM() == null ? "not even a level road" : figures.clearance(r.clearM()), 1, Integer::sum));
        return "Rail crossing of " + hump.tracks() + (hump.tracks() == 1 ? " track, " : " tracks, ")
                + first.waiting(hump.tracks())
                + " to survey. To compare with, no verdict: how far the road may fall within "
                + figures.distance(hump.overM()) + " on both sides, by number of settings: "
                + settings.entrySet().stream()
                        .map(e -> e.getKey() + " (" + e.getValue() + ")")
                        .collect(Collectors.joining(", "))
                + ". Setting by setting: the report.";
    }
}
