package org.cresthaul.turning;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.cresthaul.geometry.Areas;
import org.cresthaul.road.Corner;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;

/** What tires and bodies have to themselves at a corner, with or without the opposing lanes. Safe to share. */
public final class CornerSpace {
    final Corner corner;
    final boolean escorts;
    final Geometry pavement;
    final KeepOff tires;
    final KeepOff obstacles;
    final KeepOff opposing;
    /** Opposing lanes whether they may be used or not. */
    final KeepOff lanes;
    /** Raised ground beyond the outer edge, and every island: only low parts keep off it. */
    final KeepOff beyondEdge;

    final List<KeepOff> islands;
    final SteppedWay way;
    /** From the direction of the approach to just that of the exit. */
    final double turnRad;

    public CornerSpace(Corner corner, boolean escorts) {
        this.corner = corner;
        this.escorts = escorts;
        pavement = escorts ? corner.escorted().orElseThrow() : corner.pavement();
        Geometry closed = escorts ? Areas.without(corner.opposing(), pavement) : corner.opposing();
        tires = KeepOff.outsideOf(Against.PAVEMENT, pavement);
        obstacles = KeepOff.areaOf(Against.OBSTACLE, corner.obstacles());
        opposing = KeepOff.areaOf(Against.OPPOSING, closed);
        lanes = KeepOff.areaOf(Against.OPPOSING, corner.opposing());
        Geometry flat = Areas.union(Areas.union(corner.pavement(), corner.opposing()), corner.obstacles());
        for (Corner.Island island : corner.ground().islands()) {
            flat = Areas.union(flat, island.area());
        }
        if (corner.escorted().isPresent()) {
            flat = Areas.union(flat, corner.escorted().get());
        }
        beyondEdge = KeepOff.outsideOf(Against.CURB, flat);
        islands = corner.ground().islands().stream()
                .map(i -> KeepOff.areaOf(Against.ISLAND, i.area()))
                .toList();
        way = SteppedWay.of(corner);
        double turned = corner.exit().headingRad() - corner.approach().headingRad();
        turnRad = corner.turnRad() + Math.IEEEremainder(turned - corner.turnRad(), 2 * Math.PI);
    }

    public Corner corner() {
        return corner;
    }

    /** The raised ground of an island, or beyond the edge. */
    KeepOff raised(int island) {
        return island == LowPart.BEYOND_EDGE ? beyondEdge : islands.get(island);
    }

    /** Where the room of a gap ends: the nearest point of the edge that it is measured to. */
    public Optional<Coordinate> edgeAt(CornerFit.Gap gap) {
        Coordinate at = new Coordinate(gap.xM(), gap.yM());
        List<KeepOff> all =
                switch (gap.against()) {
                    case PAVEMENT -> List.of(tires);
                    case OBSTACLE -> List.of(obstacles);
                    case OPPOSING -> List.of(opposing);
                    case CURB -> List.of(beyondEdge);
                    case ISLAND -> islands;
                };
        return all.stream().flatMap(k -> k.edgeAt(at.x, at.y).stream()).min(Comparator.comparingDouble(at::distance));
    }

    double leftM(Corner.RoadEnd end) {
        return escorts ? end.escortedLeftM() : end.leftM();
    }

    double rightM(Corner.RoadEnd end) {
        return escorts ? end.escortedRightM() : end.rightM();
    }
}
