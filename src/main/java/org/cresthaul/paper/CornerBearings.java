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
    /** From a lettering to the line and the middle of a mark: more than a mark's radius. */
    private static final double CLEAR = 9;

    private static final double TURN_SHOWS = 60;
    /** Farther from the line nobody would look for its radius. */
    private static final double FARTHEST = 150;

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

    /**
     * What the line's radius is, inside of the turn where the lettering touches neither the line nor a mark, with a
     * line to it; nothing on a line that does not bend.
     *
     * @param busy what must not be lettered over: the line's points, the marks' middles
     */
    static List<Shape> radius(List<Point> line, List<Point> busy, double letterSize, String text) {
        Optional<Point> middle = middleOfTurn(line);
        if (middle.isEmpty()) {
            return List.of();
        }
        Point at = middle.get();
        int i = line.indexOf(at);
        Point before = line.get(awayFrom(line, i, -1));
        Point after = line.get(awayFrom(line, i, 1));
        double toBefore = Math.hypot(before.x() - at.x(), before.y() - at.y());
        double toAfter = Math.hypot(after.x() - at.x(), after.y() - at.y());
        double inX = (before.x() - at.x()) / toBefore + (after.x() - at.x()) / toAfter;
        double inY = (before.y() - at.y()) / toBefore + (after.y() - at.y()) / toAfter;
        double length = Math.max(1e-9, Math.hypot(inX, inY));
        double halfWidth = text.length() * letterSize * 0.3 + CLEAR;
        double halfHeight = letterSize / 2 + CLEAR;
        double off = halfHeight;
        Point label;
        do {
            off += 2;
            label = along(at, inX / length, inY / length, off);
        } while (off < FARTHEST && isOver(label, halfWidth, halfHeight, busy));
        double within = Math.min(
                (halfWidth - CLEAR + 2) / Math.max(1e-9, Math.abs(inX / length)),
                (halfHeight - CLEAR + 2) / Math.max(1e-9, Math.abs(inY / length)));
        return List.of(
                Drawing.line(Ink.GUIDE, 0.6, at, along(at, inX / length, inY / length, off - within)),
                new Drawing.Lettering(
                        new Point(label.x(), label.y() + letterSize / 3),
                        Anchor.MIDDLE,
                        letterSize,
                        false,
                        Ink.GUIDE,
                        text));
    }

    /** The first point of the line that is so far off that the turn shows, to one side; its last one at the least. */
    private static int awayFrom(List<Point> line, int from, int step) {
        int i = from + step;
        while (i + step >= 0
                && i + step < line.size()
                && Math.hypot(
                                line.get(i).x() - line.get(from).x(),
                                line.get(i).y() - line.get(from).y())
                        < TURN_SHOWS) {
            i += step;
        }
        return i;
    }

    private static Point along(Point from, double dx, double dy, double distance) {
        return new Point(from.x() + distance * dx, from.y() + distance * dy);
    }

    private static boolean isOver(Point label, double halfWidth, double halfHeight, List<Point> busy) {
        return busy.stream()
                .anyMatch(p -> Math.abs(p.x() - label.x()) < halfWidth && Math.abs(p.y() - label.y()) < halfHeight);
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
