package org.cresthaul.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.rig.Rig;
import org.cresthaul.route.Route;
import org.cresthaul.units.BadQuantity;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.Length;
import org.junit.jupiter.api.Test;

/** What a check will cost by its estimate. */
class CheckCostTest {
    private static final Path SAMPLES = Path.of("sample-routes");
    private static final ObjectMapper JSON = new ObjectMapper();

    /** In proportion to the corners of one unit times the pieces of the other, counted in the file itself. */
    @Test
    void growsWithThePairsOfOutlinePointsOfCoupledUnits() throws IOException, InputRejected {
        Route route = RouteFile.parse(Files.readAllBytes(SAMPLES.resolve("sorrel-valley.route.geojson")));
        double[] ms = new double[4];
        double[] pairs = new double[4];
        for (int i = 0; i < ms.length; i++) {
            JsonNode drawn = drawn(1 << i, "tractor", "trailer", "booster");
            Rig rig = RigFile.parse(JSON.writeValueAsBytes(drawn));
            ms[i] = CheckCost.estimatedMs(route, rig, rig.stances().get(0));
            JsonNode stance = drawn.get("stances").get(0);
            double trailer = points(stance.get("trailer"));
            for (JsonNode load : stance.get("trailer").get("load")) {
                trailer += load.get("outline").size();
            }
            pairs[i] = trailer * (points(stance.get("tractor")) + points(stance.get("booster")));
        }
        double msPerPair = (ms[3] - ms[0]) / (pairs[3] - pairs[0]);
        assertTrue(msPerPair > 0, msPerPair + " ms a pair");
        for (int i = 1; i < ms.length; i++) {
            assertTrue(pairs[i] > 2 * pairs[i - 1], pairs[i] + " pairs");
            assertEquals(msPerPair, (ms[i] - ms[i - 1]) / (pairs[i] - pairs[i - 1]), 1e-9 * msPerPair);
        }
    }

    private static int points(JsonNode unit) {
        return unit.get("underside").size() + unit.get("topside").size();
    }

    @Test
    void countsEveryUnit() throws IOException, InputRejected {
        Route route = RouteFile.parse(Files.readAllBytes(SAMPLES.resolve("sorrel-valley.route.geojson")));
        Rig plain = rigDrawn(1);
        double plainMs = CheckCost.estimatedMs(route, plain, plain.stances().get(0));
        for (String unit : List.of("tractor", "trailer", "booster")) {
            Rig fine = rigDrawn(16, unit);
            assertTrue(CheckCost.estimatedMs(route, fine, fine.stances().get(0)) > plainMs, unit);
        }
    }

    /** The loaded sample with the undersides and topsides of some units drawn with more points on the same lines. */
    private static Rig rigDrawn(int times, String... units) throws IOException, InputRejected {
        return RigFile.parse(JSON.writeValueAsBytes(drawn(times, units)));
    }

    private static JsonNode drawn(int times, String... units) throws IOException {
        JsonNode rig = JSON.readTree(Files.readAllBytes(SAMPLES.resolve("lowbed-loaded.rig.json")));
        for (JsonNode stance : rig.get("stances")) {
            for (String unit : units) {
                ObjectNode drawn = (ObjectNode) stance.get(unit);
                drawn.set("underside", finer(drawn.get("underside"), times));
                drawn.set("topside", finer(drawn.get("topside"), times));
            }
        }
        return rig;
    }

    private static ArrayNode finer(JsonNode outline, int times) {
        ArrayNode all = JSON.createArrayNode();
        for (int i = 0; i < outline.size(); i++) {
            all.add(outline.get(i));
            for (int k = 1; i + 1 < outline.size() && k < times; k++) {
                ObjectNode between = JSON.createObjectNode();
                for (String at : List.of("x", "h")) {
                    double from = meters(outline.get(i).get(at));
                    double to = meters(outline.get(i + 1).get(at));
                    between.put(at, String.format(Locale.ROOT, "%.6f m", from + (to - from) * k / times));
                }
                all.add(between);
            }
        }
        return all;
    }

    private static double meters(JsonNode length) {
        try {
            return Length.parse(length.asText()).meters();
        } catch (BadQuantity e) {
            throw new IllegalArgumentException(e);
        }
    }
}
