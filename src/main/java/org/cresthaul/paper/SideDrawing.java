package org.cresthaul.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import org.cresthaul.language.Catalog;
import org.cresthaul.language.Code;
import org.cresthaul.language.Names;
import org.cresthaul.language.Sentence;
import org.cresthaul.paper.Drawing.Anchor;
import org.cresthaul.paper.Drawing.Point;
import org.cresthaul.paper.Drawing.Shape;
import org.cresthaul.view.PassageView;

/** The combination from the right where a passage is tightest: all of it, and enlarged around the least gap. */
final class SideDrawing {
    private static final double WIDTH = 480;
    private static final double REACH_M = 2.4;

    private final PassageView view;
    private final PassageView.PositionView position;
    private final String shown;
    private final boolean overhead;
    private final boolean wire;
    private final Catalog catalog;

    /**
     * @param shown the gap as the paper's text has it
     * @param wire whether what is overhead is a line, with nothing above it
     */
    SideDrawing(PassageView view, boolean overhead, String shown, boolean wire, Catalog catalog) {
        this.catalog = catalog;
        this.view = view;
        this.wire = wire;
        this.overhead = overhead;
        this.shown = shown;
        position = tightest();
    }

    /** Meters to the drawing's units. The road runs to the right, as it is driven. */
    private record Scale(double leftM, double topM, double perM) {
        Point at(double xM, double zM) {
            return new Point((xM - leftM) * perM, (topM - zM) * perM);
        }
    }

    /** Of the side that is shown: the view's own governs over both. */
    private PassageView.PositionView tightest() {
        PassageView.PositionView least = view.positions().get(view.tightest());
        for (PassageView.PositionView p : view.positions()) {
            Double gap = overhead ? p.overheadM() : p.groundM();
            Double before = overhead ? least.overheadM() : least.groundM();
            if (gap != null && (before == null || gap < before)) {
                least = p;
            }
        }
        return least;
    }

    private PassageView.PlaceView place() {
        return overhead ? position.overheadAt() : position.groundAt();
    }

    /** Whether the view has the gap that is to be shown. */
    boolean hasGap() {
        return place() != null;
    }

    Drawing whole() {
        List<Point> truck = truckPoints();
        double left = truck.stream().mapToDouble(Point::x).min().orElseThrow() - 2;
        double right = truck.stream().mapToDouble(Point::x).max().orElseThrow() + 2;
        double groundLow = DoubleStream.iterate(left, x -> x <= right, x -> x + 0.5)
                .map(this::groundZ)
                .min()
                .orElseThrow();
        double top = truck.stream().mapToDouble(Point::y).max().orElseThrow();
        if (view.soffit() != null) {
            top = Math.max(
                    top, view.soffit().stream().mapToDouble(p -> p.get(1)).max().orElse(top) + 0.6);
        }
        Scale scale = new Scale(left, top + 0.5, WIDTH / (right - left));
        double height = (top + 0.5 - groundLow + 0.7) * scale.perM;
        List<Shape> shapes = new ArrayList<>();
        scene(shapes, scale, left, right, groundLow - 2, 0.8);
        Point gap = gapMiddle(scale);
        shapes.add(new Drawing.Circle(gap, 11, Ink.NONE, Ink.CONTACT, 1.3));
        return new Drawing(
                WIDTH,
                height,
                Sentence.of(Code.SIDE_ALT)
                        .with("place", view.hazard())
                        .with("unit", Names.of(place().unit()))
                        .in(catalog),
                shapes);
    }

    Drawing detail() {
        Point at = world(place().unit(), place().xM(), place().hM());
        double gapM = overhead ? position.overheadM() : position.groundM();
        double reach = Math.min(REACH_M, Math.max(0.9, Math.abs(gapM) * 7));
        double middle = at.y() + (overhead ? gapM : -gapM) / 2;
        Scale scale = new Scale(at.x() - reach, middle + reach * 0.24, WIDTH / (2 * reach));
        double height = reach * 0.5 * scale.perM;
        List<Shape> shapes = new ArrayList<>();
        scene(shapes, scale, at.x() - reach, at.x() + reach, middle - reach, 1.2);
        dimension(shapes, scale, at, gapM, height);
        shapes.add(Drawing.area(
                Ink.NONE,
                Ink.SOFT,
                0.8,
                new Point(0.4, 0.4),
                new Point(WIDTH - 0.4, 0.4),
                new Point(WIDTH - 0.4, height - 0.4),
                new Point(0.4, height - 0.4)));
        return new Drawing(
                WIDTH,
                height,
                Sentence.of(Code.DETAIL_ALT)
                        .with("place", view.hazard())
                        .with("gap", shown)
                        .in(catalog),
                shapes);
    }

