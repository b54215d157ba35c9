package org.cresthaul.exchange;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.util.RawValue;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.cresthaul.exchange.json.JsonText;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.route.LonLat;
import org.cresthaul.route.RouteLine;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.Problems;

/**
 * A route file that is being made, feature by feature ({@code docs/file-formats.md}), one line for each. Not for
 * sharing.
 */
final class RouteDocument {
    private static final ObjectMapper JSON = new ObjectMapper();

    private final ObjectNode head;
    private final List<ObjectNode> features = new ArrayList<>();
    private int legs;

    private RouteDocument(ObjectNode head) {
        this.head = head;
    }

    static RouteDocument of(String name, String note) {
        ObjectNode head = JSON.createObjectNode();
        head.put("type", "FeatureCollection");
        head.put("cresthaul", RouteFile.FORMAT);
        head.put("name", name);
        if (!note.isEmpty()) {
            head.put("note", note);
        }
        return new RouteDocument(head);
    }

    /**
     * A route file as it is, but for its legs and the gaps in its track: these are drawn anew.
     *
     * @throws InputRejected when it is none
     */
    static RouteDocument read(byte[] file) throws InputRejected {
        RouteFile.parse(file);
        Problems problems = new Problems();
        JsonNode root = JsonText.read(file, problems);
        problems.throwIfAny();
        ObjectNode head = ((ObjectNode) root).deepCopy();
        JsonNode all = head.remove("features");
        head.remove("bbox");
        RouteDocument document = new RouteDocument(head);
        for (JsonNode feature : all) {
            JsonNode properties = feature.path("properties");
            JsonNode candidate = properties.path("candidate");
            boolean gap = candidate.path("object").asText().equals(GapFeatures.OBJECT)
                    && candidate.path("state").asText().equals("open");
            if (!properties.has("route") && !gap) {
                document.features.add((ObjectNode) feature);
            }
        }
        return document;
    }

    private Optional<ObjectNode> find(String id) {
        return features.stream()
                .filter(f -> f.path("properties").path("id").asText().equals(id))
                .findFirst();
    }

    /** Of the hazard with this identifier: "open" and so on; empty where there is none. */
    String candidateState(String id) {
        return find(id).map(f ->
                        f.path("properties").path("candidate").path("state").asText("surveyed"))
                .orElse("");
    }

    /** As of when an open candidate is, as it is written; empty where that is not said, or there is none. */
    String openDate(String id) {
        return find(id).map(f -> f.path("properties").path("candidate"))
                .filter(c -> c.path("state").asText().equals("open"))
                .map(c -> c.path("date").asText())
                .orElse("");
    }

    /** Whether the point with this identifier lies on a line, at the passage it names. */
    boolean isOn(RouteLine line, String id) {
        return find(id).map(f -> {
                    JsonNode at = f.path("geometry").path("coordinates");
                    int passages = line.passagesWithin(
                                    new LonLat(at.path(0).asDouble(), at.path(1).asDouble()), RouteImport.NEAR_M)
                            .size();
                    int passage = f.path("properties").path("passage").asInt(0);
                    return passage == 0 ? passages == 1 : passage <= passages;
                })
                .orElse(false);
    }

    /** Writes the sketch of a candidate's road in place of the one there is. */
    void putSketch(String id, ObjectNode sketch) {
        find(id).map(f -> f.path("properties").path("candidate"))
                .filter(ObjectNode.class::isInstance)
                .map(ObjectNode.class::cast)
                .ifPresent(c -> c.set("sketch", sketch));
    }

    /** Candidates that came from a map, but for these. */
    List<ImportPreview.Missing> mapCandidatesBut(Set<String> ids) {
        return features.stream()
                .map(f -> f.path("properties"))
                .filter(p -> p.path("candidate").path("source").asText().equals("map"))
                .filter(p -> !ids.contains(p.path("id").asText()))
                .map(p -> new ImportPreview.Missing(
                        p.path("id").asText(),
                        p.path("name").asText(),
                        p.path("candidate").path("object").asText(),
                        p.path("candidate").path("state").asText()))
                .toList();
    }

    /** Names of the waypoints there are. */
    Set<String> waypoints() {
        return features.stream()
                .map(f -> f.path("properties"))
                .filter(p -> p.has("place"))
                .map(p -> p.path("name").asText())
                .collect(Collectors.toSet());
    }

    /** Takes out open candidates that stand for what a map did not have: another one says anew what it has. */
    void removeOpenWithout(String object) {
        features.removeIf(f -> {
            JsonNode candidate = f.path("properties").path("candidate");
            return candidate.path("source").asText().equals("map")
                    && candidate.path("object").asText().equals(object)
                    && candidate.path("state").asText().equals("open");
        });
    }

    void remove(String id) {
        find(id).ifPresent(features::remove);
    }

    /** The identifier, or one like it that nothing has yet. */
    String freeId(String id) {
        String free = id;
        for (int k = 2; find(free).isPresent(); k++) {
            free = id + "-" + k;
        }
        return free;
    }

    void addLeg(String name, List<LonLat> positions) {
        ObjectNode feature = feature("LineString");
        ((ObjectNode) feature.get("properties")).put("route", name);
        // A line has a hundred thousand positions: written out at once, not as a tree.
        StringBuilder coordinates = new StringBuilder("[");
        for (LonLat p : positions) {
            coordinates
                    .append(coordinates.length() > 1 ? ",[" : "[")
                    .append(p.lonDeg())
                    .append(',')
                    .append(p.latDeg())
                    .append(']');
        }
        ((ObjectNode) feature.get("geometry"))
                .putRawValue("coordinates", new RawValue(coordinates.append(']').toString()));
        features.add(legs++, feature);
    }

    /** A point; the properties are added to what is returned. */
    ObjectNode addPoint(LonLat at) {
        ObjectNode feature = feature("Point");
        ((ObjectNode) feature.get("geometry"))
                .putArray("coordinates")
                .add(at.lonDeg())
                .add(at.latDeg());
        features.add(feature);
        return (ObjectNode) feature.get("properties");
    }

    private static ObjectNode feature(String geometry) {
        ObjectNode feature = JSON.createObjectNode();
        feature.put("type", "Feature");
        feature.putObject("properties");
        feature.putObject("geometry").put("type", geometry);
        return feature;
    }

    byte[] bytes() {
        StringBuilder text = new StringBuilder("{\n");
        try {
            for (Map.Entry<String, JsonNode> one : head.properties()) {
                text.append("  ")
                        .append(JSON.writeValueAsString(one.getKey()))
                        .append(": ")
                        .append(JSON.writeValueAsString(one.getValue()))
                        .append(",\n");
            }
            text.append("  \"features\": [\n");
            for (int i = 0; i < features.size(); i++) {
                text.append("    ")
                        .append(JSON.writeValueAsString(features.get(i)))
                        .append(i + 1 < features.size() ? ",\n" : "\n");
            }
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a tree can be written", e);
        }
        return text.append("  ]\n}\n").toString().getBytes(StandardCharsets.UTF_8);
    }
}
