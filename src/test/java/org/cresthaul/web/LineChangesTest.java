package org.cresthaul.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.route.Hazard;
import org.cresthaul.route.Route;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.InputRejected;
import org.junit.jupiter.api.Test;

/**
 * What the page makes of the lines of the sample routes is read by the program's own reader, and every place is then
 * where the page took it to be.
 */
class LineChangesTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    /** The page follows the line in longer pieces than the reader does. */
    private static final double SAME_M = 0.5;

    @Test
    void everyChangeLeavesAFileThatIsReadWithItsPlacesWhereTheyAre() throws Exception {
        Map<String, List<String>> refused = new TreeMap<>();
        int made = 0;
        int placed = 0;
        for (String line : lines()) {
            JsonNode change = JSON.readTree(line);
            String title = Path.of(change.path("file").textValue()).getFileName() + ": "
                    + change.path("title").textValue();
            if (!change.path("refused").isEmpty()) {
                continue;
            }
            made++;
            try {
                placed +=
                        requirePlaces(title, RouteFile.parse(change.path("text").textValue()), change.path("at"));
            } catch (InputRejected e) {
                refused.put(
                        title,
                        e.problems().stream().map(InputProblem::code).distinct().toList());
            }
        }
        assertTrue(made > 400 && placed > 2000, made + " changes, " + placed + " places");
        // A corner that a cut comes near to, or that is turned round, is told by the reader itself.
        Map<String, List<String>> others = new TreeMap<>(refused);
        others.values().removeIf(codes -> codes.equals(List.of("legs-off-route")));
        assertEquals(Map.of(), others);
        assertTrue(refused.size() < 12, refused.toString());
    }

    /** Hazards of the route at the chainages that the page has found for them; how many. */
    private static int requirePlaces(String title, Route route, JsonNode at) {
        Map<String, Hazard> byId =
                route.hazards().stream().collect(Collectors.toMap(h -> h.place().id(), Function.identity()));
        int count = 0;
        for (JsonNode one : at) {
            Hazard hazard = byId.get(one.get(0).textValue());
            if (hazard != null) {
                assertEquals(one.get(1).doubleValue(), hazard.place().chainageM(), SAME_M, title + ", " + one.get(0));
                count++;
            }
        }
        return count;
    }

    private static List<String> lines() throws Exception {
        List<String> command = new ArrayList<>(List.of("node", "src/test/web/everylinechange.mjs"));
        try (Stream<Path> routes = Files.list(Path.of("sample-routes"))) {
            routes.map(Path::toString)
                    .filter(name -> name.endsWith(".route.geojson"))
                    .sorted()
                    .forEach(command::add);
        }
        assertTrue(command.size() >= 5, command.toString());
        return output(command, null);
    }

    /** The lines that a program prints. */
    static List<String> output(List<String> command, String input) throws Exception {
        Path in = Files.createTempFile("line-changes", ".in");
        Path log = Files.createTempFile("line-changes", ".txt");
        try {
            Files.writeString(in, input == null ? "" : input, StandardCharsets.UTF_8);
            Process node = new ProcessBuilder(command)
                    .redirectInput(in.toFile())
                    .redirectErrorStream(true)
                    .redirectOutput(log.toFile())
                    .start();
            assertTrue(node.waitFor(2, TimeUnit.MINUTES), "the changes come to an end");
            assertEquals(0, node.exitValue(), () -> "node failed");
            return Files.readAllLines(log, StandardCharsets.UTF_8);
        } finally {
            Files.delete(log);
            Files.delete(in);
        }
    }
}
