package org.cresthaul.exchange.raster;

import java.io.IOException;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javax.imageio.stream.ImageInputStream;
import org.cresthaul.units.InputRejected;

/** What a TIFF says of itself, held to what can be read as heights. */
final class TiffTags {
    static final int WIDTH = 256;
    static final int HEIGHT = 257;
    static final int CELL_SIZE = 33550;
    static final int TIE_POINT = 33922;
    static final int MATRIX = 34264;
    static final int GEO_KEYS = 34735;
    private static final int BITS = 258;
    private static final int PACKING = 259;
    private static final int MEANING = 262;
    private static final int BANDS = 277;
    private static final int STRIP_ROWS = 278;
    private static final int DATE_TIME = 306;
    private static final int PREDICTOR = 317;
    private static final int TILE_WIDTH = 322;
    private static final int TILE_HEIGHT = 323;
    private static final int SAMPLE_FORM = 339;
    private static final int METADATA = 42112;
    private static final int NODATA = 42113;

    /** None, LZW, deflate by its two numbers, PackBits. */
    private static final Set<Integer> PACKINGS = Set.of(1, 5, 8, 32946, 32773);

    private static final int MOST_PIECES = 2_000_000;

    private static final int MOST_SIDE = 1_000_000;

    /** Most tags of a file, and most values of one that is looked at. */
    private static final int MOST_TAGS = 1000;

    private static final int MOST_VALUES = 65_536;

    /** Bytes of a value of each type; 0 where a type is none. */
    private static final int[] BYTES = {0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8};

    private final Map<Integer, double[]> numbers = new HashMap<>();
    private final Map<Integer, String> texts = new HashMap<>();