    private double gapM() {
        return overhead ? position.overheadM() : position.groundM();
    }

    private void dimension(List<Shape> shapes, Scale scale, Point at, double gapM, double height) {
        Point from = scale.at(at.x(), at.y());
        Point to = scale.at(at.x(), at.y() + (overhead ? gapM : -gapM));
        shapes.add(Drawing.line(Ink.CONTACT, 1.6, from, to));
        for (Point end : List.of(from, to)) {
            shapes.add(
                    Drawing.line(Ink.CONTACT, 1.6, new Point(end.x() - 7, end.y()), new Point(end.x() + 7, end.y())));
        }
        String label = shown;
        double y = Math.max(16, Math.min(height - 6, (from.y() + to.y()) / 2 + 5));
        shapes.add(Drawing.area(
                Ink.PAPER,
                Ink.NONE,
                0,
                new Point(from.x() + 12, y - 14),
                new Point(from.x() + 22 + label.length() * 7.4, y - 14),
                new Point(from.x() + 22 + label.length() * 7.4, y + 5),
                new Point(from.x() + 12, y + 5)));
        shapes.add(new Drawing.Lettering(new Point(from.x() + 16, y), Anchor.START, 15, true, Ink.CONTACT, label));
    }

    private Point gapMiddle(Scale scale) {
        Point at = world(place().unit(), place().xM(), place().hM());
        return scale.at(at.x(), at.y() + (overhead ? gapM() : -gapM()) / 2);
    }

    private void scene(List<Shape> shapes, Scale scale, double left, double right, double bottom, double weight) {
        List<Drawing.Path> bodies = new ArrayList<>();
        List<List<Point>> solids = new ArrayList<>();
        for (PassageView.UnitView unit : view.units()) {
            if (position.poses().get(unit.unit()) == null) {
                continue;
            }
            for (List<List<Double>> load : unit.load()) {
                bodies.add(body(unit.unit(), closedTo(load, unit.topside()), Ink.LOAD, scale, weight));
            }
            List<List<Double>> outline = new ArrayList<>(unit.underside());
            for (int i = unit.topside().size() - 1; i >= 0; i--) {
                outline.add(unit.topside().get(i));
            }
            bodies.add(body(unit.unit(), outline, Ink.STEEL, scale, weight));
        }
        shapes.addAll(bodies);
        for (List<Object> wheel : position.wheels()) {
            Point at = scale.at((Double) wheel.get(0), (Double) wheel.get(1));
            double radius = (Double) wheel.get(2) * scale.perM;
            shapes.add(new Drawing.Circle(at, radius, Ink.TIRE, Ink.LINE, weight));
            shapes.add(new Drawing.Circle(at, radius * 0.45, Ink.PAPER, Ink.LINE, weight * 0.7));
        }
        List<Point> earth = ground(shapes, scale, left, right, bottom, weight);
        if (roadKnown()) {
            solids.add(earth);
        }
        if (view.soffit() != null) {
            List<Point> soffit = new ArrayList<>(view.soffit().stream()
                    .map(p -> scale.at(p.get(0), p.get(1)))
                    .toList());
            if (wire) {
                shapes.add(new Drawing.Path(List.of(soffit), false, Ink.NONE, Ink.LINE, weight, false));
                shapes.addAll(overlap(bodies, solids));
                return;
            }
            Point first = soffit.get(0);
            Point last = soffit.get(soffit.size() - 1);
            soffit.add(new Point(last.x(), last.y() - 0.5 * scale.perM));
            soffit.add(new Point(first.x(), first.y() - 0.5 * scale.perM));
            shapes.add(new Drawing.Path(List.of(soffit), true, Ink.TIRE, Ink.LINE, weight, false));
            solids.add(soffit);
        }
        shapes.addAll(overlap(bodies, solids));
    }

    private static List<Shape> overlap(List<Drawing.Path> bodies, List<List<Point>> solids) {
        return Overlap.of(bodies.stream().map(b -> b.lines().get(0)).toList(), solids);
    }

    /** A road that nobody surveyed is drawn straight, and nothing can be told to reach into it. */
    private boolean roadKnown() {
        return view.positions().stream().anyMatch(p -> p.groundM() != null);
    }

