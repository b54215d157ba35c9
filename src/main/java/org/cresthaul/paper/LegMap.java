package org.cresthaul.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.cresthaul.paper.Drawing.Anchor;
import org.cresthaul.paper.Drawing.Point;
import org.cresthaul.paper.Drawing.Shape;
import org.cresthaul.plan.RunSheet;
import org.cresthaul.route.LonLat;
import org.cresthaul.route.Route;
import org.cresthaul.units.UnitSystem;

/** A map of one leg, or of the whole route: its line, places with their verdicts, stops. North is up. */
final class LegMap {
    private static final double LEG_WIDTH = 480;
    private static final double ROUTE_WIDTH = 960;
    private static final double EDGE = 34;
    private static final double MOST_HEIGHT = 165;
    private static final double LEAST_HEIGHT = 84;
    private static final double ROW = 12;
    private static final int FREE_ROWS = 14;
    private static final double M_PER_DEG = 111_320;

    private final Route route;
    private final UnitSystem units;
    private final double width;
    private final double mostHeight;
    private final double startM;
    private final double endM;
    private final List<Mark> marks;
    private final List<String> usedStops;
    private final String alt;
    private final List<Point> line = new ArrayList<>();
    private final List<double[]> taken = new ArrayList<>();
    private double lon0;
    private double lat0;
    private double perM;
    private double height;

    /** A place with its verdict. */
    record Mark(String id, String verdict) {}

    private LegMap(Route route, UnitSystem units, double width, double mostHeight, double startM, double endM, List<Mark> marks,
            List<String> usedStops, String alt) {
        this.route = route;
        this.units = units;
        this.width = width;
        this.mostHeight = mostHeight;
        this.startM = startM;
        this.endM = endM;
        this.marks = marks;
        this.usedStops = usedStops;
        this.alt = alt;
    }

    static Drawing of(Route route, RunSheet.Leg leg, UnitSystem units) {
        double end = Math.min(leg.endChainageM(), route.lengthM());
        // Table and map of a leg share a page.
        double most = Math.max(LEAST_HEIGHT, MOST_HEIGHT - ROW * Math.max(0, leg.entries().size() - FREE_ROWS));
        return new LegMap(route, units, LEG_WIDTH, most, Math.min(leg.startChainageM(), end), end,
                leg.entries().stream().filter(e -> e.verdict() != null).map(e -> new Mark(e.id(), e.verdict())).toList(),
                leg.entries().stream().map(RunSheet.Entry::id).filter(Objects::nonNull).toList(),
                "Map of leg " + leg.number() + ", " + leg.name() + ": its line, places and stops").drawing();
    }

    /** The whole route. */
    static Drawing of(Route route, List<Mark> marks, UnitSystem units) {
        return new LegMap(route, units, ROUTE_WIDTH, 1.6 * MOST_HEIGHT, 0, route.lengthM(), marks, List.of(),
                "Map of the route: its line and places").drawing();
    }

    private Drawing drawing() {
        List<LonLat> positions = new ArrayList<>();
        positions.add(route.line().frameAt(startM).origin());
        for (int i = 0; i < route.line().size(); i++) {
            if (route.line().chainageM(i) > startM && route.line().chainageM(i) < endM) {
                positions.add(route.line().position(i));
            }
        }
        positions.add(route.line().frameAt(endM).origin());
        fit(positions);
        positions.forEach(p -> line.add(at(p)));
        List<Shape> shapes = new ArrayList<>();
        shapes.add(new Drawing.Path(List.of(line), false, Ink.NONE, Ink.GUIDE, 3, false));
        end(shapes, line.get(0), "start");
        end(shapes, line.get(line.size() - 1), "end");
        for (Mark mark : marks) {
            route.findHazard(mark.id()).ifPresent(h -> hazard(shapes, mark, at(h.place().position())));
        }
        route.stops().stream()
                .filter(s -> s.place().chainageM() >= startM && s.place().chainageM() <= endM)
                .forEach(s -> stop(shapes, s.place().id(), at(s.place().position()), usedStops.contains(s.place().id())));
        northAndScale(shapes);
        shapes.add(Drawing.area(Ink.NONE, Ink.SOFT, 0.8, new Point(0.4, 0.4), new Point(width - 0.4, 0.4),
                new Point(width - 0.4, height - 0.4), new Point(0.4, height - 0.4)));
        return new Drawing(width, height, alt, shapes);
    }

