package org.cresthaul.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.cresthaul.exchange.BaseMapFile;
import org.cresthaul.exchange.ImportFiles;
import org.cresthaul.exchange.ImportPreview;
import org.cresthaul.exchange.RouteImport;
import org.cresthaul.exchange.osm.MapExtract;
import org.cresthaul.exchange.osm.MapProgress;
import org.cresthaul.exchange.raster.HeightUnit;
import org.cresthaul.exchange.raster.RasterOptions;
import org.cresthaul.exchange.raster.RasterSource;
import org.cresthaul.exchange.routefile.RouteFile;
import org.cresthaul.exchange.track.TrackContent;
import org.cresthaul.exchange.track.TrackFile;
import org.cresthaul.server.JsonAnswer;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.InputRejected;
import org.cresthaul.units.Length;
import org.cresthaul.units.UnitSystem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

/** Makes a route file of tracks that came from elsewhere, and tells first what was found in them. */
@Command(
        name = "import",
        description =
                "Make a route file of tracks (GPX, KML, KMZ, GeoJSON, CSV), or of a folder of them. Without --out it only"
                        + " shows what it would write.",
        footer = {
            "",
            "Exit codes:",
            "  0  a route was made; nothing is said about whether it is clear",
            "  2  nothing was made: the command line or the files have mistakes",
            "  3  nothing was made: the program failed"
        },
        mixinStandardHelpOptions = true)
final class ImportCommand implements Callable<Integer> {
    /** What a preview is printed as. */
    enum Form {
        TEXT,
        JSON
    }

    @ParentCommand
    private Cresthaul program;

    @Parameters(
            arity = "1..*",
            paramLabel = "TRACK",
            description =
                    "Tracks in the order of travel: GPX, KML, KMZ, GeoJSON or CSV; or a folder, of which every track,"
                            + " every map extract and every raster of heights is taken")
    private List<Path> tracks = List.of();

    @Option(names = "--name", paramLabel = "NAME", description = "Name of the route; default: what the first file says")
    private String name = "";

    @Option(
            names = "--map",
            paramLabel = "EXTRACT",
            description =
                    "Extract of OpenStreetMap (.osm, .osm.gz, .osm.pbf), once for each: the line is tied to its roads,"
                            + " and candidates for hazards are looked for along them")
    private List<Path> maps = List.of();

    @Option(
            names = "--raster",
            paramLabel = "HEIGHTS",
            description =
                    "Elevation raster (GeoTIFF, ASCII grid, HGT), once for each: the road at open candidates is sketched"
                            + " from it, to order what to survey first")
    private List<Path> rasters = List.of();

    @Option(
            names = "--raster-crs",
            paramLabel = "EPSG:N",
            converter = CommandOptions.Crs.class,
            description = "Coordinates of rasters that do not say them, such as EPSG:2230")
    private Integer rasterCrs = 0;

    @Option(
            names = "--raster-unit",
            paramLabel = "UNIT",
            converter = CommandOptions.Heights.class,
            description = "What the heights of rasters that do not say it are in: m, ft or ftUS (US survey feet)")
    private Optional<HeightUnit> rasterUnit = Optional.empty();

    @Option(
            names = "--update",
            paramLabel = "ROUTE",
            description = "Route file made before: its hazards, surveys and dismissed candidates are kept")
    private Optional<Path> update = Optional.empty();

    @Option(
            names = "--simplify",
            paramLabel = "LENGTH",
            converter = CommandOptions.Margin.class,
            description =
                    "Leave out points that lie this near to the line without them; default: 0.25 m, 0 m keeps all")
    private Length simplify = new Length(0.25);

    @Option(
            names = "--longest-gap",
            paramLabel = "LENGTH",
            converter = CommandOptions.Distance.class,
            description = "Longest gap between pieces that is taken as driven straight; default: 250 m")
    private Length longestGap = new Length(250);

    @Option(
            names = "--crs",
            paramLabel = "EPSG:N",
            converter = CommandOptions.Crs.class,
            description =
                    "What the numbers of CSV, and of GeoJSON that does not say, are: a code of the EPSG dataset, such as"
                            + " EPSG:2263; default: longitude and latitude on WGS 84")
    private Integer crs = 0;

    @Option(names = "--form", paramLabel = "FORM", description = "Of what is shown: text (default) or json")
    private Form form = Form.TEXT;

    @Option(
            names = "--units",
            paramLabel = "UNITS",
            converter = CommandOptions.Units.class,
            description = "us (default) or metric; JSON is always in meters")
    private UnitSystem units = UnitSystem.US_CUSTOMARY;

    @Option(names = "--out", paramLabel = "FILE", description = "Write the route to this file")
    private Optional<Path> out = Optional.empty();

