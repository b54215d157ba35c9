package org.cresthaul.exchange;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.cresthaul.exchange.osm.MapExtract;
import org.cresthaul.exchange.osm.MapProgress;
import org.cresthaul.exchange.track.TrackContent;
import org.cresthaul.exchange.track.TrackFile;
import org.cresthaul.route.LonLat;
import org.cresthaul.route.RouteLine;
import org.cresthaul.units.InputRejected;

/**
 * Holds imports of real tracks and maps against what an independent reader found along them: a folder with
 * {@code expected/*.expected.json}, the tracks beside, and {@code osm/} with the extracts. No part of the build; see
 * DEVELOPERS.md. Ends with 1 when anything that must be listed is not, or anything that must not be is.
 */
public final class ImportMeasure {
    private static final ObjectMapper JSON = new ObjectMapper();

    private final Path folder;
    private int missing;
    private int wrong;
    private int met;

    private ImportMeasure(Path folder) {
        this.folder = folder;
    }

    public static void main(String[] arguments) throws Exception {
        ImportMeasure measure = new ImportMeasure(Path.of(arguments[0]));
        RasterMeasure rasters = new RasterMeasure(measure.folder);
        rasters.open();
        try (Stream<Path> files = Files.list(measure.folder.resolve("expected"))) {
            for (Path file : files.filter(f -> f.toString().endsWith(".expected.json"))
                    .sorted()
                    .toList()) {
                JsonNode expected = JSON.readTree(file.toFile());
                measure.route(expected, ".gpx", 15);
                measure.route(expected, ".geojson", 15);
                measure.route(expected, ".noisy.gpx", 25);
                String name = expected.path("name").asText();
                rasters.sketches(
                        name,
                        measure.folder.resolve("expected").resolve(name + ".gpx"),
                        MapExtract.of(measure.folder
                                .resolve("osm")
                                .resolve(expected.path("extract").asText())));
            }
        }
        System.out.println(measure.met + " met, " + measure.missing + " missing, " + measure.wrong + " wrong");
        System.out.println("rasters: " + rasters.met() + " met, " + rasters.wrong() + " wrong");
        System.exit(measure.missing + measure.wrong + rasters.wrong() > 0 ? 1 : 0);
    }

    private void route(JsonNode expected, String ending, double withinM) throws IOException, InputRejected {
        String name = expected.path("name").asText();
        Path track = folder.resolve("expected").resolve(name + ending);
        if (!Files.exists(track)) {
            return;
        }
        TrackContent content =
                TrackFile.parse(Files.readAllBytes(track), track.getFileName().toString());
        long from = System.nanoTime();
        ImportPreview preview = RouteImport.of(
                        List.of(content),
                        new RouteImport.Options(
                                "",
                                0.25,
                                250,
                                List.of(MapExtract.of(folder.resolve("osm")
                                        .resolve(expected.path("extract").asText()))),
                                List.of(),
                                Optional.empty(),
                                MapProgress.UNTOLD))
                .preview();
        RouteLine exact = exact(name);
        int before = met;
        List<String> told = new ArrayList<>();
        for (JsonNode must : expected.path("must")) {
            if (isListed(must, preview, exact, withinM)) {
                met++;
            } else {
                missing++;
                told.add("  MISSING " + must.path("kind").asText() + " at "
                        + must.path("chainage").asText(must.path("range").toString()) + " "
                        + must.path("key").asText("") + " "
                        + must.path("value").asText(must.path("angleDeg").asText("")));
            }
        }
        for (JsonNode trap : expected.path("mustNot")) {
            boolean counts = withinM < 20 || !trap.path("nearTrue").asBoolean();
            for (ImportPreview.Candidate c : preview.candidates()) {
                if (counts && c.kind().word().equals("rail-crossing") && isAt(trap, c, exact)) {
                    wrong++;
                    told.add("  WRONG " + c.name() + " at " + c.chainageM() + ": "
                            + trap.path("why").asText());
                }
            }
        }
        System.out.printf(
                "%s%s: %d of %d met, %d candidates, %d turns, %.1f s, off by %.1f m, off the roads %.1f m%n",
                name,
                ending,
                met - before,
                expected.path("must").size(),
                preview.candidates().size(),
                preview.turns().size(),
                (System.nanoTime() - from) * 1e-9,
                preview.map().farthestM(),
                preview.map().offRoadM());
        told.forEach(System.out::println);
    }

    private RouteLine exact(String name) throws IOException {
        JsonNode line = JSON.readTree(
                folder.resolve("expected").resolve(name + ".geojson").toFile());
        RouteLine.Builder builder = new RouteLine.Builder();
        for (JsonNode p : line.path("geometry").path("coordinates")) {
            builder.add(new LonLat(p.path(0).asDouble(), p.path(1).asDouble()));
        }
        return builder.build();
    }

    /** Where a place of the import lies on the exact line: the passage that is nearest along it. */
    private static double onExact(LonLat at, double aboutM, RouteLine exact) {
        return exact.passagesWithin(at, 60).stream()
                .mapToDouble(p -> p.chainageM())
                .boxed()
                .min((a, b) -> Double.compare(Math.abs(a - aboutM), Math.abs(b - aboutM)))
                .orElse(Double.NEGATIVE_INFINITY);
    }

    private static boolean isListed(JsonNode must, ImportPreview preview, RouteLine exact, double withinM) {
        String kind = must.path("kind").asText();
        double first = must.path("range").path(0).asDouble(must.path("chainage").asDouble());
        double last = must.path("range")
                .path(1)
                .asDouble(
                        must.path("chainageLast").asDouble(must.path("chainage").asDouble()));
        if (kind.equals("turn")) {
            double at = must.path("chainage").asDouble();
            return preview.turns().stream()
                    .anyMatch(t -> Math.abs(onExact(
                                            new LonLat(
                                                    t.lonLat().get(0),
                                                    t.lonLat().get(1)),
                                            t.chainageM(),
                                            exact)
                                    - at)
                            <= withinM);
        }
        return preview.candidates().stream()
                .filter(c -> c.kind().word().equals(kind))
                .filter(c -> {
                    double at = onExact(new LonLat(c.lonLat().get(0), c.lonLat().get(1)), c.chainageM(), exact);
                    return at >= first - withinM && at <= last + withinM;
                })
                .anyMatch(c -> switch (kind) {
                    case "rail-crossing" -> c.tracks() == must.path("tracks").asInt();
                    case "limit" ->
                        c.key().equals(must.path("key").asText())
                                && (must.path("parsed").isNumber()
                                        ? c.value() != null
                                                && Math.abs(c.value()
                                                                - must.path("parsed")
                                                                        .asDouble())
                                                        <= (c.key().startsWith("maxheight") ? 0.001 : 1)
                                        : c.value() == null);
                    default -> true;
                });
    }

    private static boolean isAt(JsonNode trap, ImportPreview.Candidate c, RouteLine exact) {
        if (trap.has("node")) {
            return c.object().contains("node " + trap.path("node").asText());
        }
        double at = onExact(new LonLat(c.lonLat().get(0), c.lonLat().get(1)), c.chainageM(), exact);
        return Math.abs(at - trap.path("chainage").asDouble()) < 25;
    }
}
