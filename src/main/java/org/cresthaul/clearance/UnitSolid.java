package org.cresthaul.clearance;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.geometry.Interval;
import org.cresthaul.rig.FramePoint;

/**
 * What of one unit can strike the unit it is coupled to, seen from the side: filled outlines and tires, their places
 * taken from the coupling's pivot. What lies within the coupling's reach of the pivot is left out, since plate, pin and
 * hinge touch by their nature. Immutable.
 */
final class UnitSolid {
    /** A straight piece of an outline; places from the pivot, and its ends in the unit's frame. */
    static final class Piece {
        final double x;
        final double h;
        final double alongX;
        final double alongH;
        /** Far more than rounding. */
        private static final double ROUGH_M = 1e-9;

        final FramePoint from;
        final FramePoint to;
        /** Least and most distance from the pivot. */
        final double nearM;

        final double farM;

        Piece(double x, double h, double toX, double toH, FramePoint from, FramePoint to) {
            this.x = x;
            this.h = h;
            alongX = toX - x;
            alongH = toH - h;
            this.from = from;
            this.to = to;
            double t = share(0, 0);
            nearM = Math.hypot(x + t * alongX, h + t * alongH);
            farM = Math.max(Math.hypot(x, h), Math.hypot(toX, toH));
        }

        /** Where on it a place is nearest to, as a share of its length. */
        double share(double px, double ph) {
            double square = alongX * alongX + alongH * alongH;
            double t = square == 0 ? 0 : ((px - x) * alongX + (ph - h) * alongH) / square;
            return Math.max(0, Math.min(1, t));
        }

        /** The square of the distance, m². */
        double square(double px, double ph) {
            double t = share(px, ph);
            double dx = px - x - t * alongX;
            double dh = ph - h - t * alongH;
            return dx * dx + dh * dh;
        }

        double distanceM(double px, double ph) {
            double t = share(px, ph);
            return Math.hypot(px - x - t * alongX, ph - h - t * alongH);
        }

        /**
         * Whether the distance is less than so much, or at most {@value #ROUGH_M} m more: a fifth of the time of
         * telling it.
         */
        boolean mayBeNearer(double px, double ph, double distanceM) {
            double most = distanceM + ROUGH_M;
            return most > 0 && square(px, ph) < most * most;
        }

        /** The point of the unit there, called by the nearer end that has a name. */
        FramePoint point(double t) {
            FramePoint at = from.toward(to, t);
            FramePoint near = t < 0.5 ? from : to;
            FramePoint far = t < 0.5 ? to : from;
            return new FramePoint(at.xM(), at.hM(), near.part().isEmpty() ? far.part() : near.part());
        }
    }

    /** A corner of an outline, or the center of a tire with its radius; its place in polar form about the pivot. */
    record Corner(double x, double h, double outM, double angleRad, double tireM, FramePoint point) {
        static Corner at(double x, double h, double tireM, FramePoint point) {
            return new Corner(x, h, Math.hypot(x, h), Math.atan2(h, x), tireM, point);
        }
    }

    /** A filled outline, whole. */
    private static final class Loop {
        private final double[] x;
        private final double[] h;
        private final Interval lengthwise = new Interval();
        private final Interval upright = new Interval();

        Loop(double[] x, double[] h) {
            this.x = x;
            this.h = h;
            for (int i = 0; i < x.length; i++) {
                lengthwise.add(x[i]);
                upright.add(h[i]);
            }
        }

        boolean holds(double px, double ph) {
            if (px < lengthwise.lo || px > lengthwise.hi || ph < upright.lo || ph > upright.hi) {
                return false;
            }
            boolean inside = false;
            for (int i = 0, j = x.length - 1; i < x.length; j = i++) {
                if (h[i] > ph != h[j] > ph && px < x[i] + (x[j] - x[i]) * (ph - h[i]) / (h[j] - h[i])) {
                    inside = !inside;
                }
            }
            return inside;
        }
    }

    /** Not to be written to; an array, as searches spend their time in going through it. */
    final Piece[] pieces;

