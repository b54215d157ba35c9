package org.cresthaul.exchange.raster;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.cresthaul.route.LonLat;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.InputRejected;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Elevation rasters, written here cell by cell, against the planes they are made of; and what is refused. */
class RasterFileTest {
    private static final double STEP = 1 / 10800.0;
    private static final int[] WGS84_METERS = {1024, 2, 1025, 1, 2048, 4326, 4099, 9001};

    @TempDir
    private Path folder;

    private ElevationRaster open(String name, byte[] bytes, RasterOptions said) throws IOException, InputRejected {
        Path path = folder.resolve(name);
        Files.write(path, bytes);
        assertTrue(RasterFile.isOne(path, name), name);
        return RasterFile.open(path, name, said);
    }

    private ElevationRaster open(byte[] bytes) throws IOException, InputRejected {
        return open("heights.tif", bytes, RasterOptions.NONE);
    }

    private List<String> refused(String name, byte[] bytes, RasterOptions said) {
        return assertTimeoutPreemptively(
                Duration.ofSeconds(10),
                () -> assertThrows(InputRejected.class, () -> {
                            try (ElevationRaster raster = open(name, bytes, said)) {
                                raster.heightM(new LonLat(-93.0 + 3 * STEP, 45.0 - 3 * STEP));
                            }
                        })
                        .problems()
                        .stream()
                        .peek(p -> assertFalse(p.remedy().isBlank(), p.code()))
                        .map(InputProblem::code)
                        .toList());
    }

    private List<String> refused(byte[] bytes) {
        return refused("heights.tif", bytes, RasterOptions.NONE);
    }

    /** 300 m at the first cell's middle, 2 m up for each column, 3 m down for each row. */
    private static double plane(double column, double row) {
        return 300 + 2 * column - 3 * row;
    }

    private static SmallRaster planeOfFloats() {
        return SmallRaster.tiff(20, 10, RasterFileTest::plane)
                .at(-93, 45, STEP, STEP)
                .keys(WGS84_METERS);
    }

    /** Between cells a plane is itself; half a cell beyond the outermost middles nothing is known. */
    private static void assertPlane(ElevationRaster raster, double scale) throws InputRejected {
        Random random = new Random(20261130);
        for (int i = 0; i < 100; i++) {
            double column = random.nextDouble() * 19;
            double row = random.nextDouble() * 9;
            LonLat at = new LonLat(-93 + (column + 0.5) * STEP, 45 - (row + 0.5) * STEP);
            assertEquals(plane(column, row) * scale, raster.heightM(at), 1e-3, column + " " + row);
        }
        assertTrue(Double.isNaN(raster.heightM(new LonLat(-93 + 0.4 * STEP, 45 - STEP))));
        assertTrue(Double.isNaN(raster.heightM(new LonLat(-93 + STEP, 45 - 9.6 * STEP))));
        assertTrue(Double.isNaN(raster.heightM(new LonLat(87, 45 - STEP))));
    }

    @Test
    void aPlaneIsItself() throws Exception {
        try (ElevationRaster raster =
                open(planeOfFloats().with(306, "2019:05:17 10:11:12").bytes())) {
            assertPlane(raster, 1);
            // A third of an arc second of the meridian, 111 132.95 m a degree at 45 degrees: 10.29 m.
            assertEquals(10.29, raster.spacingM(new LonLat(-93 + STEP, 45 - STEP)), 0.02);
            assertEquals(Optional.of(LocalDate.of(2019, 5, 17)), raster.date());
            assertTrue(raster.told().contains("heights in m"), raster.told());
        }
        try (ElevationRaster raster = open(planeOfFloats().packed())) {
            assertPlane(raster, 1);
        }
        try (ElevationRaster raster = open(SmallRaster.tiffOfShorts(20, 10, RasterFileTest::plane)
                .at(-93, 45, STEP, STEP)
                .keys(WGS84_METERS)
                .bytes())) {
            assertPlane(raster, 1);
        }
    }

