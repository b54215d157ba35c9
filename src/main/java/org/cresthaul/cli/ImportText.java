package org.cresthaul.cli;

import java.util.List;
import java.util.Locale;
import org.cresthaul.exchange.ImportPreview;
import org.cresthaul.exchange.osm.MapCandidate;
import org.cresthaul.exchange.track.TrackNote;
import org.cresthaul.units.UnitSystem;

/** What an import has found, as text. */
final class ImportText {
    private final PrintedFigures figures;

    ImportText(UnitSystem units) {
        figures = new PrintedFigures(units);
    }

    /** @param written whether the route is written as well */
    String of(ImportPreview preview, boolean written) {
        StringBuilder text = new StringBuilder();
        text.append("ROUTE ")
                .append(preview.name())
                .append("  ")
                .append(figures.chainage(preview.lengthM()))
                .append('\n');
        for (ImportPreview.Source source : preview.files()) {
            text.append("  from ")
                    .append(source.file())
                    .append(": ")
                    .append(source.format())
                    .append(", ")
                    .append(source.points())
                    .append(" points")
                    .append(source.places() == 0 ? "" : ", " + source.places() + " marked places")
                    .append('\n');
        }
        text.append("  ")
                .append(preview.pointsKept())
                .append(" of ")
                .append(preview.pointsRead())
                .append(" points kept")
                .append(
                        preview.withinM() > 0
                                ? "; left-out points lie within " + preview.withinM() + " m of the line"
                                : "")
                .append(".\n");
        leftOut(preview.leftOut(), text);
        legs(preview.legs(), text);
        notes(preview, text);
        places(preview.places(), text);
        turns(preview.turns(), text);
        candidates(preview, text);
        rasters(preview.rasters(), text);
        text.append("\nNothing here is surveyed, and nothing of it is clear.")
                .append(written ? "\n" : " Nothing was written: name a file with --out.\n");
        return text.toString();
    }

    private static void leftOut(List<ImportPreview.LeftOut> files, StringBuilder text) {
        if (files.isEmpty()) {
            return;
        }
        text.append("\nFILES LEFT OUT\n");
        files.forEach(f -> text.append(Words.wrapped(
                f.file() + ": " + f.message() + " " + f.remedy() + " [" + f.code() + "]", "  ", ReportText.WIDTH)));
    }

    private void legs(List<ImportPreview.Leg> legs, StringBuilder text) {
        text.append("\nLEGS\n");
        TextTable table = new TextTable("  ");
        legs.forEach(l -> table.add(figures.chainage(l.fromM()), figures.chainage(l.toM()), l.name()));
        text.append(table.text());
    }

    private static void notes(ImportPreview preview, StringBuilder text) {
        for (TrackNote.Done done : TrackNote.Done.values()) {
            List<TrackNote> notes =
                    preview.notes().stream().filter(n -> n.done() == done).toList();
            if (!notes.isEmpty()) {
                text.append('\n').append(done.word().toUpperCase(Locale.ROOT)).append('\n');
            }
            for (TrackNote note : notes) {
                String place = note.file() + (note.line() > 0 ? ", line " + note.line() : "");
                text.append(Words.wrapped(
                        place + ": " + note.message() + " [" + note.code() + "]", "  ", ReportText.WIDTH));
            }
        }
    }

    private void places(List<ImportPreview.PlaceOnLine> places, StringBuilder text) {
        if (places.isEmpty()) {
            return;
        }
        text.append("\nMARKED PLACES\n");
        TextTable table = new TextTable("  ");
        for (ImportPreview.PlaceOnLine place : places) {
            table.add(
                    place.id() == null ? "-" : place.id(),
                    place.chainageM() == null
                            ? Math.round(place.offsetM()) + " m off, left out"
                            : figures.chainage(place.chainageM()),
                    place.name());
        }
        text.append(table.text());
    }

    private void rasters(List<ImportPreview.RasterUse> rasters, StringBuilder text) {
        if (rasters.isEmpty()) {
            return;
        }
        text.append("\nHEIGHTS, sketches of the road and no survey\n");
        for (ImportPreview.RasterUse r : rasters) {
            String use = r.sketches() == 0
                    ? "no open candidate is sketched from it"
                    : r.sketches() + (r.sketches() == 1 ? " place sketched" : " places sketched") + ", cells up to "
                            + figures.distance(r.spacingM()) + " apart"
                            + (r.tooCoarse()
                                    ? ": too coarse to show the hump of a crossing, so it orders nothing"
                                    : "");
            text.append(Words.wrapped(
                    r.file() + ": " + use
                            + (r.without() == 0
                                    ? ""
                                    : "; no usable heights at " + r.without()
                                            + (r.without() == 1 ? " place" : " places"))
                            + ". " + r.told(),
                    "  ",
                    ReportText.WIDTH));
        }
    }

    private void candidates(ImportPreview preview, StringBuilder text) {
        if (preview.map() == null) {
            return;
        }
        text.append("\nCANDIDATES FROM THE MAP ").append(preview.map().file()).append(", not surveyed\n");
        text.append("  The tracks lie within ")
                .append(figures.distance(preview.map().farthestM()))
                .append(" of the line along its roads; ")
                .append(figures.distance(preview.map().offRoadM()))
                .append(" of the line lie on none.\n");
        TextTable table = new TextTable("  ");
        for (ImportPreview.Candidate c : preview.candidates()) {
            boolean limit = c.kind() == MapCandidate.Kind.LIMIT;
            table.add(
                    c.kind() == MapCandidate.Kind.OFF_MAP
                            ? figures.chainage(c.fromM()) + " to " + figures.chainage(c.toM())
                            : figures.chainage(c.chainageM()),
                    c.status() + (c.doubtful() ? ", doubtful" : ""),
                    c.kind().word(),
                    c.name() + (limit ? ": " + c.raw() + (c.value() == null ? " (cannot be used)" : "") : ""),
                    c.object());
        }
        text.append(table.text());
        text.append("  ").append(preview.map().attribution()).append('\n');
        if (!preview.missing().isEmpty()) {
            text.append("\nCANDIDATES NOT FOUND IN THE MAP NOW, kept as they are\n");
            TextTable kept = new TextTable("  ");
            preview.missing().forEach(m -> kept.add(m.id(), m.state(), m.name(), m.object()));
            text.append(kept.text());
        }
    }

    private void turns(List<ImportPreview.Turn> turns, StringBuilder text) {
        if (turns.isEmpty()) {
            return;
        }
        text.append("\nTIGHT TURNS OF THE LINE, not surveyed\n");
        TextTable table = new TextTable("  ");
        turns.forEach(t -> table.add(figures.chainage(t.chainageM()), t.name()));
        text.append(table.text());
    }
}
