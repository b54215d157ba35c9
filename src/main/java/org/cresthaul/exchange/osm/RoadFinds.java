package org.cresthaul.exchange.osm;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.cresthaul.exchange.osm.MapCandidate.Kind;

/**
 * What the driven ways and their nodes say of themselves: bridges the road runs on, limits of height, weight and width,
 * bans, humps, fords, warnings. Limits of other vehicles and of the other direction are left out.
 */
final class RoadFinds {
    private static final Pattern LIMIT = Pattern.compile(
            "(maxheight|maxweight|maxaxleload|maxbogieweight|maxweightrating|maxwidth|maxlength)(:[a-z_:]+)?");
    private static final Set<String> OTHER_VEHICLES = Set.of(
            "bus",
            "psv",
            "tourist_bus",
            "coach",
            "motorhome",
            "caravan",
            "motorcar",
            "motorcycle",
            "moped",
            "bicycle",
            "foot",
            "horse",
            "agricultural",
            "emergency",
            "boat",
            "taxi",
            "share_taxi",
            "minibus");
    private static final Set<String> NO_LIMIT = Set.of("note", "source", "type", "ref", "description", "date");
    private static final Pattern BAN = Pattern.compile(
            "(hgv|hgv_articulated|goods|trailer|motor_vehicle|vehicle|access)(:forward|:backward|:both)?(:conditional)?");
    private static final Pattern BANNED = Pattern.compile(
            "(no|private|delivery|destination|agricultural|forestry|customers|permit|discouraged|local|unsuitable"
                    + "|use_sidepath|residents)\\b.*");
    private static final Set<String> CALMING = Set.of("hump", "bump", "mini_bumps", "table", "cushion", "yes");
    private static final Set<String> DIPS = Set.of("dip", "double_dip");
    private static final Set<String> NARROWED = Set.of("choker", "chicane", "choked_table", "choked_island", "island");
    private static final Set<String> BARRIERS = Set.of(
            "gate",
            "lift_gate",
            "swing_gate",
            "sliding_gate",
            "bollard",
            "rising_bollard",
            "block",
            "chain",
            "jersey_barrier",
            "height_restrictor",
            "sump_buster",
            "bus_trap",
            "cattle_grid",
            "toll_booth",
            "border_control",
            "debris",
            "log");

    private final DrivenPath path;
    private final MapStrip strip;
    private final List<MapCandidate> found = new ArrayList<>();

    RoadFinds(DrivenPath path) {
        this.path = path;
        strip = path.net().strip();
    }

    List<MapCandidate> list() {
        MapCandidate ban = null;
        for (DrivenPath.Run run : path.runs()) {
            ways(run);
            MapCandidate next = ban(run);
            ban = joined(ban, next);
        }
        joined(ban, null);
        for (int i = 0; i < path.size(); i++) {
            if (path.spot(i).node() >= 0) {
                node(i, path.spot(i).node());
            }
        }
        return found;
    }

    private void add(
            DrivenPath.Run run, Kind kind, String suffix, String name, String key, String raw, OptionalDouble value) {
        MapWay way = run.way();
        found.add(new MapCandidate(
                kind,
                "map-w" + way.id() + "-" + suffix,
                name,
                run.middleM(),
                run.fromM(),
                run.toM(),
                "way " + way.id(),
                way.timeS(),
                key,
                raw,
                value,
                0));
    }

    private void ways(DrivenPath.Run run) {
        MapWay way = run.way();
        String road = TagText.name(way.tags()).isEmpty() ? "" : ", " + TagText.name(way.tags());
        OptionalDouble none = OptionalDouble.empty();
        if (way.isBridge()) {
            add(run, Kind.ON_BRIDGE, "bridge", "Bridge the road runs on" + road, "", TagText.of(way.tags()), none);
        }
        for (Map.Entry<String, String> tag : new TreeMap<>(way.tags()).entrySet()) {
            if (isLimit(tag.getKey(), run.forward())) {
                String key = tag.getKey();
                add(run, Kind.LIMIT, key.replace(':', '.'), named(key), key, written(tag), value(key, tag.getValue()));
            }
        }
        if (is(way.tags(), "ford")) {
            add(run, Kind.FORD, "ford", "Ford" + road, "", TagText.of(way.tags()), none);
        }
        String calming = way.tag("traffic_calming");
        if (CALMING.contains(calming) || DIPS.contains(calming)) {
            Kind kind = DIPS.contains(calming) ? Kind.DIP : Kind.HUMP;
            add(run, kind, "calming", "Traffic calming: " + calming, "", TagText.of(way.tags()), none);
        }
        if (is(way.tags(), "narrow")) {
            add(run, Kind.BAN, "narrow", "Narrow road" + road, "narrow", TagText.of(way.tags()), none);
        }
    }

    private static String named(String key) {
        String what =
                switch (key.split(":")[0]) {
                    case "maxheight" -> "Height limit";
                    case "maxwidth" -> "Width limit";
                    case "maxlength" -> "Length limit";
                    case "maxaxleload" -> "Axle load limit";
                    case "maxbogieweight" -> "Limit for axle groups";
                    default -> "Weight limit";
                };
        return key.contains(":")
                ? what + " (" + key.substring(key.indexOf(':') + 1).replace(':', ' ') + ")"
                : what;
    }

