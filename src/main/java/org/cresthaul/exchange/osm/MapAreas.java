package org.cresthaul.exchange.osm;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.cresthaul.exchange.osm.BaseMap.Layer;

/**
 * Areas that the map puts together from several ways (relations of the type multipolygon): those of which a way comes
 * into the strip. What is held is bounded; not for sharing.
 */
final class MapAreas {
    private static final int MOST_AREAS = 200_000;
    private static final int MOST_MEMBERS = 2_000_000;

    private final List<Area> areas = new ArrayList<>();
    private final NodeIndex seen = new NodeIndex();
    private int members;
    private boolean whole = true;
    /** Nodes of the ways that are needed; null where they are not known yet. */
    private final Map<Long, long[]> ways = new HashMap<>();

    private final Map<Long, List<Layer>> outerOf = new HashMap<>();

    /**
     * One of them.
     *
     * @param ways that are its edge. Not to be changed
     * @param inner which of them are around a hole. Not to be changed
     */
    private record Area(Layer layer, long[] ways, boolean[] inner) {}

    /**
     * The edge of an area.
     *
     * @param outer pieces, each by its nodes; the first is the last again where a piece closes
     * @param inner pieces around holes
     */
    record Edges(Layer layer, List<long[]> outer, List<long[]> inner) {}

    void add(long id, long[] ids, String[] roles, Layer layer) {
        int before = seen.size();
        seen.add(id);
        if (seen.size() == before) {
            return;
        }
        if (areas.size() >= MOST_AREAS || members + ids.length > MOST_MEMBERS) {
            whole = false;
            return;
        }
        members += ids.length;
        boolean[] inner = new boolean[ids.length];
        for (int i = 0; i < ids.length; i++) {
            inner[i] = roles[i].equals("inner");
        }
        areas.add(new Area(layer, ids, inner));
    }

    /** Leaves out those of which no way is among these. */
    void keepThoseOf(NodeIndex touching) {
        areas.removeIf(a -> Arrays.stream(a.ways).noneMatch(w -> touching.find(w) >= 0));
        for (Area area : areas) {
            Arrays.stream(area.ways).forEach(w -> ways.put(w, null));
        }
    }

    boolean isEmpty() {
        return ways.isEmpty();
    }

    /** Whether nothing had to be left out. */
    boolean isWhole() {
        return whole;
    }

    /** Takes the nodes of a way that is part of an edge. */
    void way(long id, long[] nodes) {
        if (ways.containsKey(id)) {
            ways.put(id, nodes);
        }
    }

    /** Whether a way is the outer edge of an area of this layer, which draws it. */
    boolean draws(long way, Layer layer) {
        return outerOf.getOrDefault(way, List.of()).contains(layer);
    }

    /** Of every area that is kept, once the nodes of its ways are there. */
    List<Edges> edges() {
        List<Edges> all = new ArrayList<>();
        for (Area area : areas) {
            List<long[]> outer = new ArrayList<>();
            List<long[]> inner = new ArrayList<>();
            for (int i = 0; i < area.ways.length; i++) {
                long[] nodes = ways.get(area.ways[i]);
                if (nodes != null && nodes.length > 1) {
                    (area.inner[i] ? inner : outer).add(nodes);
                }
                if (!area.inner[i]) {
                    outerOf.computeIfAbsent(area.ways[i], w -> new ArrayList<>(1))
                            .add(area.layer);
                }
            }
            all.add(new Edges(area.layer, joined(outer), joined(inner)));
        }
        return all;
    }

    /** Pieces put together where one ends and another begins, as far as they go. */
    static List<long[]> joined(List<long[]> pieces) {
        Map<Long, Deque<Integer>> at = new HashMap<>();
        boolean[] used = new boolean[pieces.size()];
        for (int k = 0; k < pieces.size(); k++) {
            long[] piece = pieces.get(k);
            if (piece[0] != piece[piece.length - 1]) {
                at.computeIfAbsent(piece[0], n -> new ArrayDeque<>(2)).add(k);
                at.computeIfAbsent(piece[piece.length - 1], n -> new ArrayDeque<>(2))
                        .add(k);
            }
        }
        List<long[]> all = new ArrayList<>();
        for (int k = 0; k < pieces.size(); k++) {
            if (!used[k]) {
                used[k] = true;
                Chain chain = new Chain(pieces.get(k));
                chain.grow(pieces, at, used);
                chain.turn();
                chain.grow(pieces, at, used);
                all.add(chain.nodes());
            }
        }
        return all;
    }

    /** Nodes one after the other. */
    private static final class Chain {
        private long[] nodes;
        private int size;

        Chain(long[] piece) {
            nodes = piece.clone();
            size = piece.length;
        }

        /** Goes on at its end until it closes or nothing follows. */
        void grow(List<long[]> pieces, Map<Long, Deque<Integer>> at, boolean[] used) {
            while (nodes[0] != nodes[size - 1]) {
                Deque<Integer> here = at.getOrDefault(nodes[size - 1], new ArrayDeque<>(0));
                while (!here.isEmpty() && used[here.peek()]) {
                    here.poll();
                }
                if (here.isEmpty()) {
                    return;
                }
                int next = here.poll();
                used[next] = true;
                append(pieces.get(next));
            }
        }

        private void append(long[] piece) {
            boolean forward = piece[0] == nodes[size - 1];
            int n = piece.length - 1;
            nodes = size + n > nodes.length ? Arrays.copyOf(nodes, 2 * (size + n)) : nodes;
            for (int i = 1; i <= n; i++) {
                nodes[size++] = piece[forward ? i : n - i];
            }
        }

        void turn() {
            for (int i = 0; i < size / 2; i++) {
                long held = nodes[i];
                nodes[i] = nodes[size - 1 - i];
                nodes[size - 1 - i] = held;
            }
        }

        long[] nodes() {
            return Arrays.copyOf(nodes, size);
        }
    }
}
