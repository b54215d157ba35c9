package org.cresthaul.road;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;

/** A way along straight lines, with an arc from each onto the next. */
final class RoundedWay {
    /** Lines nearer to parallel than this have no meeting worth the name. */
    private static final double PARALLEL = 0.05;
    /** From one line to another that is nearly parallel, the way goes over within this, meters. */
    private static final double OVER_M = 40;

    private RoundedWay() {}

    /** A line at an offset to the left of a heading through the origin. */
    record Line(double headingRad, double leftM) {
        Coordinate at(double alongM) {
            return PlanShapes.turned(headingRad, alongM, leftM);
        }

        private double along(Coordinate c) {
            return c.x * Math.cos(headingRad) + c.y * Math.sin(headingRad);
        }
    }

    /**
     * Along one line, over onto another, along that.
     *
     * @param radiusM of the arc; smaller where the lines do not leave so much
     */
    static List<Coordinate> of(Line in, Line out, double radiusM, double reachM) {
        double sine = Math.sin(out.headingRad - in.headingRad);
        List<Coordinate> corners = new ArrayList<>(List.of(in.at(-reachM)));
        if (Math.abs(sine) < PARALLEL) {
            corners.add(in.at(-OVER_M / 2));
            corners.add(out.at(OVER_M / 2));
        } else {
            // Where the first line is at the second's offset.
            double s = (in.leftM * Math.cos(out.headingRad - in.headingRad) - out.leftM) / sine;
            corners.add(in.at(s));
        }
        corners.add(out.at(reachM));
        double[] radii = new double[corners.size() - 2];
        Arrays.fill(radii, radiusM);
        return rounded(corners, radii);
    }

    /** A polygon line with its inner corners rounded, as far as half of both their sides allows. */
    static List<Coordinate> rounded(List<Coordinate> corners, double[] radiiM) {
        List<Coordinate> way = new ArrayList<>();
        way.add(corners.get(0));
        for (int i = 1; i + 1 < corners.size(); i++) {
            arc(
                    way,
                    corners.get(i - 1),
                    corners.get(i),
                    corners.get(i + 1),
                    radiiM[i - 1],
                    i == 1 ? 1 : 0.5,
                    i + 2 == corners.size() ? 1 : 0.5);
        }
        way.add(corners.get(corners.size() - 1));
        return way;
    }

    private static void arc(
            List<Coordinate> way,
            Coordinate a,
            Coordinate b,
            Coordinate c,
            double radiusM,
            double ofFirst,
            double ofSecond) {
        double in = Math.atan2(b.y - a.y, b.x - a.x);
        double turn = Math.IEEEremainder(Math.atan2(c.y - b.y, c.x - b.x) - in, 2 * Math.PI);
        double slope = Math.tan(Math.abs(turn) / 2);
        double tangent = Math.min(radiusM * slope, Math.min(ofFirst * b.distance(a), ofSecond * c.distance(b)));
        if (slope < 1e-9 || tangent < 1e-6) {
            way.add(b);
            return;
        }
        double radius = tangent / slope;
        double hand = Math.signum(turn);
        double middleX = b.x - tangent * Math.cos(in) - hand * radius * Math.sin(in);
        double middleY = b.y - tangent * Math.sin(in) + hand * radius * Math.cos(in);
        int steps = Math.max(1, (int) Math.ceil(Math.abs(turn) / PlanShapes.STEP_RAD));
        for (int i = 0; i <= steps; i++) {
            double from = in - hand * Math.PI / 2 + turn * i / steps;
            way.add(new Coordinate(middleX + radius * Math.cos(from), middleY + radius * Math.sin(from)));
        }
    }
}
