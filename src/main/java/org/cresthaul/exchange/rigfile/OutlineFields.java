package org.cresthaul.exchange.rigfile;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.exchange.json.JsonFields;
import org.cresthaul.rig.FramePoint;
import org.cresthaul.rig.Outline;
import org.cresthaul.units.Length;
import org.cresthaul.units.LengthLimits;
import org.cresthaul.units.Problems;

/** An outline as read: its points when every one is sound, or none. */
final class OutlineFields {
    static final LengthLimits X = new LengthLimits(-60, 60);
    /** Nothing of a rig is below the level ground it stands on. */
    static final LengthLimits H = new LengthLimits(0, 8);

    static final int MOST_POINTS = 500;
    /** Underside and topside of a unit end at the same place; a tape finds it this well at a rounded end, meters. */
    static final double SAME_END_M = 0.15;

    /** What a tape may be off at the deck's edge. */
    private static final double DECK_SLACK_M = 0.05;

    private final List<FramePoint> points;
    private final String pointer;
    private final Problems problems;

    private OutlineFields(List<FramePoint> points, String pointer, Problems problems) {
        this.points = points;
        this.pointer = pointer;
        this.problems = problems;
    }

    /** A point with "x" and "h", and nothing else; null after a problem. */
    static FramePoint point(JsonFields fields) {
        double xM = fields.lengthM("x", X);
        double hM = fields.lengthM("h", H);
        fields.refuseOthers();
        return Double.isNaN(xM) || Double.isNaN(hM) ? null : new FramePoint(xM, hM);
    }

    static OutlineFields of(JsonFields unit, String key) {
        return of(unit, key, "");
    }

    /** @param part what a point is called that has no "part" of its own */
    static OutlineFields of(JsonFields unit, String key, String part) {
        Problems problems = unit.problems();
        int before = problems.count();
        List<FramePoint> points = new ArrayList<>();
        double lastXM = Double.NaN;
        for (JsonFields item : unit.objects(key, 2, MOST_POINTS)) {
            double xM = item.lengthM("x", X);
            double hM = item.lengthM("h", H);
            String own = item.findText("part", JsonFields.LONGEST_NAME).orElse(part);
            item.refuseOthers();
            if (xM < lastXM) {
                item.problem(
                        "x",
                        "outline-backward",
                        "The outline runs backward here: x falls.",
                        "List the points from the rear end to the front end; x runs forward.");
            }
            lastXM = Double.isNaN(xM) ? lastXM : xM;
            if (!Double.isNaN(xM) && !Double.isNaN(hM)) {
                points.add(new FramePoint(xM, hM, own));
            }
        }
        if (problems.count() == before
                && !points.isEmpty()
                && points.get(points.size() - 1).xM() == points.get(0).xM()) {
            unit.problem(
                    key,
                    "no-length",
                    "All points of the outline have the same x.",
                    "List at least two points with different x.");
        }
        return new OutlineFields(problems.count() == before ? points : List.of(), unit.pointer(key), problems);
    }

    /** Whether every point of it is sound. */
    boolean isSound() {
        return !points.isEmpty();
    }

    /** The outline; only of a sound one. */
    Outline outline() {
        return new Outline(points);
    }

    /**
     * Of an underside: both outlines of a unit reach over it, and to the same ends. A part that either leaves out would
     * count as clear.
     */
    void requireReach(OutlineFields topside, double rearXM, double frontXM, String span) {
        boolean both = requireReach("underside", rearXM, frontXM, span);
        both &= topside.requireReach("topside", rearXM, frontXM, span);
        if (!both || points.isEmpty() || topside.points.isEmpty()) {
            return;
        }
        double rearM = topside.rearXM() - rearXM();
        double frontM = frontXM() - topside.frontXM();
        if (Math.max(Math.abs(rearM), Math.abs(frontM)) > SAME_END_M) {
            boolean topIsShort = rearM > SAME_END_M || frontM > SAME_END_M;
            problems.add(
                    "outline-short",
                    "The " + (topIsShort ? "topside" : "underside") + " ends before the "
                            + (topIsShort ? "underside" : "topside") + " of the same unit does.",
                    topIsShort ? topside.pointer : pointer,
                    "Measure both from the rear end of the unit to its front end; what is left out cannot be"
                            + " checked.");
        }
    }

