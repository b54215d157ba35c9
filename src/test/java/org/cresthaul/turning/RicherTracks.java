package org.cresthaul.turning;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.road.Corner;
import org.locationtech.jts.geom.Coordinate;

/**
 * Lines for the richer search to begin with: a point that steers toward a place some meters ahead on the guide, which
 * is moved aside by so much here and so much there.
 */
final class RicherTracks {
    /** The guide is moved aside at places this far apart, evenly between them, meters. */
    private static final double PLACE_M = 7;

    private static final double STEP_M = 0.5;
    private static final double BEFORE_M = 36;
    private static final double BEHIND_M = 45;

    private final RandomCorners.Case c;
    private final List<double[]> guide = new ArrayList<>();
    private int firstBend;
    private int lastBend;

    RicherTracks(RandomCorners.Case c) {
        this.c = c;
        Coordinate[] g = c.guide().getCoordinates();
        List<Coordinate> line = new ArrayList<>(List.of(g));
        Corner.RoadEnd in = c.corner().approach();
        Corner.RoadEnd out = c.corner().exit();
        line.add(0, new Coordinate(g[0].x - 300 * Math.cos(in.headingRad()), g[0].y - 300 * Math.sin(in.headingRad())));
        Coordinate end = g[g.length - 1];
        line.add(new Coordinate(end.x + 300 * Math.cos(out.headingRad()), end.y + 300 * Math.sin(out.headingRad())));
        for (int i = 1; i < line.size(); i++) {
            Coordinate a = line.get(i - 1);
            Coordinate b = line.get(i);
            double length = a.distance(b);
            int parts = (int) Math.max(1, Math.ceil(length / STEP_M));
            for (int k = 0; k < parts; k++) {
                guide.add(new double[] {
                    a.x + (b.x - a.x) * k / parts, a.y + (b.y - a.y) * k / parts, Math.atan2(b.y - a.y, b.x - a.x)
                });
            }
        }
        firstBend = -1;
        for (int i = 1; i < guide.size(); i++) {
            if (Math.abs(Math.IEEEremainder(guide.get(i)[2] - guide.get(i - 1)[2], 2 * Math.PI)) > 1e-4) {
                firstBend = firstBend < 0 ? i : firstBend;
                lastBend = i;
            }
        }
        firstBend = firstBend < 0 ? guide.size() / 2 : firstBend;
        lastBend = Math.max(lastBend, firstBend);
    }

    private int start() {
        return Math.max(0, firstBend - (int) (BEFORE_M / STEP_M));
    }

    private int end() {
        return Math.min(guide.size() - 1, lastBend + (int) (BEHIND_M / STEP_M));
    }

    /** To begin with: how far ahead it steers to, then meters to the left of the guide, one place after the other. */
    List<double[]> starts() {
        int places = 2 + (int) Math.ceil((end() - start()) * STEP_M / PLACE_M);
        List<double[]> starts = new ArrayList<>();
        for (double[] aside : new double[][] {
            {0, 0, 0},
            {1.5, 1.5, 1.5},
            {-1.5, -1.5, -1.5},
            {1.5, -1.5, 1.5},
            {-1.5, 1.5, -1.5},
            {0, 1.5, 3},
            {0, -1.5, -3}
        }) {
            double[] values = new double[places + 1];
            values[0] = 6;
            for (int i = 0; i < places; i++) {
                double at = start() + i * PLACE_M / STEP_M;
                values[i + 1] = at < firstBend ? aside[0] : at <= lastBend + 10 ? aside[1] : aside[2];
            }
            starts.add(values);
        }
        return starts;
    }

    private static double aside(double[] values, double placesOn) {
        int i = (int) Math.max(0, Math.min(values.length - 3, placesOn));
        double t = Math.max(0, Math.min(1, placesOn - i));
        return values[i + 1] + t * (values[i + 2] - values[i + 1]);
    }

    RicherLine line(double[] values) {
        int start = start();
        int end = end();
        double aheadM = values[0];
        double beforeM = values[1];
        RicherLine.Steering steering = RicherLine.Steering.of(c.combination());
        double heading = c.corner().approach().headingRad();
        double[] from = guide.get(start);
        double x = from[0] - beforeM * Math.sin(heading);
        double y = from[1] + beforeM * Math.cos(heading);
        double startX = x;
        double startY = y;
        // The tractor's heading, and the front wheels' angle to it.
        double way = heading;
        double angle = 0;
        int at = start;
        List<Double> nodes = new ArrayList<>();
        int every = (int) (RicherLine.NODE_M / STEP_M);
        for (int i = 0; at < end - 1 && i < 1200; i++) {
            // The nearest place of the guide not far ahead, and the one to steer to.
            double least = Double.POSITIVE_INFINITY;
            int nearest = at;
            for (int k = at; k < Math.min(guide.size(), at + 12); k++) {
                double d = Math.hypot(guide.get(k)[0] - x, guide.get(k)[1] - y);
                if (d < least) {
                    least = d;
                    nearest = k;
                }
            }
            at = Math.max(at, nearest);
            int to = Math.min(guide.size() - 1, at + (int) (aheadM / STEP_M));
            double[] target = guide.get(to);
            double aside = aside(values, (to - start) * STEP_M / PLACE_M);
            double tx = target[0] - aside * Math.sin(target[2]) - x;
            double ty = target[1] + aside * Math.cos(target[2]) - y;
            double wish = Math.IEEEremainder(Math.atan2(ty, tx) - way, 2 * Math.PI);
            wish = Math.max(-steering.limitRad(), Math.min(steering.limitRad(), wish));
            double most = steering.ratePerM() * STEP_M;
            double more = Math.max(-most, Math.min(most, wish - angle));
            double turn = STEP_M * Math.sin(angle + more / 2) / steering.wheelbaseM();
            x += STEP_M * Math.cos(way + turn / 2 + angle + more / 2);
            y += STEP_M * Math.sin(way + turn / 2 + angle + more / 2);
            way += turn;
            angle += more;
            if ((i + 1) % every == 0) {
                nodes.add(angle);
            }
        }
        double[] asked = new double[nodes.size() + 2];
        for (int i = 0; i < nodes.size(); i++) {
            asked[i] = nodes.get(i);
        }
        return new RicherLine(asked, startX, startY, heading, turnRad(), steering);
    }

    /** What the line turns altogether: the corner's turn, to the exit's direction exactly. */
    private double turnRad() {
        double between = c.corner().exit().headingRad() - c.corner().approach().headingRad();
        return between + 2 * Math.PI * Math.rint((c.corner().turnRad() - between) / (2 * Math.PI));
    }
}
