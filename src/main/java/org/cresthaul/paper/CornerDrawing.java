package org.cresthaul.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.stream.Stream;
import org.cresthaul.language.Catalog;
import org.cresthaul.language.Code;
import org.cresthaul.language.Letters;
import org.cresthaul.language.Sentence;
import org.cresthaul.paper.Drawing.Point;
import org.cresthaul.paper.Drawing.Shape;
import org.cresthaul.units.RoundedFigures;
import org.cresthaul.view.CornerView;
import org.cresthaul.view.MarkKind;

/**
 * A corner from above: pavement, what the combination sweeps over, its line, and where it stands when it is tightest.
 */
final class CornerDrawing {
    /** A wheel or coupling bent by less counts as straight. */
    private static final double STRAIGHT_RAD = 0.01;

    private static final double EDGE_M = 4;
    private static final double MARK = 7;
    private static final double TICK = 3;
    /** Size of what is lettered: to be read where the picture is three quarters of its size. */
    private static final double LETTER = 9;

    private static final double WIDTH = 530;
    private static final double MOST_HEIGHT = 264;

    private CornerDrawing() {}

    /** @param radiusM of the line; empty where it is not known */
    static Drawing of(CornerView view, OptionalDouble radiusM, RoundedFigures figures, Catalog catalog) {
        List<List<Double>> shown = turning(view);
        double left =
                Math.min(-8, shown.stream().mapToDouble(p -> p.get(0)).min().orElse(-8)) - EDGE_M;
        double right =
                Math.max(8, shown.stream().mapToDouble(p -> p.get(0)).max().orElse(8)) + EDGE_M;
        double low =
                Math.min(-8, shown.stream().mapToDouble(p -> p.get(1)).min().orElse(-8)) - EDGE_M;
        double high =
                Math.max(8, shown.stream().mapToDouble(p -> p.get(1)).max().orElse(8)) + EDGE_M;
        double perM = Math.min(WIDTH / (right - left), MOST_HEIGHT / (high - low));
        Frame frame = new Frame(left - (WIDTH / perM - (right - left)) / 2, high, perM);
        List<Shape> shapes = new ArrayList<>();
        rings(shapes, frame, view.pavement(), Ink.SHADE, Ink.SOFT, 1, false);
        rings(shapes, frame, view.opposing(), Ink.NONE, Ink.TIRE, 0.9, true);
        for (CornerView.SweptView swept : view.swept()) {
            rings(shapes, frame, swept.bodies(), Ink.LOAD, Ink.NONE, 0, false);
        }
        for (CornerView.SweptView swept : view.swept()) {
            rings(shapes, frame, swept.bodies(), Ink.NONE, Ink.TIRE, 0.6, false);
        }
        CornerView.PositionView position = view.positions().get(view.tightest());
        for (int k = 0; k < view.units().size(); k++) {
            unit(shapes, frame, view.units().get(k), position.poses().get(k));
        }
        rings(shapes, frame, view.obstacles(), Ink.LINE, Ink.LINE, 0.8, false);
        for (CornerView.EncroachmentView e : view.encroachments()) {
            rings(shapes, frame, e.rings(), Ink.CONTACT, Ink.CONTACT, 0.8, false);
        }
        List<Point> line = view.lead().stream().map(frame::at).toList();
        shapes.add(new Drawing.Path(List.of(line), false, Ink.NONE, Ink.GUIDE, 1.8, false));
        double height = (high - low) * perM;
        widths(shapes, frame, view, height, m -> catalog.figure(figures.dimension(m)));
        if (view.least().roomM() >= 0) {
            least(
                    shapes,
                    frame,
                    view.least(),
                    catalog.figure(figures.clearance(view.least().roomM())));
        }
        marks(shapes, frame, view, height);
        List<Point> busy = new ArrayList<>(line);
        view.marks().forEach(m -> busy.add(frame.at(m.at())));
        radiusM.ifPresent(r ->
                shapes.addAll(CornerBearings.radius(line, busy, LETTER, "R " + catalog.figure(figures.dimension(r)))));
        // The approach runs to the right: north is its azimuth back from there, a quarter turn from up.
        shapes.addAll(CornerBearings.north(
                line, WIDTH, Math.PI / 2 - view.azimuthRad(), LETTER, catalog.text(Code.MAP_NORTH)));
        shapes.add(border(height));
        return new Drawing(
                WIDTH,
                height,
                Sentence.of(Code.CORNER_ALT).with("place", view.hazard()).in(catalog),
                shapes);
    }

