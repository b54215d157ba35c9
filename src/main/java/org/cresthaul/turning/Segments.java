package org.cresthaul.turning;

/**
 * Straight pieces in the plane: squared distances, as millions of them are asked for and the library takes roots of
 * each.
 */
final class Segments {
    private Segments() {}

    /** Squared distance of the piece from a to b and that from c to d; zero where they cross. */
    static double distance2(double ax, double ay, double bx, double by, double cx, double cy, double dx, double dy) {
        if (cross(ax, ay, bx, by, cx, cy, dx, dy)) {
            return 0;
        }
        return Math.min(
                Math.min(point2(ax, ay, cx, cy, dx, dy), point2(bx, by, cx, cy, dx, dy)),
                Math.min(point2(cx, cy, ax, ay, bx, by), point2(dx, dy, ax, ay, bx, by)));
    }

    /** Whether one passes through the other; pieces that only touch have a distance of zero without it. */
    static boolean cross(double ax, double ay, double bx, double by, double cx, double cy, double dx, double dy) {
        boolean c = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax) > 0;
        boolean d = (bx - ax) * (dy - ay) - (by - ay) * (dx - ax) > 0;
        if (c == d) {
            return false;
        }
        boolean a = (dx - cx) * (ay - cy) - (dy - cy) * (ax - cx) > 0;
        boolean b = (dx - cx) * (by - cy) - (dy - cy) * (bx - cx) > 0;
        return a != b;
    }

    private static double point2(double x, double y, double ax, double ay, double bx, double by) {
        double ux = bx - ax;
        double uy = by - ay;
        double px = x - ax;
        double py = y - ay;
        double length2 = ux * ux + uy * uy;
        double t = length2 > 0 ? Math.max(0, Math.min(1, (px * ux + py * uy) / length2)) : 0;
        double dx = px - t * ux;
        double dy = py - t * uy;
        return dx * dx + dy * dy;
    }
}