    private final List<MapExtract> extracts = new ArrayList<>();
    private final List<RasterSource> heights = new ArrayList<>();
    private final List<ImportPreview.LeftOut> leftOut = new ArrayList<>();
    private final List<Path> read = new ArrayList<>();

    @Override
    public Integer call() throws Refused {
        List<TrackContent> contents = contents();
        maps.forEach(m -> extracts.add(MapExtract.of(m)));
        read.addAll(maps);
        rasters.forEach(r -> heights.add(new RasterSource(String.valueOf(r.getFileName()), r, said())));
        read.addAll(rasters);
        update.ifPresent(read::add);
        RouteImport.Imported imported = made(contents);
        ImportPreview preview = imported.preview().leavingOut(leftOut);
        byte[] printed =
                switch (form) {
                    case TEXT ->
                        new ImportText(units).of(preview, out.isPresent()).getBytes(StandardCharsets.UTF_8);
                    case JSON -> JsonAnswer.bytes(preview);
                };
        program.print(printed);
        if (out.isPresent()) {
            OutputFile.write(out.get(), imported.document(), read);
            if (!extracts.isEmpty()) {
                writeBaseMap(imported.document());
            }
        }
        return ExitCode.CLEAR;
    }

    private RasterOptions said() {
        return new RasterOptions(rasterCrs, rasterUnit);
    }

    /** Beside the route, where the page finds it. */
    private void writeBaseMap(byte[] document) throws Refused {
        try {
            byte[] base = BaseMapFile.cut(extracts, RouteFile.parse(document), MapProgress.UNTOLD);
            Path beside = out.orElseThrow()
                    .resolveSibling(BaseMapFile.nameBeside(
                            out.orElseThrow().getFileName().toString()));
            OutputFile.write(beside, base, read);
        } catch (InputRejected rejected) {
            throw refused("The base map", rejected);
        }
    }

    private static IllegalStateException refused(String what, InputRejected rejected) throws Refused {
        Mistakes mistakes = new Mistakes();
        mistakes.add(what, rejected.problems());
        mistakes.refuseIfAny("imported");
        throw new IllegalStateException("a rejection has a problem", rejected);
    }

    private List<TrackContent> contents() throws Refused {
        Mistakes mistakes = new Mistakes();
        List<TrackContent> contents = new ArrayList<>();
        for (Path track : tracks) {
            if (Files.isDirectory(track)) {
                contents.addAll(folder(track, mistakes));
                continue;
            }
            read.add(track);
            String file = String.valueOf(track.getFileName());
            InputFile.read(track)
                    .parse(bytes -> TrackFile.parse(bytes, file, crs), mistakes)
                    .ifPresent(contents::add);
        }
        mistakes.refuseIfAny("imported");
        return contents;
    }

    /** What in a folder is no track is told, and is a mistake only where nothing else is there. */
    private List<TrackContent> folder(Path folder, Mistakes mistakes) {
        try {
            ImportFiles files = ImportFiles.inFolder(folder, crs, said());
            if (files.tracks().isEmpty()) {
                files.refused()
                        .forEach(r -> mistakes.add(folder.resolve(r.file()).toString(), r.problems()));
                mistakes.add(
                        folder.toString(),
                        List.of(new InputProblem(
                                "no-track",
                                "There is no track in this folder.",
                                "",
                                "Name the folder with the tracks.")));
            }
            files.refused()
                    .forEach(r -> r.problems()
                            .forEach(p -> leftOut.add(
                                    new ImportPreview.LeftOut(r.file(), p.code(), p.message(), p.remedy()))));
            extracts.addAll(files.maps());
            files.maps().forEach(m -> read.add(m.path()));
            heights.addAll(files.rasters());
            files.rasters().forEach(r -> read.add(r.path()));
            files.tracks().forEach(t -> read.add(folder.resolve(t.file())));
            return files.tracks();
        } catch (IOException e) {
            mistakes.add(
                    folder.toString(),
                    List.of(new InputProblem(
                            "unreadable", "The folder cannot be read.", "", "Check that you may read it.")));
            return List.of();
        }
    }

    private Optional<byte[]> existing() throws Refused {
        if (update.isEmpty()) {
            return Optional.empty();
        }
        Mistakes mistakes = new Mistakes();
        Optional<byte[]> bytes = InputFile.read(update.get()).parse(b -> b, mistakes);
        mistakes.refuseIfAny("imported");
        return bytes;
    }

    private RouteImport.Imported made(List<TrackContent> contents) throws Refused {
        try {
            return RouteImport.of(
                    contents,
                    new RouteImport.Options(
                            name.strip(),
                            simplify.meters(),
                            longestGap.meters(),
                            extracts,
                            heights,
                            existing(),
                            MapProgress.UNTOLD));
        } catch (InputRejected rejected) {
            throw refused("The route", rejected);
        }
    }
}
