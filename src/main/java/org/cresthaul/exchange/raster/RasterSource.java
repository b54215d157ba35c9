package org.cresthaul.exchange.raster;

import java.nio.file.Path;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.InputRejected;

/**
 * An elevation raster on disk, and what a person says of it.
 *
 * @param name what people call it, for messages
 */
public record RasterSource(String name, Path path, RasterOptions options) {
    /** @throws InputRejected when it cannot be tied down; every problem names the file */
    public ElevationRaster open() throws InputRejected {
        try {
            return RasterFile.open(path, name, options);
        } catch (InputRejected e) {
            throw new InputRejected(e.problems().stream()
                    .map(p -> new InputProblem(p.code(), name + ": " + p.message(), p.pointer(), p.remedy()))
                    .toList());
        }
    }
}
