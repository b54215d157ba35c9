package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.report.Haul;
import org.cresthaul.report.Inputs;
import org.cresthaul.report.Margins;
import org.cresthaul.report.Report;
import org.cresthaul.report.Verdict;
import org.cresthaul.rig.LevelStance;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.Route;
import org.cresthaul.units.InputRejected;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Every key of every sample file taken out, set to null and mistyped, and every entry of its lists as well: the file is
 * refused with a place, or it is checked, and then nothing is clear that was not clear before, unless there is a reason
 * that the documentation gives.
 */
class SampleFileSweepTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final Path SAMPLES = Path.of("sample-routes");
    /** Texts for people: another text there is no mistake, and changes nothing. */
    private static final Pattern FREE_TEXT = Pattern.compile(".*/(part|name|note|source|landmark|route|date)");

    private static final List<String> MISTYPED = List.of("null", "7", "true", "\"x\"", "[]", "{}", "[\"1 m\"]", "\"\"");

    /** Places of the samples with the very keys of another one. */
    private static final Set<String> ALIKE = Set.of("H09", "H14", "H15", "H16", "H17", "C2", "C3");

    /** Where leaving something out may make more clear, and why; docs/file-formats.md says so of each. */
    private static final Map<String, String> REASONS = Map.of(
            ".*/deckSag", "left out, the underside counts as measured under load",
            ".*/loadWidth", "left out, the load is as wide as the trailer",
            ".*/limits(/.*)?", "a limit that nobody set does not hold; without any, federal limits hold",
            ".*/weights/(ratings|leastBraked)(/.*)?", "a rating that nobody gives is not compared with");

    /** One change to a document. */
    private record Change(String pointer, String to) {
        JsonNode in(JsonNode document) throws Exception {
            return edited(document, pointer, to.equals("absent") ? null : MAPPER.readTree(to));
        }
    }

    /** By hazard and configuration: its verdict. */
    private static Map<String, String> verdicts(Route route, Rig combination) {
        Map<String, String> verdicts = new LinkedHashMap<>();
        for (LevelStance stance : combination.stances()) {
            Report report = RouteCheck.check(
                    new Haul(route, combination, stance, Margins.defaults()), new Inputs("route", "rig"));
            report.hazards()
                    .forEach(h -> h.cells()
                            .forEach(c -> verdicts.put(
                                    h.kind() + " " + c.configuration(),
                                    c.verdict().word())));
            report.configurations()
                    .forEach(c -> verdicts.put("loads " + c.key(), c.loads().word()));
        }
        return verdicts;
    }

    private static JsonNode read(String file) throws Exception {
        return MAPPER.readTree(Files.readAllBytes(SAMPLES.resolve(file)));
    }

    /** The route's line with only those of its places. */
    private static JsonNode only(JsonNode route, Set<String> ids) {
        ObjectNode small = route.deepCopy();
        ArrayNode features = small.putArray("features");
        for (JsonNode f : route.get("features")) {
            if (f.at("/properties/id").isMissingNode()
                    || ids.contains(f.at("/properties/id").asText())) {
                features.add(f.deepCopy());
            }
        }
        return small;
    }

    /** Every change of a document below a place. */
    private static List<Change> changes(JsonNode document, String below) {
        List<String> places = new ArrayList<>();
        listPlaces(document.at(below), below, places);
        List<Change> changes = new ArrayList<>();
        for (String place : places) {
            changes.add(new Change(place, "absent"));
            for (String filling : MISTYPED) {
                if (filling.equals("\"x\"") && FREE_TEXT.matcher(place).matches()) {
                    continue;
                }
                changes.add(new Change(place, filling));
            }
        }
        return changes;
    }

    private static void listPlaces(JsonNode node, String at, List<String> places) {
        if (node.isObject()) {
            node.properties().forEach(e -> {
                places.add(at + "/" + e.getKey());
                listPlaces(e.getValue(), at + "/" + e.getKey(), places);
            });
        } else if (node.isArray() && !isPoint(node)) {
            // Entries of long lists are alike: points of an outline or of a surveyed line.
            for (int i = 0; i < Math.min(node.size(), node.size() > 5 ? 2 : 5); i++) {
                places.add(at + "/" + i);
                listPlaces(node.get(i), at + "/" + i, places);
            }
        }
    }

    /** A point's two numbers are alike for every point: the lists of points are swept, not the insides of each. */
    private static boolean isPoint(JsonNode list) {
        return list.size() == 2 && !list.get(0).isContainerNode();
    }

    private static JsonNode edited(JsonNode document, String place, JsonNode value) {
        JsonNode copy = document.deepCopy();
        int cut = place.lastIndexOf('/');
        JsonNode parent = copy.at(place.substring(0, cut));
        String key = place.substring(cut + 1);
        if (parent instanceof ArrayNode list) {
            int i = Integer.parseInt(key);
            if (value == null) {
                list.remove(i);
            } else {
                list.set(i, value);
            }
        } else if (value == null) {
            ((ObjectNode) parent).remove(key);
        } else {
            ((ObjectNode) parent).set(key, value);
        }
        return copy;
    }

    /** Whether the change takes an entry out of a list: legal, and then less is known to be there. */
    private static boolean takesAnEntryOut(Change change) {
        return change.to.equals("absent") && change.pointer.matches(".*/\\d+");
    }

    private interface Checked {
        Map<String, String> of(JsonNode document) throws InputRejected;
    }

    /** What was accepted. */
    private static Set<String> sweep(JsonNode document, String below, Checked check) throws Exception {
        Map<String, String> before = check.of(document);
        Set<String> accepted = new TreeSet<>();
        List<String> wrong = new ArrayList<>();
        List<Change> changes = changes(document, below);
        assertTrue(changes.size() > 20, below);
        for (Change change : changes) {
            String what = change.pointer + " -> " + change.to;
            Map<String, String> after;
            try {
                after = check.of(change.in(document));
            } catch (InputRejected rejected) {
                assertTrue(
                        rejected.problems().stream()
                                .allMatch(p ->
                                        !p.message().isBlank() && !p.remedy().isBlank()),
                        what);
                continue;
            } catch (RuntimeException | Error failed) {
                wrong.add(what + ": " + failed);
                continue;
            }
            accepted.add(what);
            assertFalse(after.isEmpty(), what);
            boolean excused = takesAnEntryOut(change)
                    || REASONS.keySet().stream().anyMatch(r -> Pattern.matches(r, change.pointer));
            if (!excused) {
                after.forEach((cell, verdict) -> {
                    if (verdict.equals(Verdict.CLEAR.word())
                            && !Verdict.CLEAR.word().equals(before.get(cell))) {
                        wrong.add(what + ": " + cell + " was " + before.get(cell) + ", is clear");
                    }
                });
            }
        }
        assertEquals(List.of(), wrong);
        return accepted;
    }

    /** The rig at its reference notch, or at that and the highest: notches are read and judged alike. */
    private static ObjectNode withNotches(JsonNode rig, int count) throws Exception {
        ObjectNode small = rig.deepCopy();
        ArrayNode notches = small.putArray("notches");
        for (JsonNode notch : rig.get("notches")) {
            boolean last = notch == rig.get("notches").get(rig.get("notches").size() - 1);
            if (notch.get("offset").asText().equals("0 in") || count > 1 && last) {
                notches.add(notch);
            }
        }
        return small;
    }

    /** The rig in its one simplest setting: what is judged is the route. */
    private static JsonNode oneSetting(JsonNode rig) throws Exception {
        ObjectNode small = withNotches(rig, 1);
        for (String key : List.of(
                "/booster",
                "/plan/booster",
                "/weights/booster",
                "/weights/regulator",
                "/weights/shims",
                "/weights/gross",
                "/weights/gauges/booster",
                "/trailer/liftAxle",
                "/weights/gauges/trailerUp")) {
            String place = "/stances/0" + key;
            int cut = place.lastIndexOf('/');
            ((ObjectNode) small.at(place.substring(0, cut))).remove(place.substring(cut + 1));
        }
        return small;
    }

    @ParameterizedTest
    @ValueSource(strings = {"lowbed-loaded.rig.json", "lowbed-empty.rig.json"})
    void noKeyOfARigMakesMoreClearWhenItIsGoneOrWrong(String file) throws Exception {
        Route route = RouteFile.parse(only(read("alder-county.route.geojson"), Set.of("H02", "H05", "B01"))
                .toString());
        JsonNode rig = withNotches(read(file), 2);
        assertTrue(verdicts(route, RigFile.parse(rig.toString())).containsValue(Verdict.CLEAR.word()), file);
        Set<String> accepted = sweep(rig, "", changed -> verdicts(route, RigFile.parse(changed.toString())));
        // A note may go, a steer axle may not.
        assertTrue(accepted.contains("/note -> absent"), accepted.toString());
        assertTrue(accepted.stream().noneMatch(a -> a.contains("/tractor/steer")), accepted.toString());
    }

    @ParameterizedTest
    @ValueSource(strings = {"alder-county.route.geojson", "sorrel-valley.route.geojson"})
    void noKeyOfARouteMakesMoreClearWhenItIsGoneOrWrong(String file) throws Exception {
        Rig rig = RigFile.parse(oneSetting(read("lowbed-loaded.rig.json")).toString());
        JsonNode route = read(file);
        int swept = 0;
        for (JsonNode feature : route.get("features")) {
            JsonNode id = feature.at("/properties/id");
            if (id.isTextual() && !ALIKE.contains(id.textValue())) {
                JsonNode small = only(route, Set.of(id.textValue()));
                String at = "/features/" + (small.get("features").size() - 1);
                sweep(small, at, changed -> verdicts(RouteFile.parse(changed.toString()), rig));
                swept++;
            }
        }
        assertTrue(swept > 12, file);
        sweep(
                only(route, Set.of("H01", "B01")),
                "/limits",
                changed -> verdicts(RouteFile.parse(changed.toString()), rig));
    }
}
