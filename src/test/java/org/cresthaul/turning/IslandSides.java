package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.road.Corner;
import org.cresthaul.road.Corner.Island;
import org.cresthaul.road.Corner.RoadEnd;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.PolygonExtracter;

/**
 * On which side a line passes the islands of a corner, against the side on which its guide passes them: the line out
 * and the guide back are one closed loop, and it must not wind round an island.
 */
final class IslandSides {
    /**
     * Holes of a pavement smaller than this are poles and grates: no island that is passed on a side; square meters.
     */
    private static final double SMALLEST_M2 = 1;
    /** Guide and line are led on straight this far, so that they meet beyond every island, meters. */
    private static final double ON_M = 1000;

    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    private IslandSides() {}

    /** Islands as the corner names them, or the holes in the area. */
    static List<Polygon> islands(Corner corner, Geometry area) {
        List<Polygon> found = new ArrayList<>();
        for (Island island : corner.ground().islands()) {
            PolygonExtracter.getPolygons(island.area(), found);
        }
        if (!found.isEmpty()) {
            return found;
        }
        List<Polygon> parts = new ArrayList<>();
        PolygonExtracter.getPolygons(area, parts);
        for (Polygon part : parts) {
            for (int i = 0; i < part.getNumInteriorRing(); i++) {
                Polygon hole = GEOMETRY.createPolygon(part.getInteriorRingN(i).getCoordinates());
                if (hole.getArea() >= SMALLEST_M2) {
                    found.add(hole);
                }
            }
        }
        return found;
    }

    /** How many islands the line passes otherwise than the guide does; those that it runs over count too. */
    static int wrong(Corner corner, List<Polygon> islands, LineString guide, List<Coordinate> line) {
        List<Coordinate> loop = new ArrayList<>();
        loop.add(beyond(corner.approach(), line.get(0), -1));
        loop.addAll(line);
        loop.add(beyond(corner.exit(), line.get(line.size() - 1), 1));
        Coordinate[] back = guide.getCoordinates();
        loop.add(beyond(corner.exit(), back[back.length - 1], 1));
        for (int i = back.length - 1; i >= 0; i--) {
            loop.add(back[i]);
        }
        loop.add(beyond(corner.approach(), back[0], -1));
        int wrong = 0;
        for (Polygon island : islands) {
            Coordinate in = island.getInteriorPoint().getCoordinate();
            double turned = 0;
            for (int i = 0; i < loop.size(); i++) {
                Coordinate a = loop.get(i);
                Coordinate b = loop.get((i + 1) % loop.size());
                turned += Math.IEEEremainder(
                        Math.atan2(b.y - in.y, b.x - in.x) - Math.atan2(a.y - in.y, a.x - in.x), 2 * Math.PI);
            }
            wrong += Math.abs(turned) > Math.PI ? 1 : 0;
        }
        return wrong;
    }

    private static Coordinate beyond(RoadEnd end, Coordinate at, int way) {
        double on = way * ON_M;
        return new Coordinate(at.x + on * Math.cos(end.headingRad()), at.y + on * Math.sin(end.headingRad()));
    }
}
