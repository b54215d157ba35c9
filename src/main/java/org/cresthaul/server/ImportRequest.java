package org.cresthaul.server;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.cresthaul.exchange.BaseMapFile;
import org.cresthaul.exchange.ImportFiles;
import org.cresthaul.exchange.RouteImport;
import org.cresthaul.exchange.crs.PlaneCoordinates;
import org.cresthaul.exchange.json.JsonText;
import org.cresthaul.exchange.raster.HeightUnit;
import org.cresthaul.exchange.raster.RasterFile;
import org.cresthaul.exchange.raster.RasterOptions;
import org.cresthaul.exchange.track.TrackContent;
import org.cresthaul.exchange.track.TrackFile;
import org.cresthaul.units.BadQuantity;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.Length;

/**
 * What an import is asked for.
 *
 * @param withinM how far leaving out points may move the line
 * @param longestGapM longest gap that is taken as driven straight
 * @param crs code of what CSV and GeoJSON are in; 0 for WGS 84
 * @param rasters what is said of rasters that do not say it themselves
 * @param byTime whether tracks are put in the order in which they were driven, where all say when
 */
record ImportRequest(
        ImportBody.Received received,
        String name,
        double withinM,
        double longestGapM,
        boolean byTime,
        int crs,
        RasterOptions rasters) {
    private static final Set<String> FIELDS =
            Set.of("name", "simplify", "longestGap", "order", "crs", "rasterCrs", "rasterUnit");
    private static final int LONGEST_NAME = 200;
    /** What is held of a map is bounded by the strip along the line, not by its file. */
    private static final long MOST_HELD_OF_MAPS = 12L << 20;
    /** Rasters are gone through one after the other. */
    private static final long MOST_HELD_OF_A_RASTER = 4L << 20;

    /** @throws Refusal with every mistake in the fields */
    static ImportRequest of(ImportBody.Received received) {
        List<InputProblem> problems = new ArrayList<>();
        Map<String, String> fields = received.fields();
        for (String key : fields.keySet()) {
            if (!FIELDS.contains(key)) {
                problems.add(new InputProblem(
                        "unknown-field",
                        "There is no field of that name.",
                        "",
                        "Known are name, simplify, longestGap, order, crs, rasterCrs and rasterUnit; a file needs a file"
                                + " name."));
            }
        }
        double withinM = lengthM(fields, "simplify", 0.25, 1, problems);
        double longestGapM = lengthM(fields, "longestGap", 250, 100_000, problems);
        String order = fields.getOrDefault("order", "given");
        if (!order.equals("given") && !order.equals("time")) {
            problems.add(
                    new InputProblem("unknown-word", "The order is given or time.", "/order", "Write one of them."));
        }
        int crs = crs(fields, "crs", problems);
        RasterOptions rasters = new RasterOptions(crs(fields, "rasterCrs", problems), heightUnit(fields, problems));
        if (received.files().isEmpty()) {
            problems.add(new InputProblem(
                    "no-file", "There is no file in the form.", "", "Send a track, or a map with a route to update."));
        }
        if (!problems.isEmpty()) {
            throw refusal(problems);
        }
        String name = fields.getOrDefault("name", "").strip();
        return new ImportRequest(
                received,
                name.substring(0, Math.min(name.length(), LONGEST_NAME)),
                withinM,
                longestGapM,
                order.equals("time"),
                crs,
                rasters);
    }

    private static int crs(Map<String, String> fields, String key, List<InputProblem> problems) {
        int crs = fields.containsKey(key) ? PlaneCoordinates.code(fields.get(key)) : 0;
        if (fields.containsKey(key) && crs == 0) {
            problems.add(new InputProblem(
                    "unknown-crs",
                    "\"" + key + "\" is no code of the EPSG dataset.",
                    "/" + key,
                    "Write one such as EPSG:2263."));
        }
        return crs;
    }

    private static Optional<HeightUnit> heightUnit(Map<String, String> fields, List<InputProblem> problems) {
        Optional<HeightUnit> unit =
                Optional.ofNullable(fields.get("rasterUnit")).flatMap(HeightUnit::of);
        if (fields.containsKey("rasterUnit") && unit.isEmpty()) {
            problems.add(new InputProblem(
                    "unknown-word", "Heights are in m, ft or ftUS.", "/rasterUnit", "Write one of them."));
        }
        return unit;
    }

    private static Refusal refusal(List<InputProblem> problems) {
        String count =
                problems.size() == 1 ? "One thing must be corrected." : problems.size() + " things must be corrected.";
        return new Refusal(ProblemKind.BAD_INPUT, count, problems, Map.of());
    }

    private static double lengthM(
            Map<String, String> fields, String key, double usualM, double mostM, List<InputProblem> problems) {
        if (!fields.containsKey(key)) {
            return usualM;
        }
        try {
            double meters = Length.parse(fields.get(key)).meters();
            if (meters >= 0 && meters <= mostM) {
                return meters;
            }
            problems.add(new InputProblem(
                    "out-of-range",
                    "\"" + key + "\" is not between 0 m and " + mostM + " m.",
                    "/" + key,
                    "Correct it."));
        } catch (BadQuantity e) {
            problems.add(new InputProblem(e.code(), "\"" + key + "\": " + e.getMessage(), "/" + key, e.remedy()));
        }
        return usualM;
    }

    /** Bytes that become documents in memory, for which there must be room. */
    long heldBytes() {
        long maps = 0;
        long others = 0;
        long rasters = 0;
        try {
            for (ImportFiles.Given file : received.files()) {
                long size = Files.size(file.path());
                if (RasterFile.isOne(file.path(), file.name())) {
                    rasters = MOST_HELD_OF_A_RASTER;
                } else if (size > TrackFile.MOST_BYTES || ImportFiles.isMap(file.path())) {
                    maps += size;
                } else {
                    others += size;
                }
            }
            others +=
                    received.update() == null ? 0 : Files.size(received.update().path());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return others + rasters + Math.min(maps, MOST_HELD_OF_MAPS);
    }

    /**
     * What came of it.
     *
     * @param baseMap to draw beneath the route; none where no map was given
     */
    record Made(RouteImport.Imported imported, Optional<byte[]> baseMap) {}

    /** @throws Refusal with what is wrong with every file */
    Made made(ImportUnderway progress) {
        progress.readsTracks();
        ImportFiles files = ImportFiles.read(received.files(), crs, rasters);
        if (byTime) {
            files = files.byTime();
        }
        List<InputProblem> problems = new ArrayList<>();
        files.refused().forEach(r -> problems.addAll(r.named()));
        Optional<byte[]> update = updated(problems);
        if (!problems.isEmpty()) {
            throw refusal(problems);
        }
        try {
            List<TrackContent> tracks = files.tracks();
            if (tracks.isEmpty() && update.isPresent()) {
                // A map alone is looked through along the route there is.
                tracks = List.of(TrackFile.parse(update.get(), received.update().name()));
            }
            if (tracks.isEmpty()) {
                throw refusal(List.of(new InputProblem(
                        "no-track",
                        "There is no track among the files.",
                        "",
                        "Add the track of the route, or bring the open route up to date with these files.")));
            }
            RouteImport.Imported imported = RouteImport.of(
                    tracks,
                    new RouteImport.Options(
                            name, withinM, longestGapM, files.maps(), files.rasters(), update, progress));
            return new Made(
                    imported,
                    files.maps().isEmpty()
                            ? Optional.empty()
                            : Optional.of(BaseMapFile.cut(files.maps(), imported.route(), progress::cutsBaseMap)));
        } catch (InputRejected rejected) {
            throw refusal(rejected.problems());
        }
    }

    private Optional<byte[]> updated(List<InputProblem> problems) {
        if (received.update() == null) {
            return Optional.empty();
        }
        try {
            if (Files.size(received.update().path()) > JsonText.MOST_BYTES) {
                problems.add(new InputProblem(
                        "too-large", "The route to update is too long.", "", "Leave out what is not needed."));
                return Optional.empty();
            }
            return Optional.of(Files.readAllBytes(received.update().path()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
