package org.cresthaul.fuzz;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.List;
import org.cresthaul.exchange.osm.MapFuzz;
import org.cresthaul.exchange.osm.StripFuzz;
import org.cresthaul.exchange.raster.RasterFuzz;
import org.junit.jupiter.api.Test;

/**
 * What fuzzers kept of half an hour each (what imports read: some of what they kept of minutes), once more: one input a
 * line, in hexadecimal. DEVELOPERS.md says how they are run.
 */
class FuzzSeedsTest {
    /** What a fuzzer calls. */
    private interface Target {
        void accept(byte[] data) throws Exception;
    }

    static List<byte[]> kept(String name) {
        try (InputStream in = FuzzSeedsTest.class.getResourceAsStream(name + ".seeds.txt")) {
            return new String(in.readAllBytes(), StandardCharsets.US_ASCII)
                    .lines()
                    .map(HexFormat.of()::parseHex)
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void replay(String name, Target target) throws Exception {
        List<byte[]> all = kept(name);
        assertTrue(all.size() > 20, name + ": " + all.size());
        for (byte[] data : all) {
            try {
                target.accept(data);
            } catch (Exception | AssertionError e) {
                throw new AssertionError(name + " " + HexFormat.of().formatHex(data), e);
            }
        }
    }

    @Test
    void rigs() throws Exception {
        replay("rig", RigFuzz::fuzzerTestOneInput);
    }

    @Test
    void routes() throws Exception {
        replay("route", RouteFuzz::fuzzerTestOneInput);
    }

    @Test
    void limits() throws Exception {
        replay("limits", LimitsFuzz::fuzzerTestOneInput);
    }

    @Test
    void tracks() throws Exception {
        replay("track", TrackFuzz::fuzzerTestOneInput);
    }

    @Test
    void maps() throws Exception {
        replay("map", MapFuzz::fuzzerTestOneInput);
    }

    @Test
    void archives() throws Exception {
        replay("kmz", KmzFuzz::fuzzerTestOneInput);
    }

    @Test
    void forms() throws Exception {
        replay("form", FormFuzz::fuzzerTestOneInput);
    }

    @Test
    void baseMaps() throws Exception {
        replay("basemap", BaseMapFuzz::fuzzerTestOneInput);
    }

    @Test
    void rasters() throws Exception {
        replay("raster", RasterFuzz::fuzzerTestOneInput);
    }

    @Test
    void strips() throws Exception {
        replay("strip", StripFuzz::fuzzerTestOneInput);
    }

    @Test
    void requests() throws Exception {
        replay("request", RequestFuzz::fuzzerTestOneInput);
    }
}
