package org.cresthaul.exchange;

import java.io.BufferedInputStream;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import org.cresthaul.exchange.osm.MapExtract;
import org.cresthaul.exchange.raster.RasterFile;
import org.cresthaul.exchange.raster.RasterOptions;
import org.cresthaul.exchange.raster.RasterSource;
import org.cresthaul.exchange.track.PlainText;
import org.cresthaul.exchange.track.TrackContent;
import org.cresthaul.exchange.track.TrackFile;
import org.cresthaul.exchange.track.TrackPoint;
import org.cresthaul.exchange.track.XmlPull;
import org.cresthaul.units.InputProblem;
import org.cresthaul.units.InputRejected;

/**
 * Files as somebody hands them in, tracks, map extracts and rasters together, told apart by their content, never by
 * their names (but for a tile of heights, which is nothing but numbers).
 *
 * @param tracks in the order given
 * @param maps in the order given; not yet read
 * @param rasters in the order given; not yet read
 * @param refused every file that is neither, with its problems
 */
public record ImportFiles(
        List<TrackContent> tracks, List<MapExtract> maps, List<RasterSource> rasters, List<Refused> refused) {
    private static final int LONGEST_NAME = 200;
    /** So much of a file tells what it is. */
    private static final int HEAD = 64 * 1024;

    public ImportFiles {
        tracks = List.copyOf(tracks);
        maps = List.copyOf(maps);
        rasters = List.copyOf(rasters);
        refused = List.copyOf(refused);
    }

    /**
     * A file on disk.
     *
     * @param name what people call it
     */
    public record Given(String name, Path path) {
        public Given {
            String plain = PlainText.of(name.substring(name.replace('\\', '/').lastIndexOf('/') + 1), LONGEST_NAME);
            name = plain.isEmpty() ? "unnamed" : plain;
        }
    }

    /** A file that nothing can be made of. */
    public record Refused(String file, List<InputProblem> problems) {
        /** Its problems as those of all files together: each names the file. */
        public List<InputProblem> named() {
            return problems.stream()
                    .map(p -> new InputProblem(p.code(), file + ": " + p.message(), p.pointer(), p.remedy()))
                    .toList();
        }
    }

    /**
     * Reads what is in a folder, but not in folders within it: tracks in the order in which they were driven where all
     * say when, else by their names; maps. All else is refused, each file with its reason, route files of this program
     * among it.
     */
    public static ImportFiles inFolder(Path folder, int crs, RasterOptions said) throws IOException {
        List<Given> files;
        try (Stream<Path> all = Files.list(folder)) {
            files = all.filter(Files::isRegularFile)
                    .filter(p -> !p.getFileName().toString().startsWith("."))
                    // What an import before has left beside its route to be drawn.
                    .filter(p -> !p.getFileName().toString().endsWith(BaseMapFile.ENDING))
                    .sorted(Comparator.comparing(p -> p.getFileName().toString()))
                    .map(p -> new Given(p.getFileName().toString(), p))
                    .toList();
        }
        ImportFiles read = read(files, crs, said).byTime();
        List<Refused> refused = new ArrayList<>(read.refused());
        List<TrackContent> tracks = new ArrayList<>();
        for (TrackContent track : read.tracks()) {
            if (track.format().equals(TrackContent.ROUTE_FILE)) {
                // What an import before has written is no track of its own.
                refused.add(new Refused(
                        track.file(),
                        List.of(new InputProblem(
                                "route-file",
                                "This is a route file, and among tracks it would be driven twice.",
                                "",
                                "Give it with --update, or by its own name."))));
            } else {
                tracks.add(track);
            }
        }
        return new ImportFiles(tracks, read.maps(), read.rasters(), refused);
    }

    /**
     * Reads the tracks among the files.
     *
     * @param crs as in {@link TrackFile#parse(byte[], String, int)}
     * @param said of rasters that do not say it themselves
     */
    public static ImportFiles read(List<Given> files, int crs, RasterOptions said) {
        List<TrackContent> tracks = new ArrayList<>();
        List<MapExtract> maps = new ArrayList<>();
        List<RasterSource> rasters = new ArrayList<>();
        List<Refused> refused = new ArrayList<>();
        for (Given file : files) {
            try {
                if (isMap(file.path())) {
                    maps.add(new MapExtract(file.name(), file.path()));
                } else if (RasterFile.isOne(file.path(), file.name())) {
                    rasters.add(new RasterSource(file.name(), file.path(), said));
                } else {
                    tracks.add(track(file, crs));
                }
            } catch (InputRejected e) {
                refused.add(new Refused(file.name(), e.problems()));
            } catch (IOException e) {
                refused.add(new Refused(
                        file.name(),
                        List.of(new InputProblem(
                                "unreadable", "The file cannot be read.", "", "Check that you may read it."))));
            }
        }
        return new ImportFiles(tracks, maps, rasters, refused);
    }

    private static TrackContent track(Given file, int crs) throws IOException, InputRejected {
        // One byte more than may be, so that a longer one is told as such and never held whole.
        try (InputStream in = Files.newInputStream(file.path())) {
            return TrackFile.parse(in.readNBytes(TrackFile.MOST_BYTES + 1), file.name(), crs);
        }
    }

    /** The tracks by when they were driven, if all of them say so; else as they are. */
    public ImportFiles byTime() {
        if (tracks.stream().anyMatch(t -> start(t).isEmpty())) {
            return this;
        }
        List<TrackContent> sorted = new ArrayList<>(tracks);
        sorted.sort(Comparator.comparingDouble(t -> start(t).orElseThrow()));
        return new ImportFiles(sorted, maps, rasters, refused);
    }

    private static OptionalDouble start(TrackContent track) {
        return track.legs().stream()
                .flatMap(l -> l.parts().stream())
                .flatMap(List::stream)
                .mapToDouble(TrackPoint::timeS)
                .filter(t -> !Double.isNaN(t))
                .min();
    }

    /** Whether a file is an extract of OpenStreetMap, by how it begins. */
    public static boolean isMap(Path path) throws IOException {
        byte[] head;
        try (InputStream in = Files.newInputStream(path)) {
            head = in.readNBytes(HEAD);
        }
        if (head.length > 12 && head[0] == 0) {
            return new String(head, 0, Math.min(32, head.length), StandardCharsets.ISO_8859_1).contains("OSMHeader");
        }
        if (head.length > 1 && (head[0] & 0xFF) == 0x1F && (head[1] & 0xFF) == 0x8B) {
            return isMapXml(unpacked(head));
        }
        return isMapXml(head);
    }

    private static byte[] unpacked(byte[] head) {
        byte[] start = new byte[HEAD];
        int n = 0;
        try (InputStream in = new BufferedInputStream(new GZIPInputStream(new ByteArrayInputStream(head)))) {
            for (int more = in.read(start); more > 0 && n < HEAD; more = in.read(start, n, HEAD - n)) {
                n += more;
            }
        } catch (IOException e) {
            // It is cut off here in any case; what there is tells enough, or nothing.
        }
        return Arrays.copyOf(start, n);
    }

    private static boolean isMapXml(byte[] head) {
        try {
            XmlPull xml = XmlPull.ofTrack(new ByteArrayInputStream(head));
            while (xml.next()) {
                if (xml.isStart()) {
                    return xml.name().equals("osm");
                }
            }
        } catch (InputRejected e) {
            // No XML, or cut short before its first element: whoever reads it says so.
        }
        return false;
    }
}
