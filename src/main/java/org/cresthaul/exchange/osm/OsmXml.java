package org.cresthaul.exchange.osm;

import java.io.InputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.LongStream;
import org.cresthaul.exchange.track.TrackTime;
import org.cresthaul.exchange.track.XmlPull;
import org.cresthaul.units.InputRejected;

/** Reads nodes, ways and relations of OpenStreetMap's XML, one at a time. */
final class OsmXml {
    /** Most nodes of a way: OpenStreetMap takes 2,000. */
    static final int MOST_NODES = 20_000;

    /** Most ways of a relation: OpenStreetMap takes 32,000 members. */
    private static final int MOST_MEMBERS = 100_000;

    private static final int MOST_TAGS = 1000;

    private final XmlPull xml;

    private OsmXml(XmlPull xml) {
        this.xml = xml;
    }

    static void read(InputStream in, MapSink sink) throws InputRejected {
        new OsmXml(new XmlPull(in)).document(sink);
    }

    private void document(MapSink sink) throws InputRejected {
        boolean root = false;
        while (xml.next()) {
            if (!xml.isStart()) {
                continue;
            }
            if (!root) {
                root = true;
                if (!xml.name().equals("osm")) {
                    throw Refusals.of(
                            "not-a-map",
                            "This XML is not an extract of OpenStreetMap.",
                            "Give .osm, .osm.gz or .osm.pbf.");
                }
            } else if (xml.isStart("node")) {
                node(sink);
            } else if (xml.isStart("way")) {
                way(sink);
            } else if (xml.isStart("relation")) {
                relation(sink);
            } else if (xml.depth() == 2) {
                if (xml.isStart("bounds")) {
                    bounds(sink);
                }
                xml.elementText(0);
            }
        }
        if (!root) {
            throw Refusals.damaged();
        }
    }

    /** What is none says nothing. */
    private void bounds(MapSink sink) {
        try {
            sink.bounds(
                    Double.parseDouble(xml.attribute("minlon")),
                    Double.parseDouble(xml.attribute("minlat")),
                    Double.parseDouble(xml.attribute("maxlon")),
                    Double.parseDouble(xml.attribute("maxlat")));
        } catch (NumberFormatException | NullPointerException e) {
            // Then it is as if the extract did not say.
        }
    }

    private boolean isVisible() {
        return !"false".equals(xml.attribute("visible")) && !"delete".equals(xml.attribute("action"));
    }

    private void node(MapSink sink) throws InputRejected {
        boolean visible = isVisible() && xml.attribute("lon") != null;
        long id = visible ? number(xml.attribute("id")) : 0;
        double lon = visible ? decimal(xml.attribute("lon")) : 0;
        double lat = visible ? decimal(xml.attribute("lat")) : 0;
        long time = time(xml.attribute("timestamp"));
        Map<String, String> tags = Map.of();
        int outside = xml.depth() - 1;
        while (xml.next() && xml.depth() > outside) {
            if (xml.isStart("tag")) {
                tags = tags.isEmpty() ? new HashMap<>() : tags;
                tag(tags);
            }
        }
        if (visible) {
            sink.node(id, lon, lat, tags, time);
        }
    }

    private void way(MapSink sink) throws InputRejected {
        boolean visible = isVisible();
        long id = number(xml.attribute("id"));
        long time = time(xml.attribute("timestamp"));
        Map<String, String> tags = new HashMap<>();
        long[] nodes = new long[16];
        int n = 0;
        int outside = xml.depth() - 1;
        while (xml.next() && xml.depth() > outside) {
            if (xml.isStart("tag")) {
                tag(tags);
            } else if (xml.isStart("nd")) {
                if (n == MOST_NODES) {
                    throw Refusals.of(
                            "too-many", "A way has more than " + MOST_NODES + " nodes.", "Check the extract.");
                }
                nodes = n == nodes.length ? Arrays.copyOf(nodes, 2 * n) : nodes;
                nodes[n++] = number(xml.attribute("ref"));
            }
        }
        if (visible) {
            sink.way(id, Arrays.copyOf(nodes, n), tags, time);
        }
    }

    private void relation(MapSink sink) throws InputRejected {
        boolean visible = isVisible();
        long id = number(xml.attribute("id"));
        Map<String, String> tags = new HashMap<>();
        List<String> roles = new ArrayList<>();
        LongStream.Builder ways = LongStream.builder();
        int outside = xml.depth() - 1;
        while (xml.next() && xml.depth() > outside) {
            if (xml.isStart("tag")) {
                tag(tags);
            } else if (xml.isStart("member") && "way".equals(xml.attribute("type"))) {
                if (roles.size() == MOST_MEMBERS) {
                    throw Refusals.of(
                            "too-many", "A relation has more than " + MOST_MEMBERS + " ways.", "Check the extract.");
                }
                ways.add(number(xml.attribute("ref")));
                roles.add(Objects.requireNonNullElse(xml.attribute("role"), ""));
            }
        }
        if (visible) {
            sink.relation(id, ways.build().toArray(), roles.toArray(new String[0]), tags);
        }
    }

    private void tag(Map<String, String> tags) {
        String key = xml.attribute("k");
        String value = xml.attribute("v");
        if (key != null && value != null && tags.size() < MOST_TAGS) {
            tags.put(key, value);
        }
    }

    private static long number(String text) throws InputRejected {
        try {
            return Long.parseLong(text);
        } catch (NumberFormatException e) {
            throw Refusals.damaged();
        }
    }

    private static double decimal(String text) throws InputRejected {
        try {
            double value = Double.parseDouble(text);
            if (Double.isFinite(value)) {
                return value;
            }
        } catch (NumberFormatException | NullPointerException e) {
            // told below
        }
        throw Refusals.damaged();
    }

    private static long time(String text) {
        double seconds = text == null ? Double.NaN : TrackTime.seconds(text);
        return Double.isNaN(seconds) ? 0 : (long) Math.floor(seconds);
    }
}
