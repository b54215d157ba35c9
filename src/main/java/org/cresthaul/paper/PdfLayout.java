package org.cresthaul.paper;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.language.Catalog;
import org.cresthaul.language.Code;
import org.cresthaul.paper.Drawing.Point;
import org.cresthaul.paper.Strip.Mark;
import org.cresthaul.paper.Strip.Tag;

/** Lays the blocks of a paper out in strips of a given width. */
final class PdfLayout {
    private static final double LEADING = 1.2;
    /** A picture is not made so small that its lettering is smaller. */
    private static final double LEAST_LETTERING_PT = 6.5;

    private final PdfFonts fonts;
    private final double widthPt;
    private final double bodyPt;
    private final double picturePt;
    private final double widePt;
    private final Catalog catalog;
    private int groups;
    private Tag list;

    /**
     * @param picturePt how high a picture in a column is at most
     * @param widePt how high one across the page is at most
     */
    PdfLayout(PdfFonts fonts, double widthPt, Paper paper, double picturePt, double widePt) {
        catalog = paper.catalog();
        this.fonts = fonts;
        this.widthPt = widthPt;
        this.picturePt = picturePt;
        this.widePt = widePt;
        bodyPt = paper.large() ? 9.4 : 8.8;
    }

    List<Strip> strips(Paper.Part part, Tag tag) {
        List<Strip> strips = new ArrayList<>();
        strips.addAll(withNext(text(part.title(), true, bodyPt * 1.75, 0, widthPt, Ink.LINE, tag.add("H1"))));
        strips.add(rule(1.4).withNext(true));
        strips.add(Strip.space(bodyPt * 0.4).withNext(true));
        part.blocks().forEach(b -> strips.addAll(strips(b, tag)));
        return strips;
    }

    /** What follows in columns of this layout's width. */
    List<Strip> flow(List<Paper.Block> blocks, Tag tag) {
        List<Strip> strips = new ArrayList<>();
        blocks.forEach(b -> strips.addAll(strips(b, tag)));
        return strips;
    }

    private List<Strip> strips(Paper.Block block, Tag tag) {
        if (!(block instanceof Paper.Item)) {
            list = null;
        }
        if (block instanceof Paper.Heading h) {
            return heading(h, tag);
        } else if (block instanceof Paper.Text t) {
            return words(t, tag);
        } else if (block instanceof Paper.Item i) {
            return item(i, tag);
        } else if (block instanceof Paper.Milestone m) {
            return milestone(m, tag);
        } else if (block instanceof Paper.Table t) {
            return new PdfTable(fonts, widthPt, bodyPt).strips(t, tag);
        } else if (block instanceof Paper.Picture p) {
            return picture(p, tag);
        } else if (block instanceof Paper.Signatures s) {
            return signatures(s, tag);
        }
        int number = ++groups;
        List<Strip> kept = new ArrayList<>();
        ((Paper.Group) block).blocks().forEach(b -> strips(b, tag).forEach(s -> kept.add(s.kept(number))));
        return kept;
    }

    private List<Strip> heading(Paper.Heading h, Tag tag) {
        double size = h.level() == 2 ? bodyPt * 1.25 : bodyPt * 0.92;
        List<Strip> strips = new ArrayList<>();
        strips.add(Strip.space(bodyPt * (h.level() == 2 ? 0.8 : 0.3)));
        strips.addAll(text(
                h.text(), true, size, 0, widthPt, h.level() == 2 ? Ink.LINE : Ink.GUIDE, tag.add("H" + h.level())));
        if (h.level() == 2) {
            strips.add(rule(0.6));
            strips.add(Strip.space(bodyPt * 0.3));
        }
        return withNext(strips);
    }

