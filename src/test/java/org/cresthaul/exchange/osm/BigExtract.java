package org.cresthaul.exchange.osm;

import com.google.protobuf.ByteString;
import crosby.binary.Osmformat;
import java.io.BufferedOutputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.cresthaul.route.LonLat;

/**
 * An invented extract of any size with a road of some 120 km through it, of about the same mixture as real ones (one
 * way to eight nodes, one node in thirty with tags). The road has a rail crossing every six kilometers and a bridge
 * over it every five. Made of a fixed seed; always the same.
 */
public final class BigExtract {
    private static final int ROAD_NODES = 2001;
    private static final double ROAD_LON_DEG = 1.2;
    private static final double LON = 10;
    private static final double LAT = 50;
    private static final int BLOCK = 8000;
    private static final String[][] KINDS = {
        {"building", "yes"},
        {"highway", "residential"},
        {"highway", "track"},
        {"landuse", "farmland"},
        {"natural", "wood"},
        {"waterway", "stream"},
        {"highway", "service"},
        {"natural", "water"}
    };

    private final OutputStream out;
    private final boolean xml;
    private final int elements;
    private final List<Object[]> nodes = new ArrayList<>();
    private final List<Object[]> ways = new ArrayList<>();
    private final List<Object[]> roadWays = new ArrayList<>();
    private long nextNode = 1;
    private long nextWay = 1;

    private BigExtract(OutputStream out, boolean xml, int elements) {
        this.elements = elements;
        this.out = out;
        this.xml = xml;
    }

    /** The track that was driven on the road: every other of its nodes. */
    static List<LonLat> track() {
        List<LonLat> line = new ArrayList<>();
        for (int i = 0; i < ROAD_NODES; i += 2) {
            line.add(roadAt(i));
        }
        return line;
    }

    private static LonLat roadAt(int i) {
        double t = (double) i / (ROAD_NODES - 1);
        return new LonLat(LON + ROAD_LON_DEG * t, LAT + 0.15 * Math.sin(8 * t) + 0.0008 * Math.sin(150 * t));
    }

    /** How many rail crossings it has, each of one track, and how many bridges over it. */
    static final int CROSSINGS = 19;

    static final int BRIDGES = 24;

