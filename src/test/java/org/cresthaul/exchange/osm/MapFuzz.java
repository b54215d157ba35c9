package org.cresthaul.exchange.osm;

import java.io.ByteArrayInputStream;
import java.util.Arrays;
import java.util.Map;
import org.cresthaul.units.InputRejected;

/**
 * Map extracts: refused with help, or read to their end. The first byte says what the rest is: XML, PBF, or what is in
 * one block of a sound PBF.
 */
public final class MapFuzz {
    private MapFuzz() {}

    /** What a fuzzer calls. */
    public static void fuzzerTestOneInput(byte[] data) {
        if (data.length == 0) {
            return;
        }
        byte[] rest = Arrays.copyOfRange(data, 1, data.length);
        int form = (data[0] & 0xFF) % 3;
        ByteArrayInputStream in = new ByteArrayInputStream(form == 2 ? SmallMap.pbfOf(rest) : rest);
        MapSink sink = new MapSink() {
            @Override
            public void way(long id, long[] nodes, Map<String, String> tags, long timeS) {
                tags.values().forEach(v -> {
                    TagQuantity.lengthM(v);
                    TagQuantity.massKg(v);
                });
                new MapWay(id, new int[nodes.length], tags, timeS).layer();
                TagText.of(tags);
                BaseMapTags.ofWay(tags);
            }

            @Override
            public void relation(long id, long[] ways, String[] roles, Map<String, String> tags) {
                if (ways.length != roles.length) {
                    throw new AssertionError();
                }
                BaseMapTags.ofRelation(tags).ifPresent(l -> new MapAreas().add(id, ways, roles, l));
            }
        };
        try {
            if (form == 0) {
                OsmXml.read(in, sink);
            } else {
                OsmPbf.read(in, sink);
            }
        } catch (InputRejected e) {
            if (e.problems().stream().anyMatch(p -> p.remedy().isBlank())) {
                throw new AssertionError(e);
            }
        }
    }
}
