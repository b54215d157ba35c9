package org.cresthaul.exchange.osm;

import java.io.ByteArrayInputStream;
import java.util.Map;
import org.cresthaul.units.InputRejected;

/** Map extracts: refused with help, or read to their end. The first byte says whether the rest is XML or PBF. */
public final class MapFuzz {
    private MapFuzz() {}

    /** What a fuzzer calls. */
    public static void fuzzerTestOneInput(byte[] data) {
        if (data.length == 0) {
            return;
        }
        ByteArrayInputStream in = new ByteArrayInputStream(data, 1, data.length - 1);
        MapSink sink = new MapSink() {
            @Override
            public void way(long id, long[] nodes, Map<String, String> tags, long timeS) {
                tags.values().forEach(v -> {
                    TagQuantity.lengthM(v);
                    TagQuantity.massKg(v);
                });
                new MapWay(id, new int[nodes.length], tags, timeS).layer();
                TagText.of(tags);
            }
        };
        try {
            if (data[0] % 2 == 0) {
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
