package org.cresthaul.exchange.osm;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.cresthaul.exchange.osm.MapCandidate.Kind;
import org.cresthaul.route.LonLat;

/**
 * Where the driven roads cross rails: nodes that a driven road shares with a railway, and nodes tagged as crossings on
 * a driven road. Nodes up to {@link #ONE_CROSSING_M} apart along the way are one crossing, with a track each. Where
 * road and railway cross on one level without a node, the map is incomplete.
 */
final class RailFinds {
    static final double ONE_CROSSING_M = 30;

    private final DrivenPath path;
    private final MapStrip strip;
    private final Map<Integer, List<MapWay>> railsAt = new HashMap<>();
    private final List<MapWay> rails = new ArrayList<>();

    /** A node on the way at which rails are crossed. */
    private record Crossed(Kind kind, int node, int spot, double chainageM) {}

    RailFinds(DrivenPath path) {
        this.path = path;
        strip = path.net().strip();
        for (MapWay way : strip.ways()) {
            if (way.isRail() || way.isTram() || way.isFormerRail()) {
                rails.add(way);
                for (int node : way.nodes()) {
                    if (node >= 0) {
                        railsAt.computeIfAbsent(node, n -> new ArrayList<>()).add(way);
                    }
                }
            }
        }
    }

    List<MapCandidate> list() {
        List<Crossed> all = new ArrayList<>();
        for (int i = 0; i < path.size(); i++) {
            int node = path.spot(i).node();
            if (node >= 0) {
                Kind kind = kind(node);
                if (kind != null) {
                    all.add(new Crossed(kind, node, i, path.chainageM(i)));
                }
            }
        }
        List<MapCandidate> found = new ArrayList<>();
        for (Kind kind : List.of(Kind.RAIL_CROSSING, Kind.TRAM_CROSSING, Kind.FORMER_RAIL)) {
            List<Crossed> group = new ArrayList<>();
            for (Crossed crossed : all) {
                if (crossed.kind != kind) {
                    continue;
                }
                if (!group.isEmpty() && crossed.chainageM - group.get(group.size() - 1).chainageM > ONE_CROSSING_M) {
                    found.add(candidate(group));
                    group.clear();
                }
                group.add(crossed);
            }
            if (!group.isEmpty()) {
                found.add(candidate(group));
            }
        }
        found.addAll(incomplete());
        return found;
    }

    /** What a node on the way is; null where no rails are. */
    Kind kind(int node) {
        List<MapWay> here = railsAt.getOrDefault(node, List.of());
        String tag = strip.nodeTags(node).getOrDefault("railway", "");
        if (here.stream().anyMatch(MapWay::isRail) || tag.equals("level_crossing")) {
            boolean tramOnly = here.stream().noneMatch(MapWay::isRail) && !here.isEmpty();
            return tramOnly ? kindOf(here) : Kind.RAIL_CROSSING;
        }
        if (tag.equals("tram_level_crossing")) {
            return Kind.TRAM_CROSSING;
        }
        return here.isEmpty() ? null : kindOf(here);
    }

    private static Kind kindOf(List<MapWay> here) {
        return here.stream().anyMatch(MapWay::isTram) ? Kind.TRAM_CROSSING : Kind.FORMER_RAIL;
    }

