package org.cresthaul.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.cresthaul.check.CornerView;
import org.cresthaul.paper.Drawing.Point;
import org.cresthaul.paper.Drawing.Shape;

/** A corner from above: pavement, what the combination sweeps over, its line, and where it stands when it is tightest. */
final class CornerDrawing {
    private static final double REACH_M = 42;
    private static final double WIDTH = 480;
    private static final double MOST_HEIGHT = 330;

    private CornerDrawing() {}

    static Drawing of(CornerView view) {
        List<List<Double>> shown = Stream.concat(view.swept().stream().flatMap(s -> s.bodies().stream()).flatMap(List::stream),
                        view.lead().stream())
                .filter(p -> Math.abs(p.get(0)) <= REACH_M && Math.abs(p.get(1)) <= REACH_M)
                .toList();
        double left = Math.min(-8, shown.stream().mapToDouble(p -> p.get(0)).min().orElse(-8)) - 4;
        double right = Math.max(8, shown.stream().mapToDouble(p -> p.get(0)).max().orElse(8)) + 4;
        double low = Math.min(-8, shown.stream().mapToDouble(p -> p.get(1)).min().orElse(-8)) - 4;
        double high = Math.max(8, shown.stream().mapToDouble(p -> p.get(1)).max().orElse(8)) + 4;
        double perM = Math.min(WIDTH / (right - left), MOST_HEIGHT / (high - low));
        Frame frame = new Frame(left - (WIDTH / perM - (right - left)) / 2, high, perM);
        List<Shape> shapes = new ArrayList<>();
        rings(shapes, frame, view.pavement(), Ink.SHADE, Ink.SOFT, 1, false);
        rings(shapes, frame, view.opposing(), Ink.NONE, Ink.TYRE, 0.9, true);
        for (CornerView.SweptView swept : view.swept()) {
            rings(shapes, frame, swept.bodies(), Ink.LOAD, Ink.NONE, 0, false);
        }
        for (CornerView.SweptView swept : view.swept()) {
            rings(shapes, frame, swept.bodies(), Ink.NONE, Ink.TYRE, 0.6, false);
        }
        CornerView.PositionView position = view.positions().get(view.tightest());
        for (int k = 0; k < view.units().size(); k++) {
            unit(shapes, frame, view.units().get(k), position.poses().get(k));
        }
        rings(shapes, frame, view.obstacles(), Ink.LINE, Ink.LINE, 0.8, false);
        for (CornerView.EncroachmentView e : view.encroachments()) {
            rings(shapes, frame, e.rings(), Ink.CONTACT, Ink.CONTACT, 0.8, false);
        }
        shapes.add(new Drawing.Path(List.of(view.lead().stream().map(frame::at).toList()), false, Ink.NONE, Ink.GUIDE, 1.8, false));
        double height = (high - low) * perM;
        shapes.add(Drawing.area(Ink.NONE, Ink.SOFT, 0.8, new Point(0.4, 0.4), new Point(WIDTH - 0.4, 0.4),
                new Point(WIDTH - 0.4, height - 0.4), new Point(0.4, height - 0.4)));
        return new Drawing(WIDTH, height, "Corner " + view.hazard() + " from above: the swept path and the combination where it is tightest",
                shapes);
    }

    private record Frame(double leftM, double topM, double perM) {
        Point at(List<Double> p) {
            return at(p.get(0), p.get(1));
        }

        Point at(double x, double y) {
            return new Point((x - leftM) * perM, (topM - y) * perM);
        }
    }

    private static void rings(List<Shape> shapes, Frame frame, List<List<List<Double>>> rings, Ink fill, Ink stroke, double width,
            boolean dashed) {
        if (!rings.isEmpty()) {
            shapes.add(new Drawing.Path(rings.stream().map(r -> r.stream().map(frame::at).toList()).toList(), true, fill, stroke, width,
                    dashed));
        }
    }

    private static void unit(List<Shape> shapes, Frame frame, CornerView.UnitShape unit, List<Double> pose) {
        for (List<Double> b : unit.bodies()) {
            shapes.add(Drawing.area(Ink.STEEL, Ink.LINE, 1, corner(frame, pose, b.get(0), b.get(2)), corner(frame, pose, b.get(1), b.get(2)),
                    corner(frame, pose, b.get(1), -b.get(2)), corner(frame, pose, b.get(0), -b.get(2))));
        }
        for (List<Double> t : unit.tyres()) {
            for (double side : new double[] {-1, 1}) {
                shapes.add(Drawing.line(Ink.LINE, 3, corner(frame, pose, t.get(0) - 0.5, side * (t.get(1) - 0.15)),
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
