package org.cresthaul.exchange.osm;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.cresthaul.exchange.osm.BaseMap.Layer;

/** Which layer of a base map an object belongs to, by its tags. */
final class BaseMapTags {
    private static final Set<String> MAJOR = Set.of("motorway", "trunk", "primary");
    private static final Set<String> MIDDLE = Set.of("secondary", "tertiary");
    private static final Set<String> FLOWING = Set.of("river", "canal", "stream");
    private static final List<String> SETTLED = List.of("city", "town", "village", "hamlet");

    private BaseMapTags() {}

    /** Of a line or an area; empty where it is not drawn. */
    static Optional<Layer> ofWay(Map<String, String> tags) {
        String highway = tags.getOrDefault("highway", "").replace("_link", "");
        MapWay way = new MapWay(0, new int[0], tags, 0);
        if (way.isRoad()) {
            return Optional.of(
                    MAJOR.contains(highway)
                            ? Layer.MAJOR_ROAD
                            : MIDDLE.contains(highway) ? Layer.MIDDLE_ROAD : Layer.MINOR_ROAD);
        }
        if (way.isRail() && !way.isTunnel()) {
            return Optional.of(Layer.RAILWAY);
        }
        if (isWaterArea(tags) || FLOWING.contains(tags.getOrDefault("waterway", "")) && !way.isTunnel()) {
            return Optional.of(Layer.WATER);
        }
        return tags.getOrDefault("natural", "").equals("wood")
                        || tags.getOrDefault("landuse", "").equals("forest")
                ? Optional.of(Layer.WOODS)
                : Optional.empty();
    }

    /** Of an area that is put together from ways; empty where it is not drawn. */
    static Optional<Layer> ofRelation(Map<String, String> tags) {
        return tags.getOrDefault("type", "").equals("multipolygon")
                ? ofWay(tags).filter(l -> isArea(l, tags))
                : Optional.empty();
    }

    private static boolean isWaterArea(Map<String, String> tags) {
        return tags.getOrDefault("natural", "").equals("water")
                || tags.getOrDefault("waterway", "").equals("riverbank")
                || Set.of("reservoir", "basin").contains(tags.getOrDefault("landuse", ""));
    }

    /** Whether a closed way of this layer is filled. */
    static boolean isArea(Layer layer, Map<String, String> tags) {
        return layer == Layer.WOODS || layer == Layer.WATER && isWaterArea(tags);
    }

    /** How small a settlement is: the largest are 0. */
    static int smallness(Map<String, String> tags) {
        return SETTLED.indexOf(tags.getOrDefault("place", ""));
    }

    /** The name of a settlement; empty for any other node. */
    static Optional<String> ofNode(Map<String, String> tags) {
        return SETTLED.contains(tags.getOrDefault("place", ""))
                ? Optional.ofNullable(tags.get("name")).filter(n -> !n.isBlank())
                : Optional.empty();
    }
}
