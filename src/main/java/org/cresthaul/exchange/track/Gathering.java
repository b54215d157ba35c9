package org.cresthaul.exchange.track;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.cresthaul.exchange.crs.PlaneCoordinates;
import org.cresthaul.geometry.StopSignal;
import org.cresthaul.route.LonLat;
import org.cresthaul.units.InputRejected;

/**
 * Takes what a reader finds, point by point. A position that is none is left out and told; a file in which more than
 * one of ten is none is refused. Not for sharing.
 */
final class Gathering {
    /** Most positions of a file. */
    static final int MOST_POINTS = 1_000_000;
    /** Most legs, and most marked places, of a file. */
    static final int MOST_LEGS = 500;

    static final int LONGEST_NAME = 200;
    /** More notes of one kind are counted, not listed. */
    private static final int MOST_NOTES = 50;

    private final StopSignal stop = StopSignal.current();
    private final String file;
    private final List<TrackLeg> legs = new ArrayList<>();
    private final List<MarkedPlace> places = new ArrayList<>();
    private final List<TrackNote> notes = new ArrayList<>();
    private final Map<String, Integer> noted = new HashMap<>();
    private String name = "";
    private String legName = "";
    private List<List<TrackPoint>> parts = new ArrayList<>();
    private List<TrackPoint> part = new ArrayList<>();
    private int points;
    private int bad;
    /** A position that is none, but would be one with its numbers the other way round. */
    private int swapped;

    private String firstBad = "";

    /** What the numbers are; null for longitude and latitude on WGS 84. */
    private final PlaneCoordinates plane;

    Gathering(String file) {
        this(file, null);
    }

    Gathering(String file, PlaneCoordinates plane) {
        this.file = file;
        this.plane = plane;
    }

    /** What the file calls itself; the first name given counts. */
    void name(String text) {
        name = name.isEmpty() ? plain(text) : name;
    }

    /** What the leg that is being read is called; the first name given counts. */
    void legName(String text) {
        legName = legName.isEmpty() ? plain(text) : legName;
    }

    /** One line, without control characters, as long as a name may be. */
    static String plain(String text) {
        return PlainText.of(text, LONGEST_NAME);
    }

    void point(String lon, String lat, String time, int line) throws InputRejected {
        stop.poll();
        points++;
        if (points > MOST_POINTS) {
            throw Refusals.of(
                    "too-many",
                    "The file has more than " + MOST_POINTS + " positions.",
                    "Thin the track, or cut it into legs.");
        }
        LonLat at = position(lon, lat, line);
        if (at != null) {
            part.add(new TrackPoint(at, seconds(time), line, points));
        }
    }

    private LonLat position(String lon, String lat, int line) throws InputRejected {
        double x = number(lon);
        double y = number(lat);
        if (plane != null) {
            LonLat at = plane.at(x, y);
            if (at != null) {
                return at;
            }
        } else if (Math.abs(x) <= 180 && Math.abs(y) <= LonLat.MOST_LAT_DEG) {
            return new LonLat(x, y);
        }
        bad++;
        swapped += plane == null && Math.abs(y) <= 180 && Math.abs(x) <= LonLat.MOST_LAT_DEG ? 1 : 0;
        String told = plane == null
                ? "longitude " + shown(lon) + ", latitude " + shown(lat)
                : "east " + shown(lon) + ", north " + shown(lat);
        firstBad = firstBad.isEmpty() ? (line > 0 ? "line " + line : "point " + points) + ", " + told : firstBad;
        note(new TrackNote(
                file,
                TrackNote.Done.LEFT_OUT,
                "no-position",
                line,
                points,
                told + ": not a position "
                        + (plane == null ? "on a road of this earth." : "where " + plane.name() + " is used.")));
        return null;
    }

    private static String shown(String text) {
        return text == null
                ? "missing"
                : "\"" + (text.length() > 30 ? text.substring(0, 30) + "..." : plain(text)) + "\"";
    }

    /** A plain decimal number; NaN when it is none. */
    static double number(String text) {
        if (text == null || text.length() > 40) {
            return Double.NaN;
        }
        String plain = text.strip();
        for (int i = 0; i < plain.length(); i++) {
            if ("0123456789+-.eE".indexOf(plain.charAt(i)) < 0) {
                return Double.NaN;
            }
        }
        try {
            return Double.parseDouble(plain);
        } catch (NumberFormatException e) {
            return Double.NaN;
        }
    }

    private static double seconds(String time) {
        if (time == null || time.length() < 19 || time.length() > 40) {
            return Double.NaN;
        }
        return TrackTime.seconds(time.strip());
    }

    void place(String placeName, String lon, String lat, int line) throws InputRejected {
        if (places.size() >= MOST_LEGS) {
            throw Refusals.of(
                    "too-many",
                    "The file has more than " + MOST_LEGS + " marked places.",
                    "Keep those along the route.");
        }
        LonLat at = position(lon, lat, line);
        if (at != null) {
            String named = plain(placeName);
            places.add(new MarkedPlace(named.isEmpty() ? "place " + (places.size() + 1) : named, at, file, line));
        }
    }

    /** The next point begins a new piece of the same leg. */
    void endPart() {
        if (!part.isEmpty()) {
            parts.add(part);
            part = new ArrayList<>();
        }
    }

    void endLeg() throws InputRejected {
        endPart();
        if (!parts.isEmpty()) {
            if (legs.size() >= MOST_LEGS) {
                throw Refusals.of(
                        "too-many",
                        "The file has more than " + MOST_LEGS + " lines.",
                        "Keep those of the route, in the order of travel.");
            }
            legs.add(new TrackLeg(legName, file, parts));
            parts = new ArrayList<>();
        }
        legName = "";
    }

    void note(TrackNote note) {
        int before = noted.merge(note.code(), 1, Integer::sum);
        if (before <= MOST_NOTES) {
            notes.add(note);
        }
    }

    boolean hasLegs() {
        return !legs.isEmpty();
    }

    TrackContent content(String format) throws InputRejected {
        endLeg();
        if (plane != null && (hasLegs() || !places.isEmpty())) {
            notes.add(0, new TrackNote(file, TrackNote.Done.CORRECTED, "crs", 0, 0, plane.told()));
        }
        int read = points + places.size();
        if (bad > 0 && bad * 10 > read) {
            throw Refusals.of(
                    "no-position",
                    bad + " of " + Math.max(bad, read) + " positions are not on a road of this earth, the first at "
                            + firstBad + ".",
                    plane != null
                            ? "The first number is counted to the east, the second to the north, in the unit of "
                                    + plane.name() + "; are they, and is that the code?"
                            : swapped == bad
                                    ? "Latitude and longitude look exchanged: put each in its own place."
                                    : "Longitude is within 180 degrees, latitude within 85, both in degrees with a decimal point; other coordinates need their EPSG code.");
        }
        noted.forEach((code, count) -> {
            if (count > MOST_NOTES) {
                notes.add(new TrackNote(
                        file,
                        TrackNote.Done.LEFT_OUT,
                        code,
                        0,
                        0,
                        "and " + (count - MOST_NOTES) + " more of this kind."));
            }
        });
        return new TrackContent(file, format, name, legs, places, notes);
    }
}