    /** GeoTIFF: where cells are points, the tie point is the middle of the first one. */
    @Test
    void cellsThatArePointsLieHalfACellElsewhere() throws Exception {
        int[] keys = WGS84_METERS.clone();
        keys[3] = 2;
        try (ElevationRaster raster = open(planeOfFloats()
                .at(-93 + STEP / 2, 45 - STEP / 2, STEP, STEP)
                .keys(keys)
                .bytes())) {
            assertPlane(raster, 1);
        }
        // The same by a matrix.
        double[] matrix = new double[16];
        matrix[0] = STEP;
        matrix[3] = -93;
        matrix[5] = -STEP;
        matrix[7] = 45;
        matrix[15] = 1;
        try (ElevationRaster raster = open(planeOfFloats()
                .without(33550)
                .without(33922)
                .with(34264, matrix)
                .bytes())) {
            assertPlane(raster, 1);
        }
    }

    /** A foot is 0.3048 m, a US survey foot 1200/3937 m; EPSG 6360 and 8228 are heights of NAVD 88 in either. */
    @ParameterizedTest
    @CsvSource({
        "4099, 9002, 0.3048",
        "4099, 9003, 0.3048006096012192",
        "4096, 6360, 0.3048006096012192",
        "4096, 8228, 0.3048",
        "4096, 5703, 1"
    })
    void heightsAreInTheUnitThatTheKeysSay(int key, int code, double meters) throws Exception {
        try (ElevationRaster raster =
                open(planeOfFloats().keys(1024, 2, 2048, 4326, key, code).bytes())) {
            assertPlane(raster, meters);
        }
    }

    @Test
    void aUnitBesideOrAPersonsWordWillDo() throws Exception {
        SmallRaster silent = planeOfFloats().keys(1024, 2, 2048, 4326);
        assertEquals(List.of("raster-without-unit"), refused(silent.bytes()));
        try (ElevationRaster raster =
                open("a.tif", silent.bytes(), new RasterOptions(0, Optional.of(HeightUnit.FOOT)))) {
            assertPlane(raster, 0.3048);
        }
        String beside = "<GDALMetadata><Item name=\"UNITTYPE\" sample=\"0\" role=\"unittype\">US survey foot</Item>"
                + "</GDALMetadata>";
        // What the file says counts before what a person says of those that do not.
        try (ElevationRaster raster = open(
                "b.tif", silent.with(42112, beside).bytes(), new RasterOptions(0, Optional.of(HeightUnit.METER)))) {
            assertPlane(raster, 1200.0 / 3937);
        }
    }

    @Test
    void coordinatesAreSaidByACodeOrNothingIsRead() throws Exception {
        assertEquals(
                List.of("raster-without-crs", "raster-without-unit"),
                refused(planeOfFloats().without(34735).bytes()));
        // A projection of somebody's own.
        assertEquals(
                List.of("raster-without-crs"),
                refused(planeOfFloats().keys(1024, 1, 3072, 32767, 4099, 9001).bytes()));
        assertEquals(
                List.of("raster-without-place"),
                refused(planeOfFloats().without(33550).without(33922).bytes()));
        assertEquals(
                List.of("raster-outside-crs"),
                refused(planeOfFloats().keys(1024, 1, 3072, 2263, 4099, 9001).bytes()));
        // North America of 1927 without its grids.
        assertEquals(
                List.of("crs-accuracy"),
                refused(planeOfFloats()
                        .at(2_000_000, 500_000, 30, 30)
                        .keys(1024, 1, 3072, 32039, 4099, 9001)
                        .bytes()));
    }

