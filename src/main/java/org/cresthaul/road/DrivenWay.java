package org.cresthaul.road;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.linearref.LengthIndexedLine;

/**
 * The nominal way through a corner, led past islands. Where it runs over an island it is led along the island's edge,
 * half a meter off it, so that the island stays on the side of the opposing traffic: on the left where one drives on
 * the right. A splitter, a median's nose and the island of a turning lane are all passed so.
 */
public final class DrivenWay {
    private static final double BESIDE_M = 0.5;
    private static final double SHORTEST_M = 1e-6;
    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    private DrivenWay() {}

    /**
     * @param way from approach to exit, meters; it starts and ends on no island
     * @param islandsLeft whether islands are passed with the island on the left: where one drives on the right
     */
    public static LineString past(List<Coordinate> way, List<Geometry> islands, boolean islandsLeft) {
        LineString line = GEOMETRY.createLineString(distinct(way));
        // Led past one island, it may come to another that was done with: twice through is enough for what roads look
        // like.
        List<Geometry> twice = new ArrayList<>(islands);
        twice.addAll(islands);
        for (Geometry island : twice) {
            for (int i = 0; i < island.getNumGeometries(); i++) {
                if (island.getGeometryN(i) instanceof Polygon p && line.crosses(p)) {
                    line = led(line, p, islandsLeft);
                }
            }
        }
        return line;
    }

    private static LineString led(LineString line, Polygon island, boolean islandsLeft) {
        if (!(island.buffer(BESIDE_M) instanceof Polygon around)) {
            return line;
        }
        LineString ring = around.getExteriorRing();
        if (Orientation.isCCW(ring.getCoordinates()) != islandsLeft) {
            ring = ring.reverse();
        }
        LengthIndexedLine along = new LengthIndexedLine(line);
        double in = Double.POSITIVE_INFINITY;
        double out = Double.NEGATIVE_INFINITY;
        for (Coordinate c : line.intersection(ring).getCoordinates()) {
            double at = along.project(c);
            in = Math.min(in, at);
            out = Math.max(out, at);
        }
        if (!(in > 0) || !(out < line.getLength()) || !(out > in)) {
            return line;
        }
        LengthIndexedLine round = new LengthIndexedLine(ring);
        double from = round.project(along.extractPoint(in));
        double to = round.project(along.extractPoint(out));
        List<Coordinate> led = new ArrayList<>(List.of(along.extractLine(0, in).getCoordinates()));
        if (to < from) {
            led.addAll(List.of(round.extractLine(from, round.getEndIndex()).getCoordinates()));
            led.addAll(List.of(round.extractLine(0, to).getCoordinates()));
        } else {
            led.addAll(List.of(round.extractLine(from, to).getCoordinates()));
        }
        led.addAll(List.of(along.extractLine(out, line.getLength()).getCoordinates()));
        return GEOMETRY.createLineString(distinct(led));
    }

    private static Coordinate[] distinct(List<Coordinate> way) {
        List<Coordinate> kept = new ArrayList<>();
        for (Coordinate c : way) {
            if (kept.isEmpty() || kept.get(kept.size() - 1).distance(c) > SHORTEST_M) {
                kept.add(c.copy());
            }
        }
        return kept.toArray(new Coordinate[0]);
    }
}
