package org.cresthaul.exchange;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.cresthaul.exchange.osm.BaseMap;
import org.cresthaul.exchange.osm.BaseMapCut;
import org.cresthaul.exchange.osm.MapExtract;
import org.cresthaul.exchange.osm.MapProgress;
import org.cresthaul.route.LonLat;
import org.cresthaul.route.Route;
import org.cresthaul.route.RouteLine;
import org.cresthaul.units.InputRejected;

/** Writes the base map of a route: plain GeoJSON, one feature for each layer, places to about a meter. */
public final class BaseMapFile {
    public static final String FORM = "basemap/1";
    /** As the license of OpenStreetMap asks. */
    public static final String OPENSTREETMAP = "\u00a9 OpenStreetMap contributors, ODbL 1.0";

    public static final String ENDING = ".basemap.geojson";

    private BaseMapFile() {}

    /** How the base map of a route file is called: beside "valley.route.geojson" stands "valley.basemap.geojson". */
    public static String nameBeside(String routeFile) {
        String lower = routeFile.toLowerCase(Locale.ROOT);
        for (String ending : new String[] {".route.geojson", ".geojson", ".route.json", ".json"}) {
            if (lower.endsWith(ending) && routeFile.length() > ending.length()) {
                return routeFile.substring(0, routeFile.length() - ending.length()) + ENDING;
            }
        }
        return routeFile + ENDING;
    }

    /**
     * The same bytes, when they are a base map that can be read.
     *
     * @throws InputRejected when they are something else
     */
    public static byte[] requireForm(byte[] document) throws InputRejected {
        BaseMapReader.parse(document);
        return document;
    }

    /** Cut from extracts around a route. */
    public static byte[] cut(List<MapExtract> extracts, Route route, MapProgress progress) throws InputRejected {
        RouteLine line = route.line();
        List<LonLat> positions = new ArrayList<>();
        for (int i = 0; i < line.size(); i++) {
            positions.add(line.position(i));
        }
        return bytes(BaseMapCut.of(extracts, positions, progress), OPENSTREETMAP);
    }

    /** @param attribution whom to thank; shown wherever the map is */
    public static byte[] bytes(BaseMap map, String attribution) {
        StringBuilder text = new StringBuilder("{\"type\":\"FeatureCollection\",\"cresthaul\":\"" + FORM
                + "\",\"attribution\":" + quoted(attribution) + ",\"whole\":" + map.whole() + ",\"features\":[");
        boolean first = true;
        for (BaseMap.Layer layer : BaseMap.Layer.values()) {
            for (boolean area : new boolean[] {true, false}) {
                List<BaseMap.Shape> shapes = map.shapes().stream()
                        .filter(s -> s.layer() == layer && s.area() == area)
                        .toList();
                if (layer == BaseMap.Layer.PLACE) {
                    for (BaseMap.Shape shape : shapes) {
                        text.append(first ? "\n" : ",\n").append(place(shape));
                        first = false;
                    }
                } else if (!shapes.isEmpty()) {
                    text.append(first ? "\n" : ",\n").append(lines(layer, area, shapes));
                    first = false;
                }
            }
        }
        return text.append("\n]}\n").toString().getBytes(StandardCharsets.UTF_8);
    }

    private static String place(BaseMap.Shape shape) {
        return "{\"type\":\"Feature\",\"properties\":{\"layer\":\"place\",\"name\":" + quoted(shape.name())
                + "},\"geometry\":{\"type\":\"Point\",\"coordinates\":"
                + position(shape.points().get(0)) + "}}";
    }

    private static String lines(BaseMap.Layer layer, boolean area, List<BaseMap.Shape> shapes) {
        StringBuilder text = new StringBuilder("{\"type\":\"Feature\",\"properties\":{\"layer\":\"" + layer.word()
                + "\"},\"geometry\":{\"type\":\"" + (area ? "MultiPolygon" : "MultiLineString")
                + "\",\"coordinates\":[");
        for (int i = 0; i < shapes.size(); i++) {
            text.append(i == 0 ? "" : ",").append(area ? "[" : "");
            text.append(positions(shapes.get(i).points()));
            shapes.get(i).holes().forEach(h -> text.append(',').append(positions(h)));
            text.append(area ? "]" : "");
        }
        return text.append("]}}").toString();
    }

    private static String positions(List<LonLat> points) {
        return points.stream().map(BaseMapFile::position).collect(Collectors.joining(",", "[", "]"));
    }

    private static String position(LonLat at) {
        return String.format(Locale.ROOT, "[%.5f,%.5f]", at.lonDeg(), at.latDeg());
    }

    private static String quoted(String text) {
        StringBuilder quoted = new StringBuilder("\"");
        text.chars().forEach(c -> {
            if (c == '"' || c == '\\') {
                quoted.append('\\').append((char) c);
            } else if (c < ' ') {
                quoted.append(' ');
            } else {
                quoted.append((char) c);
            }
        });
        return quoted.append('"').toString();
    }
}