    /** The first directory of a file: TIFF 6.0, sections 2 and 15. Of what is not looked for nothing is read. */
    static TiffTags read(ImageInputStream in) throws IOException, InputRejected {
        TiffTags tags = new TiffTags();
        byte[] order = new byte[2];
        in.seek(0);
        in.readFully(order);
        in.setByteOrder(order[0] == 'I' ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
        in.skipBytes(2);
        in.seek(in.readUnsignedInt());
        int count = in.readUnsignedShort();
        if (count > MOST_TAGS) {
            throw Refusals.damaged();
        }
        long start = in.getStreamPosition();
        for (int i = 0; i < count; i++) {
            in.seek(start + 12L * i);
            tags.readOne(in);
        }
        return tags;
    }

    private void readOne(ImageInputStream in) throws IOException, InputRejected {
        int tag = in.readUnsignedShort();
        int type = in.readUnsignedShort();
        long count = in.readUnsignedInt();
        if (type >= BYTES.length || BYTES[type] == 0) {
            return;
        }
        long bytes = count * BYTES[type];
        if (bytes > 4) {
            long at = in.readUnsignedInt();
            if (at + bytes > in.length()) {
                throw Refusals.damaged();
            }
            in.seek(at);
        }
        if (count > MOST_VALUES) {
            return;
        }
        if (type == 2) {
            byte[] text = new byte[(int) count];
            in.readFully(text);
            String all = new String(text, StandardCharsets.ISO_8859_1);
            texts.put(tag, all.substring(0, all.indexOf(0) < 0 ? all.length() : all.indexOf(0)));
            return;
        }
        double[] values = new double[(int) count];
        for (int k = 0; k < values.length; k++) {
            values[k] = value(in, type);
        }
        numbers.put(tag, values);
    }

    private static double value(ImageInputStream in, int type) throws IOException {
        return switch (type) {
            case 3 -> in.readUnsignedShort();
            case 4 -> in.readUnsignedInt();
            case 5 -> in.readUnsignedInt() / (double) in.readUnsignedInt();
            case 6 -> in.readByte();
            case 8 -> in.readShort();
            case 9 -> in.readInt();
            case 10 -> in.readInt() / (double) in.readInt();
            case 11 -> in.readFloat();
            case 12 -> in.readDouble();
            default -> in.readUnsignedByte();
        };
    }

    /** Numbers of a tag; none where it is not there. */
    double[] numbers(int tag) {
        return numbers.getOrDefault(tag, new double[0]).clone();
    }

    private double number(int tag, double usual) {
        double[] numbers = numbers(tag);
        return numbers.length == 0 ? usual : numbers[0];
    }

    private String text(int tag) {
        return texts.getOrDefault(tag, "");
    }

    int count(int tag) throws InputRejected {
        double number = number(tag, 0);
        if (!(number >= 2)) {
            throw Refusals.of(
                    "raster-form", "The raster has fewer than two cells a side.", "Give one that covers the road.");
        }
        if (number > MOST_SIDE) {
            throw Refusals.tooLarge("declares more than " + MOST_SIDE + " cells a side");
        }
        return (int) number;
    }

    /** @throws InputRejected when this is a picture, or packed in a way that is not read */
    void requireHeights(long mostPieceBytes) throws InputRejected {
        int columns = count(WIDTH);
        int rows = count(HEIGHT);
        if (number(BANDS, 1) != 1 || number(MEANING, 1) > 1) {
            throw Refusals.of(
                    "picture",
                    "This is a picture, not a raster of heights.",
                    "Give a raster with one band of heights.");
        }
        double bits = number(BITS, 1);
        double form = number(SAMPLE_FORM, 1);
        boolean whole = (form == 1 || form == 2) && (bits == 8 || bits == 16 || bits == 32);
        if (!whole && !(form == 3 && (bits == 32 || bits == 64))) {
            throw Refusals.of(
                    "raster-form",
                    "The cells of this raster are no numbers that can be read here.",
                    "Export them as whole numbers of 16 or 32 bits, or floating ones of 32 or 64.");
        }
        if (!PACKINGS.contains((int) number(PACKING, 1)) || number(PREDICTOR, 1) > 2) {
            throw Refusals.of(
                    "raster-packing",
                    "The raster is packed in a way that is not read here.",
                    "Write it unpacked, or with LZW or deflate without a predictor for floating numbers.");
        }
        boolean tiled = numbers(TILE_WIDTH).length > 0;
        double wide = tiled ? number(TILE_WIDTH, 0) : columns;
        double high = tiled ? number(TILE_HEIGHT, 0) : Math.min(rows, number(STRIP_ROWS, rows));
        if (!(wide >= 1 && high >= 1)) {
            throw Refusals.damaged();
        }
        if (Math.ceil(columns / wide) * Math.ceil(rows / high) > MOST_PIECES) {
            throw Refusals.tooLarge("is written in more than " + MOST_PIECES + " pieces");
        }
        if (wide * high * bits / 8 > mostPieceBytes) {
            throw Refusals.tooLarge("is written in pieces larger than " + (mostPieceBytes >> 20) + " MiB");
        }
    }

    /** What stands for no height; not a number where nothing does. */
    double none() {
        String none = text(NODATA).strip();
        try {
            return none.isEmpty() || none.length() > 40 ? Double.NaN : Double.parseDouble(none);
        } catch (NumberFormatException e) {
            return Double.NaN;
        }
    }

    /** "2010:05:17 12:00:00" */
    Optional<LocalDate> date() {
        String date = text(DATE_TIME);
        try {
            return date.length() < 10
                    ? Optional.empty()
                    : Optional.of(LocalDate.parse(date.substring(0, 10).replace(':', '-')));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    /** The unit as one widely used writer of rasters leaves it beside; empty where it does not. */
    String unitBeside() {
        String beside = text(METADATA);
        int at = beside.indexOf("role=\"unittype\"");
        int from = at < 0 ? -1 : beside.indexOf('>', at);
        int to = from < 0 ? -1 : beside.indexOf('<', from);
        return to < 0 ? "" : beside.substring(from + 1, Math.min(to, from + 40));
    }
}
