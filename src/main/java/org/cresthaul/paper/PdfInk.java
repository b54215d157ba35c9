package org.cresthaul.paper;

import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.cresthaul.paper.Drawing.Point;

/** Puts marks on one page. The PDF's y runs upward from the foot of the sheet; ours runs downward. */
final class PdfInk {
    /** A quarter circle as a Bézier curve: 4/3 (√2 − 1). */
    private static final double QUARTER = 0.5522847498;

    private final PDPageContentStream out;
    private final PdfFonts fonts;
    private final double heightPt;

    PdfInk(PDPageContentStream out, PdfFonts fonts, double heightPt) {
        this.out = out;
        this.fonts = fonts;
        this.heightPt = heightPt;
    }

    /** A thick line within a thin one, as on drawing paper. */
    void frame(double widthPt, double marginPt) throws IOException {
        rectangle(widthPt, marginPt + 0.3, 0.5);
        rectangle(widthPt, marginPt + 3.5, 1.4);
    }

    private void rectangle(double widthPt, double inset, double thick) throws IOException {
        stroke(Ink.LINE);
        out.setLineWidth((float) thick);
        out.addRect((float) inset, (float) inset, (float) (widthPt - 2 * inset), (float) (heightPt - 2 * inset));
        out.stroke();
    }

    void put(PdfPaper.Placed placed) throws IOException {
        if (placed.mark() instanceof Strip.Written w) {
            text(w.text(), w.bold(), w.size(), w.ink(), placed.x() + w.x(), placed.y() + w.y());
        } else if (placed.mark() instanceof Strip.Drawn d) {
            drawing(d.drawing(), d.scale(), placed.x() + d.x(), placed.y() + d.y());
        }
    }

    private void text(String text, boolean bold, double size, Ink ink, double x, double y) throws IOException {
        if (text.isEmpty()) {
            return;
        }
        out.beginText();
        out.setFont(fonts.of(bold), (float) size);
        out.setNonStrokingColor(ink.red(), ink.green(), ink.blue());
        out.newLineAtOffset((float) x, (float) (heightPt - y));
        // Letter by letter where a ligature could begin: its glyph has no letters to be read back, aloud or copied.
        for (String part : text.split("(?<=f)")) {
            out.showText(part);
        }
        out.endText();
    }

    private void drawing(Drawing drawing, double scale, double x, double y) throws IOException {
        out.saveGraphicsState();
        out.addRect(
                (float) x, (float) (heightPt - y - drawing.height() * scale), (float) (drawing.width() * scale), (float)
                        (drawing.height() * scale));
        out.clip();
        out.setLineJoinStyle(1);
        for (Drawing.Shape shape : drawing.shapes()) {
            if (shape instanceof Drawing.Path path) {
                path(path, scale, x, y);
            } else if (shape instanceof Drawing.Circle circle) {
                circle(circle, scale, x, y);
            } else if (shape instanceof Drawing.Lettering l) {
                String text = fonts.printable(l.text());
                double width = fonts.width(text, l.bold(), l.size() * scale);
                double left = x
                        + l.at().x() * scale
                        - switch (l.anchor()) {
                            case START -> 0;
                            case MIDDLE -> width / 2;
                            case END -> width;
                        };
                text(text, l.bold(), l.size() * scale, l.ink(), left, y + l.at().y() * scale);
            }
        }
        out.restoreGraphicsState();
    }

    private void path(Drawing.Path path, double scale, double x, double y) throws IOException {
        for (List<Point> line : path.lines()) {
            for (int i = 0; i < line.size(); i++) {
                float px = (float) (x + line.get(i).x() * scale);
                float py = (float) (heightPt - y - line.get(i).y() * scale);
                if (i == 0) {
                    out.moveTo(px, py);
                } else {
                    out.lineTo(px, py);
                }
            }
            if (path.closed()) {
                out.closePath();
            }
        }
        double width = path.strokeWidth() * scale;
        out.setLineDashPattern(
                path.dashed() ? new float[] {(float) (3 * width), (float) (2 * width)} : new float[0], 0);
        paint(path.fill(), path.stroke(), width);
    }

    private void circle(Drawing.Circle circle, double scale, double x, double y) throws IOException {
        float cx = (float) (x + circle.center().x() * scale);
        float cy = (float) (heightPt - y - circle.center().y() * scale);
        float r = (float) (circle.radius() * scale);
        float q = (float) (r * QUARTER);
        out.moveTo(cx + r, cy);
        out.curveTo(cx + r, cy + q, cx + q, cy + r, cx, cy + r);
        out.curveTo(cx - q, cy + r, cx - r, cy + q, cx - r, cy);
        out.curveTo(cx - r, cy - q, cx - q, cy - r, cx, cy - r);
        out.curveTo(cx + q, cy - r, cx + r, cy - q, cx + r, cy);
        out.closePath();
        out.setLineDashPattern(new float[0], 0);
        paint(circle.fill(), circle.stroke(), circle.strokeWidth() * scale);
    }

    private void paint(Ink fill, Ink stroke, double width) throws IOException {
        if (!fill.isNone()) {
            out.setNonStrokingColor(fill.red(), fill.green(), fill.blue());
        }
        if (!stroke.isNone()) {
            stroke(stroke);
            out.setLineWidth((float) width);
        }
        if (fill.isNone()) {
            out.stroke();
        } else if (stroke.isNone()) {
            out.fillEvenOdd();
        } else {
            out.fillAndStrokeEvenOdd();
        }
    }

    private void stroke(Ink ink) throws IOException {
        out.setStrokingColor(ink.red(), ink.green(), ink.blue());
    }
}
