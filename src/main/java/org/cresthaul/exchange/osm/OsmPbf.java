package org.cresthaul.exchange.osm;

import com.google.protobuf.ByteString;
import com.google.protobuf.InvalidProtocolBufferException;
import crosby.binary.Fileformat;
import crosby.binary.Osmformat;
import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;
import org.cresthaul.units.InputRejected;

/**
 * Reads nodes, ways and relations of OpenStreetMap's PBF, block by block. The messages are those of the kept reader of
 * the format; its blocks are cut and unpacked here, since that reader makes room for whatever size a block claims to
 * have.
 */
final class OsmPbf {
    /** Longest header of a block, and longest block: the format's own limits. */
    private static final int LONGEST_HEADER = 64 * 1024;

    private static final int LONGEST_BLOCK = 32 * 1024 * 1024;
    private static final Set<String> KNOWN = Set.of("OsmSchema-V0.6", "DenseNodes");
    private static final double NANO = 1e-9;

    private final MapSink sink;

    private OsmPbf(MapSink sink) {
        this.sink = sink;
    }

    static void read(InputStream in, MapSink sink) throws InputRejected {
        OsmPbf reader = new OsmPbf(sink);
        try {
            DataInputStream data = new DataInputStream(in);
            boolean header = false;
            for (int length = length(data); length >= 0; length = length(data)) {
                header |= reader.block(data, length);
            }
            if (!header) {
                throw Refusals.damaged();
            }
        } catch (IOException | IndexOutOfBoundsException e) {
            throw Refusals.damaged();
        }
    }

    /** Of the next block's header; -1 at the end of the file. */
    private static int length(DataInputStream data) throws IOException, InputRejected {
        int first = data.read();
        if (first < 0) {
            return -1;
        }
        int length = first << 24 | data.readUnsignedByte() << 16 | data.readUnsignedShort();
        if (length < 0 || length > LONGEST_HEADER) {
            throw Refusals.damaged();
        }
        return length;
    }

    /** Whether it was the file's header. */
    private boolean block(DataInputStream data, int length) throws IOException, InputRejected {
        Fileformat.BlobHeader head = Fileformat.BlobHeader.parseFrom(exactly(data, length));
        if (head.getDatasize() < 0 || head.getDatasize() > LONGEST_BLOCK) {
            throw Refusals.damaged();
        }
        byte[] bytes = exactly(data, head.getDatasize());
        switch (head.getType()) {
            case "OSMHeader" -> {
                header(Osmformat.HeaderBlock.parseFrom(unpacked(Fileformat.Blob.parseFrom(bytes))));
                return true;
            }
            case "OSMData" ->
                primitives(Osmformat.PrimitiveBlock.parseFrom(unpacked(Fileformat.Blob.parseFrom(bytes))));
            default -> {
                // The format lets other blocks stand between; they say nothing here.
            }
        }
        return false;
    }

    private static byte[] exactly(DataInputStream data, int length) throws IOException {
        byte[] bytes = data.readNBytes(length);
        if (bytes.length < length) {
            throw new EOFException();
        }
        return bytes;
    }

    private static byte[] unpacked(Fileformat.Blob blob) throws InputRejected {
        if (blob.hasRaw()) {
            return blob.getRaw().toByteArray();
        }
        if (!blob.hasZlibData()) {
            throw Refusals.of(
                    "other-packing",
                    "The map extract is packed in a way that is not read here.",
                    "Make it again with blocks packed by zlib, as downloads usually are.");
        }
        if (blob.getRawSize() < 0 || blob.getRawSize() > LONGEST_BLOCK) {
            throw Refusals.damaged();
        }
        byte[] bytes = new byte[blob.getRawSize()];
        Inflater inflater = new Inflater();
        try {
            inflater.setInput(blob.getZlibData().toByteArray());
            int n = 0;
            while (n < bytes.length) {
                int more = inflater.inflate(bytes, n, bytes.length - n);
                if (more <= 0) {
                    throw Refusals.damaged();
                }
                n += more;
            }
        } catch (DataFormatException e) {
            throw Refusals.damaged();
        } finally {
            inflater.end();
        }
        return bytes;
    }

    private void header(Osmformat.HeaderBlock header) throws InputRejected {
        for (String feature : header.getRequiredFeaturesList()) {
            if (!KNOWN.contains(feature)) {
                throw Refusals.of(
                        "other-map",
                        "The map extract needs a reader for \"" + feature.replaceAll("\\p{Cntrl}", " ") + "\".",
                        "Make an extract without it: one of the present state, without history.");
            }
        }
        if (header.hasBbox()) {
            Osmformat.HeaderBBox box = header.getBbox();
            sink.bounds(NANO * box.getLeft(), NANO * box.getBottom(), NANO * box.getRight(), NANO * box.getTop());
        }
    }