    private boolean requireReach(String outline, double rearXM, double frontXM, String span) {
        boolean isShort = !points.isEmpty() && (rearXM() > rearXM || frontXM() < frontXM);
        if (isShort) {
            problems.add(
                    "outline-short",
                    "The " + outline + " does not reach " + span + ".",
                    pointer,
                    "Measure the " + outline + " over the whole unit; what is left out cannot be checked.");
        }
        return !isShort;
    }

    private double rearXM() {
        return points.get(0).xM();
    }

    private double frontXM() {
        return points.get(points.size() - 1).xM();
    }

    /**
     * Whether the center of gravity of what is drawn can be here: between the ends, and not above the convex hull of
     * the outline, which nothing drawn is outside of. True when there is no sound outline to compare with.
     */
    boolean canHoldWeightAt(double xM, double hM) {
        if (points.isEmpty()) {
            return true;
        }
        double highest = Double.NEGATIVE_INFINITY;
        for (FramePoint a : points) {
            for (FramePoint b : points) {
                highest = Math.max(highest, heightOn(a, b, xM, true));
            }
        }
        return hM <= highest + 1e-9;
    }

    /** An underside above the topside is a mix-up of the two, and would count as clear. */
    void requireBelow(OutlineFields topside) {
        if (points.isEmpty() || topside.points.isEmpty()) {
            return;
        }
        for (FramePoint p : points) {
            if (p.hM() > highestAt(topside.points, p.xM()) + 1e-9) {
                problems.add(
                        "underside-above-topside",
                        "The underside is above the topside at x = " + p.xM() + " m.",
                        pointer,
                        "The underside is the lowest line of the unit, the topside its highest.");
                return;
            }
        }
        for (FramePoint p : topside.points) {
            if (p.hM() < lowestAt(points, p.xM()) - 1e-9) {
                problems.add(
                        "underside-above-topside",
                        "The topside is below the underside at x = " + p.xM() + " m.",
                        topside.pointer,
                        "The underside is the lowest line of the unit, the topside its highest.");
                return;
            }
        }
    }

    /**
     * The deck lies between the trailer's underside, this, and its topside: a height that does not is a slip of the
     * pen.
     */
    void requireDeck(JsonFields deck, FramePoint point, OutlineFields topside) {
        if (point == null || points.isEmpty() || topside.points.isEmpty()) {
            return;
        }
        double lowM = lowestAt(points, point.xM());
        double highM = highestAt(topside.points, point.xM());
        if (point.hM() < lowM - DECK_SLACK_M || point.hM() > highM + DECK_SLACK_M) {
            deck.problem(
                    "h",
                    "off-outline",
                    "The deck is " + tape(point.hM()) + " high here, but the trailer's outline runs from " + tape(lowM)
                            + " to " + tape(highM) + " at this x.",
                    "Give the height of the deck's top at this x, such as \"" + new Length(highM).inFeetAndInches(8)
                            + "\", or correct the outline.");
        }
    }

    private static String tape(double meters) {
        return new Length(meters).inFeetAndInches(8) + " (" + new Length(meters).inMillimeters() + ")";
    }

    private static double highestAt(List<FramePoint> line, double xM) {
        double highest = Double.NEGATIVE_INFINITY;
        for (int i = 1; i < line.size(); i++) {
            highest = Math.max(highest, heightOn(line.get(i - 1), line.get(i), xM, true));
        }
        return highest == Double.NEGATIVE_INFINITY ? Double.POSITIVE_INFINITY : highest;
    }

    private static double lowestAt(List<FramePoint> line, double xM) {
        double lowest = Double.POSITIVE_INFINITY;
        for (int i = 1; i < line.size(); i++) {
            lowest = Math.min(lowest, -heightOn(line.get(i - 1), line.get(i), xM, false));
        }
        return lowest == Double.POSITIVE_INFINITY ? Double.NEGATIVE_INFINITY : lowest;
    }

    /** Height of a piece at xM, negated when the lowest is asked for; minus infinity where the piece does not reach. */
    private static double heightOn(FramePoint a, FramePoint b, double xM, boolean highest) {
        if (xM < a.xM() || xM > b.xM()) {
            return Double.NEGATIVE_INFINITY;
        }
        double sign = highest ? 1 : -1;
        if (a.xM() == b.xM()) {
            return Math.max(sign * a.hM(), sign * b.hM());
        }
        return sign * (a.hM() + (b.hM() - a.hM()) * (xM - a.xM()) / (b.xM() - a.xM()));
    }
}
