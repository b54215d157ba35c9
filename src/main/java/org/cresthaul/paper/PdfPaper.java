package org.cresthaul.paper;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.paper.Drawing.Point;
import org.cresthaul.paper.Strip.Tag;

/**
 * A paper as PDF: framed sheets with the headline on top and a title block at the foot of each. The same paper gives
 * the same bytes.
 */
final class PdfPaper {
    /** Nothing is printed farther out. */
    static final double MARGIN_PT = 27;

    private static final double INSET_PT = 14;
    private static final double FOOT_PT = 38;
    private static final double HEAD_SIZE_PT = 11.5;
    private static final int COLUMNS = 2;
    private static final double GUTTER_PT = 16;
    /** Of a page's height: less on the last one and it begins earlier. */
    private static final double LEAST_SHARE = 0.25;
    /** Heights that pictures may have at most: the greatest that needs no page more than the least does. */
    private static final List<Double> PICTURES_PT = List.of(150.0, 130.0, 110.0, 90.0);

    private final Paper paper;
    private final PaperSize size;

    /** A page: its marks placed on the sheet. */
    record Page(List<Placed> placed) {}

    record Placed(double x, double y, Strip.Mark mark) {}

    PdfPaper(Paper paper, PaperSize size) {
        this.paper = paper;
        this.size = size;
    }

