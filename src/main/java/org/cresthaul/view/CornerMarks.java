package org.cresthaul.view;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.check.Passed;
import org.cresthaul.geometry.Areas;
import org.cresthaul.language.Code;
import org.cresthaul.language.Sentence;
import org.cresthaul.road.Corner;
import org.cresthaul.road.Corner.RoadEnd;
import org.cresthaul.turning.CornerFit;
import org.cresthaul.turning.Track;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.linearref.LengthIndexedLine;

/**
 * Marks along the line of the steer axle: where the wheel goes over and where it is straight again, and where the steer
 * axle is abreast of what a driver sees: where a curb return begins and ends, and the ends of islands.
 */
final class CornerMarks {
    /** A road's edge that is straight for less is none, meters. */
    private static final double EDGE_M = 50;

    /** An edge that points away from its road by more is no edge of it. */
    private static final double ALONG_RAD = Math.toRadians(0.2);

    /** A wheel turned by less is straight. */
    private static final double STRAIGHT_RAD = Math.toRadians(1);

    private final Corner corner;
    private final Track track;
    private final List<Mark> marks = new ArrayList<>();

    /**
     * A state of the track with a name.
     *
     * @param place of a landmark, else null
     */
    record Mark(MarkKind kind, Sentence words, int state, Coordinate place) {}

    private CornerMarks(Corner corner, CornerFit fit) {
        this.corner = corner;
        track = fit.track();
    }

    /** In the order they are driven. */
    static List<Mark> of(Corner corner, CornerFit fit, boolean template) {
        CornerMarks marks = new CornerMarks(corner, fit);
        marks.steering();
        marks.islands();
        if (template) {
            marks.returns();
        }
        marks.marks.sort((a, b) -> corner.backing() ? b.state - a.state : a.state - b.state);
        return List.copyOf(marks.marks);
    }

    private void steering() {
        int first = 0;
        int last = track.size() - 1;
        while (first < last && Math.abs(track.steerRad(first)) <= STRAIGHT_RAD) {
            first++;
        }
        while (last > first && Math.abs(track.steerRad(last)) <= STRAIGHT_RAD) {
            last--;
        }
        if (first == last) {
            return;
        }
        int begin = corner.backing() ? last : first;
        int end = corner.backing() ? first : last;
        marks.add(new Mark(MarkKind.WHEEL_OVER, Sentence.of(over(begin)), begin, null));
        int way = corner.backing() ? -1 : 1;
        for (int i = begin; i != end; i += way) {
            boolean over = Math.abs(track.steerRad(i)) > STRAIGHT_RAD;
            Mark before = marks.get(marks.size() - 1);
            if (over && before.words.code() != over(i)) {
                marks.add(new Mark(MarkKind.WHEEL_OVER, Sentence.of(over(i)), i, null));
            }
        }
        marks.add(new Mark(MarkKind.WHEELS_STRAIGHT, Sentence.of(Code.MARK_STRAIGHT), end, null));
    }

    private Code over(int state) {
        return track.steerRad(state) >= 0 ? Code.MARK_WHEEL_LEFT : Code.MARK_WHEEL_RIGHT;
    }

    private void islands() {
        for (int i = 0; i < corner.ground().islands().size(); i++) {
            Coordinate[] outline = corner.ground().islands().get(i).area().getCoordinates();
            if (outline.length == 0 || corner.guide().isEmpty()) {
                continue;
            }
            LengthIndexedLine along = new LengthIndexedLine(corner.guide().get());
            Coordinate first = outline[0];
            Coordinate last = outline[0];
            for (Coordinate c : outline) {
                first = along.project(c) < along.project(first) ? c : first;
                last = along.project(c) > along.project(last) ? c : last;
            }
            landmark(island(i, !corner.backing()), first);
            landmark(island(i, corner.backing()), last);
        }
    }

    /** Where the straight edges inside the turn end on the approach and go on at the exit. */
    private void returns() {
        Geometry flat = Areas.union(corner.pavement(), corner.opposing());
        if (corner.escorted().isPresent()) {
            flat = Areas.union(flat, corner.escorted().get());
        }
        double[] turns = turns();
        Coordinate begins = end(flat, corner.approach(), turns[0], 1);
        Coordinate ends = end(flat, corner.exit(), turns[1], -1);
        if (begins != null) {
            landmark(curbReturn(!corner.backing()), begins);
        }
        if (ends != null) {
            landmark(curbReturn(corner.backing()), ends);
        }
    }

    /** To which side the way first turns, and last: 1 to the left, -1 to the right. */
    private double[] turns() {
        double[] found = {0, 0};
        if (corner.guide().isPresent()) {
            Coordinate[] at = corner.guide().get().getCoordinates();
            for (int i = 2; i < at.length; i++) {
                double cross = (at[i - 1].x - at[i - 2].x) * (at[i].y - at[i - 1].y)
                        - (at[i - 1].y - at[i - 2].y) * (at[i].x - at[i - 1].x);
                double length = at[i].distance(at[i - 1]) * at[i - 1].distance(at[i - 2]);
                if (Math.abs(cross) > 1e-4 * length) {
                    found[0] = found[0] == 0 ? Math.signum(cross) : found[0];
                    found[1] = Math.signum(cross);
                }
            }
        }
        return found;
    }

    /** Of the long straight edge of a road on one side, the end toward the corner; null without one. */
    private static Coordinate end(Geometry flat, RoadEnd road, double hand, double toward) {
        Geometry boundary = flat.getBoundary();
        Coordinate best = null;
        double beside = Double.POSITIVE_INFINITY;
        for (int g = 0; g < boundary.getNumGeometries(); g++) {
            Coordinate[] at = boundary.getGeometryN(g).getCoordinates();
            for (int i = 1; i < at.length; i++) {
                double a = Passed.along(road, at[i - 1].x, at[i - 1].y);
                double b = Passed.along(road, at[i].x, at[i].y);
                double la = Passed.left(road, at[i - 1].x, at[i - 1].y);
                double lb = Passed.left(road, at[i].x, at[i].y);
                Coordinate near = toward * a > toward * b ? at[i - 1] : at[i];
                double middle = 0.5 * (road.leftM() - road.rightM());
                double off = hand * (0.5 * (la + lb) - middle);
                if (Math.abs(b - a) > EDGE_M
                        && Math.abs(lb - la) < ALONG_RAD * Math.abs(b - a)
                        && Math.min(toward * a, toward * b) < 0
                        && off > 0
                        && off < beside) {
                    beside = off;
                    best = near;
                }
            }
        }
        return best;
    }

    private static Sentence island(int index, boolean begins) {
        return Sentence.of(begins ? Code.MARK_ISLAND_BEGINS : Code.MARK_ISLAND_ENDS)
                .with("number", index + 1);
    }

    private static Sentence curbReturn(boolean begins) {
        return Sentence.of(begins ? Code.MARK_RETURN_BEGINS : Code.MARK_RETURN_ENDS);
    }

    private void landmark(Sentence words, Coordinate place) {
        int nearest = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < track.size(); i++) {
            double d = Math.hypot(track.leadXM(i) - place.x, track.leadYM(i) - place.y);
            if (d < least) {
                least = d;
                nearest = i;
            }
        }
        marks.add(new Mark(MarkKind.LANDMARK, words, nearest, place));
    }
}
