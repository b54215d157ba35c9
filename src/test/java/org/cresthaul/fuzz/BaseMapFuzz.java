package org.cresthaul.fuzz;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import org.cresthaul.exchange.BaseMapFile;
import org.cresthaul.units.InputRejected;

/** Base map files: taken as they are, or refused with help. */
public final class BaseMapFuzz {
    /** Invented. */
    private static final String MAP = """
            {"type": "FeatureCollection", "cresthaul": "basemap/1", "attribution": "invented", "whole": true, "features": [
              {"type": "Feature", "properties": {"layer": "water"},
               "geometry": {"type": "MultiLineString", "coordinates": [[[0, 0], [0.1, 0.1]]]}}]}""";

    private BaseMapFuzz() {}

    /** What a fuzzer calls. */
    public static void fuzzerTestOneInput(byte[] data) {
        byte[] document = FuzzedDocument.of(data, MAP).getBytes(StandardCharsets.UTF_8);
        try {
            assertTrue(BaseMapFile.requireForm(document) == document);
        } catch (InputRejected e) {
            FuzzedDocument.requireHelp(e);
        }
    }
}
