package org.cresthaul.exchange.track;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.cresthaul.exchange.crs.PlaneCoordinates;
import org.cresthaul.units.InputRejected;

/**
 * Reads points, one a line, in the order of travel. The heading names the columns; without one it is not known which
 * number is the longitude. Fields are apart by comma, semicolon or tabulator; with a semicolon the decimal sign may be
 * a comma.
 */
final class CsvPoints {
    private static final List<String> LON =
            List.of("lon", "lng", "long", "longitude", "lon_deg", "x", "easting", "east");
    private static final List<String> LAT = List.of("lat", "latitude", "lat_deg", "y", "northing", "north");
    private static final List<String> TIME = List.of("time", "timestamp", "datetime", "utc");
    private static final int LONGEST_LINE = 10_000;

    private CsvPoints() {}

    static TrackContent read(byte[] document, String file, int crs) throws InputRejected {
        String text = new String(document, StandardCharsets.UTF_8);
        List<String> lines = text.lines().toList();
        String heading = lines.isEmpty() ? "" : lines.get(0).replace("\uFEFF", "");
        char between = heading.indexOf('\t') >= 0 ? '\t' : heading.indexOf(';') >= 0 ? ';' : ',';
        List<String> columns = fields(heading, between).stream()
                .map(c -> c.strip().toLowerCase(Locale.ROOT))
                .toList();
        int lon = column(columns, LON);
        int lat = column(columns, LAT);
        int time = column(columns, TIME);
        if (lon < 0 || lat < 0) {
            throw unknown(heading);
        }
        Gathering into = new Gathering(file, crs == 0 ? null : PlaneCoordinates.of(crs));
        for (int i = 1; i < lines.size(); i++) {
            if (lines.get(i).isBlank()) {
                continue;
            }
            List<String> row = fields(lines.get(i), between);
            into.point(field(row, lon, between), field(row, lat, between), field(row, time, '\t'), i + 1);
        }
        return into.content("CSV");
    }

    private static int column(List<String> columns, List<String> names) {
        for (String name : names) {
            if (columns.contains(name)) {
                return columns.indexOf(name);
            }
        }
        return -1;
    }

    private static String field(List<String> row, int column, char between) {
        if (column < 0 || column >= row.size()) {
            return null;
        }
        return between == ';' ? row.get(column).replace(',', '.') : row.get(column);
    }

    /** RFC 4180, but for a line break in quotes. */
    private static List<String> fields(String line, char between) {
        List<String> fields = new ArrayList<>();
        StringBuilder field = new StringBuilder();
        boolean quoted = false;
        String within = line.length() > LONGEST_LINE ? line.substring(0, LONGEST_LINE) : line;
        for (int i = 0; i < within.length(); i++) {
            char c = within.charAt(i);
            if (c == '"') {
                quoted = !quoted;
            } else if (c == between && !quoted) {
                fields.add(field.toString());
                field.setLength(0);
            } else {
                field.append(c);
            }
        }
        fields.add(field.toString());
        return fields;
    }

    private static InputRejected unknown(String heading) {
        boolean text = heading.chars().noneMatch(c -> c < 9 || c == 0xFFFD);
        String shown = Gathering.plain(heading.length() > 60 ? heading.substring(0, 60) + "..." : heading);
        return Optional.of(text)
                .filter(t -> t)
                .map(
                        t -> Refusals.of(
                                "no-heading",
                                "The first line does not name a longitude and a latitude: \"" + shown + "\".",
                                "Begin a CSV with a heading such as \"longitude,latitude\"; GPX, KML, KMZ and GeoJSON are taken as well."))
                .orElseGet(() -> Refusals.of(
                        "unknown-format",
                        "This is no format of tracks that is known here.",
                        "Give GPX, KML, KMZ, GeoJSON, or CSV with a heading."));
    }
}