    private List<Strip> words(Paper.Text t, Tag tag) {
        boolean small = t.tone() == Paper.Tone.SMALL;
        boolean bold = t.tone() == Paper.Tone.STRONG || t.tone() == Paper.Tone.ALERT;
        Ink ink = small ? Ink.SOFT : t.tone() == Paper.Tone.ALERT ? Ink.CONTACT : Ink.LINE;
        List<Strip> strips =
                new ArrayList<>(text(t.text(), bold, small ? bodyPt * 0.82 : bodyPt, 0, widthPt, ink, tag.add("P")));
        strips.add(Strip.space(bodyPt * 0.22));
        return strips;
    }

    private List<Strip> item(Paper.Item item, Tag tag) {
        if (list == null) {
            list = tag.add("L");
        }
        Tag body = list.add("LI").add("LBody");
        double indent = bodyPt * 1.75;
        List<Strip> strips =
                new ArrayList<>(text(item.shown(), false, bodyPt, indent, widthPt - indent, Ink.LINE, body));
        Strip first = strips.get(0);
        List<Mark> marks = new ArrayList<>(first.marks());
        marks.add(new Strip.Drawn(0, bodyPt * 0.14, bodyPt / 10, box(item.box()), null));
        strips.set(0, new Strip(first.heightPt(), marks).withNext(strips.size() > 1));
        strips.add(Strip.space(bodyPt * 0.3));
        return strips;
    }

    private static Drawing box(Paper.Box box) {
        List<Drawing.Shape> shapes =
                switch (box) {
                    case TICK ->
                        List.of(Drawing.area(
                                Ink.PAPER,
                                Ink.LINE,
                                1.1,
                                new Point(1, 1),
                                new Point(10, 1),
                                new Point(10, 10),
                                new Point(1, 10)));
                    case BARRED -> List.of(Drawing.line(Ink.CONTACT, 1.4, new Point(2, 5.5), new Point(10, 5.5)));
                    case NONE -> List.of(new Drawing.Circle(new Point(5.5, 5.5), 1.5, Ink.LINE, Ink.NONE, 0));
                };
        return new Drawing(11, 11, "", shapes);
    }

    private List<Strip> milestone(Paper.Milestone m, Tag tag) {
        double size = bodyPt * (m.minor() ? 1 : 1.38);
        double at = bodyPt * (m.minor() ? 4.6 : 6.4);
        String word = m.verdict() == null ? "" : Paper.words(m.verdict(), m.blocked(), catalog);
        double wordPt = bodyPt * (fonts.width(word, true, bodyPt) > widthPt / 4 ? 0.8 : 1);
        double verdictPt = word.isEmpty() ? 0 : fonts.width(word, true, wordPt) + bodyPt * 2.2;
        Tag head = tag.add("H2");
        List<Strip> title = text(m.title(), true, size, at, widthPt - at - verdictPt, Ink.LINE, head);
        Strip first = title.get(0);
        List<Mark> marks = new ArrayList<>();
        double baseline = size * 1.02;
        marks.add(written(fonts.printable(m.chainage()), new Type(true, size, Ink.GUIDE), 0, at, baseline, head));
        marks.addAll(first.marks());
        if (m.verdict() != null) {
            double x = widthPt - fonts.width(word, true, wordPt);
            Type type = new Type(true, wordPt, m.blocked() ? Ink.CONTACT : Ink.LINE);
            marks.add(written(word, type, x, widthPt - x, baseline, head));
            marks.add(new Strip.Drawn(
                    x - bodyPt * 1.5,
                    size * 0.2,
                    bodyPt / 14,
                    new Drawing(16, 16, "", Symbols.verdict(m.verdict(), 0, 0, 16)),
                    null));
        }
        title.set(0, new Strip(first.heightPt(), marks));
        List<Strip> strips = new ArrayList<>();
        strips.add(Strip.space(bodyPt * (m.minor() ? 0.5 : 0.9)));
        strips.add(rule(m.minor() ? 0.5 : 1));
        strips.add(Strip.space(bodyPt * 0.25));
        strips.addAll(title);
        return withNext(strips);
    }