    byte[] bytes() {
        try (PDDocument document = new PDDocument();
                ByteArrayOutputStream out = new ByteArrayOutputStream()) {
            PdfFonts fonts = new PdfFonts(document);
            Tag root = new Tag("Document", null);
            List<Page> pages = pages(fonts, root);
            new PdfWriter(document, fonts, size).write(paper, pages, root);
            document.save(out);
            return out.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private double leftPt() {
        return MARGIN_PT + INSET_PT;
    }

    private double widthPt() {
        return size.widthPt() - 2 * leftPt();
    }

    List<Page> pages(PdfFonts fonts, Tag root) {
        List<Strip> head = head(fonts);
        double headPt = head.stream().mapToDouble(Strip::heightPt).sum() + 8;
        double bodyPt = size.heightPt() - 2 * MARGIN_PT - FOOT_PT - headPt - 10;
        List<Body> bodies = new ArrayList<>();
        for (Paper.Part part : paper.parts()) {
            bodies.addAll(bodies(part, fonts, root.add("Sect"), bodyPt, picturesPt(part, fonts, bodyPt)));
        }
        List<Page> pages = new ArrayList<>();
        for (int i = 0; i < bodies.size(); i++) {
            Body body = bodies.get(i);
            List<Placed> placed = new ArrayList<>();
            // The headline is read out on the first page; on the others it is a running head.
            double y = place(placed, head, leftPt(), MARGIN_PT + 6);
            y = place(placed, body.wide, leftPt(), y + 8);
            for (int c = 0; c < body.columns.size(); c++) {
                place(placed, body.columns.get(c), leftPt() + c * (columnPt() + GUTTER_PT), y);
            }
            place(
                    placed,
                    foot(fonts, body.title, i + 1, bodies.size()),
                    leftPt(),
                    size.heightPt() - MARGIN_PT - FOOT_PT);
            pages.add(new Page(placed));
        }
        return pages;
    }

    /** What stands between head and foot of a page: strips as wide as it, and columns under them. */
    private record Body(String title, List<Strip> wide, List<List<Strip>> columns) {}

    private double columnPt() {
        return (widthPt() - GUTTER_PT) / COLUMNS;
    }

    private double picturesPt(Paper.Part part, PdfFonts fonts, double bodyPt) {
        return PICTURES_PT.stream()
                .min(Comparator.comparingInt(pt ->
                        bodies(part, fonts, new Tag("Sect", null), bodyPt, pt).size()))
                .orElseThrow();
    }

    private List<Body> bodies(Paper.Part part, PdfFonts fonts, Tag tag, double bodyPt, double picturePt) {
        List<Strip> wide = new PdfLayout(fonts, widthPt(), paper, picturePt).strips(part, tag);
        List<List<Strip>> pages = filled(wide, List.of(bodyPt));
        List<Body> bodies = new ArrayList<>();
        pages.forEach(p -> bodies.add(new Body(part.title(), p, List.of())));
        if (part.flow().isEmpty()) {
            return bodies;
        }
        double leftPt = bodyPt - height(pages.get(pages.size() - 1));
        List<List<Strip>> columns = filled(
                new PdfLayout(fonts, columnPt(), paper, picturePt).flow(part, tag), List.of(leftPt, leftPt, bodyPt));
        Body last = bodies.remove(bodies.size() - 1);
        for (int c = 0; c < columns.size(); c += COLUMNS) {
            bodies.add(new Body(
                    part.title(),
                    c == 0 ? last.wide : List.of(),
                    columns.subList(c, Math.min(c + COLUMNS, columns.size()))));
        }
        return bodies;
    }

    private double place(List<Placed> placed, List<Strip> strips, double leftPt, double fromY) {
        double y = fromY;
        for (Strip strip : strips) {
            for (Strip.Mark mark : strip.marks()) {
                placed.add(new Placed(leftPt, y, mark));
            }
            y += strip.heightPt();
        }
        return y;
    }

    /** Pages or columns, of which the last takes from the one before it what makes it worth a page. */
    private static List<List<Strip>> filled(List<Strip> strips, List<Double> heightsPt) {
        List<List<Strip>> pages = parted(strips, heightsPt, -1, 0);
        double missingPt = LEAST_SHARE * heightsPt.get(heightsPt.size() - 1) - height(pages.get(pages.size() - 1));
        if (pages.size() < 2 || missingPt <= 0) {
            return pages;
        }
        List<List<Strip>> evened = parted(strips, heightsPt, pages.size() - 2, missingPt);
        return evened.size() > pages.size() ? pages : evened;
    }

    /**
     * Fills pages or columns: strips that belong together go in one where one can hold them.
     *
     * @param heightsPt of the first, the second and so on; the last is that of all further ones
     * @param shorter which of them is left emptier at its foot, by {@code lessPt}; -1 for none
     */
    private static List<List<Strip>> parted(List<Strip> strips, List<Double> heightsPt, int shorter, double lessPt) {
        List<List<Strip>> pages = new ArrayList<>();
        List<Strip> page = new ArrayList<>();
        double used = 0;
        double most = heightsPt.get(heightsPt.size() - 1);
        for (int i = 0; i < strips.size(); ) {
            double heightPt = heightsPt.get(Math.min(pages.size(), heightsPt.size() - 1));
            int end = bundleEnd(strips, i);
            double needed = height(strips.subList(i, end));
            if (needed > most) {
                end = chainEnd(strips, i);
                needed = height(strips.subList(i, end));
            }
            if (used + needed > heightPt - (pages.size() == shorter ? lessPt : 0)
                    && (!page.isEmpty() || heightPt < most)) {
                pages.add(page);
                page = new ArrayList<>();
                used = 0;
                if (heightPt < most && pages.size() < heightsPt.size()) {
                    continue;
                }
                if (strips.get(i).header() != null) {
                    page.add(strips.get(i).header());
                    used = strips.get(i).header().heightPt();
                }
            }
            for (Strip strip : strips.subList(i, end)) {
                if (!(page.isEmpty() && strip.marks().isEmpty())) {
                    page.add(strip);
                    used += strip.heightPt();
                }
            }
            i = end;
        }
        if (!page.isEmpty()) {
            pages.add(page);
        }
        return pages;
    }

    private static double height(List<Strip> strips) {
        return strips.stream().mapToDouble(Strip::heightPt).sum();
    }

    private static int chainEnd(List<Strip> strips, int from) {
        int end = from + 1;
        while (end < strips.size() && strips.get(end - 1).withNext()) {
            end++;
        }
        return end;
    }

    private static int bundleEnd(List<Strip> strips, int from) {
        int end = chainEnd(strips, from);
        while (end < strips.size()
                && strips.get(end - 1).keep() != 0
                && strips.get(end).keep() == strips.get(end - 1).keep()) {
            end = chainEnd(strips, end);
        }
        return end;
    }

    private List<Strip> head(PdfFonts fonts) {
        double pad = paper.drivable() ? 0 : 8;
        List<String> lines = fonts.wrapped(paper.headline(), true, HEAD_SIZE_PT, widthPt() - 2 * pad);
        double heightPt = lines.size() * HEAD_SIZE_PT * 1.22 + 10;
        List<Strip.Mark> marks = new ArrayList<>();
        if (!paper.drivable()) {
            marks.add(new Strip.Drawn(
                    0,
                    0,
                    1,
                    new Drawing(
                            widthPt(),
                            heightPt,
                            "",
                            List.of(Drawing.area(
                                    Ink.CONTACT,
                                    Ink.NONE,
                                    0,
                                    new Point(0, 0),
                                    new Point(widthPt(), 0),
                                    new Point(widthPt(), heightPt),
                                    new Point(0, heightPt)))),
                    null));
        }
        for (int i = 0; i < lines.size(); i++) {
            marks.add(new Strip.Written(
                    pad,
                    5 + HEAD_SIZE_PT * (1 + 1.22 * i),
                    widthPt() - 2 * pad,
                    HEAD_SIZE_PT,
                    true,
                    paper.drivable() ? Ink.LINE : Ink.PAPER,
                    lines.get(i),
                    null));
        }
        return List.of(new Strip(heightPt, marks));
    }

    private List<Strip> foot(PdfFonts fonts, String part, int page, int pages) {
        double small = 7.4;
        double w = widthPt();
        String number = Sentence.of(Code.PAPER_PAGE)
                .with("page", page)
                .with("pages", pages)
                .in(paper.catalog());
        List<Strip.Mark> marks = new ArrayList<>();
        marks.add(new Strip.Drawn(
                0,
                0,
                1,
                new Drawing(w, 1, "", List.of(Drawing.line(Ink.LINE, 0.8, new Point(0, 0.5), new Point(w, 0.5)))),
                null));
        marks.add(new Strip.Written(
                0,
                11,
                w * 0.8,
                9,
                true,
                Ink.LINE,
                fonts.wrapped(paper.title() + ": " + part, true, 9, w * 0.8).get(0),
                null));
        double numberPt = fonts.width(number, true, 9);
        marks.add(new Strip.Written(w - numberPt, 11, numberPt + 0.01, 9, true, Ink.LINE, number, null));
        marks.add(new Strip.Written(
                0,
                20,
                w,
                small,
                false,
                Ink.SOFT,
                fonts.wrapped(paper.subject(), false, small, w).get(0),
                null));
        String imprint = String.join("  ·  ", paper.imprint());
        marks.add(new Strip.Written(
                0,
                28,
                w,
                small,
                false,
                Ink.SOFT,
                fonts.wrapped(imprint, false, small, w).get(0),
                null));
        return List.of(new Strip(FOOT_PT, marks));
    }
}
