package org.cresthaul.exchange.osm;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.zip.GZIPOutputStream;
import org.cresthaul.units.InputRejected;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One small map in each of the forms, and files that are none. */
class MapFileTest {
    @TempDir
    private Path folder;

    private static final SmallMap MAP = SmallMap.road("name", "Stra\u00dfe & \"more\"", "maxheight", "12'6\"")
            .node(50, 33, 44, "railway", "level_crossing");

    private static byte[] gzip(byte[] bytes) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(out)) {
            gzip.write(bytes);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
        return out.toByteArray();
    }

    private Map<String, String> read(byte[] bytes) throws Exception {
        Path file = Files.write(folder.resolve("map"), bytes);
        Map<String, String> found = new TreeMap<>();
        new MapFile(MapExtract.of(file), MapProgress.UNTOLD).read(new MapSink() {
            @Override
            public void node(long id, double lon, double lat, Map<String, String> tags, long timeS) {
                found.put("n" + id, Math.round(lon * 1e7) + " " + Math.round(lat * 1e7) + " " + new TreeMap<>(tags));
            }

            @Override
            public void way(long id, long[] nodes, Map<String, String> tags, long timeS) {
                found.put("w" + id, Arrays.toString(nodes) + " " + new TreeMap<>(tags));
            }
        });
        return found;
    }

    private String codeOf(byte[] bytes) {
        return assertThrows(InputRejected.class, () -> read(bytes))
                .problems()
                .get(0)
                .code();
    }

    @Test
    void everyFormSaysTheSame() throws Exception {
        byte[] xml = MAP.xml().getBytes(StandardCharsets.UTF_8);
        Map<String, String> found = read(xml);

        assertEquals(13, found.size());
        assertEquals(
                "[1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11] {highway=secondary, maxheight=12'6\", name=Stra\u00dfe & \"more\"}",
                found.get("w100"));
        assertEquals(found, read(gzip(xml)));
        assertEquals(found, read(MAP.pbf()));
    }

    @Test
    void refusesWhatIsNoMap() {
        assertEquals("not-a-map", codeOf("<gpx/>".getBytes(StandardCharsets.UTF_8)));
        assertEquals("not-a-map", codeOf("hello".getBytes(StandardCharsets.UTF_8)));
        assertEquals("not-a-map", codeOf(new byte[0]));
        assertEquals(
                "document-type",
                codeOf("<!DOCTYPE osm [<!ENTITY a 'b'>]><osm>&a;</osm>".getBytes(StandardCharsets.UTF_8)));
        assertEquals("unreadable", codeOf(new byte[] {0x1F, (byte) 0x8B, 8, 0}));
    }

    /** 100 MB of blanks in 100 KB, and a block that says it is 2 GB. */
    @Test
    void refusesWhatSwells() {
        byte[] blanks = new byte[100_000_000];
        Arrays.fill(blanks, (byte) ' ');
        byte[] head = "<osm>".getBytes(StandardCharsets.UTF_8);
        System.arraycopy(head, 0, blanks, 0, head.length);
        assertEquals("too-large", codeOf(gzip(blanks)));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        SmallMap.append(out, "OSMHeader", new byte[] {1, 2, 3}, Integer.MAX_VALUE);
        assertEquals("damaged-extract", codeOf(out.toByteArray()));
        assertEquals("damaged-extract", codeOf(new byte[] {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16}));
    }

    @Test
    void damagedFilesAreReadOrRefused() {
        SplittableRandom random = new SplittableRandom(20261129);
        int refused = 0;
        int read = 0;
        byte[] xml = MAP.xml().getBytes(StandardCharsets.UTF_8);
        for (byte[] sound : List.of(xml, gzip(xml), MAP.pbf())) {
            for (int i = 0; i < 1000; i++) {
                byte[] damaged = Arrays.copyOf(sound, 1 + random.nextInt(sound.length));
                if (i % 4 > 0) {
                    damaged = sound.clone();
                    for (int k = random.nextInt(1, 6); k > 0; k--) {
                        damaged[random.nextInt(damaged.length)] ^= (byte) (1 << random.nextInt(8));
                    }
                }
                try {
                    read(damaged);
                    read++;
                } catch (InputRejected e) {
                    refused++;
                } catch (Exception e) {
                    throw new AssertionError("neither read nor refused", e);
                }
            }
        }
        assertEquals(3000, read + refused);
        assertTrue(refused > 1000, refused + " refused");
    }
}
