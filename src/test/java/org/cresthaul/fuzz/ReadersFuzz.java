package org.cresthaul.fuzz;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.cresthaul.exchange.osm.MapFuzz;
import org.cresthaul.exchange.osm.StripFuzz;
import org.cresthaul.exchange.raster.RasterFuzz;

/**
 * Every reader behind one door, so that one process fuzzes them all: the first byte says which of them reads the rest.
 * Rigs, routes and limits are read and not judged. {@link RequestFuzz} and {@link FormFuzz} are not among them: they
 * ask a server of their own, and what they ask it for is read by these.
 */
public final class ReadersFuzz {
    /** Before the count of each reader, where the fuzzer ends. */
    static final String ASKED = "asked ";

    private static final Map<String, Target> TARGETS = targets();
    private static final List<String> NAMES = List.copyOf(TARGETS.keySet());
    private static final long[] TIMES = new long[NAMES.size()];

    /** What a fuzzer calls. */
    private interface Target {
        void accept(byte[] data) throws Exception;
    }

    private ReadersFuzz() {}

    private static Map<String, Target> targets() {
        Map<String, Target> all = new LinkedHashMap<>();
        all.put("rig", RigFuzz::read);
        all.put("route", RouteFuzz::read);
        all.put("limits", LimitsFuzz::read);
        all.put("track", TrackFuzz::fuzzerTestOneInput);
        all.put("kmz", KmzFuzz::fuzzerTestOneInput);
        all.put("map", MapFuzz::fuzzerTestOneInput);
        all.put("strip", StripFuzz::fuzzerTestOneInput);
        all.put("basemap", BaseMapFuzz::fuzzerTestOneInput);
        all.put("raster", RasterFuzz::fuzzerTestOneInput);
        return all;
    }

    /** As their kept inputs are called; the first byte is a place in this list. */
    static List<String> names() {
        return NAMES;
    }

    /** What a fuzzer calls. */
    public static void fuzzerTestOneInput(byte[] data) throws Exception {
        if (data.length == 0) {
            return;
        }
        int which = (data[0] & 0xFF) % NAMES.size();
        TIMES[which]++;
        byte[] rest = new byte[data.length - 1];
        System.arraycopy(data, 1, rest, 0, rest.length);
        TARGETS.get(NAMES.get(which)).accept(rest);
    }

    /** What a fuzzer calls at its end. */
    public static void fuzzerTearDown() {
        System.err.println(NAMES.stream()
                .map(n -> ASKED + n + " " + TIMES[NAMES.indexOf(n)])
                .collect(Collectors.joining("\n")));
    }
}
