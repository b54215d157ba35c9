package org.cresthaul.road;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.cresthaul.geometry.Areas;
import org.cresthaul.road.Corner.Island;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;

/**
 * The roads of a template, driven on the right, before its islands and obstacles are taken out. Pavement does not hold
 * the islands named here.
 *
 * @param way how it is driven, from approach to exit
 */
record DrawnCorner(
        Geometry pavement,
        Optional<Geometry> escorted,
        Geometry opposing,
        List<Island> islands,
        List<Coordinate> way,
        Corner.RoadEnd in,
        Corner.RoadEnd out) {
    /** Seen in a mirror along the approach; the road ends are given as they are then. */
    DrawnCorner mirrored(Corner.RoadEnd in, Corner.RoadEnd out) {
        AffineTransformation flip = AffineTransformation.scaleInstance(1, -1);
        return new DrawnCorner(
                flip.transform(pavement),
                escorted.map(flip::transform),
                flip.transform(opposing),
                islands.stream()
                        .map(i -> new Island(flip.transform(i.area()), i.heightM()))
                        .toList(),
                way.stream().map(c -> new Coordinate(c.x, -c.y)).toList(),
                in,
                out);
    }

    /**
     * The corner, with everything to keep off taken out and without hairlines.
     *
     * @param raised islands, some of which the pavement may still hold
     */
    Corner corner(List<Island> raised, Geometry obstacles, OptionalDouble edgeHeightM, double turnRad) {
        Geometry off = obstacles;
        for (Island island : raised) {
            off = Areas.union(off, island.area());
        }
        Geometry drivable = Areas.sealed(largest(Areas.without(pavement, off)));
        Geometry keepOff = off;
        Optional<Geometry> wide =
                escorted.map(e -> Areas.sealed(largest(Areas.union(Areas.without(e, keepOff), drivable))));
        return new Corner(
                drivable,
                wide,
                Areas.sealed(Areas.without(opposing, drivable)),
                obstacles,
                in,
                out,
                turnRad,
                new Corner.Ground(edgeHeightM, raised),
                Optional.of(
                        DrivenWay.past(way, raised.stream().map(Island::area).toList(), true)));
    }

    /** Without what an island or obstacle cuts off. */
    private static Geometry largest(Geometry area) {
        Geometry most = area.getGeometryN(0);
        for (int i = 1; i < area.getNumGeometries(); i++) {
            most = area.getGeometryN(i).getArea() > most.getArea() ? area.getGeometryN(i) : most;
        }
        return most;
    }
}
