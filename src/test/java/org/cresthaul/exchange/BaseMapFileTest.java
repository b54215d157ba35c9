package org.cresthaul.exchange;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.cresthaul.exchange.osm.MapExtract;
import org.cresthaul.exchange.osm.MapProgress;
import org.cresthaul.exchange.osm.SmallMap;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.route.Route;
import org.cresthaul.units.InputRejected;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Base maps cut from small maps written by hand along a road of 1000 m on the equator. */
class BaseMapFileTest {
    @TempDir
    private Path folder;

    private static final Route ROUTE = route();

    private static Route route() {
        try {
            return RouteFile.parse("""
                    {"type": "FeatureCollection", "cresthaul": "route/1", "name": "Equator", "note": "Invented.",
                     "features": [{"type": "Feature", "properties": {"route": "Straight"},
                      "geometry": {"type": "LineString", "coordinates": [[0, 0], [0.0089, 0]]}}]}""");
        } catch (InputRejected e) {
            throw new IllegalArgumentException(e);
        }
    }

    private JsonNode cut(SmallMap map) throws Exception {
        byte[] bytes = BaseMapFile.cut(List.of(MapExtract.of(map.writeXml(folder))), ROUTE, MapProgress.UNTOLD);
        assertArrayEquals(bytes, BaseMapFile.requireForm(bytes));
        return new ObjectMapper().readTree(bytes);
    }

    private static List<String> told(JsonNode map) {
        List<String> all = new ArrayList<>();
        map.path("features")
                .forEach(f -> all.add(f.at("/properties/layer").asText() + " "
                        + f.at("/geometry/type").asText() + " "
                        + (f.at("/geometry/type").asText().equals("Point")
                                ? f.at("/properties/name").asText()
                                : "" + f.at("/geometry/coordinates").size())));
        return all;
    }

    @Test
    void hasWhatIsDrawnAroundARoadByLayerFromTheLowest() throws Exception {
        SmallMap map = SmallMap.road()
                .node(20, 0, 500)
                .node(21, 300, 500)
                .node(22, 300, 900)
                .node(23, 0, 900)
                .way(200, List.of(20L, 21L, 22L, 23L, 20L), "natural", "wood")
                .node(30, 500, 200)
                .node(31, 700, 200)
                .node(32, 700, 400)
                .way(201, List.of(30L, 31L, 32L, 30L), "natural", "water")
                .node(40, 400, -900)
                .node(41, 400, 900)
                .way(202, List.of(40L, 41L), "railway", "rail")
                .way(203, List.of(41L, 21L), "highway", "residential")
                .way(204, List.of(40L, 30L), "highway", "trunk")
                .way(205, List.of(40L, 32L), "waterway", "river")
                .way(206, List.of(40L, 31L), "highway", "footway")
                .way(207, List.of(40L, 32L), "railway", "rail", "tunnel", "yes")
                .node(50, 100, 100, "place", "village", "name", "Say \"so\" \\ <b>")
                .node(51, 100, 120, "place", "village")
                .node(52, 300, 120, "place", "hamlet", "name", "Least")
                .node(53, 300, 140, "place", "city", "name", "Most");

        JsonNode cut = cut(map);

        assertEquals(
                List.of(
                        "woods MultiPolygon 1",
                        "water MultiPolygon 1",
                        "water MultiLineString 1",
                        "minor-road MultiLineString 1",
                        "middle-road MultiLineString 1",
                        "major-road MultiLineString 1",
                        "railway MultiLineString 1",
                        "place Point Most",
                        "place Point Say \"so\" \\ <b>",
                        "place Point Least"),
                told(cut));
        assertEquals(
                "\u00a9 OpenStreetMap contributors, ODbL 1.0",
                cut.path("attribution").asText());
        assertTrue(cut.path("whole").asBoolean());
        // A ring closes where it began; the road of eleven nodes in a line is two.
        JsonNode wood = cut.at("/features/0/geometry/coordinates/0/0");
        assertEquals(5, wood.size());
        assertEquals(wood.get(0), wood.get(4));
        assertEquals(2, cut.at("/features/4/geometry/coordinates/0").size());
    }

    /** The strip is at least 2.2 km wide on either side, and no more than twice two cells of that. */
    @Test
    void endsWhereTheStripEndsAndKeepsAreasWhole() throws Exception {
        SmallMap map = SmallMap.road()
                .node(20, 500, 1000)
                .node(21, 500, 2000)
                .node(22, 500, 9000)
                .way(200, List.of(20L, 21L, 22L), "highway", "primary")
                .node(30, 900, 1000)
                .node(31, 900, 9000)
                .node(32, 1200, 9000)
                .way(201, List.of(30L, 31L, 32L, 30L), "natural", "water")
                .node(40, 0, 9000)
                .node(41, 900, 9500)
                .way(202, List.of(40L, 41L), "highway", "primary")
                .node(50, 0, 9100, "place", "town", "name", "Afar");

        JsonNode cut = cut(map);

        assertEquals(
                List.of("water MultiPolygon 1", "middle-road MultiLineString 1", "major-road MultiLineString 1"),
                told(cut));
        assertEquals(4, cut.at("/features/0/geometry/coordinates/0/0").size());
        JsonNode road = cut.at("/features/2/geometry/coordinates/0");
        // 2000 m north of the equator, on an ellipsoid whose degree of latitude is 110.574 km there.
        assertEquals(2000 / 110_574.0, road.get(road.size() - 1).get(1).asDouble(), 1e-5);
    }

