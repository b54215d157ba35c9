package org.cresthaul.exchange;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.cresthaul.exchange.osm.MapExtract;
import org.cresthaul.exchange.osm.MapProgress;
import org.cresthaul.exchange.raster.ElevationRaster;
import org.cresthaul.exchange.raster.HeightUnit;
import org.cresthaul.exchange.raster.RasterOptions;
import org.cresthaul.exchange.raster.RasterSource;
import org.cresthaul.exchange.track.TrackFile;
import org.cresthaul.road.SurveyedPoint;
import org.cresthaul.route.LonLat;
import org.cresthaul.route.Route;
import org.cresthaul.route.RouteCandidate;
import org.cresthaul.units.InputRejected;

/**
 * Holds rasters of heights in {@code raster/} and {@code hgt/} to what they must do: each is opened or refused with a
 * reason, and what is sketched of a tile at candidates is what its bytes say, read here anew. Part of
 * {@link ImportMeasure}.
 */
final class RasterMeasure {
    /** A sketch is written to the millimeter. */
    private static final double SAME_M = 0.000501;

    private final Path folder;
    private final Map<String, short[]> tiles = new HashMap<>();
    private int met;
    private int wrong;

    RasterMeasure(Path folder) {
        this.folder = folder;
    }

    int met() {
        return met;
    }

    int wrong() {
        return wrong;
    }

    private static List<Path> files(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> all = Files.list(folder)) {
            return all.sorted().toList();
        }
    }

    private static RasterSource source(Path file) {
        return new RasterSource(file.getFileName().toString(), file, RasterOptions.NONE);
    }

    /** Every file is opened, or refused with a reason and a remedy. */
    void open() throws IOException {
        List<Path> all = new ArrayList<>(files(folder.resolve("raster")));
        all.addAll(files(folder.resolve("hgt")));
        for (Path file : all) {
            opened(file, RasterOptions.NONE);
        }
    }

    private void opened(Path file, RasterOptions said) {
        String name = file.getFileName().toString();
        try (ElevationRaster raster = new RasterSource(name, file, said).open()) {
            met++;
            System.out.println(name + ": " + raster.told());
        } catch (InputRejected e) {
            boolean helpful = e.problems().stream().noneMatch(p -> p.remedy().isBlank());
            met += helpful ? 1 : 0;
            wrong += helpful ? 0 : 1;
            String code = e.problems().get(0).code();
            System.out.println(name + ": refused: " + code);
            if (code.equals("raster-without-unit") && said.unit().isEmpty()) {
                opened(file, new RasterOptions(0, Optional.of(HeightUnit.METER)));
            }
        }
    }

    /** What tiles show of the candidates of a route. */
    void sketches(String name, Path track, MapExtract extract) throws IOException, InputRejected {
        List<RasterSource> rasters =
                files(folder.resolve("hgt")).stream().map(RasterMeasure::source).toList();
        RouteImport.Imported imported = RouteImport.of(
                List.of(TrackFile.parse(Files.readAllBytes(track), name)),
                new RouteImport.Options(
                        "", 0.25, 250, List.of(extract), rasters, Optional.empty(), MapProgress.UNTOLD));
        int before = wrong;
        int points = 0;
        int sketches = 0;
        for (RouteCandidate candidate : imported.route().candidates()) {
            if (candidate.candidate().sketch().isPresent()) {
                sketches++;
                List<SurveyedPoint> drawn = candidate.candidate().sketch().get().points();
                points += drawn.size();
                wrong += wrong(imported.route(), candidate, drawn);
            }
        }
        met += points - (wrong - before);
        System.out.println(
                name + ": " + sketches + " sketches, " + points + " heights, " + (wrong - before) + " wrong");
    }

    private int wrong(Route route, RouteCandidate candidate, List<SurveyedPoint> drawn) {
        int other = 0;
        for (SurveyedPoint p : drawn) {
            LonLat at = route.line()
                    .frameAt(candidate.place().chainageM() + p.distanceM())
                    .origin();
            other += Math.abs(heightM(at) - p.elevationM()) <= SAME_M ? 0 : 1;
        }
        return other;
    }

    /** Between the four cells of three arc seconds around a place. */
    private double heightM(LonLat at) {
        int south = (int) Math.floor(at.latDeg());
        int west = (int) Math.floor(at.lonDeg());
        short[] tile = tiles.computeIfAbsent(
                String.format(
                        "%s%02d%s%03d", south < 0 ? "S" : "N", Math.abs(south), west < 0 ? "W" : "E", Math.abs(west)),
                this::tile);
        double column = (at.lonDeg() - west) * 1200;
        double row = (south + 1 - at.latDeg()) * 1200;
        int c = Math.min(1199, (int) column);
        int r = Math.min(1199, (int) row);
        double u = column - c;
        double v = row - r;
        return (1 - v) * ((1 - u) * tile[r * 1201 + c] + u * tile[r * 1201 + c + 1])
                + v * ((1 - u) * tile[(r + 1) * 1201 + c] + u * tile[(r + 1) * 1201 + c + 1]);
    }

    private short[] tile(String name) {
        Path file = folder.resolve("hgt").resolve(name + ".hgt.zip");
        try (ZipInputStream zip = new ZipInputStream(Files.newInputStream(file))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                if (entry.getName().endsWith(".hgt")) {
                    short[] cells = new short[1201 * 1201];
                    ByteBuffer.wrap(zip.readAllBytes()).asShortBuffer().get(cells);
                    return cells;
                }
            }
            throw new IOException(name);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
