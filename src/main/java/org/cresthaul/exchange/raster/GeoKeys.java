package org.cresthaul.exchange.raster;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.cresthaul.exchange.crs.PlaneCoordinates;
import org.cresthaul.exchange.crs.VerticalUnits;
import org.cresthaul.units.InputRejected;

/**
 * Where a TIFF lies and what its heights are, by the keys of GeoTIFF (OGC 19-008r4). Only coordinates that are named by
 * a code of the EPSG dataset are taken.
 */
final class GeoKeys {
    private static final int MODEL = 1024;
    private static final int RASTER = 1025;
    private static final int GEODETIC = 2048;
    private static final int PROJECTED = 3072;
    private static final int VERTICAL = 4096;
    private static final int VERTICAL_UNIT = 4099;
    private static final int IS_PROJECTED = 1;
    private static final int IS_GEODETIC = 2;
    private static final int CELL_IS_POINT = 2;
    /** From here on a number is no code of the dataset. */
    private static final int USER_DEFINED = 32767;

    private final TiffTags tags;
    private final Map<Integer, Integer> keys = new HashMap<>();

    GeoKeys(TiffTags tags) {
        this.tags = tags;
        double[] all = tags.numbers(TiffTags.GEO_KEYS);
        for (int i = 4; i + 3 < all.length; i += 4) {
            // Those that stand here themselves; names and parameters of projections of one's own are not needed.
            if (all[i + 1] == 0) {
                keys.put((int) all[i], (int) all[i + 3]);
            }
        }
    }

    private int code(int key) {
        int code = keys.getOrDefault(key, 0);
        return code > 0 && code < USER_DEFINED ? code : 0;
    }

    /** What the file says, or else what somebody says of it. */
    Optional<HeightUnit> findUnit(RasterOptions options) {
        Optional<HeightUnit> said = HeightUnit.ofCode(code(VERTICAL_UNIT));
        if (said.isEmpty() && code(VERTICAL) > 0) {
            OptionalDouble meters = VerticalUnits.meters(code(VERTICAL));
            said = meters.isPresent() ? HeightUnit.ofMeters(meters.getAsDouble()) : said;
        }
        if (said.isEmpty()) {
            said = HeightUnit.of(tags.unitBeside());
        }
        return said.or(options::unit);
    }

    /** The code of its coordinates; 0 where nobody says them. */
    int crs(RasterOptions options) {
        int model = keys.getOrDefault(MODEL, 0);
        int crs = model == IS_PROJECTED ? code(PROJECTED) : model == IS_GEODETIC ? code(GEODETIC) : 0;
        return crs == 0 ? options.crs() : crs;
    }

    GridPlacing placing(int crs) throws InputRejected {
        double[] size = tags.numbers(TiffTags.CELL_SIZE);
        double[] tie = tags.numbers(TiffTags.TIE_POINT);
        double[] matrix = tags.numbers(TiffTags.MATRIX);
        boolean level = matrix.length == 16 && matrix[1] == 0 && matrix[4] == 0;
        if (size.length < 2 && matrix.length < 16 || matrix.length == 0 && tie.length < 6) {
            throw Refusals.of(
                    "raster-without-place",
                    "The raster does not say where it lies.",
                    "Export it as GeoTIFF, with the place and the size of its cells.");
        }
        if (matrix.length > 0 && !level || tie.length > 6) {
            throw Refusals.of(
                    "raster-turned",
                    "The rows of the raster do not run to the east.",
                    "Export it in rows and columns of its coordinates.");
        }
        double eastStep = level ? matrix[0] : size[0];
        double northStep = level ? matrix[5] : -size[1];
        double east = level ? matrix[3] : tie[3] - tie[0] * eastStep;
        double north = level ? matrix[7] : tie[4] - tie[1] * northStep;
        // Cells are areas from a corner on, or points.
        double half = keys.getOrDefault(RASTER, 1) == CELL_IS_POINT ? 0 : 0.5;
        try {
            return new GridPlacing(
                    east + half * eastStep,
                    north + half * northStep,
                    eastStep,
                    northStep,
                    crs == 4326 ? null : PlaneCoordinates.of(crs));
        } catch (IllegalArgumentException e) {
            throw Refusals.damaged();
        }
    }
}