    private MapCandidate candidate(List<Crossed> group) {
        Crossed first = group.get(0);
        Set<Integer> nodes = group.stream().map(Crossed::node).collect(Collectors.toCollection(LinkedHashSet::new));
        int tracks = nodes.size();
        String raw = nodes.stream()
                .map(n -> "node " + strip.nodeId(n) + ": " + TagText.of(strip.nodeTags(n)))
                .collect(Collectors.joining(" | "));
        Set<String> ways = nodes.stream()
                .flatMap(n -> railsAt.getOrDefault(n, List.of()).stream())
                .map(w -> "way " + w.id() + ": " + TagText.of(w.tags()))
                .collect(Collectors.toCollection(LinkedHashSet::new));
        String what =
                switch (first.kind) {
                    case RAIL_CROSSING -> "Rail crossing";
                    case TRAM_CROSSING -> "Tram tracks in the road";
                    default -> "Crossing of a railway no longer or not yet in use";
                };
        String counted = first.kind == Kind.RAIL_CROSSING ? ", " + tracks + (tracks == 1 ? " track" : " tracks") : "";
        return new MapCandidate(
                first.kind,
                "map-n" + strip.nodeId(first.node),
                what + counted,
                first.chainageM,
                first.chainageM,
                group.get(group.size() - 1).chainageM,
                nodes.stream().limit(8).map(n -> "node " + strip.nodeId(n)).collect(Collectors.joining(", ")),
                nodes.stream().mapToLong(strip::nodeTimeS).max().orElse(0),
                "",
                TagText.clipped(raw + (ways.isEmpty() ? "" : " | " + String.join(" | ", ways))),
                OptionalDouble.empty(),
                tracks,
                sharpestRad(group));
    }

    /** The sharpest angle at which rails are crossed, at most a right one; empty where the map has no rails there. */
    private OptionalDouble sharpestRad(List<Crossed> group) {
        return group.stream()
                .flatMap(c -> railsAt.getOrDefault(c.node, List.of()).stream().map(rail -> angleRad(c, rail)))
                .mapToDouble(a -> a)
                .min();
    }

    /** Between the road as it is driven at a node and a rail through it, both as far as the neighboring nodes. */
    private double angleRad(Crossed crossed, MapWay rail) {
        LonLat at = strip.at(crossed.node);
        int i = crossed.spot;
        double road = direction(
                path.spot(Math.max(0, i - 1)).at(),
                path.spot(Math.min(path.size() - 1, i + 1)).at(),
                at);
        int[] nodes = rail.nodes();
        int k = 0;
        while (nodes[k] != crossed.node) {
            k++;
        }
        int before = k > 0 && nodes[k - 1] >= 0 ? nodes[k - 1] : crossed.node;
        int after = k + 1 < nodes.length && nodes[k + 1] >= 0 ? nodes[k + 1] : crossed.node;
        double apart = Math.abs(direction(strip.at(before), strip.at(after), at) - road) % Math.PI;
        return Math.min(apart, Math.PI - apart);
    }

    private static double direction(LonLat from, LonLat to, LonLat at) {
        Flat flat = Flat.at(at);
        return Math.atan2(flat.y(to.latDeg()) - flat.y(from.latDeg()), flat.x(to.lonDeg()) - flat.x(from.lonDeg()));
    }

    /** Road and railway on one level that cross without a node. */
    private List<MapCandidate> incomplete() {
        Map<Double, MapCandidate> found = new TreeMap<>();
        WayCrossings crossings =
                new WayCrossings(path, rails.stream().filter(MapWay::isRail).toList());
        for (WayCrossings.Crossing c : crossings.list()) {
            boolean apart = c.way().isBridge() != c.own().isBridge()
                    || c.way().isTunnel() != c.own().isTunnel()
                    || c.way().layer() != c.own().layer();
            if (!apart && !c.atSharedNode()) {
                boolean onRoad = !c.own().equals(MapWay.NONE);
                found.put(
                        c.chainageM(),
                        MapCandidate.point(
                                Kind.MAP_INCOMPLETE,
                                "map-w" + c.way().id() + "-w" + c.own().id(),
                                "Rail crossing that the map has no " + (onRoad ? "node" : "road") + " for",
                                c.chainageM(),
                                "way " + c.way().id()
                                        + (onRoad ? ", way " + c.own().id() : ""),
                                c.way().timeS(),
                                "way " + c.way().id() + ": "
                                        + TagText.of(c.way().tags())));
            }
        }
        return new ArrayList<>(found.values());
    }
}
