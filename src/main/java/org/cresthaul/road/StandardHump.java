package org.cresthaul.road;

import java.util.ArrayList;
import java.util.List;
import org.cresthaul.geometry.Finite;

/**
 * The hump of a rail crossing as a rule draws it, to hold a combination against where nobody has surveyed one: the road
 * lies in the plane of the rails across all tracks and 2 ft beyond the outermost ones, and falls evenly from there over
 * 28 ft to either side; beyond, it goes on at that slope. That is the profile of AASHTO's crossing rule (A Policy on
 * Geometric Design of Highways and Streets, ch. 9; TxDOT Roadway Design Manual 13.11.2), which allows 3 in of fall. The
 * tracks of a real crossing seldom lie in one plane.
 *
 * @param tracks how many, 1 to {@link #MOST_TRACKS}
 * @param fallM over {@link #FALL_LENGTH_M}, to either side, meters
 */
public record StandardHump(int tracks, double fallM) {
    public static final int MOST_TRACKS = 4;
    /** 28 ft, so that with the 2 ft of plane the fall is reached 30 ft from the rail. */
    public static final double FALL_LENGTH_M = 28 * 0.3048;
    /** Gauge 56.5 in, two rail heads of 2.75 in, 2 ft on either side. */
    private static final double ONE_TRACK_PLANE_M = (56.5 + 2 * 2.75 + 2 * 24) * 0.0254;
    /**
     * Between the center lines of neighboring tracks: 13 ft, as old lines have it. New ones are 14 ft and more apart
     * (California General Order 26-D; from memory); the narrower plane makes the sharper hump.
     */
    private static final double TRACK_SPACING_M = 13 * 0.3048;
    /** So close a survey would have to be near the rails, or nothing is called clear. */
    private static final double POINTS_APART_M = 2.9;

    public StandardHump {
        if (tracks < 1 || tracks > MOST_TRACKS) {
            throw new IllegalArgumentException("a standard hump has 1 to " + MOST_TRACKS + " tracks, not " + tracks);
        }
        Finite.requireAtLeast("fallM", 0, fallM);
    }

    /** How long the road lies in the plane of the rails, meters. */
    public double planeM() {
        return ONE_TRACK_PLANE_M + (tracks - 1) * TRACK_SPACING_M;
    }

    /** The road over it, its middle at distance zero and height zero; all of it declared, none of it in doubt. */
    public RoadProfile profile() {
        double halfM = planeM() / 2;
        double grade = fallM / FALL_LENGTH_M;
        List<SurveyedPoint> points = new ArrayList<>();
        int falling = (int) Math.ceil(FALL_LENGTH_M / POINTS_APART_M);
        for (int i = falling; i >= 1; i--) {
            points.add(new SurveyedPoint(-halfM - i * FALL_LENGTH_M / falling, -i * fallM / falling));
        }
        int level = (int) Math.ceil(planeM() / POINTS_APART_M);
        for (int i = 0; i <= level; i++) {
            points.add(new SurveyedPoint(-halfM + i * planeM() / level, 0));
        }
        for (int i = 1; i <= falling; i++) {
            points.add(new SurveyedPoint(halfM + i * FALL_LENGTH_M / falling, -i * fallM / falling));
        }
        return RoadProfile.of("standard hump", points, Approach.declared(grade, 0), Approach.declared(-grade, 0));
    }
}
