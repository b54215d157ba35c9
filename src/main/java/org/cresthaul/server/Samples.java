package org.cresthaul.server;

import java.io.IOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.cresthaul.exchange.BaseMapFile;

/**
 * The files that the page offers to open, in the order shown; the first of each kind is opened first.
 *
 * @param routes route files, ids distinct
 * @param rigs rig files, ids distinct
 * @param maps base maps, each with the id of the route it is drawn beneath
 */
public record Samples(List<Sample> routes, List<Sample> rigs, List<Sample> maps) {
    private static final String FOLDER = "/sample-routes";
    /** The rig that the sample is about; the others are to compare with. */
    private static final String FIRST_RIG = "lowbed-loaded.rig.json";

    /** Without base maps. */
    public Samples(List<Sample> routes, List<Sample> rigs) {
        this(routes, rigs, List.of());
    }

    public Samples {
        maps = List.copyOf(maps);
        requireDistinct(maps);
        routes = List.copyOf(routes);
        rigs = List.copyOf(rigs);
        requireDistinct(routes);
        requireDistinct(rigs);
    }

    private static void requireDistinct(List<Sample> samples) {
        Set<String> ids = new HashSet<>();
        for (Sample sample : samples) {
            if (!ids.add(sample.id())) {
                throw new IllegalArgumentException("two files are called " + sample.id());
            }
        }
    }

    /** The sample files that come with the program, by file name after the one to open first. */
    public static Samples bundled() {
        try {
            URI folder = Samples.class.getResource(FOLDER).toURI();
            if (!folder.getScheme().equals("jar")) {
                return in(Path.of(folder));
            }
            try (FileSystem jar = FileSystems.newFileSystem(folder, Map.of())) {
                return in(jar.getPath(FOLDER));
            }
        } catch (IOException | URISyntaxException e) {
            throw new IllegalStateException("the program's own sample files cannot be read: " + e.getMessage(), e);
        }
    }

    private static Samples in(Path folder) throws IOException {
        List<Sample> routes = new ArrayList<>();
        List<Sample> rigs = new ArrayList<>();
        List<Sample> maps = new ArrayList<>();
        try (Stream<Path> files = Files.list(folder)) {
            List<Path> ordered = files.sorted(Comparator.comparing((Path f) -> !f.endsWith(FIRST_RIG))
                            .thenComparing(f -> f.getFileName().toString()))
                    .toList();
            for (Path file : ordered) {
                String name = file.getFileName().toString();
                if (name.endsWith(".route.geojson")) {
                    routes.add(new Sample(name, Files.readAllBytes(file)));
                } else if (name.endsWith(".rig.json")) {
                    rigs.add(new Sample(name, Files.readAllBytes(file)));
                } else if (name.endsWith(BaseMapFile.ENDING)) {
                    maps.add(new Sample(name, Files.readAllBytes(file)));
                }
            }
        }
        return new Samples(routes, rigs, maps);
    }
}
