package org.cresthaul.plan;

import java.util.List;

/**
 * The best sequence; {@code keys} has one configuration for each part between stops.
 *
 * @param first what goes before time: conditions where they do
 * @param weighed seconds, with 20 min for each condition where those are weighed
 */
record BestSequence(int first, long weighed, long seconds, int changes, double reserve, List<String> keys) {
    boolean isBelow(BestSequence other) {
        if (first != other.first) {
            return first < other.first;
        }
        if (weighed != other.weighed) {
            return weighed < other.weighed;
        }
        return changes != other.changes ? changes < other.changes : reserve > other.reserve;
    }
}
