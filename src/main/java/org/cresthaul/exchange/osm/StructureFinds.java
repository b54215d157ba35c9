package org.cresthaul.exchange.osm;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.cresthaul.exchange.osm.MapCandidate.Kind;

/**
 * What the map has over the driven roads: bridges and other ways that cross above, power lines, and the road's own
 * tunnels, covers and trusses.
 */
final class StructureFinds {
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
        List<WayCrossings.Crossing> over = new ArrayList<>();
        for (WayCrossings.Crossing c : new WayCrossings(path, above).list()) {
            boolean higher = c.way().layer() > c.own().layer()
                    || c.way().mayBeOver()
                            && !c.own().isBridge()
                            && c.way().layer() >= c.own().layer();
            if (higher && !c.atSharedNode() && !c.own().isTunnel() && !c.way().isTunnel()) {
                over.add(c);
            }
        }
        return OneStructure.of(path.net().strip(), over).stream()
                .map(StructureFinds::structure)
                .toList();
    }

    /** One structure with all that the map says of it; no height of any of them is ever used. */
    private static MapCandidate structure(List<WayCrossings.Crossing> pieces) {
        WayCrossings.Crossing first = pieces.get(0);
        Map<String, String> told = new LinkedHashMap<>();
        pieces.forEach(p -> told.put("way " + p.way().id(), TagText.of(p.way().tags())));
        String name = pieces.stream()
                .map(p -> named("Structure over the road", p.way()))
                .filter(n -> n.contains(","))
                .findFirst()
                .orElse("Structure over the road");
        double fromM = first.chainageM();
        double toM = pieces.get(pieces.size() - 1).chainageM();
        boolean single = told.size() == 1;
        return new MapCandidate(
                Kind.STRUCTURE_OVER,
                "map-w" + first.way().id() + (single ? "-over-w" : "-all-w")
                        + first.own().id(),
                name,
                (fromM + toM) / 2,
                fromM,
                toM,
                String.join(", ", told.keySet()),
                pieces.stream().mapToLong(p -> p.way().timeS()).max().orElse(0),
                "",
                single
                        ? told.values().iterator().next()
                        : TagText.clipped(told.entrySet().stream()
                                .map(t -> t.getKey() + ": " + t.getValue())
                                .collect(Collectors.joining(" | "))),
                OptionalDouble.empty(),
                0);
    }

    private static String named(String what, MapWay way) {
        String name = TagText.name(way.tags());
        return name.isEmpty() ? what : what + ", " + name;
    }
}
