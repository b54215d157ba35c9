package org.cresthaul.exchange.raster;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import org.cresthaul.route.LonLat;
import org.cresthaul.units.InputRejected;

/**
 * Elevation rasters of any kind: refused with help, or every height is none or one of this earth. The first byte says
 * what is said of the file and what it is called; rasters are read from a disk.
 */
public final class RasterFuzz {
    private static final String[] NAMES = {"heights.tif", "heights.asc", "N44W093.hgt", "heights.zip"};
    private static final Path FILE = file();

    private RasterFuzz() {}

    private static Path file() {
        try {
            Path file = Files.createTempFile("raster", ".fuzz");
            file.toFile().deleteOnExit();
            return file;
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    /** What a fuzzer calls. */
    public static void fuzzerTestOneInput(byte[] data) throws IOException {
        if (data.length == 0) {
            return;
        }
        Files.write(FILE, Arrays.copyOfRange(data, 1, data.length));
        String name = NAMES[data[0] & 3];
        RasterOptions said = (data[0] & 4) == 0
                ? RasterOptions.NONE
                : new RasterOptions((data[0] & 8) == 0 ? 4326 : 32615, Optional.of(HeightUnit.METER));
        RasterFile.isOne(FILE, name);
        try (ElevationRaster raster = RasterFile.open(FILE, name, said)) {
            for (double[] at : new double[][] {{-93, 45}, {-92.9999, 44.9999}, {-92.5, 44.5}, {0, 0}, {179.9, -60}}) {
                LonLat place = new LonLat(at[0], at[1]);
                double heightM = raster.heightM(place);
                if (!Double.isNaN(heightM) && !(heightM >= -500 && heightM <= 9000)) {
                    throw new AssertionError(heightM + " m");
                }
                raster.spacingM(place);
            }
            if (raster.told().isBlank()) {
                throw new AssertionError("nothing told");
            }
        } catch (InputRejected e) {
            if (e.problems().stream().anyMatch(p -> p.remedy().isBlank())) {
                throw new AssertionError(e);
            }
        }
    }
}
