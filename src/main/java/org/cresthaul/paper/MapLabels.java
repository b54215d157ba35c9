package org.cresthaul.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.cresthaul.paper.Drawing.Anchor;
import org.cresthaul.paper.Drawing.Point;
import org.cresthaul.paper.Drawing.Shape;
import org.locationtech.jts.algorithm.RectangleLineIntersector;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

/** Finds room on a map for what is written there: nothing on anything else, nothing on the line. Not for sharing. */
final class MapLabels {
    /** Width of a letter, and what it reaches above its line, as shares of its size. */
    private static final double WIDE = 0.52;

    private static final double TALL = 0.84;
    /** The places of names around a mark are laid out for this size. */
    private static final double LAID_OUT_FOR = 12;

    private final double size;
    private final double width;
    private final double height;
    private final List<Point> line;
    private final List<double[]> taken = new ArrayList<>();
    private final List<List<Point>> leaders = new ArrayList<>();

    /** @param size of the lettering */
    MapLabels(double width, double height, List<Point> line, double size) {
        this.size = size;
        this.width = width;
        this.height = height;
        this.line = line;
    }

    /** Nothing is written here. */
    void keepFree(double left, double top, double right, double bottom) {
        taken.add(new double[] {left, top, right, bottom});
    }

    /** Beside its mark, where nothing else is written; where all of that is taken, farther off, with a line to it. */
    void label(List<Shape> shapes, Point at, String text, boolean bold) {
        double w = text.length() * size * WIDE + 2;
        double k = size / LAID_OUT_FOR;
        double[][] near = {
            {9, 4 * k},
            {-9 - w, 4 * k},
            {-w / 2, -10},
            {-w / 2, 19 * k},
            {9, -9},
            {9, 17 * k},
            {-9 - w, -9},
            {-9 - w, 17 * k},
            {-w / 2, -23 * k},
            {-w / 2, 32 * k}
        };
        List<double[]> far = farOff(w);
        Optional<double[]> beside =
                Stream.of(near).filter(p -> isFree(at, p, w)).findFirst();
        Optional<double[]> off = beside.isPresent()
                ? Optional.empty()
                : far.stream()
                        .filter(p -> isFree(at, p, w) && isFreeTo(at, p, w))
                        .findFirst()
                        .or(() -> far.stream().filter(p -> isFree(at, p, w)).findFirst());
        double[] best = beside.or(() -> off).orElse(near[0]);
        double x = at.x() + best[0];
        double y = at.y() + best[1];
        if (off.isPresent()) {
            Point end = leaderEnd(at, best, w);
            leaders.add(List.of(at, end));
            shapes.add(Drawing.line(Ink.SOFT, 0.7, at, end));
        }
        taken.add(new double[] {x, y - size * TALL, x + w, y + 2});
        shapes.add(new Drawing.Lettering(new Point(x, y), Anchor.START, size, bold, Ink.LINE, text));
    }

    /** Around a spot that has no mark, where nothing else is drawn; left out where there is no room. */
    Optional<Shape> quietName(Point at, String text) {
        double w = text.length() * size * WIDE + 2;
        double k = size / LAID_OUT_FOR;
        double[][] around = {{-w / 2, 4 * k}, {-w / 2, -8}, {-w / 2, 16 * k}, {6, 4 * k}, {-6 - w, 4 * k}};
        return Stream.of(around)
                .filter(p -> isFree(at, p, w) && !isCrossed(at.x() + p[0], at.y() + p[1], w))
                .findFirst()
                .map(p -> {
                    double x = at.x() + p[0];
                    double y = at.y() + p[1];
                    taken.add(new double[] {x, y - size * TALL, x + w, y + 2});
                    return new Drawing.Lettering(new Point(x, y), Anchor.START, size, false, Ink.SOFT, text);
                });
    }

    /** Whether the route or a line to a name runs through, between its points too. */
    private boolean isCrossed(double x, double y, double w) {
        RectangleLineIntersector box = new RectangleLineIntersector(new Envelope(x - 2, x + w + 2, y - size, y + 4));
        return Stream.concat(Stream.of(line), leaders.stream())
                .anyMatch(path -> IntStream.range(1, path.size())
                        .anyMatch(i -> box.intersects(corner(path.get(i - 1)), corner(path.get(i)))));
    }

    private static Coordinate corner(Point p) {
        return new Coordinate(p.x(), p.y());
    }

    private boolean isFree(Point at, double[] place, double w) {
        double x = at.x() + place[0];
        double y = at.y() + place[1];
        boolean inside = x >= 2 && x + w <= width - 2 && y >= size * TALL + 3 && y <= height - 3;
        return inside
                && taken.stream().noneMatch(t -> x < t[2] && x + w > t[0] && y - size * TALL < t[3] && y + 2 > t[1])
                && !covered(x, y - size * TALL, x + w, y + 2);
    }

    /** Places for a name on either side, nearer ones first. */
    private static List<double[]> farOff(double w) {
        List<double[]> places = new ArrayList<>();
        for (double beside : new double[] {22, 46, 70, 94}) {
            for (double below : new double[] {4, -14, 22, -32, 40, -50, 58}) {
                places.add(new double[] {beside, below});
                places.add(new double[] {-beside - w, below});
            }
        }
        return places;
    }

    private static Point leaderEnd(Point at, double[] place, double w) {
        return new Point(at.x() + (place[0] > 0 ? place[0] - 2 : place[0] + w), at.y() + place[1] - 4);
    }

    /** Whether the line to a name farther off runs over nothing that is written or marked, but its own mark. */
    private boolean isFreeTo(Point at, double[] place, double w) {
        Point end = leaderEnd(at, place, w);
        double length = Math.hypot(end.x() - at.x(), end.y() - at.y());
        for (double s = 9; s < length; s += 2) {
            double x = at.x() + (end.x() - at.x()) * s / length;
            double y = at.y() + (end.y() - at.y()) * s / length;
            if (taken.stream().anyMatch(t -> x > t[0] && x < t[2] && y > t[1] && y < t[3])) {
                return false;
            }
        }
        return true;
    }

    private boolean covered(double x0, double y0, double x1, double y1) {
        return line.stream().anyMatch(p -> p.x() > x0 && p.x() < x1 && p.y() > y0 && p.y() < y1);
    }
}
