package org.cresthaul.paper;

import java.util.List;

/**
 * A drawing in its own units, y downward, clipped to its box. At its natural size a unit is a point (1/72 in).
 *
 * @param alt what it shows, in words
 */
record Drawing(double width, double height, String alt, List<Shape> shapes) {
    Drawing {
        shapes = List.copyOf(shapes);
        if (!(width > 0 && height > 0)) {
            throw new IllegalArgumentException("a drawing needs a size, has " + width + " by " + height);
        }
    }

    /** Size of its smallest lettering; infinite where it has none. */
    double leastLettering() {
        return shapes.stream()
                .filter(s -> s instanceof Lettering l && !l.text().equals(Symbols.QUESTION))
                .mapToDouble(s -> ((Lettering) s).size())
                .min()
                .orElse(Double.POSITIVE_INFINITY);
    }

    record Point(double x, double y) {}

    sealed interface Shape {}

    /** Lines, filled by the even-odd rule when {@code fill} is an ink. */
    record Path(List<List<Point>> lines, boolean closed, Ink fill, Ink stroke, double strokeWidth, boolean dashed)
            implements Shape {
        Path {
            lines = lines.stream().map(List::copyOf).toList();
            requireInk(fill, stroke);
        }
    }

    record Circle(Point center, double radius, Ink fill, Ink stroke, double strokeWidth) implements Shape {
        Circle {
            requireInk(fill, stroke);
        }
    }

    private static void requireInk(Ink fill, Ink stroke) {
        if (fill.isNone() && stroke.isNone()) {
            throw new IllegalArgumentException("a shape is filled, stroked or both");
        }
    }

    /** Text on its baseline. */
    record Lettering(Point at, Anchor anchor, double size, boolean bold, Ink ink, String text) implements Shape {}

    enum Anchor {
        START,
        MIDDLE,
        END
    }

    static Path line(Ink stroke, double strokeWidth, Point... points) {
        return new Path(List.of(List.of(points)), false, Ink.NONE, stroke, strokeWidth, false);
    }

    static Path area(Ink fill, Ink stroke, double strokeWidth, Point... points) {
        return new Path(List.of(List.of(points)), true, fill, stroke, strokeWidth, false);
    }
}
