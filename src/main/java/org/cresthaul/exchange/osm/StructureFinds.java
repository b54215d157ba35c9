package org.cresthaul.exchange.osm;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.cresthaul.exchange.osm.MapCandidate.Kind;

/**
 * What the map has over the driven roads: bridges and other ways that cross above, power lines, and the road's own
 * tunnels, covers and trusses.
 */
final class StructureFinds {
    private static final double SAME_M = 1;

    private final DrivenPath path;

    StructureFinds(DrivenPath path) {
        this.path = path;
    }

    List<MapCandidate> list() {
        List<MapCandidate> found = new ArrayList<>(over());
        found.addAll(wires());
        for (DrivenPath.Run run : path.runs()) {
            MapWay way = run.way();
            boolean covered =
                    way.tags().containsKey("covered") && !way.tag("covered").equals("no");
            boolean truss = way.isBridge() && way.tag("bridge:structure").matches(".*(truss|arch|covered).*|tubular")
                    || way.tag("bridge").equals("covered");
            if (way.isTunnel() || covered || truss) {
                found.add(new MapCandidate(
                        way.isTunnel() ? Kind.TUNNEL : Kind.STRUCTURE_OVER,
                        "map-w" + way.id() + "-over",
                        way.isTunnel()
                                ? named("Tunnel", way)
                                : named(truss ? "The bridge's own structure over the road" : "Covered road", way),
                        run.middleM(),
                        run.fromM(),
                        run.toM(),
                        "way " + way.id(),
                        way.timeS(),
                        "",
                        TagText.of(way.tags()),
                        OptionalDouble.empty(),
                        0));
            }
        }
        return found;
    }

    private List<MapCandidate> wires() {
        List<MapWay> wires =
                path.net().strip().ways().stream().filter(MapWay::isWire).toList();
        List<MapCandidate> found = new ArrayList<>();
        for (WayCrossings.Crossing c : new WayCrossings(path, wires).list()) {
            if (!c.own().isTunnel()) {
                found.add(MapCandidate.point(
                        Kind.OVERHEAD_WIRE,
                        "map-w" + c.way().id() + "-wire-w" + c.own().id(),
                        named("Power line over the road", c.way()),
                        c.chainageM(),
                        "way " + c.way().id(),
                        c.way().timeS(),
                        TagText.of(c.way().tags())));
            }
        }
        return found;
    }

    private List<MapCandidate> over() {
        List<MapWay> above = path.net().strip().ways().stream()
                .filter(w -> w.mayBeOver() || w.layer() > 0)
                .toList();
        List<MapCandidate> found = new ArrayList<>();
        for (WayCrossings.Crossing c : new WayCrossings(path, above).list()) {
            boolean higher = c.way().layer() > c.own().layer()
                    || c.way().mayBeOver()
                            && !c.own().isBridge()
                            && c.way().layer() >= c.own().layer();
            // A bridge may be drawn as two ways that meet over the road.
            boolean again = !found.isEmpty()
                    && c.chainageM() - found.get(found.size() - 1).chainageM() < SAME_M;
            if (again
                    || c.atSharedNode()
                    || !higher
                    || c.own().isTunnel()
                    || c.way().isTunnel()) {
                continue;
            }
            found.add(MapCandidate.point(
                    Kind.STRUCTURE_OVER,
                    "map-w" + c.way().id() + "-over-w" + c.own().id(),
                    named("Structure over the road", c.way()),
                    c.chainageM(),
                    "way " + c.way().id(),
                    c.way().timeS(),
                    TagText.of(c.way().tags())));
        }
        return found;
    }

    private static String named(String what, MapWay way) {
        String name = TagText.name(way.tags());
        return name.isEmpty() ? what : what + ", " + name;
    }
}
