package org.cresthaul.exchange;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.exchange.json.JsonText;
import org.cresthaul.exchange.osm.BaseMap;
import org.cresthaul.exchange.osm.BaseMap.Layer;
import org.cresthaul.exchange.osm.BaseMap.Shape;
import org.cresthaul.exchange.routefile.PositionFields;
import org.cresthaul.route.LonLat;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.Problems;

/**
 * Reads a base map ({@code docs/file-formats.md}). A layer that is not known here is passed over, as the page does:
 * another version may have written it.
 */
public final class BaseMapReader {
    private final Problems problems;
    private final List<Shape> shapes = new ArrayList<>();
    private int points;

    private BaseMapReader(Problems problems) {
        this.problems = problems;
    }

    /**
     * Reads a base map file.
     *
     * @param document UTF-8
     * @throws InputRejected with every problem found
     */
    public static CreditedMap parse(byte[] document) throws InputRejected {
        Problems problems = new Problems();
        JsonNode root = JsonText.read(document, problems);
        problems.throwIfAny();
        Optional<CreditedMap> map = read(root, "", problems);
        problems.throwIfAny();
        return map.orElseThrow();
    }

    /**
     * Reads a base map that is part of a larger document, in the form of a file.
     *
     * @return empty exactly when a problem was added, or when {@code node} is missing
     */
    public static Optional<CreditedMap> read(JsonNode node, String pointer, Problems problems) {
        if (node.isMissingNode()) {
            return Optional.empty();
        }
        int before = problems.count();
        if (!(BaseMapFile.FORM.equals(node.path("cresthaul").asText())
                && node.path("features").isArray())) {
            problems.add(
                    "not-a-base-map",
                    "This is no base map.",
                    pointer,
                    "Make it with import --map, or take the file away.");
            return Optional.empty();
        }
        JsonFields file = JsonFields.of(node, pointer, problems);
        String credit = file.text("attribution", JsonFields.LONGEST_NOTE);
        BaseMapReader reader = new BaseMapReader(problems);
        file.findObjects("features", 0, BaseMap.MOST_POINTS).forEach(reader::feature);
        reader.requireBounded(file);
        return problems.count() > before
                ? Optional.empty()
                : Optional.of(new CreditedMap(
                        new BaseMap(reader.shapes, node.path("whole").asBoolean()), credit));
    }

    private void requireBounded(JsonFields file) {
        if (points > BaseMap.MOST_POINTS) {
            file.problem(
                    "features",
                    "too-many",
                    "The base map has " + points + " points, more than " + BaseMap.MOST_POINTS + ".",
                    "Make it with import --map, which leaves the least roads out.");
        }
    }

    private void feature(JsonFields feature) {
        JsonFields properties = feature.object("properties");
        String word = properties.text("layer", JsonFields.LONGEST_NAME);
        Optional<Layer> layer =
                Arrays.stream(Layer.values()).filter(l -> l.word().equals(word)).findFirst();
        if (layer.isEmpty()) {
            return;
        }
        JsonFields geometry = feature.object("geometry");
        JsonNode coordinates = geometry.find("coordinates");
        String at = geometry.pointer("coordinates");
        if (layer.get() == Layer.PLACE) {
            geometry.word("type", List.of("Point"));
            String name = properties.find("name").asText();
            position(coordinates, () -> at).ifPresent(p -> shapes.add(new Shape(Layer.PLACE, false, name, List.of(p))));
            return;
        }
        boolean area = "MultiPolygon".equals(geometry.word("type", List.of("MultiPolygon", "MultiLineString")));
        for (int i = 0; i < requireList(coordinates, at); i++) {
            JsonNode part = coordinates.get(i);
            String where = at + "/" + i;
            if (area) {
                area(layer.get(), part, where);
            } else {
                line(part, where, 2).ifPresent(l -> shapes.add(new Shape(layer.get(), false, "", l)));
            }
        }
    }

    /** Maps that were cut before have rings of three positions where an area was narrow: nothing to draw. */
    private void area(Layer layer, JsonNode rings, String pointer) {
        List<List<LonLat>> read = new ArrayList<>();
        for (int i = 0; i < requireList(rings, pointer); i++) {
            line(rings.get(i), pointer + "/" + i, 1).ifPresent(read::add);
        }
        if (!read.isEmpty() && isRing(read.get(0))) {
            List<List<LonLat>> holes =
                    read.stream().skip(1).filter(BaseMapReader::isRing).toList();
            shapes.add(new Shape(layer, true, "", read.get(0), holes));
        }
    }

    private static boolean isRing(List<LonLat> positions) {
        return positions.size() >= BaseMap.LEAST_IN_RING;
    }

    /** @return how many items it has; none after a problem */
    private int requireList(JsonNode list, String pointer) {
        if (list.isArray() && !list.isEmpty()) {
            return list.size();
        }
        problems.add(
                "wrong-geometry",
                "Lists of positions stand here.",
                pointer,
                "Write coordinates as GeoJSON (RFC 7946) has them.");
        return 0;
    }

    private Optional<List<LonLat>> line(JsonNode positions, String pointer, int least) {
        int before = problems.count();
        List<LonLat> line = new ArrayList<>();
        for (int i = 0; i < requireList(positions, pointer); i++) {
            String place = "/" + i;
            position(positions.get(i), () -> pointer + place).ifPresent(line::add);
        }
        if (problems.count() == before && line.size() < least) {
            problems.add(
                    "wrong-geometry",
                    "There are " + line.size() + " positions, at least " + least + " are needed.",
                    pointer,
                    "A line has two at least.");
        }
        return problems.count() == before ? Optional.of(line) : Optional.empty();
    }

    private Optional<LonLat> position(JsonNode position, Supplier<String> pointer) {
        points++;
        return Optional.ofNullable(PositionFields.read(position, pointer, problems));
    }
}
