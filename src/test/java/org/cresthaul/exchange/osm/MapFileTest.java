package org.cresthaul.exchange.osm;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
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

    /** What the map says in another encoding is the same, by another reader. */
    @Test
    void otherEncodingsSayTheSame() throws Exception {
        String xml = MAP.xml();
        Map<String, String> found = read(xml.getBytes(StandardCharsets.UTF_8));
        assertEquals(13, found.size());
        for (Charset other : List.of(StandardCharsets.UTF_16, StandardCharsets.ISO_8859_1)) {
            String declared = "<?xml version='1.0' encoding='" + other + "'?>" + xml;
            assertEquals(found, read(declared.getBytes(other)));
        }
        assertEquals("not-xml", codeOf(xml.getBytes(StandardCharsets.ISO_8859_1)));
    }

    /** A parser makes room for all of a tag and keeps every name: neither is without end. */
    @Test
    void boundsTagsAndNames() throws Exception {
        String longest = "x".repeat(60_000);
        assertEquals(
                1,
                read(map("<way id='1'><tag k='note' v='" + longest + "'/></way>"))
                        .size());
        assertEquals("not-xml", codeOf(map("<way id='1'><tag k='note' v='" + longest.repeat(50) + "'/></way>")));
        assertEquals("not-xml", codeOf(map("<way id='1'><tag k='note' v='" + "> ' \"".repeat(50_000))));
        assertEquals("not-xml", codeOf(map("<" + longest.repeat(2) + "/>")));
        // Blanks between tags may be as many as they like.
        assertEquals(1, read(map(" ".repeat(1_000_000) + "<way id='1'></way>")).size());
        assertEquals("odd-xml", codeOf(map(many("<a%d/>"))));
        assertEquals("odd-xml", codeOf(map("<note>" + many("<a%d/>") + "</note>")));
        assertEquals("odd-xml", codeOf(map("<way id='1'>" + many("<a%d/>") + "</way>")));
        assertEquals("odd-xml", codeOf(map("<relation id='1'>" + many("<member type='node' a%d='' ref='1'/>"))));
        assertEquals("odd-xml", codeOf(map(many("<node id='1' lat='1' lon='1' a%d='x'/>"))));
        assertEquals("odd-xml", codeOf(map("<way id='1'>" + many("<tag k='a' v='b' a%d=''/>"))));
        assertEquals("odd-xml", codeOf(map("<way id='1'>" + many("<nd ref='1' a%d=''/>"))));
        assertEquals("odd-xml", codeOf(map(many("<?a%d?>"))));
        assertEquals("odd-xml", codeOf(map(many("<node xmlns:p%1$d='x' p%1$d:id='1'/>"))));
    }

    private static byte[] map(String inside) {
        return ("<osm>" + inside + "</osm>").getBytes(StandardCharsets.UTF_8);
    }

    private static String many(String form) {
        return IntStream.range(0, 1000).mapToObj(i -> String.format(form, i)).collect(Collectors.joining());
    }

    /** Numbers are those of the platform, to the last bit; what is none is refused. */
    @Test
    void readsEveryNumberAsThePlatformDoes() throws Exception {
        SplittableRandom random = new SplittableRandom(20261130);
        List<String> numbers = new ArrayList<>(List.of("0", "-0", "7.", ".5", "+3.25", "1e1", "-1.5E-3", "00012.50"));
        for (int i = 0; i < 5000; i++) {
            double value = random.nextDouble(-90, 90);
            numbers.add(String.format(Locale.ROOT, "%." + random.nextInt(0, 18) + "f", value));
            numbers.add(Double.toString(value * Math.pow(10, -random.nextInt(0, 20))));
        }
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < numbers.size(); i++) {
            text.append("<node id='")
                    .append(i - 3)
                    .append("' lon='")
                    .append(numbers.get(i))
                    .append("' lat='1'/>");
        }
        List<Double> read = new ArrayList<>();
        MapSink sink = new MapSink() {
            @Override
            public void node(long id, double lon, double lat, Map<String, String> tags, long timeS) {
                assertEquals(read.size() - 3, id);
                read.add(lon);
            }
        };
        OsmXml.read(new ByteArrayInputStream(map(text.toString())), sink);
        assertEquals(numbers.stream().map(Double::parseDouble).toList(), read);
        for (String none : List.of("", "-", ".", "1.2.3", "12a", "1 2", "NaN", "0x10", "9999999999999999999")) {
            assertEquals("damaged-extract", codeOf(map("<way id='" + none + "'/>")), none);
        }
        for (String none : List.of("", "-", ".", "1.2.3", "12a", "NaN", "1e999")) {
            assertEquals("damaged-extract", codeOf(map("<node id='1' lon='" + none + "' lat='1'/>")), none);
        }
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