    final List<Corner> corners;
    final double farthestM;
    private final List<Loop> loops;

    private UnitSolid(List<Piece> pieces, List<Corner> corners, List<Loop> loops) {
        this.pieces = pieces.toArray(Piece[]::new);
        this.corners = List.copyOf(corners);
        this.loops = List.copyOf(loops);
        farthestM = corners.stream().mapToDouble(c -> c.outM + c.tireM).max().orElse(0);
    }

    /** Whether a place lies in one of its outlines. */
    boolean holds(double x, double h) {
        for (Loop loop : loops) {
            if (loop.holds(x, h)) {
                return true;
            }
        }
        return false;
    }

    /** Collects the outlines and tires of one unit. */
    static final class Builder {
        private final double reachM;
        private final List<Piece> pieces = new ArrayList<>();
        private final List<Corner> corners = new ArrayList<>();
        private final List<Loop> loops = new ArrayList<>();

        /** @param reachM of the coupling: nothing nearer to the pivot counts, meters */
        Builder(double reachM) {
            this.reachM = reachM;
        }

        /**
         * A filled outline.
         *
         * @param points all around, in the unit's frame
         * @param pivot in the same frame
         * @param turnRad how far it is turned about the pivot, nose up
         */
        Builder outline(List<FramePoint> points, FramePoint pivot, double turnRad) {
            double c = Math.cos(turnRad);
            double s = Math.sin(turnRad);
            int n = points.size();
            double[] x = new double[n];
            double[] h = new double[n];
            for (int i = 0; i < n; i++) {
                double along = points.get(i).xM() - pivot.xM();
                double up = points.get(i).hM() - pivot.hM();
                x[i] = along * c - up * s;
                h[i] = along * s + up * c;
            }
            for (int i = 0; i < n; i++) {
                int j = (i + 1) % n;
                addPiece(x[i], h[i], x[j], h[j], points.get(i), points.get(j));
            }
            loops.add(new Loop(x, h));
            return this;
        }

        /** A tire as a circle. */
        Builder tire(FramePoint center, double radiusM, FramePoint pivot) {
            corners.add(Corner.at(center.xM() - pivot.xM(), center.hM() - pivot.hM(), radiusM, center));
            return this;
        }

        UnitSolid build() {
            return new UnitSolid(pieces, corners, loops);
        }

        /** Keeps what lies beyond the coupling's reach: up to two pieces. */
        private void addPiece(double x, double h, double toX, double toH, FramePoint from, FramePoint to) {
            double dx = toX - x;
            double dh = toH - h;
            double a = dx * dx + dh * dh;
            if (a == 0) {
                return;
            }
            Edge edge = new Edge(x, h, dx, dh, from, to);
            double b = x * dx + h * dh;
            double root = b * b - a * (x * x + h * h - reachM * reachM);
            if (root <= 0) {
                keep(edge, 0, 1);
                return;
            }
            keep(edge, 0, Math.min(1, (-b - Math.sqrt(root)) / a));
            keep(edge, Math.max(0, (-b + Math.sqrt(root)) / a), 1);
        }

        /** A line of the outline as it goes from one point to the next. */
        private record Edge(double x, double h, double dx, double dh, FramePoint from, FramePoint to) {
            FramePoint at(double t) {
                return t == 0 ? from : t == 1 ? to : from.toward(to, t);
            }
        }

        private void keep(Edge edge, double t, double u) {
            if (t >= u) {
                return;
            }
            double toX = edge.x + u * edge.dx;
            double toH = edge.h + u * edge.dh;
            Piece piece = new Piece(edge.x + t * edge.dx, edge.h + t * edge.dh, toX, toH, edge.at(t), edge.at(u));
            pieces.add(piece);
            addCorner(piece.x, piece.h, piece.from);
            addCorner(toX, toH, piece.to);
        }

        private void addCorner(double x, double h, FramePoint point) {
            if (!corners.isEmpty()) {
                Corner last = corners.get(corners.size() - 1);
                if (last.x == x && last.h == h) {
                    return;
                }
            }
            corners.add(Corner.at(x, h, 0, point));
        }
    }
}
