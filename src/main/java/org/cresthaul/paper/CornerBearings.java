package org.cresthaul.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.paper.Drawing.Anchor;
import org.cresthaul.paper.Drawing.Point;
import org.cresthaul.paper.Drawing.Shape;

/** What is written on a corner's picture about the whole of it: where north is, and the radius of the line. */
final class CornerBearings {
    private static final double ARROW = 14;
    private static final double ROOM = 28;

    private CornerBearings() {}

    /**
     * An arrow with its letter in the upper corner of the picture that is farther from the line.
     *
     * @param line in the picture
     * @param northRad where north is, clockwise from up
     */
    static List<Shape> north(List<Point> line, double width, double northRad, double letterSize, String letter) {
        Point left = new Point(ROOM, ROOM);
        Point right = new Point(width - ROOM, ROOM);
        Point at = away(line, left) >= away(line, right) ? left : right;
        double dx = Math.sin(northRad);
        double dy = -Math.cos(northRad);
        Point tip = new Point(at.x() + ARROW * dx, at.y() + ARROW * dy);
        List<Shape> shapes = new ArrayList<>();
        shapes.add(Drawing.line(Ink.LINE, 1.2, new Point(at.x() - ARROW * dx, at.y() - ARROW * dy), tip));
        shapes.add(Drawing.line(
                Ink.LINE,
                1.2,
                new Point(tip.x() - 6 * dx + 4 * dy, tip.y() - 6 * dy - 4 * dx),
                tip,
                new Point(tip.x() - 6 * dx - 4 * dy, tip.y() - 6 * dy + 4 * dx)));
        shapes.add(new Drawing.Lettering(
                new Point(tip.x() + 7 * dx, tip.y() + 7 * dy + letterSize / 3),
                Anchor.MIDDLE,
                letterSize,
                true,
                Ink.LINE,
                letter));
        return shapes;
    }

    private static double away(List<Point> line, Point from) {
        return line.stream()
                .mapToDouble(p -> Math.hypot(p.x() - from.x(), p.y() - from.y()))
                .min()
                .orElse(0);
    }

    /** Where half of a line's bending is done; nothing on a line that does not bend. */
    static Optional<Point> middleOfTurn(List<Point> line) {
        double[] bend = new double[line.size()];
        double all = 0;
        for (int i = 1; i < line.size() - 1; i++) {
            double turn = heading(line.get(i), line.get(i + 1)) - heading(line.get(i - 1), line.get(i));
            bend[i] = Math.abs(Math.IEEEremainder(turn, 2 * Math.PI));
            all += bend[i];
        }
        double done = 0;
        for (int i = 1; i < line.size() - 1 && all > 1e-6; i++) {
            done += bend[i];
            if (done >= all / 2 - 1e-9) {
                return Optional.of(line.get(i));
            }
        }
        return Optional.empty();
    }

    private static double heading(Point from, Point to) {
        return Math.atan2(to.y() - from.y(), to.x() - from.x());
    }
}
