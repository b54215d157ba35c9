package org.cresthaul.clearance;

import org.cresthaul.clearance.UnitSolid.Corner;
import org.cresthaul.clearance.UnitSolid.Piece;

/**
 * The least distance between a corner that turns about the pivot and a piece that stands still, over a range of angles,
 * in closed form. The corner runs on a circle: nearest to the piece it is at an end of the range, where the circle
 * meets the piece, where it passes an end of the piece in the same direction from the pivot, or where its direction is
 * square to the piece. Mutable: holds the last answer.
 */
final class TurningCorner {
    private static final double FULL_TURN = 2 * Math.PI;

    /** The least distance found, meters. */
    double distanceM;
    /** The turn at which it is met, radians. */
    double turnRad;

    private Corner corner;
    private Piece piece;
    private double fromRad;
    private double toRad;

    /** Finds it over turns from {@code fromRad} to {@code toRad}, less than a full turn apart. */
    void measure(Corner turning, Piece still, double fromRad, double toRad) {
        corner = turning;
        piece = still;
        this.fromRad = fromRad;
        this.toRad = toRad;
        distanceM = Double.POSITIVE_INFINITY;
        offer(fromRad);
        if (toRad == fromRad) {
            return;
        }
        offer(toRad);
        offerToward(piece.x, piece.h);
        offerToward(piece.x + piece.alongX, piece.h + piece.alongH);
        offerToward(-piece.alongH, piece.alongX);
        offerToward(piece.alongH, -piece.alongX);
        offerMeetings();
    }

    /** Where the circle meets the piece. */
    private void offerMeetings() {
        if (corner.outM() < piece.nearM || corner.outM() > piece.farM) {
            return;
        }
        double a = piece.alongX * piece.alongX + piece.alongH * piece.alongH;
        double b = piece.x * piece.alongX + piece.h * piece.alongH;
        double c = piece.x * piece.x + piece.h * piece.h - corner.outM() * corner.outM();
        double root = Math.sqrt(Math.max(0, b * b - a * c));
        for (double t : new double[] {(-b - root) / a, (-b + root) / a}) {
            if (t >= 0 && t <= 1) {
                offerToward(piece.x + t * piece.alongX, piece.h + t * piece.alongH);
            }
        }
    }

    /** The turn that brings the corner into a direction from the pivot, if it lies in the range. */
    private void offerToward(double x, double h) {
        double turn = Math.atan2(h, x) - corner.angleRad();
        turn -= FULL_TURN * Math.floor((turn - fromRad) / FULL_TURN);
        if (turn <= toRad) {
            offer(turn);
        }
    }

    private void offer(double turn) {
        double c = Math.cos(turn);
        double s = Math.sin(turn);
        double d = piece.distanceM(corner.x() * c - corner.h() * s, corner.x() * s + corner.h() * c);
        if (d < distanceM) {
            distanceM = d;
            turnRad = turn;
        }
    }
}
