package org.cresthaul.clearance;

import org.cresthaul.clearance.UnitSolid.Corner;
import org.cresthaul.clearance.UnitSolid.Piece;
import org.cresthaul.rig.FramePoint;

/**
 * The least gap between two coupled units over a range of their bend, the pitch of the unit behind relative to the one
 * ahead: they share the pivot, so the bend alone decides how they stand to each other. In closed form: two outlines
 * that do not overlap are nearest at a corner of one of them. See docs/model.md, "Between units".
 */
final class UnitGaps {
    /** Nearer than this outlines touch: rounding. */
    private static final double TOUCHES_M = 1e-9;
    /** Bends looked at for how deep two outlines overlap. */
    private static final int LOOKS = 16;

    /** A pair of a corner and a piece that is measured takes about so much longer than one that is left out. */
    private static final int MEASURED = 8;
    /** A piece passed while it is asked whether an outline holds a corner takes so much longer. */
    private static final int HELD = 2;
    /** Pairs left out that take about as long as a stretch of a passage looked at. */
    private static final int PAIRS_PER_STEP = 16_000;

    private final UnitSolid ahead;
    private final UnitSolid behind;
    /** Pairs looked at and not yet told as steps. */
    private long pairs;

    /**
     * A least gap.
     *
     * @param valueM the gap, or gap less need where a need was given, meters
     * @param gapM the gap itself; where outlines overlap, how deep they do at least, negative
     * @param bendRad the bend at which it is met
     * @param outM how far the nearest corner is from the pivot, meters
     */
    record Nearest(double valueM, double gapM, double bendRad, double outM, FramePoint ahead, FramePoint behind) {}

    /** What is needed of a gap whose nearest corner is so far from the pivot, meters. */
    interface ByDistance {
        double neededM(double outM);
    }

    UnitGaps(UnitSolid ahead, UnitSolid behind) {
        this.ahead = ahead;
        this.behind = behind;
    }

    /** The farthest corner of the unit ahead from the pivot that the unit behind could strike, meters. */
    double reachM() {
        return Math.min(ahead.farthestM, behind.farthestM);
    }

    /** What was looked at since this was last asked, in steps of a {@link org.cresthaul.geometry.WorkLimit}. */
    long steps() {
        long steps = pairs / PAIRS_PER_STEP;
        pairs %= PAIRS_PER_STEP;
        return steps;
    }

    /** The least over all bends from {@code fromRad} to {@code toRad}; both solids have corners. */
    Nearest least(double fromRad, double toRad, ByDistance need) {
        double middle = 0.5 * (fromRad + toRad);
        Nearest least = overlapAt(middle, need);
        if (least == null) {
            least = crossingAt(middle, need);
        }
        if (least == null) {
            least = leastApart(fromRad, toRad, need);
            if (least.gapM > 0) {
                return least;
            }
        }
        for (int i = 0; i <= LOOKS; i++) {
            Nearest at = overlapAt(fromRad + (toRad - fromRad) * i / LOOKS, need);
            if (at != null && at.valueM < least.valueM) {
                least = at;
            }
        }
        return least;
    }

    private Nearest leastApart(double fromRad, double toRad, ByDistance need) {
        Search search = new Search(need);
        search.between(behind, ahead, fromRad, toRad, false);
        search.between(ahead, behind, -toRad, -fromRad, true);
        return search.found();
    }

    /** One run through all pairs of a corner and a piece. */
    private final class Search {
        private final ByDistance need;
        private final TurningCorner pair = new TurningCorner();
        private double valueM = Double.POSITIVE_INFINITY;
        private double bendRad;
        private Corner corner;
        private Piece piece;
        private boolean cornerAhead;

        Search(ByDistance need) {
            this.need = need;
        }

        void between(UnitSolid turning, UnitSolid still, double fromRad, double toRad, boolean ofAhead) {
            double cos = Math.cos(0.5 * (fromRad + toRad));
            double sin = Math.sin(0.5 * (fromRad + toRad));
            for (Corner c : turning.corners) {
                double asked = c.tireM() + need.neededM(c.outM());
                double x = c.x() * cos - c.h() * sin;
                double h = c.x() * sin + c.h() * cos;
                // Nowhere in the range is a corner farther from where it is halfway than this.
                double strays = 0.5 * (toRad - fromRad) * c.outM();
                pairs += still.pieces.length;
                for (Piece p : still.pieces) {
                    double apart = Math.max(p.nearM - c.outM(), c.outM() - p.farM);
                    if (apart - asked < valueM && p.mayBeNearer(x, h, valueM + strays + asked)) {
                        pairs += MEASURED;
                        pair.measure(c, p, fromRad, toRad);
                        if (pair.distanceM - asked < valueM) {
                            valueM = pair.distanceM - asked;
                            bendRad = ofAhead ? -pair.turnRad : pair.turnRad;
                            corner = c;
                            piece = p;
                            cornerAhead = ofAhead;
                        }
                    }
                }
            }
        }

