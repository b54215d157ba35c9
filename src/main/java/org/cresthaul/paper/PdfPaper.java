package org.cresthaul.paper;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToIntFunction;
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
    private static final double GUTTER_PT = 16;
    /** Heights that pictures in a column may have at most. */
    private static final List<Double> PICTURES_PT = List.of(150.0, 130.0, 110.0, 90.0);
    /** Heights that pictures across the page may have at most, as shares of the sheet's. */
    private static final List<Double> WIDE_SHARES = List.of(1.0 / 3, 0.29, 0.25);

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
            Tag tag = root.add("Sect");
            List<PdfFlow.Band> none = List.of();
            Setting own = setting(part, fonts, bodyPt, none);
            if (part.ownPage() || bodies.isEmpty()) {
                bodies.addAll(bodies(part, fonts, tag, bodyPt, own, none));
                continue;
            }
            Body last = bodies.get(bodies.size() - 1);
            Setting below = setting(part, fonts, bodyPt, last.bands);
            Tag unused = new Tag("Sect", null);
            if (bodies(part, fonts, unused, bodyPt, below, last.bands).size()
                    <= bodies(part, fonts, unused, bodyPt, own, none).size()) {
                bodies.remove(bodies.size() - 1);
                List<Body> joined = bodies(part, fonts, tag, bodyPt, below, last.bands);
                bodies.add(new Body(last.title, joined.get(0).bands));
                bodies.addAll(joined.subList(1, joined.size()));
            } else {
                bodies.addAll(bodies(part, fonts, tag, bodyPt, own, none));
            }
        }
        List<Page> pages = new ArrayList<>();
        for (int i = 0; i < bodies.size(); i++) {
            Body body = bodies.get(i);
            List<Placed> placed = new ArrayList<>();
            // The headline is read out on the first page; on the others it is a running head.
            double y = place(placed, head, leftPt(), MARGIN_PT + 6);
            y += 8;
            for (PdfFlow.Band band : body.bands) {
                for (int c = 0; c < band.columns().size(); c++) {
                    place(placed, band.columns().get(c), leftPt() + c * (columnPt() + GUTTER_PT), y);
                }
                y += band.heightPt();
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

    /** How a part is set: heights of pictures at most, and whether what should stand together may be parted. */
    private record Setting(double picturePt, double widePt, boolean parted) {}

    /** What stands between head and foot of a page, in bands under one another. */
    private record Body(String title, List<PdfFlow.Band> bands) {}

    private double columnPt() {
        return (widthPt() - GUTTER_PT) / PdfFlow.COLUMNS;
    }

    /** Of the ways to set a part the first that needs no page more than the tightest does. */
    private Setting setting(Paper.Part part, PdfFonts fonts, double bodyPt, List<PdfFlow.Band> above) {
        List<Setting> settings = new ArrayList<>();
        for (boolean parted : new boolean[] {false, true}) {
            for (double share : WIDE_SHARES) {
                PICTURES_PT.forEach(pt -> settings.add(new Setting(pt, share * size.heightPt(), parted)));
            }
        }
        ToIntFunction<Setting> pages = one ->
                bodies(part, fonts, new Tag("Sect", null), bodyPt, one, above).size();
        int fewest = pages.applyAsInt(settings.get(settings.size() - 1));
        return settings.stream()
                .filter(one -> pages.applyAsInt(one) <= fewest)
                .findFirst()
                .orElseThrow();
    }

    /** @param above what stands on the page that it begins on; nothing on one of its own */
    private List<Body> bodies(
            Paper.Part part, PdfFonts fonts, Tag tag, double bodyPt, Setting setting, List<PdfFlow.Band> above) {
        PdfFilling filling = new PdfFilling(setting.parted);
        PdfLayout across = new PdfLayout(fonts, widthPt(), paper, setting.picturePt, setting.widePt);
        PdfLayout column = new PdfLayout(fonts, columnPt(), paper, setting.picturePt, setting.widePt);
        double leftPt =
                bodyPt - above.stream().mapToDouble(PdfFlow.Band::heightPt).sum();
        List<List<Strip>> wide = filling.filled(across.strips(part, tag), List.of(leftPt, bodyPt));
        PdfFlow flow = new PdfFlow(filling, bodyPt, above, wide);
        for (Paper.Block block : part.flow()) {
            if (block instanceof Paper.Picture p && p.wide()) {
                flow.across(across.flow(List.of(block), tag));
            } else {
                flow.add(column.flow(List.of(block), tag));
            }
        }
        return flow.pages().stream().map(bands -> new Body(part.title(), bands)).toList();
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
