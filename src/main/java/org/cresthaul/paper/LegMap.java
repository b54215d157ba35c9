package org.cresthaul.paper;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.cresthaul.exchange.CreditedMap;
import org.cresthaul.language.Catalog;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.paper.Drawing.Anchor;
import org.cresthaul.paper.Drawing.Point;
import org.cresthaul.paper.Drawing.Shape;
import org.cresthaul.report.Verdict;
import org.cresthaul.route.LonLat;
import org.cresthaul.route.Route;
import org.cresthaul.route.StoppingPlace;
import org.cresthaul.sheet.RunSheet;
import org.cresthaul.units.UnitSystem;

/** A map of one leg, or of the whole route: its line, places with their verdicts, stops. North is up. */
final class LegMap {
    private static final double LEG_WIDTH = 480;
    /** Size of lettering: in a column of a sheet a map has half its size, across one less than that. */
    private static final double LEG_LETTER = 13;

    private static final double ROUTE_LETTER = 16;
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
    private final Part part;
    private final Catalog catalog;
    private final double letter;
    private final List<Point> line = new ArrayList<>();
    private final Set<String> named = new HashSet<>();
    private double lon0;
    private double lat0;
    private double perM;
    private double height;
    private double narrow;
    private MapLabels labels;

    /** A place with its verdict, and what is written beside it. */
    record Mark(String id, String label, Verdict verdict) {
        /** By its id. */
        Mark(String id, Verdict verdict) {
            this(id, id, verdict);
        }
    }

    /** How large the map is drawn and lettered. */
    private record Scale(double width, double mostHeight, double letter) {}

    /**
     * What of the route is on the map, and how the map is called.
     *
     * @param usedStops ids of stops where something is done
     * @param alt for whoever does not see it
     */
    private record Part(
            double startM, double endM, List<Mark> marks, List<String> usedStops, String alt, String caption) {}

    private LegMap(Route route, UnitSystem units, Catalog catalog, Scale scale, Part part) {
        this.route = route;
        this.units = units;
        this.catalog = catalog;
        this.part = part;
        width = scale.width();
        mostHeight = scale.mostHeight();
        letter = scale.letter();
    }

    /** @param map to draw beneath, where there is one */
    static Paper.Picture of(
            Route route, Optional<CreditedMap> map, RunSheet.Leg leg, UnitSystem units, Catalog catalog) {
        double end = Math.min(leg.endChainageM(), route.lengthM());
        // Table and map of a leg share a page.
        double most = Math.max(
                LEAST_HEIGHT, MOST_HEIGHT - ROW * Math.max(0, leg.entries().size() - FREE_ROWS));
        Part part = new Part(
                Math.min(leg.startChainageM(), end),
                end,
                leg.entries().stream()
                        .filter(e -> e.verdict() != null)
                        .map(e -> new Mark(e.id(), e.verdict()))
                        .toList(),
                leg.entries().stream()
                        .map(RunSheet.Entry::id)
                        .filter(Objects::nonNull)
                        .toList(),
                Sentence.of(Code.MAP_LEG_ALT)
                        .with("number", leg.number())
                        .with("name", leg.name())
                        .in(catalog),
                Sentence.of(Code.MAP_LEG).with("number", leg.number()).in(catalog));
        return new LegMap(route, units, catalog, new Scale(LEG_WIDTH, most, LEG_LETTER), part).over(map);
    }

    /** The whole route. */
    static Paper.Picture of(
            Route route, Optional<CreditedMap> map, List<Mark> marks, UnitSystem units, Catalog catalog) {
        Part part = new Part(
                0, route.lengthM(), marks, List.of(), catalog.text(Code.MAP_ROUTE_ALT), catalog.text(Code.MAP_ROUTE));
        return new LegMap(route, units, catalog, new Scale(ROUTE_WIDTH, 1.6 * MOST_HEIGHT, ROUTE_LETTER), part)
                .over(map);
    }

    private Paper.Picture over(Optional<CreditedMap> map) {
        List<Shape> shapes = drawn();
        String told = part.caption();
        if (map.isPresent()) {
            MapBeneath beneath = new MapBeneath(map.get(), this::at, 1 / perM, width, height);
            List<Shape> lowest = beneath.shapes();
            beneath.settlements()
                    .forEach(s -> labels.quietName(s.at(), s.name()).ifPresent(lowest::add));
            shapes.addAll(0, lowest);
            told = MapBeneath.credited(part.caption(), map.get(), !lowest.isEmpty(), catalog);
        }
        return new Paper.Picture(new Drawing(width, height, part.alt(), shapes), told);
    }

