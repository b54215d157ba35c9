package org.cresthaul.exchange.track;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.cresthaul.exchange.track.TrackNote.Done;
import org.cresthaul.route.LonLat;
import org.cresthaul.units.InputRejected;

/**
 * Makes one line of the legs of one or several files: repeated points, spikes and stops left out, reversed pieces
 * turned, small gaps bridged, each told. Pieces that do not belong together are refused.
 */
public final class LineMending {
    /** Pieces that end and begin this near follow one another without a word, meters: what a route file takes. */
    static final double JOINED_M = 30;
    /** Farther apart than this are no neighbors on a road, meters: a little less than a route file takes. */
    private static final double FARTHEST_M = 90_000;

    /** Which way a piece ends is taken over this length, meters: more than a receiver wavers. */
    private static final double HEADING_M = 20;

    private final double longestGapM;
    private final List<TrackNote> notes = new ArrayList<>();
    private final List<Gap> gaps = new ArrayList<>();

    /** A leg as it will be driven. */
    public record MendedLeg(String name, String file, List<LonLat> positions) {}

    /** A stretch of which no file says anything. */
    public record Gap(LonLat from, LonLat to) {}

    /** The line, what was found in it, and where nothing is known of it. */
    public record Mended(List<MendedLeg> legs, List<TrackNote> notes, List<Gap> gaps) {}

    /** A piece with its leg. */
    private record Piece(TrackLeg leg, int part, List<TrackPoint> points) {
        LonLat start() {
            return points.get(0).at();
        }

        LonLat end() {
            return points.get(points.size() - 1).at();
        }

        boolean isTimed() {
            return points.get(0).isTimed();
        }

        Piece reversed() {
            List<TrackPoint> other = new ArrayList<>(points);
            Collections.reverse(other);
            return new Piece(leg, part, other);
        }
    }

    private LineMending(double longestGapM) {
        this.longestGapM = longestGapM;
    }

    /**
     * Joins legs in the order given.
     *
     * @param longestGapM longest gap that is bridged, meters
     * @throws InputRejected when there is no line, or a gap is longer
     */
    public static Mended of(List<TrackLeg> legs, double longestGapM) throws InputRejected {
        LineMending mending = new LineMending(longestGapM);
        List<Piece> pieces = new ArrayList<>();
        for (TrackLeg leg : legs) {
            for (int k = 0; k < leg.parts().size(); k++) {
                List<TrackPoint> sound = mending.sound(leg.parts().get(k), leg.file());
                if (sound.size() > 1) {
                    pieces.add(new Piece(leg, k, sound));
                }
            }
        }
        if (pieces.isEmpty()) {
            throw Refusals.of(
                    "no-line",
                    "There is no line: no track, route or line with two different points.",
                    "Export the track itself; waypoints are taken beside one.");
        }
        return mending.joined(mending.turned(pieces));
    }

    private List<TrackPoint> sound(List<TrackPoint> points, String file) throws InputRejected {
        List<TrackPoint> line = Duplicates.without(points, file, notes);
        line = inTime(line, file);
        line = Spikes.without(line, file, notes);
        line = Standing.without(line, file, notes);
        refuseJumps(line, file);
        Doubts.tell(line, file, notes);
        return line;
    }

    private static void refuseJumps(List<TrackPoint> points, String file) throws InputRejected {
        for (int i = 1; i < points.size(); i++) {
            double stepM = points.get(i).roughM(points.get(i - 1));
            if (stepM > FARTHEST_M) {
                throw Refusals.of(
                        "position-far",
                        file + ", " + points.get(i).where() + ": this position is " + told(stepM)
                                + " from the one before it.",
                        "Neighbors on a road are within 90 km. Check the coordinates there, and which comes first.");
            }
        }
    }

    /** A piece whose times run backward throughout was written end first. */
    private List<TrackPoint> inTime(List<TrackPoint> points, String file) {
        int back = 0;
        int on = 0;
        TrackPoint first = null;
        for (int i = 1; i < points.size(); i++) {
            double stepS = points.get(i).timeS() - points.get(i - 1).timeS();
            back += stepS < 0 ? 1 : 0;
            on += stepS > 0 ? 1 : 0;
            first = stepS < 0 && first == null ? points.get(i) : first;
        }
        if (back == 0) {
            return points;
        }
        if (on > 0) {
            notes.add(TrackNote.at(
                    file,
                    Done.DOUBTFUL,
                    "time-back",
                    first,
                    "Time runs backward at " + first.where() + (back > 1 ? " and " + (back - 1) + " more" : "")
                            + "; the order of the file was kept."));
            return points;
        }
        notes.add(TrackNote.at(
                file,
                Done.CORRECTED,
                "reversed",
                points.get(0),
                "The piece from " + points.get(0).where() + " on was written end first by its times; it was turned."));
        List<TrackPoint> other = new ArrayList<>(points);
        Collections.reverse(other);
        return other;
    }

