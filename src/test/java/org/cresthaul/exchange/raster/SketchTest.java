package org.cresthaul.exchange.raster;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.cresthaul.exchange.ImportPreview;
import org.cresthaul.exchange.RouteImport;
import org.cresthaul.exchange.osm.MapProgress;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.exchange.track.TrackFile;
import org.cresthaul.road.SurveyedPoint;
import org.cresthaul.route.Candidate;
import org.cresthaul.route.Route;
import org.cresthaul.route.Sketch;
import org.cresthaul.units.InputRejected;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What an import draws from rasters that are written here: a road on the equator over a ridge of straight slopes. */
class SketchTest {
    private static final int[] WGS84_METERS = {1024, 2, 1025, 2, 2048, 4326, 4099, 9001};
    private static final double STEP = 1 / 10800.0;
    /** A cell along the equator of WGS 84, 6,378,137 m from the axis. */
    private static final double CELL_M = 6_378_137 * Math.PI / 180 * STEP;

    private static final double GRADE = 0.02;

    @TempDir
    private Path folder;

    /** Places by the column that they lie on: a crossing, and one more of each state and kind. */
    private static byte[] route() {
        StringBuilder text = new StringBuilder("""
                {"type": "FeatureCollection", "cresthaul": "route/1", "name": "Ridge", "note": "Invented.",
                 "features": [
                  {"type": "Feature", "properties": {"route": "Equator"},
                   "geometry": {"type": "LineString", "coordinates": [[0, 0], [0.0185185185, 0]]}}""");
        String map = "\"candidate\": {\"source\": \"map\", \"object\": \"node 1\", \"state\": ";
        place(text, "A", 40, "\"hazard\": \"rail-crossing\", " + map + "\"open\"}");
        place(text, "B", 80, "\"hazard\": \"crest\", " + map + "\"dismissed\", \"by\": \"me\", \"why\": \"gone\"}");
        place(text, "C", 100, "\"hazard\": \"low-structure\", \"measured\": \"unknown\", " + map + "\"open\"}");
        place(text, "D", 140, "\"hazard\": \"dip\", " + map + "\"open\"}");
        place(text, "E", 199, "\"hazard\": \"rail-crossing\", " + map + "\"open\"}");
        place(text, "F", 160, "\"hazard\": \"rail-crossing\"");
        return text.append("]}").toString().getBytes(UTF_8);
    }

    private static void place(StringBuilder text, String id, int column, String properties) {
        text.append(",{\"type\": \"Feature\", \"geometry\": {\"type\": \"Point\", \"coordinates\": [" + column * STEP
                + ", 0]}, \"properties\": {\"id\": \"" + id + "\", \"name\": \"Place\", " + properties + "}}");
    }

    /** Up to column 40 and down from it, whatever the row. */
    private static double ridge(int column, int row) {
        return 100 - GRADE * CELL_M * Math.abs(column - 40);
    }

    private RasterSource raster(String name, SmallRaster raster) throws IOException {
        Path path = folder.resolve(name);
        Files.write(path, raster.bytes());
        return new RasterSource(name, path, RasterOptions.NONE);
    }

    private RasterSource ridge(String name) throws IOException {
        return raster(
                name,
                SmallRaster.tiff(201, 5, SketchTest::ridge)
                        .at(0, 2 * STEP, STEP, STEP)
                        .keys(WGS84_METERS)
                        .with(306, "2021:06:30 00:00:00"));
    }

    private static RouteImport.Imported imported(RasterSource... rasters) throws InputRejected {
        return RouteImport.of(
                List.of(TrackFile.parse(route(), "ridge.geojson")),
                new RouteImport.Options(
                        "", 0, 250, List.of(), List.of(rasters), Optional.of(route()), MapProgress.UNTOLD));
    }

    private static Optional<Sketch> sketch(RouteImport.Imported imported, String id) throws InputRejected {
        Route back = RouteFile.parse(imported.document());
        return back.findCandidate(id).flatMap(Candidate::sketch);
    }

    @Test
    void theRoadIsDrawnAtTheRastersSpacing() throws Exception {
        RouteImport.Imported imported = imported(ridge("ridge.tif"));
        Sketch sketch = sketch(imported, "A").orElseThrow();

        assertEquals("ridge.tif", sketch.source());
        assertEquals("2021-06-30", sketch.date().orElseThrow().toString());
        assertEquals(CELL_M, sketch.spacingM(), 0.03);
        // 60 m to either side, in cells.
        assertEquals(11, sketch.points().size());
        for (SurveyedPoint point : sketch.points()) {
            assertEquals(100 - GRADE * Math.abs(point.distanceM()), point.elevationM(), 0.002, point.toString());
        }
        assertEquals(5 * CELL_M, sketch.points().get(10).distanceM(), 0.15);
        assertFalse(sketch.isTooCoarse());
    }