    /**
     * @param xml as XML, else as PBF
     * @param elements nodes and ways, about
     */
    static Path write(Path file, boolean xml, int elements) throws IOException {
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file), 1 << 20)) {
            new BigExtract(out, xml, elements).all();
        }
        return file;
    }

    private void all() throws IOException {
        if (xml) {
            out.write("<?xml version='1.0' encoding='UTF-8'?>\n<osm version=\"0.6\" generator=\"invented\">\n"
                    .getBytes(StandardCharsets.UTF_8));
        } else {
            byte[] header = Osmformat.HeaderBlock.newBuilder()
                    .addRequiredFeatures("OsmSchema-V0.6")
                    .addRequiredFeatures("DenseNodes")
                    .build()
                    .toByteArray();
            append("OSMHeader", header);
        }
        road();
        Random random = new Random(20261130);
        int others = (elements - 3000) * 8 / 9;
        double[] at = {LON, LAT};
        for (int i = 0; i < others; i++) {
            if (i % 8 == 0) {
                at = new double[] {LON + random.nextDouble() * ROAD_LON_DEG, LAT - 0.4 + 0.8 * random.nextDouble()};
            }
            node(
                    at[0] + 0.002 * random.nextDouble(),
                    at[1] + 0.002 * random.nextDouble(),
                    i % 30 == 0 ? new String[] {"natural", "tree", "ref", "" + i % 500} : new String[0]);
        }
        flushNodes();
        long from = nextNode - others;
        for (int w = 0; w < others / 8; w++) {
            long[] refs = new long[8];
            for (int k = 0; k < 8; k++) {
                refs[k] = from + 8L * w + k;
            }
            boolean closed = w % 8 == 0 || w % 8 == 4 || w % 8 == 7;
            refs[7] = closed ? refs[0] : refs[7];
            String[] kind = KINDS[w % 8];
            way(refs, kind[0], kind[1], "name", "Invented " + w % 1000);
        }
        for (Object[] one : roadWays) {
            way((long[]) one[0], (String[]) one[1]);
        }
        flushWays();
        if (xml) {
            out.write("</osm>\n".getBytes(StandardCharsets.UTF_8));
        }
    }

    private void road() throws IOException {
        long start = nextNode;
        for (int i = 0; i < ROAD_NODES; i++) {
            LonLat at = roadAt(i);
            boolean crossing = i > 0 && i % 100 == 0 && i / 100 <= CROSSINGS;
            node(at.lonDeg(), at.latDeg(), crossing ? new String[] {"railway", "level_crossing"} : new String[0]);
        }
        for (int i = 0; i + 20 < ROAD_NODES; i += 20) {
            long[] refs = new long[21];
            for (int k = 0; k <= 20; k++) {
                refs[k] = start + i + k;
            }
            roadWays.add(new Object[] {refs, new String[] {"highway", "secondary", "name", "Long Road"}});
        }
        for (int c = 1; c <= CROSSINGS; c++) {
            LonLat at = roadAt(100 * c);
            long a = node(at.lonDeg() + 0.0003, at.latDeg() - 0.002);
            long b = node(at.lonDeg() - 0.0003, at.latDeg() + 0.002);
            roadWays.add(new Object[] {new long[] {a, start + 100 * c, b}, new String[] {"railway", "rail"}});
        }
        for (int c = 1; c <= BRIDGES; c++) {
            LonLat at = roadAt(80 * c + 10);
            long a = node(at.lonDeg(), at.latDeg() - 0.002);
            long b = node(at.lonDeg(), at.latDeg() + 0.002);
            roadWays.add(
                    new Object[] {new long[] {a, b}, new String[] {"highway", "tertiary", "bridge", "yes", "layer", "1"}
                    });
        }
    }

    private long node(double lon, double lat, String... tags) throws IOException {
        nodes.add(new Object[] {nextNode, lon, lat, tags});
        if (nodes.size() == BLOCK) {
            flushNodes();
        }
        return nextNode++;
    }

    private void way(long[] refs, String... tags) throws IOException {
        ways.add(new Object[] {nextWay++, refs, tags});
        if (ways.size() == BLOCK) {
            flushWays();
        }
    }

    private static final String INFO =
            "\" version=\"3\" timestamp=\"2026-01-02T03:04:05Z\" changeset=\"12345678\" uid=\"1\" user=\"nobody\"";

    private void flushNodes() throws IOException {
        if (xml) {
            StringBuilder text = new StringBuilder();
            for (Object[] n : nodes) {
                text.append(" <node id=\"")
                        .append(n[0])
                        .append(INFO)
                        .append(String.format(java.util.Locale.ROOT, " lat=\"%.7f\" lon=\"%.7f\"", n[2], n[1]));
                tags((String[]) n[3], text, "node");
            }
            out.write(text.toString().getBytes(StandardCharsets.UTF_8));
        } else {
            Map<String, Integer> strings = new java.util.LinkedHashMap<>(Map.of("", 0));
            Osmformat.DenseNodes.Builder dense = Osmformat.DenseNodes.newBuilder();
            Osmformat.DenseInfo.Builder info = Osmformat.DenseInfo.newBuilder();
            long id = 0;
            long lon = 0;
            long lat = 0;
            for (Object[] n : nodes) {
                dense.addId((long) n[0] - id);
                id = (long) n[0];
                long x = Math.round((double) n[1] * 1e7);
                long y = Math.round((double) n[2] * 1e7);
                dense.addLon(x - lon).addLat(y - lat);
                lon = x;
                lat = y;
                for (String t : (String[]) n[3]) {
                    dense.addKeysVals(strings.computeIfAbsent(t, k -> strings.size()));
                }
                dense.addKeysVals(0);
                info.addVersion(1)
                        .addTimestamp(id == (long) nodes.get(0)[0] ? 1767323045L : 0)
                        .addChangeset(0)
                        .addUid(0)
                        .addUserSid(0);
            }
            dense.setDenseinfo(info);
            block(strings, Osmformat.PrimitiveGroup.newBuilder().setDense(dense));
        }
        nodes.clear();
    }

    private void flushWays() throws IOException {
        if (xml) {
            StringBuilder text = new StringBuilder();
            for (Object[] w : ways) {
                text.append(" <way id=\"").append(w[0]).append(INFO).append(">\n");
                for (long ref : (long[]) w[1]) {
                    text.append("  <nd ref=\"").append(ref).append("\"/>\n");
                }
                tags((String[]) w[2], text, "");
                text.append(" </way>\n");
            }
            out.write(text.toString().getBytes(StandardCharsets.UTF_8));
        } else {
            Map<String, Integer> strings = new java.util.LinkedHashMap<>(Map.of("", 0));
            Osmformat.PrimitiveGroup.Builder group = Osmformat.PrimitiveGroup.newBuilder();
            for (Object[] w : ways) {
                Osmformat.Way.Builder one = Osmformat.Way.newBuilder().setId((long) w[0]);
                long ref = 0;
                for (long r : (long[]) w[1]) {
                    one.addRefs(r - ref);
                    ref = r;
                }
                String[] tags = (String[]) w[2];
                for (int i = 0; i < tags.length; i += 2) {
                    one.addKeys(strings.computeIfAbsent(tags[i], k -> strings.size()));
                    one.addVals(strings.computeIfAbsent(tags[i + 1], k -> strings.size()));
                }
                one.setInfo(Osmformat.Info.newBuilder().setVersion(1).setTimestamp(1767323045L));
                group.addWays(one);
            }
            block(strings, group);
        }
        ways.clear();
    }

    private static void tags(String[] tags, StringBuilder text, String closing) {
        if (!closing.isEmpty()) {
            text.append(tags.length == 0 ? "/>\n" : ">\n");
        }
        for (int i = 0; i < tags.length; i += 2) {
            text.append("  <tag k=\"")
                    .append(tags[i])
                    .append("\" v=\"")
                    .append(tags[i + 1])
                    .append("\"/>\n");
        }
        if (!closing.isEmpty() && tags.length > 0) {
            text.append(" </").append(closing).append(">\n");
        }
    }

    private void block(Map<String, Integer> strings, Osmformat.PrimitiveGroup.Builder group) throws IOException {
        Osmformat.StringTable.Builder table = Osmformat.StringTable.newBuilder();
        strings.keySet().forEach(s -> table.addS(ByteString.copyFromUtf8(s)));
        append(
                "OSMData",
                Osmformat.PrimitiveBlock.newBuilder()
                        .setStringtable(table)
                        .addPrimitivegroup(group)
                        .build()
                        .toByteArray());
    }

    private void append(String type, byte[] bytes) throws IOException {
        ByteArrayOutputStream one = new ByteArrayOutputStream();
        SmallMap.append(one, type, bytes, bytes.length);
        one.writeTo(out);
    }
}
