package org.cresthaul.clearance;

import java.util.List;
import org.cresthaul.clearance.bound.OutlineGaps;

/** What a passage is searched for, unit by unit: the undersides over the ground, or the topsides under a soffit. */
record Target(List<OutlineGaps> units) {
    /** What placed outlines take beside their points, in points of some 30 bytes. */
    private static final int BESIDE = 12;

    Target {
        units = List.copyOf(units);
    }

    OutlineGaps tractor() {
        return units.get(0);
    }

    OutlineGaps of(int unit) {
        return units.get(unit);
    }

    int size() {
        return units.size();
    }

    /**
     * Room that the outlines take at one position, in vertices and segments; the tractor's only where it is placed
     * anew.
     */
    int room(boolean withTractor) {
        int room = 0;
        for (int k = withTractor ? 0 : 1; k < units.size(); k++) {
            room += units.get(k).points() + BESIDE;
        }
        return room;
    }
}