    private static Shape border(double height) {
        return Drawing.area(
                Ink.NONE,
                Ink.SOFT,
                0.8,
                new Point(0.4, 0.4),
                new Point(WIDTH - 0.4, 0.4),
                new Point(WIDTH - 0.4, height - 0.4),
                new Point(0.4, height - 0.4));
    }

    /**
     * Corners of every body from the first wheel over until the last coupling is straight; of all of them where none
     * bends.
     */
    static List<List<Double>> turning(CornerView view) {
        int first = view.positions().size();
        int last = -1;
        for (int i = 0; i < view.positions().size(); i++) {
            CornerView.PositionView p = view.positions().get(i);
            if (Math.abs(p.steerRad()) > STRAIGHT_RAD
                    || p.articulationRad().stream().anyMatch(a -> Math.abs(a) > STRAIGHT_RAD)) {
                first = Math.min(first, i);
                last = i;
            }
        }
        int from = last < 0 ? 0 : first;
        int to = last < 0 ? view.positions().size() - 1 : last;
        List<List<Double>> corners = new ArrayList<>();
        for (int i = from; i <= to; i++) {
            for (int k = 0; k < view.units().size(); k++) {
                List<Double> pose = view.positions().get(i).poses().get(k);
                double c = Math.cos(pose.get(2));
                double s = Math.sin(pose.get(2));
                for (List<Double> b : view.units().get(k).bodies()) {
                    double half = b.get(2);
                    for (double[] at :
                            new double[][] {{b.get(0), half}, {b.get(0), -half}, {b.get(1), half}, {b.get(1), -half}}) {
                        corners.add(List.of(pose.get(0) + at[0] * c - at[1] * s, pose.get(1) + at[0] * s + at[1] * c));
                    }
                }
            }
        }
        return corners;
    }

    /** From the combination to the edge that the least room is measured to. */
    private static void least(List<Shape> shapes, Frame frame, CornerView.LeastView least, String room) {
        Point at = frame.at(least.at());
        Point to = frame.at(least.to());
        shapes.add(Drawing.line(Ink.LINE, 1.6, at, to));
        shapes.add(new Drawing.Circle(at, 3, Ink.PAPER, Ink.LINE, 1.4));
        beyond(shapes, at, to, 14, LETTER, room);
    }

    /** A label beyond the end of a line. */
    private static void beyond(List<Shape> shapes, Point from, Point to, double off, double size, String text) {
        double length = Math.max(1e-9, Math.hypot(to.x() - from.x(), to.y() - from.y()));
        double dx = (to.x() - from.x()) / length;
        double dy = (to.y() - from.y()) / length;
        boolean across = Math.abs(dx) > Math.abs(dy);
        Drawing.Anchor anchor = !across ? Drawing.Anchor.MIDDLE : dx > 0 ? Drawing.Anchor.START : Drawing.Anchor.END;
        double down = across ? size / 3 : dy > 0 ? size * 0.8 : 0;
        shapes.add(new Drawing.Lettering(
                new Point(to.x() + off * dx, to.y() + off * dy + down), anchor, size, false, Ink.LINE, text));
    }

    /** Of the lanes, as far as they are in the picture. */
    private static void widths(
            List<Shape> shapes, Frame frame, CornerView view, double height, DoubleFunction<String> figure) {
        List<CornerView.WidthView> widths = view.widths();
        for (int i = 0; i < widths.size(); i++) {
            CornerView.WidthView width = widths.get(i);
            Point from = frame.at(width.from());
            Point to = frame.at(width.to());
            if (!isInside(from, height) || !isInside(to, height)) {
                continue;
            }
            double length = Math.hypot(to.x() - from.x(), to.y() - from.y());
            double dx = (to.x() - from.x()) / length * TICK;
            double dy = (to.y() - from.y()) / length * TICK;
            shapes.add(Drawing.line(Ink.SOFT, 0.8, from, to));
            for (Point end : List.of(from, to)) {
                shapes.add(Drawing.line(
                        Ink.SOFT, 0.8, new Point(end.x() - dy, end.y() + dx), new Point(end.x() + dy, end.y() - dx)));
            }
            // Beyond the road: of two lanes side by side at the end that is not the other's.
            CornerView.WidthView other = i + (width.own() ? 1 : -1) < widths.size() && i + (width.own() ? 1 : -1) >= 0
                    ? widths.get(i + (width.own() ? 1 : -1))
                    : width;
            boolean turned = other.own() != width.own()
                    && Stream.of(other.from(), other.to())
                            .anyMatch(end -> Math.hypot(
                                            end.get(0) - width.to().get(0),
                                            end.get(1) - width.to().get(1))
                                    < 0.1);
            beyond(shapes, turned ? to : from, turned ? from : to, 2 * TICK, LETTER, figure.apply(width.widthM()));
        }
    }

