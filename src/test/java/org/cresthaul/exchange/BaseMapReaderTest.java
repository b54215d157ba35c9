package org.cresthaul.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.cresthaul.exchange.osm.BaseMap;
import org.cresthaul.exchange.osm.BaseMap.Layer;
import org.cresthaul.route.LonLat;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.InputRejected;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Base maps as files say them, and what is refused at which place. */
class BaseMapReaderTest {
    private static byte[] map(String head, String... features) {
        return ("{\"type\": \"FeatureCollection\", \"cresthaul\": \"basemap/1\", " + head + ", \"features\": ["
                        + String.join(", ", features) + "]}")
                .getBytes(StandardCharsets.UTF_8);
    }

    private static String feature(String properties, String type, String coordinates) {
        return "{\"type\": \"Feature\", \"properties\": {" + properties + "}, \"geometry\": {\"type\": \"" + type
                + "\", \"coordinates\": " + coordinates + "}}";
    }

    private static List<InputProblem> refused(byte[] map) {
        return assertThrows(InputRejected.class, () -> BaseMapReader.parse(map)).problems();
    }

    @Test
    void readsLinesAreasWithHolesAndNames() throws Exception {
        CreditedMap read = BaseMapReader.parse(map(
                "\"attribution\": \"invented\", \"whole\": true",
                feature("\"layer\": \"railway\"", "MultiLineString", "[[[0, 1], [2, 3]], [[4, 5], [6, 7], [8, 9]]]"),
                feature(
                        "\"layer\": \"woods\"",
                        "MultiPolygon",
                        "[[[[0, 0], [9, 0], [9, 9], [0, 0]], [[1, 1], [2, 1], [2, 2], [1, 1]]]]"),
                feature("\"layer\": \"sheds\"", "Point", "[0, 0]"),
                feature("\"layer\": \"place\", \"name\": \"Osierby\"", "Point", "[1.5, 2.5]")));

        assertEquals("invented", read.credit());
        assertTrue(read.map().whole());
        assertEquals(
                List.of(
                        new BaseMap.Shape(
                                Layer.RAILWAY, false, "", List.of(new LonLat(0, 1), new LonLat(2, 3)), List.of()),
                        new BaseMap.Shape(
                                Layer.RAILWAY,
                                false,
                                "",
                                List.of(new LonLat(4, 5), new LonLat(6, 7), new LonLat(8, 9)),
                                List.of()),
                        new BaseMap.Shape(
                                Layer.WOODS,
                                true,
                                "",
                                List.of(new LonLat(0, 0), new LonLat(9, 0), new LonLat(9, 9), new LonLat(0, 0)),
                                List.of(List.of(
                                        new LonLat(1, 1), new LonLat(2, 1), new LonLat(2, 2), new LonLat(1, 1)))),
                        new BaseMap.Shape(Layer.PLACE, false, "Osierby", List.of(new LonLat(1.5, 2.5)))),
                read.map().shapes());
    }

    /** As the page takes it. */
    @Test
    void isNotWholeWhereNothingSaysSo() throws Exception {
        assertFalse(
                BaseMapReader.parse(map("\"attribution\": \"invented\"")).map().whole());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "MultiLineString; [[[0, 0]]]; wrong-geometry; /0",
                "MultiLineString; [[[0, 0], [200, 0]]]; out-of-range; /0/1",
                "MultiLineString; [[[0, 0], [0]]]; wrong-position; /0/1",
                "MultiLineString; []; wrong-geometry; ''",
                "MultiLineString; 7; wrong-geometry; ''",
                "MultiPolygon; [[[[0, 0], [1, 0], [1, \"x\"], [0, 0]]]]; wrong-position; /0/0/2",
            })
    void refusesWhatCannotBeDrawnAtItsPlace(String type, String coordinates, String code, String place) {
        List<InputProblem> problems =
                refused(map("\"attribution\": \"invented\"", feature("\"layer\": \"water\"", type, coordinates)));

        assertEquals(1, problems.size(), problems.toString());
        assertEquals(code, problems.get(0).code());
        assertEquals("/features/0/geometry/coordinates" + place, problems.get(0).pointer());
        assertFalse(problems.get(0).remedy().isBlank());
    }

    /** Saved maps have them: from narrow areas, thinned out and back. */
    @Test
    void aRingOfThreePositionsIsNoArea() throws Exception {
        String hole = "[[1, 1], [2, 1], [1, 1]]";
        CreditedMap read = BaseMapReader.parse(map(
                "\"attribution\": \"invented\"",
                feature(
                        "\"layer\": \"water\"",
                        "MultiPolygon",
                        "[[[[0, 0], [1, 0], [0, 0]]], [[[0, 0], [9, 0], [9, 9], [0, 0]], " + hole + "]]")));

        assertEquals(
                List.of(new BaseMap.Shape(
                        BaseMap.Layer.WATER,
                        true,
                        "",
                        List.of(new LonLat(0, 0), new LonLat(9, 0), new LonLat(9, 9), new LonLat(0, 0)),
                        List.of())),
                read.map().shapes());
    }

    @Test
    void refusesAMapThatThanksNobodyAndOtherFiles() {
        assertEquals("/attribution", refused(map("\"whole\": true")).get(0).pointer());
        assertEquals(
                "/attribution", refused(map("\"attribution\": \" \"")).get(0).pointer());
        for (String other : List.of("{}", "[]", "7", "{\"cresthaul\": \"route/1\", \"features\": []}")) {
            assertEquals(
                    "not-a-base-map",
                    refused(other.getBytes(StandardCharsets.UTF_8)).get(0).code(),
                    other);
        }
    }

    @Test
    void takesAsManyPointsAsTheFormatHasAndNoMore() throws Exception {
        assertEquals(1, BaseMapReader.parse(lineOf(150_000)).map().shapes().size());
        assertEquals("too-many", refused(lineOf(150_001)).get(0).code());
    }

    private static byte[] lineOf(int points) {
        return map(
                "\"attribution\": \"invented\"",
                feature(
                        "\"layer\": \"water\"",
                        "MultiLineString",
                        IntStream.range(0, points)
                                .mapToObj(i -> "[0," + i * 1e-4 + "]")
                                .collect(Collectors.joining(",", "[[", "]]"))));
    }
}
