package org.cresthaul.paper;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.paper.Drawing.Point;
import org.cresthaul.paper.Strip.Mark;
import org.cresthaul.paper.Strip.Tag;

/** Lays a table out: a strip for each row, the head repeated where a page ends. */
final class PdfTable {
    private static final double LEADING = 1.2;
    private static final double GAP_PT = 6;
    private static final double PAD_PT = 2.2;

    private final PdfFonts fonts;
    private final double widthPt;
    private final double sizePt;

    PdfTable(PdfFonts fonts, double widthPt, double bodyPt) {
        this.fonts = fonts;
        this.widthPt = widthPt;
        sizePt = bodyPt * 0.95;
    }

    List<Strip> strips(Paper.Table table, Tag tag) {
        List<Strip> strips = new ArrayList<>();
        Tag tree = tag.add("Table");
        if (!table.caption().isEmpty()) {
            Tag caption = tree.add("Caption");
            fonts.wrapped(table.caption(), true, sizePt, widthPt)
                    .forEach(l -> strips.add(new Strip(
                                    sizePt * LEADING,
                                    List.of(new Strip.Written(0, sizePt, widthPt, sizePt, true, Ink.LINE, l, caption)))
                            .withNext(true)));
        }
        List<Paper.Cell> titles =
                table.columns().stream().map(c -> new Paper.Cell(c.title())).toList();
        boolean headed = titles.stream().anyMatch(t -> !t.text().isEmpty());
        Strip header =
                headed ? row(table.columns(), titles, true, tree.add("TR")).withNext(true) : null;
        if (headed) {
            strips.add(header);
        }
        for (List<Paper.Cell> row : table.rows()) {
            Strip strip = row(table.columns(), row, false, tree.add("TR"));
            strips.add(headed ? strip.under(header.repeated()) : strip);
        }
        strips.add(Strip.space(sizePt * 0.6));
        return strips;
    }

    private Strip row(List<Paper.Column> columns, List<Paper.Cell> cells, boolean head, Tag tree) {
        double all = columns.stream().mapToDouble(Paper.Column::share).sum();
        List<Mark> marks = new ArrayList<>();
        double x = 0;
        int most = 1;
        double size = head ? sizePt * 0.9 : sizePt;
        for (int i = 0; i < columns.size(); i++) {
            Paper.Column column = columns.get(i);
            double cellPt = widthPt * column.share() / all;
            double boxPt = cellPt - (i + 1 < columns.size() ? GAP_PT : 0);
            Paper.Cell cell = cells.get(i);
            double lead = 0;
            if (cell.verdict() != null) {
                lead = size * 1.35;
                marks.add(new Strip.Drawn(
                        x,
                        PAD_PT + size * 0.12,
                        size / 16,
                        new Drawing(16, 16, "", Symbols.verdict(cell.verdict(), 0, 0, 16)),
                        null));
            }
            Tag tag = tree.add(head ? "TH" : "TD");
            List<String> lines = fonts.wrapped(cell.text(), head, size, boxPt - lead);
            for (int k = 0; k < lines.size(); k++) {
                double left = column.right() ? boxPt - fonts.width(lines.get(k), head, size) : lead;
                if (!lines.get(k).isEmpty()) {
                    marks.add(new Strip.Written(
                            x + left,
                            PAD_PT + size + k * size * LEADING,
                            boxPt - left + 0.01,
                            size,
                            head,
                            head ? Ink.SOFT : Ink.LINE,
                            lines.get(k),
                            tag));
                }
            }
            most = Math.max(most, lines.size());
            x += cellPt;
        }
        double heightPt = most * size * LEADING + 2 * PAD_PT;
        marks.add(new Strip.Drawn(
                0,
                heightPt - 1,
                1,
                new Drawing(
                        widthPt,
                        1,
                        "",
                        List.of(Drawing.line(
                                head ? Ink.LINE : Ink.HAIR,
                                head ? 0.9 : 0.5,
                                new Point(0, 0.5),
                                new Point(widthPt, 0.5)))),
                null));
        return new Strip(heightPt, marks);
    }
}