    private void primitives(Osmformat.PrimitiveBlock block) throws InputRejected, InvalidProtocolBufferException {
        List<ByteString> strings = block.getStringtable().getSList();
        for (Osmformat.PrimitiveGroup group : block.getPrimitivegroupList()) {
            if (group.hasDense()) {
                dense(group.getDense(), block, strings);
            }
            for (Osmformat.Node node : group.getNodesList()) {
                double lonDeg = NANO * (block.getLonOffset() + block.getGranularity() * node.getLon());
                double latDeg = NANO * (block.getLatOffset() + block.getGranularity() * node.getLat());
                if (sink.wantsNode(node.getId(), lonDeg, latDeg)) {
                    sink.node(
                            node.getId(),
                            lonDeg,
                            latDeg,
                            tags(node.getKeysList(), node.getValsList(), strings),
                            node.hasInfo() ? node.getInfo().getTimestamp() * block.getDateGranularity() / 1000 : 0);
                }
            }
            for (Osmformat.Way way : group.getWaysList()) {
                way(way, block, strings);
            }
            for (Osmformat.Relation relation : group.getRelationsList()) {
                relation(relation, strings);
            }
        }
    }

    private void dense(Osmformat.DenseNodes dense, Osmformat.PrimitiveBlock block, List<ByteString> strings)
            throws InputRejected {
        long id = 0;
        long lon = 0;
        long lat = 0;
        long time = 0;
        int tag = 0;
        boolean timed = dense.hasDenseinfo() && dense.getDenseinfo().getTimestampCount() == dense.getIdCount();
        boolean tagged = dense.getKeysValsCount() > 0;
        for (int i = 0; i < dense.getIdCount(); i++) {
            id += dense.getId(i);
            lon += dense.getLon(i);
            lat += dense.getLat(i);
            time += timed ? dense.getDenseinfo().getTimestamp(i) : 0;
            int end = tag;
            while (tagged && dense.getKeysVals(end) != 0) {
                end += 2;
            }
            double lonDeg = NANO * (block.getLonOffset() + block.getGranularity() * lon);
            double latDeg = NANO * (block.getLatOffset() + block.getGranularity() * lat);
            if (sink.wantsNode(id, lonDeg, latDeg)) {
                Map<String, String> tags = end == tag ? Map.of() : new HashMap<>();
                for (; tag < end; tag += 2) {
                    tags.put(text(strings, dense.getKeysVals(tag)), text(strings, dense.getKeysVals(tag + 1)));
                }
                sink.node(id, lonDeg, latDeg, tags, time * block.getDateGranularity() / 1000);
            }
            tag = end + 1;
        }
    }

    private void way(Osmformat.Way way, Osmformat.PrimitiveBlock block, List<ByteString> strings) throws InputRejected {
        long[] nodes = new long[way.getRefsCount()];
        long id = 0;
        for (int i = 0; i < nodes.length; i++) {
            id += way.getRefs(i);
            nodes[i] = id;
        }
        sink.way(
                way.getId(),
                nodes,
                tags(way.getKeysList(), way.getValsList(), strings),
                way.hasInfo() ? way.getInfo().getTimestamp() * block.getDateGranularity() / 1000 : 0);
    }

    private void relation(Osmformat.Relation relation, List<ByteString> strings) throws InputRejected {
        int members = relation.getMemidsCount();
        if (relation.getTypesCount() != members || relation.getRolesSidCount() != members) {
            throw Refusals.damaged();
        }
        long[] ways = new long[members];
        String[] roles = new String[members];
        int n = 0;
        long id = 0;
        for (int i = 0; i < members; i++) {
            id += relation.getMemids(i);
            if (relation.getTypes(i) == Osmformat.Relation.MemberType.WAY) {
                ways[n] = id;
                roles[n++] = text(strings, relation.getRolesSid(i));
            }
        }
        sink.relation(
                relation.getId(),
                Arrays.copyOf(ways, n),
                Arrays.copyOf(roles, n),
                tags(relation.getKeysList(), relation.getValsList(), strings));
    }

    private static Map<String, String> tags(List<Integer> keys, List<Integer> values, List<ByteString> strings)
            throws InputRejected {
        if (keys.size() != values.size()) {
            throw Refusals.damaged();
        }
        Map<String, String> tags = new HashMap<>();
        for (int i = 0; i < keys.size(); i++) {
            tags.put(text(strings, keys.get(i)), text(strings, values.get(i)));
        }
        return tags;
    }

    private static String text(List<ByteString> strings, int at) {
        return strings.get(at).toStringUtf8();
    }
}
