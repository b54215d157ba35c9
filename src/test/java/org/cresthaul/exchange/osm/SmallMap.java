package org.cresthaul.exchange.osm;

import com.google.protobuf.ByteString;
import crosby.binary.Fileformat;
import crosby.binary.Osmformat;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.Deflater;

/**
 * A map of a few ways, written by hand, all invented. Places are meters east and north of where equator and prime
 * meridian meet.
 */
public final class SmallMap {
    /** Of a degree at the equator, north and east: WGS 84, equatorial radius and radius of the meridian there. */
    private static final double EAST_DEG_M = Math.toRadians(6_378_137);

    private static final double NORTH_DEG_M = Math.toRadians(6_378_137 * (1 - 0.00669437999014));

    private record Node(long id, double lon, double lat, Map<String, String> tags) {}

    /** @param members by their ways, each with its role */
    private record Relation(long id, Map<Long, String> members, Map<String, String> tags) {}

    private record Way(long id, List<Long> nodes, Map<String, String> tags) {}

    private final List<Node> nodes = new ArrayList<>();
    private final List<Way> ways = new ArrayList<>();
    private final List<Relation> relations = new ArrayList<>();
    private final List<double[]> bounds = new ArrayList<>();
    private double westDeg;

    static double lon(double eastM) {
        return eastM / EAST_DEG_M;
    }

    static double lat(double northM) {
        return northM / NORTH_DEG_M;
    }

    private static Map<String, String> tags(String... keysAndValues) {
        Map<String, String> tags = new LinkedHashMap<>();
        for (int i = 0; i < keysAndValues.length; i += 2) {
            tags.put(keysAndValues[i], keysAndValues[i + 1]);
        }
        return tags;
    }

    public SmallMap node(long id, double eastM, double northM, String... tags) {
        nodes.add(new Node(id, Flat.wrapped(lon(eastM) + westDeg), lat(northM), tags(tags)));
        return this;
    }

    public SmallMap way(long id, List<Long> refs, String... tags) {
        ways.add(new Way(id, refs, tags(tags)));
        return this;
    }

    /** What it says that it covers, from one corner to the other. */
    public SmallMap bounds(double westM, double southM, double eastM, double northM) {
        bounds.add(new double[] {
            Flat.wrapped(lon(westM) + westDeg), lat(southM), Flat.wrapped(lon(eastM) + westDeg), lat(northM)
        });
        return this;
    }

    /** The nodes that follow are east of this meridian instead. */
    public SmallMap from(double lonDeg) {
        westDeg = lonDeg;
        return this;
    }

    /** An object put together from ways, in the order of the map. */
    public SmallMap relation(long id, Map<Long, String> members, String... tags) {
        relations.add(new Relation(id, members, tags(tags)));
        return this;
    }

    /** Along the equator: nodes 1 to 11, 100 m apart from 0 to 1000 m, way 100. */
    public static SmallMap road(String... tags) {
        SmallMap map = new SmallMap();
        List<Long> refs = new ArrayList<>();
        for (int i = 0; i <= 10; i++) {
            map.node(i + 1, 100 * i, 0);
            refs.add(i + 1L);
        }
        String[] all = Arrays.copyOf(tags, tags.length + 2);
        all[tags.length] = "highway";
        all[tags.length + 1] = "secondary";
        return map.way(100, refs, all);
    }

    public String xml() {
        StringBuilder text = new StringBuilder("<osm version=\"0.6\">\n");
        bounds.forEach(b -> text.append("<bounds minlon=\"%.9f\" minlat=\"%.9f\" maxlon=\"%.9f\" maxlat=\"%.9f\"/>\n"
                .formatted(b[0], b[1], b[2], b[3])));
        nodes.forEach(n -> {
            text.append("<node id=\"%d\" lon=\"%.9f\" lat=\"%.9f\" timestamp=\"2026-01-02T03:04:05Z\">"
                    .formatted(n.id, n.lon, n.lat));
            write(n.tags, text);
            text.append("</node>\n");
        });
        ways.forEach(w -> {
            text.append("<way id=\"%d\" timestamp=\"2026-01-02T03:04:05Z\">".formatted(w.id));
            w.nodes.forEach(n -> text.append("<nd ref=\"").append(n).append("\"/>"));
            write(w.tags, text);
            text.append("</way>\n");
        });
        relations.forEach(r -> {
            text.append("<relation id=\"%d\"><member type=\"node\" ref=\"1\" role=\"label\"/>".formatted(r.id));
            r.members.forEach(
                    (way, role) -> text.append("<member type=\"way\" ref=\"%d\" role=\"%s\"/>".formatted(way, role)));
            write(r.tags, text);
            text.append("</relation>\n");
        });
        return text.append("</osm>\n").toString();
    }

    private static void write(Map<String, String> tags, StringBuilder text) {
        tags.forEach((k, v) -> text.append("<tag k=\"%s\" v=\"%s\"/>"
                .formatted(k, v.replace("&", "&amp;").replace("\"", "&quot;").replace("<", "&lt;"))));
    }