    private void fit(List<LonLat> positions) {
        double west = positions.stream().mapToDouble(p -> lon(p, positions.get(0))).min().orElseThrow();
        double east = positions.stream().mapToDouble(p -> lon(p, positions.get(0))).max().orElseThrow();
        double south = positions.stream().mapToDouble(LonLat::latDeg).min().orElseThrow();
        double north = positions.stream().mapToDouble(LonLat::latDeg).max().orElseThrow();
        double narrow = Math.cos(Math.toRadians((south + north) / 2));
        double wide = Math.max(50, (east - west) * M_PER_DEG * narrow);
        double tall = Math.max(50, (north - south) * M_PER_DEG);
        height = Math.max(LEAST_HEIGHT, Math.min(mostHeight, tall / wide * (width - 2 * EDGE) + 2 * EDGE));
        perM = Math.min((width - 2 * EDGE) / wide, (height - 2 * EDGE) / tall);
        lon0 = (west + east) / 2;
        lat0 = (south + north) / 2;
    }

    /** Across the 180th meridian the short way. */
    private static double lon(LonLat p, LonLat first) {
        return first.lonDeg() + Math.IEEEremainder(p.lonDeg() - first.lonDeg(), 360);
    }

    private Point at(LonLat p) {
        double east = Math.IEEEremainder(p.lonDeg() - lon0, 360) * M_PER_DEG * Math.cos(Math.toRadians(lat0));
        double north = (p.latDeg() - lat0) * M_PER_DEG;
        return new Point(width / 2 + east * perM, height / 2 - north * perM);
    }

    private void end(List<Shape> shapes, Point at, String word) {
        shapes.add(new Drawing.Circle(at, 3.4, Ink.PAPER, Ink.GUIDE, 1.8));
        label(shapes, at, word, false);
    }

    private void hazard(List<Shape> shapes, Mark mark, Point at) {
        shapes.addAll(Symbols.verdict(mark.verdict(), at.x() - 6, at.y() - 6, 12));
        label(shapes, at, mark.id(), true);
    }

    private void stop(List<Shape> shapes, String id, Point at, boolean used) {
        shapes.add(Drawing.area(used ? Ink.GUIDE : Ink.PAPER, Ink.GUIDE, 1.2, new Point(at.x() - 4, at.y() - 4), new Point(at.x() + 4, at.y() - 4),
                new Point(at.x() + 4, at.y() + 4), new Point(at.x() - 4, at.y() + 4)));
        label(shapes, at, id, used);
    }

    /** Beside its mark, where nothing else is written. */
    private void label(List<Shape> shapes, Point at, String text, boolean bold) {
        double w = text.length() * 6.2 + 2;
        double[][] places = {{9, 4}, {-9 - w, 4}, {-w / 2, -10}, {-w / 2, 19}, {9, -9}, {9, 17}, {-9 - w, -9}, {-9 - w, 17}, {-w / 2, -23},
            {-w / 2, 32}};
        double[] best = places[0];
        for (double[] p : places) {
            double x = at.x() + p[0];
            double y = at.y() + p[1];
            boolean inside = x >= 2 && x + w <= width - 2 && y >= 13 && y <= height - 3;
            if (inside && taken.stream().noneMatch(t -> x < t[2] && x + w > t[0] && y - 10 < t[3] && y + 2 > t[1])
                    && !covered(x, y - 10, x + w, y + 2)) {
                best = p;
                break;
            }
        }
        double x = at.x() + best[0];
        double y = at.y() + best[1];
        taken.add(new double[] {x, y - 10, x + w, y + 2});
        taken.add(new double[] {at.x() - 6, at.y() - 6, at.x() + 6, at.y() + 6});
        shapes.add(new Drawing.Lettering(new Point(x, y), Anchor.START, 12, bold, Ink.LINE, text));
    }

    private boolean covered(double x0, double y0, double x1, double y1) {
        return line.stream().anyMatch(p -> p.x() > x0 && p.x() < x1 && p.y() > y0 && p.y() < y1);
    }

    private void northAndScale(List<Shape> shapes) {
        shapes.add(Drawing.line(Ink.LINE, 1.2, new Point(18, 34), new Point(18, 12), new Point(14, 19)));
        shapes.add(Drawing.line(Ink.LINE, 1.2, new Point(18, 12), new Point(22, 19)));
        shapes.add(new Drawing.Lettering(new Point(26, 20), Anchor.START, 11, true, Ink.LINE, "N"));
        double unit = units == UnitSystem.METRIC ? 1000 : 1609.344;
        double[] steps = {0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50};
        double chosen = steps[0];
        for (double step : steps) {
            if (step * unit * perM <= 120) {
                chosen = step;
            }
        }
        double length = chosen * unit * perM;
        double y = height - 10;
        shapes.add(Drawing.line(Ink.LINE, 1.4, new Point(12, y - 4), new Point(12, y), new Point(12 + length, y), new Point(12 + length, y - 4)));
        String label = (chosen < 1 ? Double.toString(chosen) : Integer.toString((int) chosen)) + (units == UnitSystem.METRIC ? " km" : " mi");
        shapes.add(new Drawing.Lettering(new Point(18 + length, y + 1), Anchor.START, 11, false, Ink.LINE, label));
    }
}
