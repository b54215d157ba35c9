package org.cresthaul.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.cresthaul.check.CheckCase.Elevation;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.report.Margins;
import org.junit.jupiter.api.Test;

/**
 * A route that the page has turned round is judged as the road is from the other side: a road that is the same from
 * both sides keeps its gaps, and any other has those of its mirror image, which is written here point by point.
 */
class TurnedRoundTest {
    /** A nanometer: the mirror image is written in the same decimals. */
    private static final double SAME_M = 1e-9;

    private static final String LEVEL = "\"0 %\"";

    private static String text(Elevation elevation, String gradeBefore, String gradeAfter) {
        return """
                {"type": "FeatureCollection", "cresthaul": "route/1", "name": "One hazard",
                 "features": [
                  {"type": "Feature", "properties": {"route": "Straight"},
                   "geometry": {"type": "LineString", "coordinates": [[-93.1, 44.6], [-93.08, 44.6]]}},
                  {"type": "Feature", "geometry": {"type": "Point", "coordinates": [-93.09, 44.6]},
                   "properties": {"id": "H1", "name": "The hazard", %s,
                    "approachBefore": {"grade": %s, "accuracy": "0 %%"},
                    "approachAfter": {"grade": %s, "accuracy": "0 %%"}}}]}
                """.formatted(
                        CheckCase.crossingProperties(CheckCase.points(elevation), "10 mm"), gradeBefore, gradeAfter);
    }

    /** Least gap over the ground of every configuration. */
    private static Map<String, Double> gaps(String text) throws Exception {
        Map<String, Double> gaps = new TreeMap<>();
        CheckCase.check(RouteFile.parse(text), Margins.defaults())
                .hazards()
                .get(0)
                .cells()
                .forEach(c -> gaps.put(c.configuration(), c.ground().valueM()));
        return gaps;
    }

    private static String turned(String text) throws Exception {
        Path in = Files.createTempFile("turned", ".in");
        Path out = Files.createTempFile("turned", ".json");
        try {
            Files.writeString(in, text);
            Process node = new ProcessBuilder("node", "src/test/web/turnedround.mjs")
                    .redirectInput(in.toFile())
                    .redirectOutput(out.toFile())
                    .redirectError(ProcessBuilder.Redirect.INHERIT)
                    .start();
            assertTrue(node.waitFor(1, TimeUnit.MINUTES), "it comes to an end");
            assertEquals(0, node.exitValue());
            return Files.readString(out, StandardCharsets.UTF_8);
        } finally {
            Files.delete(in);
            Files.delete(out);
        }
    }

    private static void requireSame(Map<String, Double> expected, Map<String, Double> found) {
        assertEquals(expected.keySet(), found.keySet());
        expected.forEach((key, gap) -> assertEquals(gap, found.get(key), SAME_M, key));
    }

    @Test
    void aRoadThatIsTheSameFromBothSidesKeepsItsGaps() throws Exception {
        String hump = text(x -> Math.max(0, 0.25 - Math.abs(x) * 0.03), LEVEL, LEVEL);
        requireSame(gaps(hump), gaps(turned(hump)));
    }

    @Test
    void anyOtherHasTheGapsOfItsMirrorImage() throws Exception {
        // Up within four meters to 0.3 m, and down over twelve; behind it the road falls by one in a hundred.
        Elevation hump = x -> x < -4 ? 0 : x < 0 ? 0.3 + 0.075 * x : x < 12 ? 0.3 - 0.025 * x : 0.12 - 0.01 * x;
        String there = text(hump, LEVEL, "\"-1 %\"");
        String mirror = text(x -> hump.at(-x), "\"1 %\"", LEVEL);
        Map<String, Double> back = gaps(turned(there));
        requireSame(gaps(mirror), back);
        assertNotEquals(gaps(there), back, "it is another road from the other side");
    }
}