    /** Turns pieces that were drawn against the travel. Where a piece has times, these say how it was driven. */
    private List<Piece> turned(List<Piece> pieces) {
        List<Piece> all = new ArrayList<>(pieces);
        if (all.size() > 1
                && !all.get(0).isTimed()
                && !touches(all.get(0).end(), all.get(1))
                && touches(all.get(0).start(), all.get(1))) {
            all.set(0, turn(all.get(0)));
        }
        for (int k = 1; k < all.size(); k++) {
            Piece piece = all.get(k);
            LonLat end = all.get(k - 1).end();
            boolean here = LonLat.roughM(end, piece.start()) <= JOINED_M;
            if (!here && !piece.isTimed() && LonLat.roughM(end, piece.end()) <= JOINED_M) {
                all.set(k, turn(piece));
            }
        }
        return all;
    }

    private static boolean touches(LonLat place, Piece piece) {
        return LonLat.roughM(place, piece.start()) <= JOINED_M || LonLat.roughM(place, piece.end()) <= JOINED_M;
    }

    private Piece turn(Piece piece) {
        TrackPoint first = piece.points.get(0);
        notes.add(TrackNote.at(
                piece.leg.file(),
                Done.CORRECTED,
                "reversed",
                first,
                "The piece from " + first.where() + " on was drawn against the travel; it was turned."));
        return piece.reversed();
    }

    private Mended joined(List<Piece> pieces) throws InputRejected {
        List<MendedLeg> legs = new ArrayList<>();
        List<LonLat> positions = new ArrayList<>();
        for (int k = 0; k < pieces.size(); k++) {
            Piece piece = pieces.get(k);
            if (k > 0 && pieces.get(k - 1).leg != piece.leg) {
                legs.add(leg(pieces.get(k - 1), positions, legs.size()));
                positions = new ArrayList<>();
            }
            if (k > 0) {
                bridge(pieces.get(k - 1), piece, positions);
            }
            for (TrackPoint point : piece.points) {
                positions.add(point.at());
            }
        }
        legs.add(leg(pieces.get(pieces.size() - 1), positions, legs.size()));
        return new Mended(List.copyOf(legs), List.copyOf(notes), List.copyOf(gaps));
    }

    private static MendedLeg leg(Piece last, List<LonLat> positions, int before) {
        String name = last.leg.name().isEmpty() ? "leg " + (before + 1) : last.leg.name();
        return new MendedLeg(name, last.leg.file(), List.copyOf(positions));
    }

    private void bridge(Piece before, Piece piece, List<LonLat> positions) throws InputRejected {
        double gapM = LonLat.roughM(before.end(), piece.start());
        if (gapM <= JOINED_M) {
            if (positions.isEmpty() && isAhead(before, piece.start())) {
                // What lies between two legs is driven: a leg begins where the one before it ends.
                positions.add(before.end());
            }
            return;
        }
        TrackPoint last = before.points.get(before.points.size() - 1);
        TrackPoint first = piece.points.get(0);
        boolean same = before.leg.file().equals(piece.leg.file());
        String between = "between " + (same ? "" : before.leg.file() + ", ") + last.where() + " and "
                + (same ? "" : piece.leg.file() + ", ") + first.where();
        if (gapM > longestGapM) {
            throw Refusals.of(
                    "gap",
                    "Nothing is known of " + told(gapM) + " " + between + ".",
                    "Give the piece that is missing, put the files in the order of travel, or allow longer gaps"
                            + " (--longest-gap).");
        }
        notes.add(TrackNote.at(
                piece.leg.file(),
                Done.DOUBTFUL,
                "gap",
                first,
                "Nothing is known of " + told(gapM) + " " + between + "; taken as driven straight."));
        gaps.add(new Gap(before.end(), piece.start()));
        if (positions.isEmpty()) {
            positions.add(before.end());
        }
    }

    /** Whether a place is not where the piece has just come from. */
    private static boolean isAhead(Piece before, LonLat place) {
        TrackPoint last = before.points.get(before.points.size() - 1);
        int i = before.points.size() - 2;
        while (i > 0 && before.points.get(i).roughM(last) < HEADING_M) {
            i--;
        }
        LonLat from = before.points.get(i).at();
        LonLat end = last.at();
        double cos = Math.cos(Math.toRadians(end.latDeg()));
        double x = shortWay(place.lonDeg() - end.lonDeg()) * shortWay(end.lonDeg() - from.lonDeg()) * cos * cos;
        return x + (place.latDeg() - end.latDeg()) * (end.latDeg() - from.latDeg()) > 0;
    }

    private static double shortWay(double differenceDeg) {
        return differenceDeg - 360 * Math.rint(differenceDeg / 360);
    }

    private static String told(double lengthM) {
        return lengthM < 10_000 ? Math.round(lengthM) + " m" : Math.round(lengthM / 1000) + " km";
    }
}
