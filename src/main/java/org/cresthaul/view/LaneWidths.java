package org.cresthaul.view;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.cresthaul.road.Corner;
import org.cresthaul.turning.Track;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;

/** How wide the road is across the line, where the turn begins and where it has ended. */
final class LaneWidths {
    /** Bent by less, everything counts as straight, radians. */
    private static final double STRAIGHT_RAD = 0.01;
    /** A road wider than this to one side is none, meters. */
    private static final double REACH_M = 40;
    /** Areas that are this near touch, meters. */
    private static final double TOUCH_M = 0.05;

    /** A width that is the surveyed one, meters. */
    private static final double SAME_M = 0.001;
    /** A tractor stands along a leg, radians. */
    private static final double ALONG_RAD = 0.1;
    /** So many states of the track from one section to the next. */
    private static final int STATES = 4;
    /** So many sections from where the turn begins or ends, clear of its marks. */
    private static final int APART = 4;

    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    private LaneWidths() {}

    /** Of own lanes and of opposing lanes beside them, at both ends of the turn, in the order they are driven. */
    static List<CornerView.WidthView> of(Corner corner, Track track) {
        int first = 0;
        int last = track.size() - 1;
        while (first < last && isStraight(track, first)) {
            first++;
        }
        while (last > first && isStraight(track, last)) {
            last--;
        }
        List<CornerView.WidthView> widths = new ArrayList<>(at(corner, track, corner.approach(), first, 0));
        widths.addAll(at(corner, track, corner.exit(), last, track.size() - 1));
        return widths;
    }

    /** Where the road is first as wide as its leg was surveyed, from the turn on; at the turn where it nowhere is. */
    private static List<CornerView.WidthView> at(Corner corner, Track track, Corner.RoadEnd leg, int turn, int end) {
        int step = end < turn ? -STATES : STATES;
        for (int state = turn + APART * step; step < 0 ? state >= end : state <= end; state += step) {
            LineString across = across(track, state, leg);
            Optional<LineString> own = own(corner, track, state, across);
            if (own.filter(w -> Math.abs(w.getLength() - leg.leftM() - leg.rightM()) < SAME_M)
                    .isPresent()) {
                return told(corner, across, own.get());
            }
        }
        LineString across = across(track, turn, leg);
        return own(corner, track, turn, across)
                .map(w -> told(corner, across, w))
                .orElse(List.of());
    }

    private static Optional<LineString> own(Corner corner, Track track, int state, LineString across) {
        return nearest(across, corner.pavement(), new Coordinate(track.leadXM(state), track.leadYM(state)), TOUCH_M);
    }

    private static List<CornerView.WidthView> told(Corner corner, LineString across, LineString own) {
        List<CornerView.WidthView> widths = new ArrayList<>(List.of(width(true, own)));
        // The lane beside it: at the one end or the other of what is one's own.
        nearest(across, corner.opposing(), own.getCoordinateN(0), TOUCH_M)
                .or(() -> nearest(across, corner.opposing(), own.getCoordinateN(1), TOUCH_M))
                .ifPresent(lane -> widths.add(width(false, lane)));
        return widths;
    }

    private static boolean isStraight(Track track, int state) {
        double bend = Math.abs(track.steerRad(state));
        for (int k = 0; k + 1 < track.chain().size(); k++) {
            bend = Math.max(bend, Math.abs(track.articulationRad(state, k)));
        }
        return bend <= STRAIGHT_RAD;
    }

    /** Square to the leg, or to the tractor where it does not stand along the leg there. */
    private static LineString across(Track track, int state, Corner.RoadEnd leg) {
        double own = track.headingRad(state, 0);
        double off = Math.IEEEremainder(own - leg.headingRad(), 2 * Math.PI);
        double heading = Math.abs(off) < ALONG_RAD ? leg.headingRad() : own;
        double dx = -Math.sin(heading) * REACH_M;
        double dy = Math.cos(heading) * REACH_M;
        double x = track.leadXM(state);
        double y = track.leadYM(state);
        return GEOMETRY.createLineString(
                new Coordinate[] {new Coordinate(x + dx, y + dy), new Coordinate(x - dx, y - dy)});
    }

    /** The piece of the section in an area that is nearest to a place of it, from left to right. */
    private static Optional<LineString> nearest(LineString across, Geometry area, Coordinate place, double mostM) {
        Geometry pieces = across.intersection(area);
        Geometry point = GEOMETRY.createPoint(place);
        List<LineString> all = new ArrayList<>();
        for (int i = 0; i < pieces.getNumGeometries(); i++) {
            if (pieces.getGeometryN(i) instanceof LineString piece && piece.getLength() > TOUCH_M) {
                all.add(piece);
            }
        }
        return all.stream()
                .filter(piece -> piece.distance(point) <= mostM)
                .min(Comparator.comparingDouble(piece -> piece.distance(point)))
                .map(piece -> fromLeft(across, piece))
                // What ends at the reach has not been measured to its edge.
                .filter(piece -> piece.getCoordinateN(0).distance(across.getCoordinateN(0)) > TOUCH_M
                        && piece.getCoordinateN(1).distance(across.getCoordinateN(1)) > TOUCH_M);
    }

    private static LineString fromLeft(LineString across, LineString piece) {
        Coordinate a = piece.getCoordinateN(0);
        Coordinate b = piece.getCoordinateN(piece.getNumPoints() - 1);
        Coordinate left = across.getCoordinateN(0);
        boolean turned = left.distance(b) < left.distance(a);
        return GEOMETRY.createLineString(turned ? new Coordinate[] {b, a} : new Coordinate[] {a, b});
    }

    private static CornerView.WidthView width(boolean own, LineString piece) {
        return new CornerView.WidthView(
                own, piece.getLength(), place(piece.getCoordinateN(0)), place(piece.getCoordinateN(1)));
    }

    private static List<Double> place(Coordinate c) {
        return List.of(DrawnLengths.near(c.x), DrawnLengths.near(c.y));
    }
}
