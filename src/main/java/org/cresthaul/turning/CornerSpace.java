package org.cresthaul.turning;

import org.cresthaul.geometry.Areas;
import org.cresthaul.road.Corner;
import org.locationtech.jts.geom.Geometry;

/** What tyres and bodies have to themselves at a corner, with or without the opposing lanes. For one thread. */
public final class CornerSpace {
    final Corner corner;
    final boolean escorts;
    final Geometry pavement;
    final Geometry keepOut;
    final AreaField tyres;
    final AreaField obstacles;
    final AreaField opposing;

    public CornerSpace(Corner corner, boolean escorts) {
        this.corner = corner;
        this.escorts = escorts;
        pavement = escorts ? corner.escorted().orElseThrow() : corner.pavement();
        Geometry closed = escorts ? Areas.without(corner.opposing(), pavement) : corner.opposing();
        keepOut = Areas.union(corner.obstacles(), closed);
        tyres = new AreaField(pavement);
        obstacles = new AreaField(corner.obstacles());
        opposing = new AreaField(closed);
    }

    double leftM(Corner.RoadEnd end) {
        return escorts ? end.escortedLeftM() : end.leftM();
    }

    double rightM(Corner.RoadEnd end) {
        return escorts ? end.escortedRightM() : end.rightM();
    }
}
