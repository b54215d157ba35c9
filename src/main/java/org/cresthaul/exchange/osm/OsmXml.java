package org.cresthaul.exchange.osm;

import java.io.InputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
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

    /** Most kinds of elements and attributes that say nothing here: a parser keeps the name of each. */
    private static final int MOST_STRANGE = 200;

    private final XmlPull xml;
    private final Set<String> strange = new HashSet<>();

    /** Which attribute of the object that is being read says what; -1 where none does. */
    private int idAt;

    private int lonAt;
    private int latAt;
    private int timestampAt;

    private boolean visible;

    private OsmXml(XmlPull xml) {
        this.xml = xml;
    }

    static void read(InputStream in, MapSink sink) throws InputRejected {
        new OsmXml(XmlPull.ofMap(in)).document(sink);
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
                continue;
            }
            switch (xml.name()) {
                case "node" -> node(sink);
                case "way" -> way(sink);
                case "relation" -> relation(sink);
                default -> other(sink);
            }
        }
        if (!root) {
            throw Refusals.damaged();
        }
    }

    private void other(MapSink sink) throws InputRejected {
        if (xml.depth() == 2 && xml.isStart("bounds")) {
            bounds(sink);
        }
        if (xml.depth() == 2) {
            skip();
        } else {
            addStrange();
        }
    }

    /** Past the end of the element that starts here. */
    private void skip() throws InputRejected {
        addStrange();
        int outside = xml.depth() - 1;
        while (xml.next() && xml.depth() > outside) {
            if (xml.isStart()) {
                addStrange();
            }
        }
    }

    private void addStrange() throws InputRejected {
        addStrange(xml.name());
        for (int i = 0; i < xml.attributes(); i++) {
            addStrange(xml.attributeName(i));
        }
    }

    private void addStrange(String name) throws InputRejected {
        if (strange.add(name) && strange.size() > MOST_STRANGE) {
            throw Refusals.of(
                    "odd-xml",
                    "The file has more than " + MOST_STRANGE + " kinds of elements and attributes that a map has not.",
                    "Check what wrote it.");
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

    /** Every attribute once: a map has ten million of them. */
    private void readAttributes() throws InputRejected {
        idAt = -1;
        lonAt = -1;
        latAt = -1;
        timestampAt = -1;
        visible = true;
        for (int i = 0; i < xml.attributes(); i++) {
            String name = xml.attributeName(i);
            switch (name) {
                case "id" -> idAt = i;
                case "lon" -> lonAt = i;
                case "lat" -> latAt = i;
                case "timestamp" -> timestampAt = i;
                case "visible" -> visible &= !xml.attribute(i).equals("false");
                case "action" -> visible &= !xml.attribute(i).equals("delete");
                case "version", "changeset", "uid", "user" -> {
                    // who changed it is of no use here
                }
                default -> addStrange(name);
            }
        }
    }

    private void node(MapSink sink) throws InputRejected {
        readAttributes();
        boolean placed = visible && lonAt >= 0;
        long number = placed ? wholeNumber(idAt) : 0;
        double lonDeg = placed ? decimal(lonAt) : 0;
        double latDeg = placed ? decimal(latAt) : 0;
        boolean taken = placed && sink.wantsNode(number, lonDeg, latDeg);
        long time = taken ? time() : 0;
        Map<String, String> tags = Map.of();
        int outside = xml.depth() - 1;
        while (xml.next() && xml.depth() > outside) {
            if (xml.isStart("tag")) {
                tags = taken && tags.isEmpty() ? new HashMap<>() : tags;
                if (taken) {
                    tag(tags);
                }
            } else if (xml.isStart()) {
                addStrange();
            }
        }
        if (taken) {
            sink.node(number, lonDeg, latDeg, tags, time);
        }
    }

    private void way(MapSink sink) throws InputRejected {
        readAttributes();
        boolean taken = visible;
        long number = wholeNumber(idAt);
        long time = time();
        Map<String, String> tags = new HashMap<>();
        long[] nodes = new long[16];
        int n = 0;
        int outside = xml.depth() - 1;
        while (xml.next() && xml.depth() > outside) {
            if (xml.isStart("nd")) {
                if (n == MOST_NODES) {
                    throw Refusals.of(
                            "too-many", "A way has more than " + MOST_NODES + " nodes.", "Check the extract.");
                }
                nodes = n == nodes.length ? Arrays.copyOf(nodes, 2 * n) : nodes;
                nodes[n++] = wholeNumber(findRef());
            } else if (xml.isStart("tag")) {
                tag(tags);
            } else if (xml.isStart()) {
                addStrange();
            }
        }
        if (taken) {
            sink.way(number, Arrays.copyOf(nodes, n), tags, time);
        }
    }

    private void relation(MapSink sink) throws InputRejected {
        readAttributes();
        boolean taken = visible;
        long number = wholeNumber(idAt);
        Map<String, String> tags = new HashMap<>();
        List<String> roles = new ArrayList<>();
        LongStream.Builder ways = LongStream.builder();
        int outside = xml.depth() - 1;
        while (xml.next() && xml.depth() > outside) {
            if (xml.isStart("tag")) {
                tag(tags);
            } else if (xml.isStart("member")) {
                int ref = findRef();
                if (!"way".equals(xml.attribute("type"))) {
                    continue;
                }
                if (roles.size() == MOST_MEMBERS) {
                    throw Refusals.of(
                            "too-many", "A relation has more than " + MOST_MEMBERS + " ways.", "Check the extract.");
                }
                ways.add(wholeNumber(ref));
                roles.add(Objects.requireNonNullElse(xml.attribute("role"), ""));
            } else if (xml.isStart()) {
                addStrange();
            }
        }
        if (taken) {
            sink.relation(number, ways.build().toArray(), roles.toArray(new String[0]), tags);
        }
    }

    private int findRef() throws InputRejected {
        int ref = -1;
        for (int i = 0; i < xml.attributes(); i++) {
            String name = xml.attributeName(i);
            if (name.equals("ref")) {
                ref = i;
            } else if (!name.equals("type") && !name.equals("role")) {
                addStrange(name);
            }
        }
        return ref;
    }

    private void tag(Map<String, String> tags) throws InputRejected {
        String key = null;
        String value = null;
        for (int i = 0; i < xml.attributes(); i++) {
            String name = xml.attributeName(i);
            switch (name) {
                case "k" -> key = xml.attribute(i);
                case "v" -> value = xml.attribute(i);
                default -> addStrange(name);
            }
        }
        if (key != null && value != null && tags.size() < MOST_TAGS) {
            tags.put(key, value);
        }
    }

    private long wholeNumber(int at) throws InputRejected {
        try {
            if (at >= 0) {
                return xml.wholeNumber(at);
            }
        } catch (NumberFormatException e) {
            // told below
        }
        throw Refusals.damaged();
    }

    private double decimal(int at) throws InputRejected {
        try {
            double value = at < 0 ? Double.NaN : xml.decimal(at);
            if (Double.isFinite(value)) {
                return value;
            }
        } catch (NumberFormatException e) {
            // told below
        }
        throw Refusals.damaged();
    }

    private long time() {
        double seconds = timestampAt < 0 ? Double.NaN : TrackTime.seconds(xml.attribute(timestampAt));
        return Double.isNaN(seconds) ? 0 : (long) Math.floor(seconds);
    }
}
