package org.cresthaul.paper;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.cresthaul.paper.Drawing.Point;
import org.cresthaul.paper.Strip.Tag;

/** A paper as PDF: framed sheets with the headline on top and a title block at the foot of each. The same paper gives the same bytes. */
final class PdfPaper {
    /** Nothing is printed farther out. */
    static final double MARGIN_PT = 27;
    private static final double INSET_PT = 14;
    private static final double FOOT_PT = 38;
    private static final double HEAD_SIZE_PT = 11.5;

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
        try (PDDocument document = new PDDocument(); ByteArrayOutputStream out = new ByteArrayOutputStream()) {
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
        List<List<Strip>> bodies = new ArrayList<>();
        List<String> titles = new ArrayList<>();
        for (Paper.Part part : paper.parts()) {
            Tag tag = root.add("Sect");
            for (List<Strip> body : parted(new PdfLayout(fonts, widthPt(), paper.large()).strips(part, tag), bodyPt)) {
                bodies.add(body);
                titles.add(part.title());
            }
        }
        List<Page> pages = new ArrayList<>();
        for (int i = 0; i < bodies.size(); i++) {
            List<Placed> placed = new ArrayList<>();
            // The headline is read out on the first page; on the others it is a running head.
            double y = place(placed, head, MARGIN_PT + 6);
            place(placed, bodies.get(i), y + 8);
            place(placed, foot(fonts, titles.get(i), i + 1, bodies.size()), size.heightPt() - MARGIN_PT - FOOT_PT);
            pages.add(new Page(placed));
        }
        return pages;
    }

    private double place(List<Placed> placed, List<Strip> strips, double fromY) {
        double y = fromY;
        for (Strip strip : strips) {
            for (Strip.Mark mark : strip.marks()) {
                placed.add(new Placed(leftPt(), y, mark));
            }
            y += strip.heightPt();
        }
        return y;
    }

    /** Fills pages: strips that belong together go on one where one can hold them. */
    private static List<List<Strip>> parted(List<Strip> strips, double heightPt) {
        List<List<Strip>> pages = new ArrayList<>();
        List<Strip> page = new ArrayList<>();
        double used = 0;
        for (int i = 0; i < strips.size(); ) {
            int end = bundleEnd(strips, i);
            double needed = height(strips.subList(i, end));
            if (needed > heightPt) {
                end = chainEnd(strips, i);
                needed = height(strips.subList(i, end));
            }
            if (used + needed > heightPt && !page.isEmpty()) {
                pages.add(page);
                page = new ArrayList<>();
                used = 0;
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
        while (end < strips.size() && strips.get(end - 1).keep() != 0 && strips.get(end).keep() == strips.get(end - 1).keep()) {
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
            marks.add(new Strip.Drawn(0, 0, 1, new Drawing(widthPt(), heightPt, "", List.of(Drawing.area(Ink.CONTACT, Ink.NONE, 0,
                    new Point(0, 0), new Point(widthPt(), 0), new Point(widthPt(), heightPt), new Point(0, heightPt)))), null));
        }
        for (int i = 0; i < lines.size(); i++) {
            marks.add(new Strip.Written(pad, 5 + HEAD_SIZE_PT * (1 + 1.22 * i), widthPt() - 2 * pad, HEAD_SIZE_PT, true,
                    paper.drivable() ? Ink.LINE : Ink.PAPER, lines.get(i), null));
        }
        return List.of(new Strip(heightPt, marks));
    }

    private List<Strip> foot(PdfFonts fonts, String part, int page, int pages) {
        double small = 7.4;
        double w = widthPt();
        String number = "Page " + page + " of " + pages;
        List<Strip.Mark> marks = new ArrayList<>();
        marks.add(new Strip.Drawn(0, 0, 1, new Drawing(w, 1, "", List.of(
                Drawing.line(Ink.LINE, 0.8, new Point(0, 0.5), new Point(w, 0.5)))), null));
        marks.add(new Strip.Written(0, 11, w * 0.8, 9, true, Ink.LINE,
                fonts.wrapped(paper.title() + ": " + part, true, 9, w * 0.8).get(0), null));
        double numberPt = fonts.width(number, true, 9);
        marks.add(new Strip.Written(w - numberPt, 11, numberPt + 0.01, 9, true, Ink.LINE, number, null));
        marks.add(new Strip.Written(0, 20, w, small, false, Ink.SOFT, fonts.wrapped(paper.subject(), false, small, w).get(0), null));
        String imprint = String.join("  ·  ", paper.imprint());
        marks.add(new Strip.Written(0, 28, w, small, false, Ink.SOFT, fonts.wrapped(imprint, false, small, w).get(0), null));
        return List.of(new Strip(FOOT_PT, marks));
    }
}
