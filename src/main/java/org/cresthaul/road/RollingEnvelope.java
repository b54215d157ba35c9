package org.cresthaul.road;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The pieces of a rolled wheel's path, first to last, by work in proportion to the number of points.
 *
 * <p>Over distance s the wheel may stand on any point t of the line within a radius: at p(t) + √(r² − (t − s)²). Moving
 * s forward favors points farther ahead (the root's mixed derivative in s and t is positive), so of two segments the
 * one behind is higher up to one distance, and the one ahead from there on. Segments are therefore taken in their
 * order, and one that is overtaken before it has overtaken the one behind it never carries the wheel.
 */
final class RollingEnvelope {
    private final PiecewiseLine line;
    private final double radiusM;

    /**
     * A piece from one distance to the next piece's.
     *
     * @param foot and base: of a straight piece a point of it, of an arc its center
     * @param slope NaN for an arc
     */
    record Piece(double from, double foot, double base, double slope) {
        boolean isArc() {
            return slope != slope;
        }

        boolean isSame(Piece other) {
            return foot == other.foot && base == other.base && (isArc() ? other.isArc() : slope == other.slope);
        }

        double heightAt(double s, double radiusM) {
            double u = s - foot;
            return isArc() ? base + Math.sqrt(Math.max(0, radiusM * radiusM - u * u)) : base + slope * u;
        }
    }

    /** A segment that carries the wheel from a distance on. */
    private record Carrying(int segment, double from) {}

    private RollingEnvelope(PiecewiseLine line, double radiusM) {
        this.line = line;
        this.radiusM = radiusM;
    }

    /** The highest pieces; the first one's start is minus infinity. */
    static List<Piece> of(PiecewiseLine line, double radiusM) {
        return new RollingEnvelope(line, radiusM).pieces();
    }

    private List<Piece> pieces() {
        List<Carrying> carrying = new ArrayList<>();
        carrying.add(new Carrying(0, Double.NEGATIVE_INFINITY));
        for (int ahead = 1; ahead <= line.size(); ahead++) {
            double from = overtakes(last(carrying).segment, ahead);
            while (carrying.size() > 1 && from <= last(carrying).from) {
                carrying.remove(carrying.size() - 1);
                from = overtakes(last(carrying).segment, ahead);
            }
            carrying.add(new Carrying(ahead, from));
        }
        List<Piece> pieces = new ArrayList<>();
        for (int k = 0; k < carrying.size(); k++) {
            double to = k + 1 < carrying.size() ? carrying.get(k + 1).from : Double.POSITIVE_INFINITY;
            addParts(carrying.get(k), to, pieces);
        }
        return pieces;
    }

    private static Carrying last(List<Carrying> carrying) {
        return carrying.get(carrying.size() - 1);
    }

    /** Rear arc, straight part and front arc of a segment, as far as it carries. */
    private void addParts(Carrying carrying, double to, List<Piece> into) {
        double from = carrying.from;
        for (int part = -1; part <= 1; part++) {
            double end = Math.min(to, part < 1 ? partEnd(carrying.segment, part) : Double.POSITIVE_INFINITY);
            if (end > from) {
                Piece piece = part(carrying.segment, part, from);
                if (into.isEmpty() || !piece.isSame(into.get(into.size() - 1))) {
                    into.add(piece);
                }
                from = end;
            }
        }
    }

    /** Where the rear arc (part -1) or the straight part (0) of a segment ends. */
    private double partEnd(int segment, int part) {
        int point = segment + part;
        double m = line.slopeBefore(segment);
        return point < 0
                ? Double.NEGATIVE_INFINITY
                : point >= line.size()
                        ? Double.POSITIVE_INFINITY
                        : line.distanceM(point) - radiusM * m / Math.sqrt(1 + m * m);
    }

    private Piece part(int segment, int part, double from) {
        if (part == 0) {
            int anchor = Math.max(0, segment - 1);
            double m = line.slopeBefore(segment);
            return new Piece(from, line.distanceM(anchor), line.elevationM(anchor) + radiusM * Math.sqrt(1 + m * m), m);
        }
        int center = part < 0 ? segment - 1 : segment;
        return new Piece(from, line.distanceM(center), line.elevationM(center), Double.NaN);
    }

    private Piece partAt(int segment, double s) {
        int part = s < partEnd(segment, -1) ? -1 : s < partEnd(segment, 0) ? 0 : 1;
        return part(segment, part, s);
    }

    /** From where on a segment ahead carries rather than one behind it. */
    private double overtakes(int behind, int ahead) {
        // Both can be stood on between these two.
        double from = line.distanceM(ahead - 1) - radiusM;
        double to = line.distanceM(behind) + radiusM;
        if (from >= to) {
            return 0.5 * (from + to);
        }
        double[] ends = {partEnd(behind, -1), partEnd(behind, 0), partEnd(ahead, -1), partEnd(ahead, 0), to};
        Arrays.sort(ends);
        double left = from;
        for (double end : ends) {
            double right = Math.min(end, to);
            if (right <= left) {
                continue;
            }
            double middle = 0.5 * (left + right);
            Piece a = partAt(behind, middle);
            Piece b = partAt(ahead, middle);
            if (a.heightAt(right, radiusM) < b.heightAt(right, radiusM)) {
                return a.heightAt(left, radiusM) <= b.heightAt(left, radiusM) ? left : crossing(a, b, left, right);
            }
            left = right;
        }
        return to;
    }

    /** Where two pieces cross between two distances; the first is higher at the left one, the second at the right. */
    private double crossing(Piece a, Piece b, double left, double right) {
        // Pieces that only touch at an end, as neighbors on one straight road do, may have no crossing but by rounding.
        double best = right;
        double off = apart(a, b, right);
        if (apart(a, b, left) < off) {
            best = left;
            off = apart(a, b, left);
        }
        for (double s : crossings(a, b)) {
            double within = Math.max(left, Math.min(right, s));
            double apart = apart(a, b, within);
            if (apart < off) {
                off = apart;
                best = within;
            }
        }
        return best;
    }

    private double apart(Piece a, Piece b, double s) {
        return Math.abs(a.heightAt(s, radiusM) - b.heightAt(s, radiusM));
    }

    private double[] crossings(Piece a, Piece b) {
        if (!a.isArc() && !b.isArc()) {
            double dm = a.slope - b.slope;
            double at = ((b.base - b.slope * b.foot) - (a.base - a.slope * a.foot)) / dm;
            return dm == 0 ? new double[0] : new double[] {at};
        }
        if (a.isArc() && b.isArc()) {
            double dx = b.foot - a.foot;
            double dz = b.base - a.base;
            double d2 = dx * dx + dz * dz;
            double h2 = radiusM * radiusM / d2 - 0.25;
            if (d2 == 0 || h2 < 0) {
                return new double[0];
            }
            double h = Math.sqrt(h2);
            double mid = a.foot + 0.5 * dx;
            return new double[] {mid - h * dz, mid + h * dz};
        }
        Piece straight = a.isArc() ? b : a;
        Piece arc = a.isArc() ? a : b;
        double m = straight.slope;
        double lift = straight.base + m * (arc.foot - straight.foot) - arc.base;
        double qa = 1 + m * m;
        double disc = m * m * lift * lift - qa * (lift * lift - radiusM * radiusM);
        if (disc < 0) {
            return new double[0];
        }
        double root = Math.sqrt(disc);
        return new double[] {arc.foot + (-m * lift - root) / qa, arc.foot + (-m * lift + root) / qa};
    }
}