    private static boolean isInside(Point p, double height) {
        return p.x() > 0 && p.x() < WIDTH && p.y() > 0 && p.y() < height;
    }

    /** Lettered as they are driven; what each letter is stands under the picture. */
    private static void marks(List<Shape> shapes, Frame frame, CornerView view, double height) {
        for (int i = 0; i < view.marks().size(); i++) {
            CornerView.MarkView mark = view.marks().get(i);
            Point at = frame.at(mark.at());
            if (at.x() < MARK || at.x() > WIDTH - MARK || at.y() < MARK || at.y() > height - MARK) {
                continue;
            }
            if (mark.place() != null) {
                shapes.add(Drawing.line(Ink.SOFT, 0.8, at, frame.at(mark.place())));
            }
            shapes.add(new Drawing.Circle(at, MARK, Ink.PAPER, Ink.LINE, 1));
            shapes.add(new Drawing.Lettering(
                    new Point(at.x(), at.y() + LETTER / 3),
                    Drawing.Anchor.MIDDLE,
                    LETTER,
                    true,
                    Ink.LINE,
                    Letters.of(i)));
        }
    }

    /** What the letters of the marks mean, in one sentence; empty without marks. */
    static String marksInWords(CornerView view, Catalog catalog) {
        List<Sentence> marks = new ArrayList<>();
        for (int i = 0; i < view.marks().size(); i++) {
            CornerView.MarkView mark = view.marks().get(i);
            marks.add(Sentence.of(mark.kind() == MarkKind.LANDMARK ? Code.CORNER_MARK_ABREAST : Code.CORNER_MARK)
                    .with("letter", Letters.of(i))
                    .with("mark", mark.words()));
        }
        return marks.isEmpty()
                ? ""
                : Sentence.of(Code.CORNER_MARKS)
                        .with("marks", Sentence.listed(marks, ", "))
                        .in(catalog);
    }

    private record Frame(double leftM, double topM, double perM) {
        Point at(List<Double> p) {
            return at(p.get(0), p.get(1));
        }

        Point at(double x, double y) {
            return new Point((x - leftM) * perM, (topM - y) * perM);
        }
    }

    private static void rings(
            List<Shape> shapes,
            Frame frame,
            List<List<List<Double>>> rings,
            Ink fill,
            Ink stroke,
            double width,
            boolean dashed) {
        if (!rings.isEmpty()) {
            shapes.add(new Drawing.Path(
                    rings.stream().map(r -> r.stream().map(frame::at).toList()).toList(),
                    true,
                    fill,
                    stroke,
                    width,
                    dashed));
        }
    }

    private static void unit(List<Shape> shapes, Frame frame, CornerView.UnitShape unit, List<Double> pose) {
        for (List<Double> b : unit.bodies()) {
            shapes.add(Drawing.area(
                    Ink.STEEL,
                    Ink.LINE,
                    1,
                    corner(frame, pose, b.get(0), b.get(2)),
                    corner(frame, pose, b.get(1), b.get(2)),
                    corner(frame, pose, b.get(1), -b.get(2)),
                    corner(frame, pose, b.get(0), -b.get(2))));
        }
        for (List<Double> t : unit.tires()) {
            for (double side : new double[] {-1, 1}) {
                shapes.add(Drawing.line(
                        Ink.LINE,
                        3,
                        corner(frame, pose, t.get(0) - 0.5, side * (t.get(1) - 0.15)),
                        corner(frame, pose, t.get(0) + 0.5, side * (t.get(1) - 0.15))));
            }
        }
    }

    private static Point corner(Frame frame, List<Double> pose, double ahead, double left) {
        double c = Math.cos(pose.get(2));
        double s = Math.sin(pose.get(2));
        return frame.at(pose.get(0) + ahead * c - left * s, pose.get(1) + ahead * s + left * c);
    }
}
