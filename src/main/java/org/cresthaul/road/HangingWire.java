package org.cresthaul.road;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.geometry.Finite;

/**
 * A wire that hangs between two supports, as a line that nowhere lies above it (docs/model.md, §8): a parabola through
 * the supports and the middle of the span, lowered by what a catenary through the same three points may differ from it,
 * and of that the tangents, which lie below a curve that sags.
 *
 * @param first the support met first in the direction of travel: distance along the road, and height
 * @param second the other one, not before the first
 * @param midSpanM its height halfway between the supports, meters above the same datum
 * @param spanM how far the supports are apart in plan, meters
 */
public record HangingWire(SurveyedPoint first, SurveyedPoint second, double midSpanM, double spanM) {
    /** Deepest sag for its span, and steepest line from support to support, for which the lowering is proven. */
    public static final double MOST_SAG = 0.1;

    public static final double STEEPEST_CHORD = 0.5;

    /** A wire nearer across the road than this, or steeper along it, counts as level at its lowest. */
    private static final double LEAST_ALONG_M = 2;

    private static final double STEEPEST_ALONG = 0.5;
    /** How far before and after it a wire that crosses counts, meters: its own thickness and what it sways. */
    private static final double CROSSING_M = 0.5;

    private static final int TANGENTS = 16;
    /** See docs/model.md, §8: two thirds of a root of three in it, and the slope of a catenary's end. */
    private static final double CATENARY = 0.55;

    public HangingWire {
        Finite.require("midSpanM", midSpanM);
        Finite.requireAtLeast("spanM", 1, spanM);
        double alongM = second.distanceM() - first.distanceM();
        if (alongM < 0 || alongM > spanM) {
            throw new IllegalArgumentException(
                    "supports " + alongM + " m apart along the road, " + spanM + " m in all");
        }
        double sagM = sagM(first, second, midSpanM);
        if (sagM < 0 || sagM > MOST_SAG * spanM) {
            throw new IllegalArgumentException("a wire of " + spanM + " m sags by 0 to a tenth of it, not by " + sagM);
        }
        if (Math.abs(second.elevationM() - first.elevationM()) > STEEPEST_CHORD * spanM) {
            throw new IllegalArgumentException("the supports differ in height by more than half the span");
        }
    }

    /** How far the middle of a wire hangs below the straight line between its supports, meters. */
    public static double sagM(SurveyedPoint first, SurveyedPoint second, double midSpanM) {
        return 0.5 * (first.elevationM() + second.elevationM()) - midSpanM;
    }

    /** The height that no point of it lies below, meters. */
    public double lowestM() {
        double sagM = sagM(first, second, midSpanM);
        double riseM = second.elevationM() - first.elevationM();
        double at = sagM == 0 ? (riseM < 0 ? 1 : 0) : Math.max(0, Math.min(1, 0.5 - riseM / (8 * sagM)));
        return parabolaM(at) - catenaryM();
    }

    /** How far the supports are apart along the road, meters. */
    public double alongM() {
        return second.distanceM() - first.distanceM();
    }

    /** Whether it is told as level at its lowest: it crosses the road too squarely for a height along it. */
    public boolean isLevel() {
        return alongM() < LEAST_ALONG_M || steepestAlong() > STEEPEST_ALONG;
    }

    /** No stretch of the line that stands for it is steeper than this along the road. */
    public double steepestAlong() {
        double sagM = sagM(first, second, midSpanM);
        return alongM() == 0
                ? Double.POSITIVE_INFINITY
                : (Math.abs(second.elevationM() - first.elevationM()) + 4 * sagM) / alongM();
    }

    /** A line along the road that lies nowhere above the wire. */
    public Soffit soffit() {
        List<SurveyedPoint> points = new ArrayList<>();
        if (isLevel()) {
            points.add(new SurveyedPoint(first.distanceM() - CROSSING_M, lowestM()));
            points.add(new SurveyedPoint(second.distanceM() + CROSSING_M, lowestM()));
            return Soffit.of(points);
        }
        double lowerM = catenaryM();
        points.add(new SurveyedPoint(first.distanceM(), first.elevationM() - lowerM));
        // Two tangents of z = 4 s u² + … that touch it 1/n apart meet s/n² below it, halfway.
        double meetM = sagM(first, second, midSpanM) / (TANGENTS * TANGENTS);
        for (int i = 0; i < TANGENTS; i++) {
            double at = (i + 0.5) / TANGENTS;
            points.add(new SurveyedPoint(first.distanceM() + at * alongM(), parabolaM(at) - meetM - lowerM));
        }
        points.add(new SurveyedPoint(second.distanceM(), second.elevationM() - lowerM));
        return Soffit.of(points);
    }

    /** Height of the parabola at a part of the span, 0 at the first support, 1 at the second. */
    private double parabolaM(double at) {
        return first.elevationM()
                + (second.elevationM() - first.elevationM()) * at
                - 4 * sagM(first, second, midSpanM) * at * (1 - at);
    }

    /** A catenary through the same three points lies nowhere farther from the parabola than this, meters. */
    private double catenaryM() {
        double sagM = sagM(first, second, midSpanM);
        double riseM = Math.abs(second.elevationM() - first.elevationM());
        return CATENARY * sagM * sagM * (riseM + 4 * sagM) / (spanM * spanM);
    }
}