    /** @return the outline of the earth under the road */
    private List<Point> ground(
            List<Shape> shapes, Scale scale, double left, double right, double bottom, double weight) {
        List<Point> road = new ArrayList<>();
        road.add(scale.at(left - 1, groundZ(left - 1)));
        view.ground().points().stream()
                .filter(p -> p.get(0) > left - 1 && p.get(0) < right + 1)
                .forEach(p -> road.add(scale.at(p.get(0), p.get(1))));
        road.add(scale.at(right + 1, groundZ(right + 1)));
        List<Point> earth = new ArrayList<>(road);
        earth.add(scale.at(right + 1, bottom));
        earth.add(scale.at(left - 1, bottom));
        shapes.add(new Drawing.Path(List.of(earth), true, Ink.EARTH, Ink.NONE, 0, false));
        shapes.add(new Drawing.Path(List.of(road), false, Ink.NONE, Ink.LINE, weight * 1.8, false));
        for (double track : view.tracks()) {
            for (double side : new double[] {-0.7175, 0.7175}) {
                Point rail = scale.at(track + side, groundZ(track + side));
                double w = 0.04 * scale.perM + 0.6;
                shapes.add(Drawing.area(
                        Ink.LINE,
                        Ink.NONE,
                        0,
                        new Point(rail.x() - w, rail.y()),
                        new Point(rail.x() + w, rail.y()),
                        new Point(rail.x() + w, rail.y() + 4 * w),
                        new Point(rail.x() - w, rail.y() + 4 * w)));
            }
        }
        return earth;
    }

    private Drawing.Path body(String unit, List<List<Double>> outline, Ink fill, Scale scale, double weight) {
        List<Point> points = outline.stream()
                .map(p -> world(unit, p.get(0), p.get(1)))
                .map(p -> scale.at(p.x(), p.y()))
                .toList();
        return new Drawing.Path(List.of(points), true, fill, Ink.LINE, weight, false);
    }

    /** A load's top line closed down to the deck under its ends. */
    private static List<List<Double>> closedTo(List<List<Double>> load, List<List<Double>> topside) {
        List<List<Double>> closed = new ArrayList<>(load);
        List<Double> rear = load.get(0);
        List<Double> front = load.get(load.size() - 1);
        closed.add(List.of(front.get(0), Math.min(front.get(1), heightAt(topside, front.get(0), front.get(1)))));
        closed.add(List.of(rear.get(0), Math.min(rear.get(1), heightAt(topside, rear.get(0), rear.get(1)))));
        return closed;
    }

    private static double heightAt(List<List<Double>> line, double x, double otherwise) {
        for (int i = 1; i < line.size(); i++) {
            double x0 = line.get(i - 1).get(0);
            double x1 = line.get(i).get(0);
            if (x >= x0 && x <= x1 && x1 > x0) {
                return line.get(i - 1).get(1)
                        + (line.get(i).get(1) - line.get(i - 1).get(1)) * (x - x0) / (x1 - x0);
            }
        }
        return otherwise;
    }

    private Point world(String unit, double xM, double hM) {
        List<Double> pose = position.poses().get(unit);
        double c = Math.cos(pose.get(2));
        double s = Math.sin(pose.get(2));
        return new Point(pose.get(0) + xM * c - hM * s, pose.get(1) + xM * s + hM * c);
    }

    private List<Point> truckPoints() {
        List<Point> points = new ArrayList<>();
        for (PassageView.UnitView unit : view.units()) {
            if (position.poses().get(unit.unit()) != null) {
                for (List<List<Double>> line : lines(unit)) {
                    line.forEach(p -> points.add(world(unit.unit(), p.get(0), p.get(1))));
                }
            }
        }
        return points;
    }

    private static List<List<List<Double>>> lines(PassageView.UnitView unit) {
        List<List<List<Double>>> lines = new ArrayList<>(unit.load());
        lines.add(unit.underside());
        lines.add(unit.topside());
        return lines;
    }

    private double groundZ(double s) {
        List<List<Double>> points = view.ground().points();
        List<Double> first = points.get(0);
        List<Double> last = points.get(points.size() - 1);
        if (s <= first.get(0)) {
            return first.get(1) + view.ground().before().slope() * (s - first.get(0));
        }
        if (s >= last.get(0)) {
            return last.get(1) + view.ground().after().slope() * (s - last.get(0));
        }
        int i = 1;
        while (points.get(i).get(0) < s) {
            i++;
        }
        List<Double> a = points.get(i - 1);
        List<Double> b = points.get(i);
        return b.get(0).equals(a.get(0))
                ? b.get(1)
                : a.get(1) + (b.get(1) - a.get(1)) * (s - a.get(0)) / (b.get(0) - a.get(0));
    }
}
