package org.cresthaul.exchange.osm;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.route.LonLat;

/**
 * Which area extracts say they cover. Roads run on past the border of an extract as whole ways, without what crosses
 * them there, so that a road in the map does not mean that the map knows what is on it. Not for sharing.
 */
final class MapCover {
    private final List<Box> boxes = new ArrayList<>();
    private final List<String> silent = new ArrayList<>();

    /** Longitudes run east from {@code west}, across the 180th meridian where need be. */
    private record Box(double west, double south, double east, double north) {
        boolean holds(double lonDeg, double latDeg) {
            boolean within = west <= east ? lonDeg >= west && lonDeg <= east : lonDeg >= west || lonDeg <= east;
            return within && latDeg >= south && latDeg <= north;
        }
    }

    /** An area that an extract names; what is none says nothing. */
    void add(double west, double south, double east, double north) {
        if (Math.abs(west) <= 180 && Math.abs(east) <= 180 && south >= -90 && north <= 90 && south <= north) {
            boxes.add(new Box(west, south, east, north));
        }
    }

    int size() {
        return boxes.size();
    }

    /** An extract that names no area. */
    void addSilent(String extract) {
        silent.add(extract);
    }

    /** Extracts that do not say what they cover: anything may be in them, or missing. */
    List<String> silent() {
        return List.copyOf(silent);
    }

    /** Whether a place is in what is covered, as far as the extracts say. */
    boolean holds(LonLat at) {
        return !silent.isEmpty() || boxes.stream().anyMatch(b -> b.holds(at.lonDeg(), at.latDeg()));
    }
}
