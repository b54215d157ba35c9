package org.cresthaul.paper;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.cresthaul.exchange.CreditedMap;
import org.cresthaul.exchange.osm.BaseMap;
import org.cresthaul.exchange.osm.BaseMap.Layer;
import org.cresthaul.language.Catalog;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.paper.Drawing.Point;
import org.cresthaul.route.LonLat;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateArrays;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.geom.util.LineStringExtracter;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.locationtech.jts.operation.overlayng.RingClipper;
import org.locationtech.jts.simplify.DouglasPeuckerSimplifier;

/** A base map in the frame of a drawing, quiet enough that a route is drawn over it. What lies beyond is cut off. */
final class MapBeneath {
    /** Less than 0.3 points on paper, where a unit of a map is at most 0.55. */
    private static final double WITHIN = 0.5;
    /** Steps of 0.1: finer ones are not seen. */
    private static final PrecisionModel GRID = new PrecisionModel(10);

    /** Beyond so many meters to a unit, least roads would lie on one another. */
    private static final double MINOR_ROADS_UP_TO_M = 40;

    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    private final CreditedMap map;
    private final Function<LonLat, Point> projection;
    private final double unitM;
    private final Envelope frame;

    /** A settlement that lies in the frame. */
    record Settlement(String name, Point at) {}

    /**
     * @param projection into the drawing, of the size given
     * @param unitM what a unit of the drawing is on the ground
     */
    MapBeneath(CreditedMap map, Function<LonLat, Point> projection, double unitM, double width, double height) {
        this.map = map;
        this.unitM = unitM;
        this.projection = projection;
        frame = new Envelope(0, width, 0, height);
    }

    /** From the lowest layer up; empty where the map does not reach. */
    List<Drawing.Shape> shapes() {
        List<Drawing.Shape> drawn = new ArrayList<>();
        for (Layer layer : Layer.values()) {
            if (layer == Layer.PLACE || layer == Layer.MINOR_ROAD && unitM > MINOR_ROADS_UP_TO_M) {
                continue;
            }
            for (BaseMap.Shape shape : ofLayer(layer, true)) {
                List<List<Point>> rings = Stream.concat(Stream.of(shape.points()), shape.holes().stream())
                        .map(this::clippedRing)
                        .filter(r -> !r.isEmpty())
                        .toList();
                if (!rings.isEmpty()) {
                    drawn.add(new Drawing.Path(rings, true, ink(layer), Ink.NONE, 0, false));
                }
            }
            List<List<Point>> lines = ofLayer(layer, false).stream()
                    .flatMap(s -> clippedLine(s.points()))
                    .toList();
            if (!lines.isEmpty()) {
                drawn.addAll(stroked(layer, lines));
            }
        }
        return drawn;
    }

    /** Those that matter most first. */
    List<Settlement> settlements() {
        return ofLayer(Layer.PLACE, false).stream()
                .map(s -> new Settlement(s.name(), projection.apply(s.points().get(0))))
                .filter(s -> frame.contains(s.at.x(), s.at.y()) && !s.name.isBlank())
                .toList();
    }

    /** What stands below a drawing: whom to thank, or that there is nothing to thank for. */
    static String credited(String caption, CreditedMap map, boolean drawn, Catalog catalog) {
        return caption + " "
                + (drawn
                        ? Sentence.of(map.map().whole() ? Code.MAP_CREDIT : Code.MAP_CREDIT_PART)
                                .with("credit", map.credit())
                                .in(catalog)
                        : catalog.text(Code.MAP_NOT_HERE));
    }

    private List<BaseMap.Shape> ofLayer(Layer layer, boolean area) {
        return map.map().shapes().stream()
                .filter(s -> s.layer() == layer && s.area() == area)
                .toList();
    }

    private static Ink ink(Layer layer) {
        return switch (layer) {
            case WOODS -> Ink.WOODS;
            case WATER -> Ink.WATER;
            case MINOR_ROAD, MIDDLE_ROAD, MAJOR_ROAD -> Ink.ROAD;
            case RAILWAY -> Ink.RAIL;
            case PLACE -> Ink.SOFT;
        };
    }

    private static double width(Layer layer) {
        return switch (layer) {
            case MINOR_ROAD -> 0.7;
            case WATER, MIDDLE_ROAD -> 1.5;
            case MAJOR_ROAD -> 2.6;
            case WOODS, RAILWAY, PLACE -> 2;
        };
    }

    /** A railway is a dark line with a broken white one upon it. */
    private static List<Drawing.Shape> stroked(Layer layer, List<List<Point>> lines) {
        Drawing.Path stroke = new Drawing.Path(lines, false, Ink.NONE, ink(layer), width(layer), false);
        return layer == Layer.RAILWAY
                ? List.of(stroke, new Drawing.Path(lines, false, Ink.NONE, Ink.PAPER, width(layer) * 0.6, true))
                : List.of(stroke);
    }

    private Coordinate[] projected(List<LonLat> points) {
        return points.stream()
                .map(projection)
                .map(p -> new Coordinate(p.x(), p.y()))
                .toArray(Coordinate[]::new);
    }

    private List<Point> clippedRing(List<LonLat> points) {
        Coordinate[] ring = projected(points);
        if (!frame.intersects(CoordinateArrays.envelope(ring))) {
            return List.of();
        }
        Coordinate[] clipped = new RingClipper(frame).clip(ring);
        List<Point> drawn = clipped.length < 4 ? List.of() : simplified(GEOMETRY.createLineString(clipped));
        return drawn.size() < 4 ? List.of() : drawn;
    }

    private Stream<List<Point>> clippedLine(List<LonLat> points) {
        LineString line = GEOMETRY.createLineString(projected(points));
        Envelope reach = line.getEnvelopeInternal();
        List<LineString> within =
                frame.contains(reach) ? List.of(line) : frame.intersects(reach) ? cut(line) : List.of();
        return within.stream().map(MapBeneath::simplified).filter(p -> p.size() > 1);
    }

    private List<LineString> cut(LineString line) {
        Geometry within = OverlayNGRobust.overlay(line, GEOMETRY.toGeometry(frame), OverlayNG.INTERSECTION);
        Geometry lines = LineStringExtracter.getGeometry(within);
        return IntStream.range(0, lines.getNumGeometries())
                .mapToObj(i -> (LineString) lines.getGeometryN(i))
                .toList();
    }

    private static List<Point> simplified(LineString line) {
        Coordinate[] drawn = DouglasPeuckerSimplifier.simplify(line, WITHIN).getCoordinates();
        for (Coordinate c : drawn) {
            GRID.makePrecise(c);
        }
        return Arrays.stream(CoordinateArrays.removeRepeatedPoints(drawn))
                .map(c -> new Point(c.x, c.y))
                .toList();
    }
}
