package org.cresthaul.exchange.osm;

import java.util.List;
import org.cresthaul.route.LonLat;
import org.cresthaul.units.Worded;

/**
 * What a map shows around a route, to draw beneath it. Nothing is judged by it.
 *
 * @param shapes of the lowest layer first
 * @param whole false where the map had more than is kept: some of it is then missing, the least roads before all else
 */
public record BaseMap(List<Shape> shapes, boolean whole) {
    /** Most points that are kept: what a page draws at once. */
    public static final int MOST_POINTS = 150_000;

    /** Positions around an area, the last as the first (RFC 7946, 3.1.6). */
    public static final int LEAST_IN_RING = 4;

    /** What is drawn alike, from the lowest up. */
    public enum Layer implements Worded {
        WOODS("woods"),
        WATER("water"),
        MINOR_ROAD("minor-road"),
        MIDDLE_ROAD("middle-road"),
        MAJOR_ROAD("major-road"),
        RAILWAY("railway"),
        PLACE("place");

        private final String word;

        Layer(String word) {
            this.word = word;
        }

        @Override
        public String word() {
            return word;
        }
    }

    /**
     * One line, area or place.
     *
     * @param area whether the points close around it
     * @param name of a place; elsewhere empty
     * @param holes what is left out of an area, each as its points close around it
     */
    public record Shape(Layer layer, boolean area, String name, List<LonLat> points, List<List<LonLat>> holes) {
        public Shape {
            points = List.copyOf(points);
            holes = holes.stream().map(List::copyOf).toList();
        }

        /** Without holes. */
        public Shape(Layer layer, boolean area, String name, List<LonLat> points) {
            this(layer, area, name, points, List.of());
        }

        int size() {
            return points.size() + holes.stream().mapToInt(List::size).sum();
        }
    }

    public BaseMap {
        shapes = List.copyOf(shapes);
    }
}
