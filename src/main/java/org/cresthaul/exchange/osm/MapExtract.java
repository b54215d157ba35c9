package org.cresthaul.exchange.osm;

import java.nio.file.Path;

/**
 * An extract of OpenStreetMap on disk.
 *
 * @param name what people call it, for messages
 */
public record MapExtract(String name, Path path) {
    /** Called as the file is. */
    public static MapExtract of(Path path) {
        return new MapExtract(String.valueOf(path.getFileName()), path);
    }
}