    public Path writeXml(Path folder) {
        try {
            return Files.writeString(folder.resolve("map.osm"), xml());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** As PBF with dense nodes, its blocks packed by zlib. */
    public byte[] pbf() {
        List<ByteString> strings = new ArrayList<>(List.of(ByteString.EMPTY));
        Osmformat.DenseNodes.Builder dense = Osmformat.DenseNodes.newBuilder();
        long id = 0;
        long lon = 0;
        long lat = 0;
        for (Node node : nodes) {
            dense.addId(node.id - id);
            dense.addLon(Math.round(node.lon * 1e7) - lon);
            dense.addLat(Math.round(node.lat * 1e7) - lat);
            id = node.id;
            lon = Math.round(node.lon * 1e7);
            lat = Math.round(node.lat * 1e7);
            node.tags.forEach((k, v) -> dense.addKeysVals(of(k, strings)).addKeysVals(of(v, strings)));
            dense.addKeysVals(0);
        }
        Osmformat.PrimitiveGroup.Builder group = Osmformat.PrimitiveGroup.newBuilder();
        for (Way way : ways) {
            Osmformat.Way.Builder one = Osmformat.Way.newBuilder().setId(way.id);
            long ref = 0;
            for (long node : way.nodes) {
                one.addRefs(node - ref);
                ref = node;
            }
            way.tags.forEach((k, v) -> one.addKeys(of(k, strings)).addVals(of(v, strings)));
            group.addWays(one);
        }
        Osmformat.PrimitiveGroup.Builder last = Osmformat.PrimitiveGroup.newBuilder();
        for (Relation relation : relations) {
            Osmformat.Relation.Builder one = Osmformat.Relation.newBuilder()
                    .setId(relation.id)
                    .addMemids(1)
                    .addTypes(Osmformat.Relation.MemberType.NODE)
                    .addRolesSid(of("label", strings));
            long member = 1;
            for (Map.Entry<Long, String> way : relation.members.entrySet()) {
                one.addMemids(way.getKey() - member)
                        .addTypes(Osmformat.Relation.MemberType.WAY)
                        .addRolesSid(of(way.getValue(), strings));
                member = way.getKey();
            }
            relation.tags.forEach((k, v) -> one.addKeys(of(k, strings)).addVals(of(v, strings)));
            last.addRelations(one);
        }
        Osmformat.PrimitiveBlock block = Osmformat.PrimitiveBlock.newBuilder()
                .setStringtable(Osmformat.StringTable.newBuilder().addAllS(strings))
                .addPrimitivegroup(Osmformat.PrimitiveGroup.newBuilder().setDense(dense))
                .addPrimitivegroup(group)
                .addPrimitivegroup(last)
                .build();
        return pbfOf(block.toByteArray(), bounds);
    }

    /** As PBF with one block of data. */
    static byte[] pbfOf(byte[] block) {
        return pbfOf(block, List.of());
    }

    private static byte[] pbfOf(byte[] block, List<double[]> bounds) {
        Osmformat.HeaderBlock.Builder head = Osmformat.HeaderBlock.newBuilder()
                .addRequiredFeatures("OsmSchema-V0.6")
                .addRequiredFeatures("DenseNodes");
        bounds.forEach(b -> head.setBbox(Osmformat.HeaderBBox.newBuilder()
                .setLeft(Math.round(b[0] * 1e9))
                .setBottom(Math.round(b[1] * 1e9))
                .setRight(Math.round(b[2] * 1e9))
                .setTop(Math.round(b[3] * 1e9))));
        byte[] header = head.build().toByteArray();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        append(out, "OSMHeader", header, header.length);
        append(out, "OSMData", block, block.length);
        return out.toByteArray();
    }

    private static int of(String text, List<ByteString> strings) {
        ByteString utf8 = ByteString.copyFromUtf8(text);
        if (!strings.contains(utf8)) {
            strings.add(utf8);
        }
        return strings.indexOf(utf8);
    }

    /** @param claimed how large the block says it is */
    static void append(ByteArrayOutputStream out, String type, byte[] bytes, int claimed) {
        Deflater deflater = new Deflater();
        deflater.setInput(bytes);
        deflater.finish();
        byte[] packed = new byte[bytes.length + 100];
        int n = deflater.deflate(packed);
        deflater.end();
        byte[] blob = Fileformat.Blob.newBuilder()
                .setRawSize(claimed)
                .setZlibData(ByteString.copyFrom(packed, 0, n))
                .build()
                .toByteArray();
        byte[] head = Fileformat.BlobHeader.newBuilder()
                .setType(type)
                .setDatasize(blob.length)
                .build()
                .toByteArray();
        try {
            DataOutputStream data = new DataOutputStream(out);
            data.writeInt(head.length);
            data.write(head);
            data.write(blob);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