        Nearest found() {
            double turn = cornerAhead ? -bendRad : bendRad;
            double x = corner.x() * Math.cos(turn) - corner.h() * Math.sin(turn);
            double h = corner.x() * Math.sin(turn) + corner.h() * Math.cos(turn);
            double gapM = piece.distanceM(x, h) - corner.tireM();
            FramePoint on = piece.point(piece.share(x, h));
            return new Nearest(
                    valueM,
                    gapM <= TOUCHES_M ? Math.min(gapM, -TOUCHES_M) : gapM,
                    bendRad,
                    corner.outM(),
                    cornerAhead ? corner.point() : on,
                    cornerAhead ? on : corner.point());
        }
    }

    /**
     * How deep the outlines overlap at one bend at least, by the corner deepest inside; null where no corner is inside.
     */
    private Nearest overlapAt(double bendRad, ByDistance need) {
        Nearest a = deepest(behind, ahead, bendRad, bendRad, false, need);
        Nearest b = deepest(ahead, behind, -bendRad, bendRad, true, need);
        return a == null || b != null && b.gapM < a.gapM ? b : a;
    }

    /** Where two outlines cross at one bend; null where they do not. */
    private Nearest crossingAt(double bendRad, ByDistance need) {
        double cos = Math.cos(bendRad);
        double sin = Math.sin(bendRad);
        for (Piece b : behind.pieces) {
            double x = b.x * cos - b.h * sin;
            double h = b.x * sin + b.h * cos;
            double alongX = b.alongX * cos - b.alongH * sin;
            double alongH = b.alongX * sin + b.alongH * cos;
            pairs += ahead.pieces.length;
            for (Piece a : ahead.pieces) {
                if (a.farM < b.nearM || b.farM < a.nearM) {
                    continue;
                }
                double across = a.alongX * alongH - a.alongH * alongX;
                double t = ((x - a.x) * alongH - (h - a.h) * alongX) / across;
                double u = ((x - a.x) * a.alongH - (h - a.h) * a.alongX) / across;
                // Parallel pieces do not cross; where they lie on one another a corner of one is on the other.
                if (across != 0 && t >= 0 && t <= 1 && u >= 0 && u <= 1) {
                    double outM = Math.hypot(x + u * alongX, h + u * alongH);
                    return new Nearest(
                            -TOUCHES_M - need.neededM(outM), -TOUCHES_M, bendRad, outM, a.point(t), b.point(u));
                }
            }
        }
        return null;
    }

    private Nearest deepest(
            UnitSolid turning, UnitSolid still, double turnRad, double bendRad, boolean ofAhead, ByDistance need) {
        double cos = Math.cos(turnRad);
        double sin = Math.sin(turnRad);
        Nearest deepest = null;
        for (Corner c : turning.corners) {
            double x = c.x() * cos - c.h() * sin;
            double h = c.x() * sin + c.h() * cos;
            pairs += HELD * still.pieces.length;
            if (!still.holds(x, h)) {
                continue;
            }
            // No deeper than one found before, however near the other pieces are.
            double enough = deepest == null ? Double.NEGATIVE_INFINITY : -deepest.gapM - c.tireM() - TOUCHES_M;
            double within = Double.POSITIVE_INFINITY;
            int asked = 0;
            for (Piece p : still.pieces) {
                if (p.nearM - c.outM() > within || c.outM() - p.farM > within) {
                    continue;
                }
                asked++;
                double square = p.square(x, h);
                if (square < within * within) {
                    within = Math.sqrt(square) + TOUCHES_M;
                    if (within < enough) {
                        break;
                    }
                }
            }
            pairs += still.pieces.length + MEASURED * asked;
            if (within < enough) {
                continue;
            }
            Piece nearest = null;
            double depth = Double.POSITIVE_INFINITY;
            // The nearest, and of equal ones the first: what is left is no farther than rounding.
            for (Piece p : still.pieces) {
                if (p.nearM - c.outM() > within || c.outM() - p.farM > within) {
                    continue;
                }
                if (p.mayBeNearer(x, h, within)) {
                    double d = p.distanceM(x, h);
                    if (d < depth) {
                        depth = d;
                        nearest = p;
                    }
                }
            }
            double gapM = -depth - c.tireM();
            if (nearest != null && gapM <= -TOUCHES_M && (deepest == null || gapM < deepest.gapM)) {
                FramePoint on = nearest.point(nearest.share(x, h));
                double leftM = gapM - need.neededM(c.outM());
                deepest = ofAhead
                        ? new Nearest(leftM, gapM, bendRad, c.outM(), c.point(), on)
                        : new Nearest(leftM, gapM, bendRad, c.outM(), on, c.point());
            }
        }
        return deepest;
    }
}
