package org.cresthaul.exchange.raster;

import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.cresthaul.exchange.crs.PlaneCoordinates;
import org.cresthaul.geometry.StopSignal;
import org.cresthaul.units.InputRejected;

/**
 * A grid as text: a head of names and numbers, then rows from the north. Two heads are in use: corner (or center) and
 * cell size with {@code nodata_value}; and the four edges, rows and columns, where {@code *} is no height.
 */
final class AsciiGrid implements Grid {
    /** Most cells, held in memory. */
    static final int MOST_CELLS = 16_000_000;

    private static final int LONGEST_WORD = 40;
    private static final Pattern NUMBER = Pattern.compile("[+-]?[0-9.][0-9.eE+-]*");
    private static final Set<String> KEYS = Set.of(
            "ncols",
            "nrows",
            "xllcorner",
            "yllcorner",
            "xllcenter",
            "yllcenter",
            "cellsize",
            "dx",
            "dy",
            "nodata_value",
            "north",
            "south",
            "east",
            "west",
            "rows",
            "cols",
            "null",
            "type",
            "multiplier");

    private final Map<String, Double> head = new HashMap<>();
    private final Tokens words;
    private final int columns;
    private final int rows;
    private final float[] cells;

    private AsciiGrid(InputStream in) throws IOException, InputRejected {
        words = new Tokens(in);
        String word = words.next();
        while (word != null && KEYS.contains(key(word))) {
            Double number = number(words.next());
            if (number != null) {
                head.put(key(word), number);
            }
            word = words.next();
        }
        boolean edges = head.containsKey("north");
        columns = count(edges ? "cols" : "ncols");
        rows = count(edges ? "rows" : "nrows");
        if ((long) columns * rows > MOST_CELLS) {
            throw Refusals.tooLarge("has more than " + MOST_CELLS + " cells");
        }
        // Grows with what is really there.
        float[] read = new float[Math.min(columns * rows, 1 << 16)];
        if (head.getOrDefault("multiplier", 1.0) != 1) {
            throw Refusals.of(
                    "not-a-grid", "The heights of this grid are to be multiplied.", "Export them as they are.");
        }
        double none = head.getOrDefault(edges ? "null" : "nodata_value", Double.NaN);
        StopSignal stop = StopSignal.current();
        for (int i = 0; i < columns * rows; i++, word = words.next()) {
            if (word == null) {
                throw Refusals.damaged();
            }
            if (i == read.length) {
                stop.poll();
                read = Arrays.copyOf(read, (int) Math.min((long) columns * rows, read.length * 2L));
            }
            Double number = number(word);
            if (number == null && !word.equals("*")) {
                throw Refusals.of(
                        "not-a-grid",
                        "Where a height should stand, the grid has something else.",
                        "Export it again as a grid of numbers.");
            }
            read[i] = number == null || number == none ? Float.NaN : (float) (double) number;
        }
        cells = read;
    }

    static boolean isOne(String start) {
        String first = start.stripLeading();
        int end = 0;
        while (end < first.length() && !Character.isWhitespace(first.charAt(end)) && end < LONGEST_WORD) {
            end++;
        }
        String key = key(first.substring(0, end));
        return KEYS.contains(key)
                && !Set.of("null", "type", "multiplier").contains(key)
                && number(first.substring(end).strip().split("\\s", 2)[0]) != null;
    }

    static ElevationRaster read(InputStream in, String file, RasterOptions options) throws IOException, InputRejected {
        AsciiGrid grid = new AsciiGrid(in);
        Refusals.requireSaid(options.crs() != 0, options.unit().isPresent());
        HeightUnit unit = options.unit().orElseThrow();
        return new ElevationRaster(file, "ASCII grid", Optional.empty(), unit, grid.placing(options.crs()), grid);
    }

    private GridPlacing placing(int crs) throws InputRejected {
        PlaneCoordinates plane = crs == 4326 ? null : PlaneCoordinates.of(crs);
        if (head.containsKey("north")) {
            double eastStep = (need("east") - need("west")) / columns;
            double northStep = (need("north") - need("south")) / rows;
            return placing(need("west") + eastStep / 2, need("north") - northStep / 2, eastStep, northStep, plane);
        }
        double eastStep = head.containsKey("dx") ? need("dx") : need("cellsize");
        double northStep = head.containsKey("dy") ? need("dy") : need("cellsize");
        double west = head.containsKey("xllcenter") ? need("xllcenter") : need("xllcorner") + eastStep / 2;
        double south = head.containsKey("yllcenter") ? need("yllcenter") : need("yllcorner") + northStep / 2;
        return placing(west, south + northStep * (rows - 1), eastStep, northStep, plane);
    }

    private static GridPlacing placing(
            double east, double north, double eastStep, double northStep, PlaneCoordinates plane) throws InputRejected {
        try {
            return new GridPlacing(east, north, eastStep, -northStep, plane);
        } catch (IllegalArgumentException e) {
            throw noHead();
        }
    }

    private double need(String key) throws InputRejected {
        Double value = head.get(key);
        if (value == null || !Double.isFinite(value)) {
            throw noHead();
        }
        return value;
    }

    private int count(String key) throws InputRejected {
        double value = need(key);
        if (value < 2 || value > Integer.MAX_VALUE || value != Math.rint(value)) {
            throw noHead();
        }
        return (int) value;
    }

    private static InputRejected noHead() {
        return Refusals.of(
                "not-a-grid",
                "The head of the grid does not say how many cells it has, where it lies and how large they are.",
                "Export it again with its head.");
    }

    private static String key(String word) {
        String low = word.toLowerCase(Locale.ROOT);
        return low.endsWith(":") ? low.substring(0, low.length() - 1) : low;
    }

    private static Double number(String word) {
        if (word == null
                || word.length() > LONGEST_WORD
                || !NUMBER.matcher(word).matches()) {
            return null;
        }
        try {
            return Double.valueOf(word);
        } catch (NumberFormatException e) {
            return null;
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
    public double cell(int column, int row) {
        return cells[row * columns + column];
    }

    /** What stands between white space, one after the other; an endless one, or endless space, ends. */
    private static final class Tokens {
        private final InputStream in;
        private final byte[] buffer = new byte[1 << 16];
        private int at;
        private int end;

        Tokens(InputStream in) {
            this.in = in;
        }

        private int sign() throws IOException {
            if (at == end) {
                StopSignal.current().poll();
                end = Math.max(0, in.read(buffer));
                at = 0;
            }
            return end == 0 ? -1 : buffer[at++] & 0xFF;
        }

        /** At most a sign longer than any that is used; null at the end. */
        String next() throws IOException {
            int sign = sign();
            for (int spaces = 0; sign >= 0 && sign <= ' '; spaces++) {
                if (spaces > buffer.length) {
                    return null;
                }
                sign = sign();
            }
            StringBuilder word = new StringBuilder();
            while (sign > ' ' && word.length() <= LONGEST_WORD) {
                word.append((char) sign);
                sign = sign();
            }
            return word.isEmpty() ? null : word.toString();
        }
    }
}
