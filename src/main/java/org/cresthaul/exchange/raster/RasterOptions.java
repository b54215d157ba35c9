package org.cresthaul.exchange.raster;

import java.util.Optional;

/**
 * What a person says of rasters that do not say it themselves.
 *
 * @param crs code in the EPSG dataset; 0 for none
 */
public record RasterOptions(int crs, Optional<HeightUnit> unit) {
    public static final RasterOptions NONE = new RasterOptions(0, Optional.empty());
}
