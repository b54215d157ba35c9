package org.cresthaul.exchange.osm;

import java.util.Arrays;
import java.util.Map;
import java.util.Set;

/**
 * A way of the map, with its nodes by their numbers in the {@link MapStrip}.
 *
 * @param nodes numbers of its nodes; -1 for one whose place the extract does not have. Not to be changed
 * @param timeS when it was last changed, seconds since 1970; 0 where the extract does not say
 */
record MapWay(long id, int[] nodes, Map<String, String> tags, long timeS) {
    /** Ways of this key that no truck drives on. */
    private static final Set<String> NOT_DRIVEN = Set.of(
            "footway",
            "path",
            "cycleway",
            "steps",
            "pedestrian",
            "bridleway",
            "corridor",
            "platform",
            "construction",
            "proposed",
            "elevator",
            "via_ferrata",
            "abandoned",
            "razed",
            "rest_area",
            "services",
            "bus_stop",
            "no");

    private static final Set<String> RAILS =
            Set.of("rail", "light_rail", "narrow_gauge", "preserved", "subway", "funicular");
    private static final Set<String> FORMER =
            Set.of("disused", "abandoned", "razed", "construction", "proposed", "dismantled");

    /** In place of a road where the line runs on none of the map: nothing is known of its level. */
    static final MapWay NONE = new MapWay(0, new int[0], Map.of(), 0);

    MapWay {
        tags = Map.copyOf(tags);
    }

    String tag(String key) {
        return tags.getOrDefault(key, "");
    }

    boolean isRoad() {
        return tags.containsKey("highway")
                && !NOT_DRIVEN.contains(tag("highway"))
                && !tag("area").equals("yes");
    }

    boolean isRail() {
        return RAILS.contains(tag("railway"));
    }

    boolean isTram() {
        return tag("railway").equals("tram");
    }

    /** Rails that trains no longer use, or not yet; where rails lie the road may be raised all the same. */
    boolean isFormerRail() {
        return FORMER.contains(tag("railway"))
                || tags.containsKey("disused:railway")
                || tags.containsKey("abandoned:railway");
    }

    private boolean is(String key) {
        return tags.containsKey(key) && !tag(key).equals("no");
    }

    boolean isBridge() {
        return is("bridge")
                || tag("man_made").equals("bridge")
                || tag("building").equals("bridge");
    }

    boolean isTunnel() {
        return is("tunnel") && !tag("tunnel").equals("culvert");
    }

    /** Something that may pass over a road. */
    boolean mayBeOver() {
        return isBridge()
                || tag("man_made").equals("gantry")
                || tag("man_made").equals("goods_conveyor")
                || tag("man_made").equals("pipeline") && tag("location").equals("overhead");
    }

    int layer() {
        try {
            return Integer.parseInt(tag("layer").strip());
        } catch (NumberFormatException e) {
            return isBridge() ? 1 : isTunnel() ? -1 : 0;
        }
    }

    /** A power line on poles. */
    boolean isWire() {
        return Set.of("line", "minor_line").contains(tag("power"))
                && !tag("location").equals("underground");
    }

    boolean isKept() {
        return isRoad() || isWire() || isRail() || isTram() || isFormerRail() || mayBeOver();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof MapWay way && way.id == id;
    }

    @Override
    public int hashCode() {
        return Long.hashCode(id);
    }

    @Override
    public String toString() {
        return "way " + id + " " + tags + " " + Arrays.toString(nodes);
    }
}