    private List<Strip> picture(Paper.Picture p, Tag tag) {
        double widest = Math.min(widthPt / p.drawing().width(), p.wide() ? 1 : 0.55);
        double highest = (p.wide() ? widePt : picturePt) / p.drawing().height();
        double scale = Math.min(
                widest, Math.max(highest, LEAST_LETTERING_PT / p.drawing().leastLettering()));
        double x = (widthPt - p.drawing().width() * scale) / 2;
        double heightPt = p.drawing().height() * scale;
        List<Strip> strips = new ArrayList<>();
        strips.add(Strip.space(bodyPt * 0.4).withNext(true));
        strips.add(new Strip(
                        heightPt + 2,
                        List.of(new Strip.Drawn(
                                x,
                                0,
                                scale,
                                p.drawing(),
                                tag.add("Figure", p.drawing().alt()))))
                .withNext(true));
        strips.addAll(text(p.caption(), false, bodyPt * 0.82, 0, widthPt, Ink.SOFT, tag.add("Caption")));
        strips.add(Strip.space(bodyPt * 0.4));
        int number = ++groups;
        return strips.stream().map(s -> s.kept(number)).toList();
    }

    private List<Strip> signatures(Paper.Signatures s, Tag tag) {
        List<Strip> strips = new ArrayList<>();
        int number = ++groups;
        for (String who : s.who()) {
            double y = bodyPt * 2.6;
            Drawing line = new Drawing(
                    widthPt,
                    2,
                    "",
                    List.of(
                            Drawing.line(Ink.LINE, 0.7, new Point(widthPt * 0.2, 1), new Point(widthPt * 0.68, 1)),
                            Drawing.line(Ink.LINE, 0.7, new Point(widthPt * 0.78, 1), new Point(widthPt, 1))));
            Tag p = tag.add("P");
            strips.add(new Strip(
                            y + 6,
                            List.of(
                                    written(who, new Type(true, bodyPt, Ink.LINE), 0, widthPt * 0.2, y, p),
                                    written(
                                            catalog.text(Code.PAPER_DATE),
                                            new Type(false, bodyPt, Ink.LINE),
                                            widthPt * 0.71,
                                            widthPt * 0.07,
                                            y,
                                            p),
                                    new Strip.Drawn(0, y + 1, 1, line, null)))
                    .kept(number));
        }
        return strips;
    }

    private Strip rule(double thick) {
        return new Strip(
                thick + 1.5,
                List.of(new Strip.Drawn(
                        0,
                        0,
                        1,
                        new Drawing(
                                widthPt,
                                thick + 0.2,
                                "",
                                List.of(Drawing.line(
                                        Ink.LINE, thick, new Point(0, thick / 2), new Point(widthPt, thick / 2)))),
                        null)));
    }

    /** A text in as many strips as it takes lines; a paragraph of few lines is not parted. */
    private List<Strip> text(String text, boolean bold, double size, double x, double boxPt, Ink ink, Tag tag) {
        List<String> lines = fonts.wrapped(text, bold, size, boxPt);
        Type type = new Type(bold, size, ink);
        List<Strip> strips = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            strips.add(new Strip(size * LEADING, List.of(written(lines.get(i), type, x, boxPt, size * 1.02, tag)))
                    .withNext(i + 1 < lines.size() && (lines.size() < 5 || i == 0 || i + 2 == lines.size())));
        }
        return strips;
    }

    /** How letters are set. */
    private record Type(boolean bold, double size, Ink ink) {}

    private static Mark written(String text, Type type, double x, double boxPt, double y, Tag tag) {
        return new Strip.Written(x, y, boxPt, type.size(), type.bold(), type.ink(), text, tag);
    }

    private static List<Strip> withNext(List<Strip> strips) {
        return new ArrayList<>(strips.stream().map(s -> s.withNext(true)).toList());
    }
}
