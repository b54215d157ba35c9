package org.cresthaul.exchange.track;

import org.cresthaul.route.LonLat;

/**
 * A position as a file gives it.
 *
 * @param timeS when, seconds since 1970; NaN where the file does not say
 * @param line of the file, from 1; 0 where its format has no lines to speak of
 * @param number of the point in its file, from 1
 */
public record TrackPoint(LonLat at, double timeS, int line, int number) {
    boolean isTimed() {
        return !Double.isNaN(timeS);
    }

    /** Where a person finds it in the file. */
    String where() {
        return line > 0 ? "line " + line : "point " + number;
    }

    /** About how far it is from another, meters: within 0.6 %, for telling the usual from the unusual. */
    double roughM(TrackPoint other) {
        return LonLat.roughM(at, other.at);
    }
}
