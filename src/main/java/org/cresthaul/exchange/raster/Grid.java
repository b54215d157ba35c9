package org.cresthaul.exchange.raster;

import java.io.IOException;

/** Cells of heights, rows from the first that the file has. */
interface Grid extends AutoCloseable {
    int columns();

    int rows();

    /** As the file has it, in its own unit; not a number where it has none. */
    double cell(int column, int row) throws IOException;

    @Override
    default void close() throws IOException {
        // most are in memory
    }
}
