package org.cresthaul;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SplittableRandom;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.cresthaul.exchange.rigfile.RigFile;
import org.cresthaul.exchange.rigfile.RigMistakes;
import org.cresthaul.exchange.routefile.LimitsFile;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.exchange.routefile.RouteMistakes;
import org.cresthaul.rig.JeepTexts;
import org.cresthaul.rig.Rig;
import org.cresthaul.rig.RigTexts;
import org.cresthaul.route.Route;
import org.cresthaul.route.RouteTexts;
import org.cresthaul.server.SettledConditions;
import org.cresthaul.units.Angle;
import org.cresthaul.units.BadQuantity;
import org.cresthaul.units.Duration;
import org.cresthaul.units.Grade;
import org.cresthaul.units.JsonEdit;
import org.cresthaul.units.Length;
import org.cresthaul.units.Mass;
import org.cresthaul.units.Mistake;
import org.cresthaul.units.Pressure;
import org.cresthaul.units.Speed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The published schemas, the readers and the page in docs say the same. */
class FileFormatsTest {
    private static final Schema RIG = schema("rig-1");
    private static final Schema ROUTE = schema("route-1");

    private static Schema schema(String name) {
        try (InputStream text = FileFormatsTest.class.getResourceAsStream("/schema/" + name + ".schema.json")) {
            return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                    .getSchema(text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static Stream<Mistake> rigMistakes() {
        return RigMistakes.ALL.stream();
    }

    static Stream<Mistake> routeMistakes() {
        return RouteMistakes.ALL.stream();
    }

    @Test
    void schemasTakeWhatTheReadersTake() throws Exception {
        RigFile.parse(RigTexts.RIG);
        assertEquals(List.of(), RIG.validate(RigTexts.RIG, InputFormat.JSON));
        RouteFile.parse(RouteTexts.ROUTE);
        assertEquals(List.of(), ROUTE.validate(RouteTexts.ROUTE, InputFormat.JSON));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("rigMistakes")
    void theRigSchemaSeesMistakesOfShape(Mistake mistake) {
        assertEquals(
                mistake.shape(),
                !RIG.validate(mistake.in(RigTexts.RIG), InputFormat.JSON).isEmpty());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("routeMistakes")
    void theRouteSchemaSeesMistakesOfShape(Mistake mistake) {
        assertEquals(
                mistake.shape(),
                !ROUTE.validate(mistake.in(RouteTexts.ROUTE), InputFormat.JSON).isEmpty());
    }

    @Test
    void theExamplesInTheDocsAreFilesThatWork() throws Exception {
        String page = Files.readString(Path.of("docs/file-formats.md"));
        Matcher block = Pattern.compile("(?s)```json\n(.*?)```").matcher(page);
        int rigs = 0;
        int routes = 0;
        int limits = 0;
        int weights = 0;
        int settled = 0;
        int jeeps = 0;
        int lifts = 0;
        int boosters = 0;
        while (block.find()) {
            String example = block.group(1);
            if (example.contains("\"rig/1\"")) {
                Rig rig = RigFile.parse(example);
                assertTrue(rig.note().contains("Invented"), rig.note());
                assertEquals(List.of(), RIG.validate(example, InputFormat.JSON));
                rigs++;
            } else if (example.contains("\"settled/1\"")) {
                assertEquals(
                        1,
                        SettledConditions.parse(example.getBytes(StandardCharsets.UTF_8))
                                .size());
                settled++;
            } else if (example.contains("\"limits/1\"")) {
                LimitsFile.parse(example);
                limits++;
            } else if (example.startsWith("{\"jeeps\"")) {
                String jeep =
                        new ObjectMapper().readTree(example).at("/jeeps/0").toString();
                String text = JeepTexts.with(jeep);
                assertEquals(1, RigFile.parse(text).stances().get(0).jeeps().size());
                assertEquals(List.of(), RIG.validate(text, InputFormat.JSON));
                jeeps++;
            } else if (example.startsWith("{\"liftAxles\"")) {
                JsonNode tree = new ObjectMapper().readTree(example);
                String text = RigTexts.onFourAxles(
                        tree.get("liftAxles").toString(), tree.get("liftStates").toString());
                assertEquals(
                        3, RigFile.parse(text).stances().get(0).liftStates().size());
                assertEquals(List.of(), RIG.validate(text, InputFormat.JSON));
                lifts++;
            } else if (example.startsWith("{\"booster\"")) {
                JsonNode tree = new ObjectMapper().readTree(example);
                String text = JsonEdit.edit(
                        JsonEdit.edit(
                                RigTexts.RIG,
                                "/stances/0/booster",
                                tree.get("booster").toString()),
                        "/stances/0/boostersBehind",
                        tree.get("boostersBehind").toString());
                assertEquals(2, RigFile.parse(text).stances().get(0).boosters().size());
                assertEquals(List.of(), RIG.validate(text, InputFormat.JSON));
                boosters++;
            } else if (example.contains("\"gooseneck\": {\"weight\"")) {
                RigFile.parse(JsonEdit.edit(RigTexts.RIG, "/stances/0/weights", example));
                weights++;
            } else {
                Route route = RouteFile.parse(example);
                assertTrue(route.note().contains("Invented"), route.note());
                assertEquals(6, route.hazards().size());
                assertEquals(List.of(), ROUTE.validate(example, InputFormat.JSON));
                routes++;
            }
        }
        assertEquals(1, rigs);
        assertEquals(1, routes);
        assertEquals(1, limits);
        assertEquals(1, weights);
        assertEquals(1, settled);
        assertEquals(1, lifts);
        assertEquals(1, jeeps);
        assertEquals(1, boosters);
    }

    @Test
    void theQuantitiesInTheDocsAreTakenAndRefusedAsTheySay() throws Exception {
        List<String> rows = Files.readAllLines(Path.of("docs/file-formats.md")).stream()
                .filter(line -> line.matches("\\| (length|grade|angle|weight|pressure|time|speed) \\|.*"))
                .toList();
        assertEquals(7, rows.size());
        int taken = 0;
        int refused = 0;
        for (String row : rows) {
            String[] cells = row.split("\\|");
            for (int column : new int[] {2, 3}) {
                Matcher quoted = Pattern.compile("`\"(.*?)\"`").matcher(cells[column]);
                while (quoted.find()) {
                    String text = quoted.group(1).replace("\\\"", "\"");
                    boolean reads = problemOf(cells[1].strip(), text).isEmpty();
                    assertEquals(column == 2, reads, text);
                    taken += reads ? 1 : 0;
                    refused += reads ? 0 : 1;
                }
            }
        }
        assertTrue(taken >= 14 && refused >= 7, taken + " taken, " + refused + " refused");
    }

    @Test
    void whatEitherTakesForAQuantityTheOtherTakesToo() throws IOException {
        long seed = 20260212;
        System.out.println("quantity texts, seed " + seed);
        SplittableRandom random = new SplittableRandom(seed);
        String[] pieces = {
            "1", "12", "0", "6", "13", "1/2", "3/4", "¾", "½", ".5", "4.11", "1,200", "19,000.5", "-", "−", "+", " ",
                    " ", " ",
            " ", "ft", "'", "′", "’", "in", "\"", "″", "”", "feet", "inches", "m", "mm", "cm", "km", "%", "deg", "°",
                    "rad",
            "s", "min", "h", "mph", "km/h", "m/s", "lb", "lbs", "kg", "t", "psi", "bar", "kPa", "MPa", "e3", ",",
                    "\u00a0"
        };
        String schemas = Files.readString(Path.of("src/main/resources/schema/rig-1.schema.json"))
                + Files.readString(Path.of("src/main/resources/schema/route-1.schema.json"));
        int both = 0;
        int neither = 0;
        for (String kind : new String[] {"length", "grade", "angle", "mass", "pressure", "duration", "speed"}) {
            Pattern pattern = patternOf(kind, schemas);
            for (int i = 0; i < 60_000; i++) {
                StringBuilder text = new StringBuilder();
                for (int k = random.nextInt(1, 8); k > 0; k--) {
                    text.append(pieces[random.nextInt(pieces.length)]);
                }
                boolean shape = pattern.matcher(text).find() && text.length() <= 40;
                String problem = problemOf(kind, text.toString());
                // The schema does not count: inches after feet below 12, limits.
                boolean counted = problem.contains("below 12")
                        || problem.contains("below 60")
                        || problem.contains("beyond what")
                        || problem.contains("plausible")
                        || problem.contains("proper");
                assertEquals(shape, problem.isEmpty() || shape && counted, kind + " [" + text + "] " + problem);
                both += problem.isEmpty() ? 1 : 0;
                neither += shape ? 0 : 1;
            }
        }
        assertTrue(both > 1_000 && neither > 50_000, both + " taken, " + neither + " refused");
    }

    private static String problemOf(String kind, String text) {
        try {
            switch (kind) {
                case "length" -> Length.parse(text);
                case "grade" -> Grade.parse(text);
                case "mass", "weight" -> Mass.parse(text);
                case "pressure" -> Pressure.parse(text);
                case "duration", "time" -> Duration.parse(text);
                case "speed" -> Speed.parse(text);
                default -> Angle.parse(text);
            }
            return "";
        } catch (BadQuantity e) {
            return e.getMessage();
        }
    }

    private static Pattern patternOf(String kind, String schemas) throws IOException {
        Matcher found = Pattern.compile(
                        "\"" + kind + "\": \\{\\s*\"description\": .*?\"pattern\": (\".*?[^\\\\]\")\\s", Pattern.DOTALL)
                .matcher(schemas);
        assertTrue(found.find(), kind);
        String first = new ObjectMapper().readValue(found.group(1), String.class);
        while (found.find()) {
            assertEquals(first, new ObjectMapper().readValue(found.group(1), String.class));
        }
        assertFalse(first.isEmpty());
        return Pattern.compile(first);
    }
}