    /**
     * UTM 15: on its middle meridian east is 500,000 m, and north is 0.9996 times the arc of the meridian, at 45
     * degrees 4,984,944.378 m on WGS 84 (J. P. Snyder, Map Projections, 1987, (3-21)).
     */
    @Test
    void aRasterInPlaneCoordinatesIsFoundByLongitudeAndLatitude() throws Exception {
        double north = 0.9996 * 4_984_944.378;
        byte[] bytes = SmallRaster.tiff(21, 21, (column, row) -> 100 + column - 2 * row)
                .at(500_000 - 105, north + 105, 10, 10)
                .keys(1024, 1, 1025, 1, 3072, 32615, 4099, 9001)
                .bytes();
        try (ElevationRaster raster = open(bytes)) {
            assertEquals(100 + 10 - 20, raster.heightM(new LonLat(-93, 45)), 1e-3);
            assertEquals(10, raster.spacingM(new LonLat(-93, 45)), 0.02);
            assertTrue(raster.told().contains("EPSG:32615"), raster.told());
        }
    }

    @Test
    void aHoleIsNoHeight() throws Exception {
        SmallRaster.Height holed = (column, row) -> column == 5 && row == 5 ? -99 : plane(column, row);
        SmallRaster.Height endless =
                (column, row) -> column == 5 && row == 5 ? Double.NEGATIVE_INFINITY : plane(column, row);
        for (SmallRaster.Height heights : List.of(holed, endless)) {
            byte[] bytes = SmallRaster.tiff(20, 10, heights)
                    .at(-93, 45, STEP, STEP)
                    .keys(WGS84_METERS)
                    .with(42113, "-99")
                    .bytes();
            try (ElevationRaster raster = open(bytes)) {
                assertTrue(Double.isNaN(raster.heightM(new LonLat(-93 + 5.6 * STEP, 45 - 5.6 * STEP))));
                assertTrue(Double.isNaN(raster.heightM(new LonLat(-93 + 4.8 * STEP, 45 - 6.1 * STEP))));
                assertEquals(plane(3.3, 5.1), raster.heightM(new LonLat(-93 + 3.8 * STEP, 45 - 5.6 * STEP)), 1e-3);
            }
        }
        // Nobody says that -9999 is no height: no place on earth lies so low.
        SmallRaster.Height low = (column, row) -> column == 5 && row == 5 ? -9999 : plane(column, row);
        try (ElevationRaster raster = open(SmallRaster.tiff(20, 10, low)
                .at(-93, 45, STEP, STEP)
                .keys(WGS84_METERS)
                .bytes())) {
            assertTrue(Double.isNaN(raster.heightM(new LonLat(-93 + 5.5 * STEP, 45 - 5.5 * STEP))));
        }
    }

    @Test
    void hostileTiffsAreRefused() throws Exception {
        byte[] whole = planeOfFloats().bytes();
        // Heights are read as they are asked for: cut within its directory it cannot be opened, within its cells not
        // read.
        for (int length : new int[] {4, 8, 20, 200, whole.length / 2, whole.length - 200}) {
            assertEquals(
                    List.of("damaged-raster"), refused(Arrays.copyOf(whole, length)), length + " of " + whole.length);
        }
        assertEquals(
                List.of("raster-too-large"),
                refused(planeOfFloats()
                        .with(257, new long[] {900_000})
                        .with(278, new long[] {900_000})
                        .bytes()));
        assertEquals(
                List.of("raster-too-large"),
                refused(planeOfFloats().with(256, new long[] {0x7FFF_FFFFL}).bytes()));
        // Declared large, in pieces of which there are none.
        assertEquals(
                List.of("damaged-raster"),
                refused(planeOfFloats()
                        .with(257, new long[] {900_000})
                        .with(278, new long[] {1})
                        .bytes()));
        assertEquals(
                List.of("raster-form"),
                refused(planeOfFloats().with(256, new long[] {1}).bytes()));
        assertEquals(
                List.of("picture"),
                refused(planeOfFloats().with(277, new int[] {3}).bytes()));
        assertEquals(
                List.of("picture"),
                refused(planeOfFloats().with(262, new int[] {3}).bytes()));
        assertEquals(
                List.of("raster-form"),
                refused(planeOfFloats().with(258, new int[] {12}).bytes()));
        assertEquals(
                List.of("raster-packing"),
                refused(planeOfFloats().with(259, new int[] {7}).bytes()));
        assertEquals(
                List.of("raster-packing"),
                refused(planeOfFloats().with(317, new int[] {3}).bytes()));
        assertEquals(List.of("raster-packing"), refused(new byte[] {'I', 'I', 43, 0, 8, 0, 0, 0}));
        double[] turned = {STEP, STEP, 0, -93, STEP, -STEP, 0, 45, 0, 0, 0, 0, 0, 0, 0, 1};
        assertEquals(
                List.of("raster-turned"),
                refused(planeOfFloats().with(34264, turned).bytes()));
        assertEquals(
                List.of("damaged-raster"),
                refused(planeOfFloats().at(-93, 45, 0, STEP).bytes()));
    }

