package org.cresthaul.exchange.raster;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.DeflaterOutputStream;

/** Writes small rasters: TIFF 6.0 and the keys of GeoTIFF (OGC 19-008r4) from their texts, HGT, ASCII grids. */
final class SmallRaster {
    static final int SHORT = 3;
    static final int LONG = 4;
    static final int DOUBLE = 12;

    interface Height {
        double at(int column, int row);
    }

    private final Map<Integer, Object> tags = new TreeMap<>();
    private final byte[] cells;

    private SmallRaster(byte[] cells) {
        this.cells = cells;
    }

    /** Floating cells of 32 bits in one strip, with the middle of the first cell and the steps in degrees on WGS 84. */
    static SmallRaster tiff(int columns, int rows, Height heights) {
        ByteBuffer cells = ByteBuffer.allocate(columns * rows * 4).order(ByteOrder.LITTLE_ENDIAN);
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                cells.putFloat((float) heights.at(column, row));
            }
        }
        return of(columns, rows, 32, 3, cells.array());
    }

    static SmallRaster tiffOfShorts(int columns, int rows, Height heights) {
        ByteBuffer cells = ByteBuffer.allocate(columns * rows * 2).order(ByteOrder.LITTLE_ENDIAN);
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                cells.putShort((short) heights.at(column, row));
            }
        }
        return of(columns, rows, 16, 2, cells.array());
    }

    private static SmallRaster of(int columns, int rows, int bits, int form, byte[] cells) {
        return new SmallRaster(cells)
                .with(256, new long[] {columns})
                .with(257, new long[] {rows})
                .with(258, new int[] {bits})
                .with(259, new int[] {1})
                .with(262, new int[] {1})
                .with(277, new int[] {1})
                .with(278, new long[] {rows})
                .with(339, new int[] {form});
    }

    /** Shorts by int[], longs by long[], doubles by double[], text by String. */
    SmallRaster with(int tag, Object value) {
        tags.put(tag, value);
        return this;
    }

    SmallRaster without(int tag) {
        tags.remove(tag);
        return this;
    }

    /** Cells from a corner on; rows run southward. */
    SmallRaster at(double west, double north, double eastStep, double southStep) {
        return with(33550, new double[] {eastStep, southStep, 0}).with(33922, new double[] {0, 0, 0, west, north, 0});
    }

    /** Keys and values in pairs. */
    SmallRaster keys(int... pairs) {
        int[] all = new int[4 + pairs.length * 2];
        all[0] = 1;
        all[1] = 1;
        all[3] = pairs.length / 2;
        for (int i = 0; i < pairs.length; i += 2) {
            all[4 + i * 2] = pairs[i];
            all[6 + i * 2] = 1;
            all[7 + i * 2] = pairs[i + 1];
        }
        return with(34735, all);
    }

    byte[] bytes() {
        return bytes(cells);
    }

    /** With its strip packed by deflate. */
    byte[] packed() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (DeflaterOutputStream deflate = new DeflaterOutputStream(out)) {
            deflate.write(cells);
        }
        with(259, new int[] {8});
        return bytes(out.toByteArray());
    }

    private byte[] bytes(byte[] strip) {
        tags.putIfAbsent(273, new long[] {8});
        tags.putIfAbsent(279, new long[] {strip.length});
        int directory = 8 + strip.length + (strip.length & 1);
        int extra = directory + 2 + tags.size() * 12 + 4;
        ByteBuffer out = ByteBuffer.allocate(extra + 4096).order(ByteOrder.LITTLE_ENDIAN);
        out.put(new byte[] {'I', 'I', 42, 0}).putInt(directory).put(strip);
        out.position(directory);
        out.putShort((short) tags.size());
        for (Map.Entry<Integer, Object> tag : tags.entrySet()) {
            ByteBuffer value = value(tag.getValue());
            out.putShort(tag.getKey().shortValue())
                    .putShort((short) type(tag.getValue()))
                    .putInt(value.limit() / size(tag.getValue()));
            if (value.limit() <= 4) {
                out.put(value).position(out.position() + 4 - value.limit());
            } else {
                out.putInt(extra);
                for (int i = 0; i < value.limit(); i++) {
                    out.put(extra++, value.get(i));
                }
                extra += extra & 1;
            }
        }
        byte[] all = new byte[extra];
        out.rewind();
        out.get(all);
        return all;
    }

    private static int type(Object value) {
        return value instanceof int[] ? SHORT : value instanceof long[] ? LONG : value instanceof double[] ? DOUBLE : 2;
    }

    private static int size(Object value) {
        return value instanceof int[] ? 2 : value instanceof long[] ? 4 : value instanceof double[] ? 8 : 1;
    }

    private static ByteBuffer value(Object value) {
        ByteBuffer out = ByteBuffer.allocate(2000).order(ByteOrder.LITTLE_ENDIAN);
        if (value instanceof int[] shorts) {
            for (int one : shorts) {
                out.putShort((short) one);
            }
        } else if (value instanceof long[] longs) {
            for (long one : longs) {
                out.putInt((int) one);
            }
        } else if (value instanceof double[] doubles) {
            for (double one : doubles) {
                out.putDouble(one);
            }
        } else {
            out.put((value + "\0").getBytes(StandardCharsets.US_ASCII));
        }
        return out.flip();
    }

    /** A tile of 1201 cells a side. */
    static byte[] hgt(Height heights) {
        ByteBuffer cells = ByteBuffer.allocate(1201 * 1201 * 2);
        for (int row = 0; row < 1201; row++) {
            for (int column = 0; column < 1201; column++) {
                cells.putShort((short) heights.at(column, row));
            }
        }
        return cells.array();
    }
}
