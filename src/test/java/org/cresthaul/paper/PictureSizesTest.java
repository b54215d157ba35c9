package org.cresthaul.paper;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.PDFGraphicsStreamEngine;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.cresthaul.route.HazardKind;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** How large pictures and what is lettered in them are on paper, read from the PDF. */
class PictureSizesTest {
    /** Small print of a contract is set in 6 pt; an arm's length from a driver's eyes it takes more. */
    private static final double LEAST_LETTERING_PT = 6.5;

    @ParameterizedTest
    @EnumSource
    void everyLetterCanBeRead(PaperSample sample) throws Exception {
        for (PaperSize size : PaperSize.values()) {
            assertLettersCanBeRead(sample.sheetPdf(size), "run sheet, " + size);
            assertLettersCanBeRead(sample.statementPdf(size), "statement, " + size);
        }
    }

    private static void assertLettersCanBeRead(byte[] pdf, String what) throws IOException {
        List<String> small = new ArrayList<>();
        int[] letters = new int[1];
        try (PDDocument document = Loader.loadPDF(pdf)) {
            new PDFTextStripper() {
                @Override
                protected void writeString(String text, List<TextPosition> positions) {
                    letters[0] += positions.size();
                    positions.stream()
                            // A question mark is the sign of what is not known, drawn as large as its symbol.
                            .filter(p -> !text.equals("?") && p.getYScale() < LEAST_LETTERING_PT - 0.005)
                            .forEach(p -> small.add(p.getUnicode() + " " + p.getYScale() + " in " + text));
                }
            }.getText(document);
        }
        assertTrue(letters[0] > 2000, what + ": " + letters[0] + " letters");
        assertEquals(List.of(), small, what);
    }

    /**
     * The text between the frames is as wide as the sheet less twice 41 pt. A corner is drawn across it, as far as a
     * third of the sheet's height allows: three quarters of that width at least, where before it took a quarter.
     */
    @ParameterizedTest
    @EnumSource(mode = EnumSource.Mode.EXCLUDE, names = "ALDER_COUNTY")
    void cornersUseTheSheetsWidth(PaperSample sample) throws Exception {
        long corners = sample.legs().stream()
                .flatMap(l -> l.entries().stream())
                .filter(e -> e.kind() == HazardKind.CORNER)
                .count();
        assertTrue(corners > 0, "corners on the way: " + corners);
        for (PaperSize size : PaperSize.values()) {
            double widthPt = size.widthPt() - 2 * 41;
            List<Rectangle2D> figures = figures(sample.sheetPdf(size));
            List<Rectangle2D> wide =
                    figures.stream().filter(f -> f.getWidth() >= 0.74 * widthPt).toList();
            assertEquals(corners, wide.size(), size + ": " + figures);
            for (Rectangle2D figure : figures) {
                assertTrue(figure.getHeight() <= size.heightPt() / 3 + 0.1, size + ": " + figure);
                assertTrue(figure.getWidth() <= widthPt + 0.1, size + ": " + figure);
            }
        }
    }

    /** The boxes that figures are clipped to; symbols and rules are none. */
    private static List<Rectangle2D> figures(byte[] pdf) throws IOException {
        List<Rectangle2D> figures = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            for (PDPage page : document.getPages()) {
                new Clips(page, figures).processPage(page);
            }
        }
        return figures;
    }

    private static final class Clips extends PDFGraphicsStreamEngine {
        private final List<Rectangle2D> clips;
        private final List<Point2D> corners = new ArrayList<>();
        private boolean figure;

        Clips(PDPage page, List<Rectangle2D> clips) {
            super(page);
            this.clips = clips;
        }

        @Override
        public void beginMarkedContentSequence(COSName tag, org.apache.pdfbox.cos.COSDictionary properties) {
            figure = "Figure".equals(tag.getName());
        }

        @Override
        public void appendRectangle(Point2D p0, Point2D p1, Point2D p2, Point2D p3) {
            corners.clear();
            corners.addAll(List.of(p0, p2));
        }

        @Override
        public void clip(int windingRule) {
            Rectangle2D box = new Rectangle2D.Double();
            box.setFrameFromDiagonal(corners.get(0), corners.get(1));
            if (figure) {
                clips.add(box);
            }
        }

        @Override
        public void drawImage(PDImage image) {}

        @Override
        public void moveTo(float x, float y) {}

        @Override
        public void lineTo(float x, float y) {}

        @Override
        public void curveTo(float x1, float y1, float x2, float y2, float x3, float y3) {}

        @Override
        public Point2D getCurrentPoint() {
            return new Point2D.Double();
        }

        @Override
        public void closePath() {}

        @Override
        public void endPath() {}

        @Override
        public void strokePath() {}

        @Override
        public void fillPath(int windingRule) {}

        @Override
        public void fillAndStrokePath(int windingRule) {}

        @Override
        public void shadingFill(COSName name) {}
    }
}
