package org.cresthaul.exchange.osm;

import java.util.Arrays;

/** Numbers the nodes that are kept, by their identifiers, without a boxed number for each. Not for sharing. */
final class NodeIndex {
    private static final int NONE = -1;

    private long[] ids = new long[1024];
    private int size;
    /** Open addressing; at most half full. */
    private int[] slots = filled(2048);

    private static int[] filled(int length) {
        int[] slots = new int[length];
        Arrays.fill(slots, NONE);
        return slots;
    }

    int size() {
        return size;
    }

    long id(int index) {
        return ids[index];
    }

    /** The number of a node; -1 for one that is not kept. */
    int find(long id) {
        return slots[slot(id)];
    }

    /** The number of a node, which is kept from now on. */
    int add(long id) {
        int slot = slot(id);
        if (slots[slot] != NONE) {
            return slots[slot];
        }
        if (size == ids.length) {
            ids = Arrays.copyOf(ids, 2 * size);
        }
        ids[size] = id;
        slots[slot] = size++;
        if (2 * size > slots.length) {
            slots = filled(2 * slots.length);
            for (int i = 0; i < size; i++) {
                slots[slot(ids[i])] = i;
            }
        }
        return size - 1;
    }

    private int slot(long id) {
        long mixed = id * 0x9E3779B97F4A7C15L;
        int slot = (int) (mixed >>> 32) & slots.length - 1;
        while (slots[slot] != NONE && ids[slots[slot]] != id) {
            slot = slot + 1 & slots.length - 1;
        }
        return slot;
    }
}