    private static byte[] text(String text) {
        return text.getBytes(US_ASCII);
    }

    private static final RasterOptions DEGREES = new RasterOptions(4326, Optional.of(HeightUnit.METER));

    private static String cells() {
        StringBuilder text = new StringBuilder();
        for (int row = 0; row < 10; row++) {
            for (int column = 0; column < 20; column++) {
                text.append(plane(column, row)).append(column < 19 ? " " : "\n");
            }
        }
        return text.toString();
    }

    @Test
    void bothHeadsOfTextGridsAreRead() throws Exception {
        double south = 45 - 10 * STEP;
        String corner = "ncols 20\nnrows 10\nxllcorner -93\nyllcorner " + south + "\ncellsize " + STEP
                + "\nNODATA_value -9999\n";
        String center = "NCOLS 20\nNROWS 10\nXLLCENTER " + (-93 + STEP / 2) + "\nYLLCENTER " + (south + STEP / 2)
                + "\nCELLSIZE " + STEP + "\n";
        String edges =
                "north: 45\nsouth: " + south + "\neast: " + (-93 + 20 * STEP) + "\nwest: -93\nrows: 10\ncols: 20\n";
        for (String head : List.of(corner, center, edges)) {
            try (ElevationRaster raster = open("heights.asc", text(head + cells()), DEGREES)) {
                assertPlane(raster, 1);
            }
        }
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(packed)) {
            gzip.write(text(corner + cells()));
        }
        try (ElevationRaster raster = open("heights.asc.gz", packed.toByteArray(), DEGREES)) {
            assertPlane(raster, 1);
        }
        String holed = cells().replaceFirst("300.0 ", "-9999 ");
        try (ElevationRaster raster = open("heights.asc", text(corner + holed), DEGREES)) {
            assertTrue(Double.isNaN(raster.heightM(new LonLat(-93 + STEP, 45 - STEP))));
        }
        String starred = cells().replaceFirst("300.0 ", "* ");
        try (ElevationRaster raster = open("heights.asc", text(edges + starred), DEGREES)) {
            assertTrue(Double.isNaN(raster.heightM(new LonLat(-93 + STEP, 45 - STEP))));
        }
    }

    @ParameterizedTest
    @CsvSource({
        "ncols 20 nrows 10 xllcorner -93 yllcorner 44 cellsize 0.1 1 2 3, damaged-raster",
        "ncols 2000000 nrows 2000000 xllcorner -93 yllcorner 44 cellsize 0.1 1, raster-too-large",
        "ncols 2 nrows 2 xllcorner -93 yllcorner 44 cellsize 0.1 1 2 3 x, not-a-grid",
        "ncols 2 nrows 2 xllcorner -93 yllcorner 44 cellsize 0 1 2 3 4, not-a-grid",
        "ncols 2 nrows 2.5 xllcorner -93 yllcorner 44 cellsize 1 1 2 3 4, not-a-grid",
        "ncols 2 nrows 2 cellsize 1 1 2 3 4, not-a-grid",
        "north: 2 south: 1 east: 2 west: 1 rows: 2 cols: 2 multiplier: 0.1 1 2 3 4, not-a-grid",
        "ncols 2 nrows 2 xllcorner -93 yllcorner 440 cellsize 0.1 1 2 3 4, raster-outside-crs"
    })
    void hostileGridsAreRefused(String text, String code) {
        assertEquals(List.of(code), refused("heights.asc", text(text), DEGREES), text);
    }

    @Test
    void gridsSayNeitherCoordinatesNorUnit() {
        assertEquals(
                List.of("raster-without-crs", "raster-without-unit"),
                refused(
                        "heights.asc",
                        text("ncols 2 nrows 2 xllcorner -93 yllcorner 44 cellsize 0.1 1 2 3 4"),
                        RasterOptions.NONE));
    }

    /** What packs well and never ends is no number, or no number any more. */
    @ParameterizedTest
    @CsvSource({"7, not-a-grid", "' ', damaged-raster"})
    void aPackedBombIsRefused(String sign, String code) throws Exception {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(packed)) {
            gzip.write(text("ncols 4000 nrows 4000 xllcorner -93 yllcorner 44 cellsize 0.1 "));
            byte[] same = new byte[1 << 20];
            Arrays.fill(same, (byte) sign.charAt(0));
            for (int i = 0; i < 200; i++) {
                gzip.write(same);
            }
        }
        assertEquals(List.of(code), refused("heights.asc.gz", packed.toByteArray(), DEGREES));
    }

    /** Row 0 lies on the northern edge of the degree, column 0 on the western one. */
    @Test
    void tilesOfHeightsLieWhereTheirNameSays() throws Exception {
        byte[] tile = SmallRaster.hgt((column, row) -> column == 600 && row == 601 ? -32768 : column + 2 * row);
        for (String name : List.of("N44W093.hgt", "n44w093.SRTMGL3.hgt")) {
            try (ElevationRaster raster = open(name, tile, RasterOptions.NONE)) {
                assertEquals(0, raster.heightM(new LonLat(-93, 45)), 1e-9);
                assertEquals(1200 + 2 * 1200, raster.heightM(new LonLat(-92, 44)), 1e-9);
                assertEquals(
                        300.5 + 2 * 900.25, raster.heightM(new LonLat(-93 + 300.5 / 1200, 45 - 900.25 / 1200)), 1e-6);
                assertTrue(Double.isNaN(raster.heightM(new LonLat(-93 + 600.5 / 1200, 45 - 600.5 / 1200))));
                // 3 arc seconds of a meridian at 44.5 degrees.
                assertEquals(92.6, raster.spacingM(new LonLat(-92.5, 44.5)), 0.2);
            }
        }
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(packed)) {
            zip.putNextEntry(new ZipEntry("S10E020.hgt"));
            zip.write(tile);
        }
        try (ElevationRaster raster = open("heights.zip", packed.toByteArray(), RasterOptions.NONE)) {
            assertEquals(0, raster.heightM(new LonLat(20, -9)), 1e-9);
        }
        assertEquals(List.of("raster-without-crs"), refused("tile.hgt", tile, RasterOptions.NONE));
        assertEquals(List.of("damaged-raster"), refused("N44W093.hgt", new byte[100], RasterOptions.NONE));
        assertEquals(
                List.of("damaged-raster"),
                refused("heights.zip", Arrays.copyOf(packed.toByteArray(), 300), RasterOptions.NONE));
    }

    @Test
    void otherFilesAreNoRasters() throws Exception {
        for (String other : List.of("<gpx/>", "lon,lat\n1,2\n", "{\"type\":\"Point\"}", "north by west, a drive", "")) {
            Path path = folder.resolve("other");
            Files.write(path, text(other));
            assertFalse(RasterFile.isOne(path, "other"), other);
        }
    }
}
