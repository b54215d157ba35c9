package org.cresthaul.exchange.osm;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.cresthaul.exchange.BaseMapFile;
import org.cresthaul.exchange.RouteImport;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.exchange.track.TrackFile;
import org.cresthaul.route.Candidate;
import org.cresthaul.route.Route;
import org.cresthaul.units.InputRejected;

/**
 * Small maps drawn by choices read off bytes: nodes, ways and areas around a road of 1000 m, tags of a list or of any
 * text. Imported with that road: the route reads back, all that comes from the map is an open candidate of which
 * nothing is surveyed, and the base map is one.
 */
public final class StripFuzz {
    private static final String[] KEYS = {
        "highway",
        "railway",
        "bridge",
        "tunnel",
        "layer",
        "maxheight",
        "maxweight",
        "maxaxleload",
        "maxwidth",
        "man_made",
        "natural",
        "landuse",
        "waterway",
        "power",
        "barrier",
        "traffic_calming",
        "ford",
        "hazard",
        "place",
        "name",
        "oneway",
        "junction",
        "hgv",
        "covered",
        "maxheight:conditional",
        "width",
        "ref",
        "type"
    };
    private static final String[] VALUES = {
        "yes",
        "no",
        "secondary",
        "trunk",
        "residential",
        "service",
        "rail",
        "tram",
        "abandoned",
        "level_crossing",
        "bridge",
        "gantry",
        "1",
        "-1",
        "2",
        "4.2",
        "13'6\"",
        "16'12\"",
        "none",
        "default",
        "7.5",
        "40 st",
        "wood",
        "water",
        "river",
        "line",
        "bollard",
        "hump",
        "table",
        "low_ground_clearance",
        "village",
        "multipolygon",
        "mini_roundabout",
        "-1",
        "roundabout",
        "destination",
        "3.8 @ (22:00-06:00)",
        "culvert",
        "forest",
        "gate"
    };
    private static final byte[] TRACK = "lon,lat\n0,0\n0.0045,0\n0.0089,0\n".getBytes(UTF_8);
    private static final Path FILE = file();

    private final byte[] data;
    private int at;

    private StripFuzz(byte[] data) {
        this.data = data;
    }

    private static Path file() {
        try {
            Path file = Files.createTempFile("strip", ".osm");
            file.toFile().deleteOnExit();
            return file;
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private int next(int bound) {
        return at < data.length ? (data[at++] & 0xFF) % bound : 0;
    }

    private String[] tags() {
        List<String> all = new ArrayList<>();
        Map<String, String> once = new TreeMap<>();
        for (int n = next(4); n > 0; n--) {
            String key = KEYS[next(KEYS.length)];
            int value = next(VALUES.length + 1);
            once.put(key, value < VALUES.length ? VALUES[value] : text());
        }
        once.forEach((k, v) -> all.addAll(List.of(k, v)));
        return all.toArray(new String[0]);
    }

    /** Any text that XML can hold. */
    private String text() {
        int length = Math.min(next(24), data.length - at);
        String text = new String(data, at, Math.max(0, length), UTF_8).replaceAll("\\p{Cntrl}", " ");
        at += Math.max(0, length);
        return text.replaceAll("[\\uFFFE\\uFFFF]", "?");
    }

    private SmallMap map() {
        SmallMap map = new SmallMap();
        List<Long> road = new ArrayList<>();
        for (int i = 0; i <= 10; i++) {
            map.node(i + 1, 100 * i + next(16), next(16) - 8, tags());
            road.add(i + 1L);
        }
        int cut = 1 + next(9);
        map.way(100, road.subList(0, cut + 1), withRoad(tags()));
        map.way(101, road.subList(cut, 11), withRoad(tags()));
        long id = 20;
        int ways = next(8);
        for (int w = 0; w < ways; w++) {
            List<Long> nodes = new ArrayList<>();
            for (int n = 1 + next(6); n > 0; n--) {
                if (next(4) == 0) {
                    nodes.add(1L + next(40));
                } else {
                    map.node(id, 4 * next(256), 2 * next(256) - 256, tags());
                    nodes.add(id++);
                }
            }
            if (next(3) == 0) {
                nodes.add(nodes.get(0));
            }
            map.way(200 + w, nodes, tags());
        }
        Map<Long, String> members = new TreeMap<>();
        for (int m = next(4); m > 0; m--) {
            members.put(199L + next(9), next(2) == 0 ? "outer" : "inner");
        }
        return map.relation(500, members, "type", "multipolygon", "natural", next(2) == 0 ? "wood" : "water");
    }

    private static String[] withRoad(String[] tags) {
        Map<String, String> all = new TreeMap<>();
        for (int i = 0; i < tags.length; i += 2) {
            all.put(tags[i], tags[i + 1]);
        }
        all.put("highway", "secondary");
        List<String> told = new ArrayList<>();
        all.forEach((k, v) -> told.addAll(List.of(k, v)));
        return told.toArray(new String[0]);
    }

    /** What a fuzzer calls. */
    public static void fuzzerTestOneInput(byte[] data) throws IOException {
        Files.writeString(FILE, new StripFuzz(data).map().xml());
        List<MapExtract> extracts = List.of(MapExtract.of(FILE));
        try {
            RouteImport.Imported imported = RouteImport.of(
                    List.of(TrackFile.parse(TRACK, "track")),
                    new RouteImport.Options("", 0.25, 250, extracts, List.of(), Optional.empty(), MapProgress.UNTOLD));
            Route route = RouteFile.parse(imported.document());
            require(route.hazards().stream()
                    .noneMatch(
                            h -> h.isSurveyed() && !isReported(route, h.place().id())));
            require(route.candidates().stream().allMatch(c -> c.candidate().state() == Candidate.State.OPEN));
            require(route.lengthM() > 900 && route.lengthM() < 1200);
            BaseMapFile.requireForm(BaseMapFile.cut(extracts, route, MapProgress.UNTOLD));
        } catch (InputRejected e) {
            throw new AssertionError("a sound map is refused: " + e.problems(), e);
        }
    }

    /** A height or a weight that a tag reports counts as known, and at best as tight. */
    private static boolean isReported(Route route, String id) {
        return route.findCandidate(id).isPresent();
    }

    private static void require(boolean holds) {
        if (!holds) {
            throw new AssertionError();
        }
    }
}
