package org.cresthaul.paper;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.paper.Drawing.Anchor;
import org.cresthaul.paper.Drawing.Point;
import org.cresthaul.paper.Drawing.Shape;
import org.cresthaul.report.Verdict;

/**
 * Verdicts as shapes in a box of 16 by 16, those of the page: they differ in outline and in how much is inked, so that
 * they stay apart in one color. A word always stands beside them.
 */
final class Symbols {
    /** In the symbol of what is not known. */
    static final String QUESTION = "?";

    private Symbols() {}

    /** The symbol, its box's upper left corner at a point, {@code size} wide. */
    static List<Shape> verdict(Verdict verdict, double x, double y, double size) {
        Box box = new Box(x, y, size / 16);
        List<Shape> shapes = new ArrayList<>();
        switch (verdict) {
            case CLEAR ->
                shapes.add(new Drawing.Circle(box.at(8, 8), 6 * box.scale, Ink.PAPER, Ink.LINE, 2 * box.scale));
            case TIGHT -> {
                shapes.add(box.area(Ink.PAPER, 8, 1.2, 14.8, 8, 8, 14.8, 1.2, 8));
                shapes.add(box.line(Ink.LINE, 1.2, 8, 14.8, 8));
            }
            case CONTACT -> {
                shapes.add(box.area(Ink.LINE, 1.5, 1.5, 14.5, 1.5, 14.5, 14.5, 1.5, 14.5));
                shapes.add(box.line(Ink.PAPER, 4.8, 4.8, 11.2, 11.2));
                shapes.add(box.line(Ink.PAPER, 11.2, 4.8, 4.8, 11.2));
            }
            case OUTSIDE_LIMITS -> {
                shapes.add(box.area(Ink.LINE, 1, 2, 15, 2, 8, 15));
                shapes.add(box.line(Ink.PAPER, 5, 5.4, 11, 5.4));
            }
            case LOADS_NOT_KNOWN -> {
                shapes.add(new Drawing.Path(
                        List.of(List.of(box.at(1.8, 1.8), box.at(14.2, 1.8), box.at(14.2, 14.2), box.at(1.8, 14.2))),
                        true,
                        Ink.PAPER,
                        Ink.LINE,
                        1.6 * box.scale,
                        true));
                shapes.add(box.question());
            }
            case NOT_SURVEYED -> {
                List<Point> ring = new ArrayList<>();
                for (int i = 0; i < 24; i++) {
                    ring.add(box.at(8 + 6.2 * Math.cos(i * Math.PI / 12), 8 + 6.2 * Math.sin(i * Math.PI / 12)));
                }
                shapes.add(new Drawing.Path(List.of(ring), true, Ink.PAPER, Ink.LINE, 1.6 * box.scale, true));
                shapes.add(box.question());
            }
        }
        return shapes;
    }

    private record Box(double x, double y, double scale) {
        Point at(double u, double v) {
            return new Point(x + u * scale, y + v * scale);
        }

        private Point[] points(double... uv) {
            Point[] points = new Point[uv.length / 2];
            for (int i = 0; i < points.length; i++) {
                points[i] = at(uv[2 * i], uv[2 * i + 1]);
            }
            return points;
        }

        Shape area(Ink fill, double... uv) {
            return Drawing.area(fill, Ink.LINE, 1.6 * scale, points(uv));
        }

        Shape line(Ink stroke, double... uv) {
            return Drawing.line(stroke, 1.8 * scale, points(uv));
        }

        Shape question() {
            return new Drawing.Lettering(at(8, 11.6), Anchor.MIDDLE, 10 * scale, true, Ink.LINE, QUESTION);
        }
    }
}