    private List<Shape> drawn() {
        List<LonLat> positions = new ArrayList<>();
        positions.add(route.line().frameAt(part.startM()).origin());
        for (int i = 0; i < route.line().size(); i++) {
            if (route.line().chainageM(i) > part.startM() && route.line().chainageM(i) < part.endM()) {
                positions.add(route.line().position(i));
            }
        }
        positions.add(route.line().frameAt(part.endM()).origin());
        fit(positions);
        positions.forEach(p -> line.add(at(p)));
        labels = new MapLabels(width, height, line, letter);
        keepMarksFree();
        List<Shape> shapes = new ArrayList<>();
        shapes.add(new Drawing.Path(List.of(line), false, Ink.NONE, Ink.GUIDE, 3, false));
        end(shapes, line.get(0), catalog.text(Code.MAP_START));
        end(shapes, line.get(line.size() - 1), catalog.text(Code.MAP_END));
        for (Mark mark : part.marks()) {
            route.findHazard(mark.id())
                    .ifPresent(h -> hazard(shapes, mark, at(h.place().position())));
        }
        stops().forEach(s -> stop(
                shapes,
                s.place().id(),
                at(s.place().position()),
                part.usedStops().contains(s.place().id())));
        northAndScale(shapes);
        shapes.add(Drawing.area(
                Ink.NONE,
                Ink.SOFT,
                0.8,
                new Point(0.4, 0.4),
                new Point(width - 0.4, 0.4),
                new Point(width - 0.4, height - 0.4),
                new Point(0.4, height - 0.4)));
        return shapes;
    }

    private List<StoppingPlace> stops() {
        return route.stops().stream()
                .filter(s -> s.place().chainageM() >= part.startM() && s.place().chainageM() <= part.endM())
                .toList();
    }

    /** Nothing is written over a mark, the north arrow or the scale. */
    private void keepMarksFree() {
        Stream.of(
                        Stream.of(line.get(0), line.get(line.size() - 1)),
                        part.marks().stream()
                                .flatMap(m -> route.findHazard(m.id()).stream())
                                .map(h -> at(h.place().position())),
                        stops().stream().map(s -> at(s.place().position())))
                .flatMap(points -> points)
                .forEach(p -> labels.keepFree(p.x() - 6, p.y() - 6, p.x() + 6, p.y() + 6));
        labels.keepFree(10, 8, 40, 36);
        labels.keepFree(8, height - 22, 190, height);
    }

    private void fit(List<LonLat> positions) {
        double west = positions.stream()
                .mapToDouble(p -> lon(p, positions.get(0)))
                .min()
                .orElseThrow();
        double east = positions.stream()
                .mapToDouble(p -> lon(p, positions.get(0)))
                .max()
                .orElseThrow();
        double south = positions.stream().mapToDouble(LonLat::latDeg).min().orElseThrow();
        double north = positions.stream().mapToDouble(LonLat::latDeg).max().orElseThrow();
        narrow = Math.cos(Math.toRadians((south + north) / 2));
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
        double east = Math.IEEEremainder(p.lonDeg() - lon0, 360) * M_PER_DEG * narrow;
        double north = (p.latDeg() - lat0) * M_PER_DEG;
        return new Point(width / 2 + east * perM, height / 2 - north * perM);
    }

    private void end(List<Shape> shapes, Point at, String word) {
        shapes.add(new Drawing.Circle(at, 3.4, Ink.PAPER, Ink.GUIDE, 1.8));
        labels.label(shapes, at, word, false);
    }

    private void hazard(List<Shape> shapes, Mark mark, Point at) {
        shapes.addAll(Symbols.verdict(mark.verdict(), at.x() - 6, at.y() - 6, 12));
        // A place that is met in two settings stands there once.
        if (named.add(mark.id())) {
            labels.label(shapes, at, mark.label(), true);
        }
    }

    private void stop(List<Shape> shapes, String id, Point at, boolean used) {
        shapes.add(Drawing.area(
                used ? Ink.GUIDE : Ink.PAPER,
                Ink.GUIDE,
                1.2,
                new Point(at.x() - 4, at.y() - 4),
                new Point(at.x() + 4, at.y() - 4),
                new Point(at.x() + 4, at.y() + 4),
                new Point(at.x() - 4, at.y() + 4)));
        labels.label(shapes, at, id, used);
    }

    private void northAndScale(List<Shape> shapes) {
        shapes.add(Drawing.line(Ink.LINE, 1.2, new Point(18, 34), new Point(18, 12), new Point(14, 19)));
        shapes.add(Drawing.line(Ink.LINE, 1.2, new Point(18, 12), new Point(22, 19)));
        shapes.add(new Drawing.Lettering(
                new Point(26, 20), Anchor.START, letter, true, Ink.LINE, catalog.text(Code.MAP_NORTH)));
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
        shapes.add(Drawing.line(
                Ink.LINE,
                1.4,
                new Point(12, y - 4),
                new Point(12, y),
                new Point(12 + length, y),
                new Point(12 + length, y - 4)));
        String label = catalog.figure((chosen < 1 ? Double.toString(chosen) : Integer.toString((int) chosen))
                + (units == UnitSystem.METRIC ? " km" : " mi"));
        shapes.add(new Drawing.Lettering(new Point(18 + length, y + 1), Anchor.START, letter, false, Ink.LINE, label));
    }
}
