package org.cresthaul.road;

import java.util.List;
import java.util.Optional;
import org.cresthaul.geometry.Areas;
import org.cresthaul.road.CornerTemplate.CurbReturn;
import org.cresthaul.road.Mouth.Leg;
import org.locationtech.jts.geom.Geometry;

/** A road with a gate beside it, driven on the right; the way is that from the gate out onto the road, forward. */
final class GateDrawing {
    private GateDrawing() {}

    static DrawnCorner of(CornerTemplate t, Gate gate) {
        RoadStrip edges = new RoadStrip(0, t.approach(), false, 1);
        double half = gate.widthM() / 2;
        Leg drive = new Leg(t.turnRad(), half, half);
        Leg back = new Leg(Math.PI, -edges.outerM, edges.innerM);
        Leg onward = new Leg(0, edges.innerM, -edges.outerM);
        boolean left = t.turnRad() > 0;
        CurbReturn near = CurbReturn.single(gate.nearM());
        CurbReturn far = CurbReturn.single(gate.farM());
        double reachM = CornerTemplate.reachM(
                left
                        ? Math.max(Mouth.reachM(drive, back, near), Mouth.reachM(onward, drive, far))
                        : Math.max(Mouth.reachM(back, drive, near), Mouth.reachM(drive, onward, far)));
        RoadStrip road = new RoadStrip(0, t.approach(), false, reachM);
        Geometry returns = left
                ? Areas.union(Mouth.area(drive, back, near, t.apronM()), Mouth.area(onward, drive, far, t.apronM()))
                : Areas.union(Mouth.area(back, drive, near, t.apronM()), Mouth.area(drive, onward, far, t.apronM()));
        Geometry lanes = road.strip(road.opposingFrom, road.opposingTo);
        // On its own side of the road the drive does not reach across the center line.
        Geometry way = left ? drive.area(reachM) : Areas.without(drive.area(reachM), lanes);
        Geometry pavement = Areas.union(Areas.union(road.strip(road.ownFrom, road.ownTo), way), returns);
        Optional<Geometry> escorted =
                t.approach().borrow() ? Optional.of(Areas.union(pavement, lanes)) : Optional.empty();
        double heading = t.turnRad() + Math.PI;
        Corner.RoadEnd from = new Corner.RoadEnd(0, 0, heading, half, half, half, half);
        return new DrawnCorner(
                pavement,
                escorted,
                Areas.without(lanes, pavement),
                List.of(),
                RoundedWay.of(
                        new RoundedWay.Line(heading, 0),
                        new RoundedWay.Line(0, road.middleM()),
                        gate.farM() + half,
                        reachM),
                from,
                road.end(false));
    }
}