    private static String written(Map.Entry<String, String> tag) {
        return TagText.clipped(tag.getKey() + "=" + tag.getValue());
    }

    private static boolean isLimit(String key, boolean forward) {
        if (!LIMIT.matcher(key).matches()) {
            return false;
        }
        String[] parts = key.split(":");
        for (int i = 1; i < parts.length; i++) {
            boolean otherWay = parts[i].equals(forward ? "backward" : "forward");
            if (otherWay || OTHER_VEHICLES.contains(parts[i]) || NO_LIMIT.contains(parts[i])) {
                return false;
            }
        }
        return true;
    }

    private static OptionalDouble value(String key, String text) {
        if (key.contains(":lanes")) {
            return OptionalDouble.empty();
        }
        boolean length = key.startsWith("maxheight") || key.startsWith("maxwidth") || key.startsWith("maxlength");
        return length ? TagQuantity.lengthM(text) : TagQuantity.massKg(text);
    }

    private static boolean is(Map<String, String> tags, String key) {
        return tags.containsKey(key) && !tags.get(key).equals("no");
    }

    /** The first ban of a way; null where it has none. */
    private MapCandidate ban(DrivenPath.Run run) {
        Map<String, String> tags = run.way().tags();
        boolean welcome = tags.getOrDefault("hgv", "").matches("yes|designated|permissive");
        for (Map.Entry<String, String> tag : new TreeMap<>(tags).entrySet()) {
            String key = tag.getKey();
            boolean general = key.startsWith("motor_vehicle") || key.startsWith("vehicle") || key.startsWith("access");
            boolean otherWay = key.contains(run.forward() ? ":backward" : ":forward");
            if (!BAN.matcher(key).matches()
                    || !BANNED.matcher(tag.getValue()).matches()
                    || otherWay
                    || general && welcome) {
                continue;
            }
            MapWay way = run.way();
            return new MapCandidate(
                    Kind.BAN,
                    "map-w" + way.id() + "-" + key.replace(':', '.'),
                    "Closed to trucks, or to some of them",
                    run.middleM(),
                    run.fromM(),
                    run.toM(),
                    "way " + way.id(),
                    way.timeS(),
                    key,
                    written(tag),
                    OptionalDouble.empty(),
                    0);
        }
        return null;
    }

    /** Bans in the same words that follow one another are one. */
    private MapCandidate joined(MapCandidate before, MapCandidate next) {
        if (before != null && next != null && before.raw().equals(next.raw()) && next.fromM() - before.toM() < 1) {
            return new MapCandidate(
                    before.kind(),
                    before.id(),
                    before.name(),
                    (before.fromM() + next.toM()) / 2,
                    before.fromM(),
                    next.toM(),
                    before.object(),
                    before.timeS(),
                    before.key(),
                    before.raw(),
                    before.value(),
                    0);
        }
        if (before != null) {
            found.add(before);
        }
        return next;
    }

    private void node(int spot, int node) {
        Map<String, String> tags = strip.nodeTags(node);
        if (tags.isEmpty()) {
            return;
        }
        String raw = TagText.of(tags);
        for (Map.Entry<String, String> tag : new TreeMap<>(tags).entrySet()) {
            if (isLimit(tag.getKey(), true) || isLimit(tag.getKey(), false)) {
                String key = tag.getKey();
                found.add(new MapCandidate(
                        Kind.LIMIT,
                        "map-n" + strip.nodeId(node) + "-" + key.replace(':', '.'),
                        named(key),
                        path.chainageM(spot),
                        path.chainageM(spot),
                        path.chainageM(spot),
                        "node " + strip.nodeId(node),
                        strip.nodeTimeS(node),
                        key,
                        written(tag),
                        value(key, tag.getValue()),
                        0));
            }
        }
        String calming = tags.getOrDefault("traffic_calming", "");
        if (CALMING.contains(calming)) {
            point(spot, node, Kind.HUMP, "Traffic calming: " + calming, raw);
        } else if (DIPS.contains(calming)) {
            point(spot, node, Kind.DIP, "Traffic calming: " + calming, raw);
        } else if (NARROWED.contains(calming)) {
            point(spot, node, Kind.BARRIER, "Narrowed road: " + calming.replace('_', ' '), raw);
        }
        if (is(tags, "ford")) {
            point(spot, node, Kind.FORD, "Ford", raw);
        }
        if (tags.getOrDefault("highway", "").equals("mini_roundabout")) {
            point(spot, node, Kind.MINI_ROUNDABOUT, "Mini roundabout", raw);
        }
        if (raw.contains("low_ground_clearance") || raw.contains("W10-5") || raw.contains("low ground clearance")) {
            point(spot, node, Kind.LOW_GROUND_CLEARANCE, "Warning: low ground clearance", raw);
        }
        String barrier = tags.getOrDefault("barrier", "");
        if (BARRIERS.contains(barrier)) {
            point(spot, node, Kind.BARRIER, "In the road: " + barrier.replace('_', ' '), raw);
        }
    }

    private void point(int spot, int node, Kind kind, String name, String raw) {
        found.add(MapCandidate.point(
                kind,
                "map-n" + strip.nodeId(node) + "-" + kind.word(),
                name,
                path.chainageM(spot),
                "node " + strip.nodeId(node),
                strip.nodeTimeS(node),
                raw));
    }
}
