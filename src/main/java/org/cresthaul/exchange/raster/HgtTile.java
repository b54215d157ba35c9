package org.cresthaul.exchange.raster;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.cresthaul.units.InputRejected;

/**
 * A tile of one degree, as the radar mission of 2000 was published: whole meters of two bytes, the higher first, rows
 * from the north, the outermost cells on the edges of the degree; no header. The name says which degree.
 */
final class HgtTile implements Grid {
    /** Cells on a side: of 3, 1 arc seconds. */
    private static final int[] SIDES = {1201, 3601};
    /** That there is no height. */
    private static final short VOID = Short.MIN_VALUE;

    private static final Pattern NAME = Pattern.compile("(?i)([NS])(\\d{2})([EW])(\\d{3})(?:[._].*)?\\.hgt");

    private final byte[] cells;
    private final int side;

    private HgtTile(byte[] cells, int side) {
        this.cells = cells;
        this.side = side;
    }

    static boolean isNamedSo(String name) {
        return name.toLowerCase(java.util.Locale.ROOT).endsWith(".hgt");
    }

    /** Most bytes of one. */
    static int mostBytes() {
        return SIDES[1] * SIDES[1] * 2;
    }

    static ElevationRaster read(byte[] cells, String tile, String file) throws InputRejected {
        int side = 0;
        for (int s : SIDES) {
            side = cells.length == s * s * 2 ? s : side;
        }
        if (side == 0) {
            throw Refusals.of(
                    "damaged-raster",
                    "A tile of heights has 1201 or 3601 cells a side, and this file of " + cells.length
                            + " bytes has neither.",
                    "Fetch it again.");
        }
        Matcher matcher = NAME.matcher(tile);
        int latDeg = matcher.matches() ? Integer.parseInt(matcher.group(2)) : 90;
        int lonDeg = matcher.matches() ? Integer.parseInt(matcher.group(4)) : 181;
        if (latDeg > 89 || lonDeg > 180) {
            throw Refusals.of(
                    "raster-without-crs",
                    "The name of a tile of heights says which degree it is, and \"" + tile + "\" does not.",
                    "Give it the name it had, such as N50E011.hgt.");
        }
        double south = matcher.group(1).equalsIgnoreCase("S") ? -latDeg : latDeg;
        double west = matcher.group(3).equalsIgnoreCase("W") ? -lonDeg : lonDeg;
        double step = 1.0 / (side - 1);
        return new ElevationRaster(
                file,
                "HGT",
                Optional.empty(),
                HeightUnit.METER,
                new GridPlacing(west, south + 1, step, -step, null),
                new HgtTile(cells, side));
    }

    @Override
    public int columns() {
        return side;
    }

    @Override
    public int rows() {
        return side;
    }

    @Override
    public double cell(int column, int row) {
        int at = (row * side + column) * 2;
        short height = (short) ((cells[at] & 0xFF) << 8 | cells[at + 1] & 0xFF);
        return height == VOID ? Double.NaN : height;
    }
}
