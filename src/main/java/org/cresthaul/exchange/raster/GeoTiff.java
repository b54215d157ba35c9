package org.cresthaul.exchange.raster;

import java.awt.Rectangle;
import java.awt.image.Raster;
import java.io.File;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.FileImageInputStream;
import javax.imageio.stream.ImageInputStream;
import org.cresthaul.geometry.StopSignal;
import org.cresthaul.units.InputRejected;

/**
 * A raster in a TIFF, read by the JDK's reader in blocks as they are asked for; of what the file declares nothing is
 * taken for true before it is held to bounds.
 */
final class GeoTiff implements Grid {
    private static final int BLOCK = 128;
    private static final int MOST_BLOCKS = 128;
    /** Most bytes of one strip or tile, unpacked: they are unpacked whole. */
    private static final long MOST_PIECE_BYTES = 64L << 20;

    private final ImageInputStream in;
    private final ImageReader reader;
    private final int columns;
    private final int rows;
    private final double none;
    private final Map<Long, double[]> blocks = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Long, double[]> eldest) {
            return size() > MOST_BLOCKS;
        }
    };

    private GeoTiff(ImageInputStream in, ImageReader reader, TiffTags tags) throws InputRejected {
        this.in = in;
        this.reader = reader;
        columns = tags.count(TiffTags.WIDTH);
        rows = tags.count(TiffTags.HEIGHT);
        none = tags.none();
    }

    static ElevationRaster open(File path, String file, RasterOptions options) throws IOException, InputRejected {
        ImageInputStream in = new FileImageInputStream(path);
        ImageReader reader = ImageIO.getImageReadersByFormatName("tiff").next();
        boolean open = false;
        try {
            TiffTags tags = TiffTags.read(in);
            tags.requireHeights(MOST_PIECE_BYTES);
            in.seek(0);
            reader.setInput(in, false, true);
            GeoTiff grid = new GeoTiff(in, reader, tags);
            GeoKeys keys = new GeoKeys(tags);
            Refusals.requireSaid(keys.crs(options) != 0, keys.findUnit(options).isPresent());
            ElevationRaster raster = new ElevationRaster(
                    file,
                    "GeoTIFF",
                    tags.date(),
                    keys.findUnit(options).orElseThrow(),
                    keys.placing(keys.crs(options)),
                    grid);
            open = true;
            return raster;
        } catch (RuntimeException e) {
            // What the reader says of a file that is not what it declares.
            throw Refusals.damaged();
        } finally {
            if (!open) {
                reader.dispose();
                in.close();
            }
        }
    }

    @Override
    public int columns() {
        return columns;
    }

    @Override
    public int rows() {
        return rows;
    }

    @Override
    public double cell(int column, int row) throws IOException {
        int left = column / BLOCK;
        int top = row / BLOCK;
        long key = (long) top << 32 | left;
        double[] block = blocks.get(key);
        if (block == null) {
            block = block(left * BLOCK, top * BLOCK);
            blocks.put(key, block);
        }
        double value = block[(row % BLOCK) * BLOCK + column % BLOCK];
        return value == none || Double.isInfinite(value) ? Double.NaN : value;
    }

    private double[] block(int left, int top) throws IOException {
        StopSignal.current().poll();
        int width = Math.min(BLOCK, columns - left);
        int height = Math.min(BLOCK, rows - top);
        ImageReadParam wanted = reader.getDefaultReadParam();
        wanted.setSourceRegion(new Rectangle(left, top, width, height));
        double[] block = new double[BLOCK * BLOCK];
        try {
            Raster read = reader.read(0, wanted).getRaster();
            for (int y = 0; y < height; y++) {
                for (int x = 0; x < width; x++) {
                    block[y * BLOCK + x] = read.getSampleDouble(x, y, 0);
                }
            }
        } catch (RuntimeException e) {
            throw new IOException("a block of the raster cannot be read", e);
        }
        return block;
    }

    @Override
    public void close() throws IOException {
        reader.dispose();
        in.close();
    }
}