    @Test
    void onlyOpenCandidatesOfTheRoadsGroundAreSketched() throws Exception {
        RouteImport.Imported imported = imported(ridge("ridge.tif"));

        assertTrue(sketch(imported, "D").isPresent());
        for (String other : List.of("B", "C", "F")) {
            assertTrue(sketch(imported, other).isEmpty(), other);
        }
        // The line ends a cell behind it: too little of the road is known.
        assertTrue(sketch(imported, "E").isEmpty());
        ImportPreview.RasterUse use = imported.preview().rasters().get(0);
        assertEquals(2, use.sketches());
        assertEquals(1, use.without());
        assertFalse(use.tooCoarse());
        assertTrue(RouteFile.parse(imported.document()).hazards().stream().noneMatch(h -> h.isSurveyed()));
    }

    /** A hole 20 m before the place leaves it without a sketch, one 50 m behind it cuts the sketch short. */
    @Test
    void aSketchEndsWhereHeightsEnd() throws Exception {
        RasterSource holed = raster(
                "holed.tif",
                SmallRaster.tiff(201, 5, (column, row) -> column == 139 || column == 45 ? -9999 : ridge(column, row))
                        .at(0, 2 * STEP, STEP, STEP)
                        .keys(WGS84_METERS));
        RouteImport.Imported imported = imported(holed);

        assertTrue(sketch(imported, "D").isEmpty());
        Sketch cut = sketch(imported, "A").orElseThrow();
        assertTrue(cut.points().get(cut.points().size() - 1).distanceM() < 4.01 * CELL_M);
        assertEquals(2, imported.preview().rasters().get(0).without());
    }

    /** A cliff is no road: a mistake of the raster, or of where the line lies. */
    @Test
    void whatIsTooSteepForARoadIsNoSketch() throws Exception {
        RasterSource cliff = raster(
                "cliff.tif",
                SmallRaster.tiff(201, 5, (column, row) -> column > 41 ? 0 : 50)
                        .at(0, 2 * STEP, STEP, STEP)
                        .keys(WGS84_METERS));

        assertTrue(sketch(imported(cliff), "A").isEmpty());
        assertTrue(sketch(imported(cliff), "D").isPresent());
    }

    @Test
    void theFinestOfSeveralCountsAndACoarseOneIsToldToBe() throws Exception {
        RasterSource coarse = raster(
                "coarse.tif",
                SmallRaster.tiff(30, 5, (column, row) -> 100)
                        .at(-2 * 10 * STEP, 2 * 10 * STEP, 10 * STEP, 10 * STEP)
                        .keys(WGS84_METERS));
        RouteImport.Imported both = imported(coarse, ridge("ridge.tif"));
        assertEquals("ridge.tif", sketch(both, "A").orElseThrow().source());
        assertEquals(0, both.preview().rasters().get(0).sketches());

        RouteImport.Imported alone = imported(coarse);
        Sketch sketch = sketch(alone, "A").orElseThrow();
        assertTrue(sketch.isTooCoarse());
        assertEquals(3, sketch.points().size());
        assertTrue(alone.preview().rasters().get(0).tooCoarse());
        assertEquals(10 * CELL_M, alone.preview().rasters().get(0).spacingM(), 0.3);
    }

    @Test
    void aRasterOfAnotherPlaceIsToldAndOneWithoutCoordinatesRefused() throws Exception {
        RasterSource elsewhere = raster(
                "elsewhere.tif",
                SmallRaster.tiff(20, 20, SketchTest::ridge)
                        .at(50, 50, STEP, STEP)
                        .keys(WGS84_METERS));
        ImportPreview.RasterUse use = imported(elsewhere).preview().rasters().get(0);
        assertEquals(0, use.sketches());
        assertEquals(3, use.without());

        RasterSource lost = raster("lost.tif", SmallRaster.tiff(20, 20, SketchTest::ridge));
        InputRejected refused = assertThrows(InputRejected.class, () -> imported(lost));
        List<String> told = new ArrayList<>();
        refused.problems().forEach(p -> told.add(p.message()));
        assertTrue(told.stream().allMatch(t -> t.startsWith("lost.tif: ")), told.toString());
    }
}