    /**
     * A forest of two ways of which only one comes near the route, with a clearing and an islet of water in it; and a
     * lake that the extract has half of.
     */
    private static SmallMap forest() {
        return SmallMap.road()
                .node(20, 100, 500)
                .node(21, 900, 500)
                .node(22, 900, 30_000)
                .node(23, 100, 30_000)
                .way(200, List.of(20L, 21L))
                .way(201, List.of(20L, 23L, 22L, 21L))
                .node(30, 400, 600)
                .node(31, 600, 600)
                .node(32, 600, 800)
                .way(202, List.of(30L, 31L, 32L, 30L), "natural", "water")
                .node(40, 100, -400)
                .node(41, 900, -400)
                .way(203, List.of(40L, 41L))
                .relation(
                        500,
                        new TreeMap<>(Map.of(200L, "outer", 201L, "outer", 202L, "inner")),
                        "type",
                        "multipolygon",
                        "natural",
                        "wood")
                .relation(
                        501,
                        new TreeMap<>(Map.of(203L, "outer", 999L, "outer")),
                        "type",
                        "multipolygon",
                        "natural",
                        "water")
                .relation(502, new TreeMap<>(Map.of(200L, "outer")), "type", "route", "route", "bus");
    }

    @Test
    void areasOfSeveralWaysAreWholeAndHaveTheirHoles() throws Exception {
        Path pbf = Files.write(folder.resolve("forest.osm.pbf"), forest().pbf());
        List<JsonNode> both = List.of(
                cut(forest()),
                new ObjectMapper().readTree(BaseMapFile.cut(List.of(MapExtract.of(pbf)), ROUTE, MapProgress.UNTOLD)));
        for (JsonNode cut : both) {
            assertEquals(
                    List.of(
                            "woods MultiPolygon 1",
                            "water MultiPolygon 1",
                            "water MultiLineString 1",
                            "middle-road MultiLineString 1"),
                    told(cut));
            JsonNode wood = cut.at("/features/0/geometry/coordinates/0");
            assertEquals(2, wood.size());
            assertEquals(5, wood.get(0).size());
            assertEquals(wood.get(0).get(0), wood.get(0).get(4));
            // 30 km north of the equator, on an ellipsoid whose degree of latitude is 110.574 km there.
            double north = 0;
            for (JsonNode at : wood.get(0)) {
                north = Math.max(north, at.get(1).asDouble());
            }
            assertEquals(30_000 / 110_574.0, north, 1e-5);
            assertEquals(4, wood.get(1).size());
            assertTrue(cut.path("whole").asBoolean());
        }
    }

    /** Relations and ways before their nodes. */
    @Test
    void readsExtractsInAnyOrder() throws Exception {
        String xml = forest().xml();
        int ways = xml.indexOf("<way");
        String turned = "<osm version='0.6'>" + xml.substring(ways).replace("</osm>", "")
                + xml.substring(xml.indexOf("<node"), ways) + "</osm>";
        Path file = Files.writeString(folder.resolve("turned.osm"), turned);

        JsonNode cut =
                new ObjectMapper().readTree(BaseMapFile.cut(List.of(MapExtract.of(file)), ROUTE, MapProgress.UNTOLD));

        assertEquals(cut(forest()), cut);
    }

    @Test
    void refusesWhatIsNoMapAndNoBaseMap() throws Exception {
        Path text = Files.writeString(folder.resolve("letter.osm"), "Dear all");
        assertThrows(
                InputRejected.class, () -> BaseMapFile.cut(List.of(MapExtract.of(text)), ROUTE, MapProgress.UNTOLD));
        for (String wrong : List.of("{}", "[]", "{\"cresthaul\": \"route/1\", \"features\": []}", "\u0000")) {
            assertThrows(
                    InputRejected.class, () -> BaseMapFile.requireForm(wrong.getBytes(StandardCharsets.UTF_8)), wrong);
        }
    }

    @Test
    void standsBesideItsRoute() {
        assertEquals("valley.basemap.geojson", BaseMapFile.nameBeside("valley.route.geojson"));
        assertEquals("valley.basemap.geojson", BaseMapFile.nameBeside("valley.geojson"));
        assertEquals("valley.basemap.geojson", BaseMapFile.nameBeside("valley"));
    }

    @Test
    void theSamplesHaveInventedOnesThatSaySo() throws Exception {
        for (String sample : InventedBaseMap.SAMPLES) {
            byte[] kept = Files.readAllBytes(Path.of("sample-routes", sample + BaseMapFile.ENDING));

            assertArrayEquals(InventedBaseMap.of(sample), kept, sample);
            JsonNode map = new ObjectMapper().readTree(BaseMapFile.requireForm(kept));
            assertTrue(map.path("attribution").asText().contains("invented"));
            assertTrue(map.path("features").size() >= 10, sample);
            assertTrue(kept.length < 200_000, kept.length + " bytes");
        }
    }
}
