package org.cresthaul.exchange.raster;

import java.io.BufferedInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipInputStream;
import org.cresthaul.units.InputRejected;

/** Opens elevation rasters, told by their content; a tile of heights, which says nothing of itself, by its name. */
public final class RasterFile {
    private static final int HEAD = 1024;

    private enum Form {
        TIFF,
        LARGE_TIFF,
        GRID,
        PACKED_GRID,
        TILE,
        PACKED_TILE,
        NONE
    }

    private RasterFile() {}

    /** Whether a file is to be read as a raster, by how it begins. */
    public static boolean isOne(Path path, String name) throws IOException {
        return form(path, name) != Form.NONE;
    }

    private static Form form(Path path, String name) throws IOException {
        byte[] head;
        try (InputStream in = Files.newInputStream(path)) {
            head = in.readNBytes(HEAD);
        }
        if (starts(head, 'I', 'I', 42, 0) || starts(head, 'M', 'M', 0, 42)) {
            return Form.TIFF;
        }
        if (starts(head, 'I', 'I', 43, 0) || starts(head, 'M', 'M', 0, 43)) {
            return Form.LARGE_TIFF;
        }
        if (starts(head, 0x1F, 0x8B)) {
            return AsciiGrid.isOne(unpacked(path)) ? Form.PACKED_GRID : Form.NONE;
        }
        if (starts(head, 'P', 'K', 3, 4)) {
            return HgtTile.isNamedSo(firstOf(path)) ? Form.PACKED_TILE : Form.NONE;
        }
        if (AsciiGrid.isOne(new String(head, StandardCharsets.ISO_8859_1))) {
            return Form.GRID;
        }
        return HgtTile.isNamedSo(name) ? Form.TILE : Form.NONE;
    }

    private static boolean starts(byte[] head, int... signs) {
        for (int i = 0; i < signs.length; i++) {
            if (i >= head.length || (head[i] & 0xFF) != signs[i]) {
                return false;
            }
        }
        return true;
    }

    private static String unpacked(Path path) throws IOException {
        try (InputStream in = new GZIPInputStream(Files.newInputStream(path))) {
            return new String(in.readNBytes(HEAD), StandardCharsets.ISO_8859_1);
        } catch (EOFException | ZipException e) {
            return "";
        }
    }

    private static String firstOf(Path path) throws IOException {
        try (ZipInputStream zip = new ZipInputStream(Files.newInputStream(path))) {
            ZipEntry entry = zip.getNextEntry();
            return entry == null ? "" : entry.getName();
        } catch (EOFException | ZipException | IllegalArgumentException e) {
            return "";
        }
    }

    /**
     * Opens one.
     *
     * @param name of the file, for messages
     * @throws InputRejected when it cannot be tied down: no coordinates, no unit of height, damaged, or no raster
     */
    public static ElevationRaster open(Path path, String name, RasterOptions options) throws InputRejected {
        try {
            ElevationRaster raster =
                    switch (form(path, name)) {
                        case TIFF -> GeoTiff.open(path.toFile(), name, options);
                        case LARGE_TIFF ->
                            throw Refusals.of(
                                    "raster-packing",
                                    "This is a TIFF for files beyond 4 GB, which is not read here.",
                                    "Cut it to the surroundings of the route.");
                        case GRID -> grid(path, false, name, options);
                        case PACKED_GRID -> grid(path, true, name, options);
                        case TILE -> HgtTile.read(tile(Files.newInputStream(path)), name, name);
                        case PACKED_TILE -> packedTile(path, name);
                        case NONE ->
                            throw Refusals.of("not-a-raster", "This is no raster of heights.", "Look at what it is.");
                    };
            return raster.onEarth();
        } catch (EOFException | ZipException e) {
            throw Refusals.damaged();
        } catch (javax.imageio.IIOException e) {
            throw Refusals.damaged();
        } catch (IOException e) {
            throw Refusals.of(
                    "unreadable", "The raster cannot be read.", "Check that you may read it, and that it is whole.");
        }
    }

    private static ElevationRaster grid(Path path, boolean packed, String name, RasterOptions options)
            throws IOException, InputRejected {
        try (InputStream in = Files.newInputStream(path)) {
            return AsciiGrid.read(packed ? new GZIPInputStream(in) : in, name, options);
        }
    }

    private static byte[] tile(InputStream in) throws IOException {
        try (in) {
            return in.readNBytes(HgtTile.mostBytes() + 1);
        }
    }

    private static ElevationRaster packedTile(Path path, String name) throws IOException, InputRejected {
        try (ZipInputStream zip = new ZipInputStream(new BufferedInputStream(Files.newInputStream(path)))) {
            String entry = zip.getNextEntry().getName();
            byte[] cells = zip.readNBytes(HgtTile.mostBytes() + 1);
            return HgtTile.read(cells, entry.substring(entry.replace('\\', '/').lastIndexOf('/') + 1), name);
        } catch (IllegalArgumentException e) {
            throw Refusals.damaged();
        }
    }
}
