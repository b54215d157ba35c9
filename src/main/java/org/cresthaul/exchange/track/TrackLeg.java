package org.cresthaul.exchange.track;

import java.util.List;

/**
 * One named line of a file.
 *
 * @param name empty where the file gives none
 * @param parts pieces in the order of the file; a receiver that was switched off and on begins a new one
 */
public record TrackLeg(String name, String file, List<List<TrackPoint>> parts) {
    public TrackLeg {
        parts = parts.stream().map(List::copyOf).toList();
    }

    int points() {
        return parts.stream().mapToInt(List::size).sum();
    }
}
